package dim

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// The inches here are worked out by hand from the 25.4 mm of an inch, which
// stand in the comment of the package.
func TestInWords(t *testing.T) {
	for _, c := range []struct{ mm, in, both string }{
		{"expect 25.4 mm across", "expect 1.0000 in across", "expect 25.4 mm (1.0000 in) across"},
		{"Bush measures 5.005 to 5.012 mm, no burr.", "Bush measures 0.1970 to 0.1973 in, no burr.", "Bush measures 5.005 to 5.012 mm (0.1970 to 0.1973 in), no burr."},
		{"washers of 38 or 40 mm", "washers of 1.4961 or 1.5748 in", "washers of 38 or 40 mm (1.4961 or 1.5748 in)"},
		{"x 10.003 mm, y -5.928 mm", "x 0.3938 in, y -0.2334 in", "x 10.003 mm (0.3938 in), y -5.928 mm (-0.2334 in)"},
		{"clear it at 3.0, 5.5 mm", "clear it at 0.1181, 0.2165 in", "clear it at 3.0, 5.5 mm (0.1181, 0.2165 in)"},
		{"gear 2, 5.6 mm off", "gear 2, 0.2205 in off", "gear 2, 5.6 mm (0.2205 in) off"},
		{"(about 3.16 mm)", "(about 0.1244 in)", "(about 3.16 mm, 0.1244 in)"},
		{"about 80 mm long", "about 3.15 in long", "about 80 mm (3.15 in) long"},
		{"interference 7 to 26 um", "interference 0.3 to 1.0 thou", "interference 7 to 26 um (0.3 to 1.0 thou)"},
		{"from 4 to 22 um, by 1 um", "from 0.2 to 0.9 thou, by 0.04 thou", "from 4 to 22 um (0.2 to 0.9 thou), by 1 um (0.04 thou)"},
		{"0.001 mm", "0.00004 in", "0.001 mm (0.00004 in)"},
		{"5.001 to 5.002 mm", "0.19689 to 0.19693 in", "5.001 to 5.002 mm (0.19689 to 0.19693 in)"},
		{"about 0.051 mm a turn (253 mm a minute)", "about 0.0020 in a turn (10.0 in a minute)", "about 0.051 mm (0.0020 in) a turn (253 mm, 10.0 in a minute)"},
		{"open with the 4.85 mm drill by 0.3 mm", "open with the 4.85 mm drill by 0.0118 in", "open with the 4.85 mm drill by 0.3 mm (0.0118 in)"},
		{"7/32 in reamer, 5 mm deep", "7/32 in reamer, 0.1969 in deep", "7/32 in reamer, 5 mm (0.1969 in) deep"},
		{"5 mm H7 reamer leaves 0.2 mm", "5 mm H7 reamer leaves 0.0079 in", "5 mm H7 reamer leaves 0.2 mm (0.0079 in)"},
		{"leaves 0.41 mm at the edge, needs 1.25 for any seat", "leaves 0.0161 in at the edge, needs 0.0492 in for any seat", "leaves 0.41 mm (0.0161 in) at the edge, needs 1.25 mm (0.0492 in) for any seat"},
		{"from 3 um, needs more than 9", "from 0.1 thou, needs more than 0.4 thou", "from 3 um (0.1 thou), needs more than 9 um (0.4 thou)"},
		{"runs from 10.1 to 10.3 mm, wanted 10.2 to 10.4", "runs from 0.3976 to 0.4055 in, wanted 0.4016 to 0.4094 in", "runs from 10.1 to 10.3 mm (0.3976 to 0.4055 in), wanted 10.2 to 10.4 mm (0.4016 to 0.4094 in)"},
		{"slip bush 25.4 mm", "slip bush 1.0000 in", "slip bush 25.4 mm (1.0000 in)"},
		{"moved by +0.02 mm", "moved by +0.0008 in", "moved by +0.02 mm (+0.0008 in)"},
		{"x 0 mm", "x 0.0000 in", "x 0 mm (0.0000 in)"},
	} {
		if got := InWords(c.mm, InMM); got != c.mm {
			t.Errorf("mm: %q became %q", c.mm, got)
		}
		if got := InWords(c.mm, InInch); got != c.in {
			t.Errorf("in: %q became %q, want %q", c.mm, got, c.in)
		}
		if got := InWords(c.mm, InBoth); got != c.both {
			t.Errorf("both: %q became %q, want %q", c.mm, got, c.both)
		}
	}
}

func TestInWordsLeaves(t *testing.T) {
	for _, s := range []string{
		"4.85 mm drill (to buy)", "5 mm H7 reamer", "4.5 mm end mill", "sizing mandrel 2.41 mm, one stroke", "mandrel 2.41, then 2.43 mm",
		"pin 5.00 goes, pin 5.02 does not", "#27 drill", "7/32 in reamer", "6 mm hand reamer", "the 2.41 mm mandrel", "on 12 mm bar",
		"52 to 405 N; HALT at 600 N, 71 MPa", "holds 12.5 N mm at 30 MPa", "holds 0.0 N along, needs 10; holds 0.0 N mm turning, needs 1.6", "bush 4 mm pulls with 200 MPa, at most 150",
		"210 N/mm^2", "40 mm^2", "3 mm² left", "2 mm/kg",
		`"3 mm hole" and "b 2 mm"`, "the 4 mm frame hole", "M2.5 screw", "72 degrees, 3 mmm", "a5 mm", "",
	} {
		for _, u := range []Units{InInch, InBoth} {
			if got := InWords(s, u, "4 mm frame hole", ""); got != s {
				t.Errorf("%q became %q", s, got)
			}
		}
	}
}

func TestInWordsRoundsToNearest(t *testing.T) {
	half := decimal.RequireFromString("0.00005")
	rapid.Check(t, func(t *rapid.T) {
		mm := decimal.New(rapid.Int64Range(-200000, 200000).Draw(t, "um"), -3)
		words := "leaves " + mm.String() + " mm there"
		got := InWords(words, InInch)
		var s string
		if n, err := fmt.Sscanf(got, "leaves %s in there", &s); n != 1 || err != nil {
			t.Fatalf("%q became %q", words, got)
		}
		// |inches * 25.4 - mm| is at most half a place * 25.4: no division here.
		off := decimal.RequireFromString(s).Mul(mmPerInch).Sub(mm).Abs()
		if off.GreaterThan(half.Mul(mmPerInch)) || !mm.IsZero() && strings.Trim(s, "-0.") == "" {
			t.Fatalf("%s mm became %s in, off by %s mm", mm, s, off)
		}
		both := InWords(words, InBoth)
		if !strings.HasPrefix(both, strings.TrimSuffix(words, " there")) || !strings.Contains(both, "("+s+" in)") {
			t.Fatalf("%q became %q", words, both)
		}
	})
}

// Text without a length stays to the letter, and what was put into units once
// stays when it is put into them again.
func TestInWordsLeavesOtherText(t *testing.T) {
	length := regexp.MustCompile(`\d (mm|um)`)
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringMatching(`([a-z0-9.,;:() "/#-]{0,12}( mm| um| in| N|mm|"| drill| to )){0,5}`).Draw(t, "text")
		for _, u := range []Units{InMM, InInch, InBoth} {
			got := InWords(s, u)
			if (u == InMM || !length.MatchString(s)) && got != s {
				t.Fatalf("%q became %q", s, got)
			}
			if again := InWords(got, u); again != got {
				t.Fatalf("%q became %q, then %q", s, got, again)
			}
		}
	})
}
