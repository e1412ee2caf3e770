package sheets

import (
	"rebush/sheets/draw"
)

// block is a board that is filled from top to bottom. y is the next free
// height.
type block struct {
	*draw.Board
	st style
	u  units
	y  float64

	bench  bench
	scaled bool // something in it is drawn to a scale

	part string // that it is the heading of
	ops  []int  // numbers of the operations that a row is of

	currency string // of the shop
	already  bool   // the job may be machined as it stands
}

// write sets a text into a column with the top of its first line at y, and
// returns the height below its last line.
func (b *block) write(x, y, w float64, s string, f draw.Face, pt float64) float64 {
	return b.raw(x, y, w, b.bench.say(s), f, pt)
}

// raw is write for a text that is in the words of the bench already.
func (b *block) raw(x, y, w float64, s string, f draw.Face, pt float64) float64 {
	if s == "" {
		return y
	}
	y += draw.Rise * pt * draw.MMPerPt
	for _, line := range draw.Wrap(printable(s), f, pt, w) {
		b.Text(x, y, w, line, f, pt)
		y += b.lead(pt)
	}
	return y - b.lead(pt) + draw.Drop*pt*draw.MMPerPt
}

// lead is the distance of the base lines of a size of type in mm.
func (b *block) lead(pt float64) float64 { return lead(pt) * (1 - b.st.closer) }

// tall is the height that write would fill.
func (b *block) tall(w float64, s string, f draw.Face, pt float64) float64 {
	if s == "" {
		return 0
	}
	n := len(draw.Wrap(printable(b.bench.say(s)), f, pt, w))
	return float64(n-1)*b.lead(pt) + em(pt)
}

// para writes a paragraph over the whole width and a gap below it.
func (b *block) para(s string, f draw.Face, pt float64) {
	if s == "" {
		return
	}
	b.y = b.write(0, b.y, b.Width, s, f, pt) + 0.45*lead(pt)
	b.Reach(b.y)
}

// skip leaves a gap.
func (b *block) skip(mm float64) {
	b.y += mm
	b.Reach(b.y)
}

// ticked writes a paragraph beside a tick box.
func (b *block) ticked(s string, f draw.Face) {
	t := b.st.tick
	x := t + 3.5
	h := b.tall(b.Width-x, s, f, b.st.body)
	top := b.y
	b.Rect(0.3, top+0.2, t, t, 0.45)
	text := top
	if h < t {
		text = top + (t-h)/2
	}
	end := b.write(x, text, b.Width-x, s, f, b.st.body)
	b.y = max(end, top+t+0.4) + 1.3
	b.Reach(b.y)
}

// field is a figure with its name above it.
type field struct {
	name  string
	lines []string
	face  draw.Face
	pt    float64
	wide  int // columns that it fills, 1 where it is 0
}

func (f field) span() int { return max(f.wide, 1) }

// fields sets fields into columns of one width, row by row. It returns the
// height below the last row.
func (b *block) fields(x, y, w float64, cols int, list []field) float64 {
	const gutter = 4
	cw := (w - gutter*float64(cols-1)) / float64(cols)
	for at := 0; at < len(list); {
		used, end := 0, at
		for end < len(list) && used+min(list[end].span(), cols) <= cols {
			used += min(list[end].span(), cols)
			end++
		}
		col, low := 0, y
		for _, f := range list[at:end] {
			n := min(f.span(), cols)
			fx := x + float64(col)*(cw+gutter)
			fw := float64(n)*cw + float64(n-1)*gutter
			low = max(low, b.field(fx, y, fw, f))
			col += n
		}
		y, at = low+2.4, end
	}
	return y
}

func (b *block) field(x, y, w float64, f field) float64 {
	pt := f.pt
	if pt == 0 {
		pt = b.st.body
	}
	if f.name != "" {
		y = b.write(x, y, w, f.name, draw.Regular, b.st.small) + 0.9
	}
	for i, line := range f.lines {
		if i > 0 {
			y += lead(pt) - em(pt)
		}
		y = b.write(x, y, w, line, f.face, b.shrink(line, f.face, pt, w))
	}
	b.Reach(y)
	return y
}

// shrink is the size of type for a figure that should stand on one line: a
// figure is not broken, it steps down, at the least to the size of the body.
func (b *block) shrink(s string, f draw.Face, pt, w float64) float64 {
	s = printable(s)
	for _, step := range [...]float64{pt, b.st.figure, (b.st.figure + b.st.body) / 2} {
		if step <= pt && step > b.st.body && draw.Width(s, f, step) <= w {
			return step
		}
	}
	return min(pt, b.st.body)
}

// blanks draws lines to write on, each with its name before it and its unit
// after it, filling the width.
func (b *block) blanks(x, w float64, list []blankLine) {
	total := 0.0
	for _, l := range list {
		total += l.share
	}
	const gutter = 5
	room := w - gutter*float64(len(list)-1)
	pt := b.st.small
	base := b.y + b.st.blank - 1.2
	for _, l := range list {
		lw := room * l.share / total
		nw := draw.Width(l.name, draw.Regular, pt)
		b.Text(x, base, lw, l.name, draw.Regular, pt)
		uw := 0.0
		if l.unit != "" {
			uw = draw.Width(l.unit, draw.Regular, pt) + 1
			b.TextRight(x+lw, base, lw, l.unit, draw.Regular, pt)
		}
		if lw-nw-uw-2 > 2 {
			b.Line(x+nw+1.5, base+0.9, x+lw-uw, base+0.9, 0.3)
		}
		x += lw + gutter
	}
	b.y += b.st.blank + 0.6
	b.Reach(b.y)
}

type blankLine struct {
	name, unit string
	share      float64
}

// boxed draws a frame around what f writes inside it.
func (b *block) boxed(pen, pad float64, f func(in *block)) {
	in := &block{Board: draw.NewBoard(b.Width - 2*pad), st: b.st, u: b.u, bench: b.bench}
	f(in)
	b.absorb(in, pad, b.y+pad)
	h := in.y + 2*pad
	b.As(draw.Ground, func() { b.Rect(pen/2, b.y+pen/2, b.Width-pen, h-pen, pen) })
	b.y += h + 2
	b.Reach(b.y)
}

// absorb moves what stands on another board onto this one.
func (b *block) absorb(in *block, dx, dy float64) { b.Board.Absorb(in.Board, dx, dy) }

// tag writes white on a black ground and returns the width of the ground.
func (b *block) tag(x, y float64, s string, pt float64) float64 {
	w := draw.Width(s, draw.Bold, pt) + 4
	b.FillRect(x, y, w, em(pt)+2.4, draw.Black)
	b.Reversed(x+2, y+1.2+draw.Rise*pt*draw.MMPerPt, w, s, draw.Bold, pt)
	return w
}
