package drills

import (
	"regexp"
	"strings"

	"rebush/fits/dim"
)

// Reading is one thing that a text may mean.
type Reading struct {
	As    string // "number drill #31", "letter drill F", "size 31 mm"
	Size  dim.Length
	Drill *Drill  // the drill it names; nil where it is a size that no series has
	Same  []Drill // every drill exactly of that size, Drill among them
}

var wholeRE = regexp.MustCompile(`^[0-9]{1,3}$`)

// Lookup reads a drill as a person types it: #31, no 31, F, 1/8, 3.2, 0.126 in.
// A bare whole number means two things, so it gives two readings: the number
// drill first, then the size in the unit that rules bare numbers.
func (d *Drills) Lookup(text string, bare dim.Unit) ([]Reading, error) {
	size, err := dim.Parse(text, bare)
	if err != nil {
		return nil, err
	}
	t := strings.TrimSpace(text)
	var out []Reading
	if wholeRE.MatchString(t) {
		if x, ok := d.ByName(Number, "#"+strings.TrimLeft(t, "0")); ok {
			out = append(out, d.reading(x.Size, &x))
		}
	}
	return append(out, d.reading(size, d.meant(t, size))), nil
}

// meant picks the drill that the text names: a letter for a letter, a number
// for a number, else the first series that has the size, metric and fractions
// before numbers and letters.
func (d *Drills) meant(t string, size dim.Length) *Drill {
	order := []Series{Metric, Fraction, Number, Letter}
	first := strings.ToLower(t[:1])
	switch {
	case strings.ContainsAny(t, "/½¼¾⅛⅜⅝⅞") || strings.ContainsAny(t, `"″`) || strings.HasSuffix(strings.ToLower(t), "in"):
		order = []Series{Fraction, Number, Letter, Metric}
	case first == "#" || first == "n" && len(t) > 1:
		order = []Series{Number}
	case first >= "a" && first <= "z":
		order = []Series{Letter}
	}
	for _, s := range order {
		if same := d.Named(size, s); len(same) > 0 {
			return &same[0]
		}
	}
	return nil
}

func (d *Drills) reading(size dim.Length, x *Drill) Reading {
	r := Reading{Size: size, Drill: x, Same: d.Named(size)}
	switch {
	case x == nil || x.Series == Metric:
		r.As = "size " + size.String()
	default:
		r.As = string(x.Series) + " drill " + x.Name
	}
	return r
}
