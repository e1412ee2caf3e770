package material

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Inline says whether a name looks like figures, E,nu[,yield], rather than a
// name.
func Inline(s string) bool {
	head, _, ok := strings.Cut(s, ",")
	if !ok {
		return false
	}
	_, err := strconv.ParseFloat(strings.TrimSpace(head), 64)
	return err == nil
}

// ParseInline reads a material typed as figures, E,nu[,yield] in MPa:
// "85500,0.3" or "100000,0.34,80". E is from 1 to 1e9, nu from 0 to 0.5, a
// yield from just over 0 to 1e9. Any one unit of stress does, so long as all
// figures of a question are in it.
func ParseInline(s string) (*Material, error) {
	const how = "write E,nu or E,nu,yield in MPa, for example 85500,0.3"
	cells := strings.Split(s, ",")
	if len(cells) < 2 || len(cells) > 3 {
		return nil, fmt.Errorf("%q has %d figures: %s", s, len(cells), how)
	}
	x := make([]float64, len(cells))
	for i, c := range cells {
		v, err := strconv.ParseFloat(strings.TrimSpace(c), 64)
		if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
			return nil, fmt.Errorf("%q: %q is not a number: %s", s, strings.TrimSpace(c), how)
		}
		x[i] = v
	}
	switch {
	case x[0] < 1 || x[0] > 1e9:
		return nil, fmt.Errorf("%q: a modulus of %v MPa is not possible; metals lie between 40000 and 210000", s, x[0])
	case x[1] < 0 || x[1] > 0.5:
		return nil, fmt.Errorf("%q: Poisson's ratio is %v; it lies between 0 and 0.5", s, x[1])
	case len(x) == 3 && (x[2] <= 0 || x[2] > 1e9):
		return nil, fmt.Errorf("%q: a yield of %v MPa is not possible; leave it off where it is not known", s, x[2])
	}
	m := &Material{Name: s, Asked: s, Kind: AsGiven}
	put := func(property string, v float64, unit string) {
		m.values = append(m.values, Value{Of: s, Property: property, Low: v, High: v, HasLow: true, HasHigh: true,
			Unit: unit, Source: "as given: " + s})
	}
	put("E", x[0]/1000, "GPa") // MPa to GPa
	put("poisson", x[1], "-")
	if len(x) == 3 {
		put("yield_tension", x[2], "MPa")
	}
	return m, nil
}

// FindOrInline is Find, or ParseInline where the text begins with a number and
// a comma.
func (r *Registry) FindOrInline(s string) (*Material, error) {
	if Inline(s) {
		return ParseInline(s)
	}
	return r.Find(s)
}
