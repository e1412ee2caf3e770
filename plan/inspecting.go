package plan

import (
	"fmt"
	"math"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/inspect"
	"rebush/plan/job"
	"rebush/plan/seat"
)

// inspect sets every size as made against the plan, and plans on from what was
// made.
func (m *maker) inspect() {
	for _, made := range m.j.Made {
		b := m.of(made.Bore)
		if b == nil || b.chosen == nil {
			pos := m.j.At("made/" + made.Bore)
			m.p.Findings.Raise(finding.Caution, "inspect/made", finding.Place{Where: made.Bore, File: pos.File, Line: pos.Line, Column: pos.Column},
				"sizes as made are given for a bore that the plan does not bush",
				"take them out, or see what stops the plan")
			continue
		}
		if made.Seat.Given() {
			lim := m.seatLimits(b.chosen)
			m.inspectSize(b, made, "seat", made.Seat.Float(), lim[0], lim[1])
		}
		if made.Diameter.Given() {
			m.inspectSize(b, made, "bore", made.Diameter.Float(), b.chosen.Bore[0], b.chosen.Bore[1])
		}
		if made.Centre.Given() {
			at := made.Centre.Float()
			m.inspectSize(b, made, "place", math.Hypot(at[0]-b.target[0], at[1]-b.target[1]), math.Inf(-1), 2*b.uPlace)
		}
	}
}

func (m *maker) inspectSize(b *bore, made job.Made, what string, size, lo, hi float64) {
	kind := "width"
	if what == "place" {
		kind = "centre"
	}
	r, err := m.instr.named(made.With, kind)
	if err != nil {
		m.say(finding.Caution, "survey/instrument", b,
			say.F("%v", err), "name it under instruments in the shop file with its u")
		r, _ = m.instr.named("", kind)
	}
	if what == "place" && m.instr.kindOf(made.With) != nil && !m.instr.kindOf(made.With).canRead("centre") {
		r, _ = m.instr.named("", kind)
	}
	u := r.u
	m.used("guard_k")
	d, err := inspect.Decide(inspect.Made{MM: size - r.bias, Low: lo, High: hi, UMM: u, GuardK: m.rules.V("guard_k")})
	if err != nil {
		m.say(finding.Caution, "inspect/made", b,
			say.F("%v", err), "")
		return
	}
	row := Inspection{Bore: b.name(), What: what, MadeMM: mm3(size), GuardUM: num(d.GuardMM * 1000), Result: d.Result, Next: []Next{}, Rule: d.Rule}
	row.LimitsMM = dim.Sizes(lo, hi)
	if what == "place" {
		row.LimitsMM = dim.Sizes(0, hi)
	}
	if d.Result != inspect.Accept {
		row.Next = m.next(b, what, size-r.bias, u, made, lo, hi, d)
	}
	m.p.Inspect = append(m.p.Inspect, row)
}

// next is what can be done from here, in the order found feasible.
func (m *maker) next(b *bore, what string, size, u float64, made job.Made, lo, hi float64, d inspect.Decision) []Next {
	out := []Next{}
	if d.Result == inspect.CannotTell {
		say := "measure again with a better instrument"
		if d.Never {
			say = "this instrument can accept nothing here: take one that is good to about " + sureTo(d.NeedUMM) + " mm"
		}
		out = append(out, Next{Do: say})
		if what == "seat" {
			out = append(out, Next{Do: "try the bush itself in a hole made in scrap by the same tool", Bush: b.chosen.Bush.Code, FirstTimeRight: num(d.Conform)})
		}
	}
	switch {
	case what == "place":
		out = append(out, m.nextPlace(b, made)...)
	case what == "seat" && (b.chosen.Way.Kind == seat.CapWay || b.chosen.Way.Kind == seat.OldSeatWay) && size < lo:
		out = append(out, Next{Do: "look for dirt or a burr and measure again; then a bush with a smaller outside: nothing is cut in this seat"})
	case what == "seat" && size < lo:
		out = append(out, Next{Do: "open the seat to size with the same tool", Bush: b.chosen.Bush.Code, FirstTimeRight: num(b.chosen.Chance)})
	case what == "seat" && b.chosen.Way.Kind == seat.CapWay:
		out = append(out, Next{Do: "fit a bearing with a larger outside, or turn one to this seat: nothing is pressed under a cap"})
	case what == "seat" && size > (lo+hi)/2:
		out = append(out, m.nextSeat(b, size, u)...)
	case what == "bore" && size < (lo+hi)/2:
		out = append(out, Next{Do: "size the bore again, or ease it to its own axle", Bush: b.chosen.Bush.Code, FirstTimeRight: num(b.chosen.Chance)})
	case what == "bore":
		if size <= hi+0.04 {
			out = append(out, Next{Do: fmt.Sprintf("accept it: the axle runs with %.0f um of clearance, %.0f at the most was wanted", (size-b.hole.Journal)*1000, (hi-b.hole.Journal)*1000), Bush: b.chosen.Bush.Code})
		}
		out = append(out, Next{Do: "press it out and fit a new bush into the same seat", Bush: b.chosen.Bush.Code, FirstTimeRight: num(b.chosen.Chance)})
	}
	return out
}

// sureTo is what is said of an instrument of standard uncertainty u: twice it,
// rounded down to a figure that can be read off a box.
func sureTo(u float64) string {
	if um := math.Floor(2000*u + 1e-9); um >= 1 {
		return fmt.Sprintf("%.3f", um/1000)
	}
	return fmt.Sprintf("%.4f", math.Max(1, math.Floor(20000*u+1e-9))/10000)
}

// nextSeat plans on from a seat that came out too large: the same bush with
// compound, another bush off the shelf, one turned to the seat as made, or the
// next larger seat. u is the doubt of the size.
func (m *maker) nextSeat(b *bore, size, u float64) []Next {
	h := b.hole
	h.Old = &seat.OldSeat{Low: size - u, High: size + u, Sound: true}
	shop := m.shop
	shop.Ways = nil
	out := []Next{}
	add := func(list []seat.Answer, glued, turned bool, do string) {
		for _, a := range list {
			if !a.Feasible || (a.HeldBy == "compound") != glued || a.Bush.Turned != turned {
				continue
			}
			out = append(out, Next{Do: do, Bush: a.Bush.Code, FirstTimeRight: num(math.Round(a.Chance*1e4) / 1e4)})
			return
		}
	}
	here := seat.Search(h, []seat.Mend{seat.Renew}, m.stock, shop, m.seatRule)
	add(here, false, false, "press a bush off the shelf into the seat as made")
	add(here, false, true, fmt.Sprintf("turn a bush to the seat as made (%.3f mm)", size))
	add(here, true, false, "set the bush with retaining compound")
	add(here, true, true, "turn a bush to the seat as made and set it with retaining compound")
	larger := b.hole
	larger.S = math.Max(larger.S, size/2)
	larger.Old = nil
	list := seat.Search(larger, []seat.Mend{seat.Rebush}, m.stock, m.shop, m.seatRule)
	var bigger []seat.Answer
	for _, a := range list {
		if a.Feasible && a.SeatLow > size {
			bigger = append(bigger, a)
		}
	}
	add(bigger, false, false, "make the next larger seat")
	add(bigger, false, true, "make the next larger seat and turn a bush for it")
	if len(out) == 0 {
		out = append(out, Next{Do: "nothing on the list fits this seat: plug it and bore again, or send it out"})
	}
	return out
}

// nextPlace plans on from a seat that stands beside its target.
func (m *maker) nextPlace(b *bore, made job.Made) []Next {
	a := b.chosen
	at := made.Centre.Float()
	out := []Next{}
	if m.shop.Lathe {
		bar := math.Ceil(a.Bush.ODHigh + 1)
		e, err := inspect.PutBack(at, b.target, a.Bush.ODHigh, a.Bore[1], bar)
		if err == nil && e.LeastWallMM >= m.seatRule.LeastWall {
			out = append(out, Next{Do: fmt.Sprintf("turn an eccentric bush: offset %.3f mm, thin side at %.0f degrees, %.3f mm of packing under one of three jaws on %.0f mm bar, least wall %.2f mm",
				e.OffsetMM, math.Mod(e.ClockDeg, 360), e.PackingMM, bar, e.LeastWallMM), Bush: "eccentric"})
		}
	}
	for i, x := range m.gears {
		if x.g.Wheel.On != b.shaft.Name {
			continue
		}
		g := m.targetOut.Gears[i]
		d := [2]float64{at[0] - b.target[0], at[1] - b.target[1]}
		share := 1 - x.share
		if b.b.Side == job.Right {
			share = x.share
		}
		shift := -(g.Towards[0]*d[0] + g.Towards[1]*d[1]) * share
		mid := (g.Near+g.Far)/2 + shift
		word := "outside"
		if mid >= x.window.Lo && mid <= x.window.Hi {
			word = "inside"
		}
		out = append(out, Next{Do: fmt.Sprintf("accept it: %s would have %.3f mm of backlash, %s its limits", x.g.Name, x.play(mid), word), Bush: a.Bush.Code})
	}
	return out
}
