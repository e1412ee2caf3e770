package plan

import (
	"rebush/plan/habit"
	"rebush/plan/job"
	"rebush/plan/target"
)

// habitsOf is what the shop of these tables really does.
func habitsOf(w *books, sh *job.Shop) habit.Habits {
	machine := target.ShopOf(sh, w.rules)
	return habit.Of(sh, w.rules, habit.Place{SetupMM: machine.Setup.U, HoleMM: machine.Hole.U})
}
