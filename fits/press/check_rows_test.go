package press_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"rebush/fits/press"
	"rebush/testdata"
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
	endC     = regexp.MustCompile(`(-?\d+) C$`)
)

func num(s string) float64 {
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return math.NaN()
	}
	return x
}

// inputs is the text of a row taken apart.
type inputs struct {
	text  string
	by    map[string][]float64
	pairs [][2]float64
}

func take(text string) inputs {
	in := inputs{text: text, by: map[string][]float64{}}
	for _, g := range named.FindAllStringSubmatch(text, -1) {
		in.by[g[1]] = append(in.by[g[1]], num(g[2]))
	}
	for _, g := range pairOf.FindAllStringSubmatch(text, -1) {
		in.pairs = append(in.pairs, [2]float64{num(g[1]), num(g[2])})
	}
	return in
}

// get is the i-th figure under any of the names, or the last one there is.
func (in inputs) get(i int, otherwise float64, names ...string) float64 {
	for _, n := range names {
		if v := in.by[n]; len(v) > 0 {
			return v[min(i, len(v)-1)]
		}
	}
	return otherwise
}

// seat is the press that a row speaks of. The first metal named is the bush.
func (in inputs) seat(t *testing.T) (press.Seat, float64) {
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
	if err := s.Validate(); err != nil {
		t.Fatalf("%s: %v", in.text, err)
	}
	return s, u
}

// answer works the row's quantity out. low and high are the band where the
// planner reports one.
func answer(t *testing.T, quantity string, in inputs) (low, high float64) {
	one := func(x float64) (float64, float64) { return x, x }
	switch {
	case quantity == "effective interference":
		off := press.Smoothing(in.get(0, 0, "k"), in.get(0, 0, "Rz_bush"), in.get(0, 0, "Rz_seat"))
		return one(press.Left(1000*in.get(0, 0, "U"), off))
	case strings.Contains(quantity, " C") && strings.HasPrefix(quantity, "interference at"), strings.Contains(quantity, "temperature"):
		return one(warm(quantity, in))
	}
	s, u := in.seat(t)
	f, st := s.Factors(), s.At(u)
	switch {
	case strings.HasPrefix(quantity, "jacket bore before"):
		jacket := s.Wall.(press.Ring).OD
		return one(s.D - s.InterferenceFor(pressureForHoop(s.D, jacket, num(regexp.MustCompile(`(\d+) MPa`).FindStringSubmatch(quantity)[1]))))
	case strings.HasPrefix(quantity, "shrink pressure giving jacket hoop"):
		return one(pressureForHoop(s.D, s.Wall.(press.Ring).OD, num(regexp.MustCompile(`(\d+) MPa`).FindStringSubmatch(quantity)[1])))
	case strings.HasPrefix(quantity, "max hoop on hole"):
		return one(f.HoleMax)
	case strings.Contains(quantity, "edge / p"):
		return one(f.EdgeMax)
	case strings.HasPrefix(quantity, "hoop on hole at thinnest"):
		return one(f.HoleThin)
	case strings.HasPrefix(quantity, "mean hoop"):
		return one(f.MeanHoop)
	case strings.HasPrefix(quantity, "pressure limit"):
		return one(s.FlowPressure())
	case strings.HasPrefix(quantity, "plateau pressure"):
		return st.P, st.PHigh
	case quantity == "bore closure, plastic bush":
		return st.ClosureLow * 1000, st.ClosureHigh * 1000
	case strings.Contains(quantity, "closure"):
		return one(st.Closure * 1000)
	case strings.Contains(quantity, "OD growth"):
		return one(st.Growth * 1000)
	case strings.Contains(quantity, "bush hoop stress at bore"):
		return one(st.BushHoopBore)
	case strings.Contains(quantity, "von Mises at seat"):
		return one(st.HousingMises)
	case strings.Contains(quantity, "hoop stress at OD"):
		return one(st.EdgeHoop)
	case strings.Contains(quantity, "hoop stress at seat"):
		return one(st.HoleHoop)
	case strings.Contains(quantity, "peak tensile"):
		return one(st.HousingHoopMax)
	case strings.Contains(quantity, "force"):
		return one(s.Force(in.get(0, 0, "mu"), st.P))
	case strings.Contains(quantity, "torque"):
		return one(s.Torque(in.get(0, 0, "mu"), st.P) / 1000) // N mm to N m
	case strings.Contains(quantity, "pressure"):
		return one(st.P)
	}
	t.Fatalf("quantity %q is not understood", quantity)
	return 0, 0
}

// pressureForHoop is the pressure that makes a hoop stress at the bore of a
// ring of bore d and outside D: hoop (1-Q^2)/(1+Q^2), Q = d/D. Source: Lame.
func pressureForHoop(d, D, hoop float64) float64 {
	return hoop * (D - d) * (D + d) / (D*D + d*d)
}

func warm(quantity string, in inputs) float64 {
	w := press.Warm{D: in.get(0, 0, "d"), U20: in.get(0, 0, "U20", "U")}
	if g := alphasOf.FindStringSubmatch(in.text); g != nil {
		w.HousingExp, w.BushExp = 1e6*num(g[1]), 1e6*num(g[2])
	}
	if strings.Contains(quantity, "loose") {
		x, _ := w.LooseAt()
		return x
	}
	return 1000 * w.At(num(endC.FindStringSubmatch(quantity)[1]))
}

// margins reads a tolerance: a number, 0.3%, or -1%/+30%.
func margins(tol string, want float64) (below, above float64) {
	part := func(s string) float64 {
		if p, ok := strings.CutSuffix(s, "%"); ok {
			return math.Abs(num(p) / 100 * want)
		}
		return math.Abs(num(s))
	}
	if a, b, ok := strings.Cut(tol, "/"); ok {
		return part(a), part(b)
	}
	return part(tol), part(tol)
}

// TestRows: every row, printed, remembered or our own, comes out within its own
// tolerance. Where the bush flows the value lies inside the band.
func TestRows(t *testing.T) {
	all := testdata.All[map[string]string](t, "pressfit.csv")
	text := map[string]string{}
	for _, r := range all {
		text[r["id"]] = r["inputs"]
	}
	for _, r := range all {
		in := r["inputs"]
		if g := otherRow.FindStringSubmatch(in); g != nil {
			// What the row adds stands before what it repeats, and wins.
			in = strings.TrimSpace(otherRow.ReplaceAllString(in, "")) + " " + text[g[1]]
		}
		t.Run(r["id"], func(t *testing.T) {
			want := num(r["expected"])
			low, high := answer(t, r["quantity"], take(in))
			below, above := margins(r["tolerance"], want)
			if !(low <= want+above && high >= want-below) {
				t.Errorf("%s: %v to %v; want %v (%s) %s", r["quantity"], low, high, want, r["tolerance"], r["source"])
			}
			if low == high {
				return
			}
			if !(low <= want && want <= high) {
				t.Errorf("%s: %v lies outside the band %v to %v", r["quantity"], want, low, high)
			}
		})
	}
}
