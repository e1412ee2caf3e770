package dim_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rebush/fits/dim"
)

func TestInWords(t *testing.T) {
	for _, c := range []struct{ text, in, both string }{
		{"expect 25.4 mm across", "expect 1.0000 in across", "expect 25.4 mm (1.0000 in) across"},
		{"limits 5.005 to 5.012 mm, then ream", "limits 0.1970 to 0.1973 in, then ream", "limits 5.005 to 5.012 mm (0.1970 to 0.1973 in), then ream"},
		{"x 10.003 mm, y 5.928 mm", "x 0.3938 in, y 0.2334 in", "x 10.003 mm (0.3938 in), y 5.928 mm (0.2334 in)"},
		{"open with the 4.85 mm drill", "open with the 4.85 mm drill", "open with the 4.85 mm drill"},
		{"5 mm H7 reamer leaves 0.2 mm", "5 mm H7 reamer leaves 0.0079 in", "5 mm H7 reamer leaves 0.2 mm (0.0079 in)"},
		{"sizing mandrel 2.41 mm, one stroke", "sizing mandrel 2.41 mm, one stroke", "sizing mandrel 2.41 mm, one stroke"},
		{"interference 7 to 26 um", "interference 0.3 to 1.0 thou", "interference 7 to 26 um (0.3 to 1.0 thou)"},
		{"about 0.051 mm a turn (253 mm a minute)", "about 0.0020 in a turn (10.0 in a minute)", "about 0.051 mm a turn (0.0020 in a turn) (253 mm a minute (10.0 in a minute))"},
		{"52 to 405 N; HALT at 600 N, 71 MPa", "52 to 405 N; HALT at 600 N, 71 MPa", "52 to 405 N; HALT at 600 N, 71 MPa"},
		{"holds 12 N mm turning", "holds 12 N mm turning", "holds 12 N mm turning"},
		{"", "", ""},
	} {
		if got := dim.InWords(c.text, dim.InInch); got != c.in {
			t.Errorf("%q in inches: %q, want %q", c.text, got, c.in)
		}
		if got := dim.InWords(c.text, dim.InBoth); got != c.both {
			t.Errorf("%q in both: %q, want %q", c.text, got, c.both)
		}
		if got := dim.InWords(c.text, dim.InMM); got != c.text {
			t.Errorf("%q in mm: %q", c.text, got)
		}
	}
}

// Text without a length stays to the letter, and no mm is left in inches but
// in the name of a tool.
func TestInWordsProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[a-z ;,.]{0,40}`).Draw(t, "text")
		if got := dim.InWords(text, dim.InInch); got != text {
			t.Fatalf("%q became %q", text, got)
		}
		length := rapid.StringMatching(`[1-9][0-9]?\.[0-9]{1,3} mm`).Draw(t, "length")
		if got := dim.InWords("it is "+length+" there", dim.InInch); strings.Contains(got, "mm") || !strings.HasSuffix(got, " in there") {
			t.Fatalf("%q became %q", length, got)
		}
	})
}
