package limits

import (
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
	"rebush/fits/table"
	"rebush/testdata"
)

func builtIn(t testing.TB) *Limits {
	t.Helper()
	l, err := New(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// inputs reads "nominal_mm=8; class=H7".
func inputs(s string) map[string]string {
	out := map[string]string{}
	for _, part := range strings.Split(s, ";") {
		k, v, _ := strings.Cut(strings.TrimSpace(part), "=")
		out[k] = v
	}
	return out
}

// answer works a row of the check file through the public calls.
func answer(t *testing.T, l *Limits, quantity string, in map[string]string) decimal.Decimal {
	t.Helper()
	mm := func(keys ...string) dim.Length {
		for _, k := range keys {
			if in[k] != "" {
				return dim.Must(in[k])
			}
		}
		t.Fatalf("none of %v in %v", keys, in)
		return dim.Length{}
	}
	must := func(err error) {
		if err != nil {
			t.Fatal(err)
		}
	}
	what, _, _ := strings.Cut(quantity, " of ")
	upper := strings.HasPrefix(quantity, "upper") || strings.HasPrefix(quantity, "maximum")
	pick := func(low, high decimal.Decimal) decimal.Decimal {
		if upper {
			return high
		}
		return low
	}
	switch {
	case in["nominal_in"] != "":
		f, err := l.Inch(dim.OfInch(decimal.RequireFromString(in["nominal_in"])), in["fit"])
		must(err)
		switch {
		case strings.Contains(quantity, "interference"):
			return pick(f.MinInterference(), f.MaxInterference())
		case strings.Contains(quantity, "clearance"):
			return pick(f.MinClearance, f.MaxClearance)
		}
		return pick(f.ShaftLower, f.ShaftUpper)
	case what == "standard tolerance" || in["grade"] != "":
		g, err := l.Grade(mm("nominal_mm", "bush_OD_mm"), in["grade"])
		must(err)
		return g.Um
	case strings.HasSuffix(quantity, "reamer diameter"):
		low, high, err := l.Reamer(mm("hole_nominal_mm"), in["hole_class"])
		must(err)
		return pick(low.MM(), high.MM())
	case in["fit"] != "" || in["housing"] != "":
		pair := in["fit"]
		if pair == "" {
			pair = in["housing"] + "/" + in["OD_class"]
		}
		f, err := l.Fit(mm("nominal_mm", "bush_OD_mm"), pair)
		must(err)
		if strings.Contains(quantity, "interference") {
			return pick(f.MinInterferenceUm(), f.MaxInterferenceUm())
		}
		return pick(f.MinClearanceUm, f.MaxClearanceUm)
	}
	class := in["class"]
	if class == "" {
		class = in["class_after_fitting"]
	}
	d, err := l.Class(mm("nominal_mm", "bush_bore_mm", "bush_length_mm"), class)
	must(err)
	if strings.Contains(quantity, "(upper)") || strings.Contains(quantity, "plus or minus") {
		return d.UpperUm
	}
	return pick(d.LowerUm, d.UpperUm)
}

// TestPublishedFits holds every row of checks/fits.csv, exactly; the row names
// where it is printed.
func TestPublishedFits(t *testing.T) {
	l := builtIn(t)
	rows := testdata.Rows[map[string]string](t, "checks/fits.csv")
	if len(rows) != 129 {
		t.Errorf("%d rows, want 129", len(rows))
	}
	for _, row := range rows {
		t.Run(row["id"], func(t *testing.T) {
			got := answer(t, l, row["quantity"], inputs(row["inputs"]))
			if want := decimal.RequireFromString(row["expected"]); !got.Equal(want) {
				t.Errorf("%s, %s: got %s %s, published %s (%s)", row["quantity"], row["inputs"], got, row["unit"], want, row["source"])
			}
		})
	}
}

// TestPublishedReaming holds the H7 reamer limits and the h8 drill tolerances
// of the reaming check file, at the top of each range and just over its foot.
func TestPublishedReaming(t *testing.T) {
	l := builtIn(t)
	n := 0
	for _, row := range testdata.Rows[map[string]string](t, "checks/reaming.csv") {
		over, upTo := row["d_over_mm"], row["d_to_mm"]
		if over == "" {
			over = "0.9"
		}
		low, high := row["low_mm_or_factor"], row["high_mm_or_factor"]
		for _, d := range []dim.Length{dim.Must(over).Add(dim.Must("0.01")), dim.Must("0").Add(dim.OfMM(safe(upTo)))} {
			switch row["quantity"] {
			case "reamer_diameter_limits_for_H7":
				n++
				lo, hi, err := l.Reamer(d, "H7")
				if err != nil || !lo.Sub(d).Equal(dim.Must(low)) || !hi.Sub(d).Equal(dim.Must(high)) {
					t.Errorf("%s: %s to %s, %v; published +%s +%s (%s)", d, lo, hi, err, low, high, row["source"])
				}
			case "drill_diameter_minus_tolerance_h8":
				n++
				c, err := l.Class(d, "h8")
				if err != nil || !c.LowerUm.Neg().Equal(dim.Must(high).Um()) || !c.UpperUm.IsZero() {
					t.Errorf("%s h8: %s, %v; published -%s (%s)", d, c.LowerUm, err, high, row["source"])
				}
			}
		}
	}
	if n != 20 {
		t.Errorf("%d figures, want 20", n)
	}
}

func safe(s string) decimal.Decimal {
	d, err := decimal.NewFromString(s)
	if err != nil {
		return decimal.Zero
	}
	return d
}
