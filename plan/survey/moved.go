package survey

import "math"

// A cloud that less than this share of the belief speaks for is looked at no
// more; of the cloud before, a part stays in the next one, lest it shrinks to a
// single place.
const (
	leastShare = 1e-4
	stays      = 0.05
	tempered   = 0.2 // share of the places that count while clouds move
)

// moved are the clouds brought to where the belief is: each gets the mean and
// the covariance of what it has a part in (population Monte Carlo of mixtures:
// Cappe and others, Statistics and Computing 18, 2008, from memory).
func (b *belief) moved(clouds []cloud, ds []drawn) (out []cloud) {
	all := temper(ds)
	n := b.dims
	for k := range clouds {
		c := &clouds[k]
		var sum float64
		var mean vector
		var cov matrix
		for i := range ds {
			d := &ds[i]
			w := d.weight / d.of
			if d.weight < 1e-12*all {
				continue
			}
			w *= c.density(&d.v, n, b.odd+1)
			sum += w
			off := b.off(&d.v, &c.mean)
			for i := range n {
				mean[i] += w * off[i]
				for j := i; j < n; j++ {
					cov[i][j] += w * off[i] * off[j]
				}
			}
		}
		if !(sum > leastShare*all) {
			continue
		}
		next := cloud{mean: c.mean}
		for i := range n {
			next.mean[i] += mean[i] / sum
			for j := i; j < n; j++ {
				next.cov[i][j] = (1-stays)*(cov[i][j]/sum-mean[i]*mean[j]/(sum*sum)) + stays*c.cov[i][j]
			}
		}
		if next.ready(n) {
			out = append(out, next)
		}
	}
	if len(out) == 0 {
		return clouds
	}
	return out
}

// off is how far a place lies from another, angles the short way round.
func (b *belief) off(v, from *vector) (off vector) {
	for i := range b.dims {
		off[i] = v[i] - from[i]
		if i > b.odd {
			off[i] = math.Remainder(off[i], 2*math.Pi)
		}
	}
	return off
}

// half is the one of two halves that a place belongs to: 0 where it wore towards
// the frame's direction, 1 where it did not.
func (b *belief) half(v *vector) int {
	if math.Cos(v[b.odd+1]) < 0 {
		return 1
	}
	return 0
}

// halves are a cloud for each of the two halves, of whatever clouds the places
// were drawn: what is drawn at last hangs on the belief alone, and not on where
// it was first looked for.
func (b *belief) halves(ds []drawn) (out []cloud) {
	all := temper(ds)
	n := b.dims
	var sum [2]float64
	var mean [2]vector // from base
	var base [2]vector
	base[1][b.odd+1] = math.Pi
	for i := range ds {
		d := &ds[i]
		k := b.half(&d.v)
		off := b.off(&d.v, &base[k])
		sum[k] += d.weight
		for i := range n {
			mean[k][i] += d.weight * off[i]
		}
	}
	var c [2]cloud
	for k := range c {
		for i := range n {
			mean[k][i] /= math.Max(sum[k], leastShare*all)
			c[k].mean[i] = base[k][i] + mean[k][i]
		}
	}
	for i := range ds {
		d := &ds[i]
		k := b.half(&d.v)
		off := b.off(&d.v, &base[k])
		for i := range n {
			for j := i; j < n; j++ {
				c[k].cov[i][j] += d.weight / sum[k] * (off[i] - mean[k][i]) * (off[j] - mean[k][j])
			}
		}
	}
	for k := range c {
		if sum[k] > leastShare*all && c[k].ready(n) {
			out = append(out, c[k])
		}
	}
	return out
}
