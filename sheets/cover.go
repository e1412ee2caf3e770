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
	}
	picture(p, pl)
	last := p.block()
	top := last.y
	last.para(countLine(pl), draw.Regular, p.st.body)
	last.Link(draw.Box{X: 0, Y: top, W: last.Width, H: last.y - top}, "findings")
	last.para(sameWord, draw.Regular, p.st.small)
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
	b.y = b.write(0, b.y, b.Width, what, draw.Regular, b.st.small) + 1
	b.y = b.write(0, b.y, b.Width, number, draw.Bold, b.st.title) + 2
	if p.title != "" {
		b.y = b.write(0, b.y, b.Width, p.title, draw.Regular, b.st.body) + 3
	}
	list := []field{{name: "date", lines: []string{dayOr(p.day)}}}
	if j := pl.Job; j != nil {
		list = append(list, field{name: "casting or plates", lines: []string{j.Chassis.Material}, wide: 2})
		if j.Chassis.Condition != "" {
			list = append(list, field{name: "condition", lines: []string{j.Chassis.Condition}})
		}
		if j.Shop != nil {
			list = append(list, field{name: "machine", lines: []string{machineWords(pl)}, wide: 2})
		}
		if j.Datum != "" {
			list = append(list, field{name: "datum", lines: []string{j.Datum}, wide: 2})
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
		words = "As clamped, set-up " + set.Name + ": " + set.Words
		if set.Mirrored {
			words = "MIRRORED. " + words
		}
	}
	b := p.block()
	b.para(words, draw.Bold, p.st.body)
	truckPicture(b, pl, set)
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
