package route

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rebush/plan/job"
	"rebush/plan/seat"
)

// turnedOver is the axle of axle in a box too wide for its tools.
func turnedOver() Job {
	j := axle()
	j.Width = 22
	return j
}

// A chassis that is turned over stands on a rod that can be put in: its foot in
// the finished seat of 5.005 is 5.00, its upper part goes up through the uncut
// hole of 3.2, so it is 3.10 and stands 10 over the plates: 22 - 3 + 10. A plain
// rod of 5.00 would not pass that hole.
func TestSteppedRod(t *testing.T) {
	s := millShop()
	s.Lathe = true
	r := Make(turnedOver(), s, plainCut, plainRules())
	var rod, up Operation
	for _, o := range r.Operations {
		switch {
		case o.Kind == KindAid && strings.Contains(o.Do.String(), "stepped rod"):
			rod = o
		case o.Kind == KindSetUp:
			up = o
		}
	}
	const sizes = "5.00 mm for 13 mm, then 3.10 mm for 29 mm in axle.left"
	if !strings.Contains(rod.Note.String(), sizes) || rod.Number >= up.Number || !(rod.Minutes > 0) {
		t.Errorf("%d: %s", rod.Number, rod.Note)
	}
	for _, w := range []string{sizes, "before it is clamped", "from below"} {
		if !strings.Contains(up.Note.String(), w) {
			t.Errorf("no %q in %s", w, up.Note)
		}
	}
	// A hole that is larger than the seat of the other side lets a plain rod pass.
	j := turnedOver()
	b := &builder{j: j, r: plainRules()}
	wide := j.Bores[1]
	wide.Found = 6
	if d := b.steppedRod(j.Bores[0], wide).d; d[0] != d[1] {
		t.Errorf("%v where one size does", d)
	}
	// Without a lathe it is to be had, not made.
	r = Make(turnedOver(), millShop(), plainCut, plainRules())
	bought := false
	for _, l := range r.Buy {
		bought = bought || l.Kind == BuyRod && strings.Contains(l.What.String(), sizes)
	}
	for _, o := range r.Operations {
		if o.Kind == KindAid {
			t.Errorf("%s without a lathe", o.Do)
		}
	}
	if !bought {
		t.Errorf("%+v", r.Buy)
	}
}

// Compound sets with one greased rod through both bores: 3.18 less 0.005 is
// 3.17 to the hundredth below.
func TestCompoundCuresOnARod(t *testing.T) {
	j, s := axle(), millShop()
	s.Lathe = true
	for i := range j.Bores {
		j.Bores[i].HeldBy, j.Bores[i].FlangeOD, j.Bores[i].Second = seat.ByCompound, 0, 0
		j.Bores[i].Limits[0] = 3.2 // it is opened later: the rod fits the bush as it is
	}
	r := Make(j, s, plainCut, plainRules())
	if o := find(t, r, KindCure, ""); !strings.Contains(o.Gauge.String(), "rods come out") {
		t.Error(o.Gauge)
	}
	rod, press := Operation{}, find(t, r, KindPress, "axle.left")
	for _, o := range r.Operations {
		if o.Kind == KindAid && strings.Contains(o.Do.String(), "bonding rod") {
			rod = o
		}
	}
	if rod.Number == 0 || rod.Number > press.Number || !strings.Contains(rod.Note.String(), "3.17 mm, through both bores") {
		t.Errorf("%+v", rod)
	}
	for _, side := range []string{"axle.left", "axle.right"} {
		o := find(t, r, KindPress, side)
		if !strings.Contains(o.Tool.String(), "greased rod 3.17 mm") || !strings.Contains(o.Note.String(), "through both bores") {
			t.Errorf("%s: %s %s", side, o.Tool, o.Note)
		}
	}
}

// What is pressed is in before anything is bonded: a press moves what has not set.
func TestPressedBeforeBonded(t *testing.T) {
	j := axle()
	j.Bores[0].HeldBy, j.Bores[0].FlangeOD, j.Bores[0].Second = seat.ByCompound, 0, 0
	r := Make(j, millShop(), plainCut, plainRules())
	if l, p := find(t, r, KindPress, "axle.left"), find(t, r, KindPress, "axle.right"); l.Number < p.Number {
		t.Errorf("bonded at %d, pressed at %d", l.Number, p.Number)
	}
}

// The rim of an old casting is not staked where its press uses up more than
// half of what it is allowed; that of a plate, or under a light press, may be.
func TestStake(t *testing.T) {
	for _, c := range []struct {
		name    string
		casting bool
		tension [2]float64
		staked  bool
	}{
		{"a casting at 103 of 134 MPa", true, [2]float64{103, 134}, false},
		{"a casting at 67 of 134 MPa", true, [2]float64{67, 134}, true},
		{"a brass plate", false, [2]float64{103, 134}, true},
		{"held by compound: no tension", true, [2]float64{}, true},
	} {
		j := axle()
		j.Casting = c.casting
		for i := range j.Bores {
			j.Bores[i].Second, j.Bores[i].Tension = seat.Stake, c.tension
		}
		r := Make(j, millShop(), plainCut, plainRules())
		note := find(t, r, KindPress, "axle.left").Note.String()
		if strings.Contains(note, "stake the rim") != c.staked || strings.Contains(note, "no punch mark") == c.staked {
			t.Errorf("%s: %s", c.name, note)
		}
		if said := len(r.Troubles) > 0; said == c.staked {
			t.Errorf("%s: %+v", c.name, r.Troubles)
		}
	}
}

// The work rests before the first cut of a set-up, after the last gauge of a
// block and while compound cures, and nowhere else.
func TestWhereItMayRest(t *testing.T) {
	j := turnedOver()
	j.Bores[0].HeldBy = seat.ByCompound
	var got []string
	for _, o := range Make(j, millShop(), plainCut, plainRules()).Operations {
		if o.MayWait {
			got = append(got, string(o.Kind)+" "+o.Setup+" "+o.Bore)
		}
	}
	want := []string{"set up A ", "gauge A axle.left", "set up B ", "gauge B axle.right", "cure press ", "gauge finish axle.right"}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

// What a route takes: the minutes of its operations as they are printed, less
// those of stripping and rebuilding, and its clampings.
func TestTime(t *testing.T) {
	s := millShop()
	s.Lathe = true
	cut := func(q Query) (Cut, error) {
		c, err := plainCut(q)
		c.Minutes = 0.137
		return c, err
	}
	r := Make(turnedOver(), s, cut, plainRules())
	sum, aids := 0.0, 0.0
	for _, o := range r.Operations {
		row := o.row()
		switch {
		case o.Kind == KindStrip || o.Kind == KindLineUp || o.Kind == KindAssemble || o.Kind == KindWheels:
		case row.Minutes != nil:
			sum += *row.Minutes
			if o.Kind == KindAid {
				aids += *row.Minutes
			}
		}
	}
	got := r.Time()
	if math.Abs(got.Minutes-sum) > 1e-9 || got.Setups != 2 {
		t.Errorf("%+v, want %v minutes", got, sum)
	}
	if aids != 30 { // a stepped rod and a test rod at 15
		t.Errorf("aids take %v minutes", aids)
	}
}

// What is bought is told by what it is, how large and at what price.
func TestBuyLines(t *testing.T) {
	j, s := axle(), millShop()
	s.Lathe, s.Drills = true, nil
	price := 0.85
	for i := range j.Bores {
		j.Bores[i].BushToBuy, j.Bores[i].BushPrice = true, &price
	}
	got := map[BuyKind]BuyLine{}
	for _, l := range Make(j, s, plainCut, plainRules()).Buy {
		got[l.Kind] = l
	}
	bush := got[BuyBush]
	if bush.Count != 2 || bush.Price == nil || *bush.Price != 0.85 || bush.Name != "drawer 7" || math.Abs(bush.Size-5.025) > 1e-9 ||
		bush.Why != "axle.left and axle.right" {
		t.Errorf("%+v", bush)
	}
	if drill := got[BuyDrill]; drill.Size != 4.7 || drill.Price != nil || drill.Name != "4.7 mm drill" ||
		!strings.HasPrefix(drill.What.String(), "4.7 mm drill (to buy): ") {
		t.Errorf("%+v", drill)
	}
}

// A jig is made for this truck: its plate with a hole at every new centre, and
// one slip bush for each size that goes through it; alike seats share them.
func TestJig(t *testing.T) {
	j, s := axle(), millShop()
	s.Machine, s.Jig, s.Lathe = DrillPress, true, true
	j.Features = []string{"front screw", "rear screw"}
	j.Marks = []Mark{{Name: "front screw", At: [2]float64{4, 3}, Dia: 2.5}, {Name: "rear screw", At: [2]float64{50, 3}}}
	other := axle().Bores
	for i := range other {
		other[i].Name, other[i].Shaft = strings.Replace(other[i].Name, "axle", "rear", 1), "rear"
		other[i].At, other[i].S = [2]float64{40, 6}, 1.65 // worn less: alone a 3.5 would do
	}
	j.Bores = append(j.Bores, other...)
	r := Make(j, s, plainCut, plainRules())
	var aids []Operation
	for _, o := range r.Operations {
		if o.Kind == KindAid {
			aids = append(aids, o)
		}
	}
	for _, w := range []string{"axle 10.000, 6.000", "rear 40.000, 6.000", "pins at front screw 4.000, 3.000", "pin 2.49 mm", "steel plate 10 mm thick", "about 20 mm long", "other face up"} {
		if !strings.Contains(aids[0].Note.String(), w) {
			t.Errorf("no %q in %s", w, aids[0].Note)
		}
	}
	// 4, 4.7 and 5 for the tools of all four holes, 3.1 for the rods; each 0.010 to
	// 0.022 over the largest that its tool can be, the reamer's over 5.012; of one
	// outside, 5.034 and two walls of 2 up to a whole millimetre.
	for _, w := range []string{"for 3.1 mm bored 3.110 to 3.122 mm", "for 4 mm bored 4.010 to 4.022 mm",
		"for 4.7 mm bored 4.710 to 4.722 mm", "for 5 mm bored 5.022 to 5.034 mm", "outside 10.000", "10 mm long"} {
		if !strings.Contains(aids[1].Note.String(), w) {
			t.Errorf("no %q: %s", w, aids[1].Note)
		}
	}
	if aids[0].Minutes != 60+2*10 || aids[1].Minutes != 4*10 {
		t.Errorf("%v and %v minutes", aids[0].Minutes, aids[1].Minutes)
	}
	for _, o := range r.Operations {
		if o.Kind == KindAid && strings.Contains(o.Do.String(), "stepped rods") && o.Minutes != 30 { // one for each shaft
			t.Errorf("%s: %v minutes", o.Do, o.Minutes)
		}
		if o.Kind == KindSetUp && strings.Contains(o.Do.String(), "right") && !strings.Contains(o.Note.String(), "turn the jig plate over") {
			t.Errorf("%s", o.Note)
		}
		if o.Cut != nil && o.Kind == KindLocate && (o.At != nil || !o.Placed) {
			t.Errorf("%s: the jig places it, there are no dials", o.Do)
		}
	}
}

// By hand without a jig nothing is said of one, and no place is dialled: the
// hole centres itself.
func TestByHandWithoutAJig(t *testing.T) {
	j, s := axle(), millShop()
	s.Machine = ByHand
	for i := range j.Bores {
		j.Bores[i].Wear = 0.03
	}
	for _, o := range Make(j, s, plainCut, plainRules()).Operations {
		all := (o.Do + o.Tool + o.Note + o.GaugeFirst + o.Holding).String()
		if strings.Contains(all, "jig") || strings.Contains(all, "new centre") || strings.Contains(all, "New centre") || o.At != nil || o.Placed {
			t.Errorf("%s: %s", o.Do, all)
		}
		if o.Kind == KindLocate && !strings.Contains(o.GaugeFirst.String(), "centred under the drill") {
			t.Errorf("%s: %s", o.Do, o.GaugeFirst)
		}
	}
}

// Each block is read alone: what is said of one hole is said of the next.
func TestWarningsStandOnEveryHole(t *testing.T) {
	j, s := turnedOver(), millShop()
	for i := range j.Bores {
		j.Bores[i].Second = 0
	}
	r := Make(j, s, plainCut, plainRules())
	for kind, words := range map[Kind]string{KindSizeSeat: "never turn it back", KindChamfer: "takes its burr off", KindPress: "until the flange sits",
		KindGauge: "write the size down", KindLocate: "depth stop set"} {
		for _, side := range []job.Side{job.Left, job.Right} {
			if o := find(t, r, kind, "axle."+string(side)); !strings.Contains(o.Note.String(), words) {
				t.Errorf("%s does not say %q: %s", o.Do, words, o.Note)
			}
		}
	}
}

// The truck is stripped before it is clamped, the wheel that goes on last first.
func TestStrip(t *testing.T) {
	r := Make(axle(), millShop(), plainCut, plainRules())
	o := r.Operations[0]
	if o.Kind != KindStrip || !strings.Contains(o.Note.String(), "axle: draw off the wheel on the right, the insulated one, then") ||
		o.GaugeFirst == "" || !o.Pressed {
		t.Errorf("%+v", o)
	}
	j := axle()
	j.Bores[0].Made = true
	if k := Make(j, millShop(), plainCut, plainRules()).Operations[0].Kind; k == KindStrip {
		t.Error("a truck that was worked on is apart already")
	}
}

// Every oil hole is taken hold of anew: the second takes its time as well.
func TestSecondOilHole(t *testing.T) {
	j, s := axle(), millShop()
	for i := range j.Bores {
		j.Bores[i].Oil = &Oil{AtDeg: 90, Diameter: 3.5}
	}
	r := Make(j, s, plainCut, plainRules())
	first, second := find(t, r, KindOil, "axle.left"), find(t, r, KindOil, "axle.right")
	if second.Minutes < 3.05 || math.Abs(first.Minutes-second.Minutes-3) > 1e-9 {
		t.Errorf("%v and %v minutes", first.Minutes, second.Minutes)
	}
}

// A cast wall is touched at one height; the head is trammed before anything is
// clamped under it; a plate is square and a lathe has no head.
func TestHowItIsClamped(t *testing.T) {
	for _, c := range []struct {
		machine    Machine
		casting    bool
		wall, tram bool
	}{{Mill, true, true, true}, {Mill, false, false, true}, {OnLathe, true, false, false}} {
		j, s := axle(), millShop()
		j.Casting, s.Machine = c.casting, c.machine
		note := find(t, Make(j, s, plainCut, plainRules()), KindSetUp, "").Note.String()
		if strings.Contains(note, "one height") != c.wall || strings.Contains(note, "trammed") != c.tram {
			t.Errorf("%+v: %s", c, note)
		}
	}
}

// A cutter of which nobody says how far it reaches is taken for a short one, and
// the operation says what it needs: 3 of plate, or 16 of chassis, and 2 beyond it.
func TestReachIsSaid(t *testing.T) {
	s := millShop()
	s.EndMills = []Tool{{Name: "4 mm end mill", Size: 4}}
	note := find(t, Make(axle(), s, plainCut, plainRules()), KindLocate, "axle.left").Note.String()
	for _, w := range []string{"needs a reach of 5.0 mm", "flutes 11.0 mm, shank 6.0 mm"} {
		if !strings.Contains(note, w) {
			t.Errorf("no %q in %s", w, note)
		}
	}
	note = find(t, Make(axle(), millShop(), plainCut, plainRules()), KindLocate, "axle.right").Note.String()
	if !strings.Contains(note, "needs a reach of at least 18.0 mm") || strings.Contains(note, "not given") {
		t.Error(note)
	}
}

// What a jig holds is printed as a place and not as dials; a bush that is in
// already wants no rod.
func TestPlaceWithoutDials(t *testing.T) {
	row := Operation{Place: [2]float64{10, 6}, Placed: true}.row()
	if row.DialMM != nil || row.AtMM == nil || row.AtMM[0].Float() != 10 {
		t.Errorf("%+v", row)
	}
	if row = (Operation{Place: [2]float64{10, 6}}).row(); row.AtMM != nil {
		t.Errorf("%+v", row)
	}
	j, s := axle(), millShop()
	s.Lathe = true
	for i := range j.Bores {
		j.Bores[i].HeldBy, j.Bores[i].In, j.Bores[i].Made = seat.ByCompound, true, true
		j.Bores[i].Way = seat.OldSeatWay
	}
	for _, o := range Make(j, s, plainCut, plainRules()).Operations {
		if strings.Contains(o.Do.String(), "bonding rod") {
			t.Errorf("%s for bushes that are in", o.Do)
		}
	}
}
