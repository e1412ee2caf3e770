package seat

import (
	"math"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/limits"
	"rebush/fits/press"
	"rebush/fits/table"
)

// ISO 2795 as printed in two extracts of its tolerance clauses: a sintered bush
// delivered with its bore F7 or G7 and its outside r6 or s7, pressed into an H7
// seat in a RIGID housing over a pin of m5 to m6, ends with a bore of H7.
// Sizes: ISO 2795:1991 Table 1 (one machine-read scan). Limits: ISO 286 tables.
var iso2795 = []struct{ bore, od string }{{"2 mm", "5 mm"}, {"3 mm", "5 mm"}, {"3 mm", "6 mm"}, {"4 mm", "8 mm"},
	{"5 mm", "9 mm"}, {"6 mm", "10 mm"}, {"8 mm", "12 mm"}, {"10 mm", "16 mm"}}

var classPairs = [][2]string{{"G7", "r6"}, {"F7", "s7"}}

// classed is a class of a size as two limits, mm.
func classed(t *testing.T, size, class string) [2]float64 {
	t.Helper()
	lim, err := limits.New(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	n := dim.Must(size)
	d, err := lim.Class(n, class)
	if err != nil {
		t.Fatal(err)
	}
	return [2]float64{n.Float() + d.LowerUm.InexactFloat64()/1000, n.Float() + d.UpperUm.InexactFloat64()/1000}
}

// promise sets the scene of the standard: H7 seat, rigid housing, and a bore
// that is asked to end in H7.
func promise(t *testing.T, bore, od string, pair [2]string) (scene, [2]float64, [2]float64) {
	s := scenery(t)
	b, o, seat, want := classed(t, bore, pair[0]), classed(t, od, pair[1]), classed(t, od, "H7"), classed(t, bore, "H7")
	s.b.BLow, s.b.BHigh, s.b.ODLow, s.b.ODHigh, s.b.FlangeOD = b[0], b[1], o[0], o[1], o[1]+2
	s.w.Low, s.w.High = seat[0], seat[1]
	s.h.Plate, s.b.Length = 8, 8.8
	s.h.Edge, s.h.S = math.Inf(1), 0.5
	s.h.Plate2 = Plate{Name: "rigid", EHigh: 1e9, ELow: 1e9, Nu: 0.3, Yield: 1e9, YieldKnown: true, Alpha: 18}
	s.h.Journal = want[0] - s.r.OverJournal
	s.r.ClearMax = s.r.OverJournal + want[1] - want[0]
	s.h.Load, s.h.RPM = 0, 0
	pin := [2]float64{classed(t, bore, "m5")[0], classed(t, bore, "m6")[1]}
	return s, want, pin
}

// Over the pin the promise is kept at both class pairs, for sizes in the middle
// of their limits: a pin from the middle of its band, less all that a bush may
// spring back, leaves a bore inside H7. The whole band of pins does to half a
// um, at the middle of the spring (which is a judgement).
func TestPromiseOfISO2795(t *testing.T) {
	for _, size := range iso2795 {
		for _, pair := range classPairs {
			s, want, pin := promise(t, size.bore, size.od, pair)
			widest := s.only(t)
			s.middle()
			s.r.MandrelTotal = 0 // not sized afterwards
			s.shop.Mandrels = []float64{(pin[0] + pin[1]) / 2}
			a := s.only(t)
			if !a.Feasible || !a.MandrelIn {
				t.Errorf("%s x %s %v: %s %s", size.bore, size.od, pair, a.Finish, a.Fail.Text())
				continue
			}
			if a.Expected[0] < want[0]-slack || a.Expected[1] > want[1]+slack {
				t.Errorf("%s x %s %v: bore %.4f to %.4f, promised %.3f to %.3f", size.bore, size.od, pair,
					a.Expected[0], a.Expected[1], want[0], want[1])
			}
			mid := (s.r.SpringLow + s.r.SpringHigh) / 2
			if pin[0]-mid < want[0]-0.0006 || pin[1]-mid > want[1]+0.0006 {
				t.Errorf("%s: pins of m5 to m6 leave %.4f to %.4f, promised %.3f to %.3f", size.bore, pin[0]-mid,
					pin[1]-mid, want[0], want[1])
			}
			// At the corner of the limits, the largest bore with the least
			// interference, no pin helps: the bore stays up to 4 um above H7.
			if over := widest.Closed[1] - want[1]; over > 0.004 {
				t.Errorf("%s x %s %v: at the corner of its limits the bore ends %.4f above H7", size.bore, size.od,
					pair, over)
			}
		}
	}
}

// middle takes every size in the middle of its limits.
func (s *scene) middle() {
	od, bore, seat := (s.b.ODLow+s.b.ODHigh)/2, (s.b.BLow+s.b.BHigh)/2, (s.w.Low+s.w.High)/2
	s.b.ODLow, s.b.ODHigh, s.b.BLow, s.b.BHigh, s.w.Low, s.w.High = od, od, bore, bore, seat, seat
}

// Without the pin the promise is not kept, not even by a rigid housing: the
// bore then closes by about the whole interference. The share is 2r/((1+r2) -
// nu (1-r2)), r = bore over outside, as thick rings have it: 0.98 at 0.5, 1.03
// at 0.6, 1.04 from 0.67 to 0.8, nu 0.3 (own arithmetic of the handbook text).
func TestWithoutThePinRigidHousingClosesByItsInterference(t *testing.T) {
	for _, c := range [][2]float64{{0.5, 0.98}, {0.6, 1.03}, {0.67, 1.04}, {0.8, 1.04}} {
		st := press.Seat{D: 8, Di: 8 * c[0], L: 4, Wall: press.Infinite{},
			Housing: press.Elastic{E: 1e9, Nu: 0.3}, Bush: press.Elastic{E: 1e5, Nu: 0.3}}
		if got := st.At(0.01).Closure / 0.01; math.Abs(got-c[1]) > 0.006 {
			t.Errorf("ratio %v: closes by %v of the interference, want %v", c[0], got, c[1])
		}
	}
	for _, size := range iso2795 {
		s, want, _ := promise(t, size.bore, size.od, classPairs[1])
		s.shop.Mandrels = nil
		a := s.only(t)
		if a.Closed[0] > want[0] {
			t.Errorf("%s x %s: pressed free the bore ends from %.4f and still keeps H7", size.bore, size.od,
				a.Closed[0])
		}
	}
}

// A thin zinc wall departs from the promise: with the metal left at half a seat
// radius the same 4 x 8 bush (F7, s7, middle of both limits: 23 um) closes
// freely by about half of what it does in a rigid housing, the wall carries a good part
// of what the makers count on the housing for, and pressed over the pin the
// tension is above what an aged casting bears.
func TestThinZincWallDepartsFromThePromise(t *testing.T) {
	s, _, _ := promise(t, "4 mm", "8 mm", classPairs[1])
	di, d := (s.b.BLow+s.b.BHigh)/2, (s.w.Low+s.w.High)/2
	u := (s.b.ODLow+s.b.ODHigh)/2 - d
	if math.Abs(u-0.023) > 0.0006 {
		t.Fatalf("middle interference %v, want 23 um (fits tables)", u)
	}
	bush := press.Elastic{E: 55000, Nu: 0.28}
	rigid := press.Seat{D: d, Di: di, L: 4, Wall: press.Infinite{}, Housing: press.Elastic{E: 1e9, Nu: 0.3}, Bush: bush}
	thin := rigid
	thin.Housing, thin.Wall = press.Elastic{E: zinc.EHigh, Nu: zinc.Nu}, press.Edge{Ligament: d / 4}
	a, b := rigid.At(u).Closure, thin.At(u).Closure
	if share := b / a; share > 0.60 || share < 0.40 {
		t.Errorf("closes by %.1f um in a rigid housing and by %.1f um in the thin wall: %.2f of it", a*1000, b*1000,
			share)
	}
	stiff, _ := rigid.HeldAt(u)
	soft, tension := thin.HeldAt(u)
	if soft > 0.7*stiff {
		t.Errorf("over the pin: %.0f MPa in a rigid housing, %.0f in the thin wall", stiff, soft)
	}
	if tension < zinc.Limit {
		t.Errorf("over the pin the thin wall is pulled with %.0f MPa only", tension)
	}
	t.Logf("free: rigid %.1f um, thin wall %.1f um; over the pin: %.0f and %.0f MPa, tension %.0f MPa", a*1000,
		b*1000, stiff, soft, tension)
}
