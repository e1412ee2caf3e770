// Package draw is paper: pages of things measured in millimetres, in two
// embedded faces, black on white. It is the only room that knows the PDF
// library. Everything drawn is recorded first, so that a test can ask what
// overlaps what; the PDF is written from the record.
//
// It leaves out colour, pictures made of dots and flowing text: the caller
// measures, breaks and places.
package draw

import (
	"fmt"
	"time"
)

// Paper is a size of paper in mm.
type Paper struct {
	Name          string
	Width, Height float64
}

// The two papers.
var (
	A4     = Paper{"A4", 210, 297}
	Letter = Paper{"Letter", 215.9, 279.4}
)

// Document is a recorded document.
type Document struct {
	Paper    Paper
	Title    string
	Subject  string
	Language string    // "en-GB"
	Date     time.Time // of the metadata; the zero Time is a fixed day
	TrueSize bool      // printed at 100 % only: it is measured on
	Items    []Item    // of all pages, in reading order within a page

	pages   int
	blocks  int
	heads   map[int][]Item
	links   []placedLink
	marks   []placedMark
	anchors map[string]place
	err     error
}

type place struct {
	page int
	y    float64
}

type placedLink struct {
	link
	page int
}

type placedMark struct {
	mark
	page int
}

// New returns an empty document.
func New(p Paper, title string) *Document {
	return &Document{Paper: p, Title: title, Language: "en-GB", anchors: map[string]place{}, heads: map[int][]Item{}}
}

// Pages counts the pages.
func (d *Document) Pages() int { return d.pages }

// NewPage adds an empty page.
func (d *Document) NewPage() { d.pages++ }

// Fail keeps the first fault; Write returns it.
func (d *Document) Fail(err error) {
	if d.err == nil {
		d.err = err
	}
}

// Err is the first fault.
func (d *Document) Err() error { return d.err }

// Place puts a board on the last page with its upper left corner at x, y. What
// would leave the paper is a fault.
func (d *Document) Place(b *Board, x, y float64) {
	d.blocks++
	d.put(b, d.pages, d.blocks, x, y, func(it Item) { d.Items = append(d.Items, it) })
}

// Head puts a board on a page as its head or foot: it is read after everything
// else on the page.
func (d *Document) Head(b *Board, page int, x, y float64) {
	d.put(b, page, 0, x, y, func(it Item) { d.heads[page] = append(d.heads[page], it) })
}

func (d *Document) put(b *Board, page, block int, x, y float64, keep func(Item)) {
	if b.err != nil {
		d.Fail(fmt.Errorf("page %d: %w", page, b.err))
	}
	sheet := Box{0, 0, d.Paper.Width, d.Paper.Height}
	for _, it := range b.Items {
		it = it.moved(x, y)
		it.Page, it.Block = page, block
		if !it.Box.Inside(sheet) {
			d.Fail(fmt.Errorf("page %d: %q leaves the paper", page, it.Text))
		}
		keep(it)
	}
	for _, l := range b.links {
		l.box.X += x
		l.box.Y += y
		d.links = append(d.links, placedLink{l, page})
	}
	for _, m := range b.marks {
		m.y += y
		d.marks = append(d.marks, placedMark{m, page})
	}
	for _, a := range b.anchors {
		d.anchors[a.name] = place{page, a.y + y}
	}
}

// PageOf is the page on which an anchor stands, 0 where there is none.
func (d *Document) PageOf(anchor string) int { return d.anchors[anchor].page }

// All lists the items of a page in the order of the PDF: body, then head and
// foot.
func (d *Document) All(page int) []Item {
	var out []Item
	for _, it := range d.Items {
		if it.Page == page {
			out = append(out, it)
		}
	}
	return append(out, d.heads[page]...)
}

// Mark is an entry of the outline as it is placed.
type Mark struct {
	Title string
	Level int
	Page  int
	Y     float64
}

// Marks lists the outline.
func (d *Document) Marks() []Mark {
	var out []Mark
	for _, m := range d.marks {
		out = append(out, Mark{m.title, m.level, m.page, m.y})
	}
	return out
}
