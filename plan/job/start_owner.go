package job

// bush asks for one bush of the drawer; false when there are no more.
func (a *asker) bush(d *draft) bool {
	question := "Outside diameter of a bush you have (Enter: none)?"
	if len(d.bushes) > 0 {
		question = "Outside diameter of another kind of bush you have (Enter: no more)?"
	}
	b := draftBush{od: a.ask(question, keyShape("bushes/od"), "")}
	if b.od == "" {
		d.turns = a.yes("Can you turn a bush on a lathe (yes, no)?")
		return false
	}
	b.code = a.ask("  What do you call it?", keyShape("bushes/code"), "drawer "+string(rune('1'+len(d.bushes)%9)))
	for _, other := range d.bushes {
		if other.code == b.code {
			b.code += "b"
		}
	}
	b.bore = a.ask("  Its bore?", keyShape("bushes/bore"), need1)
	b.length = a.ask("  Its length with the flange?", keyShape("bushes/length"), need1)
	b.flange = a.ask("  Diameter of its flange (Enter: it has none)?", keyShape("bushes/flange/od"), "")
	if b.flange != "" {
		b.thick = a.ask("  Thickness of the flange?", keyShape("bushes/flange/thickness"), need1)
	}
	b.material = a.ask("  What is it made of?", keyShape("bushes/material"), "sintered bronze")
	d.bushes = append(d.bushes, b)
	return !a.ended && len(d.bushes) < 9
}

// owner asks what decides whether anything is to be done: the complaint, what
// feels like a worn hole and is not, and what another truck would cost.
func (a *asker) owner(d *draft) {
	for i, q := range [...]string{
		"Does it bind (yes, no; Enter: not tried)?", "Is it noisy (yes, no)?", "Does a wheel or hub rub (yes, no)?",
	} {
		d.complaint[i] = a.ask(q, aYesOrNo, "")
	}
	for i, q := range [...]string{
		"These feel like a worn hole and are not. Rims on their wheels: tight or loose (Enter: not looked at)?",
		"  Hubs on the axle: tight or loose?",
		"  Wheels back to back: correct, wide or narrow?",
		"  Insulated wheel to axle by the ohm meter: open, leaking or shorted?",
	} {
		d.symptoms[i] = a.ask(q, keyShape("symptoms/"+symptomKeys[i]), "")
	}
	d.price = a.ask("What would another truck cost (Enter: not known)?", keyShape("swap/price"), "")
	if d.price != "" {
		d.swapHours = a.ask("  Hours to fit it?", keyShape("swap/hours"), "0.5")
		d.second = a.ask("  Is it second-hand (yes, no)?", keyShape("swap/second_hand"), "yes")
	}
}

var symptomKeys = [...]string{"rims", "hubs", "gauge", "ohms"}

func (a *asker) yes(question string) bool {
	word, _ := boolWord(a.ask(question, aYesOrNo, "no"))
	return word == "yes"
}
