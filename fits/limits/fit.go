package limits

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
)

// Kind says how hole and shaft go together.
type Kind string

// The three kinds of fit.
const (
	Clearance    Kind = "clearance"    // never tighter than size on size
	Transition   Kind = "transition"   // may be either
	Interference Kind = "interference" // never looser than size on size
)

// Fit is a hole and a shaft of one nominal size. Clearances are in um, on
// diameter; interference is a negative clearance.
type Fit struct {
	Hole, Shaft                    Deviation
	MinClearanceUm, MaxClearanceUm decimal.Decimal
	Kind                           Kind
}

// MinInterferenceUm is the least interference; negative where clearance is
// possible.
func (f Fit) MinInterferenceUm() decimal.Decimal { return f.MaxClearanceUm.Neg() }

// MaxInterferenceUm is the greatest interference; negative where there is
// always clearance.
func (f Fit) MaxInterferenceUm() decimal.Decimal { return f.MinClearanceUm.Neg() }

// Fit gives the limits of a pair, "H7/p6", hole first.
func (l *Limits) Fit(nominal dim.Length, pair string) (Fit, error) {
	hole, shaft, ok := strings.Cut(pair, "/")
	if !ok {
		return Fit{}, fmt.Errorf("%q is not a fit; write hole and shaft, as in H7/p6", pair)
	}
	h, err := l.Class(nominal, hole)
	if err != nil {
		return Fit{}, err
	}
	s, err := l.Class(nominal, shaft)
	if err != nil {
		return Fit{}, err
	}
	switch {
	case !h.Hole && s.Hole:
		return Fit{}, fmt.Errorf("%q: the hole stands first; write %s/%s", pair, s.Class, h.Class)
	case !h.Hole:
		return Fit{}, fmt.Errorf("%q: two shafts; a hole class has capitals, as in H7/p6", pair)
	case s.Hole:
		return Fit{}, fmt.Errorf("%q: two holes; a shaft class has small letters, as in H7/p6", pair)
	}
	f := Fit{Hole: h, Shaft: s, MinClearanceUm: h.LowerUm.Sub(s.UpperUm), MaxClearanceUm: h.UpperUm.Sub(s.LowerUm)}
	f.Kind = kind(f.MinClearanceUm, f.MaxClearanceUm)
	return f, nil
}

func kind(minClearance, maxClearance decimal.Decimal) Kind {
	switch {
	case minClearance.Sign() >= 0:
		return Clearance
	case maxClearance.Sign() <= 0:
		return Interference
	}
	return Transition
}
