package route

import (
	"math"
	"slices"
	"strings"
	"testing"

	"rebush/plan/seat"
)

// withoutGauges is what is to be bought beside gauges.
func withoutGauges(all []BuyLine) []BuyLine {
	return slices.DeleteFunc(slices.Clone(all), func(l BuyLine) bool { return l.Kind == BuyGauge })
}

// A seat that is pressed into is gauged at its own limits: no gauge that goes or
// stops farther off a limit than the doubt the seat is reckoned with, whatever the
// pins of the shop; where there is a pin inside, it is the one to stop at meanwhile.
func TestNoGaugePassesABadSeat(t *testing.T) {
	for name, pins := range map[string]*Pins{"steps of 0.01": {From: 1, To: 6, Step: 0.01},
		"thousandths of an inch": {From: 0.061 * 25.4, To: 0.25 * 25.4, Step: 0.0254, Inch: true}, "none": nil} {
		j, s, r := axle(), millShop(), plainRules()
		s.Pins = pins
		out := Make(j, s, plainCut, r)
		for _, kind := range []Kind{KindGauge, KindSizeSeat, KindPress} {
			o := find(t, out, kind, "axle.left")
			if kind == KindPress {
				if !strings.Contains(o.GaugeFirst.String(), "plug gauge") {
					t.Errorf("%s: %s", name, o.GaugeFirst)
				}
				continue
			}
			if o.Pins[0] < 5.005-0.003 || o.Pins[1] > 5.012+0.003 {
				t.Errorf("%s, %s: %s goes and %s stops, for 5.005 to 5.012", name, kind, o.Go, o.NoGo)
			}
		}
		note := find(t, out, KindGauge, "axle.left").Note.String()
		if strings.Contains(note, "pin 5.01 goes too, stop") != (name == "steps of 0.01") || !strings.Contains(note, "bore gauge") {
			t.Errorf("%s: %s", name, note)
		}
		bought := 0
		for _, l := range out.Buy {
			if l.Kind == BuyGauge && (math.Abs(l.Size-5.012) < 0.0015 || math.Abs(l.Size-5.005) < 0.0015) {
				bought++
			}
		}
		want := 2
		if pins != nil && pins.Inch {
			want = 1 // 0.197 in is 5.0038, near enough to the lower limit
		}
		if bought != want {
			t.Errorf("%s: %v", name, out.Buy)
		}
	}
	// Finer pins decide by themselves, and compound fills what a gauge does not tell.
	j, s := axle(), millShop()
	s.Pins.Step = 0.002
	if out := Make(j, s, plainCut, plainRules()); len(out.Buy) != len(withoutGauges(out.Buy)) {
		t.Errorf("%v", out.Buy)
	}
	s = millShop()
	for i := range j.Bores {
		j.Bores[i].HeldBy, j.Bores[i].Porous = seat.ByCompound, false
	}
	if out := Make(j, s, plainCut, plainRules()); len(out.Buy) != len(withoutGauges(out.Buy)) {
		t.Errorf("%v", out.Buy)
	}
}

// The stop of every guided tool counts from the face of the jig, and that of one in
// the far plate from the upper face.
func TestStops(t *testing.T) {
	j, s := axle(), millShop()
	s.Machine, s.Jig, s.Lathe = DrillPress, true, true
	o := find(t, Make(j, s, plainCut, plainRules()), KindSizeSeat, "axle.left")
	// 10 mm of jig for a 5 mm reamer, 3 mm of plate and 2 beyond.
	if math.Abs(o.Stop-15) > 1e-9 || !strings.Contains(o.Note.String(), "15.0 mm below the face of the jig") {
		t.Errorf("%v: %s", o.Stop, o.Note)
	}
	s = millShop()
	s.Drills = nil
	for _, o := range Make(j, s, plainCut, plainRules()).Operations {
		// 16 mm over the plates, 2 beyond: 3 + 2 in the plate itself.
		if o.Far && o.Kind == KindLocate && (math.Abs(o.Depth-5) > 1e-9 || math.Abs(o.Stop-18) > 1e-9) {
			t.Errorf("%s: depth %v, stop %v", o.Do, o.Depth, o.Stop)
		}
	}
}

// The blocks let the rods of a chassis that was turned over out downwards.
func TestBlocksLetRodsOut(t *testing.T) {
	j, s := axle(), millShop()
	s.Machine, s.Jig, s.Lathe = DrillPress, true, true
	for _, o := range Make(j, s, plainCut, plainRules()).Operations {
		// The foot is 3 + 10, the upper part 16 - 3 + 10.
		if up := o.Kind == KindSetUp && strings.Contains(o.Do.String(), "right"); up &&
			!strings.Contains(o.Holding.String(), "(about 36 mm)") {
			t.Errorf("%s", o.Holding)
		}
	}
}
