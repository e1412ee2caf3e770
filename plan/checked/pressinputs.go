package checked

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"rebush/fits/press"
)

var (
	named    = regexp.MustCompile(`\b([A-Za-z_]\w*)=(\d+(?:\.\d+)?(?:[eE][+-]?\d+)?)`)
	pairOf   = regexp.MustCompile(`\b(\d+(?:\.\d+)?)/(\d+(?:\.\d+)?)\b`)
	outerOf  = regexp.MustCompile(`seat radius ([\d.]+), outer radius ([\d.]+) mm, ligament ([\d.]+) x ([\d.]+)`)
	holeOf   = regexp.MustCompile(`hole radius ([\d.]+), outer radius ([\d.]+), ligament ([\d.]+)`)
	planeOf  = regexp.MustCompile(`edge distance ([\d.]+) x hole radius`)
	radialOf = regexp.MustCompile(`radial interference ([\d.]+)`)
	otherRow = regexp.MustCompile(`as (PF-[\w.-]+)`)
	alphasOf = regexp.MustCompile(`housing alpha ([\d.e-]+) bush alpha ([\d.e-]+)`)
	hoopOf   = regexp.MustCompile(`(\d+) MPa`)
	endC     = regexp.MustCompile(`(-?\d+) C$`)
)

// num is NaN of what is no number, which then agrees with nothing.
func num(s string) float64 {
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return math.NaN()
	}
	return x
}

// PressText is the text of a row of presses taken apart.
type PressText struct {
	text  string
	by    map[string][]float64
	pairs [][2]float64
}

// ReadPress takes the inputs of a row apart.
func ReadPress(text string) PressText {
	in := PressText{text: text, by: map[string][]float64{}}
	for _, g := range named.FindAllStringSubmatch(text, -1) {
		in.by[g[1]] = append(in.by[g[1]], num(g[2]))
	}
	for _, g := range pairOf.FindAllStringSubmatch(text, -1) {
		in.pairs = append(in.pairs, [2]float64{num(g[1]), num(g[2])})
	}
	return in
}

// Get is the i-th figure under any of the names, or the last one there is; the
// figure otherwise where there is none. It is in the unit of the row.
func (in PressText) Get(i int, otherwise float64, names ...string) float64 {
	for _, n := range names {
		if v := in.by[n]; len(v) > 0 {
			return v[min(i, len(v)-1)]
		}
	}
	return otherwise
}

// Expansions are the thermal expansions of housing and bush, in 1/K; false where
// the row gives none.
func (in PressText) Expansions() (housing, bush float64, ok bool) {
	g := alphasOf.FindStringSubmatch(in.text)
	if g == nil {
		return 0, 0, false
	}
	return num(g[1]), num(g[2]), true
}

// DegreesOf is the temperature that a quantity ends with, in degrees C.
func DegreesOf(quantity string) float64 { return num(endC.FindStringSubmatch(quantity)[1]) }

// Seat is the press that a row speaks of, and its interference on the diameter,
// both in the units of the row. The first metal named is the bush.
func (in PressText) Seat() (press.Seat, float64, error) {
	s := press.Seat{
		D: in.Get(0, 0, "d"), Di: in.Get(0, 0, "di"), L: in.Get(0, 1, "L"),
		Bush:    press.Elastic{E: in.Get(0, 1, "Eb", "E"), Nu: in.Get(0, 0.3, "nb", "nu"), Yield: in.Get(0, 0, "sigma_y")},
		Housing: press.Elastic{E: in.Get(1, 1, "Eh", "E"), Nu: in.Get(1, 0.3, "nh", "nu")},
		Wall:    press.Infinite{},
	}
	if od := in.Get(0, 0, "D", "OD"); od > 0 {
		s.Wall = press.Ring{OD: od}
	}
	u := in.Get(0, 0, "U_diametral", "U")
	if s.D == 0 && len(in.pairs) > 0 {
		s.Di, s.D = in.pairs[0][0], in.pairs[0][1]
		if len(in.pairs) > 1 {
			s.Wall = press.Ring{OD: in.pairs[1][1]}
		} else if strings.HasPrefix(in.text, "jacket") {
			s.Di, s.D, s.Wall = 0, in.pairs[0][0], press.Ring{OD: in.pairs[0][1]}
		}
	}
	if g := outerOf.FindStringSubmatch(in.text); g != nil {
		a, b, lig := num(g[1]), num(g[2]), num(g[3])*num(g[4])
		s.Wall = press.Boss{OD: 2 * b, Ecc: b - a - lig}
	}
	if g := holeOf.FindStringSubmatch(in.text); g != nil {
		a, b, lig := num(g[1]), num(g[2]), num(g[3])
		s.D, s.Wall = 2*a, press.Boss{OD: 2 * b, Ecc: b - a - lig}
	}
	if g := planeOf.FindStringSubmatch(in.text); g != nil {
		s.D, s.Wall = 2, press.Edge{Ligament: num(g[1]) - 1}
	}
	if g := radialOf.FindStringSubmatch(in.text); g != nil {
		u = 2 * num(g[1])
		s.Di, s.D, s.Wall = 2*in.Get(0, 0, "a"), 2*in.Get(0, 0, "b"), press.Ring{OD: 2 * in.Get(0, 0, "c")}
	}
	if strings.Contains(in.text, "no yield") {
		s.Bush.Yield = 0
	}
	return s, u, s.Validate()
}

// WithOther is the inputs of a row, after its own those of the row that it says
// it is as.
func WithOther(text string, rows []Row) string {
	g := otherRow.FindStringSubmatch(text)
	if g == nil {
		return text
	}
	for _, r := range rows {
		if r["id"] == g[1] {
			return strings.TrimSpace(otherRow.ReplaceAllString(text, "")) + " " + r["inputs"]
		}
	}
	return text
}
