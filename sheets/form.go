package sheets

import (
	"strings"

	"rebush/plan"
	"rebush/plan/job"
	"rebush/sheets/draw"
)

// Form makes the blank measuring form that is filled in at the bench. With a
// job it has the job's shafts, bores and gears in the order of its file; with
// nil, two shafts and one gear of no name.
func Form(j *job.Job, o Options) (*draw.Document, error) {
	p, err := newPaper(o, j, "Measuring form")
	if err != nil {
		return nil, err
	}
	p.section = "Measuring form"
	p.page()
	b := p.block()
	b.Bookmark("Measuring form", 0, 0)
	formHead(b, p)
	p.add(b)
	warn, err := plan.FormSafety(j)
	if err != nil {
		return nil, err
	}
	p.add(p.asked("Before anything is taken apart", []ask{{"volts", 1}, {"amps forwards", 1}, {"amps backwards", 1}, {"noise, heat", 1}}))
	p.warned(warn, "supply")
	p.add(p.asked("", []ask{{"ohms, insulated wheel to axle", 1.5}, {"ohms, live wheel to chassis", 1.5}, {"wheels back to back", 1}}))
	p.add(ticks(p, "Looked at and sound? These feel like a worn hole and are not.", []string{"rims tight", "hubs tight", "wheels to gauge", "no crack, no swelling", "axle straight", "axle not pitted"}))
	b = p.block()
	b.para("The plates", draw.Bold, p.st.body)
	plateSketch(b)
	p.glue(b)
	p.add(p.asked("", []ask{{"A length", 1}, {"B height", 1}, {"width over plates", 1}, {"thickness, left", 1}, {"thickness, right", 1}, {"material", 1}}))
	p.warned(warn, "zinc or magnesium", "magnesium fire", "lead in paint")
	for _, s := range formShafts(j) {
		shaftForm(p, s)
	}
	gears(p, j)
	b = p.block()
	b.para("Notes", draw.Bold, p.st.body)
	for range 4 {
		b.skip(p.st.blank)
		b.Line(0, b.y, b.Width, b.y, 0.25)
	}
	b.Reach(b.y + 0.5)
	p.add(b)
	return p.finish()
}

// ask is a box to fill in; wide is its share of a row.
type ask struct {
	name string
	wide float64
}

func formHead(b *block, p *paper) {
	b.para("Measuring form", draw.Bold, b.st.title)
	b.para("All figures in one frame: seen from the left side for both plates, x along the truck, y up from the datum edge, angles from straight ahead, anticlockwise. "+
		"Write what you read, not what it should be; say which instrument. "+sameWord, draw.Regular, b.st.small)
	if p.number == "" && p.title == "" {
		b.blanks(0, b.Width, []blankLine{{"job", "", 1}, {"title", "", 2.4}})
	} else {
		b.para(strings.TrimSpace(p.number+"  "+p.title), draw.Bold, b.st.body)
	}
	b.blanks(0, b.Width, []blankLine{{"date", "", 1}, {"measured by", "", 1.4}, {"calliper, pins, indicator", "", 1.6}})
	t := b.st.tick
	x := 0.0
	b.skip(2)
	for _, s := range []string{"mm", "in"} {
		b.Rect(x+0.3, b.y, t, t, 0.45)
		b.write(x+t+2.5, b.y+(t-em(b.st.body))/2, 20, s, draw.Regular, b.st.body)
		x += t + 22
	}
	b.y += t + 1
	b.Reach(b.y)
}

// asked is a block of boxes to fill in, as many to a row as go.
func (p *paper) asked(title string, list []ask) *block {
	b := p.block()
	if title != "" {
		b.para(title, draw.Bold, p.st.body)
	}
	const gutter = 3
	perRow := 4.0
	if p.st.large {
		perRow = 2.5
	}
	for len(list) > 0 {
		n, share := 0, 0.0
		for n < len(list) && (n == 0 || share+list[n].wide <= perRow) {
			share += list[n].wide
			n++
		}
		unit := (b.Width - gutter*float64(n-1)) / max(share, perRow*0.75)
		x, label := 0.0, 0.0
		for _, a := range list[:n] {
			label = max(label, b.tall(a.wide*unit-1, a.name, draw.Regular, p.st.small))
		}
		for _, a := range list[:n] {
			w := a.wide * unit
			b.write(x, b.y, w-1, a.name, draw.Regular, p.st.small)
			b.Rect(x, b.y+label+0.8, w, p.st.blank+1, 0.3)
			x += w + gutter
		}
		b.y += label + p.st.blank + 4.2
		list = list[n:]
	}
	b.Reach(b.y - 1)
	return b
}

func ticks(p *paper, title string, names []string) *block {
	b := p.block()
	b.para(title, draw.Bold, p.st.body)
	cols := 3
	if p.st.large {
		cols = 2
	}
	w, t := b.Width/float64(cols), p.st.tick
	for i, s := range names {
		if i > 0 && i%cols == 0 {
			b.y += t + 2
		}
		x := float64(i%cols) * w
		b.Rect(x+0.3, b.y, t, t, 0.45)
		b.write(x+t+2.5, b.y+(t-em(p.st.body))/2, w-t-3, s, draw.Regular, p.st.body)
	}
	b.y += t + 1
	b.Reach(b.y)
	return b
}

func formShafts(j *job.Job) []job.Shaft {
	if j != nil && len(j.Shafts) > 0 {
		return j.Shafts
	}
	return []job.Shaft{{}, {}}
}

func shaftForm(p *paper, s job.Shaft) {
	name := s.Name
	if name == "" {
		name = "Shaft ____________________"
	}
	p.glue(shaftTitle(p, name))
	p.add(p.asked("", []ask{{"journal, left", 1}, {"journal, right", 1}, {"must pass, left", 1}, {"must pass, right", 1},
		{"insulated side", 1}, {"wheel diameter", 1}, {"hub to hub", 1}, {"journal good, pitted, bent", 1}}))
	bores := s.Bores
	if len(bores) == 0 {
		bores = []job.Bore{{Name: "left bore"}, {Name: "right bore"}}
	}
	for _, bore := range bores {
		b := p.block()
		boreForm(b, p, bore)
		p.add(b)
	}
}

func shaftTitle(p *paper, name string) *block {
	b := p.block()
	b.Bookmark(name, 1, 0)
	b.As(draw.Ground, func() { b.FillRect(0, 0, b.Width, 0.6, draw.Black) })
	b.y = 2
	b.para(name, draw.Bold, p.st.figure)
	b.Board.Height = b.y
	return b
}

// boreForm is the sketch of a hole and the boxes that its letters name.
func boreForm(b *block, p *paper, bore job.Bore) {
	b.para(bore.Name, draw.Bold, p.st.body)
	side := 46.0
	top := b.y
	holeSketch(b, 0, top, side)
	in := &block{Board: draw.NewBoard(b.Width - side - 6), st: b.st, u: b.u}
	inner := &paper{doc: p.doc, st: p.st}
	list := []ask{{"C middle, x", 1}, {"C middle, y", 1}, {"W widest", 1}, {"N narrowest", 1},
		{"angle of W", 1}, {"worn to, angle", 1}, {"E metal to edge", 1}, {"angle of E", 1}, {"pin that goes", 1}, {"pin that stops", 1}, {"oil way, angle", 1}, {"instrument", 1}}
	if p.st.large {
		b.y = top + side + 2
		f := p.asked("", list)
		b.absorb(f, 0, b.y)
		b.y += f.Board.Height
	} else {
		f := inner.askedIn(in.Width, list, 3)
		b.absorb(f, side+6, top)
		b.y = top + max(side, f.Board.Height)
	}
	b.y += 1
	b.Line(0, b.y, b.Width, b.y, 0.15)
	b.Reach(b.y)
}

// askedIn is asked in a narrower column.
func (p *paper) askedIn(width float64, list []ask, cols int) *block {
	b := &block{Board: draw.NewBoard(width), st: p.st, u: p.u}
	const gutter = 3
	w := (width - gutter*float64(cols-1)) / float64(cols)
	label := em(p.st.small)
	for i, a := range list {
		x := float64(i%cols) * (w + gutter)
		if i > 0 && i%cols == 0 {
			b.y += label + p.st.blank + 2.6
		}
		b.write(x, b.y, w, draw.Cut(a.name, draw.Regular, p.st.small, w), draw.Regular, p.st.small)
		b.Rect(x, b.y+label+0.6, w, p.st.blank, 0.3)
	}
	b.y += label + p.st.blank + 2
	b.Reach(b.y)
	return b
}

func gears(p *paper, j *job.Job) {
	list := []job.Gear{{}}
	if j != nil {
		list = j.Gears
	}
	for _, g := range list {
		name := "Gear " + g.Name
		if g.Name == "" {
			name = "Gear ____________________"
		}
		p.glue(shaftTitle(p, name))
		both := []ask{{"teeth, wheel", 1}, {"tip diameter, wheel", 1}, {"face, wheel", 1}, {"run-out, wheel", 1}}
		spur := []ask{{"teeth, pinion", 1}, {"tip diameter, pinion", 1}, {"pinion middle, x", 1}, {"pinion middle, y", 1}}
		worm := []ask{{"starts, worm", 1}, {"outside diameter, worm", 1}, {"pitch, ten threads", 1}, {"height of worm axis", 1}}
		switch g.Kind {
		case "worm":
			both = append(both, worm...)
		case "spur":
			both = append(both, spur...)
		default:
			both = append(append(both, worm...), spur...)
		}
		p.add(p.asked("", append(both, ask{"module or pitch", 1}, ask{"pressure angle", 1}, ask{"backlash felt at the rim", 1}, ask{"new, moved or as it was", 1})))
	}
}
