package plan_test

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"

	"rebush/plan"
)

// lengthKeys are the keys of job and shop files whose bare figures are lengths.
const lengthKeys = `thickness|length|height|width|found|sister|journal|must_pass|unworn|wheel_diameter|contacts_apart|hub_to_hub|back_to_back|washers|design|centre|widest|narrowest|metal|away|diameter|boss|goes|stops|inside|outside|` +
	`from_left|face|tip|runout|pitch_diameter|backlash|bearing_play|end_float|offset|u|bias|bore|od|limits|size|for|reach|shank|setup|hole|from|to|step|mandrels|end_mills|max_drill|location|stylus|at|left|right`

var (
	keyed = regexp.MustCompile(`\b(` + lengthKeys + `): (\[[^\]{}]*\]|-?[0-9.]+)`)
	bare  = regexp.MustCompile(`-?[0-9]+(\.[0-9]+)?`)
	inOne = regexp.MustCompile(`\bend_mills: \[[^\n]*\]`)
	loose = regexp.MustCompile(`(\[|, )([0-9.]+)(, |\])`)
)

// rewrite puts every bare length of a file through f. Angles, prices, counts
// and figures with a unit of their own stay.
func rewrite(text string, f func(string) string) string {
	lines := strings.SplitAfter(text, "\n")
	section := ""
	for i, line := range lines {
		if line != "" && line[0] != ' ' && line[0] != '#' {
			section, _, _ = strings.Cut(line, ":")
		}
		code, note := line, ""
		if k := strings.Index(line, " #"); k >= 0 && !strings.Contains(line, `"#`) {
			code, note = line[:k], line[k:]
		}
		if section == "rules" || section == "hours" || section == "rates" || section == "swap" {
			continue
		}
		var b strings.Builder
		last := 0
		for _, m := range keyed.FindAllStringSubmatchIndex(code, -1) {
			key, value, after := code[m[2]:m[3]], code[m[4]:m[5]], strings.TrimLeft(code[m[5]:], " ")
			own := after != "" && (after[0] == '/' || after[0] >= 'a' && after[0] <= 'z')
			if key == "at" && value[0] != '[' || own {
				continue
			}
			b.WriteString(code[last:m[4]] + bare.ReplaceAllStringFunc(value, f))
			last = m[5]
		}
		code = b.String() + code[last:]
		code = inOne.ReplaceAllStringFunc(code, func(m string) string {
			if !strings.Contains(m, "{") {
				return m // done above
			}
			for range 2 {
				m = loose.ReplaceAllStringFunc(m, func(x string) string {
					p := loose.FindStringSubmatch(x)
					return p[1] + f(p[2]) + p[3]
				})
			}
			return m
		})
		lines[i] = code + note
	}
	return strings.Join(lines, "")
}

// sameFigures prints a plan without what the layout of the file changes:
// columns, and the folder it lay in.
func sameFigures(t *testing.T, p *plan.Plan) any {
	t.Helper()
	for i := range p.Findings {
		p.Findings[i].Column = 0
	}
	b, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	text := regexp.MustCompile(`[^" ]*/shop\.yaml`).ReplaceAllString(string(b), "shop.yaml")
	text = regexp.MustCompile(`"formula":"[^"]*",?`).ReplaceAllString(text, "")
	var v any
	if err := json.Unmarshal([]byte(text), &v); err != nil {
		t.Fatal(err)
	}
	return v
}

// TestUnitsMakeNoDifference writes every demo in the other unit: a job in mm
// with its figures said to be mm under `units: in`, a job in inches times 25.4
// under `units: mm`. Plan and hash stay.
func TestUnitsMakeNoDifference(t *testing.T) {
	for _, name := range demoNames(t) {
		t.Run(name, func(t *testing.T) {
			s := demo(t, name)
			o := s
			if strings.Contains(s.job, "units: in") {
				f := func(x string) string {
					return decimal.RequireFromString(x).Mul(decimal.RequireFromString("25.4")).String()
				}
				o.job = strings.Replace(rewrite(s.job, f), "units: in", "units: mm", 1)
				o.shop = strings.Replace(rewrite(s.shop, f), "units: in", "units: mm", 1)
			} else {
				f := func(x string) string { return x + " mm" }
				o.job = strings.Replace(rewrite(s.job, f), "units: mm", "units: in", 1)
				o.shop = strings.Replace(rewrite(s.shop, f), "units: mm", "units: in", 1)
				o.files = map[string]string{}
				for n, text := range s.files {
					var out []string
					for _, line := range strings.Split(text, "\n") {
						if line != "" && (line[0] == '-' || line[0] >= '0' && line[0] <= '9') {
							line = bare.ReplaceAllStringFunc(line, f)
						}
						out = append(out, line)
					}
					o.files[n] = strings.Join(out, "\n")
				}
			}
			if o.job == s.job || o.shop == s.shop {
				t.Fatal("nothing was rewritten")
			}
			a, b := s.make(plan.Options{Trials: 1024, Seed: 3}), o.make(plan.Options{Trials: 1024, Seed: 3})
			if a.Hash != b.Hash {
				t.Errorf("hash %s and %s", a.Hash, b.Hash)
			}
			if d := cmp.Diff(sameFigures(t, a), sameFigures(t, b)); d != "" {
				t.Errorf("the plans differ:\n%.4000s", d)
			}
		})
	}
}

// TestHash: comments and layout are no part of it; a figure, a reamer, a rule and
// a size as made are: the plan is then of the truck as it now is.
func TestHash(t *testing.T) {
	base := plain(t).plan().Hash
	if len(base) < 8 {
		t.Fatalf("hash %q", base)
	}
	for name, s := range map[string]situation{
		"a comment":    plain(t).with("rebush: 1\n", "# about this job\nrebush: 1   # version\n"),
		"layout":       plain(t).with("    load: 2.5 N\n", "    load:    2.5 N\n\n"),
		"figures":      plain(t).with("widest: 3.30", "widest: 3.300"),
		"shop comment": plain(t).inShop("lathe: yes", "lathe: yes   # a small one"),
	} {
		if h := s.plan().Hash; h != base {
			t.Errorf("%s changes the hash", name)
		}
	}
	for name, s := range map[string]situation{
		"a figure":       plain(t).once("widest: 3.30", "widest: 3.31"),
		"a reamer":       plain(t).inShop("{size: 5, class: H7}", "{size: 5, class: H8}"),
		"a size as made": plain(t).add("made:\n  drive.left: {seat: 5.008}\n"),
		"a rule":         plain(t).inShop("lathe: yes", "lathe: yes\nrules: {move_caution_mm: 0.2}"),
	} {
		if h := s.plan().Hash; h == base {
			t.Errorf("%s does not change the hash", name)
		}
	}
}
