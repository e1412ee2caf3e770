package survey

import (
	"math"
	"sort"

	"rebush/fits/say"
)

// slips finds points so far from all others that they are no wall: mostly a
// coordinate typed ten times too large. It returns what is kept.
func slips(pts [][2]float64) (keep []int, out []int, words []say.Text) {
	all := make([]int, len(pts))
	for i := range all {
		all[i] = i
	}
	if len(pts) < 6 {
		return all, nil, nil
	}
	mid := [2]float64{median(pts, func(p [2]float64) float64 { return p[0] }), median(pts, func(p [2]float64) float64 { return p[1] })}
	usual := median(pts, func(p [2]float64) float64 { return dist(p, mid) })
	var sum [2]float64
	for i, p := range pts {
		if dist(p, mid) > 3*usual {
			out = append(out, i)
			continue
		}
		keep = append(keep, i)
		sum[0] += p[0]
		sum[1] += p[1]
	}
	if len(out) == 0 || len(out) > len(pts)/4 {
		return all, nil, nil
	}
	n := float64(len(keep))
	c := [2]float64{sum[0] / n, sum[1] / n}
	for _, i := range out {
		words = append(words, nameSlip(pts, i, func(p [2]float64) float64 {
			return math.Abs(dist(p, c)/usual - 1)
		}, 0.4, "stands far from all the others"))
	}
	return keep, out, words
}

// nameSlip says what a point looks like: off judges a mended point, and below
// limit it is believed.
func nameSlip(pts [][2]float64, i int, off func([2]float64) float64, limit float64, otherwise say.Text) say.Text {
	best, text := limit, say.Text("")
	for axis, name := range []string{"x", "y"} {
		for _, t := range []struct {
			k    float64
			says string
		}{{0.1, "ten times too large"}, {10, "ten times too small"}, {-1, "of the wrong sign"}} {
			p := pts[i]
			p[axis] *= t.k
			if e := off(p); e < best {
				best, text = e, say.F("its %s looks %s (%.4g, not %.4g?)", name, t.says, p[axis], pts[i][axis])
			}
		}
	}
	if text == "" {
		text = "it " + otherwise
	}
	return say.F("point %d (%.4g, %.4g) is left out: %s; measure it again", i+1, pts[i][0], pts[i][1], text)
}

func median(pts [][2]float64, of func([2]float64) float64) float64 {
	v := make([]float64, len(pts))
	for i, p := range pts {
		v[i] = of(p)
	}
	sort.Float64s(v)
	if n := len(v); n%2 == 0 {
		return (v[n/2-1] + v[n/2]) / 2
	}
	return v[len(v)/2]
}

// stray looks for the one point without which the rest fits: a smaller slip.
// It returns -1 where there is none.
func stray(pts [][2]float64, s, ssq float64, fit func([][2]float64) (OutlineFit, error)) int {
	n := len(pts)
	if n < 9 || n > 80 || ssq/float64(n-5) < 25*s*s {
		return -1
	}
	best, at := ssq/10, -1
	rest := make([][2]float64, 0, n)
	for i := range pts {
		rest = append(append(rest[:0], pts[:i]...), pts[i+1:]...)
		if f, err := fit(rest); err == nil && f.SSQ < best {
			best, at = f.SSQ, i
		}
	}
	if best/float64(n-6) > 9*s*s {
		return -1 // the rest does not agree either
	}
	return at
}
