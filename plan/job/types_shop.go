package job

import (
	"maps"
	"slices"

	"rebush/fits/dim"
	"rebush/fits/table"
)

// Shop is what the shop can do.
type Shop struct {
	File         string // "" for the built-in small shop
	MachineKind  string // mill | drill press | lathe | hand
	Readout      bool
	ApproachX    string // rising | falling
	ApproachY    string
	Spindle      []float64 // steps in rising order, or nil
	SpindleMin   float64   // variable speed
	SpindleMax   float64
	SetupU       dim.Length // standard uncertainty per clamping; not given: by rule for the machine
	HoleU        dim.Length
	Runout       dim.Length
	PressN       float64 // what the press can give, 0 unknown
	MaxDrill     dim.Length
	Jig          string // none | pinned | ""
	DrillTool    string // HSS | cobalt | carbide
	DrillSeries  []string
	Drills       []Tool
	Reamers      []Tool
	EndMills     []Tool
	BoringFrom   dim.Length
	BoringTo     dim.Length
	Mandrels     []Tool
	Pins         *PinSet
	Lathe        bool
	Compounds    []string
	Instruments  []Instrument
	FrictionLow  float64 // 0: by rule
	FrictionHigh float64
	SendOut      *SendOut
	SetupHours   float64
	StripHours   float64
	Currency     string
	PerHour      *float64
	Paper        string // A4 | Letter | ""
	Record       *Record
	Rules        *table.Rules
	Tables       *table.Library
	where        map[string]Pos
	root         *value // as read, for the hash
}

// At is Job.At for the shop file: "reamers/0", "machine/spindle".
func (s *Shop) At(path string) Pos { return lookup(s.where, path) }

// Tool is a drill, reamer, end mill or mandrel.
type Tool struct {
	Size  dim.Length
	Name  string // as stamped on it: "5 mm", "7/32 in", "#31"
	Class string // of a reamer: the hole class that it cuts
	Low   dim.Length
	High  dim.Length // measured limits of a reamer
	Reach dim.Length
	Shank dim.Length
	For   dim.Length // bought to go before the reamer of this size
	Index int        // place in the shop's list, -1 for one of a series
}

// PinSet is a set of pin gauges.
type PinSet struct {
	From, To, Step dim.Length
	Class          string
}

// Instrument is one measuring instrument with its standard uncertainty.
type Instrument struct {
	Name string
	U    dim.Length
	Bias dim.Length // reading minus truth
}

// SendOut is a machinist who would do the holes.
type SendOut struct {
	LocationU dim.Length
	Price     float64
}

// Record is what a shop really did in past jobs. What it does not know is nil.
type Record struct {
	Reamed, Bored, Milled *Recorded
	Reamers               map[string]Recorded // by Tool.Called
	Clearance             *Recorded
	Place                 *RecordedPlace
	Slips                 *RecordedSlips
}

// Recorded is what came out of one way of making a diameter.
type Recorded struct {
	Over    dim.Length // larger than it should be
	U       dim.Length // standard uncertainty of Over, not given: by the scatter
	Scatter dim.Length // standard deviation from hole to hole, not given: the gauge could not tell
	Jobs    int
}

// RecordedPlace is how far holes stand from their targets, per axis.
type RecordedPlace struct {
	Setup, Hole dim.Length // standard deviations of one clamping and of one hole
	Jobs        int
}

// RecordedSlips are the holes that went wrong by a slip.
type RecordedSlips struct{ Slipped, Holes, Jobs int }

// RecordRow is one row of a record: its key under `record`, and the jobs it rests on.
type RecordRow struct {
	Key  string
	Jobs int
}

// Recorded lists the rows of a shop's record, reamers by name.
func (s *Shop) Recorded() (out []RecordRow) {
	r := s.Record
	if r == nil {
		return nil
	}
	sizes := func(key string, of *Recorded) {
		if of != nil {
			out = append(out, RecordRow{key, of.Jobs})
		}
	}
	sizes("reamed", r.Reamed)
	sizes("bored", r.Bored)
	sizes("milled", r.Milled)
	for _, name := range slices.Sorted(maps.Keys(r.Reamers)) {
		out = append(out, RecordRow{"reamers/" + name, r.Reamers[name].Jobs})
	}
	if r.Place != nil {
		out = append(out, RecordRow{"place", r.Place.Jobs})
	}
	sizes("clearance", r.Clearance)
	if r.Slips != nil {
		out = append(out, RecordRow{"slips", r.Slips.Jobs})
	}
	return out
}

// Called is the name of a tool with its class, "5 mm H7".
func (t Tool) Called() string {
	if t.Class == "" {
		return t.Name
	}
	return t.Name + " " + t.Class
}
