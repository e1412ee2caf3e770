package main

import (
	"testing"

	"rebush/fits/dim"
)

func TestCoarse(t *testing.T) {
	for f, want := range map[float64]string{11.4631455: "11", 49.54: "50", 7.2: "7.2", 5.09508693: "5.1", 9.96: "10",
		0.995: "1", 0.0312: "0.03", 405.067: "405", 0: "0", -0.001: "0", -27.6: "-28", 40: "40"} {
		if got := coarse(f); got != want {
			t.Errorf("%v: %s, want %s", f, got, want)
		}
	}
}

// TestExactly: what was given stands as it is, a result to four digits, a
// length to a tenth of a micrometre.
func TestExactly(t *testing.T) {
	for _, c := range []struct {
		f     float64
		unit  string
		given bool
		want  string
	}{
		{49.5415385, "MPa", false, "49.54"}, {85500, "MPa", true, "85500"}, {25.9999999999998, "um", false, "26"},
		{3.1750000000000003, "mm", true, "3.175"}, {0.0797666324, "mm", false, "0.0798"},
		{0.00012, "-", false, "0.00012"}, {-0.00001, "mm", false, "0"},
	} {
		if got := exactly(c.f, c.unit, c.given); got != c.want {
			t.Errorf("%v %s: %s, want %s", c.f, c.unit, got, c.want)
		}
	}
}

// TestMicrometres: 25.4 um are a thousandth of an inch, by definition.
func TestMicrometres(t *testing.T) {
	for u, want := range map[dim.Units]string{dim.InMM: "-13 to 25 um", dim.InInch: "-0.5 to 1.0 thou",
		dim.InBoth: "-13 to 25 um (-0.5 to 1.0 thou)"} {
		if got := micrometres(-12.7, 25.4, u); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}
