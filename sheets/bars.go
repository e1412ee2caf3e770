package sheets

import (
	"math"
	"strconv"

	"rebush/sheets/draw"
)

// barRow is one line of a picture of limits: two limits as a bar, one size as a
// mark, on a line with its name.
type barRow struct {
	name   string
	lo, hi float64 // mm; one size where they are alike
	as     barSign
	ruled  bool // its ends are ruled through the picture
}

// barSign is how the line of a picture of limits is drawn; each sign means what
// it means on the rest of the sheet.
type barSign uint8

const (
	asLimits  barSign = iota // wide frame: what is cut and gauged to
	asPart                   // hatched: what is there, in section
	asPassing                // long dashes and two dots: how it was or will be
	asSize                   // upright line: one size
	asOld                    // ring
	asSlant                  // slanted cross
	asNew                    // upright cross, with how sure it is as a frame
)

// barPicture is a picture of limits on one scale.
type barPicture struct {
	rows  []barRow
	label float64 // mm of paper for the names
	room  float64 // mm of paper for the bars, at the least
}

// barScales are those of pictures of limits, from large to small.
var barScales = []float64{2000, 1500, 1000, 800, 600, 500, 400, 300, 250, 200, 150, 100, 80, 60, 50, 40, 30, 20, 10, 5,
	2, 1, 0.5, 0.2, 0.1, 0.05}

// barScale is the largest that fits all pictures.
func barScale(list ...barPicture) float64 {
	for _, k := range barScales {
		fits := true
		for _, x := range list {
			lo, hi := x.ends()
			fits = fits && (hi-lo)*k <= x.room
		}
		if fits {
			return k
		}
	}
	return barScales[len(barScales)-1]
}

// ends are the least and the largest that a picture shows.
func (x barPicture) ends() (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, r := range x.rows {
		lo, hi = min(lo, r.lo), max(hi, r.hi)
	}
	return lo, hi
}

// barLine is the height of a line of such a picture.
func barLine(b *block) float64 { return em(b.st.small) + 0.9 }

// drawBars draws a picture with its upper left corner at x, y. It returns the
// height below it.
func drawBars(b *block, x, y float64, list barPicture, k float64) float64 {
	pt, line := b.st.small, barLine(b)
	from, _ := list.ends()
	at := func(mm float64) float64 { return x + list.label + (mm-from)*k }
	for i, r := range list.rows {
		b.write(x, y+float64(i)*line+(line-em(pt))/2, list.label-2.5, r.name, draw.Regular, pt)
	}
	b.As(draw.Picture, func() {
		for i, r := range list.rows {
			mid := y + (float64(i)+0.5)*line
			if r.ruled {
				b.Line(at(r.lo), y, at(r.lo), y+float64(len(list.rows))*line, 0.1)
				b.Line(at(r.hi), y, at(r.hi), y+float64(len(list.rows))*line, 0.1)
			}
			drawBar(b, r, at(r.lo), at(r.hi), mid)
		}
	})
	b.Reach(y + float64(len(list.rows))*line)
	return y + float64(len(list.rows))*line
}

func drawBar(b *block, r barRow, lo, hi, y float64) {
	const half = 1.3
	mid := (lo + hi) / 2
	frame := draw.Box{X: lo, Y: y - half, W: hi - lo, H: 2 * half}
	switch r.as {
	case asLimits:
		b.Rect(frame.X, frame.Y, frame.W, frame.H, draw.Wide)
	case asPart:
		hatchBox(b, frame, draw.Wide, 1.2)
	case asPassing:
		b.Stroked(draw.Other, func() { b.Rect(frame.X, frame.Y, frame.W, frame.H, draw.Narrow) })
	case asSize:
		b.Line(mid, y-half-0.4, mid, y+half+0.4, 0.8)
	case asOld:
		b.Circle(mid, y, 1.5, 0.4, false)
	case asSlant:
		b.Line(mid-1.5, y-1.5, mid+1.5, y+1.5, 0.4)
		b.Line(mid-1.5, y+1.5, mid+1.5, y-1.5, 0.4)
	case asNew:
		if hi > lo {
			b.Rect(frame.X, frame.Y, frame.W, frame.H, 0.2)
		}
		b.Cross(mid, y, 1.8, 0.4)
	}
}

// scaleBar draws the bar that a picture of limits is read by, ending at x, its
// length before it. It is 6 to 16 mm of paper long.
func scaleBar(b *block, x, y, k float64) {
	unit, name := 1.0, " mm"
	if b.u == "in" {
		unit, name = 25.4, " in"
	}
	long := 0.0
	for _, s := range []float64{0.0001, 0.0002, 0.0005, 0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20,
		50, 100} {
		if long = s; s*unit*k >= 6 {
			break
		}
	}
	pt, paper := b.st.small, long*unit*k
	mid := y + em(pt)/2
	b.As(draw.Picture, func() {
		b.Line(x-paper, mid, x, mid, draw.Narrow)
		b.Line(x-paper, mid-1.2, x-paper, mid+1.2, draw.Narrow)
		b.Line(x, mid-1.2, x, mid+1.2, draw.Narrow)
	})
	name = strconv.FormatFloat(long, 'f', -1, 64) + name
	b.TextRight(x-paper-1.5, y+draw.Rise*pt*draw.MMPerPt, 60, name, draw.Regular, pt)
}
