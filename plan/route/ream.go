package route

import (
	"math"

	"rebush/fits/say"
	"rebush/plan/seat"
)

// before chooses what opens the hole for the reamer: a drill bought for it, an
// end mill or a drill inside the sizes that the table wants, else the next
// drill below, else one to buy. ok is false where the seat's tool is no reamer
// that needs one.
func (b *builder) before(x Bore, w window, far bool) (step, bool) {
	if x.Way != seat.Reamer {
		// Without a mill an end mill or a boring head has no place.
		return step{}, false
	}
	drill := func(t Tool) step { return step{tool: t, kind: KindOpen, op: OpDrill} }
	for _, t := range b.s.Drills {
		if sameSize(t.For, x.WaySize) && t.Size >= w.least-1e-9 && t.Size < x.WaySize && b.canDrill(t) &&
			(!far || b.reaches(t, OpDrill)) {
			s := drill(t)
			if t.Size < w.low-1e-9 || t.Size > w.high+1e-9 {
				s.note = "bought for this reamer"
			}
			return s, true
		}
	}
	if b.s.Machine == Mill {
		if t, ok := b.mill(x, math.Max(w.least, x.WaySize-w.most), w.mill, far); ok {
			return step{tool: t, kind: KindOpen, op: OpPlunge}, true
		}
	}
	for i := len(b.s.Drills) - 1; i >= 0; i-- {
		t := b.s.Drills[i]
		if t.Size >= w.low-1e-9 && t.Size <= w.high+1e-9 && t.Size >= w.least-1e-9 && b.canDrill(t) &&
			(!far || b.reaches(t, OpDrill)) {
			return drill(t), true
		}
	}
	for i := len(b.s.Drills) - 1; i >= 0; i-- {
		t := b.s.Drills[i]
		takes := x.WaySize - t.Size - b.r.DrillOversize
		if t.Size < w.low && t.Size >= w.least-1e-9 && takes <= 2*w.most+1e-9 && b.canDrill(t) &&
			(!far || b.reaches(t, OpDrill)) {
			s := drill(t)
			s.note = say.F("no drill from %v here, so the reamer takes %v: slow, clear it often",
				say.MMs(w.low, w.high, 2), say.MM(takes, 2))
			return s, true
		}
	}
	d := math.Floor(w.high*10+1e-9) / 10
	if d < w.low-1e-9 {
		d = math.Floor(w.high*20+1e-9) / 20
	}
	if b.s.Machine == Mill && d < w.least-1e-9 {
		return step{}, false // the locating tool goes straight before the reamer
	}
	t := Tool{Name: trim(d) + " mm drill" + toBuy, Size: d}
	s := drill(t)
	s.buy = say.F("goes before the %s: %v", x.WayName, say.MMs(w.low, w.high, 2))
	if far && !b.reaches(t, OpDrill) {
		s.tool.Reach = b.deep(OpDrill, d)
		s.buy += say.F(", reach %v", say.MM(s.tool.Reach, 1))
	}
	return s, true
}

func (b *builder) canDrill(t Tool) bool { return b.s.MaxDrill <= 0 || t.Size <= b.s.MaxDrill+1e-9 }

// between are the drills that take a large jump in steps of nearly one size.
func (b *builder) between(from, to float64, far bool) []step {
	var out []step
	for to-from > b.r.OpenStep+1e-9 {
		aim := from + (to-from)/math.Ceil((to-from)/b.r.OpenStep-1e-9)
		var next *Tool
		for i := range b.s.Drills {
			t := &b.s.Drills[i]
			if t.Size <= from+1e-9 || t.Size >= to-1e-9 || !b.canDrill(*t) || far && !b.reaches(*t, OpDrill) {
				continue
			}
			if next == nil || math.Abs(t.Size-aim) < math.Abs(next.Size-aim)-1e-9 {
				next = t
			}
		}
		if next == nil {
			return out
		}
		out = append(out, step{tool: *next, kind: KindOpen, op: OpDrill})
		from = next.Size
	}
	return out
}
