package sheets

import (
	"strconv"
	"strings"

	"rebush/plan"
	"rebush/sheets/draw"
)

// operations draws a block for each operation, and before the first of each
// clamping a block for the set-up.
func operations(p *paper, pl *plan.Plan) {
	if len(pl.Operations) == 0 {
		return
	}
	p.open("Operations", "operations")
	last := ""
	pressed := map[string]bool{} // bores whose bush is in
	for i, op := range pl.Operations {
		if op.Setup != "" && op.Setup != last {
			setupBlock(p, pl, op.Setup, i > 0)
			last = op.Setup
		}
		if op.Kind == "press" {
			pressed[op.Bore] = true
		}
		p.fit(func(st style) *block {
			b := p.block()
			b.st = st
			opBlock(b, p, pl, op, pressed[op.Bore])
			return b
		})
	}
}

// fit adds a block in the size of type asked for; where a block with a very
// long text would not go on a page, in smaller type.
func (p *paper) fit(build func(st style) *block) {
	st := p.st
	b := build(st)
	for _, smaller := range []style{normal, tiny} {
		if b.Board.Height <= p.height() {
			break
		}
		b = build(smaller)
	}
	p.add(b)
}

// tiny is for a block that no page would hold otherwise.
var tiny = style{small: 8, body: 9.5, figure: 14, title: 20, tick: 6, blank: 8, picture: 36}

// setupBlock says how the chassis is clamped, with the plate drawn as it lies.
func setupBlock(p *paper, pl *plan.Plan, name string, change bool) {
	s, ok := setupNamed(pl, name)
	if !ok {
		return
	}
	b := p.block()
	words := "Set-up " + oneLine(s.Name)
	if change {
		words = "Change of set-up: now " + oneLine(s.Name)
	}
	b.Bookmark(words, 0, 0)
	if change {
		b.As(draw.Ground, func() { b.FillRect(0, 0, b.Width, 0.8, draw.Black) })
		b.y = 3
	}
	b.para(words, draw.Bold, b.st.figure)
	b.para(sentence(s.Words), draw.Regular, b.st.body)
	if s.Mirrored {
		b.boxed(1, 3, func(in *block) {
			in.para("MIRRORED", draw.Bold, in.st.figure)
			words := "The chassis is turned over. What was on the left hand now lies on the right, and the picture is drawn that way. "
			if _, turned := dialEnd(pl, s); turned {
				words += "x is now dialled from the end that lies on the left: touch that end and set the dials to nothing before the first figure."
			} else {
				words += "Figures still count from the datum corner, which now lies on the right: touch it again before the first figure."
			}
			in.para(words, draw.Regular, in.st.body)
			in.y -= 1.5
		})
	}
	if len(pl.Holes) > 0 && s.Plate != "" {
		truckPicture(b, pl, s)
	}
	p.add(b)
}

func opBlock(b *block, p *paper, pl *plan.Plan, op plan.Operation, pressed bool) {
	b.Anchor(opAnchor(op), 0)
	b.Bookmark(short(strconv.Itoa(op.Number)+" "+op.Do, 36), 1, 0)
	if op.GaugeFirst != "" {
		gaugeFirst(b, op)
	}
	opHead(b, op)
	top := b.y
	x := 0.0
	h, ok := pl.Holes[op.Bore]
	low := top
	set, _ := setupNamed(pl, op.Setup)
	if ok && (op.HoleMM > 0 || h.SeatR > 0) {
		low = stepPicture(b, 0, top+0.5, op, h, pressed, set.Mirrored)
		x = b.st.picture + 6
	}
	cols := 3
	if b.st.large {
		cols = 2
	}
	b.y = b.fields(x, b.y, b.Width-x, cols, opFields(b, p, op, set))
	b.y = max(b.y, low+1)
	opGauges(b, p, op)
	b.para(sentence(op.Note), draw.Regular, b.st.body)
	opBlanks(b, p, op)
	b.As(draw.Ground, func() { b.Line(0, b.y+1, b.Width, b.y+1, 0.35) })
	b.y += 1.2
	b.Reach(b.y)
}

// short cuts a text to a number of signs at a word.
func short(s string, n int) string {
	r := []rune(s)
	if len(r) <= n {
		return s
	}
	s = string(r[:n])
	if i := strings.LastIndexByte(s, ' '); i > n/2 {
		s = s[:i]
	}
	return s + "..."
}

// gaugeFirst is the box before a step that cannot be taken back.
func gaugeFirst(b *block, op plan.Operation) {
	b.boxed(1.2, 3.2, func(in *block) {
		w := in.tag(0, 0, "GAUGE FIRST", in.st.body)
		h := em(in.st.body) + 2.4
		t := in.st.tick
		in.Rect(in.Width-t, 0, t, t, 0.6)
		if in.st.large {
			in.y = h + 2
			in.para(op.GaugeFirst, draw.Bold, in.st.body)
			in.y -= 2
			return
		}
		x := w + 4
		end := in.write(x, 1.2, in.Width-x-t-4, op.GaugeFirst, draw.Bold, in.st.body)
		in.y = max(end, h, t)
	})
	b.y += 0.5
}

// opHead is the number, what to do, and the box to tick.
func opHead(b *block, op plan.Operation) {
	pt := b.st.figure
	nw := b.tag(0, b.y, strconv.Itoa(op.Number), pt)
	t := b.st.tick + 1
	x := nw + 4
	w := b.Width - x - t - 4
	h := em(pt) + 2.4
	text := b.y
	end := b.write(x, text, w, op.Do, draw.Bold, b.st.body+1)
	if s := whereOf(op); s != "" {
		end = b.write(x, end+1, w, s, draw.Regular, b.st.body)
	}
	b.Rect(b.Width-t-0.3, b.y+0.3, t, t, 0.6)
	b.y = max(end, b.y+max(h, t)) + 2.5
}
