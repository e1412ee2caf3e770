package say_test

import (
	"testing"

	"rebush/fits/dim"
	"rebush/fits/say"
)

// At the bench a force has what scales show beside it, or in inches stands as
// that alone; where a press is stopped it is rounded down; a micrometre is a
// thousandth of a millimetre, and a torque in inches is in inch ounces. Each is
// worked out from the exact value, once: 478 / 9.80665 is 48.74, / 4.44822 is
// 107.46; 319 / 9.80665 is 32.53; 11.4 / 25.4 / 4.44822 x 16 is 1.61.
func TestBench(t *testing.T) {
	halt := say.F("HALT at %v; expect %v", say.Num(478, 0, "N").Halts(), say.Row(0, "N", " to ", 23, 319))
	for _, c := range []struct {
		text           say.Text
		mm, inch, both string
	}{
		{halt, "HALT at 478 N (48 kg); expect 23 to 319 N (2.3 to 33 kg)", "HALT at 107 lb; expect 5.2 to 72 lb",
			"HALT at 478 N (48 kg, 107 lb); expect 23 to 319 N (2.3 to 33 kg, 5.2 to 72 lb)"},
		{say.F("(pulls with %v)", say.Force(9.96, "N")), "(pulls with 10 N, 1 kg)", "(pulls with 2.2 lb)",
			"(pulls with 10 N, 1 kg, 2.2 lb)"},
		{say.F("needs %v turning", say.Force(11.4, "N mm")), "needs 11 N mm turning", "needs 1.6 in oz turning",
			"needs 11 N mm turning"},
		{say.F("do not prove %v", say.Um(8.26, 0)), "do not prove 0.008 mm", "do not prove 0.3 thou",
			"do not prove 0.008 mm (0.3 thou)"},
		{say.F("%v over %v", say.Um(37.04, 0).Apart(37.06), say.Um(37.06, 0).Apart(37.04)),
			"0.0370 mm over 0.0371 mm", "1.458 thou over 1.459 thou",
			"0.0370 mm (1.458 thou) over 0.0371 mm (1.459 thou)"},
		{say.Row(0, "um", " to ", 15, 45).Text(), "0.015 to 0.045 mm", "0.6 to 1.8 thou", "0.015 to 0.045 mm (0.6 to 1.8 thou)"},
		{say.MM(1.2, 2).Text(), "1.20 mm", "0.0472 in", "1.20 mm (0.0472 in)"},
	} {
		for u, want := range map[dim.Units]string{dim.InMM: c.mm, dim.InInch: c.inch, dim.InBoth: c.both} {
			if got := c.text.In(say.Bench(u)); got != want {
				t.Errorf("%v: %q, want %q", u, got, want)
			}
		}
		if got := c.text.In(dim.InMM); got != c.text.String() {
			t.Errorf("%q is not %q", got, c.text)
		}
	}
}
