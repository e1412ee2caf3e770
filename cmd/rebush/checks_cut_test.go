package main

import (
	"math"
	"strings"
	"testing"

	"rebush/testdata"
)

// TestSpeedRows asks for each material, tool and operation of speeds.csv that
// has a figure: the span holds every row of the best kind of source, and the
// lowest of them is used.
func TestSpeedRows(t *testing.T) {
	kind := func(basis string) int {
		switch {
		case strings.HasPrefix(basis, "published"):
			return 0
		case strings.HasPrefix(basis, "derived"):
			return 1
		}
		return 2
	}
	key := func(r checkRow) [3]string { return [3]string{r["material"], r["tool"], r["operation"]} }
	best, low := map[[3]string]int{}, map[[3]string]float64{}
	rows := testdata.Rows[checkRow](t, "transcription/speeds.csv")
	for pass := range 2 {
		for _, r := range rows {
			if r["v_min_m_min"] == "" {
				continue
			}
			k, b := key(r), kind(r["basis"])
			if old, ok := best[k]; pass == 0 && (!ok || b < old) {
				best[k] = b
			}
			if v := number(t, r["v_min_m_min"]); pass == 1 && b == best[k] && (low[k] == 0 || v < low[k]) {
				low[k] = v
			}
		}
	}
	passed := 0
	for _, r := range rows {
		k := key(r)
		if r["v_min_m_min"] == "" || kind(r["basis"]) != best[k] {
			continue // a factor, or a lesser source that never wins
		}
		m := asked(t, "speed", k[0], k[2], "6", "--tool", k[1])
		ok := within(t, strings.Join(k[:], ", ")+": used", at(m, "speed_m_min", "used"), low[k], 1e-9)
		ok = within(t, strings.Join(k[:], ", ")+": rpm", at(m, "rpm"), 1000*low[k]/(math.Pi*6), 1e-5*at(m, "rpm")) && ok
		if at(m, "speed_m_min", "min") > number(t, r["v_min_m_min"]) ||
			at(m, "speed_m_min", "max") < number(t, r["v_max_m_min"]) {
			t.Errorf("%v: the span %v leaves out %s to %s (%s)", k, m["speed_m_min"], r["v_min_m_min"],
				r["v_max_m_min"], r["source"])
			ok = false
		}
		if ok {
			passed++
		}
	}
	t.Logf("speeds.csv: %d rows passed", passed)
	if passed < 100 {
		t.Errorf("%d rows passed, want 100", passed)
	}
}

// TestReamingRows asks the limits of reamers and drills, and the stock of the
// rows that a single size can be asked of.
func TestReamingRows(t *testing.T) {
	passed := 0
	for _, r := range append(testdata.Rows[checkRow](t, "checks/reaming.csv"),
		testdata.Rows[checkRow](t, "transcription/reaming.csv")...) {
		d, low, high := r["d_to_mm"], r["low_mm_or_factor"], r["high_mm_or_factor"]
		var ok bool
		switch {
		case r["quantity"] == "reamer_diameter_limits_for_H7":
			m := asked(t, "reamer", d+" H7")
			ok = within(t, d+" H7 low", at(m, "reamer_mm", "min")-number(t, d), number(t, low), 1e-9) &&
				within(t, d+" H7 high", at(m, "reamer_mm", "max")-number(t, d), number(t, high), 1e-9)
		case r["quantity"] == "reamer_diameter_limits":
			m := asked(t, "reamer", d+" mm")
			ok = within(t, d+" stock low", at(m, "reamer_mm", "min")-number(t, d), number(t, low), 5e-5) &&
				within(t, d+" stock high", at(m, "reamer_mm", "max")-number(t, d), number(t, high), 5e-5)
		case r["quantity"] == "drill_diameter_minus_tolerance_h8":
			ok = within(t, d+" h8", -at(asked(t, "limits", d+" h8"), "lower_um"), 1000*number(t, high), 1e-9)
		case r["quantity"] == "stock_on_diameter" && r["basis"] == "published" && d != "" && number(t, d) <= 50 &&
			low != high:
			words := []string{"reamer", d + " H7", "--material", "mild steel"}
			if r["kind"] == "hand" {
				words = append(words, "--hand")
			}
			m := asked(t, words...)
			ok = within(t, d+" stock low", at(m, "stock_mm", "min"), number(t, low), 1e-9) &&
				within(t, d+" stock high", at(m, "stock_mm", "max"), number(t, high), 1e-9)
		default:
			continue // a factor, a remembered row, or one without a size
		}
		if ok {
			passed++
		}
	}
	t.Logf("reaming.csv: %d rows passed", passed)
	if passed < 18 {
		t.Errorf("%d rows passed, want 18", passed)
	}
}
