package mesh

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"rebush/testdata"
)

// inputs are the "name=value" parts of a check row.
type inputs struct {
	t *testing.T
	m map[string]string
}

func readInputs(t *testing.T, text string) inputs {
	in := inputs{t, map[string]string{}}
	for _, part := range strings.Split(text, ";") {
		k, v, ok := strings.Cut(part, "=")
		if !ok {
			in.m[part] = part
			continue
		}
		in.m[strings.TrimSpace(k)] = v
	}
	return in
}

func parse(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatalf("%q is no number", s)
	}
	return v
}

func (in inputs) has(name string) bool { _, ok := in.m[name]; return ok }

// v reads a number; a name that is not there is 0. "2 per inch" and "14.25 in"
// keep their figure: the caller knows the unit.
func (in inputs) v(name string) float64 {
	s, ok := in.m[name]
	if !ok {
		return 0
	}
	v, err := strconv.ParseFloat(strings.Fields(s)[0], 64)
	if err != nil {
		in.t.Fatalf("%s=%q: %v", name, s, err)
	}
	return v
}

func (in inputs) need(name string) float64 {
	if !in.has(name) {
		in.t.Fatalf("no input %q in %v", name, in.m)
	}
	return in.v(name)
}

func (in inputs) point(name string) [2]float64 {
	s := strings.Split(strings.Trim(in.m[name], "()"), ",")
	if len(s) != 2 {
		in.t.Fatalf("%s=%q is no point", name, in.m[name])
	}
	x, err1 := strconv.ParseFloat(s[0], 64)
	y, err2 := strconv.ParseFloat(s[1], 64)
	if err1 != nil || err2 != nil {
		in.t.Fatalf("%s=%q is no point", name, in.m[name])
	}
	return [2]float64{x, y}
}

// inch turns inch inputs into mm.
func (in inputs) centre() float64 {
	if in.has("C") {
		return in.v("C") * 25.4
	}
	return in.need("a")
}

func (in inputs) spur() Spur {
	s := Spur{Module: in.v("m"), Z1: int(in.need("z1")), Z2: int(in.need("z2")), Angle: in.need("alpha"),
		X1: in.v("x1"), X2: in.v("x2"), Thinned: in.v("T"), Tip1: in.v("da1"), Tip2: in.v("da2")}
	if in.has("P") {
		m, err := ModuleFromDP(in.v("P"))
		if err != nil {
			in.t.Fatal(err)
		}
		s.Module = m
	}
	if err := s.Validate(); err != nil {
		in.t.Fatal(err)
	}
	return s
}

// worm builds the drive of the named form. Rows give the module as mx or mn;
// the wheel's own kind is what the form takes. Missing counts that the asked
// figure does not use are filled in.
func (in inputs) worm(form Form) Worm {
	w := Worm{Form: form, Starts: 1, Teeth: 24, PitchDiameter: in.v("d1"), Angle: 20, ShaftAngle: in.v("Sigma")}
	if in.has("z1") {
		w.Starts = int(in.v("z1"))
	}
	if in.has("starts") {
		w.Starts = int(in.v("starts"))
	}
	if in.has("z2") {
		w.Teeth = int(in.v("z2"))
	}
	if in.has("alpha_n") {
		w.Angle = in.v("alpha_n")
	}
	if in.has("Dw") {
		w.PitchDiameter = in.v("Dw") * 25.4
	}
	switch {
	case in.has("DP"):
		w.Module = 25.4 / in.v("DP")
	case in.has("mx"):
		w.Module = in.v("mx")
	case form == Straight:
		w.Module = in.need("mn")
	default:
		w.Module = axialFromNormal(in.need("mn"), w.Starts, w.PitchDiameter)
	}
	if w.PitchDiameter == 0 { // a wheel's figure only
		w.PitchDiameter = 12 * w.Module
	}
	if err := w.Validate(); err != nil {
		in.t.Fatal(err)
	}
	return w
}

// axialFromNormal turns the normal module of a worm into its axial one, both mm:
// sin of the lead angle is normal module x starts over pitch diameter.
func axialFromNormal(normal float64, starts int, pitchDiameter float64) float64 {
	return normal / math.Cos(math.Asin(normal*float64(starts)/pitchDiameter))
}

// TestChecks holds every row of mesh.csv: printed, remembered and our own.
func TestChecks(t *testing.T) {
	rows, passed := testdata.All[map[string]string](t, "mesh.csv"), 0
	for _, r := range rows {
		t.Run(r["id"], func(t *testing.T) {
			in := readInputs(t, r["inputs"])
			want, tol := parse(t, r["expected"]), parse(t, r["tolerance"])
			got, err := in.answer(r["quantity"])
			if err != nil {
				t.Fatalf("%s: %v", r["quantity"], err)
			}
			if !(math.Abs(got-want) <= tol) {
				t.Errorf("%s (%s): got %.10g, want %s ± %s; source: %s", r["quantity"], r["inputs"], got, r["expected"], r["tolerance"], r["source"])
				return
			}
			passed++
		})
	}
	if want := len(rows); passed != want || want < 60 {
		t.Errorf("%d of %d rows passed", passed, want)
	}
}
