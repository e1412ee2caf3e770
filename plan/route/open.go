package route

import (
	"math"

	"rebush/feeds/cutting"
	"rebush/fits/dim"
	"rebush/fits/say"
	"rebush/plan/seat"
)

// step is one tool that opens a hole before its seat is made.
type step struct {
	tool Tool
	kind Kind // locate | open
	op   Op
	head cutting.Head
	note say.Text
	buy  say.Text
	bar  bool // a boring bar: makes its own axis, goes in where it fits
	left float64
}

// buyKind is what sort of tool a step buys.
func (s step) buyKind() BuyKind {
	if s.op == OpPlunge {
		return BuyMill
	}
	return BuyDrill
}

// window is what the seat's last tool wants before it.
type window struct {
	least     float64 // takes in the whole lobe
	low, high float64 // of a drill, which cuts over its size
	mill      float64 // largest end mill or bored hole
	most      float64 // stock that the reamer should take at most
	plain     float64 // stock that it should take at least
}

func (b *builder) window(x Bore) window {
	w := window{least: 2 * x.locate()}
	switch x.Way {
	case seat.Reamer:
		lo, hi := b.r.ReamStock(x.WaySize)
		w.plain, w.most = lo, hi
		w.low, w.high, w.mill = x.WaySize-hi-b.r.DrillOversize, x.WaySize-lo-b.r.DrillOversize, x.WaySize-lo
	case seat.EndMill:
		w.low, w.high, w.mill = x.WaySize-b.r.MilledMost, x.WaySize-b.r.MilledLeast, x.WaySize-b.r.MilledLeast
	default:
		w.low, w.high, w.mill = x.mid()-b.r.BoredMost, x.mid()-b.r.BoredLeast, x.mid()-b.r.BoredLeast
	}
	return w
}

// bored is the size of a bored hole before the last tool, which can be read
// off a dial, where the lobe allows.
func (b *builder) bored(w window) float64 {
	if d := dim.Sig9(b.r.BoredStep * math.Floor(w.mill/b.r.BoredStep+1e-9)); d >= w.least-1e-9 {
		return d
	}
	return w.mill
}

// opening lists the tools that take a worn hole to the size before its seat's
// last tool.
func (b *builder) opening(x Bore, far bool) []step {
	steps := b.openingOf(x, far)
	if !x.Solid || b.loose() && b.s.Jig {
		return steps
	}
	t, ok := b.pilot(x.mid()/2, far)
	if !ok || len(steps) > 0 && t.Size >= steps[0].tool.Size-1e-9 {
		return steps
	}
	out := []step{{tool: t, kind: KindOpen, op: OpDrill, note: "pilot, from the spot"}}
	if len(steps) > 0 && steps[0].bar {
		// Room for the bar, which then makes the axis and wants metal to do it in.
		if wide, ok := b.pilot(x.mid()-b.r.BoredMost, far); ok && wide.Size > t.Size+1e-9 {
			out = append(out, b.between(t.Size, wide.Size, far)...)
			out = append(out, step{tool: wide, kind: KindOpen, op: OpDrill, note: "room for the boring bar"})
		}
	}
	return append(out, steps...)
}

func (b *builder) openingOf(x Bore, far bool) []step {
	switch b.s.Machine {
	case Mill:
		return b.onMill(x, far)
	case OnLathe:
		w := b.window(x)
		return []step{{tool: Tool{Name: "boring tool", Size: b.bored(w)}, kind: KindLocate, op: OpBore,
			head: cutting.Faceplate, bar: true}}
	}
	return b.throughJig(x)
}

// onMill: first a tool that stands on the target and takes in the whole lobe,
// then what the reamer wants before it.
func (b *builder) onMill(x Bore, far bool) []step {
	w := b.window(x)
	switch x.Way {
	case seat.EndMill:
		// The tool on size stands on the target by itself; a smaller one first
		// leaves it a light cut.
		if t, ok := b.mill(x, math.Max(x.Found, w.low), w.high, far); ok {
			return []step{{tool: t, kind: KindLocate, op: OpPlunge}}
		}
		return nil
	case seat.BoringHead:
		return b.forBar(x, w, far)
	}
	pre, ok := b.before(x, w, far)
	if ok && pre.op == OpPlunge {
		pre.kind = KindLocate
		return []step{pre} // one end mill does both
	}
	if ok && x.Follows {
		return append(b.between(x.Found, pre.tool.Size, far), pre) // it stands in its place, and a drill follows it
	}
	limit := w.mill
	if ok {
		limit = math.Min(limit, pre.tool.Size)
	}
	loc := b.locating(x, w, limit, far)
	if loc.bar || !ok {
		return []step{loc}
	}
	if loc.tool.Size > pre.tool.Size-1e-9 {
		return []step{loc}
	}
	return append(append([]step{loc}, b.between(loc.tool.Size, pre.tool.Size, far)...), pre)
}

// forBar opens the hole as far as the boring bar needs to get in; the bar then
// makes the new axis.
func (b *builder) forBar(x Bore, w window, far bool) []step {
	bore := step{tool: Tool{Name: "boring head", Size: b.bored(w)}, kind: KindLocate, op: OpBore,
		head: cutting.BoringHead, bar: true,
		note: "light cuts until the oval is gone: a single-point tool does not follow it"}
	enter := b.s.BoringFrom - b.r.BarUnder
	if x.Found <= 0 && !x.Solid || x.Found >= enter-1e-9 {
		bore.note = b.barNote(x.Found, bore)
		return []step{bore}
	}
	if t, ok := b.mill(x, math.Max(enter, x.Found), x.mid()-b.r.BarLeaves, far); ok {
		bore.note = b.barNote(t.Size, bore)
		return []step{{tool: t, kind: KindOpen, op: OpPlunge, note: "room for the boring bar"}, bore}
	}
	d := math.Ceil(enter*2-1e-9) / 2
	if d > x.mid()-b.r.BarLeaves {
		d = math.Floor((x.mid()-b.r.BarLeaves)*10+1e-9) / 10
	}
	st := b.bought(d, far)
	st.kind, st.note = KindOpen, "room for the boring bar"
	bore.note = b.barNote(st.tool.Size, bore)
	return []step{st, bore}
}

// barNote says what a boring head is set to, from the hole that it goes into.
func (b *builder) barNote(hole float64, bore step) say.Text {
	if hole <= 0 || b.s.Machine == OnLathe {
		return bore.note
	}
	return join(say.F("head set to cut a little over %v, then up to %v", say.MM(hole, 2).Trim(),
		say.MM(bore.tool.Size, 2).Trim()), bore.note)
}

// locating is the tool that makes the new place: the largest end mill that
// takes in the lobe and leaves enough for what comes after; else the boring
// head; else one to buy; else the nearest there is, with a caution.
func (b *builder) locating(x Bore, w window, limit float64, far bool) step {
	if t, ok := b.mill(x, w.least, limit, far); ok {
		return step{tool: t, kind: KindLocate, op: OpPlunge}
	}
	if b.s.BoringFrom > 0 && b.s.BoringFrom <= w.mill+1e-9 && w.mill >= w.least-1e-9 &&
		(!far || slender(b.r.ReachDiameters, w.mill) >= b.deep(OpBore, w.mill)-1e-9) &&
		(x.Found <= 0 || x.Found >= b.s.BoringFrom-b.r.BarUnder) {
		return step{tool: Tool{Name: "boring head", Size: b.bored(w)}, kind: KindLocate, op: OpBore,
			head: cutting.BoringHead, bar: true, note: "light cuts: a single-point tool does not follow the oval"}
	}
	if d, ok := standardMill(w.least, limit); ok {
		st := b.bought(d, far)
		st.buy = say.F("centre-cutting, at least %v to take in the worn side and at most %v", say.MM(w.least, 2),
			say.MM(limit, 2))
		return st
	}
	t, ok := b.mill(x, 0, limit, far)
	if !ok {
		d := math.Floor(limit*10+1e-9) / 10
		st := b.bought(d, far)
		st.left = w.least - d
		return st
	}
	return step{tool: t, kind: KindLocate, op: OpPlunge, left: w.least - t.Size}
}

// bought is an end mill that the shop has to buy.
func (b *builder) bought(d float64, far bool) step {
	t := b.usual(Tool{Name: trim(d) + " mm end mill" + toBuy, Size: d})
	st := step{kind: KindLocate, op: OpPlunge, buy: "centre-cutting"}
	if far && !b.reaches(t, OpPlunge) {
		t.Reach, t.Shank, t.Assumed = b.deep(OpPlunge, d), d, false
		st.buy += say.F(", reach %v, no thicker shank", say.MM(t.Reach, 3).Trim())
	}
	st.tool = t
	return st
}

// standardMill is the largest end mill sold between two sizes: by halves, else
// by tenths of a millimetre.
func standardMill(least, limit float64) (float64, bool) {
	for _, n := range []float64{2, 10} {
		if d := math.Floor(limit*n+1e-9) / n; d >= least-1e-9 && d >= 1 {
			return d, true
		}
	}
	return 0, false
}

// mill is the largest end mill of the shop between two sizes that gets through the
// plate of a hole.
func (b *builder) mill(x Bore, least, limit float64, far bool) (Tool, bool) {
	for i := len(b.s.EndMills) - 1; i >= 0; i-- {
		t := b.s.EndMills[i]
		if t.Size >= least-1e-9 && t.Size <= limit+1e-9 && b.getsThrough(t, x, far) {
			return t, true
		}
	}
	return Tool{}, false
}

// throughJig: a slip bush guides each drill; the first takes in the lobe.
func (b *builder) throughJig(x Bore) []step {
	w := b.window(x)
	pre, ok := b.before(x, w, false)
	if !ok {
		return nil
	}
	first, has := b.firstDrill(b.widest(x, w.least, pre.tool.Size), pre.tool.Size)
	if !has || sameSize(first.Size, pre.tool.Size) {
		pre.kind = KindLocate
		pre.left = math.Max(0, w.least-pre.tool.Size)
		return []step{pre}
	}
	loc := step{tool: first, kind: KindLocate, op: OpDrill}
	return append(append([]step{loc}, b.between(first.Size, pre.tool.Size, false)...), pre)
}

// widest is the least first drill of all holes that get the same seat: one size
// for all of them wants one slip bush. In solid metal it is a pilot.
func (b *builder) widest(x Bore, least, most float64) float64 {
	if x.Solid {
		return math.Max(least, x.mid()/2)
	}
	out := least
	for _, y := range b.j.Bores {
		if w := b.window(y); y.cuts() && y.Part == nil && y.WayName == x.WayName && sameSize(y.WaySize, x.WaySize) &&
			w.least <= most+1e-9 {
			out = math.Max(out, w.least)
		}
	}
	return out
}

// firstDrill is the smallest drill that takes in the lobe.
func (b *builder) firstDrill(least, limit float64) (Tool, bool) {
	for _, t := range b.s.Drills {
		if t.Size >= least-1e-9 && t.Size <= limit+1e-9 && b.canDrill(t) {
			return t, true
		}
	}
	return Tool{}, false
}
