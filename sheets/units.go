package sheets

import (
	"math"
	"strings"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
	"rebush/fits/say"
	"rebush/plan"
)

// units says in which unit lengths are printed: mm, in or both.
type units string

// said is the same choice for sentences, in the words of the bench.
func (u units) said() dim.Units {
	switch u {
	case "in":
		return say.Bench(dim.InInch)
	case "both":
		return say.Bench(dim.InBoth)
	}
	return say.Bench(dim.InMM)
}

// len prints a length with its unit, "" where there is none.
func (u units) len(m plan.MM) string {
	if !m.Given() {
		return ""
	}
	return say.Size(m, 3).In(u.said())
}

// lines are a figure with its unit, one line for each unit.
func (u units) lines(f say.Figure) []string {
	switch u {
	case "in":
		return []string{f.In(dim.InInch)}
	case "both":
		return []string{f.In(dim.InMM), f.In(dim.InInch)}
	}
	return []string{f.In(dim.InMM)}
}

// bare are figures without their units, one line for each unit.
func (u units) bare(write func(number func(say.Figure) string) string) []string {
	line := func(in dim.Units) string {
		return write(func(f say.Figure) string { return f.Number(in) })
	}
	switch u {
	case "in":
		return []string{line(dim.InInch)}
	case "both":
		return []string{line(dim.InMM), line(dim.InInch)}
	}
	return []string{line(dim.InMM)}
}

// figure prints a length without its unit, one line for each unit.
func (u units) figure(m plan.MM) []string {
	if !m.Given() {
		return nil
	}
	return u.bare(func(number func(say.Figure) string) string { return number(say.Size(m, 3).Steady()) })
}

// one is the unit in which a person writes a size down.
func (u units) one() string {
	if u == "in" {
		return "in"
	}
	return "mm"
}

// word names the unit or the units.
func (u units) word() string {
	if u == "both" {
		return "mm, in"
	}
	return string(u)
}

// limits prints a pair of limits, one line for each unit. The inch figures are
// rounded into the limits, so that what they let through is right.
func (u units) limits(r *plan.MMRange) []string {
	if r == nil {
		return nil
	}
	lo, hi := say.Ends(*r)
	switch {
	case r.Min.Given() && r.Max.Given():
		return u.lines(say.Range(*r))
	case r.Min.Given():
		return led("over ", u.lines(lo))
	case r.Max.Given():
		return led("under ", u.lines(hi))
	}
	return nil
}

// led puts a word before each line.
func led(word string, lines []string) []string {
	for i := range lines {
		lines[i] = word + lines[i]
	}
	return lines
}

// at prints a place or a move, one line for each unit, signed where it is a
// move.
func (u units) at(p *plan.XY, move bool) []string {
	if p == nil || !p[0].Given() || !p[1].Given() {
		return nil
	}
	x, y := say.Size(p[0], 3).Steady(), say.Size(p[1], 3).Steady()
	if move {
		x, y = x.Signed(), y.Signed()
	}
	return u.bare(func(number func(say.Figure) string) string { return "x " + number(x) + "   y " + number(y) })
}

// number prints a figure that is no length: short, never in powers of ten.
func number(f float64) string {
	return decimal.NewFromFloat(f).Round(int32(places(f))).String()
}

// places are those that a figure is printed to: fewer, the larger it is.
func places(f float64) int {
	switch a := math.Abs(f); {
	case a >= 100:
		return 0
	case a >= 10:
		return 1
	case a >= 1:
		return 2
	}
	return 3
}

// percent prints a share of 1 as "87 in 100".
func percent(f float64) string { return say.InHundred(f).String() }

// feedOf is the feed of a step in words, its figures in the units of the paper.
func feedOf(u units, op plan.Operation) string {
	s := op.FeedWords
	if op.FeedMMRev == nil {
		return s.In(u.said())
	}
	turn := say.F("%v a turn", say.MM(*op.FeedMMRev, 3).Trim())
	switch {
	case strings.Contains(s.String(), "turn"):
	case s == "":
		s = turn
	default:
		s = say.F("%v (%v)", s, turn)
	}
	return s.In(u.said())
}
