package sheets

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/job"
	"rebush/plan/route"
	"rebush/sheets/draw"
)

// worked are the plans of a list that a setup sheet is worked from.
func workedOf(plans map[string]*plan.Plan) map[string]*plan.Plan {
	out := map[string]*plan.Plan{}
	for name, p := range plans {
		if p.OK && p.Machines() && len(p.Operations) > 0 {
			out[name] = p
		}
	}
	return out
}

// Each operation stands in one row of one card, and a hole is worked in the
// order of the plan.
func TestEveryOperationHasOneRow(t *testing.T) {
	for _, plans := range []map[string]*plan.Plan{workedOf(demos(t)), workedOf(dull(t))} {
		for name, p := range plans {
			seen := map[int]int{}
			cards := cardsOf(p)
			for _, c := range cards {
				rows := append(append([]row{}, c.before...), c.clamp...)
				for _, g := range c.groups {
					rows = append(rows, g.rows...)
					for _, s := range g.places {
						if !slices.IsSorted(s.ops) {
							t.Errorf("%s: %s is worked in another order: %v", name, s.shaft, s.ops)
						}
					}
				}
				for _, r := range rows {
					for _, i := range r.ops {
						seen[i]++
						if a, b := p.Operations[r.ops[0]], p.Operations[i]; !sameTool(a, b) || a.Kind != b.Kind || a.Setup != b.Setup {
							t.Errorf("%s: %d and %d share a row", name, a.Number, b.Number)
						}
					}
				}
			}
			for i := range p.Operations {
				if seen[i] != 1 {
					t.Errorf("%s: %d stands in %d rows", name, p.Operations[i].Number, seen[i])
				}
			}
		}
	}
}

// Holes that one tool passes share a row; holes of unlike work do not. Before them
// come stripping, measuring again and the clamping.
func TestRowsAreShared(t *testing.T) {
	p := demos(t)["gullwrack"]
	var got []string
	for _, c := range cardsOf(p) {
		if !c.clamped {
			continue
		}
		for _, g := range c.groups {
			for _, r := range g.rows {
				got = append(got, numbers(p, r)+" "+r.title(p))
			}
		}
	}
	want := []string{"40, 50 Open out driven axle, left and right to 5 mm",
		"60 Start driven axle.left and driven axle.right on their new centre, 5.75 mm", "70 Chamfer", "80 Chamfer",
		"90 Bore the seats of driven axle.left and driven axle.right to size at one setting",
		"100, 110 Gauge the seat of driven axle, left and right before the clamps come off"}
	if len(got) != len(want) {
		t.Fatalf("%d rows: %q", len(got), got)
	}
	for i, w := range want {
		if !strings.HasPrefix(got[i], w) {
			t.Errorf("row %d is %q, want %q", i+1, got[i], w)
		}
	}
}

// readable is the text of a sheet without its line breaks, as small letters, so
// that a sentence is found wherever it begins.
func readable(s string) string { return strings.ToLower(flat(s)) }

// recorded is the text of a document in the order in which it is drawn, which is
// that of the PDF: no reader mixes the columns of a row in it.
func recorded(d *draw.Document) string {
	var b strings.Builder
	for page := 1; page <= d.Pages(); page++ {
		for _, it := range d.All(page) {
			if it.Kind == draw.KindText {
				b.WriteString(it.Text + "\n")
			}
		}
	}
	return b.String()
}

// finder looks for what a plan says on the text of its sheet.
type finder struct {
	t     *testing.T
	name  string
	text  string
	bench bench
	found int
}

// any wants one of some ways to say a thing.
func (f *finder) any(what string, ways ...string) {
	f.t.Helper()
	for _, w := range ways {
		if strings.Contains(f.text, strings.TrimSuffix(readable(printable(f.bench.say(w))), ".")) {
			f.found++
			return
		}
	}
	f.t.Errorf("%s: %s: %q is not on the paper", f.name, what, ways)
}

// amid wants a text each of whose figures may stand among those of other places.
func (f *finder) amid(what, text string) {
	f.t.Helper()
	const before, after = `(?:[\d.]+(?:, | and ))*`, `(?:(?:, | and )[\d.]+)*`
	text = strings.TrimSuffix(readable(printable(f.bench.say(text))), ".")
	from, pattern := 0, ""
	for _, m := range regexp.MustCompile(`\d+(?:\.\d+)?`).FindAllStringIndex(text, -1) {
		pattern += regexp.QuoteMeta(text[from:m[0]]) + before + regexp.QuoteMeta(text[m[0]:m[1]]) + after
		from = m[1]
	}
	pattern += regexp.QuoteMeta(text[from:])
	if !regexp.MustCompile(pattern).MatchString(f.text) {
		f.t.Errorf("%s: %s: %q is not on the paper", f.name, what, text)
		return
	}
	f.found++
}

// whole wants all parts of a text that is said of an operation.
func (f *finder) whole(what string, op plan.Operation, text say.Text) {
	f.t.Helper()
	for _, x := range parts(text.String()) {
		if strings.HasPrefix(x, reasonOnly) || strings.HasPrefix(x, "needs a reach of ") || strings.HasPrefix(x, stopSet) {
			continue
		}
		f.any(what, holeWays(op, x)...)
	}
}

// holeWays are the ways in which a row may name the hole of an operation.
func holeWays(op plan.Operation, s string) []string {
	e := each(op, s)
	shaft := shaftOf(op.Bore)
	return []string{s, e, strings.ReplaceAll(e, "each", shaft+", left and right"), strings.ReplaceAll(e, "each",
		shaft+", right and left")}
}

// Every tool, step of the spindle, depth, limit, gauge, caution and operation of
// the plan is on the paper.
func TestAllOfThePlanIsOnPaper(t *testing.T) {
	for _, plans := range []map[string]*plan.Plan{workedOf(demos(t)), workedOf(dull(t))} {
		for name, p := range plans {
			for _, o := range []Options{{}, {Large: true}} {
				allOnPaper(t, name, p, o)
			}
		}
	}
}

func allOnPaper(t *testing.T, name string, p *plan.Plan, o Options) {
	t.Helper()
	u, err := o.units(p.Job)
	if err != nil {
		t.Fatal(err)
	}
	q := say.Printed(p, u.said())
	f := &finder{t: t, name: name, text: readable(recorded(must(Setup(p, o)))), bench: benchOf(p.Job)}
	for _, op := range q.Operations {
		n := strconv.Itoa(op.Number)
		f.any("operation "+n, append(holeWays(op, eachDo(op)), op.Do.String())...)
		f.any("number", n)
		for _, tool := range strings.SplitAfter(op.Tool.String(), ", guide ") {
			f.any("tool of "+n, strings.TrimSuffix(tool, ", guide "))
		}
		if op.RPM != nil && *op.RPM > 0 {
			f.any("spindle of "+n, strconv.FormatFloat(*op.RPM, 'f', 0, 64)+" rev/min")
		}
		if op.DepthMM.Given() {
			want := []string{"depth " + strings.Join(u.lines(say.Size(op.DepthMM, 1).About()), ", ")}
			if op.StopMM.Given() { // one tool, two plates: the stop of each stands for it
				stop := strings.Join(u.lines(say.Size(op.StopMM, 1)), ", ")
				want = append(want, "left "+stop, "right "+stop)
			}
			f.any("depth of "+n, want...)
		}
		for _, l := range u.limits(op.LimitsMM) {
			f.any("limits of "+n, l)
		}
		f.any("go of "+n, op.Go.String())
		f.any("no go of "+n, op.NoGo.String())
		f.any("gauge first of "+n, holeWays(op, op.GaugeFirst.String())...)
		for _, at := range [][]string{u.at(op.DialMM, false)} {
			for _, l := range at {
				f.any("dials of "+n, l)
			}
		}
		if op.Gauge != "pins" {
			f.whole("gauge of "+n, op, op.Gauge)
		}
		f.whole("note of "+n, op, strippedOfForce(op))
		f.whole("backing of "+n, op, op.Backing)
		f.whole("oil of "+n, op, op.Lubricant)
		for _, l := range op.Safety {
			f.any("safety of "+n, l.Words)
		}
	}
	for _, x := range q.Findings {
		if (x.Level == finding.Caution || x.Level == finding.Note) && x.Rule != job.KeyNotUsed {
			cure := noMark(x.Else().String())
			f.amid("finding "+string(x.Rule), noMark(x.Text.String()))
			f.any("cure of "+string(x.Rule), cure, strings.ReplaceAll(cure, "this bore", "each of these bores"))
		}
	}
	for _, s := range q.Proving {
		f.any("proving", s.Text.String())
	}
	for _, b := range q.Buy {
		// The reason stands once above things that share it.
		name, as, _ := strings.Cut(b.What.String(), toBuy+": ")
		f.any("buy", strings.TrimSuffix(name, toBuy))
		for _, part := range strings.Split(as, ": ") {
			f.any("buy "+name, part)
		}
	}
	for _, s := range q.Setups {
		f.any("set-up "+s.Name, parts(s.Words.String())[0])
	}
	if f.found < 60 {
		t.Errorf("%s: only %d things were looked for", name, f.found)
	}
}

// strippedOfForce is the note of a press without what stands in large type.
func strippedOfForce(op plan.Operation) say.Text {
	if op.Halt <= 0 {
		return op.Note
	}
	return say.Words(regexp.MustCompile(`(?:expect|HALT at) [^;]*;? ?`).ReplaceAllString(op.Note.String(), ""))
}

// The names of holes are put into the words of the bench.
func TestBenchWords(t *testing.T) {
	b := benchOf(sampleJob(2))
	for s, want := range map[string]string{
		"Seat of front axle.left":                      "Seat of front axle, left",
		"Front axle.left, front axle.right: too large": "Front axle, left, front axle, right: too large",
		"for front axle.left and front axle.right":     "for front axle, left and right",
		"the front axle.leftover":                      "the front axle, leftover",
	} {
		if got := b.say(s); got != want {
			t.Errorf("%q became %q, want %q", s, got, want)
		}
	}
	if got := noMark("is given: 0.05 to 0.2 mm is taken (backlash:7, backlash:3) of `gear`"); got != "is given: 0.05 to 0.2 mm is taken of gear" {
		t.Errorf("%q", got)
	}
	for name, p := range workedOf(demos(t)) {
		text := recorded(must(Setup(p, Options{})))
		for _, w := range []string{"sigma", " um", "µm", "`", ".yaml", ".left", ".right", "UTS", "KHK"} {
			if strings.Contains(text, w) {
				t.Errorf("%s: the sheet says %q", name, w)
			}
		}
	}
}

// A chassis of which a tool goes through the near plate is drawn so, with its
// reach; a press is drawn with its own figures.
func TestPicturesHaveFiguresOfThePlan(t *testing.T) {
	p := demos(t)["gullwrack"]
	near, gap, far, ok := plates(p, p.Setups[slices.IndexFunc(p.Setups,
		func(s plan.Setup) bool { return s.Name == "A" })])
	c := p.Job.Chassis
	if !ok || near != c.Thickness.Left.Float() || far != c.Thickness.Right.Float() || near+gap+far != c.Width.Float() {
		t.Errorf("plates %v, %v, gap %v of %+v", near, far, gap, c)
	}
	for _, op := range p.Operations {
		if op.RPM == nil || !op.DepthMM.Given() || op.Kind == route.KindChamfer {
			continue
		}
		want := op.DepthMM.Float()
		if op.Far {
			want += near + gap
		}
		if got := reachFor(p, op); got != want {
			t.Errorf("%d: reach %v, want %v", op.Number, got, want)
		}
	}
	text := readable(open(t, write(t, must(Setup(p, Options{})))).all())
	for _, w := range []string{"reach at most 22.0 mm", "13.6 mm", "3.2 mm", "wall, its seat 5.986 to 6.005 mm",
		"guide 3.87 to 3.92 mm"} {
		if !strings.Contains(text, w) {
			t.Errorf("no picture says %q", w)
		}
	}
}

// What is turned is drawn with its figures: a bush with a shoulder, a rod with
// its steps.
func TestTurnedPiecesAreDrawn(t *testing.T) {
	shapes := 0
	for name, p := range workedOf(demos(t)) {
		text := readable(open(t, write(t, must(Setup(p, Options{Units: "mm"})))).all())
		for _, op := range p.Operations {
			for _, s := range op.Shapes {
				shapes++
				for _, r := range s.Steps {
					want := strconv.FormatFloat(r.D[0], 'f', 2, 64)
					if r.D[0] != r.D[1] {
						want = units("mm").limits(dim.Limits(r.D[0], r.D[1]))[0]
					}
					if !strings.Contains(text, "ø "+want) {
						t.Errorf("%s, %d: no Ø %s", name, op.Number, want)
					}
				}
			}
		}
	}
	if shapes < 3 {
		t.Errorf("only %d pieces are turned in all demos", shapes)
	}
}

// The wear of a hole is drawn as many times as large as is said: of a hole of
// radius 2 worn by 0.1 the worn wall stands at 2 + 10 x 0.1, the unworn one stays.
func TestWearIsEnlarged(t *testing.T) {
	h := plan.Hole{Old: [2]float64{10, 6}, OldRadius: 2, SeatR: 3, Outline: egg(10, 6, 2, 0.1, 90)}
	big, times := enlarged(h)
	if times != 10 || big.SeatR != 0 {
		t.Fatalf("%v times, seat %v", times, big.SeatR)
	}
	top, bottom := 0.0, 99.0
	for _, p := range big.Outline {
		top, bottom = max(top, p[1]), min(bottom, p[1])
	}
	if d := top - 9; d > 1e-9 || d < -1e-9 {
		t.Errorf("the worn wall is drawn at %v, want 9", top)
	}
	if d := bottom - 4; d > 1e-9 || d < -1e-9 {
		t.Errorf("the unworn wall is drawn at %v, want 4", bottom)
	}
	if _, times := enlarged(plan.Hole{OldRadius: 2, Outline: egg(0, 0, 2, 0, 90)}); times != 1 {
		t.Errorf("a hole that is not worn is drawn %v times", times)
	}
}
