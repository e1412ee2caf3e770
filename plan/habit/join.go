package habit

import "math"

// JoinMean joins a mean x of standard uncertainty ux with another y of uy, by
// 1/u^2:
//
//	(x/ux^2 + y/uy^2) / (1/ux^2 + 1/uy^2), u = 1/root(1/ux^2 + 1/uy^2)
//
// in one unit. A mean of no uncertainty stands, the first before the second.
// Source: METHODS.md 1.
func JoinMean(x, ux, y, uy float64) (mean, u float64) {
	switch {
	case !(ux > 0):
		return x, 0
	case !(uy > 0):
		return y, 0
	}
	wx, wy := 1/(ux*ux), 1/(uy*uy)
	return (x*wx + y*wy) / (wx + wy), 1 / math.Sqrt(wx+wy)
}

// JoinScatter pools the variances of two scatters, each weighed with its jobs:
//
//	root((n x^2 + m y^2) / (n + m))
//
// in one unit; the first where neither has any. Source: METHODS.md 1.
func JoinScatter(x, n, y, m float64) float64 {
	if !(n+m > 0) {
		return x
	}
	return math.Sqrt((n*x*x + m*y*y) / (n + m))
}

// JoinShare joins two shares, each weighed with its jobs. Source: METHODS.md 1.
func JoinShare(x, n, y, m float64) float64 {
	if !(n+m > 0) {
		return x
	}
	return (n*x + m*y) / (n + m)
}
