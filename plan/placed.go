package plan

import (
	"rebush/fits/ledger"
	"rebush/plan/job"
	"rebush/plan/target"
)

// What is printed of the targets.
//
// placing is how well this shop places a clamping and a hole: by the shop file,
// else by rule for its machine.
func placing(w *books, sh *job.Shop) target.Shop {
	pinned := sh.Jig == "pinned"
	kind := "dials"
	switch m := sh.MachineKind; {
	case pinned && (m == "drill press" || m == "hand"):
		kind = "jig"
	case m == "drill press":
		kind = "drill_press"
	case m == "hand", m == "lathe":
		kind = m
	case sh.Readout:
		kind = "readout"
	}
	hole := kind
	if kind == "drill_press" {
		hole = "jig" // the hole itself; the place is the set-up's
	}
	by := func(rule string) target.Doubt {
		r := w.rules.Get(rule)
		return target.Doubt{U: r.Low, From: r.Address + ": " + r.Source}
	}
	out := target.Shop{Setup: by("setup_u_" + kind + "_mm"), Hole: by("hole_u_" + hole + "_mm")}
	from := sh.At("machine/location").Source(noShop)
	if sh.SetupU.Given() {
		out.Setup = target.Doubt{U: sh.SetupU.Float(), From: from}
	}
	if sh.HoleU.Given() {
		out.Hole = target.Doubt{U: sh.HoleU.Float(), From: from}
	}
	return out
}

// reachable are the clearances that the chosen finishes lead to, by bore.
func reachable(seats Seated, book *ledger.Ledger) map[string]target.Fitted {
	out := map[string]target.Fitted{}
	for _, x := range seats.Bores {
		if x.Chosen != nil {
			page := book.Page("seats/" + x.Name())
			out[x.Name()] = target.Fitted{Least: page.Num("expected_mm/min"), Most: page.Num("expected_mm/max"), Journal: page.Num("journal_mm")}
		}
	}
	return out
}
