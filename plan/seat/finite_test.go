package seat

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Whatever the bore, no answer is other than finite, and every one that falls
// says why.
func TestAnswersAreFinite(t *testing.T) {
	base := scenery(t)
	rapid.Check(t, func(t *rapid.T) {
		s := base
		f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		s.h.S, s.h.Fill = f("S", 0.5, 4), f("fill", 0, 4)
		s.h.Edge, s.h.Edge2 = f("edge", -1, 12), f("edge2", 0, 12)
		if rapid.Bool().Draw(t, "no edge") {
			s.h.Edge, s.h.Edge2 = math.Inf(1), 0
		}
		if rapid.Bool().Draw(t, "boss") {
			s.h.BossR, s.h.BossE = f("boss", 1, 8), f("off", 0, 2)
		}
		s.h.Plate, s.h.Journal = f("plate", 0.2, 8), f("journal", 1.5, 5)
		s.h.MustPass, s.h.Load, s.h.RPM = f("pass", 0, 5), f("load", 0, 50), f("rpm", 0, 5000)
		s.h.TLow, s.h.THigh = f("cold", -30, 20), f("hot", 20, 120)
		s.h.Live = rapid.Bool().Draw(t, "live")
		if rapid.Bool().Draw(t, "side") {
			s.h.SideRoom = f("side room", -1, 3)
		}
		s.b.Metal = []Metal{porous, solid, nylon}[rapid.IntRange(0, 2).Draw(t, "metal")]
		s.h.Plate2 = []Plate{zinc, brass}[rapid.IntRange(0, 1).Draw(t, "plate of")]
		s.b.Turned = rapid.Bool().Draw(t, "turned")
		s.outside(f("outside", -0.1, 0.1))
		s.bore(f("bore", -0.3, 0.3))
		switch rapid.IntRange(0, 3).Draw(t, "way") {
		case 0:
			s.w = Way{Kind: BoringHead, Name: "boring head", Low: 3, High: 12}
		case 1:
			s.h.Cap = f("cap", 4.9, 5.2)
		case 2:
			s.old()
			s.h.Old.Sound = rapid.Bool().Draw(t, "sound")
		}
		for _, a := range s.search() {
			if a.Feasible == (a.Fail.What != noFail) {
				t.Fatalf("feasible %v with the reason %q", a.Feasible, a.Fail.Text())
			}
			if text := a.Fail.Text().String(); strings.Contains(text, "NaN") || strings.Contains(text,
				"Inf") || !a.Feasible && text == "" {
				t.Fatalf("the reason reads %q", text)
			}
			if !a.Feasible {
				continue
			}
			for i, x := range []float64{a.Chance, a.SeatLow, a.SeatHigh, a.ULow, a.UHigh, a.PLow, a.PHigh, a.Peak,
				a.Force[0], a.Force[1],
				a.Closure[0], a.Closure[1], a.Closed[0], a.Closed[1], a.Bore[0], a.Bore[1], a.Expected[0], a.Expected[1], a.RunCold, a.RunHot, a.WindowLow, a.Contact, a.Bearing} {
				if math.IsNaN(x) || math.IsInf(x, 0) {
					t.Fatalf("figure %d is %v", i, x)
				}
			}
			if a.Chance < 0 || a.Chance > 1 || a.Closure[0] > a.Closure[1] || a.PLow > a.PHigh+slack {
				t.Fatalf("chance %v, closure %v, pressure %v to %v", a.Chance, a.Closure, a.PLow, a.PHigh)
			}
			if a.Bore[1] > s.h.Journal+s.r.ClearMax+slack || a.Expected[1] > a.Bore[1]+slack {
				t.Fatalf("bore %v, expected %v", a.Bore, a.Expected)
			}
		}
	})
}
