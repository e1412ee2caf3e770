package draw

import (
	"fmt"
	"math"
)

type link struct {
	box    Box
	target string
}

type mark struct {
	title string
	level int
	y     float64
}

type anchor struct {
	name string
	y    float64
}

// Board is a piece of paper of its own: what is drawn on it is measured and
// recorded in its own coordinates and placed on a page as a whole, so that it
// can never be split. The first fault sticks and comes out of Document.Place.
type Board struct {
	Width, Height float64
	Items         []Item
	links         []link
	marks         []mark
	anchors       []anchor
	part          Part
	stroke        Stroke
	err           error
}

// NewBoard returns an empty board of a width in mm.
func NewBoard(width float64) *Board { return &Board{Width: width} }

// Err is the first fault, nil where there is none.
func (b *Board) Err() error { return b.err }

func (b *Board) fail(format string, args ...any) {
	if b.err == nil {
		b.err = fmt.Errorf(format, args...)
	}
}

// As draws what f draws as a part.
func (b *Board) As(p Part, f func()) {
	old := b.part
	b.part = p
	f()
	b.part = old
}

// Stroked draws the lines that f draws with a stroke.
func (b *Board) Stroked(s Stroke, f func()) {
	old := b.stroke
	b.stroke = s
	f()
	b.stroke = old
}

func (b *Board) put(it Item) {
	if it.Dash {
		it.Stroke = Hidden
	}
	if b.stroke != Unbroken && it.Kind != KindText && it.Fill == Open {
		it.Stroke, it.Dash = b.stroke, true
	}
	for _, v := range [...]float64{it.Box.X, it.Box.Y, it.Box.W, it.Box.H} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			b.fail("a figure to be drawn is not finite")
			return
		}
	}
	it.Part = b.part
	b.Items = append(b.Items, it)
	b.Reach(it.Box.Y + it.Box.H)
}

// Reach makes the board at least so high.
func (b *Board) Reach(y float64) { b.Height = max(b.Height, y) }

// Text writes one line with its base line at y. It must fit into width.
func (b *Board) Text(x, y, width float64, s string, f Face, pt float64) {
	b.text(x, y, width, s, f, pt, false)
}

// Reversed writes white on a ground that was filled black before.
func (b *Board) Reversed(x, y, width float64, s string, f Face, pt float64) {
	b.text(x, y, width, s, f, pt, true)
}

func (b *Board) text(x, y, width float64, s string, f Face, pt float64, light bool) {
	if s == "" {
		return
	}
	if n := Lacking(s); n > 0 {
		b.fail("%d signs of %q are not in the font", n, s)
		return
	}
	w := Width(s, f, pt)
	if w > width+1e-6 {
		b.fail("%q is %.1f mm wide and has %.1f mm", s, w, width)
		return
	}
	em := pt * MMPerPt
	b.put(Item{Kind: KindText, Text: s, Face: f, PT: pt, X: x, Y: y, Room: width, Light: light,
		Box: Box{x, y - Rise*em, w, (Rise + Drop) * em}})
}

// TextRight writes one line that ends at x.
func (b *Board) TextRight(x, y, width float64, s string, f Face, pt float64) {
	w := Width(s, f, pt)
	b.text(x-w, y, width, s, f, pt, false)
}

// TextMid writes one line about x.
func (b *Board) TextMid(x, y, width float64, s string, f Face, pt float64) {
	w := Width(s, f, pt)
	b.text(x-w/2, y, width, s, f, pt, false)
}

// Label writes one line of a picture about x on a ground cleared for it.
func (b *Board) Label(x, y, width float64, s string, f Face, pt float64) {
	w, em := Width(s, f, pt), pt*MMPerPt
	b.FillRect(x-w/2-0.4, y-Rise*em-0.2, w+0.8, (Rise+Drop)*em+0.4, White)
	b.text(x-w/2, y, width, s, f, pt, false)
}

// Line draws a straight line.
func (b *Board) Line(x1, y1, x2, y2, pen float64) { b.line(x1, y1, x2, y2, pen, false) }

// DashLine draws a broken line.
func (b *Board) DashLine(x1, y1, x2, y2, pen float64) { b.line(x1, y1, x2, y2, pen, true) }

func (b *Board) line(x1, y1, x2, y2, pen float64, dash bool) {
	b.put(Item{Kind: KindLine, Points: [][2]float64{{x1, y1}, {x2, y2}}, Line: pen, Dash: dash,
		Box: Box{min(x1, x2), min(y1, y2), math.Abs(x2 - x1), math.Abs(y2 - y1)}})
}

// Rect draws a frame.
func (b *Board) Rect(x, y, w, h, pen float64) {
	b.put(Item{Kind: KindRect, Line: pen, Box: Box{x, y, w, h}})
}

// FillRect fills a rectangle; nothing else is drawn of it.
func (b *Board) FillRect(x, y, w, h float64, fill Fill) {
	old := b.part
	b.part = Ground
	b.put(Item{Kind: KindRect, Fill: fill, Box: Box{x, y, w, h}})
	b.part = old
}

// Circle draws a circle about x, y.
func (b *Board) Circle(x, y, r, pen float64, dash bool) {
	b.put(Item{Kind: KindCircle, X: x, Y: y, R: r, Line: pen, Dash: dash, Box: Box{x - r, y - r, 2 * r, 2 * r}})
}

// Disc fills a circle about x, y.
func (b *Board) Disc(x, y, r float64, fill Fill) {
	b.put(Item{Kind: KindCircle, X: x, Y: y, R: r, Fill: fill, Box: Box{x - r, y - r, 2 * r, 2 * r}})
}

// Path draws straight lines from point to point, closed or not.
func (b *Board) Path(points [][2]float64, closed bool, pen float64, dash bool, fill Fill) {
	if len(points) < 2 {
		return
	}
	lo, hi := points[0], points[0]
	for _, p := range points {
		for k := range p {
			lo[k], hi[k] = min(lo[k], p[k]), max(hi[k], p[k])
		}
	}
	b.put(Item{Kind: KindPath, Points: points, Closed: closed, Line: pen, Dash: dash, Fill: fill,
		Box: Box{lo[0], lo[1], hi[0] - lo[0], hi[1] - lo[1]}})
}

// Link leads from a box to the place of that name.
func (b *Board) Link(box Box, target string) { b.links = append(b.links, link{box, target}) }

// Anchor names the place at y for links.
func (b *Board) Anchor(name string, y float64) { b.anchors = append(b.anchors, anchor{name, y}) }

// Bookmark puts the place at y into the outline of the document.
func (b *Board) Bookmark(title string, level int, y float64) {
	b.marks = append(b.marks, mark{title, level, y})
}

// Absorb moves everything that stands on another board onto this one.
func (b *Board) Absorb(in *Board, dx, dy float64) {
	if b.err == nil {
		b.err = in.err
	}
	for _, it := range in.Items {
		b.Items = append(b.Items, it.moved(dx, dy))
	}
	for _, l := range in.links {
		l.box.X += dx
		l.box.Y += dy
		b.links = append(b.links, l)
	}
	for _, m := range in.marks {
		m.y += dy
		b.marks = append(b.marks, m)
	}
	for _, a := range in.anchors {
		a.y += dy
		b.anchors = append(b.anchors, a)
	}
	b.Reach(in.Height + dy)
}
