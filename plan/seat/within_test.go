package seat

import (
	"math"
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/press"
)

const (
	lathe    = "lathe: yes\n"
	compound = "compounds: [gap-filling]\n"
)

// wide is the left hole of the truck worn to a slot of 2.6 radius and 0.8 deep: wider
// than any bush of the drawer clears.
func wide(t *testing.T, shop string) (Input, []Site) {
	in, _ := read(t, shop, truck)
	all := sites(in.Job)
	all[0].Old.Bore.Edges = nil
	w := &all[0].Old.Worn
	w.R, w.W, w.C, w.D = 2.6, 0.8, 1.02, 1.82
	all[0].Old.Middle = w.Found()
	in.Job.Chassis.Current = "none" // compound passes none
	return in, all
}

func answered(t *testing.T, m Mended) Answer {
	t.Helper()
	if !feasible(m.Answers) {
		near := ""
		if a := m.Nearest(); a != nil {
			for _, f := range a.Fails {
				near += f.Text().String() + "; "
			}
		}
		t.Fatalf("%s: %s %s", m.Mend, m.WhyNot, near)
	}
	return m.Answers[0]
}

// By hand: the slot's middle lies 0.4 up from the old centre (10, 7.95), at 8.35; a
// circle of 2.6 + 0.4 = 3.0 takes it in, and with the doubt 2 x hypot(0.01, 0.02) =
// 0.0447 and 0.02 to cut the plug's hole needs 3.0647. The bush of 5 about (10.1,
// 7.9) stands 0.4610 off, so that a web of 0.5 round a seat of 5.0118 wants 0.4610 +
// 2.5059 + 0.5 = 3.4669: bored to the next tenth, 7.0.
func TestPlugByHand(t *testing.T) {
	in, all := wide(t, bench1+lathe+compound)
	in.Job.Choose = map[string]string{"": "solid 5"}
	got, _ := Offer(in, all)
	if feasible(got[0].Of(Rebush).Answers) {
		t.Fatal("a bush goes without a plug")
	}
	a := answered(t, got[0].Of(Plug))
	p := a.Part
	near(t, "plug", []float64{p.At[0], p.At[1], p.SeatLow, p.SeatHigh, a.SeatAt[0], a.SeatAt[1]},
		[]float64{10, 8.35, 6.99, 7.01, 10.1, 7.9})
	off := math.Hypot(0.1, 0.45)
	near(t, "web and rest", []float64{p.Web, p.CleanUp, p.Left, a.Ligament},
		[]float64{6.99/2 - off - a.SeatHigh/2, 6.99/2 - 3.0, 8.35 - 3.505, 8.35 - 3.505})
	if a.Mend != Plug || p.Mend != Plug || p.Stays || a.Bush.Code != "solid 5" || !strings.HasPrefix(p.Metal.Name, "free-cutting brass") {
		t.Errorf("%+v", p)
	}
	// A solid plug pressed into zinc would crack it: turned to 8 um for a hole bored to
	// 20 it goes in with up to 29 um. It is set in compound, in the middle of a gap of
	// 0.02 to 0.08, and presses on nothing.
	near(t, "outside", []float64{p.ODLow, p.ODHigh, p.PressMPa}, []float64{6.946, 6.954, 0})
	if p.HeldBy != ByCompound {
		t.Errorf("held by %s", p.HeldBy)
	}
	if tools := strings.Join(a.Tools(), ", "); !strings.HasPrefix(tools, "boring head, 5 mm H7 reamer") {
		t.Errorf("tools %s", tools)
	}
}

// In brass the plug goes in with a press, of the plate's own metal, and what bush
// and plug press is held against the plate together.
func TestPressedPlug(t *testing.T) {
	in, _ := read(t, bench1+lathe, strings.Replace(truck, "zinc die casting", "brass sheet, half hard", 1))
	_, all := wide(t, bench1+lathe)
	all[0].Old.U = 0.22 // so badly known that the plug's hole may miss some of the wear
	in.Job.Choose = map[string]string{"": "solid 5"}
	in.Rules.BoringHead, in.Casting.Plate.Yield = 0.006, 260 // a careful hand, hard sheet
	got, _ := Offer(in, all)
	a := answered(t, got[0].Of(Plug))
	p := a.Part
	if p.HeldBy != ByPress || p.ODLow <= p.SeatHigh || p.PressN[0] <= 0 || p.Metal.Name != in.Casting.Material.Name {
		t.Errorf("%+v", p)
	}
	outer := press.Seat{D: p.SeatHigh, Wall: press.Edge{Ligament: p.Left}}.Factors()
	near(t, "tension", []float64{a.Peak}, []float64{(a.PHigh + p.PressMPa) * math.Max(outer.HoleMax, outer.EdgeMax)})
	plate := in.Casting.Plate
	solid := press.Seat{D: p.SeatLow, Wall: press.Edge{Ligament: 8.35 - p.SeatLow/2},
		Housing: press.Elastic{E: plate.EHigh, Nu: plate.Nu}, Bush: press.Elastic{E: p.Metal.EHigh, Nu: p.Metal.Nu}}
	near(t, "pressure of the plug", []float64{p.PressMPa}, []float64{solid.At(p.ODHigh - p.SeatLow).P})
	j := newJudge(*a.Seen, in.Shop, in.Rules)
	j.part = p
	near(t, "chance", []float64{a.Chance}, []float64{j.chance(&a) * p.Chance})
	if p.Chance <= 0.1 || p.Chance >= 0.9999 {
		t.Errorf("chance of the plug %v", p.Chance)
	}
	if mean := (a.PHigh + p.PressMPa) * p.SeatHigh / 2 / p.Left; mean > a.PeakLimit || a.PHigh <= 0 {
		t.Errorf("mean tension %v of %v", mean, a.PeakLimit)
	}
}

// A plug is turned, and its new hole has to be placed.
func TestPlugWants(t *testing.T) {
	for shop, want := range map[string]string{
		bench1: "its plug has to be turned, and there is no lathe",
		strings.Replace(bench1, "kind: mill, readout: yes", "kind: drill press", 1) + lathe: "the new hole in a plug wants a mill",
	} {
		in, all := wide(t, shop)
		got, _ := Offer(in, all)
		if m := got[0].Of(Plug); !strings.HasPrefix(m.WhyNot.String(), want) || m.Owner == "" || m.OK() {
			t.Errorf("%q, want %q", m.WhyNot, want)
		}
	}
	in, all := wide(t, strings.Replace(bench1, "boring_head: {from: 5, to: 20}\n", "", 1)+lathe+compound)
	got, _ := Offer(in, all)
	m := got[0].Of(Plug)
	if m.OK() || m.Nearest() == nil || m.Nearest().Fail.What != noPartTool || m.Nearest().Fail.WouldSeat() == "" {
		t.Fatalf("%+v", m.Nearest())
	}
	// By hand: 2 x (0.4610 + 5.0118/2 + 0.5) = 6.934.
	if f := m.Nearest().Fail; math.Abs(f.Have-6.934) > 0.001 || f.Text().String() != "its plug wants a hole of at least 6.93 mm, and no tool that is here makes one" {
		t.Errorf("%v %s", f.Have, f.Text())
	}
}

// By hand: a plug of radius 3 whose middle lies 4 from that of a seat of 3 loses as
// much of its rim as an angle with cosine (9 + 16 - 9)/24 = 2/3 on either side: 96.38
// degrees, and 263.62 are left. A plug that a seat takes whole is none.
func TestRoundLeft(t *testing.T) {
	near(t, "left", []float64{RoundLeft(6, 4, 6), RoundLeft(6, 0.4, 5), RoundLeft(6, 0.4, 6.9), RoundLeft(6, 0, 7)},
		[]float64{360 - 2*math.Acos(2.0/3)*180/math.Pi, 360, 0, 0})
}

// Where no larger hole goes beside the edge, the seat may cut through the rim of a
// plug that compound holds, if more than 255 degrees of it stay: here the new centre
// lies 4.2 from the middle of the slot. A reamer, which would run off along the
// joint, does not cut it.
func TestSeatThroughAPlug(t *testing.T) {
	in, all := wide(t, bench1+lathe+compound)
	in.Rules.ClearMax = 0.07 // a bored seat closes this bush less than a reamed one
	w := &all[0].Old.Worn
	w.R, w.W, w.C, w.D = 2.6, 0, 1.02, 1.02
	all[0].At = [2]float64{14.2, 7.95}
	in.Job.Choose = map[string]string{"": "solid 5"}
	in.Job.Chassis.Length, in.Job.Chassis.Height = dim.Must("60 mm"), dim.Must("11.2 mm")
	got, _ := Offer(in, all)
	m := got[0].Of(Plug)
	a := answered(t, m)
	p := a.Part
	if !p.Through() || p.HeldBy != ByCompound || a.Way.Kind != BoringHead {
		t.Fatalf("through %v, held by %s, seat by %s", p.Through(), p.HeldBy, a.Way.Name)
	}
	if left := RoundLeft(p.SeatLow, 4.2, a.SeatHigh); left < 255 || left >= 360 {
		t.Errorf("%v degrees are left", left)
	}
	// Nearer by 1.4, less of the rim stays than the rule wants.
	all[0].At = [2]float64{12.8, 7.95}
	got, _ = Offer(in, all)
	if m := got[0].Of(Plug); feasible(m.Answers) {
		t.Errorf("%v degrees are left", RoundLeft(m.Answers[0].Part.SeatLow, 2.8, m.Answers[0].SeatHigh))
	}
	// The metal left is that of the plug, whose hole is the larger.
	near(t, "left", []float64{a.Ligament, p.Left}, []float64{11.2 - 7.95 - p.SeatHigh/2, 11.2 - 7.95 - p.SeatHigh/2})
}

// A sleeve is offered only where no bush goes without one: it stands about the new
// centre and takes the wear in. By hand the slot wants hypot(0.1, 0.05) + 2.6 or
// |(0.1, -1.87)| + 1.58 = 3.4527, with the doubt and 0.02 to cut 3.5174: 7.1.
func TestSleeveByHand(t *testing.T) {
	in, all := wide(t, bench1+lathe+compound)
	in.Job.Choose = map[string]string{"": "solid 5"}
	got, _ := Offer(in, all)
	a := answered(t, got[0].Of(BushInABush))
	p := a.Part
	near(t, "sleeve", []float64{p.At[0], p.At[1], p.SeatLow, p.SeatHigh, p.Web, p.CleanUp},
		[]float64{10.1, 7.9, 7.09, 7.11, (7.09 - a.SeatHigh) / 2, 7.09/2 - 1.58 - math.Hypot(0.1, 1.87)})
	if a.Mend != BushInABush || p.Stays {
		t.Errorf("%+v", p)
	}
	in, _ = read(t, bench1+lathe, truck)
	got, _ = Offer(in, sites(in.Job))
	if m := got[0].Of(BushInABush); m.WhyNot != "a bush goes in without a sleeve" {
		t.Errorf("%q", m.WhyNot)
	}
}

// bushed is the left hole of the truck with its old bush of 6.5 still in.
func bushed(t *testing.T, od string) (Input, []Site) {
	in, _ := read(t, bench1, truck)
	all := sites(in.Job)
	all[0].Old.Bore.Edges = nil
	all[0].Old.Bore.Bushed, all[0].Old.Bore.BushedOD = true, dim.Must(od)
	return in, all
}

// The old bush stays where its wall takes a new seat: by hand its outside of 6.5
// about (10, 7.95) leaves 3.25 - 0.1118 - 2.5059 = 0.632 of its wall round a seat of
// 5.0118 about (10.1, 7.9). The seat takes the wear in as any. The press of the new
// bush is held against the plate round the hole of the old one, undiminished.
func TestOldBushStays(t *testing.T) {
	in, all := bushed(t, "6.5 mm")
	got, _ := Offer(in, all)
	m := got[0].Of(BushInABush)
	a := answered(t, m)
	p := a.Part
	near(t, "old bush", []float64{p.At[0], p.At[1], p.SeatLow, p.Web, p.Left, a.Ligament, a.CleanUp},
		[]float64{10, 7.95, 6.5, 3.25 - math.Hypot(0.1, 0.05) - a.SeatHigh/2, 7.95 - 3.25, 7.95 - 3.25,
			a.SeatLow/2 - all[0].Old.Stands().SeatRadius(all[0].At)})
	outer := press.Seat{D: 6.5, Wall: press.Edge{Ligament: 4.7}}.Factors()
	near(t, "tension", []float64{a.Peak}, []float64{a.PHigh * math.Max(outer.HoleMax, outer.EdgeMax)})
	if m.Asks != "" || !p.Stays || a.Turned() != 0 || len(a.Tools()) == 0 || a.Tools()[0] != a.Way.Name {
		t.Errorf("asks %q, %+v", m.Asks, p)
	}
	// A bush is as soft as the softest that bushes are made of, and as stiff as the stiffest.
	if a.Seen.Plate2.EHigh < in.Casting.Plate.EHigh || a.Seen.Plate2.ELow > 70000 {
		t.Errorf("E from %v to %v", a.Seen.Plate2.ELow, a.Seen.Plate2.EHigh)
	}
	// 0.3 less outside leaves 0.48 of its wall, and 0.5 is wanted.
	in, all = bushed(t, "6.2 mm")
	in.Job.Choose = map[string]string{"": "solid 5"}
	got, _ = Offer(in, all)
	m = got[0].Of(BushInABush)
	if m.OK() || m.Nearest().Fail.What != wallOfPart {
		t.Errorf("%+v", m.Nearest())
	}
}

// Where the outside of the old bush is not known it is asked for, and to take it
// out its seat is.
func TestOldBushOfUnknownSize(t *testing.T) {
	in, all := bushed(t, "6.5 mm")
	all[0].Old.Bore.BushedOD = dim.Length{}
	got, _ := Offer(in, all)
	if m := got[0].Of(BushInABush); m.Asks != "outside of the old bush" || m.WhyNot == "" || m.OK() {
		t.Errorf("%+v", m)
	}
	if m := got[0].Of(Rebush); m.Asks != "seat" {
		t.Errorf("asks %q", m.Asks)
	}
	if m := got[0].Of(Renew); m.Asks != "seat" || !strings.HasPrefix(m.WhyNot.String(), "the old bush is still in") {
		t.Errorf("asks %q: %s", m.Asks, m.WhyNot)
	}
}

// The seat in which a bush works is that of the plug and of the sleeve that it stands in: the
// planned one lies within, and a larger one than the wall of the part stands does
// not work.
func TestWorksWithinAPart(t *testing.T) {
	for _, m := range []Mend{Plug, BushInABush} {
		in, all := wide(t, bench1+lathe+compound)
		in.Job.Choose = map[string]string{"": "solid 5"}
		got, _ := Offer(in, all)
		a := answered(t, got[0].Of(m))
		w := Works(got[0].Hole, &a, in.Shop, in.Rules)
		if w[0] > a.SeatLow+1e-4 || w[1] < a.SeatHigh-1e-4 {
			t.Errorf("%s works from %.4f to %.4f, planned %.4f to %.4f", m, w[0], w[1], a.SeatLow, a.SeatHigh)
		}
		thin := a
		p := *a.Part
		p.SeatLow = 2*apart(p.At, a.SeatAt) + a.SeatHigh + 2*in.Rules.LeastWall - 0.004
		thin.Part = &p
		if v := Works(got[0].Hole, &thin, in.Shop, in.Rules); v[1] >= w[1]-1e-5 {
			t.Errorf("%s: a part with less wall lets it work up to %.4f, another up to %.4f", m, v[1], w[1])
		}
	}
}

// What is explained of a bush in a plug, in a plug that its seat cuts through, in a
// sleeve and in the old bush is what decided.
func TestPartsExplained(t *testing.T) {
	for name, c := range map[string]struct {
		mend Mend
		made func() (Input, []Site)
	}{
		"plug":     {Plug, func() (Input, []Site) { return wide(t, bench1+lathe+compound) }},
		"sleeve":   {BushInABush, func() (Input, []Site) { return wide(t, bench1+lathe+compound) }},
		"old bush": {BushInABush, func() (Input, []Site) { return bushed(t, "6.5 mm") }},
	} {
		in, all := c.made()
		in.Job.Choose = map[string]string{"": "solid 5"}
		got, _ := Offer(in, all)
		m := got[0].Of(c.mend)
		a := answered(t, m)
		x := Seated{Site: got[0].Site, Hole: got[0].Hole, Answers: m.Answers, Chosen: &m.Answers[0]}
		book, row := explained(t, in, all[0], x)
		at := book.Page("seats/" + x.Name())
		for k, v := range map[string]float64{"hoop_mpa": a.Peak, "metal_left_mm": a.Ligament, "part/web_mm": a.Part.Web,
			"part/metal_left_mm": a.Part.Left, "part/factor": a.Part.Factor(), "pressure_mpa/min": a.PLow,
			"pressure_mpa/max": a.PHigh, "closure_um/max": 1000 * a.Closure[1], "expansion_plate": a.Seen.Plate2.Alpha,
			"loose_at_c": a.LooseAt, "closure_um/min": 1000 * a.Closure[0]} {
			if (k == "expansion_plate" || k == "loose_at_c") && math.IsNaN(a.LooseAt) {
				continue
			}
			if e := at.Num(k).V; math.Abs(e-v) > 2e-6*math.Max(1, math.Abs(v)) {
				t.Errorf("%s: %s is explained as %v, decided by %v", name, k, e, v)
			}
		}
		if bad := book.Recompute(); len(bad) > 0 {
			t.Error(name, bad)
		}
		if row.Part == nil || row.Mend != c.mend || row.Part.Stays != (name == "old bush") || row.CleanupMM.Given() != (name == "old bush") {
			t.Errorf("%s: %+v", name, row)
		}
	}
}
