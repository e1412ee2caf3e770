package plan_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"rebush/plan"
	"rebush/plan/job"
	"rebush/plan/route"
	"rebush/plan/safety"
)

// chassisMetals are chassis of every kind that a job may be made of.
var chassisMetals = []string{"zinc die casting", "aluminium die casting", "magnesium", "brass sheet, half hard", "mild steel", "grey cast iron", "aluminium plate 6061-T6"}

func bears(o plan.Operation, hazard string) bool {
	return slices.ContainsFunc(o.Safety, func(l safety.Line) bool { return l.Hazard == hazard })
}

// walked is one plan of the walk.
type walked struct {
	where, metal string
	p            *plan.Plan
}

// allWalked is planned once, by whichever test comes first.
var allWalked []walked

// walkPlans plans each demo in each metal on each machine, once.
func walkPlans(t *testing.T, see func(where, metal string, p *plan.Plan)) {
	t.Helper()
	if allWalked == nil {
		allWalked = plannedInEveryMetal(t)
	}
	if len(allWalked) < 40 {
		t.Fatalf("only %d plans were made", len(allWalked))
	}
	for _, w := range allWalked {
		see(w.where, w.metal, w.p)
	}
}

func plannedInEveryMetal(t *testing.T) (out []walked) {
	t.Helper()
	for _, name := range demoRoutes {
		for _, metal := range chassisMetals {
			for machine, change := range machines {
				p := routed(t, name, func(j *job.Job) {
					j.Chassis.Material, j.Accept = metal, []string{"magnesium"}
					if change != nil {
						change(j)
					}
				})
				if p.OK {
					out = append(out, walked{name + " in " + metal + " on a " + machine, metal, p})
				}
			}
		}
	}
	return out
}

// Beside each operation of real plans stands what its own words call for.
func TestHazardsOfPlans(t *testing.T) {
	kinds := route.Kinds()
	below, glued, blown := 0, 0, 0
	walkPlans(t, func(where, metal string, p *plan.Plan) {
		magnesium := metal == "magnesium"
		for _, o := range p.Operations {
			if !slices.Contains(kinds, route.Kind(o.Kind)) {
				t.Errorf("%s: %d is of no kind: %q", where, o.Number, o.Kind)
			}
			demand := func(hazard string, yes bool) {
				if bears(o, hazard) != yes {
					t.Errorf("%s: %d %s: %s said %v", where, o.Number, o.Do, hazard, !yes)
				}
			}
			turns := o.RPM != nil && *o.RPM > 0 || o.Kind == "turn" || o.Kind == "make aid" || o.Kind == "scrap" || o.Kind == "face" && o.Setup == "lathe"
			for _, h := range []string{"eyes", "rotating", "chuck key"} {
				demand(h, turns)
			}
			fingers := strings.Contains(o.Backing.String(), "from below")
			demand("tool above", fingers)
			demand("compound", o.Kind == "press" && strings.Contains((o.Do+o.Tool+o.Note).String(), "compound"))
			demand("fingers", o.Kind == "take out" || o.Kind == "strip" || o.Kind == "wheels" || o.Kind == "press" && strings.Contains(o.Tool.String(), "guide") && !strings.HasPrefix(o.Tool.String(), "retaining") || strings.Contains(o.Note.String(), "under the press"))
			demand("lead in paint", o.Kind == "wash")
			if strings.Contains(o.Lubricant.String(), "air") {
				demand("compressed air", true)
				blown++
			}
			if !magnesium {
				for _, h := range []string{"magnesium fire", "magnesium cut", "magnesium chips", "magnesium cleaning"} {
					demand(h, false)
				}
			} else if o.Kind == "locate" {
				demand("magnesium cut", true)
				demand("magnesium chips", true)
			}
			if fingers {
				below++
			}
			if bears(o, "compound") {
				glued++
			}
		}
	})
	if below == 0 || glued == 0 || blown == 0 {
		t.Errorf("walked %d from below, %d glued, %d blown", below, glued, blown)
	}
}

// Page one has five lines at most, the machine's own manual first; each of the
// rest speaks of what some operation of the job bears.
func TestHazardsOfPageOne(t *testing.T) {
	of := map[string]string{"eyes and rotating": "eyes", "clamping and chuck key": "chuck key", "clamping": "clamping", "press": "fingers",
		"zinc or magnesium": "zinc or magnesium", "magnesium fire": "magnesium fire", "magnesium chips": "magnesium chips", "lead in paint": "lead in paint",
		"supply": "", "solvent": "solvent"} // the truck is stripped before the route begins
	walkPlans(t, func(where, metal string, p *plan.Plan) {
		lines := p.Safety.PageOne
		if len(lines) > 5 || len(lines) < 3 || lines[0].Hazard != "this sheet comes last" {
			t.Fatalf("%s: %+v", where, lines)
		}
		for _, l := range lines[1:] {
			h, ok := of[l.Hazard]
			if !ok || h != "" && !slices.ContainsFunc(p.Operations, func(o plan.Operation) bool { return bears(o, h) }) {
				t.Errorf("%s: page one says %q, which no operation bears", where, l.Words)
			}
		}
		has := func(h string) bool {
			return slices.ContainsFunc(lines, func(l safety.Line) bool { return l.Hazard == h })
		}
		casting := metal == "zinc die casting" || strings.HasPrefix(metal, "aluminium")
		cuts := slices.ContainsFunc(p.Operations, func(o plan.Operation) bool { return o.Kind == "locate" })
		if has("zinc or magnesium") != (casting && cuts) || has("magnesium fire") != (metal == "magnesium" && cuts) {
			t.Errorf("%s: %+v", where, lines)
		}
		if cuts && (!has("eyes and rotating") || !has("clamping and chuck key")) {
			t.Errorf("%s: nothing of eyes or chuck key: %+v", where, lines)
		}
	})
}

// Where nobody has said that the casting is sound, it is looked over before
// anything is cut or pushed out.
func TestUnsaidConditionIsLookedOver(t *testing.T) {
	for _, metal := range chassisMetals {
		for _, condition := range []string{"unknown", "", "sound"} {
			p := routed(t, "stepped", func(j *job.Job) {
				j.Chassis.Material, j.Chassis.Condition, j.Accept = metal, condition, []string{"magnesium"}
			})
			if !p.OK {
				continue
			}
			first, want := p.Operations[0], condition != "sound"
			if (first.Kind == "look over") != want || bears(first, "unsound casting") != want || (len(p.Safety.LookFor) == 1) != want {
				t.Errorf("%s, condition %q: first comes %s; look for %+v", metal, condition, first.Do, p.Safety.LookFor)
			}
			for _, o := range p.Operations[1:] {
				if o.Kind == "look over" {
					t.Errorf("%s: looked over at %d", metal, o.Number)
				}
			}
		}
	}
}

// The supply is off before ohms are read, and nothing is said of it where none
// are.
func TestSupplyOffBeforeOhms(t *testing.T) {
	for _, current := range []string{"axles", "none"} {
		p := routed(t, "insulated", func(j *job.Job) { j.Chassis.Current = current })
		off, ohm := -1, -1
		for i, s := range p.Proving {
			if strings.Contains(s.Text.String(), "Supply off") {
				off = i
			}
			if s.Blank == "ohm" && ohm < 0 {
				ohm = i
			}
		}
		if (current == "axles") != (ohm >= 0) || ohm >= 0 && off != ohm-1 || ohm < 0 && off >= 0 {
			t.Errorf("current through %s: supply off at %d, ohms at %d", current, off, ohm)
		}
	}
}

// What an operation leaves unsaid on paper was said in its set-up, and what is
// said each time is never left out.
func TestFreshSafety(t *testing.T) {
	walkPlans(t, func(where, _ string, p *plan.Plan) {
		said, last := map[string]bool{}, ""
		for i, o := range p.Operations {
			if o.Setup != last {
				said, last = map[string]bool{}, o.Setup
			}
			lines, at := p.FreshSafety(i)
			now := map[string]bool{}
			for _, l := range lines {
				now[l.Words] = true
			}
			for _, l := range o.Safety {
				switch {
				case l.Each && !now[l.Words], !now[l.Words] && !said[l.Words]:
					t.Errorf("%s: %d does not say %q", where, o.Number, l.Words)
				case !now[l.Words] && at == 0:
					t.Errorf("%s: %d does not say where %q stands", where, o.Number, l.Words)
				}
				said[l.Words] = true
			}
		}
	})
}

// In JSON what can hurt stands with each operation and with the job, never
// null.
func TestSafetyInJSON(t *testing.T) {
	for _, metal := range []string{"zinc die casting", "magnesium"} { // the second is not machined
		p := routed(t, "stepped", func(j *job.Job) { j.Chassis.Material = metal })
		data, err := json.Marshal(p)
		if err != nil {
			t.Fatal(err)
		}
		var out struct {
			OK         bool
			Safety     map[string][]map[string]string
			Operations []struct {
				Kind   string
				Safety []map[string]string
			}
		}
		if err := json.Unmarshal(data, &out); err != nil {
			t.Fatal(err)
		}
		for _, k := range []string{"page_one", "look_for", "before", "owner"} {
			if out.Safety[k] == nil {
				t.Errorf("%s: safety/%s is null", metal, k)
			}
		}
		for _, o := range out.Operations {
			if o.Kind == "" || o.Safety == nil {
				t.Errorf("%s: an operation %q has null safety", metal, o.Kind)
			}
			for _, l := range o.Safety {
				if l["hazard"] == "" || l["words"] == "" || l["source"] == "" {
					t.Errorf("%s: %v", metal, l)
				}
			}
		}
	}
}
