package route

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rebush/fits/say"
	"rebush/plan/seat"
)

// brass is what plugs and sleeves of the tests are turned from.
var brass = seat.Metal{Name: "free-cutting brass C360", Leaded: true}

// plugged is the axle of axle with a plug in its left hole: the hole for the
// plug stands 0.1 beside the target.
func plugged(mend seat.Mend) Job {
	j := axle()
	x := &j.Bores[0]
	x.Mend = mend
	x.Part = &seat.Part{Mend: mend, At: [2]float64{10, 6.1}, Way: seat.Way{Kind: seat.Reamer, Name: "7 mm H7 reamer", Size: 7},
		SeatLow: 7.006, SeatHigh: 7.014, ODLow: 7.02, ODHigh: 7.028, Length: 3.6, Metal: brass, HeldBy: seat.ByPress,
		PressN: [2]float64{80, 500}, CleanUp: 0.3, Left: 2.4, Web: 0.9, Chance: 0.97}
	return j
}

// askedCut answers as plainCut does and keeps the question.
func askedCut(q Query) (Cut, error) {
	c, err := plainCut(q)
	c.Asked = q
	return c, err
}

func partShop() Shop {
	s := millShop()
	s.Lathe = true
	s.Pins.To = 8
	s.Drills = append(s.Drills, Tool{Name: "2.4 mm drill", Size: 2.4}, Tool{Name: "6.7 mm drill", Size: 6.7, Reach: 40})
	s.Drills = []Tool{s.Drills[4], s.Drills[0], s.Drills[1], s.Drills[2], s.Drills[3], s.Drills[5]}
	return s
}

// steps lists kinds of operations on a bore, in their order.
func steps(r Route, bore string) []string {
	var out []string
	for _, o := range r.Operations {
		if o.Bore == bore {
			out = append(out, string(o.Kind))
		}
	}
	return out
}

// A plug: its hole is made where it stands, it is turned, pressed, faced flush,
// and the seat is then cut about the target in the solid metal, on a spot.
func TestPlug(t *testing.T) {
	r := Make(plugged(seat.Plug), partShop(), askedCut, plainRules())
	want := []string{"locate", "open", "size seat", "gauge", "turn", "set part", "face flush", // the plug
		"spot", "open", "locate", "open", "chamfer", "size seat", "gauge", "press", "gauge"}
	got := steps(r, "axle.left")
	// A hole of 3.2 to 6.7 is opened in steps.
	var plain []string
	for i, k := range got {
		if i == 0 || k != "open" || got[i-1] != "open" {
			plain = append(plain, k)
		}
	}
	if d := cmp.Diff(want, plain); d != "" {
		t.Fatal(d, got)
	}
	at, faced := 0, false
	for _, o := range r.Operations {
		if o.Bore != "axle.left" {
			continue
		}
		faced = faced || o.Kind == KindFlush
		if o.At == nil {
			continue
		}
		at++
		place := [2]float64{10, 6.1}
		if faced {
			place = [2]float64{10, 6}
		}
		if *o.At != place || o.Place != place {
			t.Errorf("%s: dials %v, place %v, want %v", o.Do, *o.At, o.Place, place)
		}
		if o.Cut != nil && (o.Cut.Asked.Material == brass.Name) != faced {
			t.Errorf("%s is asked of %q", o.Do, o.Cut.Asked.Material)
		}
		if o.Kind == KindSizeSeat && !faced && (o.Limits[0] != 7.006 || !strings.Contains(o.Do.String(), "plug")) {
			t.Errorf("%s: %v", o.Do, o.Limits)
		}
	}
	if at < 8 {
		t.Errorf("only %d places", at)
	}
	turn := find(t, r, KindTurn, "axle.left")
	// 3.6 in the plate, and 0.3 on each side to face off.
	for _, w := range []string{"0.006 to 0.022 mm over it", "length 4.20 mm"} {
		if !strings.Contains(turn.Note.String(), w) || !turn.Leaded {
			t.Errorf("no %q: %+v", w, turn)
		}
	}
	set := find(t, r, KindSetPart, "axle.left")
	if strings.Contains(set.Tool.String(), "guide") {
		t.Errorf("a guide in a solid plug: %s", set.Tool)
	}
	if !set.Pressed || set.GaugeFirst == "" || !strings.Contains(set.Note.String(), "HALT") {
		t.Errorf("%+v", set)
	}
}

// A plug in compound is turned under its hole, by 0.02 to 0.05, and no trial in
// scrap is asked for it.
func TestPlugInCompound(t *testing.T) {
	j := plugged(seat.Plug)
	p := j.Bores[0].Part
	p.HeldBy, p.ODLow, p.ODHigh = seat.ByCompound, 6.964, 6.986
	r := Make(j, partShop(), askedCut, plainRules())
	if turn := find(t, r, KindTurn, "axle.left").Note.String(); !strings.Contains(turn, "0.020 to 0.050 mm under it") {
		t.Error(turn)
	}
	if set := find(t, r, KindSetPart, "axle.left"); !set.Compound || set.Pressed ||
		!strings.Contains(set.GaugeFirst.String(), "The plug measures 6.964 to 6.986 mm") {
		t.Errorf("%+v", set)
	}
	for _, o := range r.Operations {
		if o.Kind == KindScrap && strings.Contains(o.Do.String(), "plug") {
			t.Errorf("%s, and compound fills it", o.Do)
		}
	}
}

// All plugs are in, cured and flush before any seat of the truck is cut or the
// chassis is clamped for one.
func TestPlugsComeBeforeSeats(t *testing.T) {
	j := plugged(seat.Plug)
	j.Bores[0].Part.HeldBy = seat.ByCompound
	other := axle().Bores
	for i := range other {
		other[i].Name, other[i].Shaft = strings.Replace(other[i].Name, "axle", "rear", 1), "rear"
	}
	y := plugged(seat.Plug).Bores[0]
	y.Name, y.Shaft = "rear.left", "rear"
	j.Bores = append(j.Bores, y, other[1])
	r := Make(j, partShop(), askedCut, plainRules())
	lastFlush, cured, firstSeat := 0, 0, 0
	for i, o := range r.Operations {
		switch {
		case o.Kind == KindFlush:
			lastFlush = i
		case o.Kind == KindCure && cured == 0:
			cured = i
		case o.Kind == KindChamfer && firstSeat == 0: // only seats of bushes have one
			firstSeat = i
		}
	}
	if !(0 < cured && cured < lastFlush && lastFlush < firstSeat) {
		t.Errorf("cured at %d, last flush at %d, first seat at %d", cured, lastFlush, firstSeat)
	}
	for _, o := range r.Operations[:lastFlush] {
		if o.Kind == KindSizeSeat && !strings.Contains(o.Do.String(), "plug") {
			t.Errorf("%s before all plugs are in", o.Do)
		}
	}
	for i, u := range r.Setups {
		for _, v := range r.Setups[:i] {
			if u.Name == v.Name {
				t.Errorf("two set-ups are called %s", u.Name)
			}
		}
	}
}

// A sleeve goes in solid, as a plug does: the seat in it is cut when it is in.
func TestSleeve(t *testing.T) {
	r := Make(plugged(seat.BushInABush), partShop(), askedCut, plainRules())
	turn := find(t, r, KindTurn, "axle.left")
	if !strings.Contains(turn.Note.String(), "solid as yet") || !strings.Contains(turn.Do.String(), "sleeve") {
		t.Errorf("%s: %s", turn.Do, turn.Note)
	}
	set, spot, seat := find(t, r, KindSetPart, "axle.left"), find(t, r, KindSpot, "axle.left"), find(t, r, KindChamfer, "axle.left")
	if !(turn.Number < set.Number && set.Number < spot.Number && spot.Number < seat.Number) {
		t.Errorf("turned at %d, set at %d, spotted at %d, its seat at %d", turn.Number, set.Number, spot.Number, seat.Number)
	}
}

// An old bush that stays is tried whether it sits fast, nothing is cut or
// pressed for it, and it is cut as what it is made of.
func TestOldBushStays(t *testing.T) {
	j := axle()
	x := &j.Bores[0]
	x.Mend, x.Bushed = seat.BushInABush, true
	x.Part = &seat.Part{Mend: seat.BushInABush, Stays: true, At: x.At, Metal: brass, SeatLow: 7, SeatHigh: 7.01}
	r := Make(j, partShop(), askedCut, plainRules())
	for _, o := range r.Operations {
		if o.Kind == KindTakeOut || o.Kind == KindSetPart || o.Kind == KindTurn || o.Kind == KindFlush {
			t.Errorf("%s of a bush that stays", o.Do)
		}
	}
	try, first := find(t, r, KindTryFast, "axle.left"), 0
	for _, o := range r.Operations {
		if o.Kind == KindLocate && first == 0 {
			first = o.Number
		}
	}
	if try.Number > first || !strings.Contains(try.Note.String(), "plan again") {
		t.Errorf("%d, first cut %d: %s", try.Number, first, try.Note)
	}
	if o := find(t, r, KindSizeSeat, "axle.left"); o.Cut.Asked.Material != brass.Name || !o.Leaded {
		t.Errorf("cut as %q, lead %v", o.Cut.Asked.Material, o.Leaded)
	}
	for _, o := range r.Operations {
		if o.Cut != nil && (o.Bore == x.Name) != strings.Contains(o.Note.String(), "must not turn") {
			t.Errorf("%s: %s", o.Do, o.Note)
		}
	}
	x.Part.Metal = seat.Metal{}
	if o := find(t, Make(j, partShop(), askedCut, plainRules()), KindSizeSeat, "axle.left"); o.Cut.Asked.Material != "bearing bronze" || !o.Leaded {
		t.Errorf("an old bush of which nothing is known is cut as %q, lead %v", o.Cut.Asked.Material, o.Leaded)
	}
}

// A plug that is drilled for through a jig wants a hole of its own in the plate, and
// its slip bushes.
func TestPartsWantTheirSlipBushes(t *testing.T) {
	s := partShop()
	s.Machine, s.Jig = DrillPress, true
	r := Make(plugged(seat.Plug), s, askedCut, plainRules())
	var all []say.Text
	for _, o := range r.Operations {
		if o.Kind == KindAid {
			all = append(all, o.Note)
		}
	}
	note := say.Join(" | ", all...).String()
	for _, w := range []string{"axle.left, its plug 10.000, 6.100", "axle 10.000, 6.000", "7"} {
		if !strings.Contains(note, w) {
			t.Errorf("no %q in %s", w, note)
		}
	}
}

// Whatever the machine, and whether the plug is reamed for or bored for, its seat
// is started in the solid by a drill before anything bores or plunges.
func TestPlugOnEveryMachine(t *testing.T) {
	for _, machine := range []Machine{Mill, OnLathe, DrillPress} {
		for _, way := range []seat.Way{{Kind: seat.Reamer, Name: "7 mm H7 reamer", Size: 7}, {Kind: seat.BoringHead, Name: "boring head", Size: 7.01}} {
			if machine == DrillPress && way.Kind == seat.BoringHead {
				continue
			}
			j, s := plugged(seat.Plug), partShop()
			j.Bores[0].Part.Way = way
			s.Machine, s.Jig, s.BoringFrom, s.BoringTo = machine, true, 4, 30
			var after []Operation
			faced := false
			for _, o := range Make(j, s, askedCut, plainRules()).Operations {
				if faced && o.Bore == "axle.left" && o.Cut != nil {
					after = append(after, o)
				}
				faced = faced || o.Kind == KindFlush
			}
			if len(after) < 3 {
				t.Fatalf("%s, %s: %d cuts in the plug", machine, way.Name, len(after))
			}
			want := KindSpot
			if machine == DrillPress {
				want = KindLocate // the slip bush starts it
			}
			if after[0].Kind != want || !strings.Contains(after[0].Tool.String()+after[1].Tool.String(), "drill") {
				t.Errorf("%s, %s: the plug is started by %s: %s, %s", machine, way.Name, after[0].Kind, after[0].Tool, after[1].Tool)
			}
			for i, o := range after[1:] {
				// 4: the seat of 5.0085 less the 1 mm that the bar makes its axis in.
				if before := after[i]; o.Tool == "boring tool" && before.Cut.Asked.Op == OpDrill && before.ToolMM != 4 {
					t.Errorf("%s: the bar goes into a hole of %v", machine, before.ToolMM)
				}
			}
		}
	}
}

// A plug that wants a second hold beside its press gets it, but for the punch
// mark that its plate does not bear.
func TestPlugStaked(t *testing.T) {
	j := plugged(seat.Plug)
	j.Casting = true
	j.Bores[0].Part.Second = seat.Stake
	j.Bores[0].Tension = [2]float64{0, 134}
	o := find(t, Make(j, partShop(), askedCut, plainRules()), KindSetPart, "axle.left")
	if !strings.Contains(o.Note.String(), "stake the rim") {
		t.Error(o.Note)
	}
}

// Two plugs of one shaft are cut for in one clamping where the tool of their holes
// reaches; a short one wants the chassis turned over.
func TestToolOfAPartReaches(t *testing.T) {
	for reach, want := range map[float64]int{40: 2, 12: 3} {
		j := plugged(seat.Plug)
		j.Bores[0].Part.At = j.Bores[0].At
		j.Bores[1].Part, j.Bores[1].Mend = j.Bores[0].Part, seat.Plug
		for i := range j.Bores {
			j.Bores[i].PartReach, j.Bores[i].PartShank = reach, 7
		}
		s := partShop()
		for i := range s.EndMills {
			s.EndMills[i].Reach = 40
		}
		for i := range s.Drills {
			s.Drills[i].Reach = 40
		}
		if got := Make(j, s, askedCut, plainRules()).Time().Setups; got != want {
			t.Errorf("with a reach of %v: %d clampings, want %d", reach, got, want)
		}
	}
}

// One trial in scrap does not answer for another metal, nor a plug's hole for a
// bush's.
func TestScrapOfEachMetal(t *testing.T) {
	j := plugged(seat.Plug)
	p := j.Bores[0].Part
	p.Way, p.SeatLow, p.SeatHigh = seat.Way{Kind: seat.Reamer, Name: "5 mm H7 reamer", Size: 5}, 5.005, 5.012
	p.ODLow, p.ODHigh = 5.019, 5.031
	n := 0
	for _, o := range Make(j, partShop(), askedCut, plainRules()).Operations {
		if o.Kind == KindScrap {
			n++
		}
	}
	if n != 3 { // the plug's hole in the plate, the seat in brass, the other seat in the plate
		t.Errorf("%d trials, want 3", n)
	}
}
