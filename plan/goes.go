package plan

import "rebush/plan/verdict"

// Goes is what a person is told that this plan does: its way; or what has to be
// measured or bought before one is chosen, where that is the advice and no other
// way was asked for.
func (p *Plan) Goes() verdict.Name {
	first := p.Advised == verdict.MeasureFirst || p.Advised == verdict.BuyFirst
	switch {
	case first && p.NotAdvised == "":
		return p.Advised
	case p.Way != "" || p.Verdict == nil:
		return p.Way
	}
	return p.Verdict.Choice
}

// Machines says whether the truck is machined by this plan.
func (p *Plan) Machines() bool { return p.Cuts || p.Way == "" && len(p.Operations) > 0 }
