package sheets

import (
	"strings"

	"rebush/plan"
	"rebush/sheets/draw"
)

// before is the card for before the truck is stripped: what is read while it
// still runs, what is decided before the first cut, and what to buy.
func before(p *paper, pl *plan.Plan) {
	p.part("Before the truck is stripped", "before", false, func() {
		for _, l := range pl.Safety.Before {
			b := p.block()
			b.ticked(l.Words+".", draw.Regular)
			p.tight(b)
		}
		n := 0
		for _, s := range pl.Proving {
			if s.Blank == "" {
				continue
			}
			b := p.block()
			if n++; n == 1 {
				b.para("Read and write down, as found", draw.Bold, p.st.body)
				b.y -= 1.5
			}
			readingBlank(b, s, []string{"as found"})
			p.tight(b)
		}
		for i, b := range notes(p, pl, true) {
			if i == 0 {
				head := p.block()
				head.para("Decide before the first cut", draw.Bold, p.st.body)
				head.y -= 1.5
				head.Board.Height = head.y
				p.glue(head)
			}
			p.tight(b)
		}
		for i, l := range pl.Buy {
			b := p.block()
			if i == 0 {
				b.Bookmark("Buy first", 0, 0)
				b.para("Buy first", draw.Bold, p.st.body)
				b.y -= 1.5
			}
			s := l.What.String()
			if l.Why != "" {
				s += ": " + l.Why
			}
			b.y = smallTick(b, 0, b.y, b.Width, s)
			b.Reach(b.y)
			p.tight(b)
		}
	})
}

// readingBlank is a text with a line to write on for each name: beside it, or
// below it where it leaves no room.
func readingBlank(b *block, s plan.Step, names []string) {
	text := sentence(s.Text.String())
	unit := oneLine(s.Blank)
	if unit == "mm" {
		unit = b.u.one() // a blank is filled in in one unit
	}
	var lines []blankLine
	for _, n := range names {
		lines = append(lines, blankLine{n, unit, 1})
	}
	x := b.Width * (1 - 0.29*float64(len(names)))
	h := b.tall(x-4, text, draw.Regular, b.st.body)
	if h > 2.2*lead(b.st.body) {
		b.y = b.write(0, b.y+0.5, b.Width, text, draw.Regular, b.st.body)
		x = 0
	} else {
		top := max(b.y, b.y+b.st.blank-0.3-h)
		b.y = max(b.write(0, top, x-4, text, draw.Regular, b.st.body)-b.st.blank+0.3, b.y)
	}
	b.blanks(x, b.Width-x, lines)
}

// proving is trying it: a box or a blank for each step, readings before and
// after beside each other.
func proving(p *paper, pl *plan.Plan) {
	if len(pl.Proving) == 0 {
		return
	}
	p.part("Proving", "proving", false, func() {
		for _, s := range pl.Proving {
			b := p.block()
			switch {
			case s.Blank == "":
				b.ticked(sentence(s.Text.String()), draw.Regular)
			case s.Twice:
				readingBlank(b, s, []string{"before", "after"})
			default:
				readingBlank(b, s, []string{"after"})
			}
			p.tight(b)
		}
	})
}

// asMadeTable goes with the truck: for each hole its seat, what its bush measured
// and its bore, with room for the sizes as made.
func asMadeTable(p *paper, pl *plan.Plan) {
	var seats []plan.Seat
	for _, s := range pl.Seats {
		if s.Bush != "" {
			seats = append(seats, s)
		}
	}
	if len(seats) == 0 {
		return
	}
	p.part("Sizes as made: this table goes with the truck", "made", false, func() {
		head := p.block()
		cols := [6]float64{0, 0.22, 0.44, 0.62, 0.80, 1}
		pt := head.st.small
		names := []string{"hole", "seat, " + p.u.one(), "bush", "its outside, " + p.u.one(), "bore, " + p.u.one()}
		low := 0.0
		for i, n := range names {
			low = max(low, head.write(cols[i]*head.Width, 0, (cols[i+1]-cols[i])*head.Width-2, n, draw.Regular, pt))
		}
		head.y = low + 0.5
		head.Reach(head.y)
		p.glue(head)
		for _, s := range seats {
			b := p.block()
			madeRow(b, p, s, cols)
			p.tight(b)
		}
		b := p.block()
		b.blanks(0, b.Width, []blankLine{{"made by", "", 1.4}, {"date", "", 1}, {"oil", "", 1}})
		b.y = b.write(0, b.y, b.Width, p.bench.say("Job "+strings.TrimSpace(p.number+" "+p.title))+". "+sentence(p.foot)+".", draw.Regular, b.st.small)
		b.Reach(b.y)
		p.add(b)
	})
}

func madeRow(b *block, p *paper, s plan.Seat, cols [6]float64) {
	pt := b.st.small
	limits := func(r *plan.MMRange) string { return strings.Join(p.u.limits(r), ", ") }
	cells := []struct{ text, under string }{
		{s.Bore, ""}, {limits(s.SeatMM), "box"}, {s.Bush, ""}, {"", "box"}, {limits(s.BoreMM), "box"}}
	low := b.y
	for i, c := range cells {
		x, w := cols[i]*b.Width, (cols[i+1]-cols[i])*b.Width-2
		face := draw.Regular
		if i == 0 || i == 2 {
			face = draw.Bold
		}
		low = max(low, b.write(x, b.y+0.4, w, c.text, face, pt))
	}
	for i, c := range cells {
		if c.under == "" {
			continue
		}
		x, w := cols[i]*b.Width, (cols[i+1]-cols[i])*b.Width-2
		b.Rect(x+0.2, low+0.5, w-0.4, b.st.blank, 0.3)
	}
	b.y = low + b.st.blank + 1.2
	b.Reach(b.y)
}
