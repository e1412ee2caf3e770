package chance

import (
	"rebush/fits/odds"
	"rebush/fits/table"
	"rebush/plan/survey"
)

// Facts are a plan as its trials read it, in plain numbers. Lengths in mm.
type Facts struct {
	Clampings []Clamping
	USetupMM  float64 // standard uncertainty of placing one clamping, per axis
	UHoleMM   float64 // and of placing one hole in it
	Shafts    []Shaft
	Holes     []Hole
	Pairs     []Pair
	Turns     bool // a bush can be turned to any size
	Lathe     bool // there is one
	Compound  bool // and retaining compound
	Rules     Rules
}

// Clamping is one set-up and the holes that are cut in it.
type Clamping struct {
	Name  string
	Bores []string
}

// Hole is one hole and what goes into it.
type Hole struct {
	survey.Hole
	On      int        // index of its shaft
	At      [2]float64 // its new centre; of one that stays, where FoundMM is reckoned from
	FoundMM float64    // how far its shaft stands towards its load, as found
	Fitting *Fitting   // nil where it stays as it is
}

// Hold is what holds a bush first of all.
type Hold int

// The holds.
const (
	Pressed Hold = iota
	Bonded
	Capped
)

// Fitting is a bush with the seat that takes it and the way its bore comes to
// size. Pairs are least and most.
type Fitting struct {
	Renews bool    // nothing is cut: the seat is there
	PlaceU float64 // of a hole taken as it is: standard uncertainty of where its middle stands, per axis
	SetUMM float64 // the same of a bore from how an eccentric bush is turned and set
	Part   *Part   // what stands in the plate round the bush, nil nothing
	Hold   Hold
	Filled bool // compound fills what is left of the wear

	Tool   string     // that makes the seat, "5 mm reamer"
	Tried  bool       // in scrap, before the truck is cut
	SeatMM [2]float64 // limits of the seat, on diameter
	Odds   odds.Seat  // what comes of it: the same figures that chose it

	Bush   Bush
	LeftMM float64 // metal left to the edge, +Inf where there is none near

	Finish     Finish
	MustPassMM float64 // largest diameter that goes through, 0 none
	Live       bool    // current passes here

	Larger []Larger // what else could be seated, larger than this one
}

// Bush is what the trials want to know of a bush.
type Bush struct {
	RunoutMM float64
	Porous   bool
	Turned   bool
	OnHand   int // -1 not said
}

// Part is a plug or a sleeve that a seat is cut in.
type Part struct {
	Chance float64 // that its hole takes the wear in and that it holds
}

// Larger is another bush that could be seated where this one goes wrong.
type Larger struct {
	SeatMM float64 // least diameter of its seat
	LeftMM float64 // metal that it leaves to the edge, +Inf where there is none near
}

// Pair is one mesh with every shaft where the plan puts it. SpreadMM are equally
// likely shifts of its limits where its teeth were not all measured.
type Pair struct {
	Name                 string
	On, Mate             int     // shafts; FixedMate
	Station, MateStation float64 // 0 at the left bore, 1 at the right
	Towards              [2]float64
	CentreMM             float64
	LowMM, HighMM        float64 // centre distances accepted
	Empty                bool    // no distance suits both ends of the backlash wanted: right where it runs
	Placeless            bool    // nobody knows where its mate stands: CentreMM is the middle of its window
	SpreadMM             []float64
	Ties                 []Tie      // by shift; nil none
	UGeomMM, UMateMM     float64    // where the teeth are as entered
	RunoutMM             [2]float64 // of wheel and mate, total
	TightMM              float64    // where the tightest tooth keeps the least it may, 0 not known
	BindMM               float64    // where it touches on both sides, 0 not known
	ContactMM            float64    // beyond which too few teeth are in contact, 0 not known
	PartMM               float64    // beyond which there are moments without any, 0 not known
	Lean                 *Lean      // nil where lean costs nothing
}

// Lean is what a shaft out of square costs a spur pair: its tightest tooth
// loses backlash at one end of its face.
type Lean struct {
	FaceMM   float64 // width of the teeth
	SpanMM   float64 // between the middles of the plates
	AngleRad float64 // operating pressure angle
}

// Rules are the defaults that the trials judge by.
type Rules struct {
	UJournalMM  float64 `rule:"u_journal_mm"`
	RunLeastUM  float64 `rule:"bore_over_journal_um"` // running clearance
	RunMostUM   float64 `rule:"clearance_max_um"`
	LeastWallMM float64 `rule:"least_wall_mm"`
	NoWallRadii float64 `rule:"wall_none_radii"`
	GaugeUM     float64 `rule:"gauge_seat_um"` // doubt of a seat as it is gauged
}

// RulesOf reads them.
func RulesOf(r *table.Rules) (out Rules) {
	r.Fill(&out)
	return out
}
