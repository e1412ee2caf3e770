package table_test

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"rebush/fits/table"
)

// TestFeedTable: the ranges of both sources abut at whole parts of an inch; the
// one without hardness ends each range where the next begins; the other begins
// where it does and ends no lower.
func TestFeedTable(t *testing.T) {
	var navy, maker []table.Row
	for _, r := range rowsOf(t, "feed") {
		if strings.HasPrefix(r.Source(), "US Navy") {
			navy = append(navy, r)
		} else {
			maker = append(maker, r)
		}
	}
	for _, rows := range [][]table.Row{navy, maker} {
		abut(t, rows, "d_over_mm", "d_to_mm", 0, 0)
		rising(t, rows, "high_in_rev", true)
		for i, r := range rows {
			alike(t, r.Address()+": to", fig(t, r, "d_to_mm"), 25.4/8*math.Pow(2, float64(i)), 1e-9)
		}
	}
	for i, r := range navy {
		alike(t, r.Address(), fig(t, maker[i], "low_in_rev"), fig(t, r, "low_in_rev"), 0)
		ordered(t, r, "low_in_rev", "high_in_rev")
		if i > 0 {
			alike(t, r.Address()+": begins where the last ends", fig(t, r, "low_in_rev"), fig(t, navy[i-1], "high_in_rev"), 0)
		}
		if over := fig(t, maker[i], "high_in_rev") / fig(t, r, "high_in_rev"); over < 1 || over > 1.5 {
			t.Errorf("%s: %.2f times the high of the other source", maker[i].Address(), over)
		}
	}
	alike(t, "the first feed", fig(t, navy[0], "low_in_rev"), 0.001, 0)
	alike(t, "the last feed", fig(t, navy[3], "high_in_rev"), 0.015, 0)
}

// TestDepths: pecks grow shorter, the first no longer than what counts as deep;
// feed for small drills is 0.001 in for every 1/16 in.
func TestDepths(t *testing.T) {
	low := func(name string) float64 { return fig(t, row(t, "feed_depth", "name", name), "low") }
	high := func(name string) float64 { return fig(t, row(t, "feed_depth", "name", name), "high") }
	alike(t, "share of diameter", low("share_of_diameter"), 0.001/(1.0/16), 0)
	alike(t, "first peck, at most", high("first_peck_diameters"), low("deep_diameters"), 0)
	alike(t, "first peck, at least", low("first_peck_diameters"), high("first_peck_diameters")-1, 0)
	for i, p := range []string{"first", "second", "next"} {
		alike(t, p+" peck", low(p+"_peck_diameters"), 2/math.Pow(2, float64(i)), 0)
	}
	alike(t, "deep", low("deep_diameters"), fig(t, rowsOf(t, "speeds_deep")[0], "from_diameters"), 0)
	// Fundamentals of Machining Processes, Table 5.4 gives 118 degrees for most of
	// what it drills; the run beyond has to be longer than the point of a drill of
	// 6 mm, and the start above the work is no air cutting.
	alike(t, "point", low("point_deg"), 118, 0)
	if point := 3 / math.Tan(59*math.Pi/180); !(low("overrun_mm") >= point && high("overrun_mm") <= 2*point) ||
		low("approach_mm") < 0.5 || low("approach_mm") > 2 {
		t.Errorf("overrun %v to %v, approach %v; a point is %.2f long", low("overrun_mm"), high("overrun_mm"),
			low("approach_mm"), point)
	}
}

// TestOtherFeeds: what is used lies in what is printed; inches of the source
// are the mm of the row; a countersink feeds less than a boring tool.
func TestOtherFeeds(t *testing.T) {
	printed := regexp.MustCompile(`([\d.]+)-([\d.]+) in/rev`)
	for _, r := range rowsOf(t, "feed_other") {
		ordered(t, r, "low_mm_rev", "used_mm_rev", "high_mm_rev")
		between(t, r, "low_mm_rev", 0.02, 0.15)
		between(t, r, "used_mm_rev", 0.03, 0.1016)
		between(t, r, "high_mm_rev", 0.05, 0.4)
		if g := printed.FindStringSubmatch(r.Source()); g != nil {
			alike(t, r.Address()+": low", fig(t, r, "low_mm_rev"), 25.4*fraction(t, r.Address(), g[1]), 1e-9)
			alike(t, r.Address()+": high", fig(t, r, "high_mm_rev"), 25.4*fraction(t, r.Address(), g[2]), 1e-9)
		}
		if r.Get("operation") == "countersink" {
			between(t, r, "high_mm_rev", 0.05, 0.05)
		}
	}
}

// TestForceFactors: torque and thrust go by one factor but in austenitic steel;
// what stands in for another metal has its figures; the order of metals is that
// of the specific cutting forces and of the maker's factors, and no metal is
// farther from its specific force than any two sources are.
func TestForceFactors(t *testing.T) {
	kd := func(class string) float64 { return fig(t, row(t, "kd", "class", class), "kd_torque") }
	for _, r := range rowsOf(t, "kd") {
		if r.Get("class") == "austenitic stainless" {
			alike(t, "thrust of stainless", fig(t, r, "kd_thrust")/fig(t, r, "kd_torque"), 1.46, 0.01)
			continue
		}
		alike(t, r.Address()+": thrust", fig(t, r, "kd_thrust"), fig(t, r, "kd_torque"), 0)
	}
	for _, c := range []struct {
		class, than string
		times       float64
	}{
		{"zinc", "aluminium", 1}, {"leaded brass", "aluminium", 1}, {"bronze", "brass", 1}, {"brass", "leaded brass", 2},
		{"cast iron", "brass", 1}, {"steel", "free-machining steel", 2}, {"austenitic stainless", "steel", 1},
		{"magnesium", "aluminium", 4.0 / 7}, {"free-machining steel", "cast iron", 6.0 / 7},
	} {
		alike(t, c.class+" by "+c.than, kd(c.class), kd(c.than)*c.times, 1e-6)
	}
	alike(t, "aluminium", kd("aluminium"), 7000, 0)
	kc := func(class string) float64 { return fig(t, row(t, "kd_kienzle", "class", class), "kc11_mpa") }
	for i, classes := 1, []string{"brass", "aluminium wrought", "aluminium cast", "aluminium aged", "grey iron",
		"pearlitic iron",
		"low-carbon steel", "martensitic stainless", "austenitic stainless"}; i < len(classes); i++ {
		if kc(classes[i-1]) > kc(classes[i]) {
			t.Errorf("%s resists more than %s", classes[i-1], classes[i])
		}
	}
	for _, c := range [][2]string{{"aluminium", "aluminium cast"}, {"leaded brass", "brass"}, {"cast iron", "grey iron"},
		{"austenitic stainless", "austenitic stainless"}, {"steel", "low-carbon steel"}} {
		if ratio := kd(c[0]) / kc(c[1]); ratio < 9.9 || ratio > 18 {
			t.Errorf("%s: Kd is %.1f times the specific cutting force", c[0], ratio)
		}
	}
	for _, r := range rowsOf(t, "kd_kienzle") {
		between(t, r, "mc", 0.2, 0.28)
		between(t, r, "kc11_mpa", 700, 2150)
	}
	k := rowsOf(t, "kd_maker")
	rising(t, k, "k", true)
	alike(t, "the metal that the maker's factor is measured in", fig(t, k[0], "k"), 1, 0)
	alike(t, "the hardest of the maker", fig(t, k[len(k)-1], "k"), 2.22, 0)
}

// TestChisel: of the point factors that are printed for five widths of chisel
// edge (Machinery's Handbook 31, p. 1152 Table 7), J is the square of the width
// over the diameter, to 0.003, and A and B rise with it. Wear makes a
// drill dull by steps.
func TestChisel(t *testing.T) {
	points := map[string][4]float64{"standard": {0.18, 1.085, 1.355, 0.030}, "split": {0.03, 1.000, 1.100, 0.001}}
	for _, r := range rowsOf(t, "kd_point") {
		c := fig(t, r, "chisel_over_diameter")
		alike(t, r.Address()+": J", fig(t, r, "j"), c*c, 0.003)
		for i, column := range []string{"chisel_over_diameter", "a", "b", "j"} {
			alike(t, r.Address()+": "+column, fig(t, r, column), points[r.Get("point")][i], 0)
		}
	}
	w := rowsOf(t, "kd_wear")
	rising(t, w, "w", true)
	for i, want := range []float64{1, 1.3, 1.5} {
		alike(t, w[i].Address(), fig(t, w[i], "w"), want, 0)
	}
}

// TestSpeedColumns: of every row feet and metres are one speed, least is no
// more than most, and carbide runs no slower than the slowest high-speed steel
// of that metal and operation.
func TestSpeedColumns(t *testing.T) {
	least := map[string]float64{}
	for _, r := range rowsOf(t, "speeds") {
		if r.Get("v_min_m_min") == "" {
			if r.Get("factor_min") != "" {
				ordered(t, r, "factor_min", "factor_max")
				between(t, r, "factor_max", 0.25, 3)
			}
			continue
		}
		for _, end := range []string{"min", "max"} {
			m, ft := fig(t, r, "v_"+end+"_m_min"), fig(t, r, "v_"+end+"_ft_min")
			// Printed in one unit and rounded in the other, to a tenth of a metre or a foot.
			alike(t, r.Address()+": "+end, m, ft*0.3048, 0.155)
		}
		ordered(t, r, "v_min_m_min", "v_max_m_min")
		between(t, r, "v_min_m_min", 4.6, 600)
		between(t, r, "v_max_m_min", 4.6, 1800)
		if r.Get("tool") == "HSS" {
			k := r.Get("material") + r.Get("operation")
			if v := fig(t, r, "v_min_m_min"); least[k] == 0 || v < least[k] {
				least[k] = v
			}
		}
	}
	for _, r := range rowsOf(t, "speeds") {
		if old := least[r.Get("material")+r.Get("operation")]; r.Get("tool") == "solid carbide" && old > 0 &&
			r.Get("operation") != "end-mill" && fig(t, r, "v_min_m_min") < old {
			t.Errorf("%s: carbide at %s, high-speed steel at %v", r.Address(), r.Get("v_min_m_min"), old)
		}
	}
}

// TestSpeedFactors: what is used is the low end of the factors that are printed
// in the speed table, for deep holes as for operations.
func TestSpeedFactors(t *testing.T) {
	low := func(tool, operation string) float64 {
		least := math.Inf(1)
		for _, r := range rowsOf(t, "speeds") {
			if r.Get("tool") == tool && r.Get("operation") == operation && r.Get("factor_min") != "" {
				least = math.Min(least, fig(t, r, "factor_min"))
			}
		}
		return least
	}
	for _, r := range rowsOf(t, "speeds_factor") {
		alike(t, r.Address(), fig(t, r, "factor"), low(r.Get("tool"), r.Get("operation")), 0)
	}
	deep := rowsOf(t, "speeds_deep")
	for i, r := range deep {
		alike(t, r.Address(), fig(t, r, "from_diameters"), float64(3+i), 0)
		alike(t, r.Address(), fig(t, r, "speed"), low("HSS", "drill deeper than "+r.Get("from_diameters")+" D"), 0)
		if f := fig(t, r, "feed"); f != 0.9 && f != 0.8 || f < fig(t, r, "speed") || i > 0 && f > fig(t, deep[i-1], "feed") {
			t.Errorf("%s: feed %v", r.Address(), f)
		}
	}
	// The factor for small drills goes as the power 0.6 of the diameter over
	// 15 mm (own observation); with a fifth of the feed it falls less.
	for _, r := range rowsOf(t, "speeds_small") {
		d := fig(t, r, "d_mm")
		alike(t, r.Address(), fig(t, r, "full_feed")/math.Pow(d/15, 0.6), 1, 0.04)
		between(t, r, "fifth_feed", math.Min(0.8, fig(t, r, "full_feed")), 1)
		if d <= 15 {
			alike(t, r.Address()+": fifth of the feed", fig(t, r, "fifth_feed"), math.Min(1, math.Pow(d/9, 0.12)), 0.03)
		}
	}
	rising(t, rowsOf(t, "speeds_small"), "d_mm", true)
}

// TestReamingColumns: inches and mm of every row are one figure.
func TestReamingColumns(t *testing.T) {
	for _, r := range rowsOf(t, "reaming") {
		for _, c := range [][2]string{{"d_over_mm", "d_over_in"}, {"d_to_mm", "d_to_in"}} {
			if r.Get("material") == "steel" && r.Get("d_over_mm") == "12.69" || r.Get("material") == "aluminium" {
				continue // a single size: the range about it is ours
			}
			twice(t, r, c[0], c[1], 1/25.4)
		}
		if strings.Contains(r.Get("quantity"), "factor") {
			between(t, r, "low_mm_or_factor", 0.5, 2)
			between(t, r, "high_mm_or_factor", 0.5, 2)
		} else {
			twice(t, r, "low_mm_or_factor", "low_in", 1/25.4)
			twice(t, r, "high_mm_or_factor", "high_in", 1/25.4)
		}
		ordered(t, r, "low_mm_or_factor", "high_mm_or_factor")
	}
}
