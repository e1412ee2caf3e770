package sheets

import (
	"rebush/plan/verdict"
	"rebush/sheets/draw"
)

// Where nothing is cut, the sheet is a page or two: what was found, why, what to
// do or to check, when to look again, the ways side by side and what would
// change it. Nothing on it can be cut by.

// errand is what is done where nothing is cut.
type errand struct {
	shout string   // in large letters
	ticks []string // what to do and to check
	blank []blankLine
	again string // when to look again
}

// errands are the words for each way that cuts nothing.
//
// Source: common practice, no source.
func errands(u units) map[verdict.Name]errand {
	look := "After a season in use, or at once where it binds, is noisy or rubs: measure the widest and the " +
		"narrowest of each hole again, and set them beside the figures here."
	return map[verdict.Name]errand{
		verdict.Leave: {"LEAVE IT AS IT IS", []string{
			"Oil every bearing, and run it both ways.",
			"Keep this page with the truck: its figures are what the next ones are held against."}, nil, look},
		verdict.Shim: {"FIT A WASHER", []string{
			"The washer goes on the axle, between hub and plate; no hole is touched.",
			"Wheels that came off go back to their gauge; an insulated one is tried with the ohmmeter.",
			"The axle turns freely with the washer in, and runs both ways."},
			[]blankLine{{"side play before", u.one(), 1}, {"after", u.one(), 1}, {"washer", u.one(), 1}}, look},
		verdict.Swap: {"ANOTHER TRUCK", []string{
			"Look at the other truck before it is paid for: cracks, and a casting that has grown.",
			"Play of each axle in its holes, and backlash of its gears.",
			"Wheels to gauge, rims and hubs tight, insulated wheels open to the axle.",
			"Keep the old truck for spares: nothing of it is cut."},
			[]blankLine{{"most play of the other truck", u.one(), 1.4}, {"looked at on", "", 1}}, ""},
		verdict.MeasureFirst: {"MEASURE FIRST", []string{
			"Write the figures into the job file, and make the sheet again."}, nil, ""},
		verdict.BuyFirst: {"BUY FIRST", []string{
			"Write what is there now into the job or shop file, and make the sheet again."}, nil, ""},
	}
}

func errandBlock(p *paper, e errand) {
	for i, t := range e.ticks {
		b := p.block()
		b.ticked(t, draw.Regular)
		if i == 0 {
			p.add(b)
		} else {
			p.tight(b)
		}
	}
	if len(e.blank) > 0 {
		b := p.block()
		b.blanks(0, b.Width, e.blank)
		p.add(b)
	}
	if e.again != "" {
		b := p.block()
		b.para("When to look again", draw.Bold, p.st.body)
		b.y -= 1
		b.para(e.again, draw.Regular, p.st.body)
		p.add(b)
	}
}
