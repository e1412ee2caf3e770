package press_test

import (
	"math"
	"regexp"
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

var (
	named    = regexp.MustCompile(`\b([A-Za-z_]\w*)=(\d+(?:\.\d+)?(?:[eE][+-]?\d+)?)`)
	otherRow = regexp.MustCompile(`as (PF-[\w.-]+)`)
	alphasOf = regexp.MustCompile(`housing alpha ([\d.e-]+) bush alpha ([\d.e-]+)`)
	endC     = regexp.MustCompile(`(-?\d+) C$`)
)

func num(s string) float64 {
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return math.NaN()
	}
	return x
}

// inputs is the text of a row taken apart.
type inputs struct {
	text string
	by   map[string][]float64
}

func take(text string) inputs {
	in := inputs{text: text, by: map[string][]float64{}}
	for _, g := range named.FindAllStringSubmatch(text, -1) {
		in.by[g[1]] = append(in.by[g[1]], num(g[2]))
	}
	return in
}

// get is the i-th figure under any of the names, or the last one there is.
func (in inputs) get(i int, otherwise float64, names ...string) float64 {
	for _, n := range names {
		if v := in.by[n]; len(v) > 0 {
			return v[min(i, len(v)-1)]
		}
	}
	return otherwise
}

// seat is the press that a row speaks of.
func (in inputs) seat(t *testing.T) (press.Seat, float64) {
	t.Helper()
	s, u, err := checked.PressOf(in.text)
	if err != nil {
		t.Fatalf("%s: %v", in.text, err)
	}
	return s, u
}
