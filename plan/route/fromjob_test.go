package route

import (
	"strings"
	"testing"

	"rebush/feeds/drills"
	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/material"
	"rebush/fits/table"
	"rebush/plan/job"
	"rebush/plan/safety"
	"rebush/plan/seat"
)

// A seat that comes out too large is planned from; nothing is cut in an old one.
func TestIfLarge(t *testing.T) {
	for m, want := range map[seat.Mend]bool{seat.Rebush: true, seat.Plug: true, seat.Renew: false} {
		if got := ifLarge(seat.Seated{Chosen: &seat.Answer{Mend: m}}); (got != "") != want {
			t.Errorf("%s: %q", m, got)
		}
	}
}

// How an axle goes together: what passes its bores is what the job says, else
// the journal beside the worn run; hubs without a word of wheels are no wheels.
func TestShaftOf(t *testing.T) {
	mm := func(s string) dim.Length { return dim.Must(s) }
	s := job.Shaft{Name: "axle", Journal: job.Ends{Left: mm("3.16"), Right: mm("2.9")},
		Unworn:   job.Ends{Left: mm("3.175"), Right: mm("3")},
		MustPass: job.Ends{Right: mm("3.2")}, HubToHub: mm("18")}
	gears := []job.Gear{{Name: "drive", Wheel: job.Wheel{On: "axle"}}}
	got := shaftOf(&s, gears)
	if got.MustPass != [2]float64{3.175, 3.2} || got.Journal != [2]float64{3.16, 2.9} || !got.Gear || got.Wheels ||
		got.HubToHub != 18 {
		t.Errorf("%+v", got)
	}
	s.Insulated = "right"
	if got = shaftOf(&s, nil); !got.Wheels || got.Insulated != job.Right || got.Gear {
		t.Errorf("%+v", got)
	}
	if s.Insulated = "none"; shaftOf(&s, nil).Insulated != "" {
		t.Error("none is no side")
	}
}

// The shop in the terms of the route: mills rise by size, a reach stays with
// its tool, pins by ten-thousandths of an inch are a set in inches, and drills
// that nobody sells are named and left out.
func TestShopOf(t *testing.T) {
	mm := func(s string) dim.Length { return dim.Must(s) }
	h := handbook(t, "zinc die casting")
	lib := table.BuiltIn()
	sold, err := drills.New(lib)
	if err != nil {
		t.Fatal(err)
	}
	var said finding.List
	sh := &job.Shop{MachineKind: "mill", Jig: "pinned",
		EndMills: []job.Tool{{Name: "6 mm", Size: mm("6 mm")}, {Name: "4 mm", Size: mm("4 mm"), Reach: mm("30 mm")}},
		Drills:   []job.Tool{{Name: "4.85 mm", Size: mm("4.85 mm"), For: mm("5 mm")}},
		Pins:     &job.PinSet{From: mm("0.061 in"), To: mm("0.25 in"), Step: mm("0.0005 in")}}
	s := shopOf(Tables{Cutting: h.Tables, Drills: sold}, sh, &said)
	if len(s.EndMills) != 2 || s.EndMills[0].Name != "4 mm end mill" || s.EndMills[0].Reach != 30 ||
		s.Machine != Mill || !s.Jig || len(said) > 0 {
		t.Errorf("%+v %v", s, said)
	}
	if len(s.Drills) != 1 || s.Drills[0].Name != "4.85 mm drill" || s.Drills[0].For != 5 || !s.Pins.Inch {
		t.Errorf("%+v %+v", s.Drills, s.Pins)
	}
	sh.DrillSeries, sh.Pins.Step = []string{"of another age"}, mm("0.01 mm")
	if s = shopOf(Tables{Drills: sold}, sh, &said); len(said) != 1 || said[0].Rule != Drills ||
		said[0].Level != finding.Caution || s.Pins.Inch {
		t.Errorf("%v %+v", said, s.Pins)
	}
}

// What can hurt stands beside the operation that it comes from, and the supply
// is off before the first ohm is read.
func TestHazardsBesideOperations(t *testing.T) {
	lib := table.BuiltIn()
	book, err := safety.New(lib, KindNames())
	if err != nil {
		t.Fatal(err)
	}
	h := Hazards{Table: book, Metals: handbook(t, "magnesium").Metals, Chassis: material.MagnesiumCasting}
	r := Route{Operations: []Operation{
		{Kind: KindSetUp}, {Kind: KindSizeSeat, Spindle: true}, {Kind: KindTurn, Spindle: true,
			BushMetal: "bearing bronze"},
		{Kind: KindPress, BushMetal: "bearing bronze", Compound: true}},
		Proving: []Step{{Text: "turns"}, {Text: "ohms", Blank: ohms}, {Text: "more", Blank: ohms}}}
	each, first, before := h.Beside(r)
	has := func(lines []safety.Line, hazard string) bool {
		for _, l := range lines {
			if strings.Contains(l.Hazard, hazard) {
				return true
			}
		}
		return false
	}
	for i, want := range []bool{false, true, false, false} {
		if got := has(each[i], "magnesium chips"); got != want {
			t.Errorf("operation %d warns of burning chips: %v", i, got)
		}
	}
	if !has(each[3], "compound") || has(each[1], "compound") || len(first) == 0 || len(first) > safety.Lines ||
		len(before) == 0 {
		t.Errorf("%v %v %v", each, first, before)
	}
	// Rods and jigs are of steel, whatever the chassis is.
	aid, _, _ := h.Beside(Route{Operations: []Operation{{Kind: KindAid, Spindle: true}}})
	if !has(aid[0], "eyes") || !has(aid[0], "hot and sharp") {
		t.Errorf("%v", aid)
	}
	zinc := Hazards{Table: book, Metals: h.Metals, Chassis: material.ZincCasting}
	each, _, _ = zinc.Beside(Route{Operations: []Operation{{Kind: KindSetUp}, {Kind: KindLocate}, {Kind: KindSetUp}}})
	if !has(each[0], "zinc or magnesium") || has(each[2], "zinc or magnesium") {
		t.Errorf("what metal it is, is asked before the first set-up alone: %v", each)
	}
	got := h.Proved(r)
	if len(got) < 4 || got[0].Text != "turns" || !strings.Contains(got[1].Text.String(), "Supply off") ||
		got[len(got)-2].Text != "ohms" {
		t.Errorf("%v", got)
	}
	if len(r.Proving) != 3 || r.Proving[1].Text != "ohms" {
		t.Error("the route itself was changed")
	}
	if got := h.Proved(Route{Proving: []Step{{Text: "turns"}}}); len(got) != 1 {
		t.Errorf("%v", got)
	}
}
