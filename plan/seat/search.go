package seat

// slack is how far two figures may differ and still be called the same, so
// that a choice does not hang on the last bit.
const slack = 1e-9

// long is the number of fallen candidates above which only one is told of for
// each bush.
const long = 60

// miss is a candidate that fell: which, and why. Tens of thousands of them pass
// by, so it is kept small and written out only where it is shown.
type miss struct {
	bush, way int
	glued     bool
	fail      Fail
}

// nearer tells whether a miss came further through the questions than another,
// and at the same question missed by less.
func (m miss) nearer(than miss) bool {
	if m.fail.Question != than.fail.Question {
		return m.fail.Question > than.fail.Question
	}
	return m.fail.gap() < than.fail.gap()
}

// Search judges every bush with every way to make its seat that serves one of
// the mends asked for, and ranks the feasible ones, best first. The others follow in the order of the list, each
// with the reason why it fell; once they are many, one for each bush: the way
// that came furthest.
func Search(h Hole, mends []Mend, bushes []Bush, shop Shop, r Rules) []Answer {
	j := newJudge(h, shop, r)
	ways := shop.waysTo(mends, h)
	var good []Answer
	var all, furthest []miss
	fell := 0
	var a Answer
	for i := range bushes {
		best := -1
		for k := range ways {
			b, w := &bushes[i], &ways[k]
			press, glue := j.asked(b, w)
			var first miss
			missed, found := false, false
			for _, glued := range [2]bool{false, true} {
				if glued && !glue || !glued && !press {
					continue
				}
				f := j.atOnce(b, w, glued)
				if f.What == noFail {
					j.answer(&a, b, w, glued)
					f = a.Fail
				}
				if f.What == noFail {
					good = append(good, a)
					found = true
				} else if !missed {
					missed, first = true, miss{i, k, glued, f}
				}
			}
			if !missed || found {
				continue
			}
			if fell++; fell <= long {
				all = append(all, first)
			}
			if best < 0 {
				furthest = append(furthest, first)
				best = len(furthest) - 1
			} else if first.nearer(furthest[best]) {
				furthest[best] = first
			}
		}
	}
	rank(good, &j.r)
	if fell > long {
		all = furthest
	}
	out := make([]Answer, len(good), len(good)+len(all))
	copy(out, good)
	for _, m := range all {
		j.answer(&a, &bushes[m.bush], &ways[m.way], m.glued)
		out = append(out, a)
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
		case h.Cap > 0:
			out = append(out, Way{Kind: CapWay, Name: "the seat under its cap", Size: h.Cap, Low: h.Cap, High: h.Cap,
				Index: -1})
		case h.Old != nil:
			name := "the old bush's seat"
			if h.Old.Made {
				name = "the seat as made"
			}
			out = append(out, Way{Kind: OldSeatWay, Name: name, Size: (h.Old.Low + h.Old.High) / 2,
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

// atOnce answers the first two questions where plain comparisons do: a bush of
// one size in a seat of one size. Most candidates end here.
func (j *judge) atOnce(b *Bush, w *Way, glued bool) Fail {
	if b.Turned || w.Kind == BoringHead {
		return Fail{}
	}
	if f := j.clears(w.Kind, w.Low, glued, b.Metal.Porous); f.What != noFail {
		return f
	}
	return j.fitsIn(w.Kind, w.Low, Interference(b.ODLow, w.High), Interference(b.ODHigh, w.Low), glued)
}
