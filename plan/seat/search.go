package seat

import "slices"

// slack is how far two figures may differ and still be called the same, so
// that a choice does not hang on the last bit.
const slack = 1e-9

// long is the number of fallen candidates above which only one is told of for
// each bush.
const long = 60

// Search judges every bush with every way to make its seat that serves one of
// the mends asked for, and ranks the feasible ones, best first. Those that fell
// follow, the nearest miss first (METHODS.md 1), with every question that each of them
// fails; once they are many, one for each bush. A bush that no tool comes near
// stands there once, with the seat that it wants. No order of a list
// changes anything but where a tie is complete: to the code and the name.
func Search(h Hole, mends []Mend, bushes []Bush, shop Shop, r Rules) []Answer {
	return newJudge(h, shop, r).search(mends, bushes, true)
}

// missed is a candidate that fell: which, and by how much. Thousands of them may
// pass by, so it is kept small and judged again where it is shown.
type missed struct {
	bush  *Bush
	way   *Way // nil: nothing makes its seat
	glued bool
	fails int
	gaps  float64
}

// search is Search; why asks for those that fell.
func (j *judge) search(mends []Mend, bushes []Bush, why bool) []Answer {
	ways := j.shop.waysTo(mends, j.h)
	var good []Answer
	var fell []missed
	var a Answer
	for i := range bushes {
		b, near := &bushes[i], false
		for k := range ways {
			var first missed
			fits := false
			for _, glued := range [2]bool{false, true} {
				if !j.asks(b, &ways[k], glued) || j.farOff(b, &ways[k], glued) {
					continue
				}
				near = true
				if j.answer(&a, b, &ways[k], glued, why); a.Feasible {
					good, fits = append(good, a), true
				} else if m := (missed{b, &ways[k], glued, len(a.Fails), a.gaps()}); first.bush == nil || m.compare(first) < 0 {
					first = m
				}
			}
			if why && !fits && first.bush != nil {
				fell = append(fell, first)
			}
		}
		if why && !near && (cutting(mends) || len(ways) > 0) {
			a = j.untooled(b, ways)
			fell = append(fell, missed{b, nil, a.HeldBy == ByCompound, len(a.Fails), a.gaps()})
		}
	}
	rank(good, &j.r)
	slices.SortStableFunc(fell, missed.compare)
	if len(fell) > long {
		fell = nearestOfEach(fell)
	}
	out := make([]Answer, len(good), len(good)+len(fell))
	copy(out, good)
	for _, m := range fell {
		if m.way == nil {
			a = j.untooled(m.bush, ways)
		} else {
			j.answer(&a, m.bush, m.way, m.glued, true)
		}
		out = append(out, a)
	}
	if len(good) == 0 {
		j.suited(out)
	}
	return out
}

// cutting says that one of the mends makes a hole.
func cutting(mends []Mend) bool {
	for _, m := range mends {
		if m != Renew && m != MadeToFit {
			return true
		}
	}
	return false
}

// nearestOfEach keeps the first of each bush.
func nearestOfEach(fell []missed) []missed {
	seen := map[*Bush]bool{}
	var out []missed
	for _, m := range fell {
		if !seen[m.bush] {
			seen[m.bush] = true
			out = append(out, m)
		}
	}
	return out
}

// waysTo lists the ways to make the seat of one hole for some mends: those of
// the first mend come first.
func (s Shop) waysTo(mends []Mend, h Hole) []Way {
	var out []Way
	for _, m := range mends {
		switch {
		case m == Rebush:
			out = append(out, s.Ways...)
		case m == MadeToFit:
			if h.AsIs.Name != "" {
				out = append(out, h.AsIs)
			}
		case h.Cap > 0:
			out = append(out, Way{Kind: CapWay, Name: "the seat under its cap", Size: h.Cap, Low: h.Cap, High: h.Cap,
				Index: -1})
		case h.Old != nil:
			out = append(out, Way{Kind: OldSeatWay, Name: h.Old.name(), Size: (h.Old.Low + h.Old.High) / 2,
				Low: h.Old.Low, High: h.Old.High, Index: -1})
		}
	}
	return out
}

// asked says how a bush could be held in a seat: pressed, glued, or either. A
// seat of one size is asked about once: glued where the bush is a little
// smaller than it, pressed otherwise. A seat of any size can be made for both.
// A bush to be turned without a lathe is not asked about at all.
func (j *judge) asked(b *Bush, w *Way) (press, glue bool) {
	if b.Turned && !j.shop.Lathe {
		return false, false
	}
	if w.Kind == CapWay || !j.shop.Compound {
		return true, false
	}
	if b.Turned || w.Kind == BoringHead {
		return true, !b.Metal.Porous
	}
	slip := w.Low-b.ODHigh > slack && w.High-b.ODLow <= 2*j.r.GapHigh+slack
	return !slip, slip
}

func (j *judge) asks(b *Bush, w *Way, glued bool) bool {
	press, glue := j.asked(b, w)
	return glued && glue || !glued && press
}

// farOff tells that a tool was never meant for a bush: a bush of one size in a
// seat of one size that misses its fit by more than the whole of what such a fit
// may be. What is there already is always asked about.
func (j *judge) farOff(b *Bush, w *Way, glued bool) bool {
	if b.Turned || w.Kind != Reamer && w.Kind != EndMill {
		return false
	}
	f := j.fitsIn(w.Kind, w.Low, Interference(b.ODLow, w.High), Interference(b.ODHigh, w.Low), glued)
	return f.What != noFail && j.gap(f, w.Low) > 1
}
