// Package verdict sets the ways that a job can go side by side, in hours, money
// and chance, and picks one.
//
// A way that cuts comes as Work: the plan of it, made by the same chain as any
// other, with its operations counted, its trials run and its stops known. What
// cuts nothing is weighed here. FromJob gathers a Case from the job, the rules
// in force and what the plans found (Facts: plain numbers); Decide weighs it;
// First says what to measure or to buy where that would change the choice; Row
// is what is printed; Explain writes hours and cost into the ledger by weighing
// again.
//
// It knows no bush list and no gears, and it never invents a price: what is not
// given is said and not counted.
package verdict

import "rebush/fits/say"

// Case is everything a verdict needs.
type Case struct {
	Condition    string // sound | cracked | swollen | unknown | magnesium: of a metal that must not be cut
	KeepOriginal bool   // swap is not wanted
	Binds        bool
	Noisy        bool
	Rubs         bool

	Bores     []Bore
	Axles     []Axle
	Meshes    []Mesh
	Works     []Work   // the ways that cut, each as it was planned
	Mend      []Fake   // faults that were found and pass for a worn hole
	Unchecked []string // things that look like a worn hole and were not looked at: "rims", "hubs", ...
	Asked     bool     // whether it binds, is noisy and rubs is all said

	// Shimming cures a side play out of limits or a gear off its middle, and
	// nothing else. Empty: neither is the matter.
	ShimFor     say.Text // "side play of front axle, 0.90 mm"
	ShimMinutes float64

	Rate       *float64 // money per hour; nil: the verdict is in hours only
	Currency   string   // "USD", printed as given
	SetupHours float64  // per clamping
	StripHours float64  // strip and rebuild

	Other *Offer // another truck, nil where none is offered
	Value *float64

	Limits Limits

	// First are the things that may come before a choice, asked for where a swap
	// could be it; nil none.
	First func() []Before

	list   []option // options(), once they were asked for
	shimOn string   // the axle that ShimFor speaks of
}

func (c *Case) options() []option {
	if c.list == nil {
		c.list = options()
	}
	return c.list
}

// Limits are the defaults that decide every case.
type Limits struct {
	LeaveMM       float64 `rule:"play_leave_mm"`      // play up to which a bearing that meshes right is left alone
	LookAgainMM   float64 `rule:"play_look_again_mm"` // and up to which it is looked at again
	Tie           float64 `rule:"verdict_tie"`        // ways within this share of the cheapest are decided by metal
	ReworkMinutes float64 `rule:"minutes_rework"`
	SpoiltMinutes float64 `rule:"minutes_spoilt_bush"`
	SecondHand    float64 `rule:"second_hand_chance"` // that a second-hand truck is sound
	AdviseLeast   float64 `rule:"advise_least"`       // least chance of coming right with which a repair is advised
	AdviseLost    float64 `rule:"advise_lost"`        // most chance of a lost truck
}

// Bore is one bore as it was found.
type Bore struct {
	Name   string
	Shaft  string   // its axle: both bores of one are done together; "" for none
	PlayMM float64  // on diameter, as found
	Fixed  bool     // the job says: leave it
	Wrong  say.Text // why it has to be done whatever its play, "" where nothing: "the old bush of front axle.left is out"
}

// Work is a way that machines the truck, as its own plan has it.
type Work struct {
	Name      Name
	OK        bool     // free of stops
	WhyNot    say.Text // what stops it, or why there is no such plan; "" where it is ok
	Owner     say.Text // the same for an owner, without figures; "" where WhyNot does
	Minutes   float64  // of all its operations and of the aids that are made for it
	Clampings int
	Parts     []Part    // what goes in and what has to be bought
	Mended    []BoreWay // what is done at each hole that is touched
	MetalMM   float64   // metal taken off on radius, all bores
	Trials    *Trials   // nil where none were run
	Asks      say.Text  // what has to be known before it can be judged, "" nothing
	Unknown   say.Text  // the same for an owner
	Near      bool      // of the ways that are stopped, the one that comes nearest
}

// Part is a bush that goes in, or a thing that has to be bought.
type Part struct {
	Name  say.Text
	Price *float64 // nil not given
	Bush  bool
}

// Fake is a fault that passes for a worn hole and is none.
type Fake struct {
	Words string // "a rim is loose on its insulator or hub"
	Why   string // "it feels just like a worn hole"
}

// Axle is one axle of the job.
type Axle struct {
	Name    string
	State   string // good | ridged | pitted | out of round | bent | ""
	HasNew  bool   // a new one can be had or made
	Price   *float64
	Minutes float64
}

// bad says whether new bearings on this axle would be wasted.
func (a Axle) bad() bool { return Wasted(a.State) }

// Wasted says whether new bearings on a journal in such a state would be wasted.
func Wasted(state string) bool { return state == "ridged" || state == "pitted" || state == "bent" }

// Mesh says whether a pair runs inside its window as found.
type Mesh struct {
	Name  string
	Right bool
	Known bool     // its gears were measured: Right is more than a guess
	Words say.Text // what is wrong with it, "0.10 mm too close"
	OffMM float64  // by how much it stands outside what is wanted
}

// Fault is one way for the work to go wrong.
type Fault struct {
	Name    string  // "rework"
	Chance  float64 // share of the trials
	Minutes float64
	Bush    *float64 // money beside the time; nil none
	Lost    bool     // the truck is lost; Minutes and Bush do not count
}

// Offer is another truck.
type Offer struct {
	Price      float64
	Hours      float64
	SecondHand bool
	Chance     *float64 // that it is sound; nil: by rule
}
