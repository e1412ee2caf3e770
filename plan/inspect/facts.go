package inspect

import (
	"rebush/fits/table"
	"rebush/plan/job"
)

// Hole is one hole as the plan has it. All lengths in mm; sizes are on diameter,
// least and most, an open end an infinity.
type Hole struct {
	Name        string
	Seat, Bore  Limits
	OffMM       float64 // how far off its place the machine may leave it
	UJournalMM  float64 // standard uncertainty of the journal that runs in the bore
	Bush        string  // the one that was chosen, by its code
	Uncut       bool    // its seat was there: the plan cuts nothing
	Instruments func(What) []Instrument
}

// Limits are those in which a size works, and those that its tool leaves; none
// where nothing is cut.
type Limits struct {
	Works [2]float64
	Tool  *[2]float64
}

// Gauge is an instrument: what it reads too much, and its standard uncertainty.
type Gauge struct{ BiasMM, UMM float64 }

// Instrument is one of the shop, by its name.
type Instrument struct {
	Name string
	UMM  float64
}

// Shop are the defaults that decide.
type Shop struct {
	GuardK    float64 `rule:"guard_k"`          // guard band of an acceptance in standard uncertainties
	LetPassMM float64 `rule:"bore_let_pass_mm"` // how far over its limit a bore may be offered to run
}

// ShopOf reads the defaults.
func ShopOf(r *table.Rules) Shop {
	s := Shop{}
	r.Fill(&s)
	return s
}

// What is what was gauged.
type What string

// The three.
const (
	Seat  What = "seat"
	Bore  What = "bore"
	Place What = "place"
)

// Whats are the things that were gauged of a hole, in the order of the work.
func Whats(made job.Made) []What {
	var out []What
	if made.Seat.Given() {
		out = append(out, Seat)
	}
	if made.Diameter.Given() {
		out = append(out, Bore)
	}
	if made.Centre.Given() {
		out = append(out, Place)
	}
	return out
}
