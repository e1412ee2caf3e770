package survey

import "math"

// What is known of one possibility that four walls leave open.
const (
	iPlaceX = iota
	iPlaceY
	iRadius
	iDepth
	iCos
	iSin
	weighedFigures
)

// moments2 are the weighted sums of possibilities.
type moments2 struct {
	all float64
	sum [weighedFigures]float64
	sq  [weighedFigures][weighedFigures]float64
	low float64 // the least misfit so far: weights are reckoned from it
}

// add counts a possibility by p exp(-misfit).
func (m *moments2) add(p, misfit float64, v [weighedFigures]float64) {
	if m.all == 0 {
		m.low = misfit
	}
	if misfit > m.low+40 {
		return
	}
	if misfit < m.low {
		m.scale(math.Exp(misfit - m.low))
		m.low = misfit
	}
	p *= math.Exp(m.low - misfit)
	m.all += p
	for i, a := range v {
		m.sum[i] += p * a
		for k := 0; k <= i; k++ {
			m.sq[i][k] += p * a * v[k]
		}
	}
}

func (m *moments2) scale(k float64) {
	m.all *= k
	for i := range m.sum {
		m.sum[i] *= k
		for j := range m.sq[i] {
			m.sq[i][j] *= k
		}
	}
}

func (m *moments2) mean(i int) float64 { return m.sum[i] / m.all }

func (m *moments2) covOf(i, k int) float64 {
	if i < k {
		i, k = k, i
	}
	c := m.sq[i][k]/m.all - m.mean(i)*m.mean(k)
	if i == k {
		return math.Max(0, c)
	}
	return c
}

// towards is the mean direction of the wear, radians.
func (m *moments2) towards() float64 { return angle(math.Atan2(m.sum[iSin], m.sum[iCos])) }

// weighedAbout are the possibilities with their places reckoned from one place,
// so that squares of large coordinates do not swallow what they differ by.
type weighedAbout struct {
	moments2
	from [2]float64
}

func (m *weighedAbout) centre() [2]float64 {
	return [2]float64{m.from[0] + m.mean(iPlaceX), m.from[1] + m.mean(iPlaceY)}
}

func (m *weighedAbout) cov() [2][2]float64 {
	xy := m.covOf(iPlaceX, iPlaceY)
	return [2][2]float64{{m.covOf(iPlaceX, iPlaceX), xy}, {xy, m.covOf(iPlaceY, iPlaceY)}}
}

// along is how the centre moves with the old radius, for its doubt.
func (m *weighedAbout) along() [2]float64 {
	u := math.Sqrt(m.covOf(iRadius, iRadius))
	if u == 0 {
		return [2]float64{}
	}
	return [2]float64{m.covOf(iPlaceX, iRadius) / u, m.covOf(iPlaceY, iRadius) / u}
}

// chance is one value and how likely it is.
type chance struct{ v, p float64 }

// normally are values about v, evenly spaced over three and a half doubts.
func normally(v, u float64, n int) []chance {
	if u <= 0 {
		return []chance{{v, 1}}
	}
	out := make([]chance, n)
	for i := range out {
		z := 3.5 * (2*float64(i)/float64(n-1) - 1)
		out[i] = chance{v + z*u, math.Exp(-z * z / 2)}
	}
	return out
}

// sides are the directions of the wear: about what is said, to both sides of it;
// else along the way that the shaft is pressed, one way or the other, or any.
func (w Walls) sides() (list []chance, half float64) {
	if len(w.WornTo) > 0 {
		if len(w.WornTo) > 1 {
			half = math.Abs(math.Remainder(w.WornTo[1]-w.WornTo[0], 2*math.Pi)) / 2
		}
		return normally(between(w.WornTo), w.UDir, 21), half
	}
	const n = 72
	spread := math.Max(w.Usual.U, 5*deg)
	for i := range n {
		a := w.Usual.Rad + 2*math.Pi*float64(i)/n
		off := apart(a, w.Usual.Rad)
		off = math.Min(off, math.Pi-off) / spread
		list = append(list, chance{a, (1-w.Usual.Share)/(2*math.Pi) +
			w.Usual.Share/2*math.Exp(-off*off/2)/(spread*math.Sqrt(2*math.Pi))})
	}
	return list, 0
}

// depths are the depths of wear that the walls leave room for: all alike where a
// side is said, else none or each doubling alike.
func (w Walls) depths(u float64) []chance {
	r := w.journal(w.R)
	most := math.Max(w.Right-w.Left, w.Top-w.Bottom) - 2*w.R + 6*math.Hypot(u*math.Sqrt2, 2*w.UR)
	most = math.Max((most+w.R-r)*math.Sqrt2-(w.R-r), 4*u)
	if len(w.WornTo) > 0 || w.Usual.Most <= w.Usual.Least {
		n := min(max(int(most/(0.7*u))+2, 24), 400)
		out := make([]chance, n)
		for i := range out {
			out[i] = chance{most * float64(i) / float64(n-1), 1}
		}
		out[0].p = 0.5 // by the trapezium rule
		return out
	}
	const n = 300
	out := []chance{{0, 1 - w.Usual.Worn}}
	from := math.Log(w.Usual.Least)
	step := (math.Log(math.Max(w.Usual.Most, most)) - from) / n
	for i := range n {
		out = append(out, chance{math.Exp(from + step*(float64(i)+0.5)), w.Usual.Worn / n})
	}
	return out
}

// journal is the radius of the journal in a hole of radius R.
func (w Walls) journal(R float64) float64 {
	if w.JournalR <= 0 || w.JournalR > R {
		return R
	}
	return w.JournalR
}

// weighed goes through all sides, radii and depths.
func (w Walls) weighed() weighedAbout {
	u := math.Max(w.UWall, 0.0005)
	out := weighedAbout{from: [2]float64{(w.Left + w.Right) / 2, (w.Bottom + w.Top) / 2}}
	sides, half := w.sides()
	radii, depths := normally(w.R, w.UR, 7), w.depths(u)
	for _, a := range sides {
		var cos [4]float64 // of left, right, bottom, top
		for i, dir := range [4]float64{math.Pi, 0, -math.Pi / 2, math.Pi / 2} {
			cos[i] = math.Cos(math.Max(0, apart(dir, a.v)-half))
		}
		sin1, cos1 := math.Sincos(a.v)
		for _, R := range radii {
			r := w.journal(R.v)
			for _, depth := range depths {
				d := R.v - r + depth.v
				var s [4]float64
				for i, c := range cos {
					s[i] = math.Max(R.v, r+d*c)
				}
				x, y := (w.Right-w.Left-s[0]-s[1])/u, (w.Top-w.Bottom-s[2]-s[3])/u
				q := (x*x + y*y) / 4
				out.add(a.p*R.p*depth.p, q, [weighedFigures]float64{
					(s[0] - s[1]) / 2, (s[2] - s[3]) / 2, R.v - w.R, depth.v, cos1, sin1})
			}
		}
	}
	return out
}
