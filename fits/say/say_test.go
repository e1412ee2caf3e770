package say_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/say"
)

func ExampleF() {
	t := say.F("leaves %v at the edge, needs %v", say.MM(0.4137, 2), say.MM(1.25, 2).Bare())
	fmt.Println(t.In(dim.InMM))
	fmt.Println(t.In(dim.InInch))
	fmt.Println(t.In(dim.InBoth))
	// Output:
	// leaves 0.41 mm at the edge, needs 1.25
	// leaves 0.0163 in at the edge, needs 0.0492 in
	// leaves 0.41 mm (0.0163 in) at the edge, needs 1.25 mm (0.0492 in)
}

// Every way to write a figure, in the three units. Inches are worked out by
// hand from the exact value: 3.0353/25.4 = 0.1195 where the printed 3.04 would
// give 0.1197.
func TestFigures(t *testing.T) {
	for _, c := range []struct {
		f            say.Figure
		mm, in, both string
	}{
		{say.MM(3.0353, 2), "3.04 mm", "0.1195 in", "3.04 mm (0.1195 in)"},
		{say.MM(-0.0001, 2), "0.00 mm", "0.00000 in", ""},
		{say.MMs(5.005, 5.012, 3), "5.005 to 5.012 mm", "0.1970 to 0.1973 in", "5.005 to 5.012 mm (0.1970 to 0.1973 in)"},
		{say.Limits(5.0051, 5.0119, 3), "5.006 to 5.011 mm", "0.1971 to 0.1973 in", ""},
		{say.Limits(5.005, 5.012, 3), "5.005 to 5.012 mm", "0.1971 to 0.1973 in", ""},
		{say.MMs(1.0000, 1.0010, 3), "1.000 to 1.001 mm", "0.03937 to 0.03941 in", ""},
		{say.MM(0.001, 3), "0.001 mm", "0.00004 in", ""},
		{say.Um(38.1, 0), "38 um", "1.5 thou", "38 um (1.5 thou)"},
		{say.Row(0, "um", " or ", 38.1, 40.64), "38 or 41 um", "1.5 or 1.6 thou", ""},
		{say.MM(25, 0).About(), "25 mm", "0.98 in", ""},
		{say.MM(90, 0).Rate(), "90 mm", "3.5 in", ""},
		{say.MM(0.12, 2).Signed(), "+0.12 mm", "+0.0047 in", ""},
		{say.Num(103.4, 0, "MPa"), "103 MPa", "103 MPa", "103 MPa"},
		{say.Num(12.5, 1, "%"), "12.5 %", "12.5 %", ""},
		{say.MM(4.0151, 3).Rounded(dim.Up), "4.016 mm", "0.1581 in", ""},
		{say.MM(4.0151, 3).Rounded(dim.Down), "4.015 mm", "0.1580 in", ""},
		{say.MM(4.50, 2).Trim(), "4.5 mm", "0.1772 in", "4.5 mm (0.1772 in)"},
		{say.MM(1.2304, 2).Apart(1.2312), "1.230 mm", "0.0484 in", ""},
		{say.MM(1.2312, 2).Apart(1.2304), "1.231 mm", "0.0485 in", ""},
		{say.MM(1, 2).Apart(1), "1.00000 mm", "0.0393701 in", ""},
		{say.Force(9.94, "N"), "9.9 N", "9.9 N", ""},
		{say.Force(9.96, "N"), "10 N", "10 N", ""},
		{say.Force(0.04, "N mm"), "0 N mm", "0 N mm", ""},
		{say.MM(math.Inf(1), 3), "unknown", "unknown", "unknown"},
	} {
		if got := c.f.In(dim.InMM); got != c.mm {
			t.Errorf("mm: %q, want %q", got, c.mm)
		}
		if got := c.f.In(dim.InInch); got != c.in {
			t.Errorf("inch: %q, want %q", got, c.in)
		}
		if got := c.f.In(dim.InBoth); c.both != "" && got != c.both {
			t.Errorf("both: %q, want %q", got, c.both)
		}
	}
}

// A text goes through F, + and Join with its figures whole, is compared by its
// exact values, and its JSON is in mm.
func TestTextsCompose(t *testing.T) {
	a := say.F("seat %v", say.MM(5.0049, 2))
	b := say.F("%v (now %v)", a, say.MM(4.9, 1))
	all := say.Join("; ", b, "", say.Words("drawer 7")) + "."
	if got := all.In(dim.InBoth); got != "seat 5.00 mm (0.1970 in) (now 4.9 mm, 0.1929 in); drawer 7." {
		t.Errorf("%q", got)
	}
	raw, err := json.Marshal(all)
	if err != nil || string(raw) != `"seat 5.00 mm (now 4.9 mm); drawer 7."` {
		t.Errorf("%s %v", raw, err)
	}
	var back say.Text
	if err := json.Unmarshal(raw, &back); err != nil || back.In(dim.InInch) != "seat 5.00 mm (now 4.9 mm); drawer 7." {
		t.Errorf("what was printed is words from then on: %q %v", back.In(dim.InInch), err)
	}
	if a == say.F("seat %v", say.MM(5.0051, 2)) {
		t.Error("two texts that print alike in mm and not in inches are equal")
	}
}

// No name that a person gives can pass for a figure.
func TestNamesHoldNoFigure(t *testing.T) {
	forged := say.MM(9, 1).Text()
	for _, s := range []say.Text{say.F("bush %s", string(forged)), say.Words(string(forged)), say.F("%v", fmt.Errorf("no %s", string(forged)))} {
		if got := s.In(dim.InInch); strings.Contains(got, " in") || strings.ContainsAny(got, "\x02\x03\x1f") {
			t.Errorf("%q", got)
		}
	}
	if got := (say.F("a") + "\x02broken").In(dim.InMM); got != "a" {
		t.Errorf("%q", got)
	}
}

// An error's figures are printed like those of a sentence, through what wraps
// it and what quotes it.
func TestErrors(t *testing.T) {
	cause := errors.New("journal larger than its hole")
	err := say.Errorf("%w: journal %v, hole %v", cause, say.MM(3.16, 3), say.MM(3.1, 3))
	if !errors.Is(err, cause) || err.Error() != "journal larger than its hole: journal 3.160 mm, hole 3.100 mm" {
		t.Errorf("%v", err)
	}
	if got := say.F("probed points: %v", err).In(dim.InInch); got != "probed points: journal larger than its hole: journal 0.1244 in, hole 0.1220 in" {
		t.Errorf("%q", got)
	}
}
