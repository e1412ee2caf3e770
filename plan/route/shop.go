package route

// Tool is a drill, end mill or reamer of the shop.
type Tool struct {
	Name    string
	Size    float64
	Reach   float64 // 0 not said
	Shank   float64 // 0 not said
	Assumed bool    // its reach is not given, and that of the usual short kind stands in
	For     float64 // bought to go before the reamer of this size
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
	ReachDiameters float64 `rule:"reach_diameters"` // how far a tool reaches where nobody says
	SeatChamfer    float64 `rule:"seat_chamfer_mm"`
	FlangeRoot     float64 `rule:"flange_root_mm"`
	FlangeOver     float64 `rule:"flange_chamfer_over_root_mm"`
	DrillOversize  float64 `rule:"drill_oversize_mm"`
	HaltFactor     float64 `rule:"press_halt_factor"`
	NoJigWear      float64 `rule:"no_jig_wear_mm"`
	OpenStep       float64 `rule:"open_step_mm"`   // largest step on diameter when a hole is opened
	BoredLeast     float64 `rule:"bored_stock_mm"` // left on diameter for a boring tool that comes last
	BoredMost      float64 `rule:"bored_stock_mm,high"`
	MilledLeast    float64 `rule:"milled_stock_mm"` // likewise for an end mill on size
	MilledMost     float64 `rule:"milled_stock_mm,high"`
	BoredStep      float64 `rule:"bored_step_mm"`  // of a hole bored before its last tool
	BarUnder       float64 `rule:"bar_under_mm"`   // room for a boring bar to go in
	BarLeaves      float64 `rule:"bar_leaves_mm"`  // and for it to cut
	TipRoom        float64 `rule:"tip_room_mm"`    // of a turning bar in a near hole, on the radius
	GuideLeast     float64 `rule:"guide_under_mm"` // how much a guide is under its bore
	GuideMost      float64 `rule:"guide_under_mm,high"`
	DummyUnder     float64 `rule:"dummy_under_mm"` // how much a dummy axle is
	RodUnder       float64 `rule:"rod_under_mm"`   // and a test rod
	LineUp         float64 `rule:"line_up_mm"`     // agreement of test rods over the chassis
	Proud          float64 `rule:"proud_mm"`       // a bush longer than its plate by more is faced
	ShankNear      float64 `rule:"shank_near_mm"`  // how near a shank has to be to a limit
	OilShare       float64 `rule:"oil_drill_share"`
	OilLoadDeg     float64 `rule:"oil_load_deg"`
	BlockHeight    float64 `rule:"block_height_mm"`
	PlugStep       float64 `rule:"plug_step_mm"` // of plug gauges to be bought
	PlugStepInch   float64 `rule:"plug_step_mm,high"`
	GaugeOwn       float64 `rule:"gauge_seat_um,mm"`    // how far a gauge may stand off a limit of a seat and still decide
	JigDiameters   float64 `rule:"jig_plate_diameters"` // thickness of a jig plate, in diameters of its largest tool
	SlipLeast      float64 `rule:"slip_bush_over_mm"`   // how much a slip bush is over its tool
	SlipMost       float64 `rule:"slip_bush_over_mm,high"`
	JigHole        float64 `rule:"hole_u_jig_mm"` // how true a hole of a jig plate stands
	SlipWall       float64 `rule:"slip_bush_wall_mm"`
	StakeShare     float64 `rule:"stake_share"`       // of what a casting bears: beside less, a rim is staked
	PassOver       float64 `rule:"pass_um,mm"`        // room for what must pass a bore
	RodClear       float64 `rule:"rod_clear_mm"`      // of a stepped rod in a hole that is not cut yet
	SpotMost       float64 `rule:"spot_mm"`           // across, of a spot in solid metal
	RodStands      float64 `rule:"rod_stands_mm"`     // how far it stands out
	EccentricFrom  float64 `rule:"eccentric_from_mm"` // offset of a bush from which it is turned eccentric
	PartProud      float64 `rule:"part_proud_mm"`     // of a plug or a sleeve, each side, before it is faced

	ToolChange float64 `rule:"minutes_tool_change"` // minutes, as the next eight
	Press      float64 `rule:"minutes_press"`
	Sizing     float64 `rule:"minutes_sizing"`
	Gauging    float64 `rule:"minutes_gauging"`
	TurnBush   float64 `rule:"minutes_turn_bush"`
	Hold       float64 `rule:"minutes_hold"`
	JigPlate   float64 `rule:"minutes_jig_plate"`
	SlipBush   float64 `rule:"minutes_slip_bush"`
	MakeRod    float64 `rule:"minutes_make_rod"`

	ShankUnder func(d float64) float64                         // how much a drill's shank may be under its name
	ReamStock  func(d float64) (low, high float64)             // how much a reamer should take
	Slide      func(d float64) (hole, in [2]float64)           // limits of a hole and of what slides in it by hand
	Overrun    float64                                         // of a tool that goes through
	Beyond     func(d float64) float64                         // of a drill: its overrun and its point
	Stub       func(d float64) (flute, shank float64, ok bool) // of an end mill of the usual short kind
	Packing    func(offset, bar float64) float64               // under one of three jaws for an offset, NaN none
}
