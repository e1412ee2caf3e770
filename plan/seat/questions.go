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
	LongEnough: {"a flanged bush or a bush with a smaller outside",
		"the plate is too thin for any bearing we have"},
	BearsLoad: {"a longer bush, or a material that bears more",
		"no bearing we have bears the load"},
	CarriesCurrent: {"a metal bush that is pressed in",
		"no bearing we have carries the current that the wheels collect"},
	HasRoom: {"a bush with a smaller flange or a smaller outside",
		"no bearing we have fits beside what stands next to it"},
}

// others are the words of a reason that wants something else than its question
// usually does.
var others = map[what]struct{ wouldSeat, owner say.Text }{
	noTool: {"a reamer or a boring head that makes this seat, or a bush turned for a seat that can be made",
		"we have no tool that makes a hole for such a bearing"},
	noPartTool: {"a reamer, an end mill or a boring head that makes so large a hole",
		"we have no tool that makes so large a hole"},
	noLathe: {"a lathe, or a bush that is bought to size",
		"the bearing would have to be turned, and we have no lathe"},
	oldSeatSpoilt: {"a new seat, cut larger", "the seat of the old bearing is spoilt"},
	wallOfPart: {"a bush with a smaller outside, or a new seat that takes the whole away",
		"no bearing we have fits into what is there"},
	wallOfBush: {"a tool that makes a larger seat", "no hole that we can make leaves such a bearing a wall"},
	sideRoom: {"a bush without a flange or with a thinner one, or fewer washers",
		"no bearing we have leaves the axle its side play"},
	neighbour: {"a bush with a smaller outside", "no bearing we have fits beside what stands next to it"},
	flangeRoom: {"a bush with a smaller flange or none",
		"no bearing we have fits beside what stands next to it"},
}

// WouldSeat is what would let a bush be seated that fell for this reason.
func (f Fail) WouldSeat() say.Text {
	if x, ok := others[f.What]; ok {
		return x.wouldSeat
	}
	return questions[f.Question].wouldSeat
}

// Owner says the reason to an owner, of the nearest bearing, without figures.
func (f Fail) Owner() say.Text {
	if x, ok := others[f.What]; ok {
		return x.owner
	}
	return questions[f.Question].owner
}
