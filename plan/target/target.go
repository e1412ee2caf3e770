// Package target decides where each bore goes. Each shaft starts at the
// weighted mean of its original centres; it is moved from there only where a
// trusted pair of gears would miss its window, and then by the least amount in
// units of what is known about the original centres. All shafts are placed at
// once.
//
// The search itself (Place) is plain numbers: mm, mm^2 for covariances, degrees
// anticlockwise from +x where a name ends in Deg; a gear comes to it with its
// window of centre distances. Round it stands what asks it for a job: how a
// shaft stands in its holes under load (Hole, Stand), what is asked of such
// stands, by the decision and by its explanation alike (Distance, Span, Skew,
// LeanLoss, Wheelbase, Rock), the step that places all bores (Settle), and the
// look at the meshes once the bushes are chosen (Reach).
package target

import (
	"fmt"
	"math"

	"rebush/plan/mesh"
)

// Point is a place in mm in the frame of the job.
type Point = [2]float64

// Cov is the covariance of a centre in mm^2.
type Cov = [2][2]float64

// Round is the covariance of a centre known to u mm in every direction.
func Round(u float64) Cov { return Cov{{u * u, 0}, {0, u * u}} }

// Bore is one bore of a shaft.
type Bore struct {
	Name     string // "front axle.left"
	Original Point  // its old centre; of a fixed bore, the centre it keeps
	Cov      Cov    // of Original
	Found    Point  // the middle of the hole as found
	// CdLo and CdHi are the least and most diametral running clearance that
	// the finished bore may have. For a shaft left in its worn hole both are
	// twice the way from the old centre to where the shaft lies: 2 (c + w).
	CdLo, CdHi float64
	Fixed      bool // left alone, or its bush is renewed in a sound seat
	// Aside is the way from Original to the place from which the clearance of a
	// fixed bore is reckoned: nought, but of a shaft left in a worn hole, which
	// bears it aside of the old centre.
	Aside Point
}

// Shaft is a shaft in one or two bores, the left one first. A new shaft stands
// square: both bores go to one place. Where one bore is fixed the other goes to
// it; where both are, they stay as they are.
type Shaft struct {
	Name       string
	Bores      []Bore
	TowardsDeg float64 // the way the shaft is pressed in its bores
	USetup     float64 // standard uncertainty of placing a clamping, mm
	UHole      float64 // standard uncertainty of placing one hole, mm
	Sound      bool    // not worn: it is moved where a mesh would miss its window, and no farther
	// Cross is the covariance of the errors of the first bore's old centre (rows)
	// and the second's (columns): zero where neither lends the other.
	Cross Cov
	held  bool // it stays for now
}

// Geometry turns two places into a centre distance: parallel shafts, or a worm
// along the truck.
type Geometry = mesh.Geometry

// Gear is one mesh. Its wheel sits on shaft Shaft; its mate sits on shaft Mate,
// or at MateAt where Mate is -1.
type Gear struct {
	Name     string
	Shaft    int
	Mate     int
	MateAt   Point
	Geometry Geometry
	Lo, Hi   float64 // wanted centre distance under load, mm; Lo above Hi: empty
	Trusted  bool    // may move a shaft
	UGeom    float64 // standard uncertainty of the window's place
	UMate    float64 // standard uncertainty of a mate at a fixed place
	// Share and MateShare say where the gear stands on its shaft: 0 at the left
	// bore, 1 at the right one; outside them it is overhung.
	Share, MateShare float64
	// Turn are the least and most centre distance that the tightest and the loosest
	// tooth of a turn leave; (0, 0): nothing beside Lo and Hi.
	Turn [2]float64
}

// Input is everything that decides.
type Input struct {
	Shafts []Shaft
	Gears  []Gear
	// MostMove is the longest move of a shaft that is an answer at all, mm; 0:
	// a tenth of the shortest centre distance of the trusted pairs.
	MostMove float64
	// OneClamping says that all shafts are cut in one: on a lathe each is brought
	// to the spindle by itself.
	OneClamping bool
	// Inside is how many doubts inside its window a mesh is aimed at least by shafts
	// that are cut anyway, where all windows can be met so; 0: one.
	Inside float64
	// Move is what a move of a shaft weighs against the chance: by one standard
	// uncertainty of its old centre as much as losing that share of it.
	Move float64
	deep float64 // how many doubts inside it is now; 0: one
}

// inside is by how many doubts a window is narrowed.
func (in Input) inside() float64 {
	if in.deep == 0 {
		return 1
	}
	return in.deep
}

// deeper is the question by how many doubts, with the shafts held that need no
// cut: those that are sound and stay where they are at the places given.
func (in Input) deeper(k float64, at, mean []Point) Input {
	in.deep = k
	in.Shafts = append([]Shaft(nil), in.Shafts...)
	for i := range in.Shafts {
		s := &in.Shafts[i]
		s.held = s.Sound && math.Hypot(at[i][0]-mean[i][0], at[i][1]-mean[i][1]) <= missing
	}
	return in
}

func finite(v ...float64) bool {
	for _, x := range v {
		if math.IsNaN(x) || math.IsInf(x, 0) || math.Abs(x) > 1e6 {
			return false
		}
	}
	return true
}

// Validate says in words what cannot be reckoned.
func (in Input) Validate() error {
	if !finite(in.Inside) || in.Inside < 0 || in.Inside > 10 {
		return fmt.Errorf("a mesh is aimed %.4g doubts inside its window; it should be 0 to 10", in.Inside)
	}
	if !finite(in.Move) || in.Move < 0 || in.Move > 1 {
		return fmt.Errorf("a move weighs %.4g of the chance; it should be 0 to 1", in.Move)
	}
	if !finite(in.MostMove) || in.MostMove < 0 {
		return fmt.Errorf("the longest move is %.4g mm; it should be 0 or more", in.MostMove)
	}
	for _, s := range in.Shafts {
		if len(s.Bores) < 1 || len(s.Bores) > 2 {
			return fmt.Errorf("%s has %d bores; a shaft runs in one or two", s.Name, len(s.Bores))
		}
		if !finite(s.TowardsDeg, s.USetup, s.UHole) || s.USetup < 0 || s.UHole < 0 {
			return fmt.Errorf("%s: the direction it is pressed in and the doubts of placing should be plain numbers, doubts 0 or more", s.Name)
		}
		for _, b := range s.Bores {
			c := b.Cov
			if !finite(b.Original[0], b.Original[1], b.Found[0], b.Found[1], b.CdLo, b.CdHi, c[0][0], c[0][1], c[1][0], c[1][1]) {
				return fmt.Errorf("%s: its centres, clearances and doubts should be plain numbers", b.Name)
			}
			if c[0][0] < 0 || c[1][1] < 0 || c[0][1]*c[1][0] > c[0][0]*c[1][1]*(1+1e-9)+1e-18 || math.Abs(c[0][1]-c[1][0]) > 1e-9*(c[0][0]+c[1][1]) {
				return fmt.Errorf("%s: the doubt of its centre is no covariance: %v", b.Name, c)
			}
			if !finite(s.Cross[0][0], s.Cross[0][1], s.Cross[1][0], s.Cross[1][1]) {
				return fmt.Errorf("%s: what its two old centres have in common should be plain numbers", s.Name)
			}
			if b.CdLo < 0 || b.CdHi < b.CdLo {
				return fmt.Errorf("%s: its running clearance should go from a least to a most, 0 or more; it goes from %.4g to %.4g mm", b.Name, b.CdLo, b.CdHi)
			}
		}
	}
	for _, g := range in.Gears {
		if g.Shaft < 0 || g.Shaft >= len(in.Shafts) || g.Mate < -1 || g.Mate >= len(in.Shafts) || g.Mate == g.Shaft || g.Geometry == nil {
			return fmt.Errorf("%s: a gear sits on one shaft and its mate on another or at a fixed place", g.Name)
		}
		if !finite(g.MateAt[0], g.MateAt[1], g.Lo, g.Hi, g.UGeom, g.UMate, g.Share, g.MateShare, g.Turn[0], g.Turn[1]) || g.UGeom < 0 || g.UMate < 0 {
			return fmt.Errorf("%s: its window, place and doubts should be plain numbers, doubts 0 or more", g.Name)
		}
	}
	return nil
}

// floor is the least standard uncertainty of a centre in mm: no bench knows
// one better, and a doubt of nought would outweigh everything.
const floor = 0.0005

// weight is the inverse of a covariance, its diagonal raised by the floor
// where it is (nearly) singular.
func weight(c Cov) Cov {
	tr := c[0][0] + c[1][1]
	det := c[0][0]*c[1][1] - c[0][1]*c[1][0]
	if least := tr/2 - math.Sqrt(math.Max(0, tr*tr/4-det)); least < floor*floor {
		add := floor*floor - math.Max(0, least)
		c[0][0] += add
		c[1][1] += add
		det = c[0][0]*c[1][1] - c[0][1]*c[1][0]
	}
	return Cov{{c[1][1] / det, -c[0][1] / det}, {-c[1][0] / det, c[0][0] / det}}
}

// mean returns the weighted mean of the original centres of a shaft and the
// inverse of its covariance: the sum of their weights, where their errors have
// nothing in common. A fixed bore decides alone.
func (s Shaft) mean() (t Point, w Cov) {
	if f := s.fixed(); f >= 0 {
		return s.Bores[f].Original, weight(s.Bores[f].Cov)
	}
	if s.Cross != (Cov{}) && len(s.Bores) == 2 {
		return s.joint()
	}
	var r Point
	for _, b := range s.Bores {
		k := weight(b.Cov)
		for i := range 2 {
			for j := range 2 {
				w[i][j] += k[i][j]
				r[i] += k[i][j] * b.Original[j]
			}
		}
	}
	det := w[0][0]*w[1][1] - w[0][1]*w[1][0]
	return Point{(w[1][1]*r[0] - w[0][1]*r[1]) / det, (w[0][0]*r[1] - w[1][0]*r[0]) / det}, w
}

// fixed returns the index of the first fixed bore, -1 for a shaft that moves.
func (s Shaft) fixed() int {
	for i, b := range s.Bores {
		if b.Fixed {
			return i
		}
	}
	return -1
}

// at interpolates a figure of the two bores at a share of their spacing.
func (s Shaft) at(share float64, f func(Bore) float64) float64 {
	if len(s.Bores) == 1 {
		return f(s.Bores[0])
	}
	return (1-share)*f(s.Bores[0]) + share*f(s.Bores[1])
}

// bare is where the line of bore centres runs at a share, with the shaft's
// target at t.
func (s Shaft) bare(t Point, share float64) Point {
	if s.fixed() < 0 {
		return t
	}
	c := func(i int) float64 {
		return s.at(share, func(b Bore) float64 {
			if b.Fixed {
				return b.Original[i] + b.Aside[i]
			}
			return t[i]
		})
	}
	return Point{c(0), c(1)}
}

// lift is how far the shaft lies from the bore centres towards its load.
func (s Shaft) lift(share float64, f func(Bore) float64) Point {
	sin, cos := math.Sincos(s.TowardsDeg * math.Pi / 180)
	d := s.at(share, f) / 2
	return Point{d * cos, d * sin}
}

func lo(b Bore) float64 { return b.CdLo }
func hi(b Bore) float64 { return b.CdHi }

// doubt is the variance along n of where the bore centres will be at a share,
// without what a clamping gives to both bores.
func (s Shaft) doubt(n Point, share float64) float64 { return s.together(n, n, share, share) }
