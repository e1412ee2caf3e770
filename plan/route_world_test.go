package plan_test

import (
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"rebush/plan"
	"rebush/plan/job"
	"rebush/plan/world"
)

// pinName reads the size of a pin off its name.
var pinName = regexp.MustCompile(`^pin ([0-9.]+)( in)?$`)

// cutTruck is the plan of a truck, of a way that cuts where there is one.
func cutTruck(t *testing.T, w world.World) *plan.Plan {
	t.Helper()
	j, err := w.Read(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Make(j, plan.Options{NoChance: true})
	if err == nil && !p.Cuts && cuttingWay(p) != "" {
		p, err = plan.Make(j, plan.Options{NoChance: true, Way: cuttingWay(p)})
	}
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Whatever truck, shop and drawer: every hole that is gauged has a go and a no
// go, no pin lies outside the set, every cut has its turns, no dials are read on
// a machine that has none, and nobody is told of a jig that the shop has not.
func TestRoutesOfTrucks(t *testing.T) {
	n := uint64(60)
	if s := os.Getenv("TRUCKS"); s != "" {
		v, err := strconv.ParseUint(s, 10, 64)
		if err != nil {
			t.Fatal(err)
		}
		n = v
	}
	walked := map[string]int{}
	for seed := uint64(1); seed <= n; seed++ {
		w := world.Truck(seed, world.Options{})
		p := cutTruck(t, w)
		j := p.Job
		if hours := hoursSaid(p); hours != nil && len(p.Operations) > 0 {
			walked["hours"]++
			if want := hoursOf(p, j.Shop.SetupHours, j.Shop.StripHours); !(math.Abs(*hours-want) <= 0.0051) {
				t.Errorf("truck %d: %v hours, its rows add up to %v", seed, *hours, want)
			}
		}
		for _, o := range p.Operations {
			walked["operations"]++
			said := (o.Do + " " + o.Tool + " " + o.Approach + " " + o.GaugeFirst + " " + o.Holding + " " + o.Note).String()
			if strings.Contains(said, "no cutting figures") {
				t.Errorf("truck %d, %d %s: %s", seed, o.Number, o.Do, o.Note)
			}
			if o.LimitsMM != nil && o.Kind != "turn" && o.Kind != "scrap" {
				walked["gauged"]++
				if o.Go == "" || o.NoGo == "" {
					t.Errorf("truck %d, %d %s: go %q, no go %q", seed, o.Number, o.Do, o.Go, o.NoGo)
				}
				inSet(t, j, o)
			}
			loose := j.Shop.MachineKind == "drill press" || j.Shop.MachineKind == "hand"
			if loose && (o.DialMM != nil || o.Approach != "") {
				t.Errorf("truck %d, %d %s: dials %v %s on a %s", seed, o.Number, o.Do, o.DialMM, o.Approach, j.Shop.MachineKind)
			}
			if loose && j.Shop.Jig != "pinned" {
				walked["without a jig"]++
				if strings.Contains(said, "jig") || strings.Contains(said, "slip bush") || o.AtMM != nil {
					t.Errorf("truck %d has no jig, %d: %s", seed, o.Number, said)
				}
			}
		}
	}
	if walked["gauged"] < int(n) || walked["hours"] < 20 {
		t.Errorf("walked %v", walked)
	}
}

// hoursSaid are the hours of the way that is planned, nil where none are said.
func hoursSaid(p *plan.Plan) *float64 {
	if p.Verdict == nil {
		return nil
	}
	for _, o := range p.Verdict.Options {
		if o.Name == p.Way {
			return o.Hours
		}
	}
	return nil
}

// inSet holds the pins of an operation against the set of the shop.
func inSet(t *testing.T, j *job.Job, o plan.Operation) {
	t.Helper()
	for _, name := range []string{o.Go.String(), o.NoGo.String()} {
		m := pinName.FindStringSubmatch(name)
		if m == nil {
			continue
		}
		d, err := strconv.ParseFloat(m[1], 64)
		if err != nil {
			t.Fatal(err)
		}
		if m[2] != "" {
			d *= 25.4
		}
		pins := j.Shop.Pins
		if pins == nil || d < pins.From.Float()-0.0015 || d > pins.To.Float()+0.0015 {
			t.Errorf("%d %s: %s is not in the set %+v", o.Number, o.Do, name, pins)
		}
		lim := o.LimitsMM
		if d < lim.Min.Float()-pins.Step.Float()-0.0015 || d > lim.Max.Float()+pins.Step.Float()+0.0015 {
			t.Errorf("%d %s: %s is more than a step from %v to %v", o.Number, o.Do, name, lim.Min, lim.Max)
		}
	}
}
