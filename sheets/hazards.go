package sheets

import (
	"rebush/plan"
	"rebush/plan/safety"
	"rebush/sheets/draw"
)

// pageOne is what the hands of this job need most, in five lines at most.
func pageOne(p *paper, pl *plan.Plan) {
	if len(pl.Safety.PageOne) == 0 {
		return
	}
	b := p.block()
	b.para("Safety on this job", draw.Bold, p.st.body)
	b.y -= 1.5
	for _, l := range pl.Safety.PageOne {
		b.dashed(l.Words)
	}
	p.add(b)
}

// dashed writes a line behind a dash, its second line under its first.
func (b *block) dashed(s string) {
	const in = 4
	b.As(draw.Ground, func() { b.FillRect(0.6, b.y+em(b.st.body)/2-0.4, 1.8, 0.8, draw.Black) })
	b.y = b.write(in, b.y, b.Width-in, sentence(s), draw.Regular, b.st.body) + 0.9
	b.Reach(b.y)
}

// lookForBox is ticked before the first cut, where nobody has said that the
// casting is sound.
func lookForBox(p *paper, lines []safety.Line) {
	for _, l := range lines {
		b := p.block()
		b.boxed(1.2, 3.2, func(in *block) {
			w := in.tag(0, 0, "BEFORE THE FIRST CUT", in.st.body)
			h := em(in.st.body) + 2.4
			t := in.st.tick
			in.Rect(in.Width-t, 0, t, t, 0.6)
			in.y = in.write(w+4, 1.2, in.Width-w-t-8, "Nobody has said that it is sound.", draw.Bold, in.st.body)
			in.y = max(in.y, h, t) + 1.5
			in.para("Look for "+l.Words+".", draw.Regular, in.st.body)
			in.y -= 1.5
		})
		p.add(b)
	}
}

// owned is what concerns the owner of a truck.
func owned(p *paper, lines []safety.Line) {
	if len(lines) == 0 {
		return
	}
	words := "For your safety."
	for _, l := range lines {
		words += " " + sentence(l.Words)
	}
	b := p.block()
	b.para(words, draw.Regular, p.st.body)
	p.add(b)
}

// warned puts what the form says of some hazards where it can be acted on, each
// with a box to tick.
func (p *paper) warned(lines []safety.Line, hazards ...string) {
	for _, h := range hazards {
		for _, l := range lines {
			if l.Hazard == h {
				b := p.block()
				b.ticked(l.Words, draw.Regular)
				p.tight(b)
			}
		}
	}
}
