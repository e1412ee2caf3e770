package table

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Span is what a figure of a rule may be, in the unit of the rule.
type Span struct{ Least, Most float64 }

func (s Span) has(v float64) bool { return v >= s.Least && v <= s.Most }

// spans reads the range of a rule: "0..1", or "1..5 and 0..3" where its two
// figures are not the low and high of one thing.
func spans(text string) (of [2]Span, ordered bool, err error) {
	first, second, two := strings.Cut(text, " and ")
	if !two {
		second = first
	}
	for i, t := range []string{first, second} {
		least, most, ok := strings.Cut(t, "..")
		var bad1, bad2 error
		of[i].Least, bad1 = strconv.ParseFloat(least, 64)
		of[i].Most, bad2 = strconv.ParseFloat(most, 64)
		if !ok || bad1 != nil || bad2 != nil || !(of[i].Least < of[i].Most) {
			return of, false, fmt.Errorf("%q is no range; write such as 0..1", text)
		}
	}
	return of, !two, nil
}

// Check says what is wrong with figures for a rule: nil where both may be. high
// is NaN for a single figure.
func (r Rule) Check(low, high float64) error {
	switch single := math.IsNaN(high); {
	case math.IsNaN(low) || math.IsInf(low, 0) || math.IsInf(high, 0):
		return fmt.Errorf("rule %s takes plain figures", r.Name)
	case single && !math.IsNaN(r.High):
		return fmt.Errorf("rule %s takes two figures [low, high]", r.Name)
	case !single && math.IsNaN(r.High):
		return fmt.Errorf("rule %s takes one figure", r.Name)
	case !single && r.Ordered && high < low:
		return fmt.Errorf("rule %s: %v is above %v", r.Name, low, high)
	}
	for i, v := range []float64{low, high} {
		if !math.IsNaN(v) && !r.Spans[i].has(v) {
			return r.outside(v, r.Spans[i])
		}
	}
	return nil
}

// outside says what is wrong with a figure beyond its range, and which slip it is
// if it looks like one.
func (r Rule) outside(v float64, s Span) error {
	unit := ""
	if r.Unit != "-" {
		unit = " " + r.Unit
	}
	slip := ""
	switch {
	case r.Unit == "-" && s.Most <= 1 && v > 1 && s.has(v/100):
		slip = fmt.Sprintf("; it is a share, not percent: write %.4g", v/100)
	case r.Unit == "um" && v > 0 && s.has(v*1000):
		slip = fmt.Sprintf("; it is in um, not mm: write %.4g", v*1000)
	case r.Unit == "mm" && v > 0 && s.has(v/1000):
		slip = fmt.Sprintf("; it is in mm, not um: write %.4g", v/1000)
	case r.Unit == "mm" && v > 0 && v < s.Least && s.has(v*25.4):
		slip = fmt.Sprintf("; it is in mm, not inch: write %.4g", v*25.4)
	}
	return fmt.Errorf("rule %s: %.9g is outside %g to %g%s%s", r.Name, v, s.Least, s.Most, unit, slip)
}
