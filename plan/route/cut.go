package route

import (
	"fmt"
	"math"
)

// cutIn writes one clamping: how it is held, then hole by hole.
func (b *builder) cutIn(c clamping) {
	name := string(rune('A' + len(b.out.Setups)))
	b.setup = name
	b.last = ""
	mirrored := c.up == "right"
	set := Setup{Name: name, Up: c.up, Mirrored: mirrored, Words: b.holdWords(c), Clamping: true}
	for _, x := range c.bores {
		set.Bores = append(set.Bores, x.Name)
	}
	b.out.Setups = append(b.out.Setups, set)
	o := Operation{Kind: "set up", Do: b.setUpWords(c, mirrored), Tool: "", Holding: set.Words, MayWait: true, Minutes: 0}
	if mirrored {
		o.Note = "MIRRORED: the right plate is uppermost, so x runs the other way. "
		if b.j.Length > 0 {
			o.Note += fmt.Sprintf("The dial reads %s minus x of the drawing.", trim(b.j.Length))
		} else {
			o.Note += "Set x from the far end of the plate."
		}
	}
	b.add(o)
	for i, x := range c.bores {
		b.seat(x, c, i == 0 && len(b.out.Setups) == 1)
	}
}

func (b *builder) holdWords(c clamping) string {
	switch b.s.Machine {
	case "lathe":
		return fmt.Sprintf("on the faceplate, %s plate outwards, packed flat, counterweighted", c.up)
	case "drill press", "hand":
		return fmt.Sprintf("%s plate up, jig plate pinned in sound holes, chassis locked in the jig and the jig clamped to the table", c.up)
	}
	return fmt.Sprintf("%s plate up on parallels that leave both holes free, clamped over the plates and never across the open box", c.up)
}

func (b *builder) setUpWords(c clamping, mirrored bool) string {
	w := fmt.Sprintf("Clamp the chassis with the %s plate uppermost.", c.up)
	switch {
	case b.s.Machine == "lathe":
		w = fmt.Sprintf("Set the chassis on the faceplate, %s plate outwards; bring the target true with an indicator on a rod in the sound hole.", c.up)
	case c.rod:
		w += " Locate it on a close rod through the seats that are already right."
	case b.s.Machine == "mill":
		w += " Square it by a close rod through the better axle hole (the walls have draft), then pick up the datum edges."
	default:
		w += " Pin the jig plate in sound holes and prove it on a second hole."
	}
	if mirrored {
		w += " This side is MIRRORED."
	}
	return w
}

// approach says how the reading comes to its figure.
func (b *builder) approach() string {
	if b.s.Machine != "mill" {
		return ""
	}
	dir := func(axis, d string) string {
		if d == "" {
			d = "rising"
		}
		return axis + " " + d
	}
	w := dir("x", b.s.ApproachX) + ", " + dir("y", b.s.ApproachY)
	if !b.s.Readout {
		w += "; take up the screw each time"
	}
	return w
}

// seat writes the operations that make one seat.
func (b *builder) seat(x Bore, c clamping, first bool) {
	far := c.far[x.Name]
	at := x.At
	thin := x.Ligament < x.mid()/2 || x.Plate < x.mid()/2
	where := x.Name
	if far {
		where += " (through the near hole)"
	}
	common := func(o Operation) Operation {
		o.Bore, o.At, o.Approach, o.MayWait = x.Name, &at, b.approach(), true
		o.Backing = backing(far)
		o.Holding = b.holdWords(c)
		return o
	}
	box := ""
	if first {
		box = "Target confirmed on a second datum: read the hole from another edge or a sound hole before the first cut."
	}
	steps := b.opening(x, far)
	for _, st := range steps {
		if !st.ok {
			b.out.Troubles = append(b.out.Troubles, Trouble{Rule: "locating tool", Where: x.Name, Have: 2 * x.locate(), Want: x.WaySize,
				Text: "no tool that stands on the target takes in the whole lobe: " + st.note,
				Fix:  "add an end mill or a boring head to the shop file"})
			continue
		}
		if st.buy != "" {
			b.out.Buy = append(b.out.Buy, [2]string{st.buy, x.Name})
		}
		do := fmt.Sprintf("Open %s to %s mm", where, trim(st.tool.Size))
		if st.kind == "locate" {
			do = fmt.Sprintf("Cut the new place of %s, %s mm", where, trim(st.tool.Size))
		}
		o := common(Operation{Kind: st.kind, Do: do, Tool: st.tool.Name, ToolMM: st.tool.Size, HoleMM: st.tool.Size, Note: st.note, GaugeFirst: box})
		box = ""
		b.figures(&o, Query{Operation: st.op, Dia: st.tool.Size, Through: x.Plate, ThinWall: thin, Head: st.head})
		b.add(o)
	}
	b.chamfer(x, far, common, steps)
	b.lastTool(x, thin, common, box)
}

// chamfer breaks the entry before the last tool, from the side the bush goes
// in.
func (b *builder) chamfer(x Bore, far bool, common func(Operation) Operation, steps []step) {
	size := b.r.SeatChamfer
	why := ""
	if x.FlangeOD > 0 {
		size = b.r.FlangeRoot + b.r.FlangeOver
		why = "; it must clear the root of the flange"
	}
	hole := x.mid()
	if n := len(steps); n > 0 && steps[n-1].ok {
		hole = steps[n-1].tool.Size
	}
	o := common(Operation{Kind: "chamfer", Do: fmt.Sprintf("Chamfer the outside edge of %s %.1f x 45 degrees", x.Name, size),
		Tool: "countersink 90 degrees", HoleMM: hole,
		Note: fmt.Sprintf("measured on the finished seat: %.1f mm across%s. Before the last tool: a sharp edge shaves the bush, a chamfer cut afterwards raises a burr", x.mid()+2*size, why)})
	if far {
		o.Note += ". From below, turned in the fingers: the bush goes in from there"
		o.Tool = "countersink 90 degrees, in the fingers"
		o.Minutes = b.r.Gauging
	} else {
		b.figures(&o, Query{Operation: "countersink", Dia: x.mid() + 2*size, Through: size})
	}
	o.ToolMM = math.NaN()
	b.add(o)
}

// lastTool makes the seat to size.
func (b *builder) lastTool(x Bore, thin bool, common func(Operation) Operation, box string) {
	lim := x.Seat
	q := Query{Operation: "ream", Dia: x.WaySize, Through: x.Plate, ThinWall: thin}
	do := fmt.Sprintf("Ream the seat of %s", x.Name)
	tool := x.WayName
	size := x.WaySize
	note := "never turn a reamer back"
	switch x.Way {
	case "boring head":
		q.Operation, q.Dia, q.Head = "bore", x.mid(), "boring head"
		if b.s.Machine == "lathe" {
			q.Head, tool = "faceplate", "boring tool"
		}
		do, note, size = fmt.Sprintf("Bore the seat of %s to size", x.Name), "creep up on it; the last two passes at one setting", math.NaN()
	case "end mill":
		q.Operation = "plunge"
		do, note = fmt.Sprintf("Plunge the seat of %s with the end mill on size", x.Name), "one slow plunge; do not dwell"
	}
	o := common(Operation{Kind: "size seat", Do: do, Tool: tool, ToolMM: size, HoleMM: x.mid(), Limits: &lim, Note: note, GaugeFirst: box})
	b.figures(&o, q)
	o.Gauge, o.Go, o.NoGo = b.gauge(lim, "seat")
	if x.Way == "boring head" && b.s.Machine == "lathe" {
		o.Note += ". Counterweight, turn by hand first, guard shut"
	}
	b.add(o)
}

// figures asks the cutting figures and books the time.
func (b *builder) figures(o *Operation, q Query) {
	cut, err := b.cut(q)
	if err != nil {
		o.Note = join(o.Note, "no cutting figures: "+err.Error())
		b.spend(o, o.Tool)
		return
	}
	o.Cut, o.Depth, o.Lubricant, o.Thrust = &cut, cut.Depth, cut.Lubricant, cut.Thrust
	o.Note = join(o.Note, cut.Note)
	b.spend(o, o.Tool)
}

func join(a, b string) string {
	switch {
	case a == "":
		return b
	case b == "":
		return a
	}
	return a + ". " + b
}

func backing(far bool) string {
	if far {
		return "block under the far plate, so that it does not spring or burst at breakthrough"
	}
	return "block of hard wood or soft metal inside the box, close under the plate; ease off at breakthrough"
}
