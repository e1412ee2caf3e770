// Package chance says how likely a plan is to come right: trials over every
// source of error of the plan, on plain numbers. It knows nothing of jobs,
// bushes or tables; whoever composes the plan fills a Model.
//
// Every source of error draws from a stream of its own, so that a changed
// source leaves the random numbers of all the others as they were and two
// plans are compared on the same luck.
package chance

// Model is everything a trial needs. Lengths in mm, interference in um,
// tension in MPa, angles in degrees. Standard uncertainties (U...) and
// half-widths are 0 or more; a 0 is a source without error.
type Model struct {
	Setups []Setup
	Shafts []Shaft
	Bores  []Bore
	Gears  []Gear
}

// Setup is one clamping; its error is shared by all bores cut in it.
type Setup struct {
	Name string  // "A"
	UMM  float64 // per axis
}

// Shaft is one shaft.
type Shaft struct {
	Name    string
	LoadDeg float64 // the way it is pressed in its bores
}

// Kind says what is done to a bore.
type Kind int

// The three kinds. A Cut bore gets a new seat at its target. An OldSeat keeps
// the sound seat of its old bush: a new bush goes in, nothing is cut, and its
// place is known as well as its survey. Leave is not touched.
const (
	Cut Kind = iota
	OldSeat
	Leave
)

// Finish says how the pressed bore gets its size.
type Finish int

// The finishes. Mandrel and Ream leave the bore where the pressed bush has it;
// BoreInPlace cuts it true to the spindle or in line with the other plate and
// so takes out the run-out of the bush. OwnAxle opens it until the very axle
// runs, which takes out the doubt about the journal.
const (
	AsDelivered Finish = iota
	Mandrel
	Ream
	BoreInPlace
	OwnAxle
)

// Bore is one bore and what is done to it.
type Bore struct {
	Name  string // "front axle.left"
	Shaft int    // index
	Right bool   // in the right plate
	Kind  Kind
	Setup int // index of the clamping it is cut in

	Survey   Survey
	SurveyBy string // instrument of the old centre, "inside calliper"
	TargetMM [2]float64
	UHoleMM  float64 // per axis
	USetMM   float64 // per axis, of the bore of an eccentric bush that is set in a seat that is there

	FillFails float64 // chance that a seat which leaves some of the worn wall does not reach the sound wall far enough round
	PartFails float64 // chance that the plug or sleeve round the bush does not take the wear in or does not hold

	Seat   SeatSize
	SeatBy string  // "5 mm reamer"; bores by one tool share what it does on the whole
	Slips  float64 // chance that the seat is spoilt by a slip
	Tried  bool    // its tool is tried in scrap before the truck is cut
	OD     Size    // outside of the bush
	Hole   Size    // bore of the bush before pressing

	RunoutMM   float64 // total run-out of bore to outside; eccentricity is half
	RunoutEven bool    // run-out is a limit: eccentricity even from 0 to half, else all of it

	PressUM [2]float64 // interference wanted, least and most
	EasesUM float64    // the least lies anywhere from so much less to that, by the friction that there is
	GaugeUM float64    // doubt of the gauge that stands between a seat too small and a press, standard
	Closure Closure

	Finish     Finish
	ToolMM     [2]float64 // size the finish gives; OwnAxle: clearance over the journal
	SizedUMM   float64    // and its normal error
	MaxOpenMM  float64    // most that a mandrel opens the bore, 0 no limit
	BoreMM     [2]float64 // limits of the finished bore; not looked at for OwnAxle
	RunningUM  [2]float64 // running clearance accepted, least and most
	JournalMM  float64
	UJournalMM float64
	JournalBy  string  // instrument, "micrometer"
	MustPassMM float64 // least bore that lets through what has to go through; 0 nothing

	Wall Wall

	NextBush    bool    // a larger bush could be had
	NextSeatMM  float64 // radius of its seat, mm; 0: turned to any size that is wanted
	Bond        bool    // a seat too large can be bonded
	Eccentric   bool    // an eccentric bush could put a misplaced bore right
	Replaceable bool    // a spoilt bush can be replaced by one of its kind
}

// Survey is where the old bore was and how it wore (plan/survey/METHODS.md 1): a
// circle of radius R about Centre joined with the journal of radius
// JournalR, displaced by D = clearance + wear towards TowardsDeg, over a fan
// of FanDeg to either side.
type Survey struct {
	Centre [2]float64
	Cov    [3]float64 // xx, xy, yy of the centre, mm^2
	// Cross is the covariance of this centre's error (rows) with that of the other
	// bore of its shaft (columns), mm^2: the same of both bores, turned over.
	Cross      [2][2]float64
	R          float64
	JournalR   float64
	D          float64
	UDepthMM   float64 // standard uncertainty of the wear depth
	TowardsDeg float64
	FanDeg     float64 // half-angle, below 90
}

// SeatSize is a diameter: even over Mid plus and minus Half; with what its tool
// does on the whole, standard, the same for all seats of a truck by that tool; with
// what it does from seat to seat. A press feels it larger by 0 to Lobes, evenly.
type SeatSize struct{ Mid, Half, ToolU, U, Lobes float64 }

// Size is a diameter even between limits, or one that was measured: Low equal
// to High with a normal error U.
type Size struct{ Low, High, U float64 }

// Closure is how the bore closes on pressing: Elastic per unit of
// interference until the bush flows, at an interference even between FlowUM
// limits (0, 0: it never flows), then a slope even between Slope limits.
type Closure struct {
	Elastic float64
	FlowUM  [2]float64
	Slope   [2]float64
}

// Wall is the metal beside the seat. EdgeDeg is the way to the nearest free
// edge. Zero values switch a check off.
type Wall struct {
	LeftMM       float64 // metal left to edge with the seat in its middle size on target
	NoneBelowMM  float64 // below this the wall is given up
	EdgeDeg      float64
	StressPerUM  float64 // greatest tension per um of interference
	StressLimit  float64 // tension at which the wall cracks
	StressU      float64 // its relative standard uncertainty
	NextLeftMM   float64 // the same metal with the next bush up; 0: not looked at
	StressCapMPa float64 // the most that a flowing bush can raise; 0 no cap
}

// Gear is one pair, straightened about its plan: a distance of centres that
// grows by Open . d when the wheel's shaft moves by d. It is right over a whole
// turn: the mean of it lies in the window, the tightest tooth, nearer by half the
// run-out of both gears, is not too near, and the loosest is not too far. With
// SpreadMM it is cut otherwise, shifted by one of them in each trial.
type Gear struct {
	Name        string
	On          int     // shaft of the wheel
	Station     float64 // 0 at the left bore, 1 at the right, beyond outside
	MateOn      int     // shaft of the mate, FixedMate where it is on none of the job
	MateStation float64
	Open        [2]float64 // unit vector
	CentreMM    float64    // with every bore on target and no running clearance
	WindowMM    [2]float64 // accepted, shaft under load
	TightMM     float64    // least for the tightest tooth of a turn; 0 not looked at
	BindMM      float64    // where that tooth binds; 0: as soon as it is too tight
	LooseMM     float64    // most for the loosest, by contact ratio; 0 not looked at
	PartMM      float64    // where that one has no other in contact beside it; 0: as soon as it is too loose
	RunoutMM    [2]float64 // total run-out of wheel and mate
	UGeomMM     float64    // doubt about the computed distances
	UMateMM     float64    // doubt about the place of a fixed mate
	SpreadMM    []float64  // equally likely shifts of all limits: of teeth that nobody measured; nil none
	Ties        []Tie      // by shift: what is known of the errors where it is that; nil nothing
	Placeless   bool       // of no known place: no bore moves it

	// How much nearer the tightest tooth comes per mm that the right bore stands
	// off the left one, along Open and square to it: the backlash that
	// plan/mesh/METHODS.md 4.5 takes off, as centre distance (face/(2 span), and
	// that over tan alpha). 0: lean costs nothing.
	LeanAlong, LeanAcross float64
}

// Tie is what is known of those errors of a distance that were there when the
// pair was seen to run: a part of them of variance s^2 has the mean s^2 Pull and
// the variance s^2 - s^4 Sure.
type Tie struct{ Pull, Sure float64 } // 1/mm, 1/mm^2

// FixedMate stands for a mate on none of the shafts.
const FixedMate = -1
