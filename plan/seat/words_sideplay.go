package seat

import (
	"slices"

	"rebush/fits/finding"
	"rebush/fits/say"
)

// saySidePlay says what to do about a side play, and which washers are out.
func saySidePlay(l *finding.List, at finding.Place, play float64, r Rules, gone []float64) {
	out := washerWords(gone)
	has := func(word string, limit float64) say.Text {
		return say.F("side play would be %v, %s %v", say.MM(play, 2), word, say.MM(limit, 2).Bare())
	}
	switch {
	case play < r.SideLow-slack:
		fix := say.F("face %v off the flanges, or a thinner washer", say.MM(r.SideLow-play, 2))
		if out != "" {
			fix = say.F("leave out %s and face %v off the flanges", out, say.MM(r.SideLow-play, 2))
		}
		l.Raise(finding.Caution, RuleSidePlay, at, has("least", r.SideLow), fix).Against(play, r.SideLow, "mm")
	case play > r.SideHigh+slack:
		thick := say.MM(washerToAdd(play, r), 1)
		fix := say.F("put on a washer of %v", thick)
		if out != "" {
			fix = say.F("put a washer of %v in the place of %s", thick, out)
		}
		l.Raise(finding.Caution, RuleSidePlay, at, has("most", r.SideHigh), fix).Against(play, r.SideHigh, "mm")
	case out != "":
		them := "them"
		if len(gone) == 1 {
			them = "it"
		}
		l.Raise(finding.Note, RuleWashers, at, say.F("the flanges take the place of %v: leave %s out", out, them), "")
	}
}

// washerWords names washers as they are found in the tray: "one washer of 1.00
// mm", "the two washers of 1.00 mm", "the washers of 1.00 and 0.50 mm".
func washerWords(gone []float64) say.Text {
	by := slices.Clone(gone)
	slices.Sort(by)
	slices.Reverse(by)
	n := len(by)
	switch {
	case n == 0:
		return ""
	case n == 1:
		return say.F("one washer of %v", say.MM(by[0], 2))
	case n == 2 && by[0] == by[1]:
		return say.F("the two washers of %v", say.MM(by[0], 2))
	}
	return say.F("the washers of %v and %v", say.Row(2, "mm", ", ", by[:n-1]...).Bare(), say.MM(by[n-1], 2))
}
