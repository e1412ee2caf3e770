package survey

import (
	"rebush/fits/dim"
	"rebush/fits/ledger"
)

// Explain records in the ledger, for every hole whose old centre is known, that
// centre, its doubt and the worn hole round it: each worked out from what was
// measured by the source that found it.
func Explain(book *ledger.Ledger, holes []Hole) {
	for _, h := range holes {
		if h.Known {
			h.explain(book)
		}
	}
}

func (h Hole) explain(book *ledger.Ledger) {
	h.explainWith(book, h.centre, []told{
		{"centre_mm/0", "x of the old centre", "mm", func(e Evidence) float64 { return e.Centre[0] }},
		{"centre_mm/1", "y of the old centre", "mm", func(e Evidence) float64 { return e.Centre[1] }},
		{"centre_u_mm", "standard uncertainty of the old centre, largest", "mm", Evidence.U},
	})
	h.explainWith(book, h.wear, []told{
		{"old_radius_mm/found", "old radius of the hole", "mm", func(e Evidence) float64 { return e.Bore.R }},
		{"wear_mm", "depth of wear", "mm", func(e Evidence) float64 { return e.Bore.W }},
		{"wear_rad", "direction of wear", "rad", func(e Evidence) float64 { return e.Bore.ThetaRad }},
		{"clearance_mm", "clearance on radius when new", "mm", func(e Evidence) float64 { return e.Bore.C }},
	})
	p := h.page(book)
	old, wear := p.Num("old_radius_mm/found"), p.Num("wear_mm")
	p.Calc1("diameter_mm", "diameter of the hole when it was new", "mm", "twice the old radius", HowWorn, across, old)
	p.Calc1("wear_deg", "direction of wear, from +x anticlockwise", "deg", "the direction in degrees", HowWorn,
		degrees, p.Num("wear_rad"))
	if !h.plays() {
		return
	}
	journal := h.journal.num(book)
	slack := p.Calc3("play_mm", "play as found, on diameter", "mm", "old diameter and wear less the journal",
		"plane geometry", play, old, wear, journal)
	p.Calc2("play_percent", "play as found, share of the journal", "%", "play over journal", "arithmetic", percent,
		slack, journal)
}

// told is one figure that evidence tells.
type told struct {
	key, what, unit string
	of              func(Evidence) float64
}

// explainWith records figures of a source, which is asked again for each set of
// inputs once.
func (h Hole) explainWith(book *ledger.Ledger, x heard, figures []told) {
	p, inputs := h.page(book), nums(book, x.Figures)
	again := ledger.LastOf(func(in []float64) Evidence {
		a, err := x.Find(in)
		if err != nil || a.Bore == nil {
			a.Bore = &WornBore{} // figures that were never measured
		}
		return a.Evidence
	})
	for _, f := range figures {
		p.Calc(f.key, f.what, f.unit, "from "+x.how(), HowWorn,
			func(in []float64) float64 { return dim.Sig9(f.of(again(in))) }, inputs...)
	}
}
