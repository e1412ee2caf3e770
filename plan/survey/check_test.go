package survey

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

// row is one line of a check file, by column.
type row map[string]string

func (r row) has(col string) bool { return r[col] != "" }

func (r row) num(t testing.TB, col string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(r[col], 64)
	if err != nil {
		t.Fatalf("%s: %s: %v", r["id"], col, err)
	}
	return v
}

func (r row) points(t testing.TB) [][2]float64 {
	t.Helper()
	var pts [][2]float64
	for _, s := range strings.Split(r["points"], ";") {
		f := strings.Fields(s)
		if len(f) != 2 {
			t.Fatalf("%s: point %q", r["id"], s)
		}
		x, err1 := strconv.ParseFloat(f[0], 64)
		y, err2 := strconv.ParseFloat(f[1], 64)
		if err1 != nil || err2 != nil {
			t.Fatalf("%s: point %q", r["id"], s)
		}
		pts = append(pts, [2]float64{x, y})
	}
	return pts
}

func near(t *testing.T, what string, got, want, tol float64) bool {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.9g, want %.9g within %.2g", what, got, want, tol)
		return false
	}
	return true
}
