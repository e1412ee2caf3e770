package mesh

import (
	"fmt"
	"math"
)

// TightAt is a pair whose teeth touch on both sides at a centre distance of a mm, as
// it was tried: thicker or thinner than its figures by as much as a shift of the
// wheel's profile makes them. An error where no shift of half a module does.
func TightAt(p Pair, a float64) (Pair, error) {
	shifted := func(by float64) Pair {
		switch q := p.(type) {
		case Spur:
			q.X1 += by
			return q
		case Worm:
			q.Shift += by
			return q
		}
		return p
	}
	const most = 0.5
	low, high := -most, most
	if a < shifted(low).Tight() || a > shifted(high).Tight() {
		return p, fmt.Errorf("its teeth were tried to touch at %.3f mm, and by their figures they do at %.3f mm: that is "+
			"more than half a module aside; count the teeth and try it again", a, p.Tight())
	}
	for range 60 { // the distance rises with the shift
		if mid := (low + high) / 2; shifted(mid).Tight() < a {
			low = mid
		} else {
			high = mid
		}
	}
	if by := (low + high) / 2; math.Abs(by) > 1e-9 {
		return shifted(by), nil
	}
	return p, nil
}
