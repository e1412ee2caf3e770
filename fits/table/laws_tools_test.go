package table_test

import (
	"math"
	"math/big"
	"strings"
	"testing"
)

// fraction is the figure of "3/8" or "0.375".
func fraction(t *testing.T, where, s string) float64 {
	t.Helper()
	x, ok := new(big.Rat).SetString(strings.TrimSpace(s))
	if !ok {
		t.Errorf("%s: %q is no figure", where, s)
		return math.NaN()
	}
	f, _ := x.Float64()
	return f
}

// TestToolsAreTheirNames: a tool that is called by its size has that size, exactly,
// and they stand from the smallest, none twice.
func TestToolsAreTheirNames(t *testing.T) {
	for name, c := range map[string]struct {
		unit        string
		rows        int
		least, most float64
	}{
		"drills_fraction": {"in", 64, 1.0 / 64, 1}, "drills_metric": {"mm", 227, 0.2, 25},
		"drills_letter": {"in", 26, 0.234, 0.413}, "drills_number": {"in", 97, 0.0059, 0.228},
		"reamers_chucking_inch": {"in", 61, 1.0 / 16, 1}, "reamers_hand_metric": {"mm", 27, 1.5, 25},
		"reamers_machine_metric": {"mm", 30, 1, 20},
	} {
		rows := rowsOf(t, name)
		rising(t, rows, "size", true)
		if n := len(rows); n != c.rows {
			t.Errorf("%s: %d sizes, want %d", name, n, c.rows)
		}
		alike(t, name+": the smallest", fig(t, rows[0], "size"), c.least, 1e-12)
		alike(t, name+": the largest", fig(t, rows[len(rows)-1], "size"), c.most, 1e-12)
		for i, r := range rows {
			if r.Get("unit") != c.unit {
				t.Errorf("%s: in %s", r.Address(), r.Get("unit"))
			}
			size, called := r.Get("size"), strings.TrimSuffix(r.Get("name"), " "+c.unit)
			switch {
			case name == "drills_letter":
				if r.Get("name") != string(rune('A'+i)) {
					t.Errorf("%s: %s", r.Address(), r.Get("name"))
				}
			case name == "drills_number":
				if atoi(strings.TrimPrefix(r.Get("name"), "#")) != 97-i {
					t.Errorf("%s: %s", r.Address(), r.Get("name"))
				}
			default:
				alike(t, r.Address()+": "+r.Get("name"), fraction(t, r.Address(), size), fraction(t, r.Address(), called), 0)
			}
		}
	}
	for _, name := range []string{"drills_fraction", "reamers_chucking_inch"} {
		rows := rowsOf(t, name)
		for i, r := range rows {
			alike(t, r.Address(), fig(t, r, "size")*64, fig(t, rows[0], "size")*64+float64(i), 0)
		}
	}
}

// TestDrillSets: a set that is called by its step has it, and from and to are
// sizes of its series.
func TestDrillSets(t *testing.T) {
	sizes := map[string]bool{}
	for _, s := range []string{"metric", "number", "letter", "fraction"} {
		for _, r := range rowsOf(t, "drills_"+s) {
			sizes[s+" "+r.Get("name")] = true
			if s == "metric" || s == "fraction" {
				sizes[s+" "+big.NewRat(1, 1).Mul(big.NewRat(1, 1), rat(r.Get("size"))).RatString()] = true
			}
		}
	}
	span := map[string]string{"metric": "1 13", "metric 0.1": "1 10", "metric 0.5": "1 13", "metric 0.05": "1 3",
		"number": "#60 #1", "letter": "A Z"}
	for _, r := range rowsOf(t, "drills_sets") {
		series := r.Get("series")
		want := span[r.Get("set")]
		if series == "fraction" {
			want = "1/16 1/2"
		}
		if got := r.Get("from") + " " + r.Get("to"); got != want {
			t.Errorf("%s: from and to are %s, want %s", r.Address(), got, want)
		}
		for _, c := range []string{"from", "to"} {
			v := r.Get(c)
			if x := rat(v); x != nil {
				v = x.RatString()
			}
			if !sizes[series+" "+v] {
				t.Errorf("%s: %s is no size of the %s drills", r.Address(), r.Get(c), series)
			}
		}
		step := map[string]string{"metric": "0", "number": "0", "letter": "0", "fraction": "1/64"}[r.Get("set")]
		if called, ok := strings.CutPrefix(r.Get("set"), series+" "); ok {
			step = called
		}
		unit := map[string]string{"metric": "mm", "fraction": "in", "number": "name", "letter": "name"}[series]
		if r.Get("step") != step || r.Get("unit") != unit {
			t.Errorf("%s: step %s in %s, want %s in %s", r.Address(), r.Get("step"), r.Get("unit"), step, unit)
		}
	}
}

func rat(s string) *big.Rat {
	x, ok := new(big.Rat).SetString(s)
	if !ok {
		return nil
	}
	return x
}

// TestShortMills: the ranges abut to 20 mm, flute and shank grow with them, the
// shank is the next of the usual ones that is not much under the mill.
func TestShortMills(t *testing.T) {
	rows := rowsOf(t, "end_mills_short")
	abut(t, rows, "d_over_mm", "d_to_mm", 0, 0)
	rising(t, rows, "flute_mm", true)
	rising(t, rows, "shank_mm", false)
	alike(t, "the last size", fig(t, rows[len(rows)-1], "d_to_mm"), 20, 0)
	for _, r := range rows {
		d := fig(t, r, "d_to_mm")
		if s := r.Get("shank_mm"); !strings.Contains(" 6 8 10 12 16 20 ", " "+s+" ") {
			t.Errorf("%s: a shank of %s", r.Address(), s)
		}
		between(t, r, "shank_mm", 0.85*d, math.Max(6, d))
		between(t, r, "flute_mm", 1.75*d, 3*d)
	}
}
