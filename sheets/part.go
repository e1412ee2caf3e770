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
	lateShare = 0.85
	lastShare = 0.92 // the same where lines stand closer
	ownShare  = 0.75 // of a card, where pages are short
	fillShare = 0.40
)

// part is a part of the document with its heading: on the page where the last
// one ended where it has room there as a whole, else on a new one; where that
// would leave a page nearly empty it follows and goes on overleaf. A part that
// is taken to the machine by itself begins a page.
func (p *paper) part(title, anchor string, own bool, fill func()) {
	list := p.gather(title, anchor, fill)
	if len(list) < 2 {
		return // a heading without anything to head
	}
	used := p.y - p.topY()
	late := !p.fitsHere(list) && used >= p.lateFrom()*p.height()
	p.lay(list, own && used >= ownShare*p.height() || late)
}

// wholePart is a part that stands on one page: where the last one ended where it
// has room there, else on a new one, closer where it would not go on that. A part
// that no page holds is laid as any other.
func (p *paper) wholePart(title, anchor string, own bool, fill func()) {
	st := p.st
	defer func() { p.st = st }()
	for step := p.how.step; step <= lastStep; step++ {
		p.st = sheetStyle(step, p.large)
		list := p.gather(title, anchor, fill)
		switch {
		case len(list) < 2:
			return
		case p.fitsHere(list), p.tall(list, true) <= p.height()+1e-9:
			p.steps += step - p.how.step
			p.lay(list, !p.fitsHere(list))
			return
		}
	}
	p.st = st
	p.part(title, anchor, own, fill)
}

// gather is what a part consists of, its heading first.
func (p *paper) gather(title, anchor string, fill func()) []piece {
	p.flush()
	var list []piece
	p.held = &list
	p.section = title
	p.heading(title, anchor)
	fill()
	p.held = nil
	return list
}

// fitsHere says whether a part has room below what stands on the page.
func (p *paper) fitsHere(list []piece) bool {
	if p.doc.Pages() == 0 || p.y <= p.topY() {
		return false
	}
	return p.y+p.partGap()+p.tall(list, false) <= p.floor()+1e-9
}

// partGap is left above a part that follows on a page.
func (p *paper) partGap() float64 { return p.gap() / 2 }

// tall is how much of a page a part fills, from its top or below others.
func (p *paper) tall(list []piece, top bool) float64 {
	y, waiting := 0.0, 0
	for _, x := range list {
		if x.how == tightened && !top {
			if waiting > 0 {
				y -= p.gap() - p.lineGap() - 1
			} else {
				y -= p.gap() - p.lineGap()
			}
		}
		y += max(x.b.Board.Height, x.b.y)
		if x.how == glued {
			y += 1.5
			waiting++
			continue
		}
		y += p.gap()
		waiting, top = 0, false
	}
	return y - p.gap()
}

// lay places a part, on a new page or below what stands on the page.
func (p *paper) lay(list []piece, fresh bool) {
	if fresh || p.doc.Pages() == 0 || p.y <= p.topY() {
		p.page()
	} else {
		p.y += p.partGap()
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
