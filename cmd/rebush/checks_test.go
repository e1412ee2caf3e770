package main

import (
	"bytes"
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"rebush/testdata"
)

// The rows of testdata are asked here as a person would: through the command.
// The folder of a row says whether it was printed by somebody outside, copied
// from the tables of the program, remembered, or is our own.

type checkRow map[string]string

// asked runs a lookup with --json and returns the answer.
func asked(t *testing.T, words ...string) map[string]any {
	t.Helper()
	var out, errOut bytes.Buffer
	if code := run(append([]string{"rebush", "--json", "lookup"}, words...), strings.NewReader(""), &out,
		&errOut); code != done {
		t.Errorf("lookup %q: exit %d: %s", words, code, errOut.String())
		return nil
	}
	var m map[string]any
	if err := json.Unmarshal(out.Bytes(), &m); err != nil {
		t.Fatalf("lookup %q: %v", words, err)
	}
	return m
}

// at follows keys into an answer; NaN where nothing is there.
func at(m map[string]any, keys ...string) float64 {
	var v any = m
	for _, k := range keys {
		o, ok := v.(map[string]any)
		if !ok {
			return math.NaN()
		}
		v = o[k]
	}
	switch x := v.(type) {
	case float64:
		return x
	case string:
		f, err := strconv.ParseFloat(x, 64)
		if err == nil {
			return f
		}
	}
	return math.NaN()
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatalf("%q: %v", s, err)
	}
	return v
}

// close says whether a figure is within a tolerance, and complains where not.
func within(t *testing.T, what string, got, want, tol float64) bool {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.9g, want %.9g, within %.2g", what, got, want, tol)
		return false
	}
	return true
}

// TestFitRows asks every row of fits.csv; they are exact.
func TestFitRows(t *testing.T) {
	passed := 0
	for _, r := range testdata.Rows[checkRow](t, "checks/fits.csv") {
		in := map[string]string{}
		for _, part := range strings.Split(r["inputs"], ";") {
			k, v, _ := strings.Cut(strings.TrimSpace(part), "=")
			in[k] = v
		}
		if got := fitAsked(t, r["quantity"], in); within(t, r["id"]+" "+r["quantity"], got, number(t, r["expected"]),
			1e-9) {
			passed++
		}
	}
	t.Logf("fits.csv: %d rows passed", passed)
	if passed != 129 {
		t.Errorf("%d rows passed, want 129", passed)
	}
}

func fitAsked(t *testing.T, q string, in map[string]string) float64 {
	first := func(keys ...string) string {
		for _, k := range keys {
			if in[k] != "" {
				return in[k]
			}
		}
		return ""
	}
	most := strings.HasPrefix(q, "max") || strings.HasPrefix(q, "upper") || strings.Contains(q, "(upper)") ||
		strings.Contains(q, "plus or minus")
	end := map[bool]string{true: "max", false: "min"}[most]
	size := first("nominal_mm", "bush_OD_mm", "bush_bore_mm", "bush_length_mm", "hole_nominal_mm")
	switch {
	case in["nominal_in"] != "":
		m := asked(t, "limits", in["nominal_in"]+" "+in["fit"])
		switch {
		case strings.Contains(q, "interference"):
			return at(m, "interference_thou", end)
		case strings.Contains(q, "clearance"):
			return -at(m, "interference_thou", map[bool]string{true: "min", false: "max"}[most])
		}
		off := at(m, "shaft", end+"_in") - number(t, in["nominal_in"])
		return math.Round(off*1e7) / 1e4 // thousandths, without the dust of the subtraction
	case in["grade"] != "":
		return at(asked(t, "limits", size+" "+in["grade"]), "tolerance_um")
	case strings.HasSuffix(q, "reamer diameter"):
		return at(asked(t, "reamer", size+" "+in["hole_class"]), "reamer_mm", end)
	case in["fit"] != "" || in["housing"] != "":
		pair := first("fit")
		if pair == "" {
			pair = in["housing"] + "/" + in["OD_class"]
		}
		m := asked(t, "limits", size+" "+pair)
		if strings.Contains(q, "interference") {
			return -at(m, "clearance_um", map[bool]string{true: "min", false: "max"}[most])
		}
		return at(m, "clearance_um", end)
	}
	return at(asked(t, "limits", size+" "+first("class", "class_after_fitting")),
		map[bool]string{true: "upper_um", false: "lower_um"}[most])
}

// TestDrillRows asks every row of drills.csv by its name: metric rows exact in
// mm, the others exact in inch, the other unit to five places.
func TestDrillRows(t *testing.T) {
	passed := 0
	for _, r := range testdata.Rows[checkRow](t, "transcription/drills.csv") {
		words := []string{"drill", r["name"]}
		if strings.HasPrefix(r["series"], "reamer") {
			words = append(words, "--reamers")
		}
		m := asked(t, words...)
		mm, okMM := m["mm"].(string)
		in, okIn := m["in"].(string)
		if !okMM || !okIn || m["name"] == nil {
			t.Errorf("%s %s: %v", r["series"], r["name"], m)
			continue
		}
		sameIn := same(in, r["inch"])
		if strings.Contains(r["series"], "metric") {
			sameIn = decimal.RequireFromString(in).StringFixed(5) == decimal.RequireFromString(r["inch"]).StringFixed(5)
		}
		if !same(mm, r["mm"]) || !sameIn {
			t.Errorf("%s %s: %s mm, %s in; copied %s, %s (%s)", r["series"], r["name"], mm, in, r["mm"], r["inch"],
				r["source"])
			continue
		}
		passed++
	}
	t.Logf("drills.csv: %d rows passed", passed)
	if passed != 532 {
		t.Errorf("%d rows passed, want 532", passed)
	}
}

func same(a, b string) bool {
	return decimal.RequireFromString(a).Equal(decimal.RequireFromString(b))
}
