package dim

import (
	"regexp"
	"strings"

	"github.com/shopspring/decimal"
)

var (
	// measure is one figure or a row of them before its unit: "5.005 to 5.012 mm".
	measure = regexp.MustCompile(`-?\d+(?:\.\d+)?(?:(?:,? (?:to|or|and|x) |, )-?\d+(?:\.\d+)?)* (?:mm|um)\b(?: a (?:turn|minute))?`)
	figure  = regexp.MustCompile(`-?\d+(?:\.\d+)?`)
	// Names of tools and gauges stay as they are stamped.
	stampedAfter  = regexp.MustCompile(`^ (?:H\d+ |centre-cutting |hand |machine )?(?:drill|reamer|end mill|mill|mandrel|pin|bar|shank|ball|tap)`)
	stampedBefore = regexp.MustCompile(`(?:mandrel|pin|drill|reamer|end mill|bar of) $`)
)

// InWords rewrites the lengths in a sentence, which the program writes in mm
// and um, in the units that are wanted: in inches to a ten-thousandth, small
// ones in thousandths of an inch, or both. Names of tools as stamped ("4.85 mm
// drill", "sizing mandrel 2.41 mm"), other names that are given, and everything
// that is no length stay.
//
// An inch is 25.4 mm exactly; figures are rounded to the nearest.
func InWords(text string, u Units, names ...string) string {
	if u == InMM {
		return text
	}
	named := spansOf(text, names)
	var out strings.Builder
	at := 0
	for _, m := range measure.FindAllStringIndex(text, -1) {
		was := text[m[0]:m[1]]
		out.WriteString(text[at:m[0]])
		at = m[1]
		switch {
		case inside(m, named) || stampedAfter.MatchString(text[m[1]:]) || stampedBefore.MatchString(text[:m[0]]):
			out.WriteString(was)
		case u == InBoth:
			out.WriteString(was + " (" + inched(was) + ")")
		default:
			out.WriteString(inched(was))
		}
	}
	out.WriteString(text[at:])
	return out.String()
}

// inched is a measure in inches, or in thou where it was in um.
func inched(was string) string {
	thou := strings.Contains(was, " um")
	per := mmPerInch
	places := int32(4)
	switch {
	case thou:
		places = 1
	case strings.HasSuffix(was, "a minute"):
		places = 1
	}
	s := figure.ReplaceAllStringFunc(was, func(f string) string {
		d, err := decimal.NewFromString(f)
		if err != nil {
			return f
		}
		return d.DivRound(per, places+4).StringFixed(places)
	})
	s = strings.Replace(s, " mm", " in", 1)
	return strings.Replace(s, " um", " thou", 1)
}

// spansOf are the places of names in a text.
func spansOf(text string, names []string) [][2]int {
	var out [][2]int
	for _, n := range names {
		if n == "" {
			continue
		}
		for from := 0; ; {
			i := strings.Index(text[from:], n)
			if i < 0 {
				break
			}
			out = append(out, [2]int{from + i, from + i + len(n)})
			from += i + len(n)
		}
	}
	return out
}

func inside(m []int, spans [][2]int) bool {
	for _, s := range spans {
		if m[0] < s[1] && m[1] > s[0] {
			return true
		}
	}
	return false
}
