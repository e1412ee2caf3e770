package cutting

import (
	"math"
	"strconv"
	"testing"

	"rebush/fits/table"
	"rebush/testdata"
)

func newCutting(t testing.TB) *Cutting {
	t.Helper()
	lib := table.BuiltIn()
	rules, err := table.ReadRules(lib)
	if err != nil {
		t.Fatal(err)
	}
	c, err := New(lib, rules)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// checkRows reads a file of transcription rows, and holds it to be a whole one.
// Its rows are the rows of the tables copied a second time: they show that a
// question reaches its row, never that the figure in it is right.
func checkRows(t *testing.T, name string) []map[string]string {
	t.Helper()
	rows := testdata.Rows[map[string]string](t, "transcription/"+name)
	if len(rows) < 29 {
		t.Fatalf("%s: only %d rows", name, len(rows))
	}
	return rows
}

func num(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatalf("%q: %v", s, err)
	}
	return v
}

// TestTranscriptionReached is a transcription check: every row is reached by
// its name, with all that stands in it.
func TestTranscriptionReached(t *testing.T) {
	c := newCutting(t)
	equal := func(want map[string]string, have table.Row) bool {
		for k, v := range want {
			if have.Get(k) != v {
				return false
			}
		}
		return true
	}
	among := func(want map[string]string, have []table.Row) bool {
		for _, r := range have {
			if equal(want, r) {
				return true
			}
		}
		return false
	}
	for _, w := range checkRows(t, "speeds.csv") {
		if !among(w, c.Rows(w["material"], w["tool"], w["operation"])) {
			t.Errorf("speeds: not reached: %v", w)
		}
	}
	for _, w := range append(checkRows(t, "reaming.csv"), testdata.Rows[map[string]string](t, "checks/reaming.csv")...) {
		if !among(w, c.ReamRows(w["quantity"], w["kind"], w["material"])) {
			t.Errorf("reaming: not reached: %v", w)
		}
	}
	if n := len(c.Rows("zinc", "hss", "drilling")); n != 3 {
		t.Errorf("spoken names find %d rows for zinc drilling, want 3", n)
	}
	if n := len(c.Rows("cheese", "", "")); n != 0 {
		t.Errorf("%d rows for an unknown material", n)
	}
}

// TestTranscriptionSpeeds, a transcription check of every speed row: the answer's span holds each row of the best kind of
// source, the lowest of them is used, and a lesser kind never wins.
func TestTranscriptionSpeeds(t *testing.T) {
	c := newCutting(t)
	rows := checkRows(t, "speeds.csv")
	type key struct{ m, t, o string }
	kinds := map[key]rank{}
	low := map[key]float64{}
	for pass := 0; pass < 2; pass++ {
		for _, w := range rows {
			if w["v_min_m_min"] == "" {
				continue
			}
			k := key{w["material"], w["tool"], w["operation"]}
			r, ok := rankOf(w["basis"])
			if !ok {
				t.Fatalf("basis %q", w["basis"])
			}
			if best, seen := kinds[k]; pass == 0 {
				if !seen || r < best {
					kinds[k] = r
				}
			} else if v := num(t, w["v_min_m_min"]); r == best && (low[k] == 0 || v < low[k]) {
				low[k] = v
			}
		}
	}
	n := 0
	for _, w := range rows {
		if w["v_min_m_min"] == "" {
			continue
		}
		k := key{w["material"], w["tool"], w["operation"]}
		a, err := c.Speed(Query{Material: k.m, Tool: k.t, Operation: k.o, DiaMM: 6})
		if err != nil {
			t.Errorf("%v: %v", k, err)
			continue
		}
		n++
		if a.VUsed != low[k] || a.VBook != low[k] {
			t.Errorf("%v: used %v (book %v), the lowest %s figure is %v", k, a.VUsed, a.VBook, kinds[k], low[k])
		}
		if a.Basis != kinds[k].String() {
			t.Errorf("%v: basis %q, want %q", k, a.Basis, kinds[k])
		}
		r, _ := rankOf(w["basis"])
		inside := a.VMin <= num(t, w["v_min_m_min"]) && a.VMax >= num(t, w["v_max_m_min"])
		if r == kinds[k] && !inside {
			t.Errorf("%v: span %v to %v leaves out %s to %s", k, a.VMin, a.VMax, w["v_min_m_min"], w["v_max_m_min"])
		}
		if got := 1000 * low[k] / (math.Pi * 6); math.Abs(a.RPM-got) > 1e-9*got {
			t.Errorf("%v: %v turns, want %v", k, a.RPM, got)
		}
		// Both columns of a row printed in feet say the same, to its rounding.
		if ft := num(t, w["v_min_ft_min"]) * 0.3048; math.Abs(ft-num(t, w["v_min_m_min"])) > 0.16 {
			t.Errorf("%v: %s ft/min is %.2f m/min, the row says %s", k, w["v_min_ft_min"], ft, w["v_min_m_min"])
		}
	}
	if n < 110 {
		t.Errorf("only %d rows were compared", n)
	}
}

// TestTranscriptionFactors: every factor of the copied rows lies in the span of an answer built on it.
func TestTranscriptionFactors(t *testing.T) {
	c := newCutting(t)
	ops := map[string]bool{}
	for _, w := range checkRows(t, "speeds.csv") {
		if w["factor_min"] == "" {
			continue
		}
		lo, hi := num(t, w["factor_min"]), num(t, w["factor_max"])
		if d := w["operation"]; len(d) > 5 && d[:6] == "drill " { // drill deeper than n D
			times := num(t, d[len("drill deeper than "):len(d)-2])
			if got, _ := c.DeepHole(times*4, 4); got < lo || got > hi {
				t.Errorf("%s: factor %v, want %v to %v", d, got, lo, hi)
			}
			ops["deep"] = true
			continue
		}
		tool := w["tool"]
		if tool == "any" {
			tool = "HSS"
		}
		base, err := c.Speed(Query{Material: "bearing bronze", Operation: "drill", DiaMM: 8})
		if err != nil {
			t.Fatal(err)
		}
		a, err := c.Speed(Query{Material: "bearing bronze", Tool: tool, Operation: w["operation"], DiaMM: 8})
		if err != nil {
			t.Errorf("%v: %v", w["operation"], err)
			continue
		}
		ops[w["operation"]] = true
		if w["basis"] == "derived" {
			continue // 0.65 for steels only, between the published ones
		}
		if a.VMin > base.VMin*lo+1e-9 || a.VMax < base.VMax*hi-1e-9 {
			t.Errorf("%s x %v to %v of %v to %v: span %v to %v", w["operation"], lo, hi, base.VMin, base.VMax, a.VMin, a.VMax)
		}
	}
	if len(ops) != 6 {
		t.Errorf("operations with factors: %v, want 6", ops)
	}
}

// TestTranscriptionReamStock: the copied stock rows of the reaming table hold the answers for their sizes.
func TestTranscriptionReamStock(t *testing.T) {
	c := newCutting(t)
	n := 0
	for _, w := range checkRows(t, "reaming.csv") {
		if w["quantity"] != StockOnDiameter || w["basis"] == "from_memory" || w["d_to_mm"] == "" {
			continue
		}
		lo, hi := num(t, w["low_mm_or_factor"]), num(t, w["high_mm_or_factor"])
		mat := map[string]string{"any metal": "zinc", "steel": "mild steel", "light metal": "aluminium", "aluminium": "aluminium"}[w["material"]]
		to := num(t, w["d_to_mm"])
		sizes := []float64{to, to * 0.95}
		if w["d_over_mm"] != "" {
			over := num(t, w["d_over_mm"])
			sizes = []float64{to, (over + to) / 2}
			if w["printed_unit"] == "in" {
				sizes = append(sizes, over) // maker charts: from and to inclusive
			}
		}
		for _, d := range sizes {
			gotLo, gotHi, ref, err := c.ReamStock(d, w["kind"] == "hand", mat)
			if err != nil {
				t.Errorf("%v %s: %v", d, mat, err)
				continue
			}
			n++
			if lo == hi { // one worked size, inside the chart's range
				if gotLo > lo || gotHi < hi {
					t.Errorf("%g mm %s: %v to %v leaves out %v (%s)", d, mat, gotLo, gotHi, lo, ref.Address)
				}
			} else if gotLo != lo || gotHi != hi {
				t.Errorf("%g mm %s: %v to %v, want %v to %v (%s)", d, mat, gotLo, gotHi, lo, hi, ref.Address)
			}
		}
	}
	if n < 20 {
		t.Errorf("only %d sizes were compared", n)
	}
}
