// Package inspect sets sizes as made against the plan.
//
// Of judges a seat or a bore by what works, with the instrument that gauged it
// (Decide); Places judges the places of a truck, all together, by Checks that
// are handed to it as functions of places; PutBack is the bush that brings a
// bore back from a seat beside its place. It knows no bush list and no gears:
// the ways on are planned by who calls it. Lengths in mm, plain numbers.
package inspect

import (
	"errors"
	"fmt"
	"math"

	"rebush/fits/odds"
	"rebush/fits/say"
)

// Result is what is proven of a size.
type Result string

// The three results.
const (
	Accept     Result = "accept"
	Reject     Result = "reject"
	CannotTell Result = "cannot tell"
)

// Made is one size as made. An open limit is an infinity.
type Made struct {
	MM        float64 // as gauged
	Low, High float64 // limits
	UMM       float64 // standard uncertainty of the gauging
	GuardK    float64 // guard band in standard uncertainties (1.65)
}

// Decision is what is proven of a size.
type Decision struct {
	Result  Result
	GuardMM float64
	Conform float64  // chance that the true size lies inside its limits
	Rule    say.Text // the decision rule, for paper
	Never   bool     // this instrument can accept nothing here: the guard bands meet
	NeedUMM float64  // the standard uncertainty below which the instrument can tell; 0 where it can
}

// Decide accepts a size inside its limits by the guard band at least, rejects
// one outside by as much, and says that the instrument cannot tell between.
// Errors: limits the wrong way round, figures that are none.
//
// Source: ISO 14253-1:2017 and JCGM 106:2012, both from memory: METHODS.md 1.
func Decide(m Made) (Decision, error) {
	switch {
	case math.IsNaN(m.MM) || math.IsInf(m.MM, 0):
		return Decision{}, errors.New("inspect: the size is not a number")
	case !(m.Low <= m.High) || math.IsInf(m.Low, 1) || math.IsInf(m.High, -1):
		return Decision{}, fmt.Errorf("inspect: limits %v to %v are none", m.Low, m.High)
	case math.IsInf(m.Low, -1) && math.IsInf(m.High, 1):
		return Decision{}, errors.New("inspect: no limit is given")
	case !(m.UMM >= 0 && m.GuardK >= 0) || math.IsInf(m.UMM, 1) || math.IsInf(m.GuardK, 1):
		return Decision{}, fmt.Errorf("inspect: guard band %v x %v; both are 0 or more", m.GuardK, m.UMM)
	}
	g := m.GuardK * m.UMM
	d := Decision{Result: CannotTell, GuardMM: g, Conform: conform(m),
		Rule: say.F("guard band %v (%.4g x the standard uncertainty of the instrument) "+
			"inside and outside each limit; rule of ISO 14253-1", four(1000*g), m.GuardK)}
	const slack = 1e-9
	switch {
	case m.MM >= m.Low+g-slack && m.MM <= m.High-g+slack:
		d.Result = Accept
	case m.MM < m.Low-g-slack || m.MM > m.High+g+slack:
		d.Result = Reject
	}
	if width := m.High - m.Low; 2*g > width+slack {
		d.Never = true
		d.NeedUMM = width / (2 * m.GuardK)
	}
	return d, nil
}

// four is a length in micrometres with four digits that count.
func four(um float64) say.Figure {
	places := 3
	if um > 0 {
		places = max(0, 3-int(math.Floor(math.Log10(um))))
	}
	return say.Um(um, places).Trim()
}

func conform(m Made) float64 {
	s := odds.Sum{Mean: m.MM, Sigma: m.UMM}
	if m.UMM == 0 {
		if m.MM >= m.Low && m.MM <= m.High {
			return 1
		}
		return 0
	}
	low, high := 0.0, 1.0
	if !math.IsInf(m.Low, -1) {
		low = s.Below(m.Low)
	}
	if !math.IsInf(m.High, 1) {
		high = s.Below(m.High)
	}
	return math.Max(0, high-low)
}
