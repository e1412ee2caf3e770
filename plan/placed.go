package plan

import (
	"rebush/fits/ledger"
	"rebush/plan/target"
)

// reachable are the clearances that the chosen finishes lead to, by bore: what
// the meshes are looked at again with.
func reachable(seats Seated, book *ledger.Ledger) map[string]target.Fitted {
	out := map[string]target.Fitted{}
	for _, x := range seats.Bores {
		if x.Chosen != nil {
			page := book.Page("seats/" + x.Name())
			out[x.Name()] = target.Fitted{Least: page.Num("expected_mm/min"), Most: page.Num("expected_mm/max"),
				Journal: page.Num("journal_mm")}
		}
	}
	return out
}
