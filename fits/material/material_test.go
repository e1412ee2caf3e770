package material_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rebush/fits/material"
	"rebush/fits/table"
	"rebush/testdata"
)

func registry(t testing.TB) *material.Registry {
	t.Helper()
	r, err := material.New(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	return r
}

var span = regexp.MustCompile(`^(max |min )?([\d.]+)(?:-([\d.]+))?( by temper| soft| half hard| hard)?$`)

// TestTranscriptionRows is a transcription check: every copied row is found by
// its own name, with its figure and its source. It says nothing of whether the
// figure is right.
func TestTranscriptionRows(t *testing.T) {
	r := registry(t)
	n := 0
	for _, row := range testdata.Rows[map[string]string](t, "transcription/materials.csv") {
		m, err := r.Find(row["material"])
		if err != nil {
			t.Errorf("%s: %v", row["material"], err)
			continue
		}
		lo, hi, hasLo, hasHi, note := 0.0, 0.0, false, false, row["value"]
		if g := span.FindStringSubmatch(row["value"]); g != nil {
			lo, _ = strconv.ParseFloat(g[2], 64)
			hi, hasLo, hasHi, note = lo, g[1] != "max ", g[1] != "min ", ""
			if g[3] != "" {
				hi, _ = strconv.ParseFloat(g[3], 64)
			}
		}
		found := false
		for _, v := range m.All() {
			if v.Property == row["property"] && v.Source == row["source"] && v.Unit == row["unit"] &&
				v.HasLow == hasLo && v.HasHigh == hasHi && (!hasLo || v.Low == lo) && (!hasHi || v.High == hi) &&
				(note == "" || v.Note == note) {
				found = true
			}
		}
		if !found {
			t.Errorf("%s %s %s (%s) is not in the registry", row["material"], row["property"], row["value"], row["source"])
		}
		n++
	}
	if n < 100 {
		t.Errorf("only %d rows read", n)
	}
}

// Every material of the speed table is known and leads back to it.
func TestCuttingNames(t *testing.T) {
	r := registry(t)
	known := map[string]bool{}
	for _, row := range testdata.Rows[map[string]string](t, "transcription/speeds.csv") {
		name := row["material"]
		if name == "(any metal)" {
			continue
		}
		known[name] = true
		m, err := r.Find(name)
		if err != nil {
			t.Errorf("%v", err)
		} else if m.Cutting != name {
			t.Errorf("%q is cut as %q", name, m.Cutting)
		}
	}
	for _, m := range r.All() {
		if !known[m.Cutting] {
			t.Errorf("%s is cut as %q, which the speed table does not have", m.Name, m.Cutting)
		}
	}
}

// Names that mean the same, from the notes on the check files.
func TestAliases(t *testing.T) {
	r := registry(t)
	for _, c := range []struct{ name, want, temper string }{
		{"Zinc Die Casting", "zinc die casting", ""},
		{"zinc die-casting alloy 5", "zinc die-casting alloy 5", ""},
		{"mild steel 1018", "mild steel S235", ""},
		{"brass sheet", "brass plate C260 / CuZn37", ""},
		{"brass sheet, half hard", "brass plate C260 / CuZn37", "half hard"},
		{"Annealed brass sheet", "brass plate C260 / CuZn37", "annealed"},
		{"brass sheet (hard)", "brass plate C260 / CuZn37", "hard"},
		{"brass sheet soft", "brass plate C260 / CuZn37", "annealed"},
		{"free cutting brass", "free-cutting brass C360 (CuZn36Pb3)", ""},
		{"bearing bronze C93200", "bearing bronze C93200", ""},
		{"phosphor bronze", "phosphor bronze CuSn8", ""},
		{"phosphor bronze, hard", "phosphor bronze CuSn8", "hard"},
		{"Sintered Bronze", "sintered bronze SAE 841 class", ""},
		{"oil-retaining bronze", "sintered bronze SAE 841 class", ""},
		{"aluminum die casting", "aluminium die casting A380", ""},
	} {
		m, err := r.Find(c.name)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if m.Name != c.want || m.Temper != c.temper || m.Asked != c.name {
			t.Errorf("%s: %s, temper %q, asked %q; want %s, %q", c.name, m.Name, m.Temper, m.Asked, c.want, c.temper)
		}
	}
}

func TestNotFound(t *testing.T) {
	r := registry(t)
	for name, say := range map[string]string{
		"zink die casting": `"zinc die casting"`, "acetel": `"acetal"`, "": "no material is named", " - ": "no material is named",
		"bronze": "write which", "plastic": "write which", "hard plastic": "write which", "cast iron annealed": "leave the temper off",
	} {
		_, err := r.Find(name)
		if err == nil || !strings.Contains(err.Error(), say) {
			t.Errorf("%q: %v; want %q in it", name, err, say)
		}
	}
}

// The cautious figure is the low one for strength, and an unnamed alloy takes
// the cautious figure of all it may be.
func TestCautious(t *testing.T) {
	r := registry(t)
	for _, c := range []struct {
		name, property string
		low, high      float64
	}{
		{"zinc die-casting alloy 5", "yield_tension", 221, 295},
		{"zinc die casting", "yield_tension", 221, 295},
		{"zinc die casting", "UTS", 248, 358},
		{"zinc die casting", "UTS_aged", 241, 331},
		{"zinc die-casting alloy 5", "UTS_aged", 269, 269},
		{"zinc die casting", "creep_pseudo_modulus_100d", 20.7, 20.7},
		{"zinc die casting", "expansion", 27.4, 27.8},
		{"bearing bronze", "yield_tension", 97, 138},
		{"sintered bronze", "E", 40, 55},
		{"sintered bronze", "pv_limit", 0.7, 1.75},
		{"brass sheet", "yield_tension", 75, 495},
		{"brass sheet annealed", "yield_tension", 75, 150},
		{"brass sheet half hard", "yield_tension", 170, 360},
		{"friction press fit general textbook", "mu", 0.15, 0.20},
	} {
		m, err := r.Find(c.name)
		if err != nil {
			t.Errorf("%v", err)
			continue
		}
		lo, okL := m.Low(c.property)
		hi, okH := m.High(c.property)
		if !okL || !okH || lo.Low != c.low || hi.High != c.high {
			t.Errorf("%s %s: %v to %v; want %v to %v", c.name, c.property, lo.Low, hi.High, c.low, c.high)
		}
		if lo.Source == "" || !strings.HasPrefix(lo.Address, "materials:") {
			t.Errorf("%s %s: source %q at %q", c.name, c.property, lo.Source, lo.Address)
		}
	}
	for name, want := range map[string]bool{"brass sheet": true, "brass sheet, hard": false, "mild steel": false, "brass": true} {
		m, err := r.Find(name)
		if err != nil {
			t.Fatal(err)
		}
		if m.NeedsTemper() != want {
			t.Errorf("%s: needs temper %v, want %v", name, m.NeedsTemper(), want)
		}
	}
}

// The least strength is looked for among as cast and aged alike: that of aged
// alloy 3 where the alloy is not named, and each alloy's own where it is.
func TestWeakest(t *testing.T) {
	r := registry(t)
	for name, want := range map[string]float64{
		"zinc die casting": 241, "zinc die-casting alloy 3": 241, "zinc die-casting alloy 5": 269, "zinc alloy 2": 331,
		"aluminium die casting": 325, "grey cast iron": 200,
	} {
		m, err := r.Find(name)
		if err != nil {
			t.Fatal(err)
		}
		v, ok := m.Weakest()
		if !ok || v.Low != want || v.Source == "" {
			t.Errorf("%s: %v from %q, want %v", name, v.Low, v.Source, want)
		}
		for _, other := range m.All() {
			if (other.Property == "UTS" || other.Property == "UTS_aged") && other.HasLow && other.Low < v.Low {
				t.Errorf("%s: %v is not the least, %s has %v", name, v.Low, other.Address, other.Low)
			}
		}
	}
	if m, _ := r.Find("zinc alloy 5"); m != nil {
		for _, v := range m.All() {
			if strings.HasPrefix(v.Property, "creep_") && (v.HasLow || v.HasHigh) {
				t.Errorf("alloy 5 has a creep figure that was measured on alloy 3: %s", v.Address)
			}
		}
	}
}

// Every material serves a press: modulus, Poisson's ratio, expansion, kind.
func TestEveryMaterialServes(t *testing.T) {
	r := registry(t)
	kinds := map[material.Kind]bool{}
	for _, m := range r.All() {
		e, nu, y, err := m.Elastic(false)
		hi, _, _, err2 := m.Elastic(true)
		if err != nil || err2 != nil {
			t.Errorf("%v %v", err, err2)
		} else if e <= 0 || hi < e || nu < 0 || nu > 0.5 || y < 0 {
			t.Errorf("%s: E %v to %v, nu %v, yield %v", m.Name, e, hi, nu, y)
		}
		if _, ok := m.Low("expansion"); !ok {
			t.Errorf("%s: no expansion", m.Name)
		}
		kinds[m.Kind] = true
	}
	if len(kinds) < 11 || kinds[material.FrictionPair] || len(r.Frictions()) != 10 {
		t.Errorf("kinds %v, %d friction pairs", kinds, len(r.Frictions()))
	}
}

func TestParseInline(t *testing.T) {
	r := registry(t)
	m, err := r.FindOrInline("100000, 0.34,80")
	if err != nil {
		t.Fatal(err)
	}
	if e, nu, y, err := m.Elastic(true); e != 100000 || nu != 0.34 || y != 80 || err != nil {
		t.Errorf("E %v nu %v yield %v %v", e, nu, y, err)
	}
	for _, bad := range []string{"", "85500", "85500,0.3,80,1", "85500,x", "85500,0.6", "85500,-0.1", "0,0.3", "NaN,0.3", "1e400,0.3", "85500,0.3,0", "85500,0.3,Inf"} {
		if m, err := material.ParseInline(bad); err == nil {
			t.Errorf("%q was read as %+v", bad, m)
		}
	}
	if m, err := r.FindOrInline("brass sheet, hard"); err != nil || m.Temper != "hard" {
		t.Errorf("%v %v", m, err)
	}
}

// Capitals, spaces and stops between the letters of a name never matter.
func TestSpelling(t *testing.T) {
	r := registry(t)
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.SampledFrom(r.All()).Draw(t, "material")
		var b strings.Builder
		for _, c := range m.Name {
			if rapid.Bool().Draw(t, "upper") {
				b.WriteString(strings.ToUpper(string(c)))
			} else {
				b.WriteRune(c)
			}
			b.WriteString(rapid.SampledFrom([]string{"", " ", "-", "."}).Draw(t, "between"))
		}
		got, err := r.Find(b.String())
		if err != nil || got.Name != m.Name {
			t.Fatalf("%q: %v %v", b.String(), got, err)
		}
	})
}

func FuzzFind(f *testing.F) {
	r := registry(f)
	for _, s := range []string{"zinc", "brass sheet, half hard", "85500,0.3", "85500,0.3,80", "½hard", "hard", ",", "\xff"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		m, err := r.FindOrInline(s)
		if (m == nil) == (err == nil) {
			t.Fatalf("%q: %v and %v", s, m, err)
		}
		if m == nil {
			return
		}
		for _, v := range m.All() {
			if math.IsNaN(v.Low) || math.IsInf(v.High, 0) || v.String() == "" {
				t.Fatalf("%q: %+v", s, v)
			}
		}
	})
}
