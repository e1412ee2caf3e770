package route

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rebush/plan/job"
	"rebush/plan/seat"
)

func TestPressing(t *testing.T) {
	cases := []struct {
		name         string
		can          float64
		tool, note   string
		change       func(*Bore)
		gaugeFirst   string
		backedByWall bool
	}{
		{"halt at half as much again", 900, "press", "HALT at 600 N", nil, "5.019 to 5.031", true},
		{"never above what the press gives", 450, "press", "HALT at 450 N", nil, "", true},
		{"too much for the press", 300, "bolt", "draw it in by the bolt", nil, "", true},
		{"press not known", 0, "bolt", "a bolt shows no force", nil, "", true},
		{"compound", 600, "compound", "none in the bore", func(x *Bore) { x.HeldBy = "compound" }, "", true},
		{"stake", 600, "press", "stake", func(x *Bore) { x.Second = seat.Flange | seat.Stake }, "flange outwards",
			true},
		{"cap", 600, "fingers", "measure its partner too",
			func(x *Bore) { x.HeldBy, x.Way = seat.ByCap, seat.CapWay }, "", false},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			j, s := axle(), millShop()
			s.PressN = c.can
			for i := range j.Bores {
				if c.change != nil {
					c.change(&j.Bores[i])
				}
			}
			o := find(t, Make(j, s, plainCut, plainRules()), "press", "axle.left")
			if !strings.Contains(o.Tool.String(), c.tool) || !strings.Contains(o.Note.String(), c.note) ||
				!strings.Contains(o.GaugeFirst.String(), c.gaugeFirst) {
				t.Errorf("%s | %s | %s", o.Tool, o.Note, o.GaugeFirst)
			}
			if strings.Contains(o.Backing.String(), "behind that wall") != c.backedByWall {
				t.Error(o.Backing)
			}
		})
	}
}

func TestFinishing(t *testing.T) {
	cases := []struct {
		name   string
		change func(*Bore)
		kind   string
		want   []string
		never  string
	}{
		{"as delivered", func(*Bore) {}, "gauge", []string{"closes into its limits"}, ""},
		{"mandrels in steps", func(x *Bore) { x.Finish, x.FinishSizes = "mandrel", []float64{3.18, 3.19} },
			"size bore", []string{"3.18, then 3.19", "never ream"}, ""},
		{"ream", func(x *Bore) {
			x.Porous, x.Finish, x.FinishTool, x.FinishSizes = false, "ream", "3.2 mm H7 reamer", []float64{3.2}
		}, "size bore", []string{"3.2 mm H7 reamer", "in line"}, ""},
		{"porous to its own axle", func(x *Bore) { x.Finish = "to its own axle" }, "size bore",
			[]string{"balls or stepped mandrels", "its own axle", "never reamed"}, "broach"},
		{"solid to its own axle", func(x *Bore) { x.Finish, x.Porous = "to its own axle", false }, "size bore",
			[]string{"broach", "its own axle"}, "balls"},
		{"bored in place", func(x *Bore) { x.Finish, x.FinishTool = "bore", "boring head" }, "size bore",
			[]string{"in place"}, ""},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			j := axle()
			for i := range j.Bores {
				c.change(&j.Bores[i])
			}
			r := Make(j, millShop(), plainCut, plainRules())
			var o Operation
			for _, p := range r.Operations {
				if string(p.Kind) == c.kind && p.Bore == "axle.left" && !p.OfSeat {
					o = p
				}
			}
			all := (o.Do + " " + o.Tool + " " + o.Note).String()
			for _, w := range c.want {
				if !strings.Contains(all, w) {
					t.Errorf("no %q in %q", w, all)
				}
			}
			if c.never != "" && strings.Contains(all, c.never) {
				t.Errorf("%q in %q", c.never, all)
			}
		})
	}
}

// Bores are bored in place in a clamping of their own: both in one at one setting
// where a bar of 3.18 reaches, five times its thickness, 15.9, to 2 beyond the far
// plate, and the two are alike; else each from its own side.
func TestBoredInPlaceIsAnotherClamping(t *testing.T) {
	for _, c := range []struct {
		name      string
		width     float64
		far       func(*Bore)
		clampings int
		bored     int
	}{
		{"a bar reaches", 13.8, func(*Bore) {}, 2, 1},
		{"no bar reaches", 14, func(*Bore) {}, 3, 2},
		{"two sizes", 13.8, func(x *Bore) { x.Limits[1] += 0.01 }, 3, 2},
		{"two axes", 13.8, func(x *Bore) { x.At[1] += 0.01 }, 3, 2},
	} {
		j := axle()
		j.Width = c.width
		for i := range j.Bores {
			j.Bores[i].Finish, j.Bores[i].FinishTool = "bore", "boring head"
		}
		c.far(&j.Bores[1])
		r := Make(j, millShop(), plainCut, plainRules())
		clampings, bored, gauged := 0, 0, 0
		for _, u := range r.Setups {
			if u.Clamping {
				clampings++
			}
		}
		for _, o := range r.Operations {
			if o.Kind == KindSizeBore {
				bored++
			}
			if o.Kind == KindGauge && !o.OfSeat {
				gauged++
			}
		}
		if c.name == "two axes" { // their seats are cut from either side as well
			clampings--
		}
		if clampings != c.clampings || bored != c.bored || bored+gauged != 2 {
			t.Errorf("%s: %d clampings, %d bored, %d gauged", c.name, clampings, bored, gauged)
		}
	}
}

func TestChamfer(t *testing.T) {
	j := axle()
	j.Bores[1].FlangeOD = 0
	r := Make(j, millShop(), plainCut, plainRules())
	if o := find(t, r, "chamfer", "axle.left"); !strings.Contains(o.Do.String(), "0.4 mm x 45") {
		t.Error(o.Do)
	}
	far := find(t, r, "chamfer", "axle.right")
	if !strings.Contains(far.Do.String(), "0.2 mm x 45") || !strings.Contains(far.Tool.String(), "fingers") ||
		far.Cut != nil {
		t.Error(far.Do, far.Tool)
	}
}

func TestOilWay(t *testing.T) {
	j, s := axle(), millShop()
	s.Lathe = true
	j.Bores[0].Oil = &Oil{AtDeg: 90, Diameter: 1.2}
	j.Bores[1].Oil = &Oil{AtDeg: 270, Diameter: 1.2}
	r := Make(j, s, plainCut, plainRules())
	if o := find(t, r, "oil", "axle.left"); !strings.Contains(o.Note.String(), "loaded side") ||
		!strings.Contains(o.Tool.String(), "to buy") {
		t.Error(o.Note, o.Tool)
	}
	if o := find(t, r, "oil", "axle.right"); strings.Contains(o.Note.String(), "loaded side") {
		t.Error(o.Note)
	}
	if buy := withoutGauges(r.Buy); len(buy) != 1 || buy[0].Why != "axle.left and axle.right" {
		t.Error(buy)
	}
	s.Drills = append([]Tool{{Name: "1.2 mm drill", Size: 1.2}}, s.Drills...)
	if r := Make(j, s, plainCut, plainRules()); len(withoutGauges(r.Buy)) != 0 {
		t.Error(r.Buy)
	}
}

// Who goes through what: the larger end last only where the bore of the smaller
// one does not let it pass, else the wheel that is off.
func TestAxleGoesIn(t *testing.T) {
	cases := []struct {
		s           Shaft
		left, right float64 // least finished bores, 0: not dealt with
		want        string
		larger      bool // said to be for its size
	}{
		{Shaft{Journal: [2]float64{3.16, 2.36}}, 3.175, 2.405, "right", true},
		{Shaft{Journal: [2]float64{2.36, 3.16}, Insulated: "right"}, 2.405, 3.175, "left", true},
		{Shaft{Journal: [2]float64{3.16, 3.16}, Insulated: "right"}, 3.175, 3.175, "right", false},
		{Shaft{Journal: [2]float64{3.16, 3.16}}, 3.175, 3.175, "", false},
		// 5 um of difference, and both bores let the larger end pass.
		{Shaft{Journal: [2]float64{3.955, 3.96}, Insulated: "right"}, 3.978, 3.978, "right", false},
		{Shaft{Journal: [2]float64{3.955, 3.96}}, 3.978, 3.978, "", false},
		// A thousandth more and it does not: 5 um of room are wanted.
		{Shaft{Journal: [2]float64{3.955, 3.974}, Insulated: "right"}, 3.978, 3.99, "left", true},
		// Nothing is known of a bore that is not dealt with.
		{Shaft{Journal: [2]float64{3.955, 3.96}, Insulated: "right"}, 0, 3.978, "left", true},
	}
	for _, c := range cases {
		c.s.Name = "axle"
		b := &builder{r: plainRules()}
		for side, d := range map[job.Side]float64{job.Left: c.left, job.Right: c.right} {
			if d > 0 {
				b.j.Bores = append(b.j.Bores, Bore{Shaft: "axle", Side: side, Limits: [2]float64{d, d + 0.04}})
			}
		}
		got := b.leads(c.s)
		if string(got) != c.want {
			t.Errorf("%+v: %q first, want %q", c.s, got, c.want)
		}
		if larger := strings.Contains(b.passNote(c.s, b.j.Bores).String(), "larger end last"); larger != c.larger {
			t.Errorf("%+v: said to be for its size: %v", c.s, larger)
		}
	}
}

// What hazards go by is marked: dry cleaning of magnesium, chips of leaded
// metal, the hand below, the compound, the press.
func TestMarksOfHazards(t *testing.T) {
	j := axle()
	j.Magnesium = true
	for _, o := range Make(j, millShop(), plainCut, plainRules()).Operations {
		if o.Kind == KindWash && (strings.Contains(o.Do.String(), "Wash") ||
			!strings.Contains(o.Do.String(), "dry") || strings.Contains((o.Do+o.Tool).String(), "spirit")) {
			t.Error("magnesium is washed: " + o.Do)
		}
	}
	j = axle()
	for i := range j.Bores {
		x := &j.Bores[i]
		x.BushMade, x.BushSizes, x.Leaded, x.Second = true, "any", true, seat.Flange|seat.Compound
	}
	marks := map[string]int{}
	for _, o := range Make(j, millShop(), plainCut, plainRules()).Operations {
		if o.Leaded != (o.Kind == KindTurn) {
			t.Errorf("%s: chips of leaded metal %v", o.Do, o.Leaded)
		}
		if o.Kind == KindPress && (!o.Compound || !o.Pressed) {
			t.Errorf("%s: compound %v, pressed %v", o.Do, o.Compound, o.Pressed)
		}
		for name, is := range map[string]bool{"leaded": o.Leaded, "below": o.FromBelow, "spindle": o.Spindle} {
			if is {
				marks[name]++
			}
		}
	}
	if marks["leaded"] != 1 || marks["below"] != 1 || marks["spindle"] < 6 {
		t.Errorf("marked: %v", marks)
	}
}

// A bush that nobody could look behind ends the route: nothing is cut, pressed or
// put together before its seat is measured, whatever the other holes need.
func TestOldBushEndsTheRoute(t *testing.T) {
	j := axle()
	j.Bores[0].Bushed, j.Bores[0].SeatUnknown = true, true
	r := Make(j, millShop(), plainCut, plainRules())
	var got []string
	for _, o := range r.Operations {
		got = append(got, string(o.Kind)+" "+o.Bore)
	}
	if d := cmp.Diff([]string{"strip ", "take out axle.left", "gauge axle.left"}, got); d != "" {
		t.Error(d)
	}
	last := r.Operations[len(r.Operations)-1]
	if !strings.Contains(last.Note.String(), "ENDS HERE") || !strings.Contains(last.Note.String(), "plan again") || !last.MayWait {
		t.Errorf("%+v", last)
	}
	if len(r.Troubles) != 1 || r.Troubles[0].Rule != EndsHere || len(r.Proving) != 0 {
		t.Errorf("%+v %v", r.Troubles, r.Proving)
	}
	// Its outside is known, or its seat: it comes out and the work goes on.
	j.Bores[0].SeatUnknown = false
	r = Make(j, millShop(), plainCut, plainRules())
	find(t, r, KindTakeOut, "axle.left")
	find(t, r, KindWheels, "")
}
