package plan

import (
	"math"

	"rebush/fits/say"
	"rebush/plan/inspect"
	"rebush/plan/mesh"
	"rebush/plan/seat"
	"rebush/plan/target"
)

// checks are what is asked of the places.
func (x *together) checks() []inspect.Check {
	var out []inspect.Check
	for i, d := range x.t.Drives {
		if i < len(x.t.Output.Gears) {
			out = append(out, x.mesh(d, x.t.Output.Gears[i]))
			out = append(out, x.lean(d, x.t.Output.Gears[i])...)
		}
	}
	for i := range x.t.Axles {
		out = append(out, x.line(i)...)
	}
	for i := range x.holes {
		if x.holes[i].Chosen != nil {
			out = append(out, x.round(i)...)
		}
	}
	return out
}

// mesh asks for the centre distance of a mesh under load. One that is not
// trusted moved nothing, and refuses nothing.
func (x *together) mesh(d mesh.Drive, g target.GearOut) inspect.Check {
	holes := x.of(d.Shaft)
	uMate := d.UMate
	if d.OnJob() {
		holes, uMate = append(holes, x.of(d.Mate)...), 0
	}
	u := target.GivenDoubt(d.UGeom, uMate)
	along := func(axle int, share float64) {
		part := []float64{1 - share, share}
		for k, i := range x.of(axle) {
			h := x.holes[i]
			if len(x.t.Axles[axle].Holes) == 1 {
				part[k] = 1
			}
			u = math.Hypot(u, part[k]*h.uOff*(h.Load[0]*g.Towards[0]+h.Load[1]*g.Towards[1]))
		}
	}
	along(d.Shaft, d.Share)
	if d.OnJob() {
		along(d.Mate, d.MateShare)
	}
	lo, hi := d.Window.Lo, d.Window.Hi
	return inspect.Check{Name: say.F("centre distance of %s", d.Name), Holes: holes, Low: math.Min(lo, hi), High: math.Max(lo, hi), UMM: u,
		Tells: !d.Trusted || d.Window.Empty,
		Figure: func(at [][2]float64) float64 {
			wheel, mate := x.stands(d.Shaft, at), []target.Stand(nil)
			if d.OnJob() {
				mate = x.stands(d.Mate, at)
			}
			return target.Distance(d, wheel, mate)
		},
		Try: "the doubt is that of the gears: try the mesh with a dummy axle and a paper strip before its bores are opened",
		Words: func(a float64) say.Text {
			return say.F("%v of backlash, wanted %v", say.MM(d.Play(a), 3), say.MMs(d.Play(lo), d.Play(hi), 3))
		}}
}

// lean asks what the teeth lose where both bores of a wheel's shaft are unlike.
func (x *together) lean(d mesh.Drive, g target.GearOut) []inspect.Check {
	spacing := mesh.Spacing(x.j.Chassis)
	limit, ok := d.LeanLimit(x.w.rules.V("lean_share_of_backlash"))
	angle, err := d.Pair.OperatingAngle(g.Centre)
	if len(x.of(d.Shaft)) != 2 || d.Face <= 0 || spacing <= 0 || !ok || err != nil {
		return nil
	}
	return []inspect.Check{{Name: say.F("backlash that %s loses by lean", d.Name), Holes: x.of(d.Shaft), Low: math.Inf(-1), High: limit,
		Figure: func(at [][2]float64) float64 {
			s := x.stands(d.Shaft, at)
			return target.LeanLoss(s[0], s[1], g.Towards, spacing, d.Face, angle)
		},
		Words: func(float64) say.Text { return x.leanWords(d.Shaft) }}}
}

// leanWords says how far a shaft leans as it was made.
func (x *together) leanWords(axle int) say.Text {
	i := x.of(axle)
	at := x.here()
	l, r := x.bore(i[0], at), x.bore(i[1], at)
	plan, tilt, err := target.Skew(l, r, mesh.Spacing(x.j.Chassis))
	if err != nil {
		return ""
	}
	return say.F("the shaft leans %.2f degrees along the truck, %.2f in height", math.Abs(plan), math.Abs(tilt))
}

// line asks how far the bores of a shaft are out of line, and how much of its
// running clearance the shaft needs in them.
func (x *together) line(axle int) []inspect.Check {
	holes, spacing := x.of(axle), mesh.Spacing(x.j.Chassis)
	if len(holes) != 2 || spacing <= 0 {
		return nil
	}
	var out []inspect.Check
	for _, i := range holes {
		h := x.holes[i]
		if h.Chosen == nil {
			continue
		}
		if len(out) == 0 {
			out = append(out, inspect.Check{Name: say.F("bores of %s out of line", h.Shaft.Name), Holes: holes,
				Low: math.Inf(-1), High: x.w.rules.V("out_of_line_mm"),
				Figure: func(at [][2]float64) float64 { return apart(x.bore(holes[0], at), x.bore(holes[1], at)) },
				Words:  func(float64) say.Text { return x.leanWords(axle) }})
		}
		out = append(out, inspect.Check{Name: say.F("running clearance that the lean takes in %s", h.Name()), Holes: holes,
			Low: math.Inf(-1), High: h.most, UMM: 2 * h.uOff * x.wasGauged(i),
			Figure: func(at [][2]float64) float64 {
				return target.LeanTakes(x.bore(holes[0], at), x.bore(holes[1], at), spacing, h.Chosen.Bearing)
			},
			Words: func(float64) say.Text { return x.leanWords(axle) }})
	}
	return out
}

// wasGauged is 1 for a hole whose bore was gauged, so that its clearance is in
// doubt, and 0 where the most that it may have counts.
func (x *together) wasGauged(i int) float64 {
	if x.holes[i].made.Diameter.Given() {
		return 1
	}
	return 0
}

// round asks what stands round one seat: the metal left to edges and other
// holes, and whether it takes the worn hole in.
func (x *together) round(i int) []inspect.Check {
	h := x.holes[i]
	a := h.Chosen
	about := func(at [][2]float64) seat.Hole { return x.seats.In.About(x.site(i, false), x.around(at), at[i]) }
	var out []inspect.Check
	near := about(x.here())
	if left, what := near.MetalLeft(h.seat); !math.IsInf(left, 1) && a.HeldBy != seat.ByCap {
		out = append(out, inspect.Check{Name: say.F("metal left round %s", h.Name()), Holes: x.inPlate(i),
			Low: seat.LeastMetal(a, x.seats.In.Rules), High: math.Inf(1),
			Figure: func(at [][2]float64) float64 {
				about := about(at)
				left, _ := about.MetalLeft(h.seat)
				return left
			},
			Words: func(float64) say.Text { return say.F("the least is to %s", what) }})
	}
	if a.Mend == seat.Rebush && !a.Filled && h.made.Seat.Given() {
		g, _ := gaugeOf(x.w.instr, h.made.With, inspect.Seat)
		out = append(out, inspect.Check{Name: say.F("cut beyond the worn wall of %s", h.Name()), Holes: []int{i}, Low: 0, High: math.Inf(1),
			UMM:    math.Hypot(h.Survey.U, g.UMM/2),
			Figure: func(at [][2]float64) float64 { return seat.CleanUp(h.seat, about(at).S) },
			Words:  func(float64) say.Text { return "none of the worn wall may show" }})
	}
	return out
}
