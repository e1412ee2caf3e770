package sheets

import (
	"slices"
	"strings"

	"rebush/plan"
	"rebush/plan/job"
	"rebush/plan/safety"
	"rebush/sheets/draw"
)

// form is the measuring form while it is drawn.
type form struct {
	*paper
	j       *job.Job // nil: a truck of which nothing is known
	warn    []safety.Line
	example bool // only what is filled in is shown
	answer  func(part, of, id string) string
}

// Form makes the blank measuring form that is filled in at the bench: a box for
// everything that `rebush start` asks, by the same number. With a job it has the
// job's shafts and gears in the order of its file; with nil, two shafts and one
// gear of no name.
func Form(j *job.Job, o Options) (*draw.Document, error) {
	f, err := newForm(j, o, "Measuring form")
	if err != nil {
		return nil, err
	}
	f.answer = func(_, _, _ string) string { return "" }
	f.before()
	f.plates()
	f.axlePicture()
	for _, s := range formShafts(j) {
		f.shaft(s)
	}
	f.gears()
	f.drawer(2)
	f.owner()
	f.afterwards()
	f.notes(8)
	return f.finish()
}

func newForm(j *job.Job, o Options, what string) (*form, error) {
	p, err := newPaper(o, j, what)
	if err != nil {
		return nil, err
	}
	warn, err := plan.FormSafety(j)
	if err != nil {
		return nil, err
	}
	p.section = what
	p.st = formNormal
	if o.Large {
		p.st = formLarge
	}
	p.batch = j == nil // no job has a number yet
	p.page()
	return &form{paper: p, j: j, warn: warn}, nil
}

// The form has sizes of its own: its boxes are written in by hand.
var (
	formNormal = style{small: 10, body: 12, figure: 18, big: 22, title: 22, tick: 6.5, blank: 8}
	formLarge  = style{small: 13, body: 15, figure: 20, big: 24, title: 26, tick: 8, blank: 10, large: true}
)

// put places boxes over the whole width, a row at a time.
func (f *form) put(list []cell) { f.rows(4, list) }

func (f *form) rows(perRow float64, list []cell) {
	for i := 0; len(list) > 0; i++ {
		n, _ := f.boxRow(f.width(), perRow, list)
		b := f.boxes(f.width(), perRow, list[:n])
		if i == 0 {
			f.add(b)
		} else {
			f.y -= gap - 2.2
			f.add(b)
		}
		list = list[n:]
	}
}

// titled places a small heading that stays with what follows.
func (f *form) titled(s string) {
	b := f.block()
	b.para(s, draw.Bold, f.st.body)
	b.y -= 1
	b.Board.Height = b.y
	f.glue(b)
}

// partHead begins a part of the form.
func (f *form) partHead(title string) {
	b := f.block()
	b.Bookmark(title, 0, 0)
	b.As(draw.Ground, func() { b.FillRect(0, 0, b.Width, 0.7, draw.Black) })
	b.y = 1.8
	b.para(title, draw.Bold, f.st.figure-2)
	b.y -= 1.5
	b.Board.Height = b.y
	f.glue(b)
}

// before is what is asked and read before the truck is taken apart.
func (f *form) before() {
	b := f.block()
	b.Bookmark("Measuring form", 0, 0)
	b.para("Measuring form", draw.Bold, b.st.title)
	b.para("Write what you read, not what it should be; leave open what you cannot measure. The numbers are those that "+
		"rebush start asks by: those of thick frames first, which lead to a verdict, then the rest where it pays. "+sameWord,
		draw.Regular, b.st.body)
	f.add(b)
	list := f.first("job", "")
	if f.number != "" || f.title != "" {
		b = f.block()
		b.para(strings.TrimSpace(f.number+"  "+f.title), draw.Bold, b.st.body)
		f.add(b)
		list = without(list, "what is on the bench")
	}
	f.put(append(list, reading("date", 1), reading("measured by", 1.5)))

	f.partHead("Before anything is taken apart")
	f.put(append(f.of("running", ""), reading("volts", 0.9), reading("amps forwards", 0.9),
		reading("amps backwards", 0.9), reading("noise, heat", 1.2)))
	f.y += 1.8
	f.warned(f.warn, "supply")
	f.titled("Supply off. These feel like a worn hole and are not: look before you strip it")
	f.put(append(f.of("look-alikes", ""), reading("ohms, live wheel to chassis", 2)))
}

func (f *form) plates() {
	f.partHead("The plates")
	b := f.block()
	plateSketch(b)
	f.glue(b)
	f.put(f.first("plates", ""))
	f.y += 1.8
	f.warned(f.warn, "zinc or magnesium", "magnesium fire", "lead in paint")
}

func formShafts(j *job.Job) []job.Shaft {
	if j != nil && len(j.Shafts) > 0 {
		return j.Shafts
	}
	return []job.Shaft{{}, {}}
}

// axlePicture shows what the letters of a shaft's boxes mean.
func (f *form) axlePicture() {
	f.partHead("What is measured at a shaft")
	b := f.block()
	axleSketch(b)
	f.add(b)
}

// shaft is a shaft with its two holes.
func (f *form) shaft(s job.Shaft) {
	list := f.first("shaft", "")
	title := "Shaft"
	if s.Name != "" {
		title, list = "Shaft: "+oneLine(s.Name), without(list, "name of the shaft")
	}
	f.partHead(title)
	f.put(list)
	for _, side := range formSides(s) {
		f.hole(side, f.first("bore", string(side)))
	}
}

func formSides(s job.Shaft) (out []job.Side) {
	for _, b := range s.Bores {
		out = append(out, b.Side)
	}
	if out == nil {
		out = job.Sides[:]
	}
	return out
}

// hole is the picture of a hole and the boxes that its letters name. The right one
// is like it and does without the picture.
func (f *form) hole(side job.Side, list []cell) {
	if side == job.Right {
		f.titled("Right hole")
		if f.st.large {
			f.put(list)
		} else {
			f.add(f.boxes(f.width(), 4, list))
		}
		return
	}
	b := f.block()
	b.para(sentence(string(side))+" hole", draw.Bold, f.st.body)
	b.y -= 1
	const wide = 56.0
	top := b.y
	low := holeSketch(b, 0, top, wide)
	if f.st.large {
		b.y = low + 2
		in := f.boxes(b.Width, 4, list)
		b.absorb(in, 0, b.y)
		b.y += in.Board.Height
	} else {
		in := f.boxes(b.Width-wide-5, 3, list)
		b.absorb(in, wide+5, top)
		b.y = max(low, top+in.Board.Height)
	}
	b.y += 1
	b.Reach(b.y)
	f.add(b)
}

// afterwards are the boxes that come after the short way: those of each shaft
// with its holes beside each other, then the others.
func (f *form) afterwards() {
	for _, s := range formShafts(f.j) {
		f.nextPart()
		title := "More, where it pays: a shaft"
		if s.Name != "" {
			title = "More, where it pays: " + oneLine(s.Name)
		}
		f.partHead(title)
		f.put(f.more("shaft", ""))
		f.holesBeside(formSides(s))
	}
	f.nextPart()
	f.partHead("More, where it pays: the rest")
	f.put(append(f.more("job", ""), f.more("plates", "")...))
	f.titled("Has the casting grown?")
	f.put(f.of("wheelbase", ""))
	f.titled("Unworn holes, such as those of screws")
	f.put(f.of("feature", ""))
	f.titled("The gear")
	f.put(append(f.more("gear", ""), append(f.more("worm", ""), f.more("pinion", "")...)...))
	f.titled("The drawer, and the truck")
	f.put(append(f.more("bush", ""), f.more("owner", "")...))
}

// holesBeside are the further boxes of the holes of a shaft, in columns.
func (f *form) holesBeside(sides []job.Side) {
	if f.st.large {
		for _, side := range sides {
			f.titled(sentence(string(side)) + " hole")
			f.put(f.more("bore", string(side)))
		}
		return
	}
	wide := (f.width() - 6) / 2
	head := f.block()
	lists := make([][]cell, len(sides))
	for i, side := range sides {
		h := &block{Board: draw.NewBoard(wide), st: f.st, u: f.u}
		h.para(sentence(string(side))+" hole", draw.Bold, f.st.body)
		h.y -= 1
		h.Board.Height = h.y
		head.absorb(h, float64(i)*(wide+6), 0)
		head.Reach(h.y)
		lists[i] = f.more("bore", string(side))
	}
	f.glue(head)
	for first := true; len(lists) > 0 && len(lists[0]) > 0; first = false {
		b := f.block()
		for i := range lists {
			n, _ := f.boxRow(wide, 3, lists[i])
			in := f.boxes(wide, 3, lists[i][:n])
			b.absorb(in, float64(i)*(wide+6), 0)
			b.Reach(in.Board.Height)
			lists[i] = lists[i][n:]
		}
		if !first {
			f.y -= gap - 2.2
		}
		f.add(b)
	}
}

// without leaves out boxes whose answer is known, by their names.
func without(list []cell, names ...string) []cell {
	return slices.DeleteFunc(list, func(c cell) bool { return slices.Contains(names, c.name) })
}

func (f *form) gears() {
	list := []job.Gear{{}}
	if f.j != nil {
		list = f.j.Gears
	}
	for i, g := range list {
		title := "Gear"
		if g.Name != "" {
			title = "Gear: " + oneLine(g.Name)
		}
		f.partHead(title)
		if i == 0 {
			b := f.block()
			gearSketch(b)
			f.glue(b)
		}
		f.put(f.first("gear", ""))
		if g.Kind != "spur" {
			f.titled("Where it is a worm")
			f.put(f.first("worm", ""))
		}
		if g.Kind != "worm" {
			f.titled("Where it is a pinion")
			f.put(f.first("pinion", ""))
		}
	}
}

// drawer are the bushes that there are, a few of them.
func (f *form) drawer(n int) {
	f.partHead("Bushes in the drawer")
	for i := range n {
		list := f.first("bush", "")
		if i > 0 { // the names stand above
			for k := range list {
				list[k].name = shorter(list[k].name)
			}
		}
		b := f.boxes(f.width(), 4, list)
		f.add(b)
	}
}

// shorter is the first word of a name that was said before.
func shorter(s string) string {
	w, _, _ := strings.Cut(s, ",")
	return w
}

func (f *form) owner() {
	f.partHead("What else could be done")
	f.put(f.first("owner", ""))
	f.partHead("Your shop: asked once, then read from its file")
	f.put(f.first("shop", ""))
}

// nextPart begins a page; what is left of one that is hardly begun is for notes.
// Large type runs on.
func (f *form) nextPart() {
	f.flush()
	if f.st.large {
		return
	}
	if top := marginTop + headHeight; f.y-top < 0.42*(f.floor()-top) {
		f.notes(14)
	}
	f.page()
}

// notes are lines to write on, so many at most, down to the foot of the page.
func (f *form) notes(most int) {
	f.flush()
	b := f.block()
	b.para("Notes", draw.Bold, f.st.body)
	n := 0
	for f.y+b.y+f.st.blank < f.floor()-1 && n < most {
		b.skip(f.st.blank)
		b.Line(0, b.y, b.Width, b.y, 0.25)
		n++
	}
	if n > 0 {
		b.Reach(b.y + 0.5)
		f.add(b)
	}
}
