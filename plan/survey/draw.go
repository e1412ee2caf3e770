package survey

import "math"

// drawn is a place that was looked at.
type drawn struct {
	v      vector
	of     float64 // density with which it was drawn
	log    float64 // logarithm of its density over that
	weight float64
}

// draw looks at places of all clouds and weighs each by its density over that
// of all clouds together: importance sampling from a mixture.
func (b *belief) draw(clouds []cloud, zs []vector) []drawn {
	out := make([]drawn, 0, len(clouds)*len(zs))
	for i := range clouds {
		for k := range zs {
			by := 1.0
			if k/2%int(1/wideShare) == 0 {
				by = wideBy
			}
			d := drawn{v: clouds[i].at(&zs[k], b.dims, by)}
			chi := b.chi(&d.v)
			if math.IsInf(chi, 1) {
				continue
			}
			for j := range clouds {
				d.of += clouds[j].density(&d.v, b.dims, b.odd+1)
			}
			d.log = -chi/2 - math.Log(d.of)
			out = append(out, d)
		}
	}
	return out
}

// weigh sets the weights to the power beta of what they should be, to a common
// scale, and returns their sum and how many places count.
func weigh(ds []drawn, beta float64) (sum, effective, top float64) {
	top = math.Inf(-1)
	for i := range ds {
		top = math.Max(top, ds[i].log)
	}
	var squares float64
	for i := range ds {
		d := &ds[i]
		d.weight = math.Exp(beta * (d.log - top))
		sum += d.weight
		squares += d.weight * d.weight
	}
	return sum, sum * sum / squares, top
}

// temper weighs so mildly that enough places count, lest a cloud falls upon the
// first good place.
func temper(ds []drawn) (sum float64) {
	enough := tempered * float64(len(ds))
	sum, effective, _ := weigh(ds, 1)
	if effective >= enough {
		return sum
	}
	lo, hi := 0.0, 1.0
	for range 12 {
		mid := (lo + hi) / 2
		if _, effective, _ = weigh(ds, mid); effective >= enough {
			lo = mid
		} else {
			hi = mid
		}
	}
	sum, _, _ = weigh(ds, lo)
	return sum
}

// evidence is the logarithm of the density summed over all unknowns: how well
// the shape as such agrees with the points. It leaves the places weighed.
func (b *belief) evidence(ds []drawn, each int) float64 {
	sum, _, top := weigh(ds, 1)
	return math.Log(sum/float64(each)) + top + float64(b.dims)/2*math.Log(2*math.Pi)
}
