package survey

import "math"

// started are the outlines from which the belief is looked for, of one shape.
type started struct {
	shape Shape
	seeds []seed
}

// roughly is how many steps an outline is brought towards the points before all
// others that agree are looked for about it. To the bottom it is not: at a kink,
// where a point changes from old wall to worn, where it stops hangs on the last
// digit.
const roughly = 12

// starts brings outlines near the points, towards all sides.
func (p Probe) starts(pts [][2]float64) (all []started) {
	side := 0.0
	if len(p.WornTo) > 0 {
		side = between(p.WornTo)
	}
	shapes, _ := p.shapes()
	mid := meanOf(pts)
	for _, shape := range shapes {
		s := started{shape: shape}
		for i, turn := range round4 {
			o := outline{pts: pts, r: p.Journal / 2, shape: shape, bounded: bounded{side + turn, sideways}}
			var seeds []seed
			switch {
			case shape == OneLobe:
				for _, t := range turns {
					for _, cut := range cuts {
						seeds = append(seeds, seed{q: arcStart(pts, mid, o.r, side+turn+t, cut)})
					}
				}
			case len(pts) <= shape.unknowns()+1 || i >= len(all[0].seeds):
				continue
			case shape == Fan:
				for _, open := range [3]float64{0.15, 0.45, 0.8} {
					q := all[0].seeds[i].q
					q[iFan] = open
					seeds = append(seeds, seed{q: q})
				}
				for _, t := range turns {
					for _, cut := range [2]float64{-0.5, -0.82} {
						q := arcStart(pts, mid, o.r, side+turn+0.7*t, cut)
						q[iFan] = 0.5
						seeds = append(seeds, seed{q: q})
					}
				}
			case i > 0:
				continue
			default:
				var best seed
				twoStarts(pts, o.r, [2]float64{p.WornTo[0], p.WornTo[1]}, &best)
				seeds, o.free = append(seeds, best), 0
			}
			best := seed{n: normal{ssq: math.Inf(1)}}
			for k := range seeds {
				o.begin(&seeds[k])
				o.improve(&seeds[k], roughly)
				if seeds[k].n.ssq < best.n.ssq {
					best = seeds[k]
				}
			}
			if finite(best.q[:]...) && finite(best.n.ssq) {
				s.seeds = append(s.seeds, best)
			}
		}
		all = append(all, s)
	}
	return all
}
