package route

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
