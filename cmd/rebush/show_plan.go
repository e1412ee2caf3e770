package main

import (
	"io"
	"slices"

	"rebush/fits/dim"
	"rebush/fits/say"
	"rebush/plan"
)

func runPlan(e *env, o options, jobs []string) error {
	if _, err := o.units(); err != nil {
		return err
	}
	with, err := o.planOptions()
	if err != nil {
		return err
	}
	plans := make([]*plan.Plan, len(jobs))
	err = everyJob(e, o, jobs, func(path string, out *outcome) error {
		p, err := o.plan(e, path, with, out)
		if err != nil {
			return err
		}
		out.answer, plans[slices.Index(jobs, path)] = p, p
		showPlan(e, &out.text, o.worded(p), o.unitsOf(p))
		return refuse(p)
	})
	if len(jobs) > 1 && !o.on["json"] {
		showShelves(e, plans)
	}
	return err
}

// showPlan prints a whole plan, in the order in which it was thought out.
func showPlan(e *env, w io.Writer, p *plan.Plan, u dim.Units) {
	pg := &page{w: w}
	head := func(s string) { pg.line("\n%s", e.paint(bold, s)) }
	pg.line("%s, plan %s", titled(p), p.Hash)
	if p.Replaces != "" {
		pg.line("Replaces plan %s.", p.Replaces)
	}
	showHead(e, pg, p)
	head("What the measurements say")
	for _, b := range p.Survey {
		pg.line("%s", aloud(b, u))
	}
	for _, m := range p.Mesh {
		pg.line("%s: %s", m.Gear, m.Words)
	}
	if len(p.Targets) > 0 {
		head("Where each bore goes")
		for _, t := range p.Targets {
			pg.pair(t.Bore, "%s, known to %s", place(t.TargetMM, u), short(t.UMM, u))
		}
	}
	for _, s := range p.Seats {
		head("Seat " + s.Bore)
		showSeat(pg, s, u)
	}
	if len(p.Operations) > 0 {
		head("Route")
		for i, op := range p.Operations {
			showOperation(pg, op, u)
			showSafety(pg, p, i)
		}
	}
	if p.Chance != nil {
		head("Chance")
		showChance(pg, p.Chance)
	}
	if len(p.Ways) > 0 {
		head("The ways side by side")
		showWays(pg, p)
	}
	if v := p.Verdict; v != nil && len(v.Tried) > 0 {
		head("Tried, the whole job planned again with each")
		showTried(pg, v.Tried, v.Currency, p.OK)
	}
	if len(p.Findings) > 0 {
		head("Findings")
		for _, f := range p.Findings {
			pg.line("%s", findingLine(e, f))
			showTried(pg, f.Tried, currencyOf(p), p.OK)
		}
	}
}

// showHead says whether there is anything to machine, by which way, and what
// has to come first.
func showHead(e *env, pg *page, p *plan.Plan) {
	as := ""
	if p.Way != "" {
		as = ": " + string(p.Way)
	}
	if p.NotAdvised != "" {
		pg.line("%s: %s", e.paint(red, "NOT ADVISED"), p.NotAdvised)
	}
	switch {
	case !p.OK:
		pg.line("%s", e.paint(red, "DO NOT MACHINE"))
	case !p.Machines():
		pg.line("Nothing to machine: %s.", p.Goes())
	default:
		pg.line("May be machined%s.", as)
	}
	if p.AsMade {
		pg.line("Planned from the truck as it now is, by the sizes under made.")
	}
	if p.Verdict != nil {
		pg.line("%s", p.Verdict.Sentence)
		showNeeds(pg, p.Verdict)
	}
}

func showSeat(pg *page, s plan.Seat, u dim.Units) {
	span := func(name string, m *plan.MinMax, unit string) {
		if m != nil && m.Min != nil && m.Max != nil {
			if unit == "um" {
				pg.pair(name, "%s", micrometres(*m.Min, *m.Max, u))
				return
			}
			pg.pair(name, "%s to %s %s", coarse(*m.Min), coarse(*m.Max), unit)
		}
	}
	if s.Bush == "" {
		pg.line("no bush can be seated here")
	} else {
		held := s.HeldBy
		if s.Second != "" {
			held += " and " + s.Second
		}
		pg.pair("bush", "%s, held by %s, seat by %s", s.Bush, held, s.Tool)
		if s.HeldBy == "cap" {
			showCap(pg, s, u)
		} else {
			pg.pair("seat", "%s", ranged(s.SeatMM, u))
			if x := s.ExpectedSeat; x != nil && x.Jobs > 0 {
				pg.pair("seat expected", "%s, by the %s", short(x.SeatMM, u), x.From)
			}
			span("interference", s.InterferenceUM, "um")
			span("pressure", s.PressureMPa, "MPa")
			if s.ForceN != nil && s.ForceN.Min != nil && s.ForceN.Max != nil {
				pg.pair("force", "up to %s N to press it in; it holds %s N at least", coarse(*s.ForceN.Max),
					coarse(*s.ForceN.Min))
			}
		}
		if s.HoopMPa != nil && s.HoopLimitMPa != nil {
			pg.pair("tension in the casting or plate", "%s of %s MPa allowed", coarse(*s.HoopMPa),
				coarse(*s.HoopLimitMPa))
		}
		pg.pair("metal left to edge", "%s", short(s.MetalLeftMM, u))
		if s.HeldBy != "cap" {
			span("the bore closes by", s.ClosureUM, "um")
		}
		pg.pair("finished bore", "%s, %s", ranged(s.BoreMM, u), s.Finish)
		span("running clearance", s.RunningUM, "um")
		if s.LooseAtC != nil {
			pg.pair("comes loose", "%s", looseAt(*s.LooseAtC))
		}
	}
	pg.flush()
	few := worthShowing(s)
	for _, c := range few {
		mark := "no "
		if c.Feasible {
			mark = "yes"
		}
		pg.line("  %s %s with %s: %s", mark, c.Bush, c.Tool, c.Reason)
	}
	if n := len(s.Candidates) - len(few); n > 0 {
		pg.line("  ... and %d more ways (--json has them all)", n)
	}
}

// showCap is the seat of a bearing under a cap: one size, as it was measured,
// in which the bearing has play.
func showCap(pg *page, s plan.Seat, u dim.Units) {
	if s.SeatMM != nil {
		pg.pair("seat", "%s as measured", short(s.SeatMM.Min, u))
	}
	if i := s.InterferenceUM; i != nil && i.Min != nil && i.Max != nil {
		pg.pair("play under the cap", "%s", micrometres(-*i.Max, -*i.Min, u))
	}
}

// worthShowing leaves of the candidates the best four that can be, and of each
// bush that cannot be at all one reason: with the tool that cuts the seat, else
// the first.
func worthShowing(s plan.Seat) []plan.Candidate {
	var out []plan.Candidate
	can, told := map[string]bool{}, map[string]int{}
	for _, c := range s.Candidates {
		if c.Feasible {
			if len(out) < 4 {
				out = append(out, c)
			}
			can[c.Bush] = true
		}
	}
	for _, c := range s.Candidates {
		at, twice := told[c.Bush]
		switch {
		case can[c.Bush]:
		case !twice && len(out) < 12:
			told[c.Bush] = len(out)
			out = append(out, c)
		case twice && c.Tool == s.Tool && out[at].Tool != s.Tool:
			out[at] = c
		}
	}
	return out
}

func showChance(pg *page, c *plan.Chance) {
	pg.pair("right first time", "%s (between %s and %s)", percent(c.FirstTimeRight), percent(c.Low), percent(c.High))
	if len(c.RestsOn) > 0 {
		pg.pair("by the shop's record", "%s", say.Join("; ", c.RestsOn...))
	}
	pg.pair("right after rework", "%s", percent(c.Saved))
	pg.pair("lost", "%s", percent(c.Lost))
	for _, x := range c.Causes {
		pg.pair("goes wrong by", "%s: %s of what is not right", x.Cause, percent(x.Share))
	}
	for _, x := range c.Improve {
		pg.pair("would help", "%s: %s (%+.1f points)", x.Change, percent(x.FirstTimeRight), 100*x.Gain)
	}
	pg.pair("most sensitive to", "%s", say.Join(", ", c.MostSensitiveTo...))
	pg.pair("trials", "%d, seed %d", c.Trials, c.Seed)
	pg.flush()
}
