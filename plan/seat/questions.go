package seat

import "rebush/fits/say"

// Question is one of those that every candidate is asked, in this order. Its
// number is that of METHODS and of the reasons; the zero Question is none.
type Question int

// The questions.
const (
	CleansUp       Question = iota + 1 // the seat takes in the whole worn outline
	FitsTight                          // how tight, over the limits of bush and seat
	WallStands                         // the metal left outside, and what the press does to it
	HoldsBush                          // the bush stays where it is
	BoreCloses                         // where the bore lies after pressing; refuses nothing
	ShaftPasses                        // what must pass goes through a bore that still runs
	BoreFinishes                       // how the bore gets to size
	LongEnough                         // for its diameter, and with room for what stands outside
	BearsLoad                          // pressure, speed and their product
	CarriesCurrent                     // on the live side
	HasRoom                            // for the flange, and beside the neighbours
	lastQuestion
)

// questions say what a candidate that fell at one of them wants: for whoever
// plans the job, what would let the nearest bush be seated; for an owner, why
// the nearest bearing cannot be fitted.
var questions = [lastQuestion]struct{ wouldSeat, owner say.Text }{
	CleansUp: {"a larger bush, or plug the hole and bore it anew",
		"the hole is worn wider than any bearing we have"},
	FitsTight: {"a reamer or a boring head that makes the seat for this bush, or a bush turned to suit",
		"no bearing we have goes with a hole that we can make"},
	WallStands: {"a bush with a smaller outside, a clean solid one set in compound, or another truck",
		"no bearing we have fits the metal that is left"},
	HoldsBush: {"a flanged or a longer bush, or retaining compound on a clean solid one",
		"no bearing we have would stay where it is put"},
	ShaftPasses: {"make what has to pass smaller, or fit it after the shaft is in",
		"no bearing we have lets the axle in and still runs true"},
	BoreFinishes: {"a bush with a bore nearer the journal, or a mandrel or a reamer of the finished size",
		"no bearing we have can be brought to the size of the axle"},
	LongEnough: {"a flanged bush, a bush with a smaller outside, or fewer washers",
		"no bearing we have fits the metal that is left"},
	BearsLoad: {"a longer bush, or a material that bears more",
		"no bearing we have bears the load"},
	CarriesCurrent: {"a metal bush that is pressed in",
		"no bearing we have carries the current that the wheels collect"},
	HasRoom: {"a bush with a smaller flange or a smaller outside",
		"no bearing we have fits beside what stands next to it"},
}

// WouldSeat is what would let a bush be seated that fell at a question.
func (q Question) WouldSeat() say.Text { return questions[q].wouldSeat }

// Owner says to an owner why the nearest bearing cannot be fitted.
func (q Question) Owner() say.Text { return questions[q].owner }
