package sheets

import (
	"strings"

	"rebush/sheets/draw"
)

// tail is the foot of a page: on the left what stands on it, or that a clamping
// goes on overleaf; on the right program and plan; between them a bar to check a
// scale by, where something is drawn to one.
func (p *paper) tail(page int) *draw.Board {
	b := draw.NewBoard(p.width())
	const apart = 4.0
	pt := min(max(p.st.small, 10), 10)
	base := 1.6 + draw.Rise*pt*draw.MMPerPt
	b.Line(0, 0, b.Width, 0, 0.2)
	long, words := 0.0, "50 mm"
	if p.bars[page] {
		long = 50
		if p.u == "in" {
			long, words = 25.4, "1 in"
		}
	}
	right := draw.Cut(p.foot, draw.Regular, pt, b.Width/2-2)
	if long > 0 {
		right = draw.Cut(p.foot, draw.Regular, pt, b.Width/2-20)
	}
	room := b.Width - draw.Width(right, draw.Regular, pt) - apart
	b.TextRight(b.Width, base, b.Width-room, right, draw.Regular, pt)
	if long > 0 {
		x := room - long
		b.As(draw.Picture, func() {
			b.Line(x, 2.2, x, 4.6, draw.Narrow)
			b.Line(x+long, 2.2, x+long, 4.6, draw.Narrow)
			b.Line(x, 3.4, x+long, 3.4, draw.Narrow)
		})
		b.Label(x+long/2, base+0.2, 20, words, draw.Regular, pt)
		room = x - apart
	}
	if s, torn := p.stays(page); torn {
		b.Text(0, base, room, draw.Cut(s, draw.Bold, pt, room), draw.Bold, pt)
		return b
	}
	b.Text(0, base, room, draw.Cut(p.contents(page, pt, room), draw.Regular, pt, room), draw.Regular, pt)
	return b
}

// contents are the parts that stand on a page, in their order; where there is no
// room for all of them those that begin on it last.
func (p *paper) contents(page int, pt, room float64) string {
	list := []string{p.sections[page-1]}
	for _, s := range p.parts[page] {
		if s != list[len(list)-1] {
			list = append(list, s)
		}
	}
	for len(list) > 1 && draw.Width(strings.Join(list, "; "), draw.Regular, pt) > room {
		list = list[1:]
	}
	return strings.Join(list, "; ")
}
