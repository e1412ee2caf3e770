package sheets

import (
	"strconv"
	"strings"

	"rebush/plan"
	"rebush/plan/route"
	"rebush/sheets/draw"
)

// operations draws a block for each operation, and before the first of each
// clamping a block for the set-up.
func operations(p *paper, pl *plan.Plan) {
	if len(pl.Operations) == 0 {
		return
	}
	p.follow("Operations", "operations")
	last := ""
	var said saidOnce
	pressed := map[string]bool{} // bores whose bush is in
	for i, op := range pl.Operations {
		if op.Setup != "" && op.Setup != last {
			said = saidOnceOf(pl, op.Setup)
			setupBlock(p, pl, op.Setup, i > 0, said)
			last = op.Setup
		}
		if op.Kind == route.KindPress {
			pressed[op.Bore] = true
		}
		next := nextOf(pl, i)
		p.fit(func(st style) *block {
			b := p.block()
			if st == normal {
				st.body++ // read at arm's length, the other pages in the hand
			}
			b.st = st
			opBlock(b, p, pl, i, pressed[op.Bore], said, next)
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
var tiny = style{small: 8, body: 9.5, figure: 14, big: 16, title: 20, tick: 6, blank: 8, picture: 36}

// opBlock is one operation: what to do and where, with a drawing of the hole as
// it is afterwards; the figures to set; limits, gauges and the size as made;
// who did it, and what comes next.
func opBlock(b *block, p *paper, pl *plan.Plan, i int, pressed bool, said saidOnce, next string) {
	op := pl.Operations[i]
	fresh, at := pl.FreshSafety(i)
	said.safety = at
	b.Anchor(opAnchor(op), 0)
	b.Bookmark(short(strconv.Itoa(op.Number)+" "+op.Do.String(), 36), 1, 0)
	if op.GaugeFirst != "" {
		gaugeFirst(b, op)
	}
	opHead(b, pl, op, said)
	opSafety(b, 0, fresh)
	top := b.y
	x := 0.0
	h, ok := pl.Holes[op.Bore]
	low := top
	set, _ := setupNamed(pl, op.Setup)
	fields := opFields(b, p, pl, op)
	if ok && (op.HoleMM > 0 || h.SeatR > 0) {
		if len(fields) == 0 && !b.st.large {
			b.st.picture *= 0.72 // few words stand beside it
		}
		low = stepPicture(b, 0, top+0.5, op, h, pressed, set.Mirrored) + 1
		x = b.st.picture + 6
	}
	b.y = b.fields(x, b.y, b.Width-x, 6, fields)
	opLines(b, x, p, op, set, said)
	beside := low-b.y > 2*lead(b.st.body) // room for words beside the picture
	if beside {
		opWords(b, x, op)
	}
	b.y = max(b.y, low)
	opGauges(b, p, op)
	if !beside {
		opWords(b, 0, op)
	}
	opBlanks(b, p, op, next)
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
			in.para(sentence(op.GaugeFirst.String()), draw.Bold, in.st.body)
			in.y -= 2
			return
		}
		x := w + 4
		end := in.write(x, 1.2, in.Width-x-t-4, sentence(op.GaugeFirst.String()), draw.Bold, in.st.body)
		in.y = max(end, h, t)
	})
	b.y += 0.5
}

// opHead is the number, what to do, and the box to tick.
func opHead(b *block, pl *plan.Plan, op plan.Operation, said saidOnce) {
	pt := b.st.figure
	nw := b.tag(0, b.y, strconv.Itoa(op.Number), pt)
	t := b.st.tick + 1
	x := nw + 4
	w := b.Width - x - t - 4
	h := em(pt) + 2.4
	end := b.write(x, b.y, w, op.Do.String(), draw.Bold, b.st.body)
	end = b.write(x, end+1, w, whereOf(pl, op, said), draw.Regular, b.st.small)
	b.Rect(b.Width-t-0.3, b.y+0.3, t, t, 0.6)
	b.y = max(end, b.y+max(h, t)) + 2
}
