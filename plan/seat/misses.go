package seat

import (
	"cmp"
	"math"
)

// untooled is a bush that no way of the shop comes near, judged in the seat
// that it wants: pressed, or in compound where that misses by less.
func (j *judge) untooled(b *Bush, ways []Way) Answer {
	w := Way{Kind: NoTool, Name: "no tool that is here", Index: -1}
	if b.Turned && !j.shop.Lathe {
		w.Name = "no lathe"
	}
	var a, glued Answer
	j.answer(&a, b, &w, false, true)
	a.Fails[0].Name = nearestTool(b, ways)
	if j.shop.Compound && !b.Metal.Porous && !b.Turned {
		if j.answer(&glued, b, &w, true, true); glued.nearer(&a) {
			glued.Fails[0].Name = a.Fails[0].Name
			a = glued
		}
	}
	a.Fail = a.hardest()
	return a
}

// nearestTool is the tool whose seat is nearest to the outside of a bush, "" for
// one that is turned to any or where there is none.
func nearestTool(b *Bush, ways []Way) string {
	name, off := "", math.Inf(1)
	if b.Turned {
		return ""
	}
	for _, w := range ways {
		d := math.Abs((w.Low + w.High - b.ODLow - b.ODHigh) / 2)
		if d < off-slack || d < off+slack && w.Name < name {
			name, off = w.Name, d
		}
	}
	return name
}

// suit is a seat that a bush wants where none of the shop is right for it, at a
// share of the way from the tightest to the loosest that suits it.
func (j *judge) suit(b *Bush, glued bool, at float64) (low, high float64) {
	lo, hi := j.suits(b, glued)
	half := math.Max(0, math.Min(j.r.BoringHead, (hi-lo)/8))
	mid := lo + at*(hi-lo)
	return mid - half, mid + half
}

// suits are the limits of a seat that a bush would go into: pressed, from what
// the wall stands and usual practice to what holds, and never less than a press
// at both ends; in compound by its gap.
func (j *judge) suits(b *Bush, glued bool) (low, high float64) {
	if glued {
		return b.ODHigh + j.r.GapLow, b.ODLow + j.r.GapHigh
	}
	least, most := j.window(b, (b.ODLow+b.ODHigh)/2)
	return b.ODHigh - most, b.ODLow - math.Max(least, 10*slack)
}

// suited works out for the nearest of those that fell which seats would let
// them through.
func (j *judge) suited(fell []Answer) {
	const told = 4
	for i := range fell[:min(told, len(fell))] {
		fell[i].seats, fell[i].seatsOK = j.seatThatWould(&fell[i])
	}
}

// SeatThatWould are the limits, as diameters in mm, between which a seat would
// let this bush pass every question; false where no seat would, or where it was not
// worked out: it is for the nearest four of a search in which nothing goes.
func (a Answer) SeatThatWould() (low, high float64, ok bool) {
	return a.seats[0], a.seats[1], a.seatsOK
}

// seatThatWould tries narrow seats over all that could suit, and keeps the
// stretch of those that pass.
func (j *judge) seatThatWould(a *Answer) ([2]float64, bool) {
	const steps = 8
	if a.Mend != Rebush || a.Bush.Turned && !j.shop.Lathe {
		return [2]float64{}, false
	}
	b, glued := a.Bush, a.HeldBy == ByCompound
	low, high := j.suits(&b, glued)
	if b.Turned {
		low, high = j.turnedSeats()
	}
	low = math.Max(low, 2*j.leastRadius(glued, b.Metal.Porous))
	if !(high > low) {
		return [2]float64{}, false
	}
	step := (high - low) / steps
	from, n, best, longest := 0, 0, 0, 0
	for i := range steps {
		w := Way{Kind: Reamer, Low: low + float64(i)*step, High: low + float64(i+1)*step}
		if b.Turned {
			w.High = w.Low + j.r.BoringHead // a reamed seat, not a step of the list
		}
		w.Own = (w.Low + w.High) / 2
		var x Answer
		if j.answer(&x, &a.Bush, &w, glued, false); !x.Feasible {
			n = 0
			continue
		}
		if n++; n == 1 {
			from = i
		}
		if n > longest {
			best, longest = from, n
		}
	}
	if longest == 0 {
		return [2]float64{}, false
	}
	return [2]float64{low + float64(best)*step, low + float64(best+longest)*step}, true
}

// turnedSeats are the diameters between which a bush could be turned for a seat:
// from what clears the wear and leaves the bush a wall, to what the metal at the
// edge stands, and no more than half as large again.
func (j *judge) turnedSeats() (low, high float64) {
	low = math.Max(2*j.need, j.aimBore()+2*j.r.LeastWall)
	return low, math.Min(1.5*low, 2*j.edge/(1+j.r.NoWall))
}

// hardest is the question whose answer is farthest from yes: what a candidate
// that fails several is said to fall for. No fails, no reason.
func (a *Answer) hardest() Fail {
	var out Fail
	for i, f := range a.Fails {
		if i == 0 || f.Gap > out.Gap+slack {
			out = f
		}
	}
	return out
}

// gaps are all that a candidate misses by.
func (a *Answer) gaps() float64 {
	sum := 0.0
	for _, f := range a.Fails {
		sum += f.Gap
	}
	return sum
}

// Nearer says whether a candidate that fell misses by less than another does.
func (a *Answer) Nearer(than *Answer) bool { return a.nearer(than) }

// nearer tells whether a candidate that fell misses by less than another does.
func (a *Answer) nearer(than *Answer) bool {
	return cmp.Or(cmp.Compare(len(a.Fails), len(than.Fails)), by(a.gaps(), than.gaps())) < 0
}

// compare puts the nearest miss first: fewest questions answered no, then the
// least sum of gaps, and where both are alike the smaller bush, the smaller
// seat, the code, the name of the tool, a press before compound.
func (m missed) compare(to missed) int {
	return cmp.Or(cmp.Compare(m.fails, to.fails), by(m.gaps, to.gaps),
		compareSizes(m.bush, to.bush, m.way, to.way, m.glued, to.glued))
}

// compareSizes orders two candidates by what they are and never by where they
// stand in a list: a tool of one size before one that is set to size. A way that
// is nil is that of no tool.
func compareSizes(a, b *Bush, v, w *Way, glued, than bool) int {
	var none Way
	if v == nil {
		v = &none
	}
	if w == nil {
		w = &none
	}
	press := 0
	switch {
	case glued && !than:
		press = 1
	case than && !glued:
		press = -1
	}
	return cmp.Or(by(a.ODLow+a.ODHigh, b.ODLow+b.ODHigh), by(a.BLow+a.BHigh, b.BLow+b.BHigh),
		cmp.Compare(v.Kind, w.Kind), by(v.Low, w.Low), by(v.High, w.High), cmp.Compare(a.Code, b.Code), cmp.Compare(v.Name, w.Name), press)
}

// by compares two figures that the last bit must not decide between.
func by(a, b float64) int {
	if math.Abs(a-b) <= slack {
		return 0
	}
	return cmp.Compare(a, b)
}
