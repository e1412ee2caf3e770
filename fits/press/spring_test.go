package press_test

import (
	"math"
	"testing"

	"rebush/fits/press"
	"rebush/testdata/own"
)

// TestSpring: a bush 4/6 that flows at 80 in a zinc ring of 24, pressed in by
// 0.030. By hand: it flows at 80 x 2/6 = 26.667 MPa; the interference for each
// MPa is 6 x (((1+1/16)/(1-1/16) + 0.3)/85500 + (2.6 - 0.34)/100000) = 2.36185e-4
// mm; so 0.0062983 springs back, and with 9.4e-6/K between the metals it comes
// loose at 20 + 0.0062983/(6 x 9.4e-6) = 131.67 C. All of the 0.030 would say
// 551.9. The ring of elements, pressed in and let go again, springs back by what
// the pressure expected says.
func TestSpring(t *testing.T) {
	s := bush46(80)
	st := s.At(0.030)
	for _, c := range []struct {
		what              string
		got, want, within float64
	}{
		{"springs back", st.Spring, 0.0062983, 1e-7},
		{"elastic springs back", s.At(0.005).Spring, 0.005, 1e-12},
	} {
		if math.Abs(c.got-c.want) > c.within {
			t.Errorf("%s %v, by hand %v", c.what, c.got, c.want)
		}
	}
	loose, _ := press.Warm{D: 6, U20: st.Spring, HousingExp: 27.4, BushExp: 18}.LooseAt()
	if math.Abs(loose-131.67) > 0.01 {
		t.Errorf("comes loose at %v, by hand 131.67", loose)
	}
	f := own.Flow{Bore: 2, Seat: 3, Edge: 12, BushE: bronze.E, BushNu: bronze.Nu, Yield: 80, E: zinc.E, Nu: zinc.Nu,
		Interference: 0.030, Rings: 20, Steps: 20}
	of := f.Springs()
	if expected := s.InterferenceFor(st.PMid); math.Abs(of/expected-1) > 0.02 || of < st.Spring {
		t.Errorf("elements spring back by %v, expected %v, at least %v", of, expected, st.Spring)
	}
}
