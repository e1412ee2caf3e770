package dim

import (
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"rebush/testdata"
)

func TestParse(t *testing.T) {
	for _, c := range []struct {
		in   string
		bare Unit
		mm   string
	}{
		{"3.2", MM, "3.2"}, {"3.20 mm", Inch, "3.2"}, {"3.2mm", MM, "3.2"}, {"3,2", MM, "3.2"},
		{"3,020 mm", MM, "3.02"}, {".125", Inch, "3.175"}, {"0.126 in", MM, "3.2004"},
		{`0.126"`, MM, "3.2004"}, {"0.126″", MM, "3.2004"}, {"0.126 inch", MM, "3.2004"},
		{"1/8 in", MM, "3.175"}, {"1/8", MM, "3.175"}, {`1/8"`, MM, "3.175"}, {"1 1/8 in", MM, "28.575"},
		{"1-1/8 in", MM, "28.575"}, {"1⅛ in", MM, "28.575"}, {"½", MM, "12.7"}, {"1/128", MM, "0.1984375"},
		{"1/2 mm", MM, "0.5"}, {"-1/8", MM, "-3.175"}, {"-1 1/8", MM, "-28.575"}, {"-0.5", MM, "-0.5"},
		{"−0.5", MM, "-0.5"}, {"+0.5", MM, "0.5"}, {"5 thou", MM, "0.127"}, {"5 um", MM, "0.005"},
		{"5 µm", MM, "0.005"}, {"5 μm", Inch, "0.005"}, {"#31", MM, "3.048"}, {"no 31", MM, "3.048"},
		{"No. 31", MM, "3.048"}, {"no.31", Inch, "3.048"}, {"# 31", MM, "3.048"}, {"#031", MM, "3.048"},
		{"31", MM, "31"}, {"31", Inch, "787.4"}, {"F", MM, "6.5278"}, {"f", MM, "6.5278"},
		{"letter F", MM, "6.5278"}, {"0", MM, "0"}, {"3.", MM, "3"}, {" 3.2 ", MM, "3.2"},
	} {
		got, err := Parse(c.in, c.bare)
		if err != nil {
			t.Errorf("Parse(%q): %v", c.in, err)
			continue
		}
		if want := decimal.RequireFromString(c.mm); !got.MM().Equal(want) || !got.Given() {
			t.Errorf("Parse(%q) = %s mm, want %s", c.in, got.MM(), want)
		}
		if got.Typed() != strings.TrimSpace(c.in) {
			t.Errorf("Parse(%q) typed %q", c.in, got.Typed())
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for in, says := range map[string]string{
		"":          "no length",
		"  ":        "no length",
		"3.2.1":     "did you mean 3.2?",
		"3.2 mmm":   "did you mean 3.2 mm?",
		"about 3":   "did you mean 3?",
		"1,234.5":   "did you mean 1,234?",
		"1.5 cm":    "write 15 mm",
		"1.5 m":     "write 1500 mm",
		"1 ft":      "write 12 in",
		"5 mil":     "write 5 thou or 5 mm",
		"1e400":     "write the figure out",
		"1e-3 mm":   "write the figure out",
		"NaN":       "is not a length; write",
		"Inf":       "is not a length; write",
		"-Inf":      "is not a length; write",
		"mm":        "is not a length; write",
		"-":         "is not a length; write",
		".":         "is not a length; write",
		"1/3":       "the nearest is 21/64 in",
		"1/0":       "divides by nothing",
		"1/256":     "128ths",
		"1 9/8":     "less than 1",
		"#98":       "there is no drill #98",
		"#0":        "there is no drill #0",
		"no":        "is not a length",
		"١":         "is not a length",
		"3 2":       "did you mean 3?",
		"0x10":      "did you mean 0?",
		"5 furlong": "did you mean 5?",
	} {
		got, err := Parse(in, MM)
		if err == nil {
			t.Errorf("Parse(%q) = %s, want an error", in, got)
			continue
		}
		if !strings.Contains(err.Error(), says) {
			t.Errorf("Parse(%q): %q does not say %q", in, err, says)
		}
		if got.Given() {
			t.Errorf("Parse(%q): an error and a length", in)
		}
	}
	if _, err := Parse(strings.Repeat("9", 500), MM); err == nil || len(err.Error()) > 200 {
		t.Errorf("500 digits: %v", err)
	}
}

// TestTranscriptionNamedDrills is a transcription check: number and letter
// drills read as their rows were copied.
func TestTranscriptionNamedDrills(t *testing.T) {
	n := 0
	for _, r := range testdata.Rows[map[string]string](t, "transcription/drills.csv") {
		if r["series"] != "number" && r["series"] != "letter" {
			continue
		}
		n++
		got, err := Parse(r["name"], MM)
		if err != nil || !got.MM().Equal(decimal.RequireFromString(r["inch"]).Mul(mmPerInch)) {
			t.Errorf("%s: %s, %v; copied %s in", r["name"], got, err, r["inch"])
		}
	}
	if n != 97+26 {
		t.Errorf("%d rows, want 123", n)
	}
}

func anyLength() *rapid.Generator[Length] {
	return rapid.Custom(func(t *rapid.T) Length {
		d := decimal.New(rapid.Int64Range(-1e15, 1e15).Draw(t, "units"), -rapid.Int32Range(0, 12).Draw(t, "places"))
		if rapid.Bool().Draw(t, "inch") {
			return OfInch(d)
		}
		return OfMM(d)
	})
}

func TestPrintThenParse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLength().Draw(t, "length")
		for _, bare := range []Unit{MM, Inch} {
			got, err := Parse(l.String(), bare)
			if err != nil || !got.Equal(l) {
				t.Fatalf("%s came back as %s, %v", l, got, err)
			}
		}
	})
}

func TestFractionThenParse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		den := 1 << rapid.IntRange(0, 7).Draw(t, "power")
		l := OfInch(decimal.NewFromInt(rapid.Int64Range(-5000, 5000).Draw(t, "top")).Mul(exactInverse(den)))
		name, exact := l.NearestFraction(den)
		got, err := Parse(name, MM)
		if err != nil || !got.Equal(l) || !exact.Equal(l) {
			t.Fatalf("%s is named %q (%s), read back as %s, %v", l, name, exact, got, err)
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"3.2", "3,2 mm", ".125", `0.126"`, "1 1/8 in", "5 thou", "#31", "No. 31", "F", "1e400", "NaN", "-", "½", "1/3", "3.2.1", "'': 5"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for _, bare := range []Unit{MM, Inch} {
			l, err := Parse(s, bare)
			if (err == nil) != l.Given() {
				t.Fatalf("Parse(%q) = %v given %v, %v", s, l, l.Given(), err)
			}
			if err != nil {
				continue
			}
			back, err := Parse(l.String(), bare)
			if err != nil && len(l.String()) <= maxTyped {
				t.Fatalf("Parse(%q) prints %q, which is refused: %v", s, l, err)
			}
			if err == nil && !back.Equal(l) {
				t.Fatalf("Parse(%q) prints %q, read back as %s", s, l, back)
			}
		}
	})
}
