package inspect

import (
	"rebush/fits/table"
	"rebush/plan/job"
)

// Hole is one hole as the plan has it, and what could still be done there. All
// lengths in mm; sizes are on diameter, least and most.
type Hole struct {
	Name      string
	SeatMM    [2]float64
	BoreMM    [2]float64 // finished
	At        [2]float64 // where it belongs
	OffMM     float64    // the most that it may stand off
	JournalMM float64
	Bush      string  // the one that was chosen, by its code
	BushMM    float64 // its largest outside
	Chance    float64 // that this hole comes right as planned
	Uncut     bool    // its seat was there: the plan cuts nothing
	Capped    bool    // it lies under a cap

	Meshes []Mesh // of its shaft's wheels

	// Here are the bushes that could go into a seat of a diameter between two,
	// best first. Larger are those that could go into a seat cut anew where one
	// of a diameter is there already.
	Here   func(least, most float64) []Offer
	Larger func(seat float64) []Offer
}

// Offer is a bush that could be seated.
type Offer struct {
	Bush   string
	Bonded bool    // with compound
	Turned bool    // for this seat
	SeatMM float64 // least diameter of its seat
	Chance float64
}

// Mesh is a mesh whose wheel moves with a hole.
type Mesh struct {
	Name    string
	Towards [2]float64 // unit vector from the mate to the wheel, reversed: the centres close along it
	Share   float64    // of the hole's move, that the wheel makes
	MidMM   float64    // centre distance as planned
	LowMM   float64    // accepted
	HighMM  float64
	Play    func(centreMM float64) float64 // backlash
}

// Gauge is an instrument: what it reads too much, and its standard uncertainty.
type Gauge struct{ BiasMM, UMM float64 }

// Shop is what the ways on ask of the shop, and the defaults that decide.
type Shop struct {
	Lathe       bool
	GuardK      float64 `rule:"guard_k"`          // guard band of an acceptance in standard uncertainties
	LeastWallMM float64 `rule:"least_wall_mm"`    // of a bush
	LetPassMM   float64 `rule:"bore_let_pass_mm"` // how far over its limit a bore may be offered to run
}

// ShopOf reads the defaults.
func ShopOf(lathe bool, r *table.Rules) Shop {
	s := Shop{Lathe: lathe}
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
