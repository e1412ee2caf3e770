package press_test

import (
	"math"
	"strconv"
	"testing"

	"rebush/fits/press"
	"rebush/fits/table"
	"rebush/plan/checked"
	"rebush/testdata"
)

// TestRows: every row, printed, remembered or our own, comes out within its own
// tolerance. Where the bush flows the figure lies inside the span.
func TestRows(t *testing.T) {
	figures := checked.Of("pressfit.csv", testdata.All[checked.Row](t, "pressfit.csv"), table.BuiltIn())
	if len(figures) < 60 {
		t.Errorf("%d figures, want 60", len(figures))
	}
	for _, f := range figures {
		if want := num(f.Expected); !f.Agrees() || f.Low != f.High && !(f.Low <= want && want <= f.High) {
			t.Error(f)
		}
	}
}

func num(s string) float64 {
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return math.NaN()
	}
	return x
}

// seatOf is the press that a row speaks of.
func seatOf(t *testing.T, in checked.PressText) (press.Seat, float64) {
	t.Helper()
	s, u, err := in.Seat()
	if err != nil {
		t.Fatalf("%v: %v", in, err)
	}
	return s, u
}
