package route

import "fmt"

// layOut lists what to lay out before starting: each tool, gauge and bush once.
func (b *builder) layOut() {
	seen := map[string]bool{}
	add := func(s string) {
		if s != "" && !seen[s] {
			seen[s] = true
			b.out.LayOut = append(b.out.LayOut, s)
		}
	}
	for _, x := range b.j.Bores {
		add(fmt.Sprintf("bush %s for %s", x.Bush, x.Name))
	}
	for _, o := range b.out.Operations {
		add(o.Tool)
		add(o.Go)
		add(o.NoGo)
	}
}

// proving is reassembly and proving, a line each with its blank or tick box.
func (b *builder) proving() {
	add := func(text, blank string) { b.out.Proving = append(b.out.Proving, [2]string{text, blank}) }
	add("Bores washed, oil holes open, felt touching", "")
	add("Axles in, larger end last; each turns freely both ways", "")
	for _, w := range b.j.SidePlayWords {
		add(w, "mm")
	}
	for _, g := range b.j.Gears {
		add(fmt.Sprintf("%s: gear centred, backlash %.2f to %.2f mm", g.Name, g.Backlash[0], g.Backlash[1]), "mm")
	}
	add("Wheels back to back, as before stripping", "mm")
	for _, s := range b.j.Insulated {
		add("Insulated wheel on the right side: "+s, "")
	}
	if b.j.Current {
		add("Ohms, insulated wheel to axle: open", "ohm")
		add("Ohms, live wheel to chassis: near zero", "ohm")
	}
	if b.j.Rods {
		add("Rods on: no tight spot in a whole turn", "")
	}
	add("Screws started by the fingers and not forced (stripped thread: the next longer screw of that thread, then a repair)", "")
	add("Equal gap round the armature where it was out", "")
	add("Oil in every bearing", "")
	add("Runs forward: volts and amps before / after", "V A")
	add("Runs backward: volts and amps before / after", "V A")
}
