package dim

import (
	"regexp"
	"strings"

	"github.com/shopspring/decimal"
)

// InWords puts the lengths of a sentence into the units of the reader. A
// sentence of the plan carries them in mm or um, with the unit behind: "5.6 mm",
// "5.005 to 5.012 mm", "38 or 40 mm", "9 um", "0.05 mm a turn".
//
// For inches a length is rounded to the nearest ten-thousandth, one place more
// where that would leave nothing of it or make both ends of a range the same;
// after "about" no finer than it was said. Micrometres become tenths of a thou.
// For both, the inches stand behind the mm. A bare figure set against a length
// ("leaves 0.41 mm, needs 1.25") is a length too.
//
// What a tool is stamped with stays: "4.85 mm drill", "5 mm H7 reamer", "sizing
// mandrel 2.41 mm". So does what stands between double quotes, and each of the
// names. A sentence already put into a reader's units stays as it is.
func InWords(text string, u Units, names ...string) string {
	if u == InMM || !strings.Contains(text, " mm") && !strings.Contains(text, " um") {
		return text
	}
	text = withUnits(text)
	kept := append(spansOf(text, names), quoted(text)...)
	var b strings.Builder
	done := 0
	for _, m := range measure.FindAllStringSubmatchIndex(text, -1) {
		from := start(text, m[2], m[3])
		if from < 0 || inside(from, kept) {
			continue
		}
		f := figures{text: text[from:m[3]], unit: text[m[4]:m[5]], before: text[:from], after: text[m[1]:]}
		if f.otherUnit() || f.stamped() || u == InBoth && inchesAfter.MatchString(f.after) {
			continue
		}
		b.WriteString(text[done:from])
		b.WriteString(f.say(u))
		done = m[1]
	}
	b.WriteString(text[done:])
	return b.String()
}

var (
	// measure is one figure or a row of them before its unit.
	measure = regexp.MustCompile(`([+-]?\d+(?:\.\d+)?(?:(?: to | or | and | x | / |, then |, )[+-]?\d+(?:\.\d+)?)*) (mm|um)\b`)
	figure  = regexp.MustCompile(`[+-]?\d+(?:\.\d+)?`)
	// apart is a whole number that a comma sets apart: "axle 2, 5.6 mm".
	apart = regexp.MustCompile(`^[+-]?\d+, `)

	// Names of tools and gauges stay as they are stamped.
	stampedAfter  = regexp.MustCompile(`^(?: H\d+)?(?: (?:centre-cutting|hand|machine|spiral|twist|stub|long|slot))?,? (?:drill|reamer|end mill|mill|mandrel|punch|pin|bar|shank|ball|broach|collet|tap)s?\b`)
	stampedBefore = regexp.MustCompile(`\b(?:mandrel|pin|drill|reamer|end mill|ball|bar of|[Bb]ush)s? $`)

	inchesAfter = regexp.MustCompile(`^(?: \(|, )[+-]?\d[0-9. a-z/,+-]* (?:in|thou)\b`)
	perTurn     = regexp.MustCompile(`^(?: (?:a|per) turn|/rev)\b`)
	perTime     = regexp.MustCompile(`^(?: (?:a|per) (?:minute|second)|/min|/s)\b`)
	aboutBefore = regexp.MustCompile(`(?i)\babout $`)
)

var (
	against  = regexp.MustCompile(`\b(?:needs|needs more than|at most|least|most|wants|wanted|wanted from|expected|room for|reaches up to|reaches from|still runs|still runs is|has) ((?:[+-]?\d+\.\d+|[+-]?\d+)(?: to [+-]?\d+(?:\.\d+)?)?)`)
	unitless = regexp.MustCompile(`^(?:$|[,;:)]|\.$|\. | (?:for|left|is there|or a|of clearance|of play)\b)`)
	unitSaid = regexp.MustCompile(`\d (N mm|mm/s|mm\^2|mm|um|[A-Za-z/%]+)`)
)

// withUnits gives a bare figure that is set against a length its unit, where
// the last unit said before it is that of the length.
func withUnits(text string) string {
	var b strings.Builder
	done := 0
	for _, m := range against.FindAllStringSubmatchIndex(text, -1) {
		if !unitless.MatchString(text[m[1]:]) {
			continue
		}
		said := unitSaid.FindAllStringSubmatch(text[:m[0]], -1)
		if len(said) == 0 {
			continue
		}
		if u := said[len(said)-1][1]; u == "mm" || u == "um" {
			b.WriteString(text[done:m[1]] + " " + u)
			done = m[1]
		}
	}
	return b.String() + text[done:]
}

// start is where the figures of a match begin: not inside a word, a fraction or
// a number drill, nor at a whole number set apart; -1 where none is left.
func start(text string, from, to int) int {
	for {
		row := text[from:to]
		clear := from == 0 || !strings.ContainsRune("#/.0123456789_", rune(text[from-1])) && !letter(text[from-1])
		if clear && !apart.MatchString(row) {
			return from
		}
		next := figure.FindAllStringIndex(row, 2)
		if len(next) < 2 {
			return -1
		}
		from += next[1][0]
	}
}

func letter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }

// spansOf are the places of names in a text.
func spansOf(text string, names []string) [][2]int {
	var out [][2]int
	for _, n := range names {
		for at := 0; n != ""; {
			i := strings.Index(text[at:], n)
			if i < 0 {
				break
			}
			out = append(out, [2]int{at + i, at + i + len(n)})
			at += i + len(n)
		}
	}
	return out
}

// quoted are the places of what stands between double quotes.
func quoted(text string) [][2]int {
	var out [][2]int
	for at := 0; ; {
		i := strings.IndexByte(text[at:], '"')
		if i < 0 {
			return out
		}
		n := strings.IndexByte(text[at+i+1:], '"')
		if n < 0 {
			return out
		}
		out = append(out, [2]int{at + i, at + i + 1 + n})
		at += i + n + 2
	}
}

func inside(at int, spans [][2]int) bool {
	for _, s := range spans {
		if at >= s[0] && at < s[1] {
			return true
		}
	}
	return false
}

// figures are one or more figures of a sentence with the unit behind them, and
// what stands on both sides.
type figures struct{ text, unit, before, after string }

// otherUnit is a square, or a length by something that is no turn and no time.
func (f figures) otherUnit() bool {
	if perTurn.MatchString(f.after) || perTime.MatchString(f.after) {
		return false
	}
	return strings.HasPrefix(f.after, "^") || strings.HasPrefix(f.after, "/") || strings.HasPrefix(f.after, "²")
}

func (f figures) stamped() bool {
	if strings.HasSuffix(f.before, "slip bush ") { // turned to suit, not stamped
		return false
	}
	return f.unit == "mm" && (stampedAfter.MatchString(f.after) || stampedBefore.MatchString(f.before))
}

func (f figures) say(u Units) string {
	in := f.inches()
	if u == InInch {
		return in
	}
	mm := f.text + " " + f.unit
	if strings.Count(f.before, "(") > strings.Count(f.before, ")") {
		return mm + ", " + in // no brackets in brackets
	}
	return mm + " (" + in + ")"
}

// inches writes every figure at one number of places.
func (f figures) inches() string {
	unit, places := " in", int32(4)
	var list []decimal.Decimal
	decimals := int32(0)
	for _, s := range figure.FindAllString(f.text, -1) {
		d := decimal.RequireFromString(s)
		list, decimals = append(list, d), max(decimals, -d.Exponent())
	}
	switch {
	case f.unit == "um":
		unit, places = " thou", 1
	case perTime.MatchString(f.after):
		places = 1
	case aboutBefore.MatchString(f.before) && !perTurn.MatchString(f.after):
		places = min(4, decimals+2)
	}
	if vanish(list, places) {
		places++
	}
	i := -1
	return figure.ReplaceAllStringFunc(f.text, func(s string) string {
		i++
		out := inchesAt(list[i], places)
		if s[0] == '+' {
			out = "+" + out
		}
		return out
	}) + unit
}

// vanish says whether a figure would become nothing, or two become one.
func vanish(list []decimal.Decimal, places int32) bool {
	for i, d := range list {
		r := d.DivRound(mmPerInch, places)
		if r.IsZero() && !d.IsZero() || i > 0 && !d.Equal(list[i-1]) && r.Equal(list[i-1].DivRound(mmPerInch, places)) {
			return true
		}
	}
	return false
}

// inchesAt divides by 25.4: mm into inches, and so micrometres into thou.
func inchesAt(d decimal.Decimal, places int32) string {
	s := d.DivRound(mmPerInch, places).StringFixed(places)
	if s[0] == '-' && strings.Trim(s, "-0.") == "" {
		return s[1:]
	}
	return s
}
