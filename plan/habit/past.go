package habit

import (
	"math"

	"rebush/fits/say"
)

// Job is one past job of a shop: what was gauged of its holes, against what its
// plan expected.
type Job struct {
	Holes []Hole
}

// Hole is one hole as it was made. What was not gauged is nil.
type Hole struct {
	Bore      string
	Way       Way
	Reamer    string // that made its seat, "5 mm H7"; "" where none did
	Seat      *Over
	Clearance *Over
	Place     *Off
}

// Over is a diameter less what it should be, um, as it was gauged, and the
// standard uncertainty of the gauging.
type Over struct{ Um, UUm float64 }

// Off is a place less its target, mm along both axes, with the standard
// uncertainty of the gauging along each; Clamping is the one that it was cut in.
type Off struct {
	MM       [2]float64
	UMM      float64
	Clamping string
}

// Found is what past jobs tell of a size, by themselves: before the rules are
// joined with it.
type Found struct {
	OverUm, UOverUm       float64
	ScatterUm, UScatterUm float64
	GaugeUm               float64 // standard uncertainty of the gauging
	Told                  bool    // the scatter is more than the gauge's own doubt: it is told
	Jobs, Holes           int
}

// FoundPlace is what they tell of places, um along one axis: the place of a
// clamping and of a hole in it, and how well both together are known.
type FoundPlace struct {
	SetupUm, HoleUm, UUm float64
	MeanUm               [2]float64 // how far they stand off their targets on the whole
	UMeanUm              float64
	GaugeUm              float64
	Told                 bool // it is more than the gauge's own doubt
	Apart                bool // clamping and hole could be told from each other
	Jobs, Holes          int
}

// FoundSlips are the holes that slipped, of those of which anything was gauged.
type FoundSlips struct{ Slipped, Holes, Jobs int }

// Slip is a size that stands too far from the others of its kind to be scatter.
type Slip struct {
	Job  int // index
	Bore string
	What string  // seat, bore or place
	Um   float64 // how far from the others
}

// Words say what slipped.
func (s Slip) Words() say.Text {
	return say.F("the %s as made stands %v from the others of its kind: it counts as a slip, and in no other figure", s.What,
		say.Um(math.Abs(s.Um), 0))
}

// Learned is what past jobs tell of a shop. A way that made no hole is missing.
type Learned struct {
	Ways      map[Way]Found
	Reamers   map[string]Found
	Place     FoundPlace
	Clearance Found
	Slips     FoundSlips
	Slipped   []Slip
}
