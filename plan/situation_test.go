package plan_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/plan"
	"rebush/plan/job"
	"rebush/plan/verdict"
)

// situation is one invented job with its shop, as text.
type situation struct {
	t         testing.TB
	job, shop string
	files     map[string]string // beside the job
}

// plainJob is a zinc truck with one worn axle, one good one and a worm above
// the worn one. Everything in it is invented.
const plainJob = `rebush: 1
job: 1
units: mm
shop: shop.yaml
chassis:
  material: zinc die casting
  condition: sound
  rails: below
  plates: {left: {thickness: 3.0}, right: {thickness: 3.0}}
  outline: {length: 60, height: 20}
  width: 16.0
  current: none
shafts:
  - name: drive
    journal: 3.16
    rpm: 400
    load: 2.5 N
    bores:
      left: {centre: [10.00, 8.05], widest: 3.30, narrowest: 3.20, worn_to: 90}
      right: {centre: [10.00, 8.05], widest: 3.30, narrowest: 3.20, worn_to: 90}
  - name: other
    do: leave
    journal: 3.16
    bores:
      left: {centre: [48.00, 8.00], widest: 3.20, narrowest: 3.20}
      right: {centre: [48.00, 8.00], widest: 3.20, narrowest: 3.20}
gears: []
bushes:
  - {code: solid 5, bore: 3.2, bore_class: F7, od: 5.0, od_class: s7, length: 3.0, material: bearing bronze C93200, price: 1.00, on_hand: 9}
  - {code: own turning, make: turned, material: bearing bronze C93200, price: 1.20}
symptoms: {rims: tight, hubs: tight, gauge: correct, ohms: open}
`

const plainShop = `rebush_shop: 1
units: mm
machine:
  kind: mill
  readout: yes
  spindle: [320, 450, 620, 900, 1250, 1750]
  location: {setup: 0.010, hole: 0.010}
  press: 600 N
drills: {tool: HSS, series: [metric 0.1], sizes: [{size: 4.85, for: 5}]}
reamers: [{size: 5, class: H7}]
end_mills: [3, 4, 4.5]
boring_head: {from: 5, to: 20}
mandrels: [3.19, 3.20]
pins: {from: 1, to: 6, step: 0.01, class: ZZ}
lathe: yes
instruments: [{name: bore gauge, u: 0.004}, {name: read-out, u: 0.010}]
hours: {setup: 0.5, strip_and_rebuild: 1.0}
rates: {currency: GBP, per_hour: 40}
`

// plain is the situation that the others are edited from.
func plain(t testing.TB) situation {
	return situation{t: t, job: plainJob, shop: plainShop, files: map[string]string{}}
}

// demo is one of the shipped jobs as a situation.
func demo(t testing.TB, name string) situation {
	t.Helper()
	read := func(n string) string {
		b, err := os.ReadFile(fileOf(t, n))
		if err != nil {
			t.Fatal(err)
		}
		return string(b)
	}
	s := situation{t: t, job: read(name), files: map[string]string{}}
	for _, line := range strings.Split(s.job, "\n") {
		if f, ok := strings.CutPrefix(line, "shop: "); ok {
			file := strings.Fields(f)[0]
			s.shop = read(file)
			s.job = strings.Replace(s.job, "shop: "+file, "shop: shop.yaml", 1)
		}
		if _, f, ok := strings.Cut(line, "file: "); ok && strings.Contains(line, ".csv") {
			file := strings.Trim(strings.Fields(f)[0], ",}")
			s.files[file] = read(file)
		}
	}
	if s.shop == "" {
		t.Fatalf("%s names no shop", name)
	}
	return s
}

func edit(t testing.TB, text, old, new string) string {
	t.Helper()
	if !strings.Contains(text, old) {
		t.Fatalf("nothing to edit: %q is not in\n%s", old, text)
	}
	return strings.ReplaceAll(text, old, new)
}

// with puts one text of the job in the place of another, wherever it stands.
func (s situation) with(old, new string) situation {
	s.t.Helper()
	s.job = edit(s.t, s.job, old, new)
	return s
}

// once is with for the first place only.
func (s situation) once(old, new string) situation {
	s.t.Helper()
	if !strings.Contains(s.job, old) {
		s.t.Fatalf("nothing to edit: %q", old)
	}
	s.job = strings.Replace(s.job, old, new, 1)
	return s
}

// inShop edits the shop file.
func (s situation) inShop(old, new string) situation {
	s.t.Helper()
	s.shop = edit(s.t, s.shop, old, new)
	return s
}

// add puts lines at the end of the job.
func (s situation) add(lines string) situation {
	s.job += lines
	return s
}

// drive replaces the left and the right bore of the worn axle.
func (s situation) drive(left, right string) situation {
	s.t.Helper()
	return s.with("      left: {centre: [10.00, 8.05], widest: 3.30, narrowest: 3.20, worn_to: 90}\n", "      left: {"+left+"}\n").
		with("      right: {centre: [10.00, 8.05], widest: 3.30, narrowest: 3.20, worn_to: 90}\n", "      right: {"+right+"}\n")
}

// gear puts one gear into the job.
func (s situation) gear(lines string) situation {
	s.t.Helper()
	return s.with("gears: []\n", "gears:\n"+lines)
}

func (s situation) read() (*job.Job, error) {
	s.t.Helper()
	dir := s.t.TempDir()
	for name, text := range s.files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			s.t.Fatal(err)
		}
	}
	if err := os.WriteFile(filepath.Join(dir, "shop.yaml"), []byte(s.shop), 0o644); err != nil {
		s.t.Fatal(err)
	}
	return job.Parse("job.yaml", dir, []byte(s.job), job.Options{})
}

// plan makes the plan without its trials.
func (s situation) plan() *plan.Plan {
	s.t.Helper()
	return s.make(plan.Options{NoChance: true})
}

// odds makes the plan with its trials.
func (s situation) odds() *plan.Plan {
	s.t.Helper()
	return s.make(plan.Options{Trials: 8192, Seed: 1})
}

func (s situation) make(o plan.Options) *plan.Plan {
	s.t.Helper()
	j, err := s.read()
	if err != nil {
		s.t.Fatalf("%v\n%s", err, s.job)
	}
	p, err := plan.Make(j, o)
	if err != nil {
		s.t.Fatal(err)
	}
	if way := cuttingWay(p); o.Way == "" && !p.Cuts && way != "" {
		// What is advised cuts nothing: these tests look at what would be cut.
		o.Way = way
		if p, err = plan.Make(j, o); err != nil {
			s.t.Fatal(err)
		}
	}
	return p
}

// cuttingWay is the first way that cuts and is free of stops; where all are
// stopped it is to re-bush, and where nothing is to be cut none.
func cuttingWay(p *plan.Plan) verdict.Name {
	for _, w := range p.Ways {
		if w.OK && w.Way.Cuts() {
			return w.Way
		}
	}
	if p.OK {
		return ""
	}
	return verdict.Rebush
}

// near fails where a figure differs from the one worked by hand.
func near(t testing.TB, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s is %.6g, by hand %.6g", what, got, want)
	}
}

func nearMM(t testing.TB, what string, got plan.MM, want, tol float64) {
	t.Helper()
	if !got.Given() {
		t.Errorf("%s is not there, by hand %.6g", what, want)
		return
	}
	near(t, what, got.Float(), want, tol)
}

func nearXY(t testing.TB, what string, got *plan.XY, x, y, tol float64) {
	t.Helper()
	if got == nil {
		t.Errorf("%s is not there, by hand %.4f, %.4f", what, x, y)
		return
	}
	near(t, what+" x", got[0].Float(), x, tol)
	near(t, what+" y", got[1].Float(), y, tol)
}

func surveyed(t testing.TB, p *plan.Plan, bore string) plan.SurveyedBore {
	t.Helper()
	for _, s := range p.Survey {
		if s.Bore == bore {
			return s
		}
	}
	t.Fatalf("no survey of %s", bore)
	return plan.SurveyedBore{}
}

func targetOf(t testing.TB, p *plan.Plan, bore string) plan.Target {
	t.Helper()
	for _, s := range p.Targets {
		if s.Bore == bore {
			return s
		}
	}
	t.Fatalf("no target of %s", bore)
	return plan.Target{}
}

func seatOf(t testing.TB, p *plan.Plan, bore string) plan.Seat {
	t.Helper()
	for _, s := range p.Seats {
		if s.Bore == bore {
			return s
		}
	}
	t.Fatalf("no seat of %s", bore)
	return plan.Seat{}
}

func optionOf(t testing.TB, p *plan.Plan, name string) plan.Option {
	t.Helper()
	if p.Verdict != nil {
		for _, o := range p.Verdict.Options {
			if string(o.Name) == name {
				return o
			}
		}
	}
	t.Fatalf("no option %s", name)
	return plan.Option{}
}

// said returns the findings of a rule.
func said(p *plan.Plan, rule string) []finding.Finding {
	var out []finding.Finding
	for _, f := range p.Findings {
		if f.Rule.Name() == rule {
			out = append(out, f)
		}
	}
	return out
}

// saidOf asks for exactly one finding of a rule about one place.
func saidOf(t testing.TB, p *plan.Plan, rule, where string) finding.Finding {
	t.Helper()
	var out []finding.Finding
	for _, f := range said(p, rule) {
		if where == "" || f.Where == where {
			out = append(out, f)
		}
	}
	if len(out) != 1 {
		t.Fatalf("%d findings of %q about %q, wanted one; all that was said:\n%s", len(out), rule, where, everything(p))
	}
	return out[0]
}

func unsaid(t testing.TB, p *plan.Plan, rule string) {
	t.Helper()
	for _, f := range said(p, rule) {
		t.Errorf("should not be said: %s of %s: %s", rule, f.Where, f.Text)
	}
}

func everything(p *plan.Plan) string {
	var b strings.Builder
	for _, f := range p.Findings {
		fmt.Fprintf(&b, "%s [%s] %s:%d %s: %s | %s\n", f.Level, f.Rule, f.File, f.Line, f.Where, f.Text, f.Fix)
	}
	return b.String()
}

func fmtMM(f float64) string { return fmt.Sprintf("%.4f", f) }
