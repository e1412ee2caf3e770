package route

import (
	"math"
	"slices"
	"strings"
	"testing"

	"rebush/plan/seat"
)

// withoutGauges is what is to be bought beside gauges, rods and guides.
func withoutGauges(all []BuyLine) []BuyLine {
	return slices.DeleteFunc(slices.Clone(all), func(l BuyLine) bool { return l.Kind == BuyGauge || l.Kind == BuyRod })
}

// gauges counts the gauges to be bought.
func gauges(all []BuyLine) int {
	n := 0
	for _, l := range all {
		if l.Kind == BuyGauge {
			n++
		}
	}
	return n
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
	if out := Make(j, s, plainCut, plainRules()); gauges(out.Buy) > 0 {
		t.Errorf("%v", out.Buy)
	}
	s = millShop()
	for i := range j.Bores {
		j.Bores[i].HeldBy, j.Bores[i].Porous = seat.ByCompound, false
	}
	if out := Make(j, s, plainCut, plainRules()); gauges(out.Buy) > 0 {
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

// The shop has no lathe: the guide of the press is the shank of a drill that surely
// fits, or is bought; a scale for the force and rods for lining up are laid out.
func TestLaidOut(t *testing.T) {
	j, s := axle(), millShop()
	j.Shafts = append(j.Shafts, Shaft{Name: "rear", Wheels: true})
	j.Marks = []Mark{{Name: "rear.left", At: [2]float64{40, 6}, Dia: 3.01}}
	has := func(list []string, want string) {
		t.Helper()
		if !slices.ContainsFunc(list, func(s string) bool { return strings.Contains(s, want) }) {
			t.Errorf("no %q in %q", want, list)
		}
	}
	said := func(r Route) (out []string) {
		for _, l := range r.LayOut {
			out = append(out, l.String())
		}
		for _, l := range r.Buy {
			out = append(out, l.What.String())
		}
		return out
	}
	all := said(Make(j, s, plainCut, plainRules()))
	has(all, "bathroom scales")
	has(all, "close-fitting rod, rear 3.01 mm")
	has(all, "guide for the press (to buy): 3.08 to 3.13 mm")
	// 3.18 less 0.05 to 0.10: a shank of 3.1 is 3.082 to 3.1.
	s.Drills = append([]Tool{{Name: "3.1 mm drill", Size: 3.1}}, s.Drills...)
	has(said(Make(j, s, plainCut, plainRules())), "guide 3.08 to 3.13 mm, 3.1 mm drill shank")
}

// A second reading has its limits, from the doubt of both places: 2 x hypot(0.012,
// 0.016) is 0.04; and says what to do outside them.
func TestSecondReadingHasLimits(t *testing.T) {
	j, s := axle(), millShop()
	for i := range j.Bores {
		j.Bores[i].UPlace = 0.012
	}
	j.Marks = []Mark{{Name: "rear.left", Side: "left", At: [2]float64{40, 6}, U: 0.016}}
	box := ""
	for _, o := range Make(j, s, plainCut, plainRules()).Operations {
		if strings.Contains(o.GaugeFirst.String(), "second datum") {
			box = o.GaugeFirst.String()
			break
		}
	}
	if !strings.Contains(box, "within 0.04 mm; farther off: cut nothing") {
		t.Error(box)
	}
}

// A caution to measure again has its row and its box before the first cut, and none
// where nobody moves far.
func TestMeasuredAgain(t *testing.T) {
	j := axle()
	j.Again = []string{"axle.right"}
	first, row := -1, -1
	r := Make(j, millShop(), plainCut, plainRules())
	for i, o := range r.Operations {
		if o.Kind == KindMeasureAgain && strings.Contains(o.Do.String(), "axle.right") && o.GaugeFirst != "" {
			row = i
		}
		if first < 0 && (o.Cut != nil || o.Kind == KindScrap) {
			first = i
		}
	}
	if row < 0 || row > first {
		t.Errorf("row %d, first cut %d", row, first)
	}
	for _, o := range Make(axle(), millShop(), plainCut, plainRules()).Operations {
		if o.Kind == KindMeasureAgain {
			t.Error(o.Do)
		}
	}
}

// What is turned or made is there before the row that wants it: the jig before the
// trial through it, the test rods before the press; the drive that stripping took
// out goes back; the trial hole names its tools and speeds.
func TestNothingIsWantedBeforeItIsThere(t *testing.T) {
	j, s := axle(), millShop()
	s.Machine, s.Jig, s.Lathe = DrillPress, true, true
	at := map[string]int{}
	for i, o := range Make(j, s, plainCut, plainRules()).Operations {
		for _, w := range []string{"Make the jig plate", "In scrap", "Turn the test rod", "Press bush", "Put motor and drive back"} {
			if _, seen := at[w]; !seen && strings.HasPrefix(o.Do.String(), w) {
				at[w] = i + 1
			}
		}
		// 20 m/min at 4.7 mm is 1355, at 5 mm 1273: the step of 1200 for both.
		if o.Kind == KindScrap && !strings.Contains(o.Note.String(), "4.7 mm drill at 1200 rev/min, 5 mm H7 reamer at 1200 rev/min") {
			t.Error(o.Note)
		}
	}
	if at["Make the jig plate"] == 0 || at["Make the jig plate"] > at["In scrap"] || at["Turn the test rod"] == 0 ||
		at["Turn the test rod"] > at["Press bush"] || at["Put motor and drive back"] < at["Press bush"] {
		t.Errorf("%v", at)
	}
}
