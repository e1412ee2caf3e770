package seat

import "testing"

// TestNoMetalLeft: where a seat would break out of the edge nothing is seated,
// whatever a shop's rules ask for: pressed or with compound.
func TestNoMetalLeft(t *testing.T) {
	for _, hold := range []string{"press", "compound"} {
		for _, left := range []float64{0.3, 1e-12, 0, -0.4} {
			s := scenery(t)
			if hold == "compound" {
				s.slip()
			}
			s.r.LeastWall, s.r.NoWall, s.r.LightWall = -1, -1, -1
			s.h.Edge = s.w.High/2 + left
			a := s.only(t)
			if got := a.Fail.What == wallTooThin || a.Fail.What == wallTooThinForPress; got != (left <= 1e-9) {
				t.Errorf("%s, %v mm left: %v", hold, left, a.Fail)
			}
		}
	}
}
