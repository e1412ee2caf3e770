package route

import (
	"math"
	"strings"
	"testing"

	"rebush/plan/seat"
)

// saidOf is all that an operation says.
func saidOf(o Operation) string {
	return (o.Do + " | " + o.Tool + " | " + o.Backing + " | " + o.Note + " | " + o.GaugeFirst + " | " + o.Gauge).String()
}

// Whatever comes out goes back: the axles of bores that are left alone as well,
// since nothing is clamped with an axle in it and their bores take rods.
func TestEveryAxleGoesBack(t *testing.T) {
	j := axle()
	j.Shafts = append(j.Shafts, Shaft{Name: "idle", Wheels: true}, Shaft{Name: "cross shaft"})
	r := Make(j, millShop(), plainCut, plainRules())
	if out := saidOf(find(t, r, KindStrip, "")); !strings.Contains(out, "idle and cross shaft out as well") {
		t.Error(out)
	}
	in, pressed := "", ""
	for _, o := range r.Operations {
		switch o.Kind {
		case KindAssemble:
			in += saidOf(o)
		case KindWheels:
			pressed += saidOf(o)
		}
	}
	for _, w := range []string{"put axle in", "then idle and cross shaft back in, as marked, with what came off"} {
		if !strings.Contains(in, w) {
			t.Errorf("no %q in %s", w, in)
		}
	}
	for _, w := range []string{"wheels of axle and idle"} {
		if !strings.Contains(pressed, w) {
			t.Errorf("no %q in %s", w, pressed)
		}
	}
}

// A bush that is turned here and reamed when it is in goes in with a bore that the
// reamer has 0.2 to 0.3 to take of: 3.2 less that is 2.9 to 3.0, and it closes by
// 0.02 to 0.01 as the one of 3.21 to 3.22 would have, so guide and dummy axle are
// under 2.88.
func TestBoreIsLeftForTheReamer(t *testing.T) {
	j, s := axle(), millShop()
	s.Lathe = true
	j.Gears = []GearCheck{{Name: "drive", Shaft: "axle", Backlash: [2]float64{0.05, 0.1}}}
	for i := range j.Bores {
		x := &j.Bores[i]
		x.BushMade, x.Porous, x.Finish, x.FinishTool, x.FinishSizes = true, false, seat.Ream, "3.2 mm H7 reamer", []float64{3.2}
		x.Closed = [2]float64{3.19, 3.21}
		x.BushShape = &Shape{Steps: []Round{{D: x.OD, Long: 3}, {D: [2]float64{7, 7}, Long: 0.8}}, Bore: [2]float64{3.21, 3.22}}
	}
	r := Make(j, s, plainCut, plainRules())
	turn := find(t, r, KindTurn, "axle.left")
	if got := turn.Shapes[0].Bore; math.Abs(got[0]-2.9) > 1e-9 || math.Abs(got[1]-3) > 1e-9 ||
		!strings.Contains(saidOf(turn), "bore 2.900 to 3.000 mm, length 3.80 mm") {
		t.Errorf("%v: %s", got, saidOf(turn))
	}
	if mesh := saidOf(find(t, r, KindTryMesh, "")); !strings.Contains(mesh, "(2.87 mm)") ||
		!strings.Contains(mesh, "the drive goes back in its place for this") {
		t.Error(mesh)
	}
	if press := saidOf(find(t, r, KindPress, "axle.left")); !strings.Contains(press, "guide 2.78 to 2.83 mm") {
		t.Error(press)
	}
	if j.Bores[0].BushShape.Bore[0] != 3.21 || j.Bores[0].Closed[0] != 3.19 {
		t.Error("the job that was handed in is changed")
	}
}

// A hooked tool is pulled from where it touches: it is given no depth.
func TestHookedChamferHasNoDepth(t *testing.T) {
	s := millShop()
	s.Machine = OnLathe
	o := find(t, Make(axle(), s, plainCut, plainRules()), KindChamfer, "axle.right")
	if !math.IsNaN(o.Depth) || !strings.Contains(saidOf(o), "pulled towards you 0.4 mm from where it touches") {
		t.Errorf("%v: %s", o.Depth, saidOf(o))
	}
}

// Compound beside a press is laid out, and wants dry faces at every press.
func TestCompoundIsLaidOut(t *testing.T) {
	j := axle()
	for i := range j.Bores {
		j.Bores[i].Second |= seat.Compound
	}
	r := Make(j, millShop(), plainCut, plainRules())
	for _, x := range j.Bores {
		if said := saidOf(find(t, r, KindPress, x.Name)); !strings.Contains(said, "both faces free of oil; compound on") {
			t.Error(said)
		}
	}
	n := 0
	for _, l := range r.LayOut {
		if strings.HasPrefix(l.String(), compound) {
			n++
		}
	}
	if n != 1 {
		t.Errorf("laid out %d times: %v", n, r.LayOut)
	}
}

// No punch of a bush's size passes the hole on the other side: it is drawn.
func TestOldBushIsDrawn(t *testing.T) {
	j := axle()
	j.Bores[0].Bushed = true
	if said := saidOf(find(t, Make(j, millShop(), plainCut, plainRules()), KindTakeOut, "axle.left")); strings.Contains(said,
		"punch") || !strings.Contains(said, "slipped on between the plates") {
		t.Error(said)
	}
}

// A jig covers the holes that its pins stand in: its own hole is measured from the
// pin. From 10, 6 to 13, 10 it is 5; over a bush hole of 10 and a pin of 2.99 it is
// 6.495 more.
func TestSecondDatumUnderAJig(t *testing.T) {
	j, s := axle(), millShop()
	s.Machine, s.Jig = DrillPress, true
	j.Features, j.Marks = []string{"frame hole"}, []Mark{{Name: "frame hole", At: [2]float64{13, 10}, Dia: 3}}
	if box := find(t, Make(j, s, plainCut, plainRules()), KindLocate, "axle.left").GaugeFirst.String(); box !=
		"Bush hole of axle.left in the jig plate read again: 5.00 mm from the middle of the pin in frame hole "+
			"(over both, a rod of 10 mm in the bush hole and that pin: 11.50 mm)." {
		t.Error(box)
	}
}

// What goes through both plates at once has a block behind each; ends of a backlash
// that two digits do not tell apart have three.
func TestBothPlatesAreBacked(t *testing.T) {
	j := axle()
	j.Gears = []GearCheck{{Name: "drive", Shaft: "axle", Backlash: [2]float64{0.036, 0.043}}}
	for i := range j.Bores {
		j.Bores[i].Finish, j.Bores[i].FinishTool = seat.ToOwnAxle, ""
	}
	r := Make(j, millShop(), plainCut, plainRules())
	back := find(t, r, KindSizeSeat, "").Backing.String()
	if !strings.Contains(back, "between the plates") || !strings.Contains(back, "under the far plate") {
		t.Error(back)
	}
	if mesh := find(t, r, KindTryMesh, "").Gauge.String(); mesh != "backlash 0.036 to 0.043 mm" {
		t.Error(mesh)
	}
}

// A faceplate has no dials: a bush that is bored in place is run true on it, and
// moved over by what its bore stands off its outside, here 0.03 up, so 0.03 down.
func TestBoredInPlaceOnALathe(t *testing.T) {
	j, s := axle(), millShop()
	s.Machine = OnLathe
	for i := range j.Bores {
		x := &j.Bores[i]
		x.Finish, x.FinishTool, x.SeatAt = seat.BoreInPlace, "boring head", [2]float64{x.At[0], x.At[1] - 0.03}
	}
	r := Make(j, s, plainCut, plainRules())
	if o := find(t, r, KindSizeBore, "axle.left"); o.At != nil || o.Tool != "boring tool" {
		t.Errorf("%v %s", o.At, o.Tool)
	}
	again := ""
	for _, o := range r.Operations {
		if o.Kind == KindSetUp && strings.Contains(o.Do.String(), "again") {
			again += saidOf(o)
		}
	}
	if !strings.Contains(again, "run the outside of the new bush true") || !strings.Contains(again, "0.03 mm down") ||
		strings.Contains(again, "dials") {
		t.Error(again)
	}
}
