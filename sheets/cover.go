package sheets

import (
	"slices"
	"strings"

	"rebush/plan"
	"rebush/sheets/draw"
)

// sameWord is said once on paper.
const sameWord = "Two words, one thing: a truck is a bogie, and a bush a bushing."

// headed begins the first page of a job's paper: what it is of, whether it is
// advised, and whether it starts from a truck in work.
func headed(p *paper, pl *plan.Plan, what string) {
	b := p.block()
	b.Bookmark(what, 0, 0)
	b.Anchor("cover", 0)
	jobHead(b, p, pl, what)
	p.add(b)
	against(p, pl)
	asMade(p, pl)
}

// cover is the first page of a sheet that must not be followed.
func cover(p *paper, pl *plan.Plan) {
	const what = "Setup sheet"
	p.section = what
	p.page()
	banner(p)
	headed(p, pl, what)
	b := p.block()
	if pl.Verdict != nil && pl.Verdict.Sentence != "" {
		b.boxed(0.6, 3, func(in *block) {
			in.para(pl.Verdict.Sentence.String(), draw.Bold, in.st.body)
			in.para(chanceLine(pl.Chance), draw.Regular, in.st.body)
			in.y -= 1.5
		})
		p.add(b)
	} else if c := chanceLine(pl.Chance); c != "" {
		b.para(c, draw.Regular, p.st.body)
		p.add(b)
	}
	otherWay(p, pl)
	needs(p, pl.Verdict)
	stops(p, pl)
	if len(pl.Holes) > 0 && !p.how.closer() {
		p.add(firstClamping(p, pl, 32))
	}
	b = p.block()
	b.para(countLine(pl), draw.Regular, p.st.body)
	b.y = b.write(0, b.y-0.5, b.Width, sameWord, draw.Regular, p.st.small)
	b.Board.Height = b.y
	p.add(b)
}

// asMade says that a plan starts from the truck as it now is.
func asMade(p *paper, pl *plan.Plan) {
	if !pl.AsMade {
		return
	}
	b := p.block()
	b.para("From the truck as it now is, by the sizes as made. "+replacesWords(pl), draw.Bold, p.st.body)
	p.add(b)
}

// replacesWords name the plan whose sheets must not be followed any more.
func replacesWords(pl *plan.Plan) string {
	if pl.Replaces == "" {
		return ""
	}
	return "It replaces plan " + shortHash(pl.Replaces) + ": put the sheets of that plan away."
}

// otherWay says of a way that must not be machined that it is not the one that
// is advised.
func otherWay(p *paper, pl *plan.Plan) {
	if pl.NotAdvised == "" || pl.Advised == "" {
		return
	}
	b := p.block()
	b.para("This sheet is of another way, "+pl.Way.Owner()+". Advised is: "+pl.Advised.Owner()+".", draw.Bold, p.st.body)
	p.add(b)
}

// banner is the first thing on a sheet that must not be followed.
func banner(p *paper) {
	b := p.block()
	pad := 6.0
	if p.how.closer() {
		pad = 2.5
	}
	b.boxed(1.8, pad, func(in *block) {
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
	nw := draw.Width(printable(number), draw.Bold, b.st.title)
	if room := b.Width - ww - nw - 12; room > 50 && p.title != "" { // the title stands beside the number
		b.y = b.write(0, b.y, b.Width-ww-4, number, draw.Bold, b.st.title)
		h := b.tall(room, p.title, draw.Bold, b.st.body)
		b.y = max(b.y, b.write(nw+6, max(0, b.y-h), room, p.title, draw.Bold, b.st.body)) + 2
	} else {
		b.y = b.write(0, b.y, b.Width-ww-4, number, draw.Bold, b.st.title) + 2
		if p.title != "" {
			b.y = b.write(0, b.y, b.Width, p.title, draw.Regular, b.st.body) + 3
		}
	}
	list := []field{{name: "date", lines: []string{dayOr(p.day)}}}
	if j := pl.Job; j != nil {
		if j.Chassis.Condition != "" {
			list = append(list, field{name: "condition", lines: []string{j.Chassis.Condition}})
		}
		list = append(list, field{name: "casting or plates", lines: []string{j.Chassis.Material}, wide: 2})
		if j.Shop != nil {
			list = append(list, field{name: "machine", lines: []string{machineWords(pl)}})
		}
		if j.Datum != "" {
			list = append(list, field{name: "datum", lines: []string{j.Datum}, wide: 3})
		}
	}
	cols := 4
	if b.st.large {
		cols = 2
	}
	if b.st.mind > 0 { // the facts stand in a line or two
		var s []string
		for _, f := range list {
			s = append(s, sentence(f.name)+": "+strings.Join(f.lines, " "))
		}
		b.y = b.write(0, b.y, b.Width, ended(strings.Join(s, ". ")), draw.Regular, b.st.aside()+0.5)
		b.Reach(b.y)
		return
	}
	b.y = b.fields(0, b.y, b.Width, cols, list) - 1.5
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

// firstClamping is the picture of the first clamping, its plate at most high.
func firstClamping(p *paper, pl *plan.Plan, high float64) *block {
	set := plan.Setup{Plate: "left"}
	words := "Left plate, seen from the left."
	list := slices.DeleteFunc(slices.Clone(setups(pl)), func(s plan.Setup) bool { return !isClamping(s) })
	if len(list) > 0 && pl.OK {
		set = list[0]
		words = "As clamped, set-up " + set.Name + "."
		if set.Mirrored {
			words = "MIRRORED. " + words
		}
	}
	b := p.block()
	b.para(words, draw.Bold, p.st.body)
	worked := func(string) bool { return true }
	if pl.OK {
		worked = func(shaft string) bool {
			for _, op := range pl.Operations {
				if shaftOf(op.Bore) == shaft {
					return true
				}
			}
			return false
		}
	}
	truckPicture(b, pl, set, high, worked)
	b.scaled = true
	b.Reach(b.y)
	return b
}
