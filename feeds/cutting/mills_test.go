package cutting

import "testing"

// A 4 mm cutter has flutes of 11 mm and a shank of 6, so that it does not go
// through a box 16 mm wide: DIN 327-1 short, from memory.
func TestShortMill(t *testing.T) {
	c := newCutting(t)
	for _, w := range []struct{ d, flute, shank float64 }{{4, 11, 6}, {3.175, 11, 6}, {6, 13, 6}, {6.35, 19, 8}, {20, 38, 20}} {
		if f, s, ok := c.ShortMill(w.d); !ok || f != w.flute || s != w.shank {
			t.Errorf("%v mm: flutes %v, shank %v, %v; want %v and %v", w.d, f, s, ok, w.flute, w.shank)
		}
	}
	for _, d := range []float64{0, -1, 20.1} {
		if _, _, ok := c.ShortMill(d); ok {
			t.Errorf("%v mm is in no row and was answered", d)
		}
	}
}
