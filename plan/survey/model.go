package survey

import "math"

// Shape is how the journal wore its bore.
type Shape int

// The shapes that are fitted.
const (
	OneLobe  Shape = iota // pressed one way
	Fan                   // rocked over a fan of directions
	TwoLobes              // pressed two ways, as under two loads
)

func (s Shape) String() string { return [...]string{"one lobe", "fan", "two lobes"}[s] }

// unknowns of a shape: x0, y0, R, d, theta, then the fan's half-angle or the
// second lobe's d and theta.
func (s Shape) unknowns() int { return 5 + int(s) }

const most = 8 // unknowns of any shape, and the journal's radius

// Indices of the unknowns.
const (
	iX = iota
	iY
	iR
	iD
	iTheta
	iFan // or d of the second lobe
	iTheta2
	iD2 = iFan
)

// widestFan bounds the half-angle of a fan: beyond it the sweep is no longer
// one side of the hole.
const widestFan = 80 * math.Pi / 180

type vector [most]float64

type matrix [most][most]float64

// normal is J'J (upper triangle), J'e and the sum of squares at one place.
type normal struct {
	a   matrix
	g   vector
	ssq float64
}

// outline is a set of wall points with the journal that wore it. It is small
// and stays on the stack.
type outline struct {
	pts   [][2]float64
	r     float64
	shape Shape
	bounded
}

// bounded says how far the fitted direction may turn from the stated side.
type bounded struct{ side, free float64 }

// eval fills the normal equations at q. The residual of a point is
//
//	min(|P-O| - R, dist(P, S) - r)
//
// with S what the journal's centre swept: a segment, a pie slice, or two
// segments. The Jacobian is exact on each branch.
func (o *outline) eval(q *vector, m *normal) {
	*m = normal{}
	p := o.shape.unknowns()
	at := o.turn(q)
	var row vector
	// Most points lie on the old wall: their rows (-ux, -uy, -1) are summed
	// apart.
	var ux, uy, uxx, uxy, uyy, wall, er, eux, euy float64
	for _, pt := range o.pts {
		ex, ey := pt[0]-q[iX], pt[1]-q[iY]
		rho := math.Sqrt(ex*ex + ey*ey)
		res, worn := o.residual(q, &at, ex, ey, rho, &row)
		m.ssq += res * res
		if !worn {
			if rho > 0 {
				ex /= rho
				ey /= rho
			}
			wall++
			ux, uy = ux+ex, uy+ey
			uxx, uxy, uyy = uxx+ex*ex, uxy+ex*ey, uyy+ey*ey
			er, eux, euy = er+res, eux+res*ex, euy+res*ey
			continue
		}
		for i := range p {
			ri := row[i]
			if ri == 0 {
				continue
			}
			m.g[i] += ri * res
			for j := i; j < p; j++ {
				m.a[i][j] += ri * row[j]
			}
		}
	}
	m.a[iX][iX], m.a[iX][iY], m.a[iX][iR] = m.a[iX][iX]+uxx, m.a[iX][iY]+uxy, m.a[iX][iR]+ux
	m.a[iY][iY], m.a[iY][iR], m.a[iR][iR] = m.a[iY][iY]+uyy, m.a[iY][iR]+uy, m.a[iR][iR]+wall
	m.g[iX], m.g[iY], m.g[iR] = m.g[iX]-eux, m.g[iY]-euy, m.g[iR]-er
}

// turned are the sines and cosines of an outline's directions.
type turned struct {
	sin, cos               float64
	sinA, cosA, sinB, cosB float64 // edges of the fan, or B the second lobe
}

func (o *outline) turn(q *vector) (t turned) {
	t.sin, t.cos = math.Sincos(q[iTheta])
	switch o.shape {
	case Fan:
		t.sinA, t.cosA = math.Sincos(q[iTheta] - q[iFan])
		t.sinB, t.cosB = math.Sincos(q[iTheta] + q[iFan])
	case TwoLobes:
		t.sinB, t.cosB = math.Sincos(q[iTheta2])
	}
	return t
}

// residual is how far a point stands off the outline, (ex, ey) and rho from O;
// row is its slope where it lies on the worn part.
func (o *outline) residual(q *vector, at *turned, ex, ey, rho float64, row *vector) (res float64, worn bool) {
	res = rho - q[iR]
	sin, cos := at.sin, at.cos
	switch o.shape {
	case OneLobe:
		worn = ex*cos+ey*sin > 0 && lobe(row, &res, ex, ey, sin, cos, q[iD], o.r, iD, iTheta)
	case TwoLobes:
		worn = lobe(row, &res, ex, ey, sin, cos, q[iD], o.r, iD, iTheta)
		worn = lobe(row, &res, ex, ey, at.sinB, at.cosB, q[iD2], o.r, iD2, iTheta2) || worn
	case Fan:
		switch {
		case ex*sin <= ey*cos && ex*at.sinB < ey*at.cosB: // beyond the left edge
			if worn = lobe(row, &res, ex, ey, at.sinB, at.cosB, q[iD], o.r, iD, iTheta); worn {
				row[iFan] = row[iTheta]
			}
		case ex*sin > ey*cos && ex*at.sinA > ey*at.cosA: // beyond the right edge
			if worn = lobe(row, &res, ex, ey, at.sinA, at.cosA, q[iD], o.r, iD, iTheta); worn {
				row[iFan] = -row[iTheta]
			}
		case ex*cos+ey*sin > 0:
			if e := rho - q[iD] - o.r; e < res {
				res, worn = e, true
				*row = vector{-ex / rho, -ey / rho}
				row[iD] = -1
			}
		}
	}
	return res, worn
}

// squares is the sum of squared residuals alone.
func (o *outline) squares(q *vector) (sum float64) {
	at := o.turn(q)
	var row vector
	for _, pt := range o.pts {
		ex, ey := pt[0]-q[iX], pt[1]-q[iY]
		res, _ := o.residual(q, &at, ex, ey, math.Sqrt(ex*ex+ey*ey), &row)
		sum += res * res
	}
	return sum
}

// lobe replaces a residual and its row where the journal swept along a segment
// lies nearer, and says whether it did. (ex, ey) is the point from O.
func lobe(row *vector, res *float64, ex, ey, sin, cos, d, r float64, id, it int) bool {
	t := ex*cos + ey*sin
	if t <= 0 {
		return false // nearest to O itself: the disc, as r <= R
	}
	if t >= d { // the round end
		vx, vy := ex-d*cos, ey-d*sin
		l := math.Sqrt(vx*vx + vy*vy)
		if l-r >= *res || l == 0 {
			return false
		}
		*res = l - r
		vx /= l
		vy /= l
		*row = vector{-vx, -vy}
		row[id] = -(vx*cos + vy*sin)
		row[it] = -d * (vy*cos - vx*sin)
		return true
	}
	across := ey*cos - ex*sin // a flank
	sign := 1.0
	if across < 0 {
		sign, across = -1, -across
	}
	if across-r >= *res {
		return false
	}
	*res = across - r
	*row = vector{sign * sin, -sign * cos}
	row[it] = -sign * t
	return true
}
