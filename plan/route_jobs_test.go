package plan_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/table"
	"rebush/plan"
	"rebush/plan/job"
)

// demoRoutes are the jobs whose whole route is looked at.
var demoRoutes = []string{"pellinthwaite", "gullwrack", "wexmarrow", "cragwinnow", "cragwinnow-motor",
	"plain", "stepped", "insulated", "worm-moved", "oil-way", "renew", "mandrels", "odd-reamer"}

// routed reads a job, changes what the change says and plans it.
func routed(t testing.TB, name string, change func(*job.Job)) *plan.Plan {
	t.Helper()
	j, err := job.Read(fileOf(t, name+".yaml"), job.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if change != nil {
		change(j)
	}
	p, err := plan.Make(j, plan.Options{NoChance: true})
	if err == nil && !p.Cuts {
		p, err = plan.Make(j, plan.Options{NoChance: true, Way: cuttingWay(p)})
	}
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// machines are three shops side by side for one job.
var machines = map[string]func(*job.Job){
	"mill":        nil,
	"drill press": func(j *job.Job) { j.Shop.MachineKind, j.Shop.Jig = "drill press", "pinned" },
	"lathe": func(j *job.Job) {
		j.Shop.MachineKind, j.Shop.Spindle = "lathe", []float64{70, 120, 200, 350, 600, 1100}
	},
}

func ops(p *plan.Plan, kind string) []plan.Operation {
	var out []plan.Operation
	for _, o := range p.Operations {
		if string(o.Kind) == kind {
			out = append(out, o)
		}
	}
	return out
}

func tools(p *plan.Plan, kinds ...string) []string {
	var out []string
	for _, o := range p.Operations {
		if slices.Contains(kinds, string(o.Kind)) {
			out = append(out, o.Bore+": "+o.Tool.String())
		}
	}
	return out
}

// Every route, on every machine, can be carried out with what the shop owns.
func TestRoutesCanBeCarriedOut(t *testing.T) {
	for _, name := range demoRoutes {
		for machine, change := range machines {
			t.Run(name+" on a "+machine, func(t *testing.T) {
				if machine == "mill" {
					machine = "own machine"
				}
				p := routed(t, name, change)
				if !p.OK {
					t.Fatal("not to be machined: " + p.Findings[0].Text)
				}
				carriedOut(t, p)
				twice := routed(t, name, change)
				for i := range p.Operations {
					if a, b := fmt.Sprint(p.Operations[i].Do, p.Operations[i].Tool, p.Operations[i].Note), fmt.Sprint(twice.Operations[i].Do, twice.Operations[i].Tool, twice.Operations[i].Note); a != b {
						t.Errorf("two plans differ: %s, %s", a, b)
					}
				}
			})
		}
	}
}

func carriedOut(t *testing.T, p *plan.Plan) {
	t.Helper()
	own := ownedTools(p)
	gauged := map[string]bool{}
	cuts := 0
	for i, o := range p.Operations {
		if o.Number != 10*(i+1) {
			t.Errorf("operation %d stands at place %d", o.Number, i+1)
		}
		last := o.Kind == "gauge" && (i+1 == len(p.Operations) || p.Operations[i+1].Kind != "gauge")
		if o.MayWait != (last || o.Kind == "set up" || o.Kind == "cure") {
			t.Errorf("%d %s: may wait %v; it rests before the first cut of a set-up, after the last gauge, and while it cures", o.Number, o.Kind, o.MayWait)
		}
		if o.RPM != nil {
			cuts++
			if o.RPMIdeal == nil || *o.RPM > *o.RPMIdeal+0.5 {
				t.Errorf("%d %s: %v rev/min is above the ideal", o.Number, o.Do, *o.RPM)
			}
			if o.Backing == "" {
				t.Errorf("%d %s: nothing backs it", o.Number, o.Do)
			}
			if *o.RPM > 0 && len(p.Job.Shop.Spindle) > 0 && !slices.Contains(p.Job.Shop.Spindle, *o.RPM) {
				t.Errorf("%d: %v is no step of this spindle", o.Number, *o.RPM)
			}
			if o.Minutes == nil || !(*o.Minutes > 0) {
				t.Errorf("%d %s takes no time", o.Number, o.Do)
			}
		}
		switch o.Kind {
		case "locate", "open":
			if !own[o.Tool.String()] && !strings.HasPrefix(o.Tool.String(), "boring") {
				t.Errorf("%d: %q is neither in the drawer nor to be bought", o.Number, o.Tool)
			}
		case "gauge":
			gauged[o.Bore] = true
		case "press":
			for _, s := range p.Seats {
				if s.SeatMM != nil && !gauged[s.Bore] {
					t.Errorf("%d presses before the seat of %s is gauged", o.Number, s.Bore)
				}
			}
			if o.GaugeFirst == "" || o.Backing == "" {
				t.Errorf("%d: box %q, backing %q", o.Number, o.GaugeFirst, o.Backing)
			}
		case "wheels":
			if o.GaugeFirst == "" {
				t.Errorf("%d has no box before the wheels", o.Number)
			}
		}
	}
	if first := slices.IndexFunc(p.Operations, func(o plan.Operation) bool { return o.Kind == "locate" || o.Kind == "open" }); first >= 0 {
		if cuts < 3 || p.Operations[first].GaugeFirst == "" {
			t.Errorf("%d cuts; the first has the box %q", cuts, p.Operations[first].GaugeFirst)
		}
	}
}

// ownedTools names what the drawer holds and what is to be bought.
func ownedTools(p *plan.Plan) map[string]bool {
	own := map[string]bool{}
	for _, e := range p.Job.Shop.EndMills {
		own[e.Name+" end mill"] = true
	}
	for _, d := range p.Job.Shop.Drills {
		own[d.Name+" drill"] = true
	}
	for _, b := range p.Buy {
		own[strings.SplitN(b.What.String(), ":", 2)[0]] = true
	}
	for _, o := range p.Operations {
		mm := o.ToolMM.Float()
		for _, set := range p.Job.Shop.DrillSeries {
			switch {
			case set == "metric 0.1" && math.Abs(mm*10-math.Round(mm*10)) < 1e-6 && strings.HasSuffix(o.Tool.String(), "mm drill"),
				set == "number" && strings.HasPrefix(o.Tool.String(), "#"),
				set == "letter" && len(strings.Fields(o.Tool.String())[0:]) > 0 && len(strings.Split(o.Tool.String(), " ")[0]) == 1,
				set == "fraction" && strings.Contains(o.Tool.String(), "in drill"):
				own[o.Tool.String()] = true
			}
		}
	}
	return own
}

func TestRouteFollowsTheReamers(t *testing.T) {
	before := routed(t, "plain", nil)
	after := routed(t, "plain", func(j *job.Job) { j.Shop.Reamers = j.Shop.Reamers[1:] })
	had := func(p *plan.Plan) bool {
		return slices.ContainsFunc(tools(p, "size seat"), func(s string) bool { return strings.Contains(s, "6 mm H7 reamer") })
	}
	if !had(before) || had(after) {
		t.Errorf("with the reamer %v, without %v", tools(before, "size seat"), tools(after, "size seat"))
	}
	if len(after.Operations) == 0 {
		t.Error("without the reamer nothing is planned, though there is a boring head")
	}
}

func TestRouteFollowsTheSpindle(t *testing.T) {
	steps := []float64{150, 400, 800}
	p := routed(t, "plain", func(j *job.Job) { j.Shop.Spindle = steps })
	n := 0
	for _, o := range p.Operations {
		if o.RPM != nil {
			n++
			if *o.RPM != 0 && !slices.Contains(steps, *o.RPM) {
				t.Errorf("%s at %v", o.Do, *o.RPM)
			}
		}
	}
	if n == 0 {
		t.Fatal("nothing turns")
	}
	// All steps too fast: by hand.
	for _, o := range ops(routed(t, "plain", func(j *job.Job) { j.Shop.Spindle = []float64{9000, 12000} }), "size seat") {
		if *o.RPM != 0 || !strings.Contains(o.Note.String(), "by hand") {
			t.Errorf("%s at %v: %s", o.Do, *o.RPM, o.Note)
		}
	}
	// A variable spindle is set to a figure that its scale shows.
	for _, o := range ops(routed(t, "plain", func(j *job.Job) { j.Shop.Spindle, j.Shop.SpindleMin, j.Shop.SpindleMax = nil, 100, 2000 }), "size seat") {
		if math.Mod(*o.RPM, 10) != 0 || *o.RPM > *o.RPMIdeal || *o.RPM < *o.RPMIdeal-10.5 {
			t.Errorf("%s at %v, ideal %v", o.Do, *o.RPM, *o.RPMIdeal)
		}
	}
}

func TestRouteFollowsTheJig(t *testing.T) {
	with := routed(t, "wexmarrow", nil)
	without := routed(t, "wexmarrow", func(j *job.Job) { j.Shop.Jig = "none" })
	if !with.OK || without.OK || len(without.Operations) != 0 {
		t.Fatalf("with the jig %v, without %v and %d operations", with.OK, without.OK, len(without.Operations))
	}
	if !slices.ContainsFunc(without.Findings, func(f finding.Finding) bool { return f.Rule.Name() == "no jig" }) {
		t.Error("nothing says that the jig is missing")
	}
	for _, o := range ops(with, "locate") {
		if !strings.Contains(o.Note.String(), "slip bush") {
			t.Errorf("%s without its slip bush", o.Do)
		}
	}
}

func TestRouteFollowsTheMachine(t *testing.T) {
	seen := map[string]string{}
	for machine, change := range machines {
		p := routed(t, "plain", change)
		n := 0
		for _, s := range p.Setups {
			if s.Clamping {
				n++
			}
		}
		want := map[string]int{"mill": 1, "drill press": 2, "lathe": 1}[machine]
		if n != want {
			t.Errorf("%s: %d clampings, want %d", machine, n, want)
		}
		text := strings.Join(tools(p, "locate", "open", "size seat"), "; ")
		for other, its := range seen {
			if its == text {
				t.Errorf("%s and %s have the same operations: %s", machine, other, text)
			}
		}
		seen[machine] = text
		if machine == "lathe" {
			for _, o := range p.Operations {
				if o.Setup == "A" && o.RPMIdeal != nil && *o.RPMIdeal > 300.5 {
					t.Errorf("%s at %v on a faceplate", o.Do, *o.RPMIdeal)
				}
			}
		}
	}
}

// The tools that reach the far plate are as long as the chassis is wide; a
// wider chassis is turned over, its dials are mirrored and the sheet says so.
func TestRouteFarPlate(t *testing.T) {
	wide := routed(t, "plain", func(j *job.Job) {
		j.Chassis.Width = dim.Must("30 mm")
		for i := range j.Shafts {
			if j.Shafts[i].HubToHub.Given() {
				j.Shafts[i].HubToHub = dim.Must("32 mm")
			}
		}
	})
	var turned plan.Setup
	for _, s := range wide.Setups {
		if s.Mirrored {
			turned = s
		}
	}
	if turned.Name == "" || turned.Plate != "right" {
		t.Fatalf("a chassis of 30 mm is not turned over: %+v", wide.Setups)
	}
	length := wide.Job.Chassis.Length.Float()
	n := 0
	for _, o := range wide.Operations {
		if o.Setup != turned.Name {
			continue
		}
		if o.Kind == "set up" && (!strings.Contains(o.Do.String(), "MIRRORED") || !strings.Contains(o.Note.String(), "in front axle.left: from below, its foot in the seat")) {
			t.Errorf("%s %s", o.Do, o.Note)
		}
		if o.DialMM == nil {
			continue
		}
		for _, g := range wide.Targets {
			if g.Bore != o.Bore {
				continue
			}
			n++
			if d := o.DialMM[0].Float() + g.TargetMM[0].Float() - length; math.Abs(d) > 0.0011 || math.Abs(o.DialMM[1].Float()-g.TargetMM[1].Float()) > 0.0011 {
				t.Errorf("%s: dials %v, drawing %v, length %v", o.Do, *o.DialMM, *g.TargetMM, length)
			}
			if !strings.Contains(o.Approach.String(), "MIRRORED") {
				t.Errorf("%s: %s", o.Do, o.Approach)
			}
		}
	}
	if n == 0 {
		t.Error("no dials in the turned set-up")
	}
	for _, o := range routed(t, "plain", nil).Operations {
		if strings.Contains((o.Do + o.Note + o.Approach).String(), "MIRRORED") {
			t.Errorf("a far plate that is reached from the left is not mirrored: %s", o.Do)
		}
	}
}

// Own rules reach the route.
func TestRouteFollowsTheRules(t *testing.T) {
	minutes := func(change func(*table.Rules)) float64 {
		p := routed(t, "plain", func(j *job.Job) {
			if change != nil {
				change(j.Shop.Rules)
			}
		})
		sum := 0.0
		for _, o := range p.Operations {
			if o.Minutes != nil {
				sum += *o.Minutes
			}
		}
		return sum
	}
	plain := minutes(nil)
	slow := minutes(func(r *table.Rules) {
		if err := r.Set("minutes_press", 15, math.NaN(), "test"); err != nil {
			t.Fatal(err)
		}
	})
	if d := slow - plain; math.Abs(d-30) > 0.15 { // two bushes and one wheel, each to a tenth
		t.Errorf("three presses of 15 minutes in place of 5 make the job %.1f minutes longer", d)
	}
}
