// Package stock is the bushes: the limits of one from how its size is known,
// what cannot be a bush, the bush that is turned, and the plain series that can
// be bought.
//
// It does not know the limit tables: whoever calls hands down a Classes. It
// does not choose between bushes.
package stock

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
)

// Classes gives the limits of a class at a nominal size in um from nominal,
// and the table rows they come from.
type Classes func(nominal dim.Length, class string) (lowerUm, upperUm decimal.Decimal, rows []string, err error)

// Size is a diameter as it is known: nominal with a class, two limits, or one
// measured size. "r6 to s7" is a class of which either end may come.
type Size struct {
	Nominal   dim.Length
	Class     string
	Low, High dim.Length
	Measured  bool
}

// Limits are the smallest and largest that a diameter may be.
type Limits struct {
	Low, High dim.Length
	How       string   // "5 mm s7", "measured, 4.998 to 5.003 mm", ...
	Rows      []string // table rows and rules they come from
}

// Width is High less Low.
func (l Limits) Width() dim.Length { return l.High.Sub(l.Low) }

// Middle is half way between the limits.
func (l Limits) Middle() dim.Length { return l.Low.Add(l.High).Half() }

// Limits resolves a size. u is the standard uncertainty of the instrument that
// took one measured size; it widens that one by u either way and nothing else.
func (s Size) Limits(classes Classes, u dim.Length) (Limits, error) {
	var l Limits
	switch {
	case strings.TrimSpace(s.Class) != "":
		if !s.Nominal.Given() {
			return l, fmt.Errorf("a class, %s, needs its nominal size", s.Class)
		}
		return s.classed(classes)
	case s.Low.Given() && s.High.Given() && s.Low.Cmp(s.High) != 0:
		l = Limits{Low: s.Low, High: s.High, How: fmt.Sprintf("limits %s to %s", s.Low, s.High)}
		if s.Measured {
			l.How = fmt.Sprintf("measured, %s to %s", s.Low, s.High)
		}
	case s.Measured && (s.Nominal.Given() || s.Low.Given()):
		one := s.Nominal
		if !one.Given() {
			one = s.Low
		}
		l = Limits{Low: one, High: one, How: fmt.Sprintf("measured, %s", one)}
		if u.Given() {
			if u.Sign() < 0 {
				return Limits{}, fmt.Errorf("an instrument cannot be good to %s; write 0 or more", u)
			}
			l = Limits{Low: one.Sub(u), High: one.Add(u), How: fmt.Sprintf("measured, %s, good to %s", one, u)}
		}
	case s.Nominal.Given():
		return l, fmt.Errorf("%s is a nominal size without a class; give its class, its limits, or say that it was measured", s.Nominal)
	default:
		return l, fmt.Errorf("no size is given; give nominal and class, two limits, or one measured size")
	}
	if l.High.Less(l.Low) {
		return Limits{}, fmt.Errorf("the lower limit %s is above the upper limit %s", l.Low, l.High)
	}
	if l.Low.Sign() <= 0 {
		return Limits{}, fmt.Errorf("a diameter of %s is not possible; it must be greater than 0", l.Low)
	}
	return l, nil
}

// classed spans all the classes that the text names.
func (s Size) classed(classes Classes) (Limits, error) {
	l := Limits{How: s.Nominal.String() + " " + strings.TrimSpace(s.Class)}
	if s.Nominal.Sign() <= 0 {
		return Limits{}, fmt.Errorf("a diameter of %s is not possible; it must be greater than 0", s.Nominal)
	}
	for _, class := range strings.Split(s.Class, " to ") {
		lower, upper, rows, err := classes(s.Nominal, strings.TrimSpace(class))
		if err != nil {
			return Limits{}, err
		}
		low, high := s.Nominal.Add(dim.OfUm(lower)), s.Nominal.Add(dim.OfUm(upper))
		if !l.Low.Given() || low.Less(l.Low) {
			l.Low = low
		}
		if !l.High.Given() || l.High.Less(high) {
			l.High = high
		}
		l.Rows = append(l.Rows, rows...)
	}
	return l, nil
}
