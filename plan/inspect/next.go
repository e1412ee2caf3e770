package inspect

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
)

// RuleMade is raised of sizes as made that cannot be set against a plan.
const RuleMade finding.Rule = "inspect/made"

// next is what can be done from a size, in the order found feasible.
func (h *Hole) next(what What, size, u float64, made job.Made, s Shop, d Decision) []Next {
	var out []Next
	if d.Result == CannotTell {
		out = append(out, h.measure(what, d)...)
	}
	lo, hi := h.SeatMM[0], h.SeatMM[1]
	switch what {
	case Place:
		return append(append(out, h.eccentric(made, s)...), h.meshes(made)...)
	case Seat:
		switch {
		case h.Uncut && size < lo:
			out = append(out, Next{Do: "look for dirt or a burr and measure again; " +
				"then a bush with a smaller outside: nothing is cut in this seat"})
		case size < lo:
			out = append(out, h.asPlanned("open the seat to size with the same tool"))
		case h.Capped:
			out = append(out, Next{Do: "fit a bearing with a larger outside, or turn one to this seat: " +
				"nothing is pressed under a cap"})
		case size > (lo+hi)/2:
			out = append(out, h.refit(size, u)...)
		}
		return out
	}
	if lo, hi = h.BoreMM[0], h.BoreMM[1]; size < (lo+hi)/2 {
		return append(out, h.asPlanned("size the bore again, or ease it to its own axle"))
	}
	if size <= hi+s.LetPassMM {
		has, most := say.Um((size-h.JournalMM)*1000, 0), say.Um((hi-h.JournalMM)*1000, 0).Bare()
		out = append(out, Next{Bush: h.Bush,
			Do: say.F("accept it: the axle runs with %v of clearance, %v at the most was wanted", has, most)})
	}
	return append(out, h.asPlanned("press it out and fit a new bush into the same seat"))
}

// asPlanned is a way that leads back to the plan.
func (h *Hole) asPlanned(do say.Text) Next {
	return Next{Do: do, Bush: h.Bush, FirstTimeRight: dim.Number(h.Chance)}
}

// measure is what an instrument that cannot tell asks for.
func (h *Hole) measure(what What, d Decision) []Next {
	out := []Next{{Do: "measure again with a better instrument"}}
	if d.Never {
		out[0].Do = say.F("this instrument can accept nothing here: take one that is good to about %v", sureTo(d.NeedUMM))
	}
	if what == Seat {
		out = append(out, Next{Do: "try the bush itself in a hole made in scrap by the same tool", Bush: h.Bush,
			FirstTimeRight: dim.Number(d.Conform)})
	}
	return out
}

// sureTo is what is said of an instrument of standard uncertainty u: twice it,
// rounded down to a figure that can be read off a box.
func sureTo(u float64) say.Figure {
	if um := math.Floor(2000*u + 1e-9); um >= 1 {
		return say.MM(um/1000, 3).About()
	}
	return say.MM(math.Max(1, math.Floor(20000*u+1e-9))/10000, 4).About()
}

// refit plans on from a seat that came out too large: another bush off the
// shelf, one turned to the seat as made, compound, or the next larger seat. u
// is the doubt of the size.
func (h *Hole) refit(size, u float64) []Next {
	var out []Next
	add := func(list []Offer, bonded, turned bool, do say.Text) {
		for _, o := range list {
			if o.Bonded == bonded && o.Turned == turned {
				out = append(out, Next{Do: do, Bush: o.Bush, FirstTimeRight: dim.Number(dim.Near(o.Chance, 4))})
				return
			}
		}
	}
	here := h.Here(size-u, size+u)
	add(here, false, false, "press a bush off the shelf into the seat as made")
	add(here, false, true, say.F("turn a bush to the seat as made (%v)", say.MM(size, 3)))
	add(here, true, false, "set the bush with retaining compound")
	add(here, true, true, "turn a bush to the seat as made and set it with retaining compound")
	var larger []Offer
	for _, o := range h.Larger(size) {
		if o.SeatMM > size {
			larger = append(larger, o)
		}
	}
	add(larger, false, false, "make the next larger seat")
	add(larger, false, true, "make the next larger seat and turn a bush for it")
	if len(out) == 0 {
		out = append(out, Next{Do: "nothing on the list fits this seat: plug it and bore again, or send it out"})
	}
	return out
}

// eccentric puts a hole back that stands beside its place, where there is a
// lathe and the bush keeps its wall.
func (h *Hole) eccentric(made job.Made, s Shop) []Next {
	if !s.Lathe {
		return nil
	}
	bar := math.Ceil(h.BushMM + 1)
	e, err := PutBack(made.Centre.Float(), h.At, h.BushMM, h.BoreMM[1], bar)
	if err != nil || e.LeastWallMM < s.LeastWallMM {
		return nil
	}
	return []Next{{Bush: "eccentric", Do: say.F("turn an eccentric bush: offset %v, thin side at %.0f degrees, "+
		"%v of packing under one of three jaws on %.0f mm bar, least wall %v",
		say.MM(e.OffsetMM, 3), math.Mod(e.ClockDeg, 360),
		say.MM(e.PackingMM, 3), bar, say.MM(e.LeastWallMM, 2))}}
}

// meshes tells what backlash each mesh would have with the hole where it is.
func (h *Hole) meshes(made job.Made) []Next {
	var out []Next
	at := made.Centre.Float()
	for _, m := range h.Meshes {
		a := m.MidMM - (m.Towards[0]*(at[0]-h.At[0])+m.Towards[1]*(at[1]-h.At[1]))*m.Share
		word := "outside"
		if a >= m.LowMM && a <= m.HighMM {
			word = "inside"
		}
		out = append(out, Next{Bush: h.Bush,
			Do: say.F("accept it: %s would have %v of backlash, %s its limits", m.Name, say.MM(m.Play(a), 3), word)})
	}
	return out
}
