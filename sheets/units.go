package sheets

import (
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
	"rebush/plan"
)

// units says in which unit lengths are printed: mm, in or both.
type units string

var inch = decimal.RequireFromString("25.4")

// said is the same choice for sentences.
func (u units) said() dim.Units {
	switch u {
	case "in":
		return dim.InInch
	case "both":
		return dim.InBoth
	}
	return dim.InMM
}

// read returns the figure of a length, false where there is none.
func read(m plan.MM) (decimal.Decimal, bool) {
	if !m.Given() {
		return decimal.Decimal{}, false
	}
	d, err := decimal.NewFromString(string(m))
	return d, err == nil
}

func inMM(d decimal.Decimal) string   { return fixed(d, 3) }
func inInch(d decimal.Decimal) string { return fixed(d.DivRound(inch, 8), 4) }

// fixed prints a figure at a number of places, never as minus nothing.
func fixed(d decimal.Decimal, places int32) string {
	s := d.StringFixed(places)
	if len(s) > 0 && s[0] == '-' && d.Round(places).IsZero() {
		return s[1:]
	}
	return s
}

// len prints a length with its unit, "" where there is none.
func (u units) len(m plan.MM) string {
	d, ok := read(m)
	if !ok {
		return ""
	}
	return u.join(inMM(d)+" mm", inInch(d)+" in")
}

// within prints one end of a pair of limits, its inches rounded into them, as
// limits does.
func (u units) within(m plan.MM, inwards func(decimal.Decimal, int32) decimal.Decimal) string {
	d, ok := read(m)
	if !ok {
		return ""
	}
	return u.join(inMM(d)+" mm", fixed(inwards(d.DivRound(inch, 12), 4), 4)+" in")
}

func (u units) join(mm, in string) string {
	switch u {
	case "in":
		return in
	case "both":
		return mm + " (" + in + ")"
	}
	return mm
}

// lines are the figures of a length, one line for each unit.
func (u units) lines(mm, in string) []string {
	switch u {
	case "in":
		return []string{in}
	case "both":
		return []string{mm, in}
	}
	return []string{mm}
}

// figure prints a length without its unit, one line for each unit.
func (u units) figure(m plan.MM) []string {
	d, ok := read(m)
	if !ok {
		return nil
	}
	return u.lines(inMM(d), inInch(d))
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
	lo, haveLo := read(r.Min)
	hi, haveHi := read(r.Max)
	switch {
	case haveLo && haveHi:
		places := int32(4)
		a, b := lo.DivRound(inch, 12).RoundCeil(places), hi.DivRound(inch, 12).RoundFloor(places)
		if lo.LessThan(hi) && !a.LessThan(b) {
			places = 5
			a, b = lo.DivRound(inch, 12).RoundCeil(places), hi.DivRound(inch, 12).RoundFloor(places)
		}
		return u.lines(inMM(lo)+" to "+inMM(hi)+" mm", fixed(a, places)+" to "+fixed(b, places)+" in")
	case haveLo:
		return u.lines("over "+inMM(lo)+" mm", "over "+inInch(lo)+" in")
	case haveHi:
		return u.lines("under "+inMM(hi)+" mm", "under "+inInch(hi)+" in")
	}
	return nil
}

// at prints a place or a move, one line for each unit, signed where it is a
// move.
func (u units) at(p *plan.XY, move bool) []string {
	if p == nil {
		return nil
	}
	x, okX := read(p[0])
	y, okY := read(p[1])
	if !okX || !okY {
		return nil
	}
	sign := func(s string) string {
		if move && s[0] != '-' {
			return "+" + s
		}
		return s
	}
	return u.lines("x "+sign(inMM(x))+"   y "+sign(inMM(y)), "x "+sign(inInch(x))+"   y "+sign(inInch(y)))
}

// number prints a figure that is no length: short, never in powers of ten.
func number(f float64) string {
	a := f
	if a < 0 {
		a = -a
	}
	places := 3
	switch {
	case a >= 100:
		places = 0
	case a >= 10:
		places = 1
	case a >= 1:
		places = 2
	}
	d := decimal.NewFromFloat(f).Round(int32(places))
	return d.String()
}

// percent prints a share of 1 as "87 in 100"; what is nearly none or nearly
// all is said so.
func percent(f float64) string {
	switch {
	case f > 0 && f < 0.005:
		return "under 1 in 100"
	case f < 1 && f > 0.995:
		return "over 99 in 100"
	}
	return strconv.Itoa(int(f*100+0.5)) + " in 100"
}

// feedOf is the feed of a step in words, its figures in the units of the paper.
func feedOf(u units, op plan.Operation) string {
	s := op.FeedWords.String()
	switch {
	case op.FeedMMRev == nil || strings.Contains(s, "turn"):
	case s == "":
		s = number(*op.FeedMMRev) + " mm a turn"
	default:
		s += " (" + number(*op.FeedMMRev) + " mm a turn)"
	}
	return dim.InWords(s, u.said())
}
