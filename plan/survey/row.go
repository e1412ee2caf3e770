package survey

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/ledger"
)

// Row is where one bore is and where its centre used to be, as it is printed.
type Row struct {
	Bore        string        `json:"bore"`
	FoundMM     *dim.XY       `json:"found_mm"`
	CentreMM    *dim.XY       `json:"centre_mm"`
	CentreUMM   dim.Gauged    `json:"centre_u_mm"`
	DiameterMM  dim.Gauged    `json:"diameter_mm"`
	WearMM      dim.Gauged    `json:"wear_mm"`
	WearDeg     *float64      `json:"wear_deg"`
	ClearanceMM dim.Gauged    `json:"clearance_mm"`
	Method      string        `json:"method"`
	Evidence    []EvidenceRow `json:"evidence"`

	PlayMM      dim.Gauged `json:"play_mm"`      // as found, on diameter: widest less journal
	PlayPercent *float64   `json:"play_percent"` // of the journal

	CentreCovMM2 *[3]float64 `json:"centre_cov_mm2"` // covariance of the old centre: xx, xy, yy
}

// EvidenceRow is one way of knowing an old centre.
type EvidenceRow struct {
	Rank     int        `json:"rank"`
	What     string     `json:"what"`
	CentreMM *dim.XY    `json:"centre_mm"`
	UMM      dim.Gauged `json:"u_mm"`
	Used     bool       `json:"used"`
	Weight   float64    `json:"weight"` // how much of the old centre it makes, of 1
}

// Counts says whether a kind of evidence leads, or makes two parts of a hundred of
// the old centre at the least.
func (h Hole) Counts(i int) bool { return i == h.Used || math.Abs(h.Weights[i]) >= 0.02 }

// Row is the hole as it is printed, by the figures of the ledger.
func (h Hole) Row(book *ledger.Ledger) Row {
	row := Row{Bore: h.Name()}
	if h.Known || h.Bore.Centre.Given() || h.Spoilt() {
		row.FoundMM = dim.PlaceXY(h.Middle)
	}
	for i, e := range h.Evidence {
		row.Evidence = append(row.Evidence, EvidenceRow{Rank: e.Rank, What: e.Method.String(),
			CentreMM: dim.PlaceXY(e.Centre), UMM: dim.Place(e.U()), Used: h.Counts(i), Weight: math.Round(1000*h.Weights[i]) / 1000})
	}
	if !h.Known {
		return row
	}
	p := h.page(book)
	mm := func(k string) dim.Gauged { return dim.Place(p.Num(k).V) }
	row.CentreMM = &dim.XY{mm("centre_mm/0"), mm("centre_mm/1")}
	row.CentreUMM, row.DiameterMM, row.WearMM = mm("centre_u_mm"), mm("diameter_mm"), mm("wear_mm")
	row.CentreCovMM2 = &[3]float64{dim.Near(h.Worn.Cov[0][0], 12), dim.Near(h.Worn.Cov[0][1], 12), dim.Near(h.Worn.Cov[1][1], 12)}
	row.Method = h.Method.String()
	if h.Worn.W > 0 && (len(h.Bore.WornTo) > 0 || h.Bore.WidestAt != nil || len(h.Points) > 0) {
		row.WearDeg = dim.Number(p.Num("wear_deg").V)
	}
	if h.plays() {
		row.ClearanceMM, row.PlayMM = mm("clearance_mm"), mm("play_mm")
		row.PlayPercent = dim.Number(p.Num("play_percent").V)
	}
	return row
}
