// Package route lays out the operations in the order in which they can be
// carried out: what is clamped how, which tool goes where, what is gauged
// before what cannot be undone, where the job may rest.
//
// It decides the order and the tools. Speeds and forces it asks of a Cutter;
// places and sizes come settled from target and seat.
package route

import (
	"rebush/fits/finding"
	"rebush/fits/say"
)

// Bore is one hole to be dealt with, in job order.
type Bore struct {
	Name, Shaft string
	Side        string // left | right
	Plate       float64
	At          [2]float64 // target
	Old         [2]float64 // old centre
	Repaired    bool       // Old is the middle of an earlier repair, off the old centre
	Found       float64    // least diameter as found, 0 not known
	S, Allow    float64    // radius that just clears the wear; and what a seat adds to it
	Wear        float64
	Ligament    float64 // metal left outside the seat
	Way         string  // reamer | boring head | end mill | old seat | cap
	WayName     string
	WaySize     float64
	Seat        [2]float64
	Reach       float64 // of the seat's tool, 0 not said
	Shank       float64 // of the seat's tool, 0 not said
	Bush        string
	BushMade    bool // has to be turned
	BushSizes   say.Text
	Bushed      bool       // an old bush is still in
	BushMetal   string     // as the registry of materials names it
	OD          [2]float64 // limits of the bush's outside
	U           [2]float64 // outside less seat
	Length      float64
	FlangeOD    float64
	Proud       float64
	Porous      bool
	Leaded      bool
	HeldBy      string // press | compound | cap
	Second      string
	PressN      [2]float64 // expected: least, greatest
	Finish      string
	FinishTool  string
	FinishSizes []float64
	MandrelIn   bool       // the last mandrel stands in the bore while the bush is pressed
	Filled      bool       // part of the worn wall stays and compound fills it
	Limits      [2]float64 // of the finished bore
	Expected    [2]float64
	Closed      [2]float64 // bore after pressing, before it is sized
	Journal     float64
	LoadDeg     float64  // where the axle is pressed to, NaN not known
	IfLarge     say.Text // what to do where the seat comes out too large
	Oil         *Oil
}

// Oil is an oil hole to be cleared through the new bush.
type Oil struct{ AtDeg, Diameter float64 }

// Tool is a drill, end mill or reamer of the shop.
type Tool struct {
	Name  string
	Size  float64
	Reach float64 // 0 not said
	Shank float64 // 0 not said
	For   float64 // bought to go before the reamer of this size
}

// Shop is what the route needs of the shop.
type Shop struct {
	Machine    string // mill | drill press | lathe | hand
	Readout    bool
	Jig        bool
	ApproachX  string // rising | falling
	ApproachY  string
	Drills     []Tool // rising
	EndMills   []Tool // rising
	Lathe      bool
	PressN     float64 // 0 not known
	MaxDrill   float64 // 0 not said
	BoringFrom float64 // 0 no boring head
	BoringTo   float64
	Pins       *Pins
}

// Pins is the set of pin gauges, stamped in mm or in inches.
type Pins struct {
	From, To, Step float64
	Inch           bool
}

// Job is what the route needs of the job.
type Job struct {
	Width         float64 // outside to outside, 0 not known
	Length        float64 // of the outline, for mirrored readings; 0 not known
	Plate         string  // words for the material
	Casting       bool
	Unsure        bool // nobody has said that it is sound
	Soft          bool // zinc, brass, light metal: lips are dubbed
	Magnesium     bool
	Leaded        bool
	Bores         []Bore
	Shafts        []Shaft
	Marks         []Mark   // known places for a second datum
	Features      []string // unworn holes that can carry jig pins
	Gears         []GearCheck
	Current       bool
	Rods          bool
	DatumWords    string
	SidePlayWords []say.Text
}

// Shaft is one axle as it is put together.
type Shaft struct {
	Name       string
	Journal    [2]float64 // left, right
	MustPass   [2]float64 // largest that goes through on assembly, 0 none
	Insulated  string     // left | right | ""
	Gear       bool       // a gear sits between the plates
	Wheels     bool       // it is known to carry wheels
	BackToBack float64    // 0 not said
	HubToHub   float64    // between what stands on it outside the plates, 0 not said
}

// Mark is a place that can be measured from, in the frame of the job.
type Mark struct {
	Name, Side string
	At         [2]float64
}

// GearCheck is a mesh to be tried before the bores are opened.
type GearCheck struct {
	Name, Shaft string
	Backlash    [2]float64
}

// Query asks for the cutting figures of one operation.
type Query struct {
	Operation string  // drill | ream | bore | plunge | end mill | countersink | spot
	Dia       float64 // of the tool
	Through   float64 // thickness
	ThinWall  bool
	Head      string // boring head | faceplate | ""
	Material  string // "" the plate; else the bush's, as the registry names it
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

// Rules are the defaults the route decides by.
type Rules struct {
	ReachDiameters, SeatChamfer, FlangeRoot, FlangeOver float64
	DrillOversize, HaltFactor, NoJigWear                float64
	ToolChange, Press, Sizing, Gauging, TurnBush        float64
	OpenStep                                            float64    // largest step on diameter when a hole is opened
	GuideUnder                                          [2]float64 // how much a guide is under its bore
	LineUp                                              float64    // agreement of test rods over the chassis
	ShankUnder                                          func(d float64) float64
	ReamStock                                           func(d float64, hand bool) (low, high float64, source string)
}

// Operation is one block of the sheet.
type Operation struct {
	Number     int
	Kind       Kind
	Setup      string
	Bore       string
	Do         say.Text
	Tool       say.Text
	ToolMM     float64 // NaN none
	At         *[2]float64
	Approach   say.Text
	Cut        *Cut
	Depth      float64 // NaN none
	Limits     *[2]float64
	OfSeat     bool // the limits are those of a seat, else of a bore or a bush
	Gauge      say.Text
	Go, NoGo   say.Text
	Lubricant  say.Text
	Thrust     float64 // NaN none
	Backing    say.Text
	Holding    say.Text
	Minutes    float64 // NaN none
	GaugeFirst say.Text
	MayWait    bool
	Note       say.Text
	HoleMM     float64

	// What hazards go by.
	Spindle   bool // a machine turns tool or work
	FromBelow bool // a hand under the chassis does it
	Pressed   bool // a mandrel goes through a bush
	Compound  bool
	Leaded    bool // its chips are of a metal that holds lead
}

// Setup is one clamping.
type Setup struct {
	Name, Up string
	Words    say.Text
	Mirrored bool
	Bores    []string
	Clamping bool // counts as a set-up in the hours
}

// Trouble is why a route cannot be laid out.
type Trouble struct {
	Level      finding.Level
	Rule       finding.Rule
	Where      string
	Have, Want float64 // mm
	Text, Fix  say.Text
}

// Route is the outcome.
type Route struct {
	Operations []Operation
	Setups     []Setup
	Troubles   []Trouble
	LayOut     []say.Text // tools, gauges and bushes, each once
	Buy        []BuyLine
	Proving    []Step
}

// BuyLine is one thing to buy before starting, and the holes that want it.
type BuyLine struct {
	What say.Text
	Why  string
}

// Step is one line of reassembly and proving, with a blank to fill in or a box
// to tick.
type Step struct {
	Text  say.Text
	Blank string // unit of the blank, "" for a tick box
	Twice bool   // filled in before the truck is stripped and again after
}
