package survey

import (
	"errors"
	"fmt"
	"math"
)

// What can be wrong with a set of points. Every error returned by this package
// for such a reason wraps one of these.
var (
	ErrTooFew    = errors.New("too few points")
	ErrCollinear = errors.New("the points lie on a straight line")
	ErrNotFinite = errors.New("a coordinate is not a number")
	ErrOneSide   = errors.New("the points lie on one side of the hole")
	ErrNoCircle  = errors.New("no circle fits these points")
)

// Circle is a centre and a radius in mm.
type Circle struct {
	Centre [2]float64
	R      float64
}

// Deviation returns the distance of a point outside the circle, negative
// inside, in mm.
func (c Circle) Deviation(p [2]float64) float64 { return dist(p, c.Centre) - c.R }

// RMS returns the root mean square deviation of the points in mm; 0 for none.
func (c Circle) RMS(pts [][2]float64) float64 {
	if len(pts) == 0 {
		return 0
	}
	var q float64
	for _, p := range pts {
		e := c.Deviation(p)
		q += e * e
	}
	return math.Sqrt(q / float64(len(pts)))
}

// Kasa returns the circle that minimises the sum of (distance^2 - R^2)^2: the
// quick algebraic fit. It returns too small a circle on a short arc.
//
// Source: Kasa 1976, IEEE Trans. Instrum. Meas. 25:8-14.
func Kasa(pts [][2]float64) (Circle, error) {
	m, err := momentsOf(pts)
	if err != nil {
		return Circle{}, err
	}
	return m.circle(0, 0)
}

// Taubin returns the algebraic fit whose error is nearly free of bias, the
// start of Least.
//
// Source: Taubin 1991, IEEE Trans. PAMI 13:1115-1138; the root is found by
// Newton's method upward from nothing, as Chernov does (from memory).
func Taubin(pts [][2]float64) (Circle, error) {
	m, err := momentsOf(pts)
	if err != nil {
		return Circle{}, err
	}
	x := rootUp(m.a0(), m.a1(), -3*m.z*m.z-m.zz, 4*m.z, 0)
	return m.circle(x, 0)
}

// Pratt returns the algebraic fit under B^2 + C^2 - 4AD = 1.
//
// Source: Pratt 1987, Computer Graphics 21:145-152 (pages from memory).
func Pratt(pts [][2]float64) (Circle, error) {
	m, err := momentsOf(pts)
	if err != nil {
		return Circle{}, err
	}
	x := rootUp(m.a0(), m.a1(), 4*m.det()-3*m.z*m.z-m.zz, 0, 4)
	return m.circle(x, 2*x)
}

// moments of the points about their mean, in units of their spread.
type moments struct {
	mean, scale            [2]float64
	xx, yy, xy, xz, yz, zz float64
	z                      float64
}

func momentsOf(pts [][2]float64) (moments, error) {
	var m moments
	if err := checkPoints(pts, 3); err != nil {
		return m, err
	}
	n := float64(len(pts))
	for _, p := range pts {
		m.mean[0] += p[0] / n
		m.mean[1] += p[1] / n
	}
	var spread float64
	for _, p := range pts {
		spread = math.Max(spread, dist(p, m.mean))
	}
	m.scale = [2]float64{spread, spread}
	for _, p := range pts {
		x, y := (p[0]-m.mean[0])/spread, (p[1]-m.mean[1])/spread
		z := x*x + y*y
		m.xx += x * x / n
		m.yy += y * y / n
		m.xy += x * y / n
		m.xz += x * z / n
		m.yz += y * z / n
		m.zz += z * z / n
	}
	m.z = m.xx + m.yy
	if m.det() < 1e-11*m.z*m.z {
		return m, ErrCollinear
	}
	return m, nil
}

func (m moments) det() float64 { return m.xx*m.yy - m.xy*m.xy }

func (m moments) a1() float64 {
	return (m.zz-m.z*m.z)*m.z + 4*m.det()*m.z - m.xz*m.xz - m.yz*m.yz
}

func (m moments) a0() float64 {
	return m.xz*(m.xz*m.yy-m.yz*m.xy) + m.yz*(m.yz*m.xx-m.xz*m.xy) - (m.zz-m.z*m.z)*m.det()
}

// circle solves for the centre at the root x; more is added to R^2.
func (m moments) circle(x, more float64) (Circle, error) {
	d := 2 * (x*x - x*m.z + m.det())
	a := (m.xz*(m.yy-x) - m.yz*m.xy) / d
	b := (m.yz*(m.xx-x) - m.xz*m.xy) / d
	s := m.scale[0]
	c := Circle{[2]float64{m.mean[0] + a*s, m.mean[1] + b*s}, s * math.Sqrt(a*a+b*b+m.z+more)}
	if !finite(c.Centre[0], c.Centre[1], c.R) {
		return Circle{}, ErrNoCircle
	}
	return c, nil
}

// rootUp finds the first root of a0 + a1 x + a2 x^2 + a3 x^3 + a4 x^4 at or
// above 0 by Newton's method from 0.
func rootUp(a0, a1, a2, a3, a4 float64) float64 {
	x, was := 0.0, math.Inf(1)
	for range 60 {
		f := a0 + x*(a1+x*(a2+x*(a3+x*a4)))
		if math.Abs(f) >= was {
			break
		}
		was = math.Abs(f)
		slope := a1 + x*(2*a2+x*(3*a3+x*4*a4))
		if slope == 0 || f == 0 {
			break
		}
		next := x - f/slope
		if !finite(next) || next < 0 {
			return 0
		}
		if math.Abs(next-x) < 1e-15 {
			return next
		}
		x = next
	}
	return x
}

// checkPoints refuses coordinates that are no numbers and fewer than least
// different points.
func checkPoints(pts [][2]float64, least int) error {
	for i, p := range pts {
		if !finite(p[0], p[1]) || math.Abs(p[0]) > 1e9 || math.Abs(p[1]) > 1e9 {
			return fmt.Errorf("point %d: %w", i+1, ErrNotFinite)
		}
	}
	if n := distinct(pts, least); n < least {
		return fmt.Errorf("%w: %d different points, need at least %d", ErrTooFew, n, least)
	}
	return nil
}

// distinct counts different points, and stops counting at enough.
func distinct(pts [][2]float64, enough int) int {
	n := 0
	for i, p := range pts {
		fresh := true
		for _, q := range pts[:i] {
			if q == p {
				fresh = false
				break
			}
		}
		if fresh {
			if n++; n == enough {
				return n
			}
		}
	}
	return n
}

func dist(a, b [2]float64) float64 { return math.Hypot(a[0]-b[0], a[1]-b[1]) }

func finite(xs ...float64) bool {
	for _, x := range xs {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}
