package sheets

import (
	"strconv"
	"strings"

	"rebush/plan"
	"rebush/plan/route"
	"rebush/sheets/draw"
)

// cardFoot says where the work may rest, what is set again on coming back, and
// who did it.
func cardFoot(p *paper, pl *plan.Plan, c card) *block {
	b := p.block()
	var rest []string
	coming := ""
	all := []row{}
	all = append(all, c.clamp...)
	for _, g := range c.groups {
		all = append(all, g.rows...)
	}
	var ops []int
	for _, r := range all {
		ops = append(ops, r.ops...)
	}
	for k, i := range ops {
		op := pl.Operations[i]
		switch {
		case !op.MayWait:
		case op.Kind == route.KindSetUp && k+1 < len(ops):
			rest = append(rest, "before "+strconv.Itoa(pl.Operations[ops[k+1]].Number))
		default:
			rest = append(rest, "after "+strconv.Itoa(op.Number))
		}
	}
	if len(rest) > 0 {
		coming = "Rest only " + strings.Join(rest, " or ") + ". "
		coming += comingBack(pl, c)
	}
	if coming != "" {
		b.y = b.write(0, 0.6, b.Width, coming, draw.Bold, b.st.aside())
	}
	b.blanks(0, b.Width, []blankLine{{"done by", "", 1.2}, {"date", "", 1}, {"stopped after", "", 0.9},
		{"still to gauge", "", 1.1}})
	return b
}

// comingBack is what is set again when the work has rested in a clamping.
func comingBack(pl *plan.Plan, c card) string {
	kind := ""
	if pl.Job != nil && pl.Job.Shop != nil {
		kind = pl.Job.Shop.MachineKind
	}
	switch {
	case kind == string(route.OnLathe):
		return "Coming back: run the hole true with the indicator again, turn it once by hand, and pass GAUGE FIRST again."
	case !byDials(pl):
		return "Coming back: look that jig and clamps sit fast, try the rod or the slip bush again, and pass GAUGE FIRST again."
	}
	return "Coming back: touch both edges, zero the dials, pass GAUGE FIRST again."
}
