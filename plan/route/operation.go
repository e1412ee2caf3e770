package route

import (
	"rebush/feeds/cutting"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
)

// Query asks for the cutting figures of one operation.
type Query struct {
	Op       Op
	Dia      float64 // of the tool
	From     float64 // of the hole that it opens; 0 none, or not known
	Through  float64 // thickness
	ThinWall bool
	Head     cutting.Head
	Material string // "" the plate; else the bush's, as the registry names it
}

// Cut is the answer.
type Cut struct {
	RPM, Ideal float64 // RPM 0: turn by hand
	ByHand     bool
	AtTop      bool
	Feed       float64
	FeedWords  say.Text
	Depth      float64
	Thrust     float64
	Minutes    float64 // cutting only
	Lubricant  say.Text
	Note       say.Text

	// What the figures were worked out from, for explaining them.
	Asked     Query
	SpeedMMin float64
	SpeedFrom string // table row
	FeedFrom  string
}

// Cutter gives the cutting figures; it is feeds/cutting behind a plain door.
type Cutter func(Query) (Cut, error)

// Operation is one block of the sheet.
type Operation struct {
	Number     int
	Kind       Kind
	Setup      string
	Bore       string
	Do         say.Text
	Tool       say.Text
	ToolMM     float64     // NaN none
	At         *[2]float64 // what the dials read
	Placed     bool        // it is Place that holds the tool, by a jig, and no dials
	Place      [2]float64  // the same in the frame of the job
	Approach   say.Text
	Cut        *Cut
	Depth      float64 // NaN none
	Stop       float64 // where the depth stop is set, from the face that the tool comes down on; 0 none
	Limits     *[2]float64
	OfSeat     bool // the limits are those of a seat, else of a bore or a bush
	AsLeft     bool // and they are what the tool leaves, printed to the nearest
	Gauge      say.Text
	Go, NoGo   say.Text
	Pins       [2]float64 // sizes of what goes and of what does not, 0 where a shank stands in
	Lubricant  say.Text
	Thrust     float64 // NaN none
	Backing    say.Text
	Holding    say.Text
	Minutes    float64 // NaN none
	GaugeFirst say.Text
	MayWait    bool
	Note       say.Text
	HoleMM     float64
	BushMetal  string // of its bore, "" where it has none

	// What pictures of it go by.
	Far    bool       // the tool goes through the near plate to the far one
	Expect [2]float64 // force of a press, N: least, greatest; 0 none
	Halt   float64    // N, 0 where a force is not what stops it
	Shapes []Shape    // that are turned

	// What hazards go by.
	Spindle   bool // a machine turns tool or work
	FromBelow bool // a hand under the chassis does it
	Pressed   bool // a mandrel goes through a bush
	Compound  bool
	Leaded    bool // its chips are of a metal that holds lead
}

// Setup is one clamping.
type Setup struct {
	Name     string   // "A", "B"; bench, press, lathe, oil, finish
	Words    say.Text // how it is held, which plate is up
	Plate    job.Side // uppermost, "" where neither is
	Mirrored bool     // drawn and read mirrored
	Bores    []string
	Clamping bool // counts as a set-up in the hours
}

// Step is one line of reassembly and proving, with a blank to fill in or a box
// to tick.
type Step struct {
	Text  say.Text
	Blank string // unit of the blank, "" for a tick box
	Twice bool   // filled in before the truck is stripped and again after
}

// Trouble is why a route cannot be laid out.
type Trouble struct {
	Level      finding.Level
	Rule       finding.Rule
	Where      string
	Have, Want float64
	Unit       string // "" mm
	Text, Fix  say.Text
}

// Route is the outcome.
type Route struct {
	Scrap      []string // tools that are tried in scrap before the truck is cut
	Operations []Operation
	Setups     []Setup
	Troubles   []Trouble
	LayOut     []say.Text // tools, gauges and bushes, each once
	Buy        []BuyLine
	Proving    []Step
}
