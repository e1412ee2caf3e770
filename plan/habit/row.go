package habit

import "rebush/fits/dim"

// Row is what past jobs tell of a shop, as it is printed. What they do not tell
// is null.
type Row struct {
	Reamed    *SizeRow           `json:"reamed"`
	Bored     *SizeRow           `json:"bored"`
	Milled    *SizeRow           `json:"milled"`
	Reamers   map[string]SizeRow `json:"reamers"`
	Place     *PlaceRow          `json:"place"`
	Clearance *SizeRow           `json:"clearance"`
	Slips     *SlipsRow          `json:"slips"`
}

// SizeRow is a way of making a diameter: what was found, and what a plan then
// expects.
type SizeRow struct {
	OverUM      float64  `json:"over_um"`
	UUM         float64  `json:"u_um"`
	ScatterUM   float64  `json:"scatter_um"`
	ScatterUUM  *float64 `json:"scatter_u_um"`
	ScatterTold bool     `json:"scatter_told"` // it is more than the gauge's own doubt
	GaugeUM     float64  `json:"gauge_um"`
	Jobs        int      `json:"jobs"`
	Holes       int      `json:"holes"`
	Enough      bool     `json:"enough"` // there are jobs enough to tell
	Expected    Expected `json:"expected"`
}

// Expected is what a plan expects of a shop.
type Expected struct {
	OverUM    float64 `json:"over_um"`
	UUM       float64 `json:"u_um"`
	ScatterUM float64 `json:"scatter_um"`
}

// PlaceRow is the same of places, along one axis.
type PlaceRow struct {
	SetupUM  float64       `json:"setup_um"`
	HoleUM   float64       `json:"hole_um"`
	UUM      float64       `json:"u_um"` // standard uncertainty of both together
	MeanUM   [2]float64    `json:"mean_um"`
	MeanUUM  float64       `json:"mean_u_um"`
	GaugeUM  float64       `json:"gauge_um"`
	Told     bool          `json:"told"`
	Jobs     int           `json:"jobs"`
	Holes    int           `json:"holes"`
	Enough   bool          `json:"enough"`
	Expected ExpectedPlace `json:"expected"`
}

// ExpectedPlace is what a plan expects of places.
type ExpectedPlace struct {
	SetupUM float64 `json:"setup_um"`
	HoleUM  float64 `json:"hole_um"`
}

// SlipsRow is the same of slips.
type SlipsRow struct {
	Slipped  int           `json:"slipped"`
	Holes    int           `json:"holes"`
	Jobs     int           `json:"jobs"`
	Enough   bool          `json:"enough"`
	Expected ExpectedSlips `json:"expected"`
}

// ExpectedSlips is what a plan expects of slips.
type ExpectedSlips struct {
	Share float64 `json:"share"`
}

// Explain puts what past jobs tell beside what a plan makes of it: then are the
// habits of the shop with it as its record.
func (l Learned) Explain(then Habits, r Rules) Row {
	out := Row{Reamers: map[string]SizeRow{}, Clearance: sizeRow(l.Clearance, then.Clearance, r)}
	out.Reamed = sizeRow(l.Ways[Reamed], then.Ways[Reamed], r)
	out.Bored = sizeRow(l.Ways[Bored], then.Ways[Bored], r)
	out.Milled = sizeRow(l.Ways[Milled], then.Ways[Milled], r)
	for name, f := range l.Reamers {
		out.Reamers[name] = *sizeRow(f, then.Seat(Reamed, name), r)
	}
	if p := l.Place; p.Jobs > 0 {
		out.Place = &PlaceRow{SetupUM: near(p.SetupUm), HoleUM: near(p.HoleUm), UUM: near(p.UUm),
			MeanUM: [2]float64{near(p.MeanUm[0]), near(p.MeanUm[1])}, MeanUUM: near(p.UMeanUm), GaugeUM: near(p.GaugeUm),
			Told: p.Told, Jobs: p.Jobs, Holes: p.Holes, Enough: r.Enough(p.Jobs),
			Expected: ExpectedPlace{near(1000 * then.Place.SetupMM), near(1000 * then.Place.HoleMM)}}
	}
	if s := l.Slips; s.Jobs > 0 {
		out.Slips = &SlipsRow{s.Slipped, s.Holes, s.Jobs, r.Enough(s.Jobs), ExpectedSlips{dim.Near(then.Slips.Share, 5)}}
	}
	return out
}

func sizeRow(f Found, then Size, r Rules) *SizeRow {
	if f.Jobs == 0 {
		return nil
	}
	out := &SizeRow{OverUM: near(f.OverUm), UUM: near(f.UOverUm), ScatterUM: near(f.ScatterUm), ScatterTold: f.Told,
		GaugeUM: near(f.GaugeUm), Jobs: f.Jobs, Holes: f.Holes, Enough: r.Enough(f.Jobs),
		Expected: Expected{near(then.OverUm), near(then.UOverUm), near(then.ScatterUm)}}
	if f.Jobs > 1 {
		out.ScatterUUM = dim.Number(near(f.UScatterUm))
	}
	return out
}

// near is a figure in um as it is printed.
func near(um float64) float64 { return dim.Near(um, 2) }
