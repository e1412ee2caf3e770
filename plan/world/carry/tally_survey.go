package carry

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
)

// Coverage is how surveys of one kind err.
type Coverage struct {
	N                 int
	Square, Stated    float64
	In, InRound, Axis int
	Along, Across     float64 // mean of error along the wear, and squares across
}

// ellipse is an error in units of its stated covariance, and along the major
// axis in units of the largest semi-axis; without a covariance it is round.
func (e Error) ellipse() (radius, along float64) {
	x, y, z := e.U*e.U, 0.0, e.U*e.U
	if e.Cov != nil {
		x, y, z = e.Cov[0], e.Cov[1], e.Cov[2]
	}
	det := x*z - y*y
	if det <= 0 {
		return size(e.Off) / e.U, size(e.Off) / e.U
	}
	radius = math.Sqrt((z*e.Off[0]*e.Off[0] - 2*y*e.Off[0]*e.Off[1] + x*e.Off[1]*e.Off[1]) / det)
	major := math.Atan2(2*y, x-z) / 2
	sin, cos := math.Sincos(major)
	most := math.Sqrt((x+z)/2 + math.Sqrt((x-z)*(x-z)/4+y*y))
	return radius, math.Abs(e.Off[0]*cos+e.Off[1]*sin) / most
}

// Surveyed prints errors of the old centres by kind of evidence and by wear.
func (t *Tally) Surveyed() string {
	sums := map[string]*Coverage{}
	for _, c := range t.All {
		for _, e := range c.Survey {
			band := "wear over 0.3"
			switch {
			case e.Wear < 0.01:
				band = "wear under 0.01"
			case e.Wear < 0.03:
				band = "wear 0.01 to 0.03"
			case e.Wear < 0.1:
				band = "wear 0.03 to 0.1"
			case e.Wear < 0.3:
				band = "wear 0.1 to 0.3"
			}
			keys := []string{"all", "by " + e.Method, band}
			if e.Repaired {
				keys = []string{"repaired before"}
			}
			for _, k := range keys {
				if sums[k] == nil {
					sums[k] = &Coverage{}
				}
				s := sums[k]
				r, along := e.ellipse()
				s.N++
				s.Square += e.Off[0]*e.Off[0] + e.Off[1]*e.Off[1]
				s.Stated += e.U * e.U
				if r <= 2.4477 {
					s.In++
				}
				if along <= 2 {
					s.Axis++
				}
				s.Along += e.Off[0]*math.Cos(e.Deg*degree) + e.Off[1]*math.Sin(e.Deg*degree)
			}
		}
	}
	var b strings.Builder
	fmt.Fprintf(&b, "old centres\n  %-44s %5s  %6s  %6s  %6s  %6s  %s\n", "", "n", "rms um", "u um", "ellip%", "axis%", "mean along wear, um")
	for _, k := range slices.Sorted(maps.Keys(sums)) {
		s := sums[k]
		n := float64(s.N)
		fmt.Fprintf(&b, "  %-44s %5d  %6.1f  %6.1f  %6.1f  %6.1f  %+6.1f\n", k, s.N, 1000*math.Sqrt(s.Square/n), 1000*math.Sqrt(s.Stated/n),
			100*float64(s.In)/n, 100*float64(s.Axis)/n, 1000*s.Along/n)
	}
	return b.String()
}

// Covered is the share of old centres in their ellipse of 95 %, and within 2 u
// along its longer axis; holes that an earlier repair put elsewhere are left out.
func (t *Tally) Covered() (in, axis float64) {
	n := 0.0
	for _, c := range t.All {
		for _, e := range c.Survey {
			if e.Repaired {
				continue
			}
			n++
			r, along := e.ellipse()
			if r <= 2.4477 {
				in++
			}
			if along <= 2 {
				axis++
			}
		}
	}
	return in / n, axis / n
}
