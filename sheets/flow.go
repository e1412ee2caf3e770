package sheets

import (
	"fmt"
	"strconv"

	"rebush/plan/job"
	"rebush/sheets/draw"
)

// paper is a document that is being filled. All pages have one grid: a head
// line, a column of blocks, a foot line.
type paper struct {
	doc    *draw.Document
	st     style
	u      units
	day    string
	number string // of the job
	title  string // of the job, printable
	batch  bool   // the paper is of many jobs
	stop   bool   // DO NOT MACHINE stands in every head
	shout  string // what stands in capitals in every head
	reason string // why this way is not advised, under it

	currency string // of the shop

	stopsSaid bool // the cover has said what stops the job
	foot      string
	sections  []string // of each page, from page 1
	section   string
	parts     map[int][]string // that begin on a page
	y         float64
	glued     []*block // kept with the next block

	bench         bench
	large         bool
	how           layout
	torn          int           // cards that went on overleaf
	bare          int           // pages that were left nearly empty
	with, offered []spare       // pictures that have room, and that were offered
	steps         int           // steps by which cards stand closer than the rest
	overleaf      map[int][]int // operations of a card that stand after a page that it tears on
	tornOn        int           // the page that the card at hand was torn on last, 0 none
	again         func() *block // heads a part that goes on on another page, nil nothing
	held          *[]piece      // what a part gathers before it is placed, nil where nothing is gathered
	bars          map[int]bool  // pages with something drawn to a scale
}

// Margins in mm. The left one leaves room for the holes of a binder.
const (
	marginLeft   = 20.0
	marginRight  = 11.0
	marginTop    = 10.0
	marginBottom = 9.0
	headHeight   = 9.0
	footHeight   = 7.0
	gap          = 4.0
	closeGap     = 2.6 // where lines stand closest
)

func newPaper(o Options, j *job.Job, what string) (*paper, error) {
	var shop *job.Shop
	if j != nil {
		shop = j.Shop
	}
	size, err := o.paper(shop)
	if err != nil {
		return nil, err
	}
	u, err := o.units(j)
	if err != nil {
		return nil, err
	}
	day, t, err := o.day(j)
	if err != nil {
		return nil, err
	}
	p := &paper{st: normal, u: u, day: day, bench: benchOf(j), bars: map[int]bool{}, overleaf: map[int][]int{},
		parts: map[int][]string{}}
	if o.Large {
		p.st, p.large = large, true
	}
	title := what
	if j != nil {
		p.number, p.title = oneLine(j.Number), oneLine(j.Title)
		title = what + " " + j.Number
		if j.Title != "" {
			title += ", " + j.Title
		}
	}
	p.doc = draw.New(size, title)
	p.doc.Date = t
	p.doc.Subject = what
	return p, nil
}

func (p *paper) width() float64  { return p.doc.Paper.Width - marginLeft - marginRight }
func (p *paper) topY() float64   { return marginTop + p.headTall() }
func (p *paper) floor() float64  { return p.doc.Paper.Height - marginBottom - footHeight }
func (p *paper) height() float64 { return p.floor() - p.topY() }

// block starts an empty block over the whole width.
func (p *paper) block() *block {
	return &block{Board: draw.NewBoard(p.width()), st: p.st, u: p.u, bench: p.bench}
}

// page starts a new page.
func (p *paper) page() {
	if p.doc.Pages() > 0 && p.y-p.gap()-p.topY() < fillShare*p.height() {
		p.bare++
	}
	p.doc.NewPage()
	p.sections = append(p.sections, p.section)
	p.y = p.topY()
}

// open starts a part of the document on a new page, with a bookmark.
func (p *paper) open(title, anchor string) {
	p.flush()
	p.section = title
	p.page()
	p.heading(title, anchor)
}

// follow starts a part on the same page where there is room.
func (p *paper) follow(title, anchor string) {
	p.flush()
	p.section = title
	if p.y > p.topY() {
		p.y += 4
	}
	p.heading(title, anchor)
}

func (p *paper) heading(title, anchor string) {
	b := p.block()
	b.Bookmark(title, 0, 0)
	b.Anchor(anchor, 0)
	b.y = b.write(0, 0, b.Width, title, draw.Bold, p.st.figure) + 0.8
	b.part = title
	b.As(draw.Ground, func() { b.FillRect(0, b.y, b.Width, 0.7, draw.Black) })
	b.y += 1
	b.Reach(b.y)
	p.glue(b)
}

// glue keeps a block on one page with the next.
func (p *paper) glue(b *block) {
	if p.held != nil {
		*p.held = append(*p.held, piece{b, glued})
		return
	}
	p.glued = append(p.glued, b)
}

// add places a block, on a new page where this one has no room for it and for
// what is glued to it.
func (p *paper) add(b *block) {
	if p.held != nil {
		*p.held = append(*p.held, piece{b, added})
		return
	}
	list := append(p.glued, b)
	p.glued = nil
	need := 0.0
	for i, x := range list {
		need += max(x.Board.Height, x.y)
		if i < len(list)-1 {
			need += p.between(i, len(list))
		}
	}
	if need > p.height() && len(list) > 1 { // no page holds them together
		for _, x := range list {
			p.add(x)
		}
		return
	}
	if p.doc.Pages() == 0 || p.y+need > p.floor()+1e-9 && p.y > p.topY() {
		p.page()
		if p.again != nil {
			x := p.again()
			p.tear()
			p.doc.Place(x.Board, marginLeft, p.y)
			p.y += max(x.Board.Height, x.y) + 1.5
		}
	}
	for i, x := range list {
		h := max(x.Board.Height, x.y)
		if h > p.height()+1e-9 {
			p.doc.Fail(fmt.Errorf("page %d: a block is %.0f mm high and the page has room for %.0f mm", p.doc.Pages(), h, p.height()))
		}
		p.doc.Place(x.Board, marginLeft, p.y)
		p.after(x)
		if x.scaled {
			p.bars[p.doc.Pages()] = true
		}
		p.y += h + p.between(i, len(list))
	}
}

// between is the gap below block i of n that stand together.
func (p *paper) between(i, n int) float64 {
	if i < n-1 {
		return 1.5
	}
	return p.gap()
}

// gap is what is left below a block.
func (p *paper) gap() float64 {
	if p.how.step == lastStep {
		return closeGap
	}
	return gap
}

// tight places a block closer to the one above it: a line of a list.
func (p *paper) tight(b *block) {
	if p.held != nil {
		*p.held = append(*p.held, piece{b, tightened})
		return
	}
	switch {
	case p.doc.Pages() == 0 || p.y <= p.topY():
	case len(p.glued) == 0:
		p.y -= p.gap() - p.lineGap()
	default:
		p.y -= p.gap() - p.lineGap() - 1
	}
	p.add(b)
}

// lineGap is what is left between the lines of a list.
func (p *paper) lineGap() float64 {
	if p.how.step == lastStep {
		return 0.2
	}
	return 0.8
}

// flush places what is still glued.
func (p *paper) flush() {
	if n := len(p.glued); n > 0 {
		last := p.glued[n-1]
		p.glued = p.glued[:n-1]
		p.add(last)
	}
}

// finish writes head and foot of each page and hands the document on.
func (p *paper) finish() (*draw.Document, error) {
	p.flush()
	n := p.doc.Pages()
	for page := 1; page <= n; page++ {
		p.doc.Head(p.head(page, n), page, marginLeft, marginTop)
		p.doc.Head(p.tail(page), page, marginLeft, p.doc.Paper.Height-marginBottom-footHeight+1.5)
	}
	return p.doc, p.doc.Err()
}

func (p *paper) head(page, of int) *draw.Board {
	b := draw.NewBoard(p.width())
	pt := min(p.st.body, 14)
	base := draw.Rise * pt * draw.MMPerPt
	count := "page " + strconv.Itoa(page) + " of " + strconv.Itoa(of)
	b.TextRight(b.Width, base, b.Width, count, draw.Bold, pt)
	room := b.Width - draw.Width(count, draw.Bold, pt) - 5
	x := 0.0
	if p.shout != "" {
		b.Text(0, base, room, p.shout, draw.Bold, pt)
		x = draw.Width(p.shout, draw.Bold, pt) + 5
	}
	name := draw.Cut(p.jobName(), draw.Bold, pt, room-x)
	b.Text(x, base, room-x, name, draw.Bold, pt)
	x += draw.Width(name, draw.Bold, pt) + 4
	if room-x > 20 {
		b.Text(x, base, room-x, draw.Cut(p.title, draw.Regular, pt, room-x), draw.Regular, pt)
	}
	if p.reason != "" {
		for _, l := range p.reasonLines() {
			base += lead(p.reasonPt())
			b.Text(0, base, b.Width, l, draw.Bold, p.reasonPt())
		}
	}
	b.Line(0, base+2.2, b.Width, base+2.2, 0.35)
	return b
}

// jobName is what every page calls the job.
func (p *paper) jobName() string {
	if p.batch {
		return p.doc.Title
	}
	if p.number == "" {
		return "job without a number"
	}
	return "job " + p.number
}
