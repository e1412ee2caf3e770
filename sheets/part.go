package sheets

// piece is a block of a part and how it stands to the one above it.
type piece struct {
	b   *block
	how placing
}

// placing is how a block stands to its neighbours.
type placing uint8

const (
	added placing = iota
	glued         // kept with the next
	tightened
)

// Shares of a page: a part is not begun below the first where it would have to
// go on overleaf, and no page is left that is not filled to the second.
const (
	lateShare  = 0.85
	lastShare  = 0.92 // the same where lines stand closer
	ownShare   = 0.75 // of a card, where pages are short
	wholeShare = 0.15 // of a card that is to stand on one page
	fillShare  = 0.40
)

// part is a part of the document with its heading: on the page where the last
// one ended where it has room there as a whole, else on a new one; where that
// would leave a page nearly empty it follows and goes on overleaf. A part that
// is taken to the machine by itself begins a page.
func (p *paper) part(title, anchor string, own bool, fill func()) {
	p.flush()
	var list []piece
	p.held = &list
	p.section = title
	p.heading(title, anchor)
	fill()
	p.held = nil
	if len(list) < 2 {
		return // a heading without anything to head
	}
	high := 0.0
	for _, x := range list {
		h := max(x.b.Board.Height, x.b.y)
		switch x.how {
		case tightened:
			high += h + 0.8
		case glued:
			high += h + 1.5
		default:
			high += h + gap
		}
	}
	used := p.y - p.topY()
	fits := p.y+gap+high-gap <= p.floor()
	switch {
	case p.doc.Pages() == 0 || used <= 0:
		p.page()
	case own && used >= p.ownFrom()*p.height(), !fits && used >= p.lateFrom()*p.height():
		p.page()
	default:
		p.y += 2
	}
	for _, x := range list {
		switch x.how {
		case tightened:
			p.tight(x.b)
		case glued:
			p.glue(x.b)
		default:
			p.add(x.b)
		}
	}
	p.flush()
}

// fitTight adds a row close to the one above it, in the size of type asked for;
// where a very long text would not go on a page, in smaller type.
func (p *paper) fitTight(build func(st style) *block) {
	b := build(p.st)
	for _, smaller := range []style{sheetNormal, tiny} {
		if max(b.Board.Height, b.y) <= p.height()-20 {
			break
		}
		b = build(smaller)
	}
	p.tight(b)
}

// lateFrom is the share of a page from which no part is begun that goes on
// overleaf.
func (p *paper) lateFrom() float64 {
	if p.how.closer() {
		return lastShare
	}
	return lateShare
}

// ownFrom is the share of a page below which a card does not begin on it.
func (p *paper) ownFrom() float64 {
	switch p.how {
	case layRoomy:
		return fillShare
	case layWhole:
		return wholeShare
	}
	return ownShare
}

// fit adds a block in the size of type asked for; where a block with a very
// long text would not go on a page, in smaller type.
func (p *paper) fit(build func(st style) *block) {
	st := p.st
	b := build(st)
	for _, smaller := range []style{normal, tiny} {
		if b.Board.Height <= p.height() {
			break
		}
		b = build(smaller)
	}
	p.add(b)
}

// tiny is for a block that no page would hold otherwise.
var tiny = style{small: 8, body: 9.5, figure: 14, big: 16, title: 20, tick: 6, blank: 8, picture: 36}
