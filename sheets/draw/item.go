package draw

// Kind is what an item is.
type Kind uint8

// The kinds of items.
const (
	KindText Kind = iota
	KindLine
	KindRect
	KindCircle
	KindPath
)

// Fill is how a closed figure is filled. Paper is black and white.
type Fill uint8

// The fills.
const (
	Open  Fill = iota // outline only
	Black             // solid
	White             // solid white, to clear the ground under a label; no outline
)

// Stroke is how a line is broken. Each has one meaning on all paper, after ISO
// 128-2: unbroken and wide is what is there, narrow dashes are what is hidden,
// long dashes and dots are a centre, long dashes and two dots are how a thing
// was or will be.
type Stroke uint8

// The strokes.
const (
	Unbroken Stroke = iota
	Hidden
	Centre
	Other // before or after
)

// Widths of lines in mm: wide is twice narrow, as in ISO 128-2.
const (
	Wide   = 0.5
	Narrow = 0.25
)

// Box is a rectangle in mm, x to the right and y down from the upper left
// corner.
type Box struct{ X, Y, W, H float64 }

// Overlaps says whether two boxes share more than their edges.
func (b Box) Overlaps(c Box) bool {
	const e = 1e-6
	return b.X+e < c.X+c.W && c.X+e < b.X+b.W && b.Y+e < c.Y+c.H && c.Y+e < b.Y+b.H
}

// Inside says whether a box lies within another.
func (b Box) Inside(c Box) bool {
	const e = 1e-6
	return b.X+e >= c.X && b.Y+e >= c.Y && b.X+b.W <= c.X+c.W+e && b.Y+b.H <= c.Y+c.H+e
}

// Item is one thing drawn. Box bounds it; a line or path without width has a
// box without area. All figures are in mm but PT, the size of type in points.
type Item struct {
	Kind   Kind
	Page   int // from 1; 0 on a board that is not placed yet
	Block  int // number of the board it was placed with, from 1; 0 for the head of a page
	Box    Box
	Room   float64 // width that the text may fill
	Text   string
	Face   Face
	PT     float64
	X, Y   float64 // base line of a text, centre of a circle
	R      float64
	Points [][2]float64
	Closed bool
	Line   float64 // width of the pen
	Dash   bool
	Stroke Stroke
	Fill   Fill
	Light  bool // white text on a black ground
	Part   Part
}

// Part says what an item belongs to, so that a test knows what it may touch.
type Part uint8

// The parts.
const (
	Plain   Part = iota
	Ground       // a filled ground or frame that text stands on
	Picture      // lines of a drawing
)

// moved returns the item moved by dx, dy; its points are copied.
func (it Item) moved(dx, dy float64) Item {
	it.Box.X += dx
	it.Box.Y += dy
	it.X += dx
	it.Y += dy
	if len(it.Points) > 0 {
		pts := make([][2]float64, len(it.Points))
		for i, p := range it.Points {
			pts[i] = [2]float64{p[0] + dx, p[1] + dy}
		}
		it.Points = pts
	}
	return it
}
