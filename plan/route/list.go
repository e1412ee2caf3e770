package route

import (
	"fmt"
	"strings"
)

// layOut lists what to lay out before starting: each tool, gauge and bush once.
func (b *builder) layOut() {
	seen := map[string]bool{"fingers": true, "fingers, oil": true}
	add := func(s string) {
		if s != "" && !seen[s] {
			seen[s] = true
			b.out.LayOut = append(b.out.LayOut, s)
		}
	}
	made := 0
	for _, x := range b.j.Bores {
		if x.BushMade {
			made++
			continue
		}
		add(fmt.Sprintf("bush %s for %s", x.Bush, x.Name))
	}
	if made > 0 {
		add(fmt.Sprintf("bar for %d turned %s", made, plural(made, "bush", "bushes")))
	}
	for _, o := range b.out.Operations {
		add(strings.TrimSuffix(o.Tool, inFingers))
		if o.ToolMM > 0 && b.loose() && b.s.Jig && (o.Kind == KindLocate || o.Kind == KindOpen || o.Kind == KindSizeSeat) {
			add(fmt.Sprintf("slip bush %s mm", trim(o.ToolMM)))
		}
	}
	for _, o := range b.out.Operations {
		add(o.Go)
		add(o.NoGo)
	}
}

// proving is reassembly and proving, a line each with its blank or tick box.
func (b *builder) proving() {
	add := func(text, blank string) { b.out.Proving = append(b.out.Proving, [2]string{text, blank}) }
	porous, oil := false, false
	for _, x := range b.j.Bores {
		porous, oil = porous || x.Porous, oil || x.Oil != nil
	}
	if porous {
		add("Porous bushes soaked in oil again before the axles go in", "")
	}
	if oil {
		add("Oil hole open, oil reaches the journal", "")
	}
	add("Each axle turns freely both ways, no tight spot", "")
	for _, w := range b.j.SidePlayWords {
		add(w, "mm")
	}
	for _, g := range b.j.Gears {
		add(fmt.Sprintf("%s: gear centred; backlash %.2f to %.2f mm", g.Name, g.Backlash[0], g.Backlash[1]), "mm")
	}
	for _, s := range b.j.Shafts {
		if len(b.on(s.Name)) == 0 || !s.Wheels {
			continue
		}
		if s.BackToBack > 0 {
			add(fmt.Sprintf("%s, wheels back to back: %s mm", s.Name, trim(s.BackToBack)), "mm")
		} else {
			add(s.Name+", wheels back to back, before stripping", "mm")
			add(s.Name+", wheels back to back, after", "mm")
		}
		if s.Insulated == "left" || s.Insulated == "right" {
			add(fmt.Sprintf("%s: insulated wheel on the %s", s.Name, s.Insulated), "")
		}
	}
	if b.j.Current {
		add("Insulated wheel to axle, before: open, above about 10 megohm", "ohm")
		add("Insulated wheel to axle, after", "ohm")
		add("Live wheel to chassis, before: near zero", "ohm")
		add("Live wheel to chassis, after", "ohm")
	}
	if b.j.Rods {
		add("Coupling rods on: no tight spot in a whole turn", "")
	}
	add("Each screw runs in two turns by hand; a spoilt thread is repaired before the truck runs", "")
	add("Motor, if opened: turns by hand, rubs nowhere", "")
	add("Oil in every bearing", "")
	for _, way := range []string{"forward", "backward"} {
		add("Runs "+way+", before: volts and amps", "V A")
		add("Runs "+way+", after: volts and amps", "V A")
	}
	add("Seat and bore sizes as made written down for the next repairer", "")
}
