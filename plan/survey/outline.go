package survey

import (
	"errors"
	"math"
)

// What can be wrong with a worn outline.
var (
	ErrJournal = errors.New("the journal is larger than the hole")
	ErrNoSide  = errors.New("the side the bore has worn to is not known")
)

// OutlineFit is a full-outline fit: where the old centre was.
type OutlineFit struct {
	Shape          Shape
	O              [2]float64 // old centre
	R              float64    // old radius
	D, Theta       float64    // travel of the journal's centre, and which way
	FanHalf        float64    // of a fan, radians
	D2, Theta2     float64    // of the second lobe
	SSQ            float64    // sum of squared residuals, mm^2
	N              int        // points
	S              float64    // of one point, pooled, mm
	Cov            [2][2]float64
	U              float64 // sqrt(trace): error below 2U in about 95 of 100
	UR, UD, UTheta float64
	UW             float64
	q              vector
	Iter           int // Levenberg-Marquardt steps, all starts together
}

// W returns the wear depth, never below 0.
func (f *OutlineFit) W(r float64) float64 {
	return math.Max(0, math.Max(f.D, f.D2)+r-f.R)
}

// Levels of the fit.
const (
	pooled    = 8   // degrees of freedom the instrument's s counts for
	fanFactor = 1.2 // on the uncertainty of a fan: simulated
	fanGain   = 9   // s^2 that a fan must save over a lobe
	leastS    = 2e-4
)

// FitOutline fits a lobe and a fan and takes the fan where it saves more than
// 9 s^2, to wall points of a bore worn by a journal of radius r towards side
// (radians, right to about 45 degrees); s is the standard deviation of one point
// in mm. It allocates nothing.
func FitOutline(pts [][2]float64, r, s, side float64) (OutlineFit, error) {
	if len(pts) < 6 {
		return OutlineFit{}, ErrTooFew
	}
	var one seed
	iter := lobeStarts(pts, r, side, &one)
	o := outline{pts: pts, r: r, shape: OneLobe}
	if len(pts) > 6 {
		var fan seed
		iter += fanStarts(pts, r, side, &one, &fan)
		floor := math.Max(s, leastS)
		if one.n.ssq-fan.n.ssq > fanGain*floor*floor {
			o.shape = Fan
			return o.report(&fan, s, iter)
		}
	}
	return o.report(&one, s, iter)
}

// report turns a solution into figures with their covariance
//
//	s^2 = (8 s0^2 + SSQ)/(8 + n - p),  C = s^2 (J'J)^-1
//
// Unknowns that the points do not tell of are held by a weak prior of 1 mm and
// 1 radian.
func (o *outline) report(best *seed, s float64, iter int) (OutlineFit, error) {
	q, p, n := &best.q, o.shape.unknowns(), len(o.pts)
	if !finite(q[iX], q[iY], q[iR], q[iD], q[iTheta], best.n.ssq) {
		return OutlineFit{}, ErrNoCircle
	}
	f := OutlineFit{Shape: o.shape, O: [2]float64{q[iX], q[iY]}, R: q[iR], D: q[iD],
		Theta: angle(q[iTheta]), SSQ: best.n.ssq, N: n, Iter: iter}
	switch o.shape {
	case Fan:
		f.FanHalf = q[iFan]
	case TwoLobes:
		f.D2, f.Theta2 = q[iD2], angle(q[iTheta2])
	}
	s = math.Max(s, leastS)
	f.S = math.Sqrt((pooled*s*s + f.SSQ) / (pooled + math.Max(0, float64(n-p))))
	a := best.n.a
	for i := range p {
		a[i][i] += f.S * f.S
	}
	if !factor(&a, p) {
		return OutlineFit{}, ErrNoCircle
	}
	k := f.S
	if o.shape == Fan {
		k *= fanFactor
	}
	var c [most]vector
	for i := range p {
		c[i][i] = k * k
		solve(&a, p, &c[i])
	}
	f.Cov = [2][2]float64{{c[iX][iX], c[iX][iY]}, {c[iY][iX], c[iY][iY]}}
	f.U = math.Sqrt(c[iX][iX] + c[iY][iY])
	f.UR, f.UD, f.UTheta = math.Sqrt(c[iR][iR]), math.Sqrt(c[iD][iD]), math.Sqrt(c[iTheta][iTheta])
	f.UW = math.Sqrt(math.Max(0, c[iR][iR]+c[iD][iD]-2*c[iR][iD]))
	f.q = *q
	return f, nil
}

// angle brings an angle into 0 to 2 pi.
func angle(a float64) float64 {
	a = math.Mod(a, 2*math.Pi)
	if a < 0 {
		a += 2 * math.Pi
	}
	return a
}

// apart returns the angle between two directions, 0 to pi.
func apart(a, b float64) float64 {
	return math.Abs(math.Remainder(a-b, 2*math.Pi))
}
