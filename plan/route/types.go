// Package route lays out the operations in the order in which they can be
// carried out: what is clamped how, which tool goes where, what is gauged
// before what cannot be undone, where the job may rest.
//
// It decides the order and the tools. Places and sizes come settled from target
// and seat (fromjob.go reads them, with job and shop, into the plain values of
// types.go and shop.go); cutting figures it asks of a Cutter, which is the
// Handbook of handbook.go. Make in route.go goes through the work from the first
// look to the last check, a file for each part of it. An Explainer puts the
// outcome into the ledger, by the functions that decided it, and into the rows
// that are printed; Hazards say what can hurt beside each of them.
package route

import (
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/seat"
)

// Bore is one hole to be dealt with, in job order.
type Bore struct {
	Name, Shaft string
	Side        job.Side
	Plate       float64
	At          [2]float64 // target
	Old         [2]float64 // old centre
	Repaired    bool       // Old is the middle of an earlier repair, off the old centre
	Made        bool       // Old is the middle of a seat that this job has made
	Follows     bool       // and it stands in its place
	In          bool       // its bush is in already: its bore is left to be sized
	Out         string     // code of a bush of this job that has to come out again, "" none
	Found       float64    // least diameter as found, 0 not known
	S, Allow    float64    // radius that just clears the wear; and what a seat adds to it
	Wear        float64
	Ligament    float64 // metal left outside the seat
	Way         seat.Kind
	WayName     string
	WaySize     float64
	Seat        [2]float64
	UPlace      float64 // standard uncertainty of where its seat will be cut
	AsLeft      bool    // its ends are those that the tool leaves, else limits
	Reach       float64 // of the seat's tool, 0 not said
	Shank       float64 // of the seat's tool, 0 not said
	Bush        string
	BushMade    bool // has to be turned
	BushToBuy   bool
	BushPrice   *float64 // of one, nil not known
	BushSizes   say.Text
	BushShape   *Shape
	Bushed      bool       // an old bush is still in
	BushMetal   string     // as the registry of materials names it
	OD          [2]float64 // limits of the bush's outside
	U           [2]float64 // outside less seat
	Length      float64
	FlangeOD    float64
	Proud       float64
	Porous      bool
	Leaded      bool
	HeldBy      seat.Hold
	Second      seat.Second // beside it, 0 none
	PressN      [2]float64  // expected: least, greatest
	Tension     [2]float64  // MPa, beside the seat of a casting: reached, allowed; 0 where none is worked out
	Finish      seat.Finish
	FinishTool  string
	FinishSizes []float64
	MandrelIn   bool       // the last mandrel stands in the bore while the bush is pressed
	Filled      bool       // part of the worn wall stays and compound fills it
	Limits      [2]float64 // of the finished bore
	Expected    [2]float64
	Closed      [2]float64 // bore after pressing, before it is sized
	Journal     float64
	LoadDeg     float64  // where the axle is pressed to, NaN not known
	LoadTo      say.Text // the same in words, "" not known
	IfLarge     say.Text // what to do where the seat comes out too large
	Oil         *Oil
	Mend        seat.Mend
	Part        *seat.Part // what stands in the plate round the bush, nil nothing
	PartReach   float64    // of the tool that makes the hole of the part, 0 not said
	PartShank   float64
	SeatAt      [2]float64 // middle of the seat; At is that of the finished bore
	SeatUnknown bool       // the old bush is in, and nobody knows what its seat measures
	Solid       bool       // the seat is started in solid metal, of a plug
	ForPart     bool       // it is the hole of a plug or a sleeve, not of a bush
	Metal       string     // that the seat is cut in, "" the plate
}

// Oil is an oil hole to be cleared through the new bush.
type Oil struct{ AtDeg, Diameter float64 }

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
	Done          []Bore // finished already: they are lined up and put together with the others
	Shafts        []Shaft
	Marks         []Mark   // known places for a second datum
	Features      []string // unworn holes that can carry jig pins
	Gears         []GearCheck
	Again         []string // bores whose move is long against what is known: measured again before a cut
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
	Insulated  job.Side   // "" none
	Gear       bool       // a gear sits between the plates
	Wheels     bool       // it is known to carry wheels
	BackToBack float64    // 0 not said
	HubToHub   float64    // between what stands on it outside the plates, 0 not said
}

// Mark is a place that can be measured from, in the frame of the job.
type Mark struct {
	Name string
	Side job.Side
	At   [2]float64
	Dia  float64 // of a hole, 0 not known
	U    float64 // standard uncertainty of its place, 0 not known
}

// GearCheck is a mesh to be tried before the bores are opened.
type GearCheck struct {
	Name, Shaft string
	Backlash    [2]float64 // least and most, mm: the limits that decide
}

// window is the backlash rounded into its limits, in as many digits as tell its ends
// apart.
func (g GearCheck) window() say.Figure {
	places := 2
	if g.Backlash[1]-g.Backlash[0] < 0.03 {
		places = 3
	}
	return say.Limits(g.Backlash[0], g.Backlash[1], places)
}
