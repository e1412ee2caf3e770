// Package route lays out the operations in the order in which they can be
// carried out: what is clamped how, which tool goes where, what is gauged
// before what cannot be undone, where the job may rest.
//
// It decides the order and the tools. Speeds and forces it asks of a Cutter;
// places and sizes come settled from target and seat.
package route

// Bore is one hole to be dealt with, in job order.
type Bore struct {
	Name, Shaft string
	Side        string // left | right
	Plate       float64
	At          [2]float64 // target
	S, Allow    float64    // radius that just clears the wear; and what a seat adds to it
	Wear        float64
	Ligament    float64 // metal left outside the seat
	Way         string  // reamer | boring head | end mill | old seat | strap
	WayName     string
	WaySize     float64
	Seat        [2]float64
	Reach       float64 // of the seat's tool, 0 not said
	Shank       float64 // of the seat's tool, 0 not said
	Bush        string
	BushMade    bool // has to be turned
	BushSizes   string
	Bushed      bool // an old bush is still in
	OD          [2]float64
	Length      float64
	FlangeOD    float64
	Proud       float64
	Porous      bool
	Leaded      bool
	HeldBy      string // press | compound | strap
	Second      string
	PressN      [2]float64 // expected: least, greatest
	Finish      string
	FinishTool  string
	FinishSizes []float64
	Limits      [2]float64 // of the finished bore
	Expected    [2]float64
	Journal     float64
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
	Machine       string // mill | drill press | lathe | hand
	Readout       bool
	Jig           bool
	ApproachX     string // rising | falling
	ApproachY     string
	Drills        []Tool // rising
	EndMills      []Tool // rising
	Lathe         bool
	PressN        float64
	MaxDrill      float64 // 0 not said
	Pins          *Pins
	FaceplateHead string
}

// Pins is the set of pin gauges.
type Pins struct{ From, To, Step float64 }

// Job is what the route needs of the job.
type Job struct {
	Width         float64 // outside to outside, 0 not known
	Length        float64 // of the outline, for mirrored readings; 0 not known
	Plate         string  // words for the material
	Casting       bool
	Bores         []Bore
	Features      []string // unworn holes that can carry jig pins
	Wheels        bool
	Gears         []GearCheck
	Insulated     []string // "front axle: right"
	RunBefore     bool
	Current       bool
	Rods          bool
	DatumWords    string
	SidePlayWords []string
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
	Material  string // "" the plate; else the bush's
}

// Cut is the answer.
type Cut struct {
	RPM, Ideal float64 // RPM 0: turn by hand
	ByHand     bool
	AtTop      bool
	Feed       float64
	FeedWords  string
	Depth      float64
	Thrust     float64
	Minutes    float64 // cutting only
	Lubricant  string
	Note       string
}

// Cutter gives the cutting figures; it is feeds/cutting behind a plain door.
type Cutter func(Query) (Cut, error)

// Rules are the defaults the route decides by.
type Rules struct {
	ReachDiameters, SeatChamfer, FlangeRoot, FlangeOver float64
	DrillOversize, HaltFactor, NoJigWear                float64
	ToolChange, Press, Sizing, Gauging, TurnBush        float64
	ReamStock                                           func(d float64, hand bool) (low, high float64, source string)
}

// Operation is one block of the sheet.
type Operation struct {
	Number     int
	Kind       string
	Setup      string
	Bore       string
	Do         string
	Tool       string
	ToolMM     float64 // NaN none
	At         *[2]float64
	Approach   string
	Cut        *Cut
	Depth      float64 // NaN none
	Limits     *[2]float64
	Gauge      string
	Go, NoGo   string
	Lubricant  string
	Thrust     float64 // NaN none
	Backing    string
	Holding    string
	Minutes    float64 // NaN none
	GaugeFirst string
	MayWait    bool
	Note       string
	HoleMM     float64
}

// Setup is one clamping.
type Setup struct {
	Name, Words, Up string
	Mirrored        bool
	Bores           []string
	Clamping        bool // counts as a set-up in the hours
}

// Trouble is why a route cannot be laid out.
type Trouble struct {
	Rule, Where, Text, Fix string
	Have, Want             float64
	Stop                   bool
}

// Route is the outcome.
type Route struct {
	Operations []Operation
	Setups     []Setup
	Troubles   []Trouble
	LayOut     []string
	Buy        [][2]string
	Proving    [][2]string // text, unit of the blank ("" a tick box)
}
