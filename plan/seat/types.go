// Package seat searches every bush on the list and every way the shop can make
// its seat, with limits and not with nominals, and answers for each the
// questions a careful machinist asks: does it clear the wear, how tight will it
// be, does the wall stand it, does it hold, where does the bore end up, does
// the axle run, is there room.
//
// From job to paper:
//
//	FromJob, CastingOf  read bushes, tools, plate and rules of a job into plain
//	                    numbers in mm, MPa and N (fromjob, bushes, tools, metal, edges, rules)
//	Offer, Search       ask every candidate the questions, in order (judge, wall,
//	                    hold, close, finish, rest), rank those that pass and set
//	                    those that fell in order of what they miss (misses, gap)
//	                    for every mend of a hole (offer): a bush in the seat that is
//	                    there or in a new one (search), one turned for the hole as it
//	                    is (fitted), one in the old bush, a sleeve or a plug (within, part)
//	formulas.go         each formula once: the search decides by it, and
//	Explain             runs it again over what the ledger holds, for the Row that is printed
//	Findings            says what a seat gives cause to say
//	SidePlays           sees what the flanges of all seats do to each shaft
//
// It trusts the survey and the target, and writes into neither.
package seat

import (
	"rebush/fits/odds"
	"rebush/fits/press"
	"rebush/plan/habit"
)

// Hole is one bore as the search sees it.
type Hole struct {
	Name     string
	At       [2]float64 // middle of its seat, frame of the job
	Offset   [2]float64 // where the bore belongs from there: nought but of a hole that is not cut
	S        float64    // seat radius that just clears the worn outline about the target, and what else is hollow there
	There    float64    // diameter of a round hole that is there: the seat of an old bush or its outside, 0 none
	Fill     float64    // seat radius that touches unworn wall over 255 degrees, 0 not known
	UPlace   float64    // standard uncertainty of where the hole will be cut
	USurvey  float64    // standard uncertainty of the old centre
	Journal  float64    // diameter
	JournalU float64
	JournalA float64 // expansion of the shaft, 1e-6/K
	MustPass float64 // largest diameter that goes through on assembly, 0 none
	Plate    float64 // thickness
	Edge     float64 // target to the nearest free edge, +Inf where none is known
	EdgeName string
	Edge2    float64 // target to the nearest edge that lies another way, 0 none near
	BossR    float64 // radius of a round boss, 0 none
	BossE    float64 // its centre from the target
	RoomIn   float64 // diameter free inside the plate, for a bush that stands proud, 0 not said
	RoomOut  float64 // diameter free outside the plate, where a flange lies, 0 not said
	SideRoom float64 // length free between plate and hub on this side, NaN not known
	Load     float64 // N on this bearing
	RPM      float64 // 0 not said
	Live     bool    // current passes from the axle to the plate here
	TLow     float64 // temperature in use, degrees C
	THigh    float64
	Near     []Near // other bores and gears in the same plate
	Old      *OldSeat
	Cap      float64 // diameter of a seat under a cap, 0 none
	AsIs     Way     // the hole that a bush is turned for as it is; no name, none
	Plate2   Plate
	Finish   Finish     // the only finish that is wanted, "" any
	Follows  bool       // it was made by this job where it stands: a tool follows it, and clears no wear
	Bush     string     // code of the bush that is in it already, "" none
	Bore     [2]float64 // of that bush, least and most that it may be
}

// OldSeat is the seat of a factory bush that is out.
type OldSeat struct {
	Low, High float64 // diameter with the instrument's doubt
	Off       float64 // its middle from where the bore belongs
	Sound     bool
	Made      bool // by this job
}

// Near is a neighbour in the same plate.
type Near struct {
	Name string
	At   float64 // centre to centre from the target
	R    float64 // its radius
}

// Plate is the material that the seat is cut in.
type Plate struct {
	Name       string
	Casting    bool
	Zinc       bool
	EHigh      float64 // for stress
	ELow       float64 // for holding
	ERelaxed   float64 // after 100 days under tension above the creep figure, 0 none
	EYears     float64 // after 5 years, 0 none
	Creep      float64 // lasting tension above which it slackens, 0 none
	Nu         float64
	Limit      float64 // largest tension allowed in a casting; 0 for a wrought plate
	Yield      float64
	YieldKnown bool
	Alpha      float64 // 1e-6/K
}

// Metal is what a bush is made of.
type Metal struct {
	Name    string
	Porous  bool
	Plastic bool
	Leaded  bool
	EHigh   float64
	ELow    float64
	Nu      float64
	Yield   float64 // low
	YieldHi float64
	Alpha   float64
	PMax    float64 // MPa, 0 not known
	VMax    float64 // m/s
	PVWarn  float64 // MPa m/s
	PVMax   float64
}

// Bush is one entry of the list with its limits.
type Bush struct {
	Code          string
	Index         int
	ODLow, ODHigh float64
	BLow, BHigh   float64
	Length        float64 // with the flange
	FlangeOD      float64 // 0 plain
	FlangeT       float64
	Runout        float64
	Off           float64 // middle of the bore from that of the outside: of a bush turned eccentric
	Metal         Metal
	Price         float64
	Priced        bool
	OnHand        int // -1 not said
	Turned        bool
	ToBuy         bool
	Source        string // where the sizes of a bush to be bought come from
}

// Way is one tool that makes a seat.
type Way struct {
	Kind      Kind
	Name      string
	Size      float64
	Low, High float64 // seat limits; of a boring head: the sizes it reaches
	Own       float64 // of a reamer the middle of its own limits, 0 that of Low and High
	Tool      string  // of a reamer its name and class, as the shop's record has it: "5 mm H7"
	Index     int     // in the shop's list
}

// Shop is what the search needs of the shop.
type Shop struct {
	Ways         []Way
	Mandrels     []float64 // rising
	BoreReamers  []Way     // reamers that could size a bore
	BoringFrom   float64   // 0: no boring head
	BoringTo     float64
	Lathe        bool
	Compound     bool
	FrictionLow  float64
	FrictionHigh float64
	Habits       habit.Habits // what its tools really do
}

// Part is what stands in the plate round a bush: the filling of a plug, or the
// sleeve of a bush in a bush. Lengths in mm, in the frame of the job.
type Part struct {
	Mend              Mend       // Plug or BushInABush
	Stays             bool       // it is the old bush, which stays in the plate: nothing is cut or pressed for it
	At                [2]float64 // middle of its hole
	Way               Way        // tool that makes its hole
	SeatLow, SeatHigh float64    // limits of its hole, diameter
	ODLow, ODHigh     float64    // limits of its outside
	Length            float64
	Metal             Metal
	HeldBy            Hold
	PressN            [2]float64 // force that its press takes, least and most
	PressMPa          float64    // largest pressure that its own press makes in its hole
	CleanUp           float64    // radius of its hole less what the wear needs
	Left              float64    // metal left outside its hole, +Inf where no edge is near
	Web               float64    // of the part between its outside and the seat of the bush, at the thinnest; below 0 the seat cuts through its rim
	Hole              *Hole      // its hole as the search saw it
	Second            Second     // what holds it beside its press
	Chance            float64    // that its hole clears and that it holds

	through bool    // the seat is to cut through its rim
	factor  float64 // largest tension in the plate for each MPa in its hole: Factor
}

// Factor is the largest tension in the plate for each MPa that presses in the hole
// of the part, at the hole or at the edge.
func (p *Part) Factor() float64 { return p.factor }

// Through says that the seat of the bush cuts through the rim of the part.
func (p *Part) Through() bool { return p.through }

// Answer is one candidate judged: a bush with a way to make its seat.
type Answer struct {
	Bush     Bush // with the sizes chosen for a turned bush
	Way      Way
	Mend     Mend
	Part     *Part      // what stands in the plate round the bush, nil nothing
	SeatAt   [2]float64 // middle of the seat, frame of the job
	Offset   [2]float64 // middle of the bore from the middle of the seat: of a bush turned eccentric
	Feasible bool
	Fail     Fail   // of those it fails, the question whose answer is farthest from yes
	Fails    []Fail // every question that it fails, in their order

	SeatLow, SeatHigh  float64    // diameters: what the way leaves, as far as it is accepted
	Leaves             [2]float64 // limits of what the way leaves
	Presses            [2]float64 // least and most interference that narrows what is accepted of it, NaN where nothing does
	Slight             Fail       // what its limits miss by so little that its chance decides; noFail: nothing
	CleanUp            float64    // seat radius less what the wear needs
	ULow, UHigh        float64    // diametral interference, mm; negative is clearance
	WindowLow, WinHigh float64    // what the hold and the wall allow
	Ligament           float64
	Left               float64 // of the least interference after smoothing
	PLow, PHigh        float64 // lasting at ULow, fresh at UHigh
	Peak               float64 // largest tension in the plate
	PeakLimit          float64
	Force              [2]float64 // holding at ULow with low friction; pressing at UHigh with high friction
	PressIn            float64    // least force to press it in: fresh, at ULow with low friction
	Torque             [2]float64
	Closure            [2]float64
	Closed             [2]float64 // bore after pressing
	Chamfer            float64    // of the seat, where the bush goes in
	Contact            float64    // length of seat in contact
	HeldBy             Hold
	Second             Second // beside the press, 0 none
	Filled             bool   // part of the worn wall stays and is filled with the compound
	MandrelIn          bool   // pressed with a mandrel standing in the bore: the bush cannot give way
	Corner             bool   // two edges near: the stresses are not those of one
	NearHole           string // another hole near: the same
	Slackens           bool   // the press relaxes over the years
	OverYield          bool   // a wrought plate flows at the rim
	Unproven           bool   // holding of a porous bush
	Finish             Finish
	FinishTool         string
	FinishSizes        []float64  // mandrels in order, or the one tool
	Bore               [2]float64 // limits of the finished bore
	Expected           [2]float64 // where it will lie
	RunCold, RunHot    float64    // least running clearance at the cold and the hot end of use, mm; NaN not known
	WarmAt, WarmShare  float64    // the end of use that is worse, degrees C; closure for each bit of interference
	WarmRules          bool       // that end sets the least bore
	LooseAt            float64    // degrees C, NaN never
	PV                 float64    // NaN not known
	PVHigh             bool       // above the warning row
	Proud              float64    // body longer than the plate, before facing
	Short              bool       // turned plain for a seat that wants a shoulder: there is no room for one
	MustFace           bool       // there is no room inside to leave it proud
	Bearing            float64    // length that the axle runs in
	SideUse            float64    // length taken outside the plate
	Chance             float64
	Odds               odds.Seat // what it rests on, and what the trials draw from
	USet               float64   // standard uncertainty of the bore's place from how an eccentric bush is turned and set, mm per axis
	Seen               *Hole     // the hole as this answer saw it: about its seat, with what its plate then is
	Wall               press.Wall

	made    [2]float64 // what the finishing tool leaves, whatever the bore was
	seats   [2]float64 // limits of a seat that would do, where it fell
	seatsOK bool
	thin    bool // a turned bush whose wall is under the rule

	// The mechanics behind the figures, for explaining them.
	Stress, Hold press.Seat
	ClosureAt    [2]press.Seat
}
