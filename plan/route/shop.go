package route

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
	Machine    Machine
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

// Rules are the defaults the route decides by, in mm unless they say otherwise.
type Rules struct {
	ReachDiameters, SeatChamfer, FlangeRoot, FlangeOver float64
	DrillOversize, HaltFactor, NoJigWear                float64

	ToolChange, Press, Sizing, Gauging, TurnBush float64 // minutes

	OpenStep              float64    // largest step on diameter when a hole is opened
	BoredStock, MillStock [2]float64 // on diameter, before the last tool: least, most
	BoredStep             float64    // of a hole bored before its last tool
	BarUnder, BarLeaves   float64    // room for a boring bar
	GuideUnder            [2]float64 // how much a guide is under its bore
	DummyUnder, RodUnder  float64    // how much a dummy axle and a test rod are
	Proud                 float64    // a bush longer than its plate by more is faced
	LineUp                float64    // agreement of test rods over the chassis
	ShankNear             float64    // how near a shank has to be to a limit
	OilShare, OilLoadDeg  float64
	BlockHeight           float64

	ShankUnder func(d float64) float64             // how much a drill's shank may be under its name
	ReamStock  func(d float64) (low, high float64) // how much a reamer should take
}
