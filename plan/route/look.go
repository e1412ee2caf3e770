package route

import "rebush/fits/say"

// lookOver comes before anything is cut or pushed out where nobody has said
// that the casting is sound. What to look for goes by the metal and stands in
// the table of hazards.
func (b *builder) lookOver() {
	if !b.j.Unsure {
		return
	}
	b.setup = onBench
	b.add(Operation{Kind: KindLookOver, Do: "Look the casting or the plates over, before the first cut",
		Tool:    "a good light, a lens",
		Minutes: b.r.Gauging, Note: "then write condition: sound, cracked or swollen into the job file"})
}

// measureAgain comes before the first cut where a new centre lies farther from the
// old one than is usual, or than the old one is known: the caution gets a box.
func (b *builder) measureAgain() {
	var names []string
	for _, x := range b.j.Bores {
		for _, name := range b.j.Again {
			if name == x.Name && x.cuts() && !x.Made {
				names = appendNew(names, name)
			}
		}
	}
	if len(names) == 0 {
		return
	}
	b.setup = onBench
	b.add(Operation{Kind: KindMeasureAgain, Tool: "the instruments it was measured with",
		Do: say.F("Measure %s again, and the place of the mating gear: this move is long against what is known of it",
			list(names)),
		Minutes:    b.r.Gauging * float64(len(names)),
		GaugeFirst: "Measured again: the same as in the job within its doubt; else into the job file, and a new plan first.",
		Note:       "cut nothing on the old figures where they differ"})
}
