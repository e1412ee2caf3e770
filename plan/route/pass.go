package route

import (
	"math"

	"rebush/fits/say"
	"rebush/plan/seat"
)

// hole is a hole as it is at one moment: its middle, and its diameter in mm, 0
// where that is not known.
type hole struct {
	at [2]float64
	d  float64
}

// needed is the least diameter of a near hole that a tool passes turning: r is its
// largest radius about its own axis, beside how far the hole stands from that
// axis, room what it has to keep on the radius. METHODS.md 1.
func needed(r, beside, room float64) float64 { return 2 * (r + beside + room) }

// slender is how far a bar goes that is no thicker than the near hole. METHODS.md 2.
func slender(diameters, hole float64) float64 { return diameters * hole }

// blocked is why a far hole cannot be made through the near one, with what there
// is and what it takes, mm; nil where it can.
type blocked struct {
	why        say.Text
	have, want float64
}

// oneAxis says whether two holes have the same figures on the dials.
func oneAxis(a, c Bore) bool { return off(a.At, c.At) < 0.0005 }

// passes says why the tool of one operation does not get through the near hole to
// the far one.
func (b *builder) passes(p planned, near hole) *blocked {
	if p.q == nil || p.o.FromBelow {
		return nil // fingers, from the other side
	}
	beside, room := off(near.at, p.o.Place), 0.0
	if beside < 0.0005 {
		beside = 0
	}
	switch {
	case b.s.Machine == OnLathe && beside > 0:
		return &blocked{say.F("the two holes stand %v beside each other, and the work turns about one axis",
			say.MM(beside, 3)), beside, 0}
	case b.s.Machine == OnLathe && p.bar:
		return b.short(p, near.d) // the slide sets it out when it is past
	case p.bar:
		room = b.r.TipRoom
	}
	want := needed(p.pass/2, beside, room)
	if near.d >= want-1e-9 {
		return b.short(p, near.d)
	}
	out := &blocked{have: near.d, want: want}
	switch {
	case p.bar:
		out.why = say.F("the boring head set to %v turns free in %v, and the near hole is %v then", say.MM(p.after, 2),
			say.MM(want, 2), say.MM(near.d, 2))
	case beside > 0:
		out.why = say.F("%s at the far hole needs %v of the near one, which stands %v beside and is %v then", p.tool.Name,
			say.MM(want, 2), say.MM(beside, 3), say.MM(near.d, 2))
	case p.tool.Shank > p.tool.Size+1e-9:
		out.why = say.F("the shank of %s (%v) does not pass the near hole, which is %v before its last tool", p.tool.Name,
			say.MM(p.tool.Shank, 3).Trim(), say.MM(near.d, 2))
	default:
		out.why = say.F("%s is larger than the near hole before its last tool (%v)", p.tool.Name, say.MM(near.d, 2))
	}
	return out
}

// short says why the tool of one operation does not reach the far plate; a bar is
// no thicker than the near hole.
func (b *builder) short(p planned, near float64) *blocked {
	if p.q == nil || p.o.FromBelow {
		return nil
	}
	deep := b.deep(p.q.Op, p.tool.Size)
	if p.bar {
		if have := slender(b.r.ReachDiameters, near); have < deep-1e-9 {
			return &blocked{say.F("a boring bar that enters %v reaches about %v and has to go %v deep", say.MM(near, 2),
				say.MM(have, 0).About(), say.MM(deep, 1)), have, deep}
		}
		return nil
	}
	if have := b.reach(p.tool); have < deep-1e-9 {
		return &blocked{say.F("%s reaches %v and has to go %v deep", p.tool.Name, say.MM(have, 3).Trim(),
			say.MM(deep, 1)), have, deep}
	}
	return nil
}

// deep is how far below the upper face a tool goes that goes through the far
// plate: to its outside, and beyond by its overrun and the point of a drill.
func (b *builder) deep(op Op, d float64) float64 {
	if op == OpDrill && b.r.Beyond != nil {
		return b.j.Width + b.r.Beyond(d)
	}
	return b.j.Width + b.r.Overrun
}

// reach is how far a tool goes: as the shop says, else so many diameters.
func (b *builder) reach(t Tool) float64 {
	if t.Reach > 0 {
		return t.Reach
	}
	return b.r.ReachDiameters * t.Size
}

// reaches says whether a tool gets through the far plate.
func (b *builder) reaches(t Tool, op Op) bool { return b.reach(t) >= b.deep(op, t.Size)-1e-9 }

// walk goes through operations in their order, keeps the near hole as each finds
// it, and says which far one does not get through it first.
func (b *builder) walk(ops []planned, near Bore) *blocked {
	n := hole{near.Old, near.Found}
	for _, p := range ops {
		if p.o.Far {
			if why := b.passes(p, n); why != nil {
				return why
			}
			continue
		}
		if p.both { // cut by one tool at one setting
			if short := b.short(p, n.d); short != nil {
				return short
			}
		}
		n = hole{p.o.Place, p.after}
	}
	return nil
}

// getsThrough says whether an end mill goes through the plate of a hole: a shank
// thicker than the mill comes down on the plate where the flutes are short.
func (b *builder) getsThrough(t Tool, x Bore, far bool) bool {
	if far {
		return b.reaches(t, OpPlunge)
	}
	return t.Shank <= t.Size+1e-9 || b.reach(t) >= b.through(x)-1e-9
}

// through is how deep a tool without a point goes that goes through the upper plate.
func (b *builder) through(x Bore) float64 { return x.Plate + b.r.Overrun }

// together says whether a boring head brings both seats of a shaft to size at each
// of its settings: one size about one axis, in one metal.
func together(near, far Bore) bool {
	return near.Way == seat.BoringHead && far.Way == seat.BoringHead && oneAxis(near, far) &&
		sameSize(near.mid(), far.mid()) && near.Metal == far.Metal && near.ForPart == far.ForPart
}

// pair puts the operations on both holes of a shaft in the order in which they can
// be done, and says why they cannot in one clamping. Nothing is cut through a
// finished seat: both are roughed, then the far one is finished and the near one
// last; one reamer for both finishes them in one stroke, one boring head at one
// setting.
func (b *builder) pair(near, far Bore, c clamping) ([]planned, *blocked) {
	bored := together(near, far)
	var through *Bore
	if bored || oneStroke(near, far) {
		through = &far
	}
	if bored { // one setting for both has to take in the wear of both
		wide := math.Max(near.locate(), far.locate())
		near.S, far.S = wide-near.Allow/2, wide-far.Allow/2
	}
	on, over := b.seat(near, c, through), b.seat(far, c, nil)
	last, lastFar := on[len(on)-1], over[len(over)-1]
	on, over = on[:len(on)-1], over[:len(over)-1]
	var ops []planned
	if i, k := firstBar(on), firstBar(over); bored && i >= 0 && k >= 0 {
		ops = append(b.roughed(on[:i], over[:k], near), on[i:]...)
		ops = append(ops, over[k+1:]...)
	} else {
		ops = b.roughed(on, over, near)
	}
	if through == nil {
		ops = append(ops, lastFar)
	}
	ops = append(ops, last)
	return ops, b.walk(ops, near)
}

// roughed is the order in which two holes are opened: tool by tool where the same
// tool goes through both, and never a far one before the near hole lets it pass.
func (b *builder) roughed(near, far []planned, worn Bore) []planned {
	var out []planned
	n, i, k := hole{worn.Old, worn.Found}, 0, 0
	for i < len(near) || k < len(far) {
		take := i == len(near)
		if !take && i > 0 && k < len(far) {
			last, next := near[i-1], far[k]
			together := next.o.Tool == last.o.Tool || next.o.Kind == KindChamfer
			take = together && next.o.Kind == last.o.Kind && b.passes(next, n) == nil
		}
		if take {
			out = append(out, far[k])
			k++
			continue
		}
		out, n = append(out, near[i]), hole{near[i].o.Place, near[i].after}
		i++
	}
	return out
}

// firstBar is the place of the first operation that a boring bar does, -1 none.
func firstBar(ops []planned) int {
	for i, p := range ops {
		if p.bar {
			return i
		}
	}
	return -1
}
