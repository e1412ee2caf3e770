package sheets

import (
	"slices"
	"strconv"
	"strings"

	"rebush/plan/job"
	"rebush/sheets/draw"
)

// cell is a box of the form to fill in: a figure, two of them, or a word to
// tick. A reading that no question asks for has no number.
type cell struct {
	number int
	name   string
	wide   float64  // its share of a row
	words  []string // to tick one of
	many   bool     // more than one of them
	parts  []string // names of its figures, where it has more than one
	first  bool     // it is on the short way to a verdict
	value  string   // of the worked example
}

// of makes the boxes of a part of the list of questions, filled in where the
// form is the worked example.
func (f *form) of(part, of string) []cell {
	var out []cell
	for _, q := range job.Questions() {
		if q.Part == part && q.Number > 0 {
			out = append(out, cell{number: q.Number, name: q.Named(), wide: q.Wide, words: q.Words, many: q.Many,
				parts: q.Figures, first: q.Group == "", value: f.answer(part, of, q.ID)})
		}
	}
	return out
}

// first are the boxes of a part on the short way to a verdict, more the others.
func (f *form) first(part, of string) []cell {
	return slices.DeleteFunc(f.of(part, of), func(c cell) bool { return !c.first })
}

func (f *form) more(part, of string) []cell {
	list := slices.DeleteFunc(f.of(part, of), func(c cell) bool { return c.first })
	slices.SortStableFunc(list, func(a, b cell) int { return a.number - b.number })
	return list
}

// reading is a box that no question asks for.
func reading(name string, wide float64) cell { return cell{name: name, wide: wide} }

// Between boxes beside each other and rows of them, in mm.
const (
	boxGutter = 3.0
	boxGap    = 2.2
)

// boxRow is how many of a list of cells go beside each other, and how wide each is.
func (p *paper) boxRow(width, perRow float64, list []cell) (n int, widths []float64) {
	b := &block{Board: draw.NewBoard(width), st: p.st, u: p.u}
	if p.st.large {
		perRow = max(2, perRow*0.75)
	}
	unit := (width - boxGutter*(perRow-1)) / perRow
	used := 0.0
	for n < len(list) {
		w := min(b.cellWidth(list[n], unit), width)
		if n > 0 && used+boxGutter+w > width+1e-6 {
			break
		}
		if n > 0 {
			used += boxGutter
		}
		used += w
		widths = append(widths, w)
		n++
	}
	if spare := width - used; spare < 0.25*width { // to the edge
		for i := range widths {
			widths[i] += spare / float64(n)
		}
	}
	return n, widths
}

// boxes lays cells out in rows, as many to a row as go.
func (p *paper) boxes(width, perRow float64, list []cell) *block {
	b := &block{Board: draw.NewBoard(width), st: p.st, u: p.u}
	for len(list) > 0 {
		n, widths := p.boxRow(width, perRow, list)
		x, label, high := 0.0, 0.0, b.st.blank
		for i, c := range list[:n] {
			label = max(label, b.tall(widths[i]-b.numberWide(c), c.name, draw.Regular, b.st.small))
			high = max(high, b.ticksTall(c, widths[i]))
		}
		for i, c := range list[:n] {
			b.cell(c, x, widths[i], label, high)
			x += widths[i] + boxGutter
		}
		b.y += label + 0.9 + high + boxGap
		list = list[n:]
	}
	b.y -= boxGap
	b.Reach(b.y)
	return b
}

// numberWide is the room for the number before the name of a box.
func (b *block) numberWide(c cell) float64 {
	if c.number == 0 {
		return 0
	}
	return draw.Width(strconv.Itoa(c.number), draw.Bold, b.st.small) + 1.4
}

// cellWidth is the width of a cell where a share of a row is unit wide.
func (b *block) cellWidth(c cell, unit float64) float64 {
	w := c.wide*unit + 3*max(0, c.wide-1)
	if len(c.words) == 0 {
		return w
	}
	need := 0.0
	for _, word := range c.words {
		need += b.tickWide(word)
	}
	return max(need, b.numberWide(c)+draw.Width(c.name, draw.Regular, b.st.small)+0.5)
}

func (b *block) tickWide(word string) float64 {
	return b.st.tick + 2 + draw.Width(word, draw.Regular, b.st.body) + 3.5
}

// ticksTall is the height of the words to tick, in as many rows as they take.
func (b *block) ticksTall(c cell, width float64) float64 {
	if len(c.words) == 0 {
		return 0
	}
	rows, x := 1, 0.0
	for _, word := range c.words {
		w := b.tickWide(word)
		if x > 0 && x+w > width+1e-6 {
			rows, x = rows+1, 0
		}
		x += w
	}
	return float64(rows)*(b.st.tick+1.5) - 1.5 + 0.6
}

func (b *block) cell(c cell, x, w, label, high float64) {
	nw := b.numberWide(c)
	pt := b.st.small
	base := b.y + draw.Rise*pt*draw.MMPerPt
	if c.number > 0 {
		b.Text(x, base, nw, strconv.Itoa(c.number), draw.Bold, pt)
	}
	b.write(x+nw, b.y, w-nw, c.name, draw.Regular, pt)
	top := b.y + label + 0.9
	switch {
	case len(c.words) > 0:
		b.tickWords(c, x, top, w)
	case len(c.parts) > 1:
		b.figures(c, x, top, w, high)
	default:
		b.Rect(x, top, w, high, c.frame())
		b.fill(x+1.5, top, w-2, high, c.value)
	}
	b.Reach(top + high)
}

// frame is the width of the frame of a box: what is asked first stands out.
func (c cell) frame() float64 {
	if c.first {
		return 0.8
	}
	return 0.3
}

// figures are boxes beside each other for the figures of one question, the name
// of each above its place.
func (b *block) figures(c cell, x, top, w, high float64) {
	n := float64(len(c.parts))
	wide := (w - 2*(n-1)) / n
	values := strings.Fields(strings.ReplaceAll(c.value, " x ", " "))
	for i, name := range c.parts {
		bx := x + float64(i)*(wide+2)
		b.Rect(bx, top, wide, high, c.frame())
		label := draw.Cut(name, draw.Regular, b.st.small, wide-2)
		own := draw.Width(label, draw.Regular, b.st.small) + 1.5
		switch {
		case i >= len(values):
			b.Text(bx+1.2, top+high/2+1.2, wide-2, label, draw.Regular, b.st.small)
		case own > wide/2: // no room for both
			b.fill(bx+1, top, wide-1.5, high, values[i])
		default:
			b.Text(bx+1.2, top+high/2+1.2, wide-2, label, draw.Regular, b.st.small)
			b.fill(bx+own+1, top, wide-own-1.5, high, values[i])
		}
	}
}

// fill writes the answer of the worked example into a box.
func (b *block) fill(x, y, w, high float64, s string) {
	if s == "" {
		return
	}
	pt := b.st.body
	for pt > 10 && draw.Width(s, draw.Bold, pt) > w {
		pt -= 0.5
	}
	s = draw.Cut(s, draw.Bold, pt, w)
	b.Text(x, y+high/2+(draw.Rise-draw.Drop)/2*pt*draw.MMPerPt, w, s, draw.Bold, pt)
}

func (b *block) tickWords(c cell, x, y, w float64) {
	t, dx := b.st.tick, 0.0
	for _, word := range c.words {
		tw := b.tickWide(word)
		if dx > 0 && dx+tw > w+1e-6 {
			dx, y = 0, y+t+1.5
		}
		b.Rect(x+dx+0.3, y+0.3, t-0.6, t-0.6, c.frame()+0.15)
		if c.value == word {
			b.As(draw.Picture, func() {
				b.Line(x+dx+1.5, y+1.5, x+dx+t-1.5, y+t-1.5, 0.7)
				b.Line(x+dx+1.5, y+t-1.5, x+dx+t-1.5, y+1.5, 0.7)
			})
		}
		b.write(x+dx+t+1.5, y+(t-em(b.st.body))/2, tw, word, draw.Regular, b.st.body)
		dx += tw
	}
}
