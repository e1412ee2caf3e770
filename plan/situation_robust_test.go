package plan_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"rebush/plan"
	"rebush/plan/job"
)

// demoNames are the jobs that are shipped, without those that are another one
// with a few figures changed.
func demoNames(t testing.TB) []string {
	var out []string
	for _, f := range demos(t) {
		switch name := filepath.Base(f); name {
		case "gullwrack-swap.yaml", "gullwrack-swollen.yaml", "gullwrack-thin-edge.yaml":
		default:
			out = append(out, name)
		}
	}
	return out
}

// wholesome looks a plan's JSON over: it is JSON, its gauged lengths are
// decimal strings or null, nothing is NaN or without end, no finding is empty
// or twice said, and where it may not be machined nothing is cut. With ledger
// every figure is worked out again too.
func wholesome(p *plan.Plan, ledger bool) error {
	b, err := json.Marshal(p)
	if err != nil {
		return err
	}
	if bad := regexp.MustCompile(`(?i)[^a-z](nan|[+-]?inf)[^a-z]`).Find(b); bad != nil {
		i := strings.Index(string(b), string(bad))
		return fmt.Errorf("%s in ...%s...", bad, b[max(0, i-120):min(len(b), i+60)])
	}
	if bad := regexp.MustCompile(`%!|<nil>`).Find(b); bad != nil {
		i := strings.Index(string(b), string(bad))
		return fmt.Errorf("%s in ...%s...", bad, b[max(0, i-120):min(len(b), i+60)])
	}
	var v map[string]any
	if err := json.Unmarshal(b, &v); err != nil {
		return err
	}
	if err := lengths("", v); err != nil {
		return err
	}
	if p.OK == p.Findings.Stops() {
		return fmt.Errorf("ok is %v and stops are %v", p.OK, p.Findings.Stops())
	}
	if !p.OK && len(p.Operations) > 0 {
		return fmt.Errorf("%d operations although it may not be machined", len(p.Operations))
	}
	if p.Verdict == nil {
		return fmt.Errorf("no verdict:\n%s", everything(p))
	}
	seen := map[string]bool{}
	for _, f := range p.Findings {
		if strings.TrimSpace(f.Text.String()) == "" {
			return fmt.Errorf("a finding without words: %+v", f)
		}
		k := string(f.Level) + f.Rule.Name() + f.Where + f.Text.String()
		if seen[k] {
			return fmt.Errorf("said twice: %s", f.Text)
		}
		seen[k] = true
		if m := regexp.MustCompile(`[0-9]+\.[0-9]{5,}|e[+-][0-9]{2}|verdict:|inspect:|chance:|target:`).FindString((f.Text + " " + f.Fix).String()); m != "" {
			return fmt.Errorf("not for a bench, %q: %s | %s", m, f.Text, f.Fix)
		}
	}
	if !ledger {
		return nil
	}
	if bad := p.Book.Recompute(); len(bad) > 0 {
		return fmt.Errorf("the ledger does not add up: %v", bad[0])
	}
	return nil
}

var decimalString = regexp.MustCompile(`^-?[0-9]+(\.[0-9]+)?$`)

// lengths looks at every key that ends in _mm: strings of decimals or null,
// also inside its lists and records. The ledger keeps numbers.
func lengths(at string, v any) error {
	switch x := v.(type) {
	case map[string]any:
		for k, w := range x {
			if k == "ledger" {
				continue
			}
			if strings.HasSuffix(k, "_mm") {
				if err := decimals(at+"/"+k, w); err != nil {
					return err
				}
			}
			if err := lengths(at+"/"+k, w); err != nil {
				return err
			}
		}
	case []any:
		for i, w := range x {
			if err := lengths(fmt.Sprintf("%s/%d", at, i), w); err != nil {
				return err
			}
		}
	}
	return nil
}

func decimals(at string, v any) error {
	switch x := v.(type) {
	case nil:
	case string:
		if !decimalString.MatchString(x) || strings.HasPrefix(x, "-0.") && strings.Trim(x, "-0.") == "" {
			return fmt.Errorf("%s is %q", at, x)
		}
	case []any:
		for _, w := range x {
			if err := decimals(at, w); err != nil {
				return err
			}
		}
	case map[string]any:
		for _, w := range x {
			if err := decimals(at, w); err != nil {
				return err
			}
		}
	default:
		return fmt.Errorf("%s is %v, not a decimal string", at, v)
	}
	return nil
}

// tryPlan plans and turns a panic into an error.
func tryPlan(j *job.Job, o plan.Options) (p *plan.Plan, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("panic: %v", r)
		}
	}()
	return plan.Make(j, o)
}

// withoutEach calls f with a text, each line that holds its own and each key
// of a record in turn left out.
func withoutEach(text string, f func(what, text string)) {
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		rest := append(append([]string(nil), lines[:i]...), lines[i+1:]...)
		f(fmt.Sprintf("line %d: %s", i+1, line), strings.Join(rest, "\n"))
	}
	for _, at := range inRecord.FindAllStringIndex(text, -1) {
		if comment(text, at[0]) {
			continue
		}
		f(text[at[0]:at[1]], text[:at[0]]+text[at[1]:])
	}
}

// inRecord is one key of a record in braces with its value.
var inRecord = regexp.MustCompile(`[a-z_]+: ([^,{}\[\]\n#]+|\[[^\]\n]*\]|\{[^{}\n]*\})(, )?`)

// figure is a number where a value stands.
var figure = regexp.MustCompile(`[:\[,] -?[0-9]+(\.[0-9]+)?\b|\[-?[0-9]+(\.[0-9]+)?\b`)

// comment says whether a place lies in a comment.
func comment(text string, at int) bool {
	line := text[strings.LastIndexByte(text[:at], '\n')+1 : at]
	return strings.Contains(line, "#") && !strings.Contains(line, `"#`)
}

// withEach calls f with a text, each figure of it in turn set off its value by
// two of the factors.
func withEach(text string, f func(what, text string)) {
	factors := []float64{0, 0.5, 0.8, 0.97, 1.03, 1.25, 2, 4}
	for n, at := range figure.FindAllStringIndex(text, -1) {
		if comment(text, at[0]) {
			continue
		}
		from := at[0] + strings.IndexAny(text[at[0]:at[1]], "-0123456789")
		var v float64
		if _, err := fmt.Sscan(text[from:at[1]], &v); err != nil {
			continue
		}
		for _, k := range []int{n, n + 3} {
			to := fmt.Sprint(math.Round(v*factors[k%len(factors)]*1e4) / 1e4)
			f(fmt.Sprintf("line %d, %s as %s", 1+strings.Count(text[:from], "\n"), text[from:at[1]], to), text[:from]+to+text[at[1]:])
		}
	}
}

// tried plans every situation that the reader lets pass and looks each over.
// REBUSH_ALL=1 in the environment asks for all of them, else it is every eighth.
type tried struct {
	t             *testing.T
	seen, planned int
}

func (r *tried) ask(what string, s situation) {
	r.t.Helper()
	if r.seen++; r.seen%8 != 0 && os.Getenv("REBUSH_ALL") == "" {
		return
	}
	j, err := s.read()
	if err != nil {
		return
	}
	r.planned++
	p, err := tryPlan(j, plan.Options{NoChance: r.planned%9 != 0, Trials: 256, Seed: 1})
	if err == nil {
		err = wholesome(p, r.planned%9 == 0)
	}
	if err != nil && !strings.HasPrefix(err.Error(), "job.yaml:") {
		r.t.Errorf("%s: %v", what, err)
	}
}

// TestEveryKeyMayBeMissing leaves out every line and every key of every demo
// and of its shop, one at a time: it is refused in words or planned
// wholesomely.
func TestEveryKeyMayBeMissing(t *testing.T) {
	for _, name := range demoNames(t) {
		t.Run(name, func(t *testing.T) {
			s, r := demo(t, name), tried{t: t}
			withoutEach(s.job, func(what, text string) { c := s; c.job = text; r.ask("without "+what, c) })
			withoutEach(s.shop, func(what, text string) { c := s; c.shop = text; r.ask("shop without "+what, c) })
			if r.planned < 4 {
				t.Errorf("only %d of them could be planned", r.planned)
			}
		})
	}
}

// TestFiguresFarOff sets one figure of every demo in turn far off its value.
// What the reader lets pass is planned wholesomely.
func TestFiguresFarOff(t *testing.T) {
	for _, name := range demoNames(t) {
		t.Run(name, func(t *testing.T) {
			s, r := demo(t, name), tried{t: t}
			withEach(s.job, func(what, text string) { c := s; c.job = text; r.ask(what, c) })
			withEach(s.shop, func(what, text string) { c := s; c.shop = text; r.ask("shop "+what, c) })
			if r.planned < 6 {
				t.Errorf("only %d of them could be planned", r.planned)
			}
		})
	}
}
