package survey

import "math"

// FitTwoLobes fits two lobes to a bore that was pressed two ways, as by two
// loads; sides are the two directions, right to about 30 degrees. At least
// nine points. It allocates nothing.
func FitTwoLobes(pts [][2]float64, r, s float64, sides [2]float64) (OutlineFit, error) {
	if len(pts) < 9 {
		return OutlineFit{}, ErrTooFew
	}
	var best seed
	steps := twoStarts(pts, r, sides, &best)
	o := outline{pts: pts, r: r, shape: TwoLobes}
	return o.report(&best, s, steps)
}

// twoStarts runs two lobes from nine starts and keeps the best.
func twoStarts(pts [][2]float64, r float64, sides [2]float64, best *seed) int {
	between := math.Remainder(sides[1]-sides[0], 2*math.Pi)
	o := outline{pts: pts, r: r, shape: TwoLobes, bounded: bounded{sides[0], sideways / 2}}
	mid := meanOf(pts)
	var seeds [9]seed
	k, steps := 0, 0
	for _, turn := range [3]float64{0, -0.3, 0.3} {
		for _, cut := range [3]float64{-0.64, -0.17, 0.26} {
			q := arcStart(pts, mid, r, sides[0]+between/2+turn/2, cut)
			q[iTheta], q[iTheta2] = sides[0]+turn/2, sides[0]+between+turn/2
			// Each lobe goes as far as the farthest point about its side.
			q[iD2] = 0
			far, far2 := 0.0, 0.0
			for _, p := range pts {
				x, y := p[0]-q[iX], p[1]-q[iY]
				l, a := math.Hypot(x, y), math.Atan2(y, x)
				if apart(a, q[iTheta]) < 0.6 {
					far = math.Max(far, l)
				}
				if apart(a, q[iTheta2]) < 0.6 {
					far2 = math.Max(far2, l)
				}
			}
			q[iD], q[iD2] = math.Max(0, far-r), math.Max(0, far2-r)
			seeds[k].q = q
			o.begin(&seeds[k])
			o.improve(&seeds[k], 2)
			steps += seeds[k].steps
			k++
		}
	}
	return steps + o.refine(seeds[:], 5, best)
}
