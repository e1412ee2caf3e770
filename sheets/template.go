package sheets

import (
	"fmt"
	"math"
	"strconv"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/job"
	"rebush/sheets/draw"
)

// jigBorder is how far a jig plate stands over the plate all round, mm.
const jigBorder = 10.0

// Template makes the 1:1 template: crosses at the target centres, the outline
// of plate and jig plate, bars to lay a rule on, and check lengths both ways.
// It is an error where a plate is larger than the paper, or where the plan may
// not be machined.
func Template(pl *plan.Plan, o Options) (*draw.Document, error) {
	if !pl.OK {
		return nil, fmt.Errorf("the plan says do not machine: there is no template to drill by")
	}
	p, err := newPaper(o, pl.Job, "Template 1:1")
	if err != nil {
		return nil, err
	}
	p.doc.TrueSize = true
	if !pl.Machines() {
		return nil, fmt.Errorf("nothing is cut this way: there is no template to drill by")
	}
	p.of(pl)
	p.marked(pl)
	n := 0
	for _, s := range job.Sides {
		if targetsOn(pl, s) == nil {
			continue
		}
		n++
		p.section = "Template 1:1, " + string(s) + " plate"
		p.page()
		b := p.block()
		if err := templatePage(b, p, pl, s); err != nil {
			return nil, err
		}
		p.doc.Place(b.Board, marginLeft, p.topY())
	}
	if n > 0 && jigged(pl.Job) {
		p.section = "Template 1:1, jig plate"
		p.page()
		b := p.block()
		if err := jigPage(b, p, pl); err != nil {
			return nil, err
		}
		p.doc.Place(b.Board, marginLeft, p.topY())
	}
	if n == 0 {
		return nil, fmt.Errorf("the plan has no new centre: there is nothing to put on a template")
	}
	return p.finish()
}

func targetsOn(pl *plan.Plan, s job.Side) []plan.Target {
	var out []plan.Target
	for _, t := range pl.Targets {
		if t.TargetMM != nil && side(pl.Job, t.Bore) == s {
			out = append(out, t)
		}
	}
	return out
}

// wanders is how far a punch does, between marking and striking.
var wanders = say.MMs(0.1, 0.25, 2).Trim()

// templatePage draws one plate: the left one seen from the left, the right one
// seen from the right, so that the paper lies on the outside of its plate.
func templatePage(b *block, p *paper, pl *plan.Plan, s job.Side) error {
	mirror := s == job.Right
	b.Bookmark("Template, "+string(s)+" plate", 0, 0)
	words := "Left plate, outside, seen from the left."
	if mirror {
		words = "Right plate, outside, seen from the right: MIRRORED against the figures of the plan."
	}
	top := ruled(b, p, words)
	outline := plateOutline(pl, pl.Job)
	lo, hi := extent(outline)
	roomW := b.Width - 16
	roomH := p.height() - top - 2*em(p.st.small) - b.tall(roomW, checks(p, pl, s), draw.Bold, p.st.body) - 4
	w, h := hi[0]-lo[0], hi[1]-lo[1]
	turn := false
	if w > roomW && h <= roomW && w <= roomH {
		turn, w, h = true, h, w
	}
	if w > roomW || h > roomH {
		return fmt.Errorf("the %s plate is %.0f x %.0f mm and %s paper has room for %.0f x %.0f at 1:1; use the dial figures", s, hi[0]-lo[0], hi[1]-lo[1], p.doc.Paper.Name, roomW, roomH)
	}
	border := min(2, (roomH-h)/2)
	if jigged(pl.Job) {
		border = min(jigBorder, (roomW-w)/2, (roomH-h)/2)
	}
	v := onPaper{x: 16 + (roomW-w)/2, y: top + border + h, lo: lo, w: w, mirror: mirror, turn: turn, h: h}
	b.As(draw.Picture, func() {
		b.Path(v.path(outline), true, 0.35, false, draw.Open)
		if border > 2 {
			b.Path([][2]float64{{v.x - border, v.y + border}, {v.x + w + border, v.y + border}, {v.x + w + border, v.y - h - border}, {v.x - border, v.y - h - border}}, true, 0.2, true, draw.Open)
		}
		dx, dy := v.at(v.lo)
		b.Disc(dx, dy, 0.8, draw.Black)
	})
	templateCrosses(b, pl, s, v)
	y := v.y + border + 3
	legend := "Whole line, the plate; broken circle, the new hole; whole circle, an unworn hole; black dot, the corner measured from."
	if border > 2 {
		legend = "Broken line, the jig plate. " + legend
	}
	if turn {
		legend = "Turned a quarter to fit the paper. " + legend
	}
	y = b.write(16, y, b.Width-16, legend, draw.Regular, p.st.small) + 1
	b.write(16, y, b.Width-16, checks(p, pl, s), draw.Bold, p.st.body)
	return nil
}

// ruled begins a page that is measured on: what it is, the bars to lay a rule
// on, and where the drawing may begin.
func ruled(b *block, p *paper, words string) (top float64) {
	b.para("Print at 100 %, not \"fit to page\". Lay a rule on all the bars before you trust it.", draw.Bold, p.st.body)
	b.para(words, draw.Bold, p.st.body)
	b.y -= 1
	b.para("Paper moves with damp and a punch wanders "+wanders.In(p.u.said())+": for marking out and for the jig, not in "+
		"the place of dials.", draw.Regular, p.st.small)
	bar := b.y
	bars(b, 14, bar)
	top = bar + 15.5 + 2*em(p.st.small)
	tall := math.Floor((p.height()-top-4)/10) * 10
	upright(b, 4, top, min(tall, 200))
	return top
}

func templateCrosses(b *block, pl *plan.Plan, s job.Side, v onPaper) {
	pt := b.st.small
	var marks [][2]float64
	put := func(at [2]float64, arm, r float64, dash bool) {
		x, y := v.at(at)
		marks = append(marks, [2]float64{x, y})
		b.As(draw.Picture, func() {
			b.Cross(x, y, arm, 0.12)
			if r > 0 {
				b.Circle(x, y, r, 0.2, dash)
			}
		})
	}
	list := targetsOn(pl, s)
	for _, t := range list {
		put([2]float64{t.TargetMM[0].Float(), t.TargetMM[1].Float()}, 6, pl.Holes[t.Bore].SeatR, true)
	}
	for _, f := range features(pl.Job, s) {
		put(f.At.Float(), 4, max(f.Diameter.Float()/2, 0.3), false)
	}
	for i := range list {
		x, y := freest(marks, i)
		b.Label(x, y+(draw.Rise-draw.Drop)/2*pt*draw.MMPerPt, 10, strconv.Itoa(i+1), draw.Bold, pt)
	}
}

// freest is the place beside a cross for its number that is farthest from all
// other marks.
func freest(marks [][2]float64, i int) (x, y float64) {
	best := -1.0
	for _, d := range [][2]float64{{1, -1}, {-1, -1}, {1, 1}, {-1, 1}} {
		px, py := marks[i][0]+6*d[0], marks[i][1]+5*d[1]
		near := 1000.0
		for k, m := range marks {
			if k != i {
				near = min(near, math.Hypot(px-m[0], py-m[1]))
			}
		}
		if near > best+0.1 {
			best, x, y = near, px, py
		}
	}
	return x, y
}

func features(j *job.Job, s job.Side) []job.Feature {
	if j == nil {
		return nil
	}
	var out []job.Feature
	for _, f := range j.Chassis.Features {
		if f.At.Given() && (f.Plate == s || f.Plate == "") {
			out = append(out, f)
		}
	}
	return out
}

// checks names the distances from cross to cross, to be measured on the paper.
func checks(p *paper, pl *plan.Plan, s job.Side) string {
	list := targetsOn(pl, s)
	out := ""
	for i, t := range list {
		if i > 0 {
			out += "\n"
		}
		out += fmt.Sprintf("%d  %s: %s", i+1, shaftOf(t.Bore), p.u.at(dialled(pl, t), false)[0])
		if i > 0 {
			a := list[i-1].TargetMM
			d := math.Hypot(t.TargetMM[0].Float()-a[0].Float(), t.TargetMM[1].Float()-a[1].Float())
			out += fmt.Sprintf("; from %d: %s", i, say.MM(d, 2).In(p.u.said()))
		}
	}
	return out
}

// onPaper puts the frame of the job onto the board at 1:1.
type onPaper struct {
	x, y         float64 // lower left corner of the plate on the board
	lo           [2]float64
	w, h         float64 // of the plate as it lies on the paper
	mirror, turn bool
}

func (v onPaper) at(p [2]float64) (x, y float64) {
	dx, dy := p[0]-v.lo[0], p[1]-v.lo[1]
	if v.turn {
		// A quarter anticlockwise: x of the plate runs up the paper.
		dx, dy = v.w-dy, dx
		if v.mirror {
			dx = v.w - dx
		}
		return v.x + dx, v.y - dy
	}
	if v.mirror {
		dx = v.w - dx
	}
	return v.x + dx, v.y - dy
}

func (v onPaper) path(points [][2]float64) [][2]float64 {
	out := make([][2]float64, len(points))
	for i, p := range points {
		out[i][0], out[i][1] = v.at(p)
	}
	return out
}

// bars draws a bar in mm and one in inches, across the page.
func bars(b *block, x, y float64) {
	pt := b.st.small
	b.As(draw.Picture, func() {
		for i := 0; i <= 15; i++ {
			t := 2.5
			if i%5 == 0 {
				t = 4
			}
			b.Line(x+float64(i)*10, y, x+float64(i)*10, y+t, 0.15)
		}
		b.Line(x, y, x+150, y, 0.15)
		for i := 0; i <= 20; i++ {
			t := 2.5
			if i%4 == 0 {
				t = 4
			}
			b.Line(x+float64(i)*6.35, y+9.5, x+float64(i)*6.35, y+9.5+t, 0.15)
		}
		b.Line(x, y+9.5, x+127, y+9.5, 0.15)
	})
	b.write(x, y+4.8, 60, "150 mm, marks 10 mm", draw.Regular, pt)
	b.write(x, y+14.3, 60, "5 in, marks 1/4 in", draw.Regular, pt)
}

// upright draws a bar in mm down the page.
func upright(b *block, x, y, length float64) {
	b.As(draw.Picture, func() {
		b.Line(x, y, x, y+length, 0.15)
		for i := 0; float64(i)*10 <= length; i++ {
			b.Line(x, y+float64(i)*10, x+2.5, y+float64(i)*10, 0.15)
		}
	})
	pt := b.st.small
	b.write(0, y-em(pt)-1, 30, fmt.Sprintf("%.0f mm", length), draw.Regular, pt)
}
