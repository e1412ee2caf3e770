package say

import (
	"testing"

	"rebush/fits/dim"
)

// A bush of 6.0146 to 6.0234 in a seat of 5.9859 to 6.0064: printed 6.015 to 6.023
// and 5.986 to 6.006, so 0.009 to 0.037 over it by hand, where the true limits are
// 0.0082 to 0.0375. In inches 0.23680 to 0.23714 (0.2368 to 0.2371) and 0.23567 to
// 0.23647 (0.2357 to 0.2364): 0.0004 to 0.0014.
func TestOverIsTheDifferenceOfWhatIsPrinted(t *testing.T) {
	f := Over([2]float64{6.0146, 6.0234}, [2]float64{5.9859, 6.0064}, 3)
	for u, want := range map[dim.Units]string{dim.InMM: "0.009 to 0.037 mm", dim.InInch: "0.0004 to 0.0014 in"} {
		if got := f.In(u); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
		if got := f.Text().In(u); got != want {
			t.Errorf("as text: got %q, want %q", got, want)
		}
	}
	if got := Over([2]float64{5, 5.01}, [2]float64{5.002, 5.012}, 3).String(); got != "0.000 to 0.008 mm" {
		t.Errorf("a bush that may be loose: %q", got)
	}
}
