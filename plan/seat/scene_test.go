package seat

import (
	"math"
	"testing"

	"rebush/fits/table"
)

// scene is one bore, one bush and one way to make its seat.
type scene struct {
	h    Hole
	b    Bush
	w    Way
	shop Shop
	r    Rules
	part *Part
}

func (s scene) search() []Answer {
	shop := s.shop
	if s.w.Name != "" {
		shop.Ways = []Way{s.w}
	}
	j := newJudge(s.h, shop, s.r)
	j.part = s.part
	return j.search(s.h.Mends(), []Bush{s.b}, true)
}

// only is the one answer of a scene.
func (s scene) only(t *testing.T) Answer {
	t.Helper()
	as := s.search()
	if len(as) != 1 {
		t.Fatalf("%d answers, want 1", len(as))
	}
	return as[0]
}

var (
	porous = Metal{Name: "sintered bronze", Porous: true, EHigh: 55000, ELow: 40000, Nu: 0.28, Yield: 75, YieldHi: 75,
		Alpha: 18, PMax: 14, VMax: 6.1, PVWarn: 0.7, PVMax: 1.75}
	solid = Metal{Name: "bearing bronze", EHigh: 100000, ELow: 100000, Nu: 0.35, Yield: 97, YieldHi: 138, Alpha: 18,
		PMax: 27, VMax: 3.8, PVWarn: 2.6, PVMax: 2.6}
	nylon = Metal{Name: "nylon", Plastic: true, EHigh: 3000, ELow: 2500, Nu: 0.4, Yield: 60, YieldHi: 80, Alpha: 90}
	zinc  = Plate{Name: "zinc", Casting: true, Zinc: true, EHigh: 85500, ELow: 85500, ERelaxed: 20700, Creep: 15,
		Nu: 0.29, Limit: 134.5, Yield: 221, YieldKnown: true, Alpha: 27.4}
	brass = Plate{Name: "brass", EHigh: 110000, ELow: 97000, Nu: 0.34, Yield: 200, YieldKnown: true, Alpha: 20}
)

// scenery is a porous flanged bush 3.2 x 5 in a 3 mm zinc plate, the seat
// reamed 5 H7.
func scenery(t testing.TB) scene {
	return scene{
		h: Hole{Name: "front axle.left", S: 1.7765, UPlace: 0.0141, USurvey: 0.0285, Journal: 3.16, JournalU: 0.005,
			JournalA: 11.5,
			Plate:    3, Edge: 5.928, EdgeName: "the slot", SideRoom: math.NaN(), Load: 1.25, RPM: 420, TLow: 5, THigh: 45, Plate2: zinc},
		b: Bush{Code: "drawer 7", ODLow: 5.019, ODHigh: 5.031, BLow: 3.210, BHigh: 3.222, Length: 3.8, FlangeOD: 7,
			FlangeT: 0.8, Metal: porous, Price: 0.85, Priced: true, OnHand: 20},
		w: Way{Kind: Reamer, Name: "5 mm H7 reamer", Size: 5, Low: 5.005, High: 5.0118},
		shop: Shop{Lathe: true, Compound: true, FrictionLow: 0.05, FrictionHigh: 0.20,
			Mandrels: []float64{3.18, 3.19, 3.20}},
		r: rules(t),
	}
}

// rules are the built-in defaults.
func rules(t testing.TB) Rules {
	t.Helper()
	all, err := table.ReadRules(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	return RulesOf(all)
}
