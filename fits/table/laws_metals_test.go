package table_test

import (
	"math"
	"testing"
)

// properties are the units and the widest that a figure can be, of metals and
// plastics alike (handbook orders of size, judgement).
var properties = map[string]struct {
	unit      string
	low, high float64
}{
	"E": {"GPa", 0.5, 210}, "poisson": {"-", 0.2, 0.47}, "yield_tension": {"MPa", 9, 500}, "UTS": {"MPa", 50, 900},
	"UTS_aged": {"MPa", 200, 340}, "yield_compression": {"MPa", 70, 420}, "expansion": {"1e-6/K", 9, 140},
	"elongation": {"%", 0.5, 12}, "creep_stress_0p2pct_5y_room": {"MPa", 15.1, 15.1},
	"creep_pseudo_modulus_100d": {"GPa", 20.7, 20.7}, "temperature_max": {"C", 75, 80}, "density": {"g/cm3", 1.1, 9},
	"creep_note": {"-", 0, 0}, "p_limit": {"MPa", 3, 42}, "v_limit": {"m/s", 0.5, 13}, "pv_limit": {"MPa m/s", 0.03, 3},
	"porosity": {"% vol", 15, 30}, "oil": {"% vol", 18, 25}, "hardness": {"HB", 40, 70},
	"radial_crush_strength": {"MPa", 100, 350}, "p_static": {"MPa", 60, 60}, "compressive_10pct": {"MPa", 315, 315},
	"note": {"-", 0, 0}, "mu": {"-", 0.05, 0.25},
}

// TestMaterialFigures: each property has its unit and a possible size; low is no
// higher than high; several sources of one property do not lie further apart than
// it scatters; nothing yields above what it breaks at, nor is any stronger aged.
func TestMaterialFigures(t *testing.T) {
	apart := map[string]float64{"elongation": 6.1, "radial_crush_strength": 3.6, "pv_limit": 2.6, "p_limit": 2.2,
		"yield_tension": 6, "UTS": 3, "E": 2.6, "expansion": 2.1, "hardness": 2, "mu": 1.6}
	for key, rows := range groups(rowsOf(t, "materials"), "material", "property", "temper") {
		p := rows[0].Get("property")
		want, ok := properties[p]
		least, most := math.Inf(1), 0.0
		for _, r := range rows {
			if !ok || r.Get("unit") != want.unit {
				t.Errorf("%s: %s in %s", r.Address(), p, r.Get("unit"))
			}
			for _, c := range []string{"low", "high"} {
				if r.Get(c) == "" {
					continue
				}
				between(t, r, c, want.low, want.high)
				least, most = math.Min(least, fig(t, r, c)), math.Max(most, fig(t, r, c))
			}
			if r.Get("low") != "" && r.Get("high") != "" {
				ordered(t, r, "low", "high")
			}
		}
		by := apart[p]
		if by == 0 {
			by = 1.5
		}
		if most > by*least {
			t.Errorf("%s: from %v to %v", key, least, most)
		}
	}
	ends := func(material, property, temper string) (least, most float64) {
		least = math.Inf(1)
		for _, r := range groups(rowsOf(t, "materials"), "material", "property", "temper")[material+", "+property+", "+temper] {
			for _, c := range []string{"low", "high"} {
				if r.Get(c) != "" {
					least, most = math.Min(least, fig(t, r, c)), math.Max(most, fig(t, r, c))
				}
			}
		}
		return least, most
	}
	for _, r := range rowsOf(t, "materials") {
		if r.Get("property") != "yield_tension" {
			continue
		}
		if _, breaks := ends(r.Get("material"), "UTS", r.Get("temper")); breaks > 0 && r.Get("low") != "" {
			if v := fig(t, r, "low"); v > breaks {
				t.Errorf("%s: yields at %v, breaks at %v at most", r.Address(), v, breaks)
			}
		}
	}
	for _, r := range rowsOf(t, "materials") {
		if r.Get("property") != "UTS_aged" {
			continue
		}
		if least, _ := ends(r.Get("material"), "UTS", ""); fig(t, r, "high") > least && !math.IsInf(least, 1) {
			t.Errorf("%s: %s aged, %v cast", r.Address(), r.Get("high"), least)
		}
	}
}
