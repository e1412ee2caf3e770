package sheets

import (
	"strconv"
	"strings"

	"rebush/fits/say"
)

// published are the words of a rule or a source as they are published. In inches
// the sizes in them stay what they are, with the inch beside each: they are the
// source's own.
func published(u units, s string) string {
	if u != "in" {
		return s
	}
	words := strings.Fields(s)
	for i := 1; i < len(words); i++ {
		unit := strings.TrimRight(words[i], ".,;:)")
		if unit != "mm" && unit != "um" {
			continue
		}
		hi, err := strconv.ParseFloat(strings.TrimLeft(words[i-1], "("), 64)
		if err != nil {
			continue
		}
		places := 3
		if unit == "um" {
			places = 1
		}
		f := say.Num(hi, places, unit)
		if i > 2 && (words[i-2] == "to" || words[i-2] == "and") {
			if lo, err := strconv.ParseFloat(strings.TrimLeft(words[i-3], "("), 64); err == nil {
				f = say.Row(places, unit, " "+words[i-2]+" ", lo, hi)
			}
		}
		words[i] = unit + " (" + f.In(u.said()) + ")" + words[i][len(unit):]
	}
	return strings.Join(words, " ")
}
