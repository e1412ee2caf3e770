package seat

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/ledger"
)

// bore explains the limits of the finished bore, what runs in them, where the
// bush closes to and where its bore will lie.
func (e *explainer) bore(row *Row, f figures) {
	p, h := e.page, &e.x.Hole
	journal := p.Leaf("journal_mm", "journal", "mm", e.shaftLine("journal"), h.Journal)
	in := []ledger.Num{journal, e.rule("bore_over_journal_um")}
	most := e.rule("clearance_max_um")
	in = append(in, p.Leaf("must_pass_mm", "largest diameter that has to go through (0: nothing larger)", "mm",
		e.shaftLine("must_pass"), h.MustPass),
		e.rule("pass_um"))
	if e.a.WarmRules {
		in = append(in, e.warm(journal, f))
	}
	limits := both{
		p.Calc("bore_mm/min", "least finished bore", "mm",
			"the largest of journal + least clearance, what must pass + room, and what still runs at the hot or cold end of use",
			"rules bore_over_journal_um, pass_um and run_least_um", func(v []float64) float64 {
				return math.Max(LeastBore(v[0], v[1]/1000, v[2], v[3]/1000), last(v[4:], 0))
			}, in...),
		p.Calc2("bore_mm/max", "largest finished bore", "mm", "journal + largest clearance accepted",
			"rule clearance_max_um",
			func(journal, um float64) float64 { return MostBore(journal, um/1000) }, journal, most)}
	row.BoreMM = limits.limits()
	row.RunningUM = both{
		p.Calc2("running_um/min", "least running clearance on diameter", "um", "least finished bore less journal",
			"rule bore_over_journal_um",
			inUM(Running), limits.least, journal),
		p.Calc2("running_um/max", "largest running clearance on diameter", "um", "largest finished bore less journal",
			"rule clearance_max_um",
			inUM(Running), limits.most, journal)}.numbers()
	row.ClosedMM = e.closed(f)
	row.ExpectedMM = e.expected()
}

// closed explains the bore after pressing.
func (e *explainer) closed(f figures) *dim.MMRange {
	p := e.page
	if e.a.HeldBy != ByPress {
		return dim.Sizes(e.a.Closed[0], e.a.Closed[1])
	}
	after := func(bore, um float64) float64 { return ClosedBore(bore, um/1000) }
	return both{
		p.Calc2("closed_mm/min", "least bore after pressing", "mm",
			"smallest bore of the bush less the largest closure", "as the closure",
			after, f.bore.least, p.Num("closure_um/max")),
		p.Calc2("closed_mm/max", "largest bore after pressing", "mm",
			"largest bore of the bush less the least closure", "as the closure",
			after, f.bore.most, p.Num("closure_um/min"))}.sizes()
}

// expected explains where the finished bore will lie: as it closed, or as the
// tool that sizes it leaves it.
func (e *explainer) expected() *dim.MMRange {
	p, a := e.page, e.a
	end := func(i int, k string) dim.Gauged {
		what := k + " finished bore expected"
		if a.Finish == AsDelivered && p.Has("closed_mm/"+k) {
			return dim.Size(p.Calc2("expected_mm/"+k, what, "mm", "as the bush closes, no more than the largest finished bore",
				"as the closure", MostFinished, p.Num("closed_mm/"+k), p.Num("bore_mm/max")).V)
		}
		return dim.Size(p.Leaf("expected_mm/"+k, what, "mm", e.finishLine(), a.Expected[i]).V)
	}
	return &dim.MMRange{Min: end(0, "min"), Max: end(1, "max")}
}

// finishLine says what sizes the bore.
func (e *explainer) finishLine() string {
	switch e.a.Finish {
	case Mandrel:
		return e.shopLine("mandrels") + ", rule mandrel_spring_um"
	case Ream:
		return e.shopLine("reamers") + ", reamer limits by ISO 522 / DIN 1420"
	case ToOwnAxle:
		return e.in.Table.Get("clearance_aim_um").Address + " over the journal: eased until its own axle runs"
	}
	return e.shopLine("machine") + ", " + string(e.a.Finish)
}

// warm explains the least bore that still runs at the hot or the cold end of
// use, whichever is worse for the chosen bush.
func (e *explainer) warm(journal ledger.Num, f figures) ledger.Num {
	a, h, p := e.a, &e.x.Hole, e.page
	use := h.TLow
	if a.WarmAt > bench {
		use = h.THigh
	}
	in := []ledger.Num{journal, e.rule("run_least_um"), e.bushExpansion(), e.plateExpansion(),
		p.Leaf("expansion_shaft", "expansion of the shaft", "1e-6/K", inTable(shaftMaterial(e.x.Old.Shaft,
			e.in.Metals), "expansion", false), h.JournalA),
		f.bore.least, f.bore.most, f.od.most, f.seat.least, p.Leaf("use_c", "end of use", "C", e.useLine(), use)}
	if a.Bush.Metal.Plastic {
		in = append(in, e.rule("plastic_hot_k"))
	}
	return p.Calc("bore_warm_mm", "least bore that runs at that end of use", "mm",
		"journal + least clearance there less what the clearance changes: bore x bush - closure share x seat x (bush - plate) - journal x shaft, each times expansion and warming",
		"linear expansion; the ring of the press",
		func(v []float64) float64 {
			change := RunChange(a.HeldBy, Expansions{Bush: v[2], Plate: v[3], Shaft: v[4]}, v[9]+last(v[10:], 0),
				(v[5]+v[6])/2, v[0], v[8], Interference(v[7], v[8]), a.WarmShare)
			return WarmBore(v[0], v[1]/1000, change)
		}, in...)
}
