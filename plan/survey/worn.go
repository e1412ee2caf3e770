package survey

import "math"

// HowWorn is where the model of a worn bore comes from, as the ledger cites it.
const HowWorn = "circle joined with the swept journal, own derivation: plan/survey/METHODS.md 1"

// WornBore is a bore as it is believed to be: the old circle and what the
// journal swept.
type WornBore struct {
	O        [2]float64 // old centre
	R        float64    // old radius
	JournalR float64    // radius of the journal; 0 where unknown
	C, W, D  float64    // radial clearance, wear depth, travel D = C + W
	ThetaRad float64    // which way it wore
	FanHalf  float64    // half-angle of the fan, radians
	D2       float64    // travel of a second load, 0 for none
	Theta2   float64
	Round    bool // widest less narrowest is within 2u: not worn oval

	Cov [2][2]float64 // of O, mm^2
	RU  float64       // of R, mm
	WU  float64       // of W, mm
}

// NewWornBore makes a bore from its circle, the journal's radius (0: a journal
// that fills it), the wear depth and its direction.
func NewWornBore(o [2]float64, R, r, w, theta float64) WornBore {
	if r <= 0 || r > R {
		r = R
	}
	return WornBore{O: o, R: R, JournalR: r, C: R - r, W: w, D: R - r + w, ThetaRad: theta}
}

// Gap returns how far a point lies outside the outline, negative in the hole:
// exact outside and on the wall.
func (b WornBore) Gap(p [2]float64) float64 {
	ex, ey := p[0]-b.O[0], p[1]-b.O[1]
	rho := math.Hypot(ex, ey)
	gap := rho - b.R
	var row vector
	sweep := func(d, a float64) {
		sin, cos := math.Sincos(a)
		lobe(&row, &gap, ex, ey, sin, cos, d, b.JournalR, iD, iTheta)
	}
	if b.FanHalf > 0 {
		off := math.Remainder(math.Atan2(ey, ex)-b.ThetaRad, 2*math.Pi)
		if math.Abs(off) <= b.FanHalf {
			return math.Min(gap, rho-b.D-b.JournalR)
		}
		sweep(b.D, b.ThetaRad+math.Copysign(b.FanHalf, off))
		return gap
	}
	sweep(b.D, b.ThetaRad)
	if b.D2 > 0 {
		sweep(b.D2, b.Theta2)
	}
	return gap
}

// Reach returns the distance of the wall from the old centre in a direction.
//
//	cusp:  rho = d cos p + sqrt(r^2 - d^2 sin^2 p),  flank:  rho = r/sin p
func (b WornBore) Reach(psi float64) float64 {
	rho := b.R
	sweep := func(d, p float64) {
		sin, cos := math.Sincos(p)
		if cos <= 0 || d <= 0 {
			return
		}
		sin = math.Abs(sin)
		if under := b.JournalR*b.JournalR - d*d*sin*sin; under >= 0 {
			if e := d*cos + math.Sqrt(under); e*cos >= d {
				rho = math.Max(rho, e)
				return
			}
		}
		rho = math.Max(rho, math.Min(b.JournalR/sin, d+b.JournalR))
	}
	off := math.Remainder(psi-b.ThetaRad, 2*math.Pi)
	sweep(b.D, math.Max(0, math.Abs(off)-b.FanHalf))
	if b.D2 > 0 {
		sweep(b.D2, psi-b.Theta2)
	}
	return rho
}

// Ray returns the distance from a point in the hole to the wall, in a direction.
func (b WornBore) Ray(from [2]float64, psi float64) float64 {
	lo, hi := 0.0, 2*(b.R+b.D+b.D2)
	for range 60 {
		if m := (lo + hi) / 2; b.Gap(toward(from, m, psi)) < 0 {
			lo = m
		} else {
			hi = m
		}
	}
	return lo
}

// Outline returns n points of the worn hole, anticlockwise from the wear, for
// drawing; nil below 3.
func (b WornBore) Outline(n int) [][2]float64 {
	if n < 3 {
		return nil
	}
	pts := make([][2]float64, n)
	for i := range pts {
		a := b.ThetaRad + 2*math.Pi*float64(i)/float64(n)
		pts[i] = toward(b.O, b.Reach(a), a)
	}
	return pts
}

// Found returns the middle of the hole as found: of the smallest circle that
// holds it, w/2 towards the wear for one lobe.
func (b WornBore) Found() [2]float64 {
	if b.FanHalf == 0 && b.D2 == 0 || b.W <= 0 {
		return toward(b.O, math.Max(0, b.W)/2, b.ThetaRad)
	}
	c, err := Circumscribed(b.Outline(720))
	if err != nil {
		return b.O
	}
	return c.Centre
}

// SeatRadius returns the least radius of a seat about T that clears the whole
// outline:
//
//	S(T) = max(|T - O| + R, |T - D| + r)
//
// with the worst D of a fan, or of two loads. Derived, exact.
func (b WornBore) SeatRadius(T [2]float64) float64 {
	s := dist(T, b.O) + b.R
	for _, d := range b.ends(T) {
		s = math.Max(s, dist(T, d)+b.JournalR)
	}
	return s
}

// ends returns the places of the journal's centre that may be farthest from T.
func (b WornBore) ends(T [2]float64) [][2]float64 {
	es := [][2]float64{toward(b.O, b.D, b.ThetaRad)}
	if b.D2 > 0 {
		es = append(es, toward(b.O, b.D2, b.Theta2))
	}
	if b.FanHalf > 0 {
		es = append(es, toward(b.O, b.D, b.ThetaRad-b.FanHalf), toward(b.O, b.D, b.ThetaRad+b.FanHalf))
		away := math.Atan2(b.O[1]-T[1], b.O[0]-T[0])
		if T != b.O && apart(away, b.ThetaRad) < b.FanHalf {
			es = append(es, toward(b.O, b.D, away))
		}
	}
	return es
}

// UncutArc returns what a seat of radius Q about T leaves of the worn wall:
// over how many degrees of the seat there is a void, and how deep it is in mm.
// A press fit bears on the rest only and pushes towards the void.
func (b WornBore) UncutArc(T [2]float64, Q float64) (arcDeg, depth float64) {
	if depth = b.SeatRadius(T) - Q; depth <= 0 {
		return 0, 0
	}
	const n = 360
	at := func(i int) float64 { return b.Gap(toward(T, Q, 2*math.Pi*float64(i)/n)) }
	was := at(0)
	for i := 1; i <= n; i++ {
		is := at(i)
		switch {
		case was < 0 && is < 0:
			arcDeg += 360.0 / n
		case was < 0 || is < 0:
			arcDeg += 360.0 / n * math.Min(was, is) / (math.Min(was, is) - math.Max(was, is))
		}
		was = is
	}
	return arcDeg, depth
}

// toward returns the point at a distance from p in a direction.
func toward(p [2]float64, d, a float64) [2]float64 {
	sin, cos := math.Sincos(a)
	return [2]float64{p[0] + d*cos, p[1] + d*sin}
}
