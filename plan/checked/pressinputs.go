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

// pressInputs is the text of a row taken apart.
type pressInputs struct {
	text  string
	by    map[string][]float64
	pairs [][2]float64
}

func takePress(text string) pressInputs {
	in := pressInputs{text: text, by: map[string][]float64{}}
	for _, g := range named.FindAllStringSubmatch(text, -1) {
		in.by[g[1]] = append(in.by[g[1]], num(g[2]))
	}
	for _, g := range pairOf.FindAllStringSubmatch(text, -1) {
		in.pairs = append(in.pairs, [2]float64{num(g[1]), num(g[2])})
	}
	return in
}

// get is the i-th figure under any of the names, or the last one there is.
func (in pressInputs) get(i int, otherwise float64, names ...string) float64 {
	for _, n := range names {
		if v := in.by[n]; len(v) > 0 {
			return v[min(i, len(v)-1)]
		}
	}
	return otherwise
}

// seat is the press that a row speaks of. The first metal named is the bush.
func (in pressInputs) seat() (press.Seat, float64, error) {
	s := press.Seat{
		D: in.get(0, 0, "d"), Di: in.get(0, 0, "di"), L: in.get(0, 1, "L"),
		Bush:    press.Elastic{E: in.get(0, 1, "Eb", "E"), Nu: in.get(0, 0.3, "nb", "nu"), Yield: in.get(0, 0, "sigma_y")},
		Housing: press.Elastic{E: in.get(1, 1, "Eh", "E"), Nu: in.get(1, 0.3, "nh", "nu")},
		Wall:    press.Infinite{},
	}
	if od := in.get(0, 0, "D", "OD"); od > 0 {
		s.Wall = press.Ring{OD: od}
	}
	u := in.get(0, 0, "U_diametral", "U")
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
		s.Di, s.D, s.Wall = 2*in.get(0, 0, "a"), 2*in.get(0, 0, "b"), press.Ring{OD: 2 * in.get(0, 0, "c")}
	}
	if strings.Contains(in.text, "no yield") {
		s.Bush.Yield = 0
	}
	return s, u, s.Validate()
}

// PressOf reads the press that the text of a row speaks of, and its
// interference on the diameter, both in the units of the row.
func PressOf(text string) (press.Seat, float64, error) { return takePress(text).seat() }

func withOther(text string, rows []Row) string {
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
