package route

import (
	"math"

	"rebush/feeds/cutting"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/seat"
)

// inFingers marks a tool that no spindle turns.
const inFingers = ", in the fingers"

// planned is one operation on one hole before it is put in its place among
// the others of its clamping.
type planned struct {
	o     Operation
	q     *Query  // nil: by hand
	tool  Tool    // what cuts, with its reach and shank
	bar   bool    // a boring bar with a single point
	both  bool    // at one setting through both plates
	pass  float64 // circle that it turns in, at its widest
	after float64 // diameter of the hole when it is done
}

// cutIn writes one clamping: how it is held, then shaft by shaft, then the
// gauging while it is still clamped.
func (b *builder) cutIn(c clamping) {
	name := b.letter()
	b.setup, b.last = name, ""
	mirrored := c.up == job.Right
	set := Setup{Name: name, Plate: c.up, Mirrored: mirrored, Words: b.holdWords(c), Clamping: true}
	for _, x := range c.bores {
		set.Bores = append(set.Bores, x.Name)
	}
	b.out.Setups = append(b.out.Setups, set)
	if b.s.Machine == Mill || b.s.Machine == OnLathe || b.s.Jig {
		b.makeRods("stepped rod", b.located(c), "foot and step in one chucking; the foot to the seat as it was made",
			b.locatedShapes(c)...)
	}
	b.setup = name
	o := Operation{Kind: KindSetUp, Do: b.setUpWords(c), Holding: set.Words, Note: b.setUpNote(c)}
	b.add(o)
	box := b.secondDatum(c)
	for i := 0; i < len(c.bores); i++ {
		x := c.bores[i]
		var ops []planned
		if i+1 < len(c.bores) && c.far[c.bores[i+1].Name] {
			ops, _ = b.pair(x, c.bores[i+1], c)
			i++
		} else {
			ops = b.seat(x, c, nil)
		}
		b.barIn(ops)
		for _, p := range ops {
			p.o.GaugeFirst, box = box, ""
			if p.q != nil {
				b.figures(&p.o, *p.q)
				if p.o.Kind == KindChamfer && p.bar {
					p.o.Depth = math.NaN() // pulled, from where it touches
				}
				if !math.IsNaN(p.o.Depth) && !p.o.byHand() && (b.s.Machine == Mill || b.s.Machine == DrillPress) {
					p.o.Note = join(p.o.Note, "depth stop set")
				}
				p.o.Stop = b.stop(p)
				p.o.Note = join(p.o.Note, b.stopWords(p.o.Stop))
			}
			b.add(p.o)
		}
	}
	b.gaugeSeats(c)
}

// barIn keeps how thick a boring bar may be: it goes into the hole as the tool
// before it left it, of either plate that it passes, with the room of `bar_under_mm` on
// either side for its point.
func (b *builder) barIn(ops []planned) {
	holes := map[string]float64{}
	for _, p := range ops {
		if holes[p.o.Bore] == 0 {
			holes[p.o.Bore] = b.bore(p.o.Bore).Found
		}
		if p.bar && p.o.Kind != KindChamfer && b.s.Machine != OnLathe {
			for name, d := range holes {
				if d -= 2 * b.r.BarUnder; d > 0 && (name == p.o.Bore || p.o.Far || p.both) && (b.bar == 0 || d < b.bar) {
					b.bar = d
				}
			}
		}
		if p.after > 0 {
			holes[p.o.Bore] = p.after
		}
	}
}

// letter is the name of the next clamping.
func (b *builder) letter() string {
	n := 0
	for _, s := range b.out.Setups {
		if s.Clamping {
			n++
		}
	}
	return string(rune('A' + n%26))
}

// byHand says that no spindle turns the tool.
func (o Operation) byHand() bool { return o.Cut == nil || o.Cut.ByHand }

// seat plans the operations that make one seat; its last tool goes on through a
// far one of the same size where there is one.
func (b *builder) seat(x Bore, c clamping, through *Bore) []planned {
	far := c.far[x.Name]
	at := x.At
	if c.up == job.Right {
		at[0] = b.mirrorX(at[0])
	}
	where := x.Name
	common := func(o Operation) Operation {
		o.Bore, o.Backing, o.Leaded = x.Name, b.backing(far), b.j.Leaded || x.leadedPart()
		o.Far = far
		o.Place = x.At
		switch {
		case b.s.Machine == Mill:
			o.At, o.Approach = &at, b.approach(c, x)
		case b.loose() && b.s.Jig:
			o.Placed = true // by the jig: this machine has no dials
		}
		return o
	}
	if far {
		where += " (through the near hole)"
	}
	var out []planned
	hole := x.Found
	if x.Solid && !(b.loose() && b.s.Jig) {
		out = append(out, b.spot(x, where, far, common))
	}
	for _, st := range b.opening(x, far && !b.owns) {
		if x.Made && st.tool.Size <= x.Found+1e-9 {
			continue // it is as large as that
		}
		if st.buy != "" {
			b.buy(purchase{kind: st.buyKind(), tool: st.tool.Name, size: st.tool.Size, spec: st.buy, bore: x.Name})
		}
		if st.left > 0.005 {
			b.trouble(Trouble{Level: finding.Caution, Rule: LocatingTool, Where: x.Name, Have: st.tool.Size,
				Want: 2 * x.locate(),
				Text: say.F("%s leaves %v of the worn side for the next tool to follow", st.tool.Name,
					say.MM(st.left/2, 2)),
				Fix: say.F("a boring head, or an end mill of at least %v; or a bush with a larger outside",
					say.MM(2*x.locate(), 2))})
		}
		do := say.F("Open out %s to %v", where, say.MM(st.tool.Size, 3).Trim())
		switch {
		case st.kind == KindLocate && b.loose() && !b.s.Jig:
			do = say.F("Start %s where the drill centres itself, %v", where, say.MM(st.tool.Size, 3).Trim())
		case st.kind == KindLocate:
			do = say.F("Start %s on its new centre, %v", where, say.MM(st.tool.Size, 3).Trim())
		}
		o := common(Operation{Kind: st.kind, Do: do, Tool: words(st.tool.Name), ToolMM: st.tool.Size,
			HoleMM: st.tool.Size, Note: b.toolNote(st, x)})
		q := Query{Op: st.op, Dia: st.tool.Size, From: hole, Through: x.Plate, ThinWall: x.thin(), Head: st.head,
			Material: x.Metal}
		both := st.bar && through != nil && x.Way == seat.BoringHead
		if st.bar {
			o.ToolMM = math.NaN()
			o.Note = join(o.Note, b.pastNear(far))
		}
		if both {
			o.Do = say.F("Start %s and %s on their new centre, %v, at one setting", x.Name, through.Name,
				say.MM(st.tool.Size, 3).Trim())
			o.Note, q.Through = join(bothPlates, o.Note), math.Max(b.j.Width, x.Plate)
			o.Backing = b.backingBoth()
		}
		if far {
			o.Note = join(o.Note, insideFar)
		}
		o.Note = join(o.Note, b.reachNote(st, x, far))
		hole = st.tool.Size
		out = append(out, planned{o: o, q: &q, tool: st.tool, bar: st.bar, both: both,
			pass: math.Max(st.tool.Size, st.tool.Shank), after: hole})
	}
	if !x.ForPart {
		out = append(out, b.chamfer(x, far, hole, common))
	}
	out = append(out, b.lastTool(x, where, through, common))
	if last := &out[len(out)-1]; last.bar && far {
		last.o.Note = join(last.o.Note, b.pastNear(far), insideFar)
	}
	for i := range out {
		if out[i].q != nil && x.Part != nil && x.Part.Through() {
			out[i].o.Note = join(out[i].o.Note, "light cuts: the seat breaks out of the rim of its "+
				words(named(x.Part.Mend))+", and the tool meets two metals")
		}
		if out[i].q != nil && x.Part != nil && x.Part.Stays {
			out[i].o.Note = join(out[i].o.Note, "light cuts: the old bush must not turn in its plate; it turns, stop")
		}
		// On a faceplate the chassis itself turns, whatever the tool is.
		if out[i].q != nil && b.s.Machine == OnLathe {
			out[i].q.Head = cutting.Faceplate
		}
	}
	return out
}

// toolNote says what is particular to one tool in one hole.
func (b *builder) toolNote(st step, x Bore) say.Text {
	note := st.note
	switch {
	case st.op == OpDrill && b.loose() && b.s.Jig:
		note = join(say.F("only through its slip bush, %v; lips dubbed", say.MM(st.tool.Size, 3).Trim()), note)
	case st.op == OpDrill && b.loose():
		note = join("lips dubbed; let the hole centre itself under the drill, then clamp", note)
	case st.op == OpDrill && b.j.Soft:
		note = join("lips dubbed, or it grabs", note)
	case st.op == OpBore && st.head == cutting.Faceplate:
		note = join("turn one full turn by hand first, guard shut", note)
	}
	return note
}

// chamfer breaks the entry before the last tool, from the side the bush goes
// in, which is the outside of each plate.
func (b *builder) chamfer(x Bore, far bool, hole float64, common func(Operation) Operation) planned {
	size := seat.Chamfer(x.FlangeOD > 0, b.r.SeatChamfer, b.r.FlangeRoot, b.r.FlangeOver)
	why := say.Text("a sharp edge shaves the bush")
	if x.FlangeOD > 0 {
		why = "the root of the flange must clear"
	}
	across := x.mid() + 2*size
	if hole <= 0 {
		hole = x.mid()
	}
	o := common(Operation{Kind: KindChamfer,
		Do: say.F("Chamfer %s outside, %v x 45°, to about %v across", x.Name,
			say.MM(size, 1).About(), say.MM(across, 1).About()),
		Tool: "countersink 90 degrees", ToolMM: math.NaN(), HoleMM: hole,
		Note: "before the last tool, which takes its burr off; " + why})
	p := planned{o: o, after: hole,
		q: &Query{Op: OpCountersink, Dia: across, Through: (across - hole) / 2, Material: x.Metal}}
	if b.loose() && b.s.Jig {
		p.o.Note = join("slip bush out, chassis stays where it is", p.o.Note)
	}
	if !far {
		return p
	}
	p.q, p.o.At, p.o.Approach, p.o.Minutes = nil, nil, "", b.r.ToolChange
	p.o.Tool, p.o.FromBelow = p.o.Tool+inFingers, true
	p.o.Backing = "block out, fingers in from below, spindle stopped"
	p.o.Note = join(p.o.Note, "this plate's outside lies below", "the block goes back before the next cut")
	if b.s.Machine == OnLathe {
		p.o.Tool, p.o.Note = "hooked boring tool, back edge at 45 degrees", join(
			say.F("from within: set out behind the plate, pulled towards you %v from where it touches", say.MM(size, 1)), why)
		p.o.Backing, p.o.FromBelow = b.backing(true), false
		p.q = &Query{Op: OpBore, Dia: across, Through: size, Head: cutting.Faceplate, Material: x.Metal}
		p.o.Minutes, p.bar = 0, true
	}
	return p
}

// lastTool makes the seat to size.
func (b *builder) lastTool(x Bore, where string, through *Bore, common func(Operation) Operation) planned {
	lim := x.Seat
	g := b.seatGauge(x)
	q := Query{Op: OpReam, Dia: x.WaySize, Through: x.Plate, ThinWall: x.thin(), Material: x.Metal}
	o := common(Operation{Kind: KindSizeSeat, Do: say.F("Ream the seat of %s", where), Tool: words(x.WayName),
		ToolMM: x.WaySize, HoleMM: x.mid(),
		Limits: &lim, OfSeat: true, AsLeft: x.AsLeft, Go: g.goes, NoGo: g.stops, Pins: g.sizes, Note: "never turn it back, in or out"})
	p := planned{tool: Tool{Name: x.WayName, Size: x.WaySize, Reach: x.Reach, Shank: x.Shank}, both: through != nil,
		after: x.mid()}
	switch x.Way {
	case seat.Reamer:
		o.Note = join(o.Note, b.reamerKind())
		if p.tool.Reach <= 0 { // a reamer is long for its size unless the shop says how long
			p.tool.Reach = b.deep(OpReam, x.WaySize)
		}
		if through != nil {
			o.Do = say.F("Ream the seats of %s and %s in one stroke", x.Name, through.Name)
			o.Note = join("down through the near plate and on through the far one, out only when it has passed both",
				o.Note)
			q.Through = math.Max(b.j.Width, x.Plate)
		}
		if b.loose() && b.s.Jig {
			o.Note = join(say.F("through its slip bush, %v", say.MM(x.WaySize, 3).Trim()), o.Note)
		}
	case seat.BoringHead:
		q.Op, q.Dia, q.Head = OpBore, x.mid(), cutting.BoringHead
		p.bar, p.tool.Size = true, x.mid()
		o.Tool, o.ToolMM = "boring head", math.NaN()
		o.Do, o.Note = say.F("Bore the seat of %s to size",
			where), "creep up on it; the last two passes at one setting"
		if b.s.Machine != OnLathe {
			o.Note = join(say.F("head set %v under, then measure and set on by what is missing to %v",
				say.MM(b.r.BoredStep, 2), say.MM(x.mid(), 3)), "the last two passes at one setting")
		}
		if b.s.Machine == OnLathe {
			o.Tool = "boring tool"
			o.Note = join(o.Note, "guard shut")
		}
		if through != nil {
			o.Do = say.F("Bore the seats of %s and %s to size at one setting", x.Name, through.Name)
			o.Note, q.Through = join(bothPlates, o.Note), math.Max(b.j.Width, x.Plate)
		}
	case seat.EndMill:
		q.Op, p.tool = OpPlunge, b.usual(p.tool)
		o.Do, o.Note = say.F("Plunge the seat of %s with an end mill of its size",
			where), "one slow plunge, no dwelling"
	}
	if through != nil {
		o.Backing = b.backingBoth()
	}
	switch {
	case x.ForPart && through != nil:
		how := map[bool]string{false: "in one stroke", true: "at one setting"}[p.bar]
		o.Do = say.F("Size the holes for the %ss of %s and %s %s", x.Bush, x.Name, through.Name, how)
	case x.ForPart:
		o.Do = say.F("Size the hole for the %s in %s", x.Bush, where)
	}
	if !b.getsThrough(p.tool, x, false) {
		b.trouble(Trouble{Level: finding.Caution, Rule: ToolReach, Where: x.Name, Have: b.reach(p.tool),
			Want: b.through(x),
			Text: say.F("%s goes %v deep before its shank comes down on the plate, and has to go %v", x.WayName,
				say.MM(b.reach(p.tool), 1), say.MM(b.through(x), 1)),
			Fix: "a tool with longer flutes or a slimmer shank; write its reach and shank into the shop file"})
	}
	p.o, p.q, p.pass = o, &q, math.Max(p.tool.Size, p.tool.Shank)
	return p
}

// What is said of depths in a far plate, and of a bar that bores both plates.
const (
	insideFar  = say.Text("depth counts from the inside of the far plate")
	bothPlates = say.Text("at each setting down through the near plate and on through the far one: both come to size " +
		"together")
)

// pastNear says how the single point of a bar gets past the near hole to the far
// one: on a mill it turns clear of it, else it would not be planned so; on a lathe
// it is set out behind it.
func (b *builder) pastNear(far bool) say.Text {
	switch {
	case !far:
		return ""
	case b.s.Machine == OnLathe:
		return "past the near hole set in and clear of it, then out to its figure; in again before it is drawn back"
	}
	return say.F("the tip turns at least %v clear of the near hole; it touches: stop, the head is set too far",
		say.MM(b.r.TipRoom, 2).Trim())
}
