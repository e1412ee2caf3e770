package world

import (
	"math"
	"testing"
)

// judged is the doubt in degrees of a direction that an eye judges, as the
// planner's rule has it.
const judged = 10

// TestDirections: the side that a hole has worn to, and where it is widest, lie
// round the truth as wide as an eye is said to judge them.
func TestDirections(t *testing.T) {
	worn, widest := &spread{}, &spread{}
	for seed := range uint64(500) {
		w := Truck(seed, Options{Apt: seed%2 == 0})
		for _, shaft := range reading(t, w).Shafts {
			for _, b := range shaft.Bores {
				h := w.Truth.Bore(b.Name).Hole
				if h.Depth < 0.02 {
					continue
				}
				if len(b.WornTo) == 1 && h.Towards[0] == h.Towards[1] {
					worn.add(math.Remainder(b.WornTo[0]-h.Towards[0], 360) / judged)
				}
				if b.WidestAt != nil {
					_, deg := h.Widest()
					widest.add(math.Remainder(*b.WidestAt-deg, 180) / judged)
				}
			}
		}
	}
	worn.holds(t, "sides that holes wore to", 300)
	if rms := math.Sqrt(widest.squares / widest.n); widest.n < 200 || rms > 1.1 || rms < 0.6 {
		t.Errorf("directions of the widest: %g of them err by %.2f of their doubt", widest.n, rms)
	}
}

// TestSizesRead: narrowest diameters, pins apart, and seats lie round the truth
// as wide as their instruments say; what is read smaller than the journal allows
// is measured again, and little is.
func TestSizesRead(t *testing.T) {
	narrowest, seats := &spread{}, &spread{}
	for seed := range uint64(900) {
		w := Truck(seed, Options{})
		j := reading(t, w)
		doubt := doubtsOf(j)
		for _, shaft := range j.Shafts {
			for _, b := range shaft.Bores {
				truth := w.Truth.Bore(b.Name)
				if u, bias := doubt(b, "narrowest"); u > 0 && b.Narrowest.Given() && truth.Hole.Depth > 0.05 {
					low, _ := truth.Hole.Narrowest()
					narrowest.add((b.Narrowest.Float() - low - bias) / u)
				}
				if u, _ := doubt(b, "seat"); u > 0 && b.Seat != nil {
					at := b.Seat.Centre.Float()
					seats.add((at[0] - truth.Centre[0]) / u)
					seats.add((at[1] - truth.Centre[1]) / u)
				}
			}
		}
	}
	narrowest.holds(t, "narrowest", 150)
	seats.holds(t, "middles of old seats", 60)
}
