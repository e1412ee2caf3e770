package seat

import "testing"

// A bush turned for a bored seat gets a wall of 0.6 mm: by hand 3.16 + 0.03 of
// bore and 1.2 make 4.39, bored to the next tenth, 4.4; the wear wants 3.72 only.
// Where the metal at the edge does not stand that, 0.5 mm: 4.19, bored to 4.2. A
// thin one comes behind all others, however likely they are.
func TestGoodWallFirst(t *testing.T) {
	s := scenery(t)
	s.b = Bush{Code: "own turning", Turned: true, Metal: solid, OnHand: -1}
	s.w = Way{Kind: BoringHead, Name: "boring head", Low: 3, High: 20}
	s.shop.Compound = false
	a := s.only(t)
	if !a.Feasible {
		t.Fatal(a.Fail.Text())
	}
	near(t, "good wall", []float64{a.SeatLow, a.SeatHigh}, []float64{4.39, 4.41})
	if a.thin {
		t.Errorf("a wall of %v is called thin", a.BushWall())
	}
	s.h.Edge, s.shop.Compound = 2.205+0.49, true // 0.5 is wanted beside any seat, and is not there beside 4.41
	a = s.only(t)
	if !a.Feasible || !a.thin {
		t.Fatal(a.Fail.Text())
	}
	near(t, "thin wall", []float64{a.SeatLow, a.SeatHigh}, []float64{4.19, 4.21})

	// Beside a bush of the drawer that is less likely by far it comes last.
	r := s.r
	drawer := Answer{Bush: Bush{Code: "drawer"}, Chance: 0.3, Mend: Rebush}
	list := []Answer{a, drawer}
	list[0].Chance = 0.99
	if rank(list, &r); list[0].Bush.Code != "drawer" {
		t.Error("a thin wall is taken where something else goes")
	}
}

// A bush of the drawer that would be bored to a wall of less than is turned is
// none: 5.019 outside and a bore of 3.22 leave 0.8995.
func TestBoredTooThin(t *testing.T) {
	for least, want := range map[float64]bool{0.899: true, 0.901: false} {
		s := scenery(t)
		s.bore(-0.4)
		s.shop.BoringFrom, s.shop.BoringTo, s.r.LeastWall = 3, 20, least
		if a := s.only(t); a.Feasible != want {
			t.Errorf("least wall %v: feasible %v %s", least, a.Feasible, a.Fail.Text())
		}
	}
}
