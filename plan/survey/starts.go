package survey

import "math"

// How far a fitted direction may turn from the stated side: the side is right
// to about 45 degrees, and a fan or a few points pull it further.
const sideways = 75 * math.Pi / 180

// The directions tried about the stated side, and the arcs opposite to them
// from whose circles a start is made.
var (
	turns = [3]float64{0, -35 * math.Pi / 180, 35 * math.Pi / 180}
	cuts  = [3]float64{-0.6428, -0.1736, 0.6} // cosines of 130, 100 and 75 degrees
)

// lobeStarts runs the lobe from nine starts, two steps each, and refines the
// best four. It returns the steps taken.
func lobeStarts(pts [][2]float64, r, side float64, best *seed) int {
	o := outline{pts: pts, r: r, shape: OneLobe, bounded: bounded{side, sideways}}
	mid := meanOf(pts)
	var seeds [9]seed
	steps := 0
	for i, turn := range turns {
		for j, cut := range cuts {
			s := &seeds[3*i+j]
			s.q = arcStart(pts, mid, r, side+turn, cut)
			o.begin(s)
			o.improve(s, 2)
			steps += s.steps
		}
	}
	return steps + o.refine(seeds[:], 4, best)
}

// refine brings the best few of the seeds to rest and keeps the best.
func (o *outline) refine(seeds []seed, few int, best *seed) int {
	steps := 0
	best.n.ssq = math.Inf(1)
	for k := range min(few, len(seeds)) {
		low := k
		for i := k + 1; i < len(seeds); i++ {
			if seeds[i].n.ssq < seeds[low].n.ssq {
				low = i
			}
		}
		seeds[k], seeds[low] = seeds[low], seeds[k]
		s := &seeds[k]
		was := s.steps
		// A seed that comes to where another rests is not followed.
		for !s.done {
			o.improve(s, 3)
			if k > 0 && !s.done && sameFit(&s.q, &best.q) {
				s.done = true
			}
		}
		steps += s.steps - was
		if s.n.ssq < best.n.ssq {
			*best = *s
		}
	}
	return steps + o.nudge(best)
}

// nudges move a resting fit off the kinks where one point changes from wall to
// lobe and the slope is cut off.
var nudges = [...]struct {
	i  int
	by float64
}{{iTheta, 0.04}, {iTheta, -0.04}, {iD, 0.004}, {iD, -0.004}, {iR, 0.003}, {iTheta, 0.15}, {iTheta, -0.15}}

func (o *outline) nudge(best *seed) int {
	steps := 0
	for round := 0; round < 2; round++ {
		was := best.n.ssq
		for _, d := range nudges {
			s := *best
			s.q[d.i] += d.by
			o.begin(&s)
			for !s.done && s.steps < 25 {
				o.improve(&s, 2)
				if sameFit(&s.q, &best.q) {
					break
				}
			}
			steps += s.steps
			if s.n.ssq < best.n.ssq {
				*best = s
			}
		}
		if best.n.ssq > was*(1-1e-3) {
			break
		}
	}
	return steps
}

func sameFit(a, b *vector) bool {
	for i := range a {
		if math.Abs(a[i]-b[i]) > 1e-4 {
			return false
		}
	}
	return true
}

// arcStart makes a start from the points whose direction from mid is turned
// from the wear by more than the angle with that cosine: their circle, R from
// the least radius about its centre and d from the largest.
func arcStart(pts [][2]float64, mid [2]float64, r, theta, cut float64) vector {
	sin, cos := math.Sincos(theta)
	var sx, sy, sxx, syy, sxy, sxz, syz, sz, n float64
	for _, p := range pts {
		x, y := p[0]-mid[0], p[1]-mid[1]
		z := x*x + y*y
		along := x*cos + y*sin
		if along > 0 && (cut < 0 || along*along > cut*cut*z) || along <= 0 && cut < 0 && along*along < cut*cut*z {
			continue
		}
		n++
		sx, sy, sz = sx+x, sy+y, sz+z
		sxx, syy, sxy = sxx+x*x, syy+y*y, sxy+x*y
		sxz, syz = sxz+x*z, syz+y*z
	}
	q := vector{mid[0], mid[1], r, 0, theta}
	if n >= 3 {
		sxx, syy, sxy = sxx-sx*sx/n, syy-sy*sy/n, sxy-sx*sy/n
		sxz, syz = sxz-sx*sz/n, syz-sy*sz/n
		if det := sxx*syy - sxy*sxy; det > 1e-9*(sxx+syy)*(sxx+syy) {
			a, b := (sxz*syy-syz*sxy)/(2*det), (syz*sxx-sxz*sxy)/(2*det)
			if math.Hypot(a, b) < r {
				q[iX] += a
				q[iY] += b
			}
		}
	}
	lo, hi := math.Inf(1), 0.0
	for _, p := range pts {
		x, y := p[0]-q[iX], p[1]-q[iY]
		z := x*x + y*y
		lo, hi = math.Min(lo, z), math.Max(hi, z)
	}
	q[iR] = math.Max(r, math.Sqrt(lo))
	q[iD] = math.Max(0, math.Sqrt(hi)-r)
	return q
}

// fanStarts runs the fan from the fitted lobe opened by several angles and
// from circles of short arcs opposite the stated side.
func fanStarts(pts [][2]float64, r, side float64, one, best *seed) int {
	o := outline{pts: pts, r: r, shape: Fan, bounded: bounded{side, sideways}}
	mid := meanOf(pts)
	var seeds [9]seed
	k, steps := 0, 0
	for _, open := range [3]float64{0.15, 0.45, 0.8} {
		seeds[k].q = one.q
		seeds[k].q[iFan] = open
		k++
	}
	for _, turn := range turns {
		for _, cut := range [2]float64{-0.5, -0.82} {
			s := &seeds[k]
			s.q = arcStart(pts, mid, r, side+turn*0.7, cut)
			s.q[iFan] = 0.5
			k++
		}
	}
	for i := range seeds {
		o.begin(&seeds[i])
		o.improve(&seeds[i], 2)
		steps += seeds[i].steps
	}
	return steps + o.refine(seeds[:], 4, best)
}

func meanOf(pts [][2]float64) (m [2]float64) {
	for _, p := range pts {
		m[0] += p[0]
		m[1] += p[1]
	}
	m[0] /= float64(len(pts))
	m[1] /= float64(len(pts))
	return m
}
