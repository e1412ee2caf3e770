package survey

import "math"

// LeastFit is the least-squares circle with what is known about it.
type LeastFit struct {
	Circle
	RMS  float64       // of the residuals, mm
	S    float64       // of one point: from the residuals, or as given; mm
	Cov  [2][2]float64 // of the centre, mm^2
	UR   float64       // of the radius, mm
	Iter int           // Gauss-Newton steps taken
}

// U returns the largest semi-axis of the standard ellipse of the centre, mm.
func (f LeastFit) U() float64 { return LargestU(f.Cov) }

// Least returns the least-squares reference circle (LSCI of ISO 12181-1,
// name from memory): the least sum of squared radial distances. It is found
// by Gauss-Newton from the Taubin fit, until the step is below 1e-12 R. The
// covariance of the centre is s^2 (A'A)^-1 with rows (cos t, sin t, 1); s is
// the standard deviation of one point in mm, 0 to take it from the residuals
// with n - 3 degrees of freedom (three points then tell nothing of s).
//
// It counts random errors of single points only. Through all the points of a
// worn bore it lies about half the wear from the old centre.
func Least(pts [][2]float64, s float64) (LeastFit, error) {
	c, err := Taubin(pts)
	if err != nil {
		return LeastFit{}, err
	}
	f := LeastFit{Circle: c}
	best := sumSquares(pts, c)
	for f.Iter = 0; f.Iter < 200; f.Iter++ {
		a, g := normalCircle(pts, f.Circle)
		inv, ok := invert3(a)
		if !ok {
			return LeastFit{}, ErrCollinear
		}
		var step [3]float64
		for i := range step {
			for j := range g {
				step[i] -= inv[i][j] * g[j]
			}
		}
		// Halve a step that overshoots: on a short arc Gauss-Newton may.
		next, sum := f.Circle, math.Inf(1)
		for range 40 {
			next = Circle{[2]float64{f.Centre[0] + step[0], f.Centre[1] + step[1]}, f.R + step[2]}
			if sum = sumSquares(pts, next); sum <= best*(1+1e-12) {
				break
			}
			step = [3]float64{step[0] / 2, step[1] / 2, step[2] / 2}
		}
		if !finite(sum) || sum > best*(1+1e-12)+1e-300 {
			break
		}
		f.Circle, best = next, sum
		if math.Abs(step[0])+math.Abs(step[1])+math.Abs(step[2]) < 1e-12*f.R {
			break
		}
	}
	if !finite(f.Centre[0], f.Centre[1], f.R) || f.R <= 0 {
		return LeastFit{}, ErrNoCircle
	}
	if spread := spreadOf(pts); f.R > 1e5*spread {
		return LeastFit{}, ErrCollinear
	}
	n := float64(len(pts))
	f.RMS = math.Sqrt(best / n)
	if f.S = s; s <= 0 && n > 3 {
		f.S = math.Sqrt(best / (n - 3))
	}
	a, _ := normalCircle(pts, f.Circle)
	inv, ok := invert3(a)
	if !ok {
		return LeastFit{}, ErrCollinear
	}
	f.Cov = [2][2]float64{{f.S * f.S * inv[0][0], f.S * f.S * inv[0][1]}, {f.S * f.S * inv[1][0], f.S * f.S * inv[1][1]}}
	f.UR = f.S * math.Sqrt(inv[2][2])
	return f, nil
}

// normalCircle returns J'J and J'e of the radial residuals.
func normalCircle(pts [][2]float64, c Circle) (a [3][3]float64, g [3]float64) {
	for _, p := range pts {
		dx, dy := p[0]-c.Centre[0], p[1]-c.Centre[1]
		d := math.Hypot(dx, dy)
		if d == 0 {
			continue
		}
		row := [3]float64{-dx / d, -dy / d, -1}
		for i := range row {
			g[i] += row[i] * (d - c.R)
			for j := range row {
				a[i][j] += row[i] * row[j]
			}
		}
	}
	return a, g
}

func sumSquares(pts [][2]float64, c Circle) float64 {
	var q float64
	for _, p := range pts {
		e := c.Deviation(p)
		q += e * e
	}
	return q
}

func spreadOf(pts [][2]float64) float64 {
	var most float64
	for _, p := range pts {
		most = math.Max(most, dist(p, pts[0]))
	}
	return most
}

// invert3 inverts a symmetric positive matrix.
func invert3(a [3][3]float64) (inv [3][3]float64, ok bool) {
	c := func(i, j, k, l int) float64 { return a[i][j]*a[k][l] - a[i][l]*a[k][j] }
	det := a[0][0]*c(1, 1, 2, 2) - a[0][1]*c(1, 0, 2, 2) + a[0][2]*c(1, 0, 2, 1)
	if !(det > 1e-18*math.Abs(a[0][0]*a[1][1]*a[2][2])) {
		return inv, false
	}
	inv[0][0], inv[1][1], inv[2][2] = c(1, 1, 2, 2)/det, c(0, 0, 2, 2)/det, c(0, 0, 1, 1)/det
	inv[0][1] = -c(0, 1, 2, 2) / det
	inv[0][2] = c(0, 1, 1, 2) / det
	inv[1][2] = -c(0, 0, 1, 2) / det
	inv[1][0], inv[2][0], inv[2][1] = inv[0][1], inv[0][2], inv[1][2]
	return inv, true
}

// LargestU returns the largest semi-axis of the standard ellipse of a
// covariance in mm^2: one figure, in mm, for how far out a centre may be.
func LargestU(c [2][2]float64) float64 {
	m, d := (c[0][0]+c[1][1])/2, math.Hypot((c[0][0]-c[1][1])/2, c[0][1])
	return math.Sqrt(math.Max(0, m+d))
}
