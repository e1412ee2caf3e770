package sheets

import (
	"fmt"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan"
	"rebush/sheets/draw"
)

// Setup makes the setup sheet of a plan: the paper that is taken to the
// machine. Where the plan may not be machined it says DO NOT MACHINE on page
// one, why, and what would change it; nothing in it cuts then. Where the way of
// the plan cuts nothing, it is a page or two of what to do or to check. Where
// that way is not the advised one, every head says so. Errors name the page and
// what does not fit.
func Setup(pl *plan.Plan, o Options) (*draw.Document, error) {
	best, err := bestSheet(pl, o)
	return best.doc, err
}

// bestSheet is the first of the layouts that comes within its pages with no
// set-up torn and no page nearly empty; where none does, the one that comes nearest.
func bestSheet(pl *plan.Plan, o Options) (sheet, error) {
	var best sheet
	for _, how := range layouts() {
		if how.flow && !(pl.OK && pl.Machines()) {
			break // it has no set-ups
		}
		if how.apart && best.fits {
			break
		}
		x, err := setup(pl, o, how, nil)
		if err != nil {
			return x, err
		}
		x.fits = x.pages <= mostPages(pl, o)
		if best.doc == nil || x.betters(best) {
			best = x
		}
		if best.fits && best.torn == 0 && best.bare == 0 {
			break
		}
	}
	return pictured(best, func(with []spare) (sheet, error) {
		x, err := setup(pl, o, best.how, with)
		x.fits = best.fits
		return x, err
	})
}

// sheet is a setup sheet in one of its layouts.
type sheet struct {
	doc   *draw.Document
	pages int  // without its sources
	fits  bool // it has no more pages than are read at a bench
	torn  int  // cards of set-ups that go on overleaf
	bare  int  // pages but the last that are nearly empty
	steps int  // steps by which its cards stand closer than the rest

	how           layout
	with, offered []spare  // pictures it has, and those it could have
	sections      []string // of its pages
}

// betters says whether a closer layout is worth it: it fits where the other one
// does not, it is shorter where neither does, it tears fewer cards, or leaves fewer
// pages nearly empty.
func (s sheet) betters(t sheet) bool {
	switch {
	case s.fits != t.fits:
		return s.fits
	case !s.fits && s.pages != t.pages:
		return s.pages < t.pages
	case s.torn != t.torn:
		return s.torn < t.torn
	}
	return s.bare < t.bare
}

func setup(pl *plan.Plan, o Options, how layout, with []spare) (sheet, error) {
	p, err := newPaper(o, pl.Job, "Setup sheet")
	if err != nil {
		return sheet{}, err
	}
	p.how, p.with = how, with
	pl = say.Printed(pl, p.u.said())
	p.of(pl)
	p.marked(pl)
	p.st = sheetStyle(how.step, p.large)
	switch {
	case !pl.OK:
		pl = asFound(pl)
		refused(p, pl)
	case !pl.Machines():
		noCut(p, pl)
	default:
		worked(p, pl)
	}
	p.flush()
	pages, bare := p.doc.Pages(), p.bare
	if o.Sources && (!pl.OK || pl.Machines()) {
		sources(p, pl)
	}
	d, err := p.finish()
	return sheet{doc: d, pages: pages, torn: p.torn, bare: bare, steps: p.steps, how: how, with: with, offered: p.offered, sections: p.sections}, err
}

// refused is the sheet of what must not be machined.
func refused(p *paper, pl *plan.Plan) {
	if p.how.step >= lastStep-1 { // read at a desk, not at a machine
		small := float64(p.how.step - lastStep + 2)
		p.st.body, p.st.figure, p.st.title = p.st.body-0.75*small, p.st.figure-small, p.st.title-2*small
		p.st.mind = p.st.small
	}
	cover(p, pl)
	foundRows(p, pl)
	inShort(p, pl)
	sideBySide(p, pl)
	change(p, pl)
}

// worked is the sheet that is taken to the machine.
func worked(p *paper, pl *plan.Plan) {
	front(p, pl)
	holesPart(p, pl)
	before(p, pl)
	cardParts(p, pl, cardsOf(pl))
	proving(p, pl)
	asMadeTable(p, pl)
	wrong(p, pl)
}

// asFound is a plan whose holes are drawn as they are: no new seat stands in a
// sheet that must not be followed.
func asFound(pl *plan.Plan) *plan.Plan {
	out := *pl
	out.Holes = map[string]plan.Hole{}
	for name, h := range pl.Holes {
		h.SeatR, h.BoreR, h.Target = 0, 0, h.Old
		out.Holes[name] = h
	}
	return &out
}

// of takes the name of the job from a plan.
func (p *paper) of(pl *plan.Plan) {
	if p.number == "" {
		p.number = oneLine(pl.JobNumber)
	}
	if pl.Verdict != nil {
		p.currency = pl.Verdict.Currency
	}
	p.foot = oneLine(pl.Program)
	switch hash := shortHash(pl.Hash); {
	case pl.Replaces != "":
		p.foot = "plan " + hash + ", replaces " + shortHash(pl.Replaces)
	case hash != "":
		p.foot += ", plan " + hash
	}
}

// shortHash is as much of the hash of a plan as paper prints.
func shortHash(s string) string { return oneLine(s[:min(len(s), 10)]) }

// chanceLine says how likely the job is to come right, and that it is an
// estimate.
func chanceLine(c *plan.Chance) string {
	if c == nil {
		return ""
	}
	s := "First time right: " + percent(c.FirstTimeRight)
	if c.High > c.Low {
		s += fmt.Sprintf(" (%s to %s)", shortPercent(c.Low), shortPercent(c.High))
	}
	s += "; right after more work or another bush: " + percent(c.Saved) + "; lost: " + percent(c.Lost) + "."
	if c.Trials > 0 {
		s += fmt.Sprintf(" An estimate from %d simulated jobs, not a promise.", c.Trials)
	} else {
		s += " An estimate, not a promise."
	}
	return s
}

func shortPercent(f float64) string { return fmt.Sprintf("%.0f", f*100) }

// countLine says what lies ahead.
func countLine(pl *plan.Plan) string {
	s := ""
	if pl.OK {
		minutes := 0.0
		for _, op := range pl.Operations {
			if op.Minutes != nil {
				minutes += *op.Minutes
			}
		}
		clampings := 0
		for _, x := range setups(pl) {
			if isClamping(x) {
				clampings++
			}
		}
		s = count(len(pl.Operations), "operation")
		if clampings > 0 {
			s += " in " + count(clampings, "set-up")
		}
		if minutes > 0 {
			s += fmt.Sprintf(", about %.0f minutes beside strip and set-up", minutes)
		}
		s += "; "
	}
	said := alike(pl.Findings, benchOf(pl.Job)) // as they are printed
	n := func(l finding.Level, word string) string { return count(said.Count(l), word) }
	if stops := said.Count(finding.Stop); stops > 0 {
		s += n(finding.Stop, "stop") + ", "
	}
	return s + n(finding.Caution, "caution") + ", " + n(finding.Note, "note") + "."
}

func count(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

// setups lists the clampings of a plan: those it names, or those that its
// operations name.
func setups(pl *plan.Plan) []plan.Setup {
	if len(pl.Setups) > 0 {
		return pl.Setups
	}
	var out []plan.Setup
	seen := map[string]bool{}
	for _, op := range pl.Operations {
		if op.Setup != "" && !seen[op.Setup] {
			seen[op.Setup] = true
			out = append(out, plan.Setup{Name: op.Setup, Words: op.Holding})
		}
	}
	return out
}

func setupNamed(pl *plan.Plan, name string) (plan.Setup, bool) {
	for _, s := range setups(pl) {
		if s.Name == name {
			return s, true
		}
	}
	return plan.Setup{}, false
}
