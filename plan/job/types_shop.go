package job

import (
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
