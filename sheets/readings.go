package sheets

import (
	"strings"

	"rebush/plan"
	"rebush/sheets/draw"
)

// before is the card for before the truck is stripped: what is read while it
// still runs, what is decided before the first cut, and what to buy.
func before(p *paper, pl *plan.Plan) {
	title := "Before the truck is stripped"
	if pl.AsMade { // it is apart already
		title = "Before the first cut"
	}
	p.part(title, "before", false, func() {
		if !pl.AsMade {
			readFirst(p, pl)
		}

		for i, b := range notes(p, pl) {
			if i == 0 {
				head := p.block()
				head.Anchor("findings", 0)
				head.para("Know and decide before the first cut", draw.Bold, p.st.body)
				head.y -= 1.5
				head.Board.Height = head.y
				p.glue(head)
			}
			p.tight(b)
		}
		buyFirst(p, pl)
	})
}

// buyFirst lists what is bought, each with a box; what is bought for one reason
// stands under it.
func buyFirst(p *paper, pl *plan.Plan) {
	var reasons []string
	things := map[string][]string{}
	for _, l := range pl.Buy {
		what, why := l.What.String(), l.Why
		if name, as, ok := strings.Cut(what, toBuy+": "); ok {
			what, why = name, as
			if l.Why != "" {
				why = l.Why + ", " + as
			}
		}
		if things[why] == nil {
			reasons = append(reasons, why)
		}
		things[why] = append(things[why], what)
	}
	for i, why := range reasons {
		b := p.block()
		if i == 0 {
			b.Bookmark("Buy first", 1, 0)
			b.para("Buy first", draw.Bold, p.st.body)
			b.y -= 1.5
		}
		if list := things[why]; len(list) > 1 && why != "" {
			b.y = b.write(0, b.y, b.Width, sentence(why)+":", draw.Regular, b.st.aside()+0.5)
			b.Reach(b.y)
			p.tight(b)
			tickLines(p, list)
			continue
		} else if why != "" {
			list[0] += ": " + why
		}
		for _, s := range things[why] {
			b.y = smallTick(b, 0, b.y, b.Width, s)
		}
		b.Reach(b.y)
		p.tight(b)
	}
}

// readFirst is what is made safe, and what is read while the truck still runs.
func readFirst(p *paper, pl *plan.Plan) {
	for _, l := range pl.Safety.Before {
		b := p.block()
		b.st.mind = b.st.body - 0.5 // in the size of the body
		b.y = smallTick(b, 0, 0.5, b.Width, l.Words+".")
		b.Reach(b.y)
		p.tight(b)
	}
	var list []plan.Step
	for _, s := range pl.Proving {
		if s.Blank != "" {
			list = append(list, s)
		}
	}
	if len(list) > 0 {
		head := p.block()
		head.y = head.write(0, 0.8, head.Width, "Read and write down, as found", draw.Bold, p.st.body)
		head.Reach(head.y)
		p.glue(head)
	}
	for len(list) > 0 {
		b := p.block()
		n, w := abreast(b, list, 0.7)
		low := 0.0
		for k, s := range list[:n] {
			in := p.block()
			in.Board.Width = w
			readingBlank(in, s, []string{""}, 0.30)
			b.absorb(in, float64(k)*(w+5), 0)
			low = max(low, in.y)
		}
		b.y = low
		b.Reach(low)
		list = list[n:]
		p.tight(b)
	}
}

// abreast is how many readings stand beside each other, and how wide each is: two
// where their texts leave room on two lines, of a share of that width.
func abreast(b *block, list []plan.Step, share float64) (n int, w float64) {
	n, w = min(2, len(list)), (b.Width-5)/2
	for _, s := range list[:n] {
		if s.Blank == "" {
			continue // a line of its own height
		}
		if b.tall(share*w-4, sentence(s.Text.String()), draw.Regular, b.st.aside()+0.5) > 2.2*lead(b.st.aside()+0.5) {
			return 1, b.Width // it wants the whole width
		}
	}
	return n, w
}

// readingBlank is a text with a line to write on for each name: beside it, or
// below it where it leaves no room.
func readingBlank(b *block, s plan.Step, names []string, share float64) {
	text := sentence(s.Text.String())
	unit := oneLine(s.Blank)
	if unit == "mm" {
		unit = b.u.one() // a blank is filled in in one unit
	}
	var lines []blankLine
	for _, n := range names {
		lines = append(lines, blankLine{n, unit, 1})
	}
	x := b.Width * (1 - share*float64(len(names)))
	pt := b.st.aside() + 0.5
	h := b.tall(x-4, text, draw.Regular, pt)
	if h > 2.2*lead(pt) {
		b.y = b.write(0, b.y+0.5, b.Width, text, draw.Regular, pt)
		x = 0
	} else {
		top := max(b.y, b.y+b.st.blank-0.3-h)
		b.y = max(b.write(0, top, x-4, text, draw.Regular, pt)-b.st.blank+0.3, b.y)
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
		var cells []plan.Step // read or done once: two beside each other
		flush := func() {
			for len(cells) > 0 {
				b := p.block()
				n, w := abreast(b, cells, 0.62)
				for k, s := range cells[:n] {
					in := p.block()
					in.Board.Width = w
					if s.Blank == "" {
						in.y = smallTick(in, 0, 0, w, sentence(s.Text.String()))
					} else {
						readingBlank(in, s, []string{"after"}, 0.38)
					}
					b.absorb(in, float64(k)*(w+5), 0)
					b.y = max(b.y, in.y)
				}
				b.Reach(b.y)
				cells = cells[n:]
				p.tight(b)
			}
		}
		for _, s := range pl.Proving {
			if s.Blank == "" || !s.Twice {
				cells = append(cells, s)
				continue
			}
			flush()
			b := p.block()
			readingBlank(b, s, []string{"before", "after"}, 0.24)
			p.tight(b)
		}
		flush()
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
	p.wholePart("Sizes as made: this table goes with the truck", "made", false, func() {
		head := p.block()
		for i, n := range []string{"hole, bush", "seat, " + p.u.one(), "outside", "bore, " + p.u.one()} {
			head.write(madeAt[i]*head.Width, 0, (madeAt[i+1]-madeAt[i])*head.Width-2, n, draw.Regular, head.st.small)
		}
		head.y = em(head.st.small) + 0.5
		head.Reach(head.y)
		p.glue(head)
		for _, s := range seats {
			b := p.block()
			madeRow(b, p, pl, s)
			p.tight(b)
		}
		b := p.block()
		b.blanks(0, b.Width, []blankLine{{"made by", "", 1.4}, {"date", "", 1}, {"oil", "", 1}})
		b.y = b.write(0, b.y, b.Width, p.bench.say("Job "+strings.TrimSpace(p.number+" "+p.title))+". "+sentence(p.foot)+".", draw.Regular, b.st.small)
		b.Reach(b.y)
		p.add(b)
		limitBars(p, pl, "made")
		meshBars(p, pl, "made")
	})
}

// limitsIn are limits under a heading that has their unit.
func limitsIn(u units, r *plan.MMRange) string {
	s := strings.Join(u.limits(r), ", ")
	if u != "both" {
		s = strings.TrimSuffix(s, " "+u.one())
	}
	return s
}

// madeAt is where the columns of the table begin, as shares of its width.
var madeAt = [5]float64{0, 0.30, 0.60, 0.72, 1}

func madeRow(b *block, p *paper, pl *plan.Plan, s plan.Seat) {
	pt, high := b.st.small, b.st.blank
	low := b.write(0, b.y+0.4, madeAt[1]*b.Width-2, s.Bore, draw.Bold, pt)
	low = b.write(0, low+0.3, madeAt[1]*b.Width-2, s.Bush, draw.Regular, pt)
	cell := func(k int, r *plan.MMRange) {
		x, w := madeAt[k]*b.Width, (madeAt[k+1]-madeAt[k])*b.Width-2
		box := w
		if r != nil {
			box = 0.40 * w
			low = max(low, b.write(x, b.y+0.4, w-box-1.5, limitsIn(p.u, r), draw.Regular, pt))
		}
		b.Rect(x+w-box, b.y+0.4, box, high, 0.3)
	}
	cell(1, orLimits(seatLimits(pl, s)))
	cell(2, nil)
	cell(3, orLimits(s.BoreMM))
	b.y = max(low, b.y+high+0.4) + 0.8
	b.Reach(b.y)
}
