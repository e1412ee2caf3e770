package route

import (
	"strings"

	"rebush/fits/dim"
	"rebush/fits/say"
)

// layOut lists what to lay out before starting: each tool, gauge and bush once.
func (b *builder) layOut() {
	seen := map[string]bool{"": true, "fingers": true, "fingers, oil": true}
	add := func(s say.Text) {
		if words := s.String(); !seen[words] {
			seen[words] = true
			b.out.LayOut = append(b.out.LayOut, s)
		}
	}
	made := 0
	for _, x := range b.j.Bores {
		switch {
		case x.In:
			continue
		case x.BushMade:
			made++
			continue
		}
		add(say.F("bush %s for %s", x.Bush, x.Name))
	}
	if made > 0 {
		add(say.F("bar for %d turned %s", made, plural(made, "bush", "bushes")))
	}
	for _, o := range b.out.Operations {
		add(say.Text(strings.TrimSuffix(string(o.Tool), inFingers)))
		if o.ToolMM > 0 && b.loose() && b.s.Jig &&
			(o.Kind == KindLocate || o.Kind == KindOpen || o.Kind == KindSizeSeat) {
			add(say.F("slip bush %v", say.MM(o.ToolMM, 3).Trim()))
		}
	}
	if b.bar > 0 {
		add(say.F("boring bar no thicker than %v", say.MM(b.bar, 1).Rounded(dim.Down)))
	}
	for _, o := range b.out.Operations {
		if o.Halt > 0 {
			add("bathroom scales for the force of the press")
		}
		if o.Kind == KindLineUp {
			for _, rod := range b.otherRodList() {
				add("close-fitting rod, " + rod)
			}
		}
		if o.Compound && !strings.HasPrefix(o.Tool.String(), compound) {
			add(compound)
		}
		add(o.Go)
		add(o.NoGo)
	}
}

// compound is what holds a bush beside a press, or in its place.
const compound = "retaining compound"

// ohms is the unit of what is read off an ohmmeter.
const ohms = "ohm"

// proving is reassembly and proving, a line each with its blank or tick box.
func (b *builder) proving() {
	add := func(text say.Text, blank string) {
		b.out.Proving = append(b.out.Proving, Step{Text: text, Blank: blank})
	}
	twice := func(text say.Text, blank string) {
		b.out.Proving = append(b.out.Proving, Step{Text: text, Blank: blank, Twice: true})
	}
	oil := false
	for _, x := range b.j.Bores {
		oil = oil || x.Oil != nil
	}
	if oil {
		add("Oil hole open, oil reaches the journal", "")
	}
	add("Each axle turns freely both ways, no tight spot", "")
	for _, w := range b.j.SidePlayWords {
		add(w, "mm")
	}
	for _, g := range b.j.Gears {
		add(say.F("%s: gear centred; backlash %v", g.Name, g.window()), "mm")
	}
	for _, s := range b.j.Shafts {
		switch {
		case !s.Wheels && s.HubToHub > 0:
			twice(say.F("%s, hub to hub, or wheels back to back", s.Name), "mm")
		case !s.Wheels:
		case s.BackToBack > 0:
			add(say.F("%s, wheels back to back: %v", s.Name, say.MM(s.BackToBack, 3).Trim()), "mm")
		default:
			twice(say.F("%s, wheels back to back", s.Name), "mm")
		}
		if s.Insulated != "" {
			add(say.F("%s: insulated wheel on the %s", s.Name, s.Insulated), "")
		}
	}
	if b.j.Current {
		twice("Insulated wheel to axle: open, above about 10 megohm", ohms)
		twice("Live wheel to chassis: near zero", ohms)
	}
	if b.j.Rods {
		add("Coupling rods on: no tight spot in a whole turn", "")
	}
	add("Each screw runs in two turns by hand; a spoilt thread is repaired before the truck runs", "")
	add("Motor, if opened: turns by hand, rubs nowhere", "")
	add("Oil in every bearing", "")
	for _, way := range []string{"forward", "backward"} {
		if b.j.Current {
			twice(say.F("Runs %s: volts and amps", way), "V A")
		} else {
			// A motor on leads of its own, a spring, a cord: the job does not say.
			twice(say.F("Runs %s: volts and amps, or seconds of a winding", way), "V A or s")
		}
	}
	add("Seat and bore sizes as made written down for the next repairer", "")
}
