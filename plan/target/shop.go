package target

import (
	"rebush/fits/table"
	"rebush/plan/job"
)

// Doubt is a standard uncertainty in mm and the line or row where it stands.
type Doubt struct {
	U    float64
	From string
}

// Shop is how well the shop places a clamping and a hole.
type Shop struct {
	Setup, Hole Doubt
	OneClamping bool    // all shafts are cut in one
	Inside      float64 // how many doubts inside its window a mesh is at least aimed
	Move        float64 // what a move by one doubt of the old centre weighs against the chance
}

// ShopOf says how well a shop places a clamping and a hole: as its file has it,
// else by rule for its machine.
func ShopOf(sh *job.Shop, rules *table.Rules) Shop {
	setup := waysToPlace(sh)
	hole := setup
	if setup == "drill_press" {
		hole = "jig" // the hole itself; the place is the set-up's
	}
	by := func(rule string) Doubt { r := rules.Get(rule); return Doubt{r.Low, r.Address + ": " + r.Source} }
	out := Shop{Setup: by("setup_u_" + setup + "_mm"), Hole: by("hole_u_" + hole + "_mm"),
		OneClamping: sh.MachineKind != "lathe", Inside: rules.V("window_inside_doubts"),
		Move: rules.V("move_weight")}
	at := sh.At("machine/location").Source("built-in small shop:1")
	if sh.SetupU.Given() {
		out.Setup = Doubt{sh.SetupU.Float(), at}
	}
	if sh.HoleU.Given() {
		out.Hole = Doubt{sh.HoleU.Float(), at}
	}
	return out
}

// waysToPlace names the rules of a shop's machine.
func waysToPlace(sh *job.Shop) string {
	byHand := sh.MachineKind == "drill press" || sh.MachineKind == "hand"
	switch {
	case byHand && sh.Jig == "pinned":
		return "jig"
	case sh.MachineKind == "drill press":
		return "drill_press"
	case sh.MachineKind == "hand", sh.MachineKind == "lathe":
		return sh.MachineKind
	case sh.Readout:
		return "readout"
	}
	return "dials"
}
