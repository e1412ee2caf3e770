package plan_test

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"rebush/plan"
	"rebush/plan/job"
	"rebush/plan/world"
)

// tipRoom is what the tip of a turning bar keeps on the radius from a hole that it
// must not touch, mm.
const tipRoom = 0.1

// passes walks the operations of a plan in their order and says of each tool that
// goes through a near hole to a far one why it cannot, or what it spoils there. It
// knows the holes as they are at that moment, the tools by the shop file, and
// nothing of how the route was decided.
//
// A tool that turns about a standing axis needs a circle: twice its largest radius
// about that axis, its shank's or its own, or what its single point is set to. The
// near hole stands e beside the axis, so its radius has to be that and e more.
func passes(p *plan.Plan) (bad []string, walked map[string]int) {
	walked = map[string]int{}
	j := p.Job
	hole, done, place := map[string]float64{}, map[string]bool{}, map[string][2]float64{}
	side, mate := map[string]string{}, map[string]string{}
	for i := range j.Shafts {
		names := [2]string{}
		for k, s := range job.Sides {
			names[k] = j.Shafts[i].Name + "." + string(s)
			side[names[k]] = string(s)
		}
		mate[names[0]], mate[names[1]] = names[1], names[0]
	}
	for _, x := range p.Survey {
		hole[x.Bore] = x.DiameterMM.Float()
	}
	for _, x := range p.Targets {
		if x.TargetMM != nil {
			place[x.Bore] = [2]float64{x.TargetMM[0].Float(), x.TargetMM[1].Float()}
		}
	}
	up, lathe := map[string]string{}, j.Shop.MachineKind == "lathe"
	for _, s := range p.Setups {
		if s.Clamping {
			up[s.Name] = string(s.Plate)
		}
	}
	for _, o := range p.Operations {
		plate, clamped := up[o.Setup]
		cutting := o.Kind == "spot" || o.Kind == "locate" || o.Kind == "open" || o.Kind == "chamfer" ||
			o.Kind == "size seat" || o.Kind == "size bore"
		if !clamped || !cutting || strings.HasSuffix(o.Tool.String(), "in the fingers") {
			continue
		}
		at := place[o.Bore]
		if o.AtMM != nil {
			at = [2]float64{o.AtMM[0].Float(), o.AtMM[1].Float()}
		}
		near, both := mate[o.Bore], strings.Contains(o.Do.String(), mate[o.Bore])
		bar := strings.HasPrefix(o.Tool.String(), "boring")
		size := o.ToolMM.Float()
		if bar || o.Kind == "size bore" {
			size = o.HoleMM
		}
		say := func(f string, args ...any) {
			bad = append(bad, fmt.Sprintf("%d %s, %s: ", o.Number, o.Do, o.Tool)+fmt.Sprintf(f, args...))
		}
		shank, reach := shopTool(j, o.Tool.String())
		if both {
			walked["both at once"]++
			if math.Hypot(at[0]-place[near][0], at[1]-place[near][1]) > 0.0006 {
				say("%s and %s stand on two axes", o.Bore, near)
			}
		} else if side[o.Bore] != plate {
			walked["far"]++
			pass := math.Max(size, shank)
			e := math.Hypot(at[0]-place[near][0], at[1]-place[near][1])
			if e < 0.0006 {
				e = 0
			}
			room := hole[near]/2 - e - pass/2
			switch {
			case lathe && bar: // its slide sets it out when it is past
				walked["set out on the lathe"]++
				if e > 0 {
					say("%s stands %.3f beside, and the work turns about one axis", near, e)
				}
			case room < -0.0006: // sizes are printed to a thousandth
				say("needs %.3f, %s is %.3f and stands %.3f beside", pass, near, hole[near], e)
			case done[near] && room < tipRoom-1e-6:
				say("has %.3f on the radius in the finished %s", room, near)
			case bar && room < tipRoom-1e-6:
				say("its tip has %.3f on the radius in %s", room, near)
			}
			if done[near] && room >= tipRoom-1e-6 {
				walked["through a finished seat, clear"]++
			}
		}
		if (both || side[o.Bore] != plate) && reach > 0 {
			walked["reach"]++
			if want := j.Chassis.Width.Float() + 2; reach < want-1e-6 {
				say("reaches %.2f, has to go %.2f deep", reach, want)
			}
		} else if thick := j.Chassis.Thickness.On(job.Side(side[o.Bore])).Float() + 2; reach > 0 && shank > size &&
			reach < thick-1e-6 {
			say("its shank of %.2f comes down on the plate: reaches %.2f of %.2f", shank, reach, thick)
		}
		for _, name := range []string{o.Bore, near} {
			if name == near && !both {
				continue
			}
			if hole[name] = o.HoleMM; o.Kind == "spot" {
				hole[name] = 0 // no hole yet
			}
			place[name] = at
			done[name] = o.Kind == "size seat" || o.Kind == "size bore"
		}
	}
	return bad, walked
}

// shopTool is the shank and the reach of a tool of the shop, 0 where it has not said.
func shopTool(j *job.Job, name string) (shank, reach float64) {
	for kind, list := range map[string][]job.Tool{"end mill": j.Shop.EndMills, "reamer": j.Shop.Reamers,
		"drill": j.Shop.Drills} {
		for _, t := range list {
			if strings.HasPrefix(name, t.Name+" ") && strings.HasSuffix(name, kind) {
				return t.Shank.Float(), t.Reach.Float()
			}
		}
	}
	return 0, 0
}

// Nothing is cut through a finished near seat that could be touched, and what goes
// through a near hole passes it at that moment: over every job and many trucks.
func TestWhatPassesTheNearHole(t *testing.T) {
	all, broken := map[string]int{}, 0
	look := func(name string, p *plan.Plan) {
		bad, walked := passes(p)
		for k, n := range walked {
			all[k] += n
		}
		if len(bad) > 0 {
			broken++
		}
		for _, s := range bad {
			t.Errorf("%s: %s", name, s)
		}
	}
	for _, f := range demos(t) {
		look(filepath.Base(f), cutPlan(t, f, plan.Options{NoChance: true}))
	}
	for seed := uint64(1); seed <= trucks(t); seed++ {
		look(fmt.Sprint("truck ", seed), cutTruck(t, world.Truck(seed, world.Options{})))
	}
	t.Logf("%d broken, walked %v", broken, all)
	if all["far"] == 0 || all["both at once"] == 0 {
		t.Errorf("walked %v", all)
	}
}
