package sheets

import (
	"rebush/plan"
	"rebush/sheets/draw"
)

// sameWord is said once on paper.
const sameWord = "Two words, one thing: a truck is a bogie, and a bush a bushing."

func cover(p *paper, pl *plan.Plan) {
	what := "Setup sheet"
	p.section = what
	p.page()
	if p.stop {
		banner(p)
	}
	b := p.block()
	b.Bookmark(what, 0, 0)
	b.Anchor("cover", 0)
	jobHead(b, p, pl, what)
	p.add(b)

	if pl.Verdict != nil && pl.Verdict.Sentence != "" {
		b = p.block()
		b.boxed(0.6, 3, func(in *block) {
			in.para(pl.Verdict.Sentence, draw.Bold, in.st.body)
			in.para(chanceLine(pl.Chance), draw.Regular, in.st.body)
			in.y -= 1.5
		})
		p.add(b)
	} else if c := chanceLine(pl.Chance); c != "" {
		b = p.block()
		b.para(c, draw.Regular, p.st.body)
		p.add(b)
	}
	if p.stop {
		stops(p, pl)
	} else {
		lookForBox(p, pl.Safety.LookFor)
		pageOne(p, pl)
	}
	picture(p, pl)
	last := p.block()
	last.para(countLine(pl), draw.Regular, p.st.body)
	last.Link(draw.Box{X: 0, Y: 0, W: last.Width, H: last.y}, "findings")
	last.y -= 0.5
	last.para(sameWord, draw.Regular, p.st.small)
	last.Board.Height = last.y
	details(p, pl, last.y)
	p.add(last)
}

// banner is the first thing on a sheet that must not be followed.
func banner(p *paper) {
	b := p.block()
	b.boxed(1.8, 6, func(in *block) {
		const shout = "DO NOT MACHINE"
		pt := in.st.title * 1.4
		in.TextMid(in.Width/2, in.y+draw.Rise*pt*draw.MMPerPt, in.Width, shout, draw.Bold, pt)
		in.y += em(pt)
	})
	p.add(b)
}

// jobHead is the head of the job: number, title, and the line of facts.
func jobHead(b *block, p *paper, pl *plan.Plan, what string) {
	number := p.number
	if number == "" {
		number = "Job without a number"
	}
	ww := draw.Width(what, draw.Regular, b.st.body)
	b.TextRight(b.Width, b.y+draw.Rise*b.st.title*draw.MMPerPt, ww+0.1, what, draw.Regular, b.st.body)
	b.y = b.write(0, b.y, b.Width-ww-4, number, draw.Bold, b.st.title) + 2
	if p.title != "" {
		b.y = b.write(0, b.y, b.Width, p.title, draw.Regular, b.st.body) + 3
	}
	list := []field{{name: "date", lines: []string{dayOr(p.day)}}}
	if j := pl.Job; j != nil {
		if j.Chassis.Condition != "" {
			list = append(list, field{name: "condition", lines: []string{j.Chassis.Condition}})
		}
		if j.Shop != nil {
			list = append(list, field{name: "machine", lines: []string{machineWords(pl)}, wide: 2})
		}
		list = append(list, field{name: "casting or plates", lines: []string{j.Chassis.Material}, wide: 1})
		if j.Datum != "" {
			list = append(list, field{name: "datum", lines: []string{j.Datum}, wide: 3})
		}
	}
	cols := 4
	if b.st.large {
		cols = 2
	}
	b.y = b.fields(0, b.y, b.Width, cols, list)
	b.Reach(b.y)
}

func dayOr(day string) string {
	if day == "" {
		return "____________"
	}
	return day
}

func machineWords(pl *plan.Plan) string {
	s := pl.Job.Shop
	w := s.MachineKind
	if w == "" {
		return "not said"
	}
	if s.Readout {
		w += " with read-out"
	}
	if s.Jig == "pinned" {
		w += ", pinned jig"
	}
	return w
}

// picture adds the truck as it is first clamped, and the table of moves.
func picture(p *paper, pl *plan.Plan) {
	if len(pl.Holes) == 0 {
		return
	}
	set := plan.Setup{Plate: "left"}
	words := "Left plate, seen from the left."
	if list := setups(pl); len(list) > 0 && pl.OK {
		set = list[0]
		words = "As clamped, set-up " + set.Name + "."
		if set.Mirrored {
			words = "MIRRORED. " + words
		}
	}
	b := p.block()
	b.para(words, draw.Bold, p.st.body)
	high := 46.0
	if p.stop {
		high = 32 // below what stops the job
	}
	truckPicture(b, pl, set, high)
	rows := moves(p, pl)
	p.add(b)
	for i, r := range rows {
		switch i {
		case 0:
			p.glue(r)
		default:
			p.tight(r)
		}
	}
}
