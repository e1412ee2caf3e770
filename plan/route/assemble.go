package route

import (
	"math"
	"slices"
	"strings"

	"rebush/fits/dim"
	"rebush/fits/say"
	"rebush/plan/job"
)

// lineUp puts long rods through all finished bores at once: they show lean and
// parallelism.
func (b *builder) lineUp() {
	b.setup = onBench
	names, rods := b.linedUp()
	if len(names) == 0 {
		return
	}
	long := b.rodsLong()
	others, parallel := say.Text(", and one in the bores of every other axle"), say.Text(", parallel to the other rods")
	if len(b.j.Shafts) == 1 {
		others, parallel = "", ""
	}
	rest := b.otherRods()
	if rest != "" {
		rest = "the other rods as close as they go in: " + rest
	}
	b.add(Operation{Kind: KindLineUp, Note: join("every bore wiped clean first: no chip, no grit", rest),
		Do:      say.F("Line up %s: a test rod through both bores%v", list(names), others),
		Tool:    say.F("%s %v%v", plural(len(rods), "test rod", "test rods"), list(unique(rods)), long),
		Minutes: b.r.Gauging * float64(len(names)),
		Gauge:   say.F("turns free; level at both plates to %v%v", say.MM(b.r.LineUp, 2), parallel)})
}

// linedUp are the shafts with two bores and the test rods that go through them.
func (b *builder) linedUp() (names []string, rods []say.Text) {
	for _, shaft := range b.shafts() {
		mine := b.on(shaft)
		if len(mine) < 2 {
			continue
		}
		var sizes []float64
		for _, x := range mine {
			sizes = appendNew(sizes, under(x.Limits[0], b.r.RodUnder))
		}
		rods, names = append(rods, say.Row(2, "mm", " / ", sizes...).Text()), append(names, shaft)
	}
	return names, rods
}

// rodsLong is how long a test rod is, "" where the width is not known.
func (b *builder) rodsLong() say.Text {
	if b.j.Width <= 0 {
		return ""
	}
	return say.F(", about %v long", say.MM(10*math.Ceil(0.4*b.j.Width), 0).About())
}

// testRods are turned with the other work of the lathe, before a bush is pressed.
func (b *builder) testRods() {
	own := b.j.Bores
	b.j.Bores = append(slices.Clone(own), b.j.Done...)
	names, rods := b.linedUp()
	b.j.Bores = own
	var made []say.Text
	for i := range names {
		made = append(made, say.F("%s %v", names[i], rods[i]))
	}
	b.makeRods("test rod", made, say.F("straight to %v%v", say.MM(b.r.LineUp/2, 2), b.rodsLong()))
}

// otherRods names the holes of the shafts that are left alone, which want a rod
// each for lining up: the narrower one of each shaft; "" where none is known.
func (b *builder) otherRods() say.Text { return list(b.otherRodList()) }

// otherRodList are those holes one by one.
func (b *builder) otherRodList() []say.Text {
	var out []say.Text
	for _, s := range b.j.Shafts {
		hole := math.Inf(1)
		for _, m := range b.j.Marks {
			if strings.HasPrefix(m.Name, s.Name+".") && m.Dia > 0 {
				hole = min(hole, m.Dia)
			}
		}
		if len(b.on(s.Name)) == 0 && !math.IsInf(hole, 1) {
			out = append(out, say.F("%s %v", s.Name, say.MM(hole, 2).Trim()))
		}
	}
	return out
}

// assemble puts in all axles that were taken out and presses their wheels, which is
// the last step that cannot be taken back.
func (b *builder) assemble() {
	b.setup = onBench
	var wheels, hubs []Shaft
	var others []string
	for _, s := range b.j.Shafts {
		mine := b.on(s.Name)
		if len(mine) == 0 {
			others = append(others, s.Name)
		} else {
			b.add(Operation{Kind: KindAssemble, Do: b.axleWords(s), Tool: "fingers, oil", Minutes: b.r.Gauging,
				Note: b.passNote(s, mine)})
		}
		switch {
		case s.Wheels:
			wheels = append(wheels, s)
		case len(mine) > 0:
			hubs = append(hubs, s)
		}
	}
	if last := &b.out.Operations[len(b.out.Operations)-1]; len(others) > 0 {
		last.Note = join(last.Note, say.F("then %s back in, as marked, with what came off", list(others)))
		last.Minutes += b.r.Gauging * float64(len(others))
	}
	b.driveBack()
	if len(wheels) > 0 {
		b.wheels(wheels)
	}
	if len(hubs) > 0 {
		b.hubs(hubs)
	}
}

// driveBack puts back what stripping took out first.
func (b *builder) driveBack() {
	note := say.Text("as marked, each screw as it came out; turned by hand before any current")
	if len(b.j.Gears) > 0 {
		note = join(note, "the mesh is centred on the face of the gear and turned a whole turn")
	}
	b.add(Operation{Kind: KindAssemble, Do: "Put motor and drive back in", Tool: "screwdriver, tweezers",
		Minutes: b.r.Gauging, Note: join(note, "a drive that only goes in behind the wheels waits for them")})
}

// hubs presses back what came off shafts of which nobody has said that they
// carry wheels: a drum, a worm, a pulley.
func (b *builder) hubs(on []Shaft) {
	var names []string
	var apart []say.Text
	mesh := ""
	for _, s := range on {
		names = append(names, s.Name)
		if s.HubToHub > 0 {
			apart = append(apart, say.F("%s %v", s.Name, say.MM(s.HubToHub, 3).Trim()))
		}
		if s.Gear {
			mesh = theMesh
		}
	}
	known := say.Text("")
	if len(apart) > 0 {
		known = "hub to hub " + list(apart)
	}
	b.add(Operation{Kind: KindWheels, Pressed: true,
		Do:   say.F("Press back what came off %s: wheel, drum or pulley", list(names)),
		Tool: "press, flat support under the hub", Minutes: b.r.Press * float64(len(on)),
		Backing:    "flat plate under the hub, never under the rim",
		Gauge:      join(known, "wheels back to back, and hub to hub, as measured before stripping"),
		GaugeFirst: ready(names, mesh), Note: "nothing came off: check hub to hub and go on"})
}

// theMesh is what is tried of the gears before a shaft is closed for good.
const theMesh = "the mesh runs a whole turn without a tight spot, "

// ready is what must be so before a shaft is closed for good.
func ready(names []string, mesh string) say.Text {
	return say.F("%s %s freely both ways, %send float is there, bore sizes written down.",
		list(names), plural(len(names), "turns", "turn"), mesh)
}

func (b *builder) wheels(on []Shaft) {
	var names []string
	var apart, insulated []say.Text
	mesh := ""
	for _, s := range on {
		names = append(names, s.Name)
		if s.Gear {
			mesh = theMesh
		}
		if s.BackToBack > 0 {
			apart = append(apart, say.F("%s %v", s.Name, say.MM(s.BackToBack, 3).Trim()))
		}
		if s.Insulated != "" {
			insulated = append(insulated, say.F("insulated wheel of %s on the %s", s.Name, s.Insulated))
		}
	}
	o := Operation{Kind: KindWheels, Pressed: true,
		Do:   say.F("Press the %s of %s to gauge", plural(len(on), "wheel", "wheels"), list(names)),
		Tool: "wheel press, flat support under the hub", Minutes: b.r.Press * float64(len(on)),
		Backing:    "flat plate under the hub, never under the rim",
		Gauge:      "back to back as measured before stripping",
		GaugeFirst: ready(names, mesh),
		Note:       join(insulated...)}
	if len(apart) == len(on) {
		o.Gauge = "back to back " + list(apart)
	}
	b.add(o)
}

func (b *builder) axleWords(s Shaft) say.Text {
	lead := b.leads(s)
	if lead == "" {
		return say.F("Wipe and oil the bores and put %s in", s.Name)
	}
	return say.F("Wipe and oil the bores and put %s in from the %s, %s end first", s.Name, other(lead), lead)
}

// passNote says what has to pass through what.
func (b *builder) passNote(s Shaft, mine []Bore) say.Text {
	note := say.Text("")
	for _, x := range mine {
		if x.Porous {
			note = "the porous bushes soaked in oil again first"
		}
	}
	if lead := b.leads(s); lead != "" && b.mustLead(s, lead) {
		last := say.F("larger end last, so the wheel on the %s is the one that is off", lead)
		if s.Insulated == other(lead) {
			last += " although the other is the insulated one"
		}
		note = join(note, last)
	}
	for i, side := range job.Sides {
		for _, x := range mine {
			if x.Side == side && s.MustPass[i] > 0 {
				note = join(note, say.F("%v must pass the %s bore, which is at least %v",
					say.MM(s.MustPass[i], 3).Trim(), side, say.MM(x.Limits[0], 3).Rounded(dim.Up)))
			}
		}
	}
	if s.Gear {
		note = join(note, "the gear goes on between the plates as the axle comes through; equal packing on both "+
			"sides centres it")
	}
	return note
}
