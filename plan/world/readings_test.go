package world

import (
	"math"
	"strings"
	"testing"

	"rebush/plan/job"
)

// spread gathers errors in units of the doubt that was stated for them.
type spread struct{ n, sum, squares float64 }

func (s *spread) add(z float64) { s.n, s.sum, s.squares = s.n+1, s.sum+z, s.squares+z*z }

// holds says whether the errors are as wide as they were said to be: mean and
// spread within a tenth of the doubt, or within what so few readings scatter.
func (s *spread) holds(t *testing.T, what string, least float64) {
	t.Helper()
	if s.n < least {
		t.Errorf("%s: only %g readings", what, s.n)
		return
	}
	mean, rms := s.sum/s.n, math.Sqrt(s.squares/s.n)
	within := math.Max(0.1, 2.5/math.Sqrt(s.n))
	if math.Abs(mean) > within || math.Abs(rms-1) > math.Max(0.1, within/math.Sqrt2) {
		t.Errorf("%s: %g readings err by %.3f of their doubt in the mean and %.3f in the spread", what, s.n, mean, rms)
	}
}

// doubtsOf tells how well the instrument that read a figure reads, and how far it
// reads too large; 0 where none is named.
func doubtsOf(j *job.Job) func(b job.Bore, figure string) (u, bias float64) {
	return func(b job.Bore, figure string) (u, bias float64) {
		for _, in := range j.Shop.Instruments {
			if strings.EqualFold(in.Name, b.With[figure]) {
				return in.U.Float(), in.Bias.Float()
			}
		}
		return 0, 0
	}
}

// TestReadings: figures that a named instrument read lie round the truth as
// wide as the shop says, less the bias that it says; four walls and points too.
func TestReadings(t *testing.T) {
	centre, widest, biased, walls, points := &spread{}, &spread{}, &spread{}, &spread{}, &spread{}
	for seed := range uint64(600) {
		w := Truck(seed, Options{})
		j := reading(t, w)
		doubt := doubtsOf(j)
		for _, shaft := range j.Shafts {
			for _, b := range shaft.Bores {
				truth := w.Truth.Bore(b.Name)
				if u, _ := doubt(b, "centre"); u > 0 && b.Centre.Given() {
					middle, at := truth.Hole.Middle(), b.Centre.Float()
					centre.add((at[0] - middle[0]) / u)
					centre.add((at[1] - middle[1]) / u)
				}
				if u, bias := doubt(b, "widest"); u > 0 && b.Widest.Given() && truth.Hole.Depth > 0.05 {
					wide, _ := truth.Hole.Widest()
					z := (b.Widest.Float() - wide - bias) / u
					if widest.add(z); bias != 0 {
						biased.add(z)
					}
				}
				if u, _ := doubt(b, "walls"); u > 0 && b.Walls != nil {
					walls.add((b.Walls[2].Float() - truth.Hole.Old[1] + truth.Hole.Support(270)) / u)
				}
				if u, _ := doubt(b, "probed"); u > 0 {
					for _, p := range b.Probed {
						at := Point(p.Float())
						deg := math.Atan2(at[1]-truth.Hole.Old[1], at[0]-truth.Hole.Old[0]) * 180 / math.Pi
						points.add((truth.Hole.Old.To(at) - truth.Hole.Wall(deg, b.Stylus.Float()/2)) / u)
					}
				}
			}
		}
	}
	centre.holds(t, "centres", 500)
	widest.holds(t, "widest", 150)
	biased.holds(t, "widest by an instrument with a bias", 40)
	walls.holds(t, "walls", 50)
	points.holds(t, "points", 500)
}

// TestPins: the pins that go and stop bracket the narrowest diameter, within
// four doubts of the pin.
func TestPins(t *testing.T) {
	n := 0
	for seed := range uint64(300) {
		w := Truck(seed, Options{})
		if !w.Has("measured by pins") && !w.Has("measured by four walls") {
			continue
		}
		for _, shaft := range reading(t, w).Shafts {
			for _, b := range shaft.Bores {
				if !b.PinGoes.Given() {
					continue
				}
				n++
				narrow, _ := w.Truth.Bore(b.Name).Hole.Narrowest()
				low, high := b.PinGoes.Float(), b.PinStops.Float()
				if narrow < low-0.007 || narrow > high+0.007 || high-low > 0.03 {
					t.Errorf("truck %d: %s is %.4f, pins say %.4f to %.4f", seed, b.Name, narrow, low, high)
				}
			}
		}
	}
	if n < 30 {
		t.Errorf("only %d holes were tried with pins", n)
	}
}
