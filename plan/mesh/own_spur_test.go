package mesh

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
)

// Spur pairs a second way, for the rows of own/mesh.csv: no involute function
// of the working angle. A string is unwound from each base circle along the
// line that touches both; what the two strings do not cover is the gap between
// the flanks.
type unwound struct {
	m, z1, z2, x1, x2, alpha, thinned float64
}

const degree = math.Pi / 180

// involute is the integral of tan squared, which is tan x - x.
func involute(x float64) float64 {
	return quad.Fixed(func(t float64) float64 { return math.Tan(t) * math.Tan(t) }, 0, x, 60, quad.Legendre{}, 0)
}

func (in inputs) unwound() unwound {
	s := unwound{in.v("m"), in.need("z1"), in.need("z2"), in.v("x1"), in.v("x2"), in.need("alpha") * degree, in.v("T")}
	if in.has("P") {
		s.m = 25.4 / in.v("P")
	}
	return s
}

func (s unwound) bases() (b1, b2 float64) {
	return s.m * s.z1 / 2 * math.Cos(s.alpha), s.m * s.z2 / 2 * math.Cos(s.alpha)
}

// tangent is the length of the common tangent between its two points of touch.
func (s unwound) tangent(a float64) float64 {
	b1, b2 := s.bases()
	return math.Sqrt(a*a - (b1+b2)*(b1+b2))
}

func (s unwound) angle(a float64) float64 {
	b1, b2 := s.bases()
	return math.Atan2(s.tangent(a), b1+b2)
}

// half is half the angle of a tooth on its base circle; all of the thinning is
// taken off gear 1.
func (s unwound) half(z, x, thinned float64) float64 {
	thick := s.m*(math.Pi/2+2*x*math.Sin(s.alpha)/math.Cos(s.alpha)) - thinned
	return thick/(s.m*z) + involute(s.alpha)
}

// normal: a tooth of gear 2 stands in the middle of a space of gear 1; the gap
// is the same on both its sides.
func (s unwound) normal(a float64) float64 {
	b1, b2 := s.bases()
	w := s.angle(a)
	space := math.Pi/s.z1 - s.half(s.z1, s.x1, s.thinned)
	string1 := b1 * (w - space)
	string2 := b2 * (w + s.half(s.z2, s.x2, 0))
	return 2 * (s.tangent(a) - string1 - string2)
}

func (s unwound) circumferential(a float64) float64 { return s.normal(a) / math.Cos(s.angle(a)) }

// root is where f, which rises, is nought between lo and hi.
func root(f func(float64) float64, lo, hi float64) float64 {
	for range 200 {
		if mid := (lo + hi) / 2; f(mid) < 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

func (s unwound) centreFor(f func(float64) float64, want float64) float64 {
	b1, b2 := s.bases()
	return root(func(a float64) float64 { return f(a) - want }, b1+b2+1e-9, (b1+b2)*1.3)
}

func (s unwound) tight() float64 { return s.centreFor(s.normal, 0) }

// contact walks the common tangent from point to point of touch and measures
// what lies inside both tip circles, in base pitches; past the points of touch
// too where free.
func (s unwound) contact(a, tip1, tip2 float64, free bool) float64 {
	b1, _ := s.bases()
	w := s.angle(a)
	at := func(t float64) (x, y float64) { // gear 1 at 0,0 and gear 2 at 0,a
		return b1*math.Sin(w) - t*math.Cos(w), b1*math.Cos(w) + t*math.Sin(w)
	}
	off1 := func(t float64) float64 { x, y := at(t); return math.Hypot(x, y) - tip1 }
	off2 := func(t float64) float64 { x, y := at(t); return tip2 - math.Hypot(x, y-a) }
	long := s.tangent(a)
	leaves, enters := root(off1, 0, 10*long), root(off2, -9*long, long)
	if !free {
		leaves, enters = math.Min(leaves, long), math.Max(enters, 0)
	}
	return (leaves - enters) / (2 * math.Pi * b1 / s.z1)
}

func (s unwound) tips() (t1, t2 float64) {
	return s.m * (s.z1/2 + 1 + s.x1), s.m * (s.z2/2 + 1 + s.x2)
}
