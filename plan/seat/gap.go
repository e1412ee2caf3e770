package seat

import "math"

// Figure is what a reason is about.
type Figure string

// The figures.
const (
	OfSeat         Figure = "seat"         // radius of the seat
	OfInterference Figure = "interference" // of bush and seat, on diameter
	OfGap          Figure = "gap"          // for compound or under a cap, on diameter
	OfTool         Figure = "tool"         // what makes the seat or the bush
	OfMetalLeft    Figure = "metal left"   // to an edge or to what stands beside
	OfTension      Figure = "tension"      // in the plate
	OfHold         Figure = "hold"         // force or torque
	OfBore         Figure = "bore"         // of the finished bush, on diameter
	OfBushWall     Figure = "bush wall"
	OfLength       Figure = "length" // of the seat
	OfSidePlay     Figure = "side play"
	OfFlange       Figure = "flange" // its diameter
	OfLoad         Figure = "load"   // pressure, speed, or both
	OfHeat         Figure = "heat"
	OfMetal        Figure = "metal" // what the bush is made of, or how it is held
	OfOldSeat      Figure = "old seat"
	OfFinish       Figure = "finish" // how the bore gets to size
)

// about says for each reason which figure it is about and in which unit.
var about = [lastWhat]struct {
	figure Figure
	unit   string
}{
	shortOfCleanUp: {OfSeat, "mm"}, shortOfFill: {OfSeat, "mm"}, oldSeatSpoilt: {OfOldSeat, ""},
	dropsLoose: {OfInterference, "um"}, tooTight: {OfInterference, "um"}, pressTooHeavy: {OfInterference, "um"},
	compoundGap: {OfGap, "mm"}, capSlide: {OfGap, "um"},
	noSuchWay: {OfTool, "mm"}, noTool: {OfTool, "mm"}, noPartTool: {OfTool, "mm"}, noLathe: {OfTool, ""},
	wallTooThin: {OfMetalLeft, "mm"}, wallTooThinForPress: {OfMetalLeft, "mm"}, neighbour: {OfMetalLeft, "mm"},
	castingCracks: {OfTension, "MPa"}, plateYields: {OfTension, "MPa"},
	doesNotHold: {OfHold, "N"}, noContact: {OfLength, "mm"}, compoundPorous: {OfMetal, ""}, compoundHot: {OfHeat, "C"},
	boreTooLarge: {OfBore, "mm"}, nothingPasses: {OfBore, "mm"}, openedTooFar: {OfBore, "mm"}, seizes: {OfBore, "um"},
	otherFinish: {OfFinish, "mm"}, wallOfBush: {OfBushWall, "mm"},
	wallOfPart: {OfBushWall, "mm"},
	tooShort:   {OfLength, "mm"}, sideRoom: {OfSidePlay, "mm"}, flangeRoom: {OfFlange, "mm"},
	pressureHigh: {OfLoad, "MPa"}, speedHigh: {OfLoad, "m/s"}, pvHigh: {OfLoad, "MPa m/s"},
	noCurrentPlastic: {OfMetal, ""}, noCurrentCompound: {OfMetal, ""},
}

// Figure is what the reason is about, "" for none.
func (f Fail) Figure() Figure { return about[f.What].figure }

// Unit is that of Have and Want, "" where they say nothing.
func (f Fail) Unit() string {
	if f.What == doesNotHold && f.Name == turning {
		return "N mm"
	}
	return about[f.What].unit
}

// gap is what a reason misses as a share of what such a figure may be, so that
// reasons of different kinds can be set in order; seat is the diameter of the
// seat. METHODS.md 1 has the reasons for each scale.
func (j *judge) gap(f Fail, seat float64) float64 {
	r, d := &j.r, math.Abs(f.Want-f.Have)
	larger := math.Max(1e-12, math.Max(math.Abs(f.Want), math.Abs(f.Have)))
	running := r.ClearMax - r.OverJournal
	switch f.What {
	case shortOfCleanUp, shortOfFill:
		// What better measuring would mend is within the doubt; the rest wants
		// another bush and another tool.
		if doubt := j.allow - r.CleanUp; d <= doubt {
			return d / doubt
		}
		return 2 + d/r.LeastWall
	case wallOfBush:
		return 1 + d/r.LeastWall // another tool, or another hole
	case dropsLoose, tooTight, pressTooHeavy:
		return d / 1000 / (r.UsualShare * math.Max(seat, 1))
	case compoundGap:
		return d / (r.GapHigh - r.GapLow)
	case capSlide:
		return d / 1000 / (r.CapHigh - r.CapLow)
	case boreTooLarge, nothingPasses:
		return d / running
	case seizes:
		return d / 1000 / running
	case wallTooThin, wallTooThinForPress, neighbour, wallOfPart, openedTooFar, tooShort, sideRoom, flangeRoom,
		castingCracks, plateYields, doesNotHold, compoundHot, pressureHigh, speedHigh, pvHigh:
		return d / larger
	case noContact:
		return 1 + d/j.h.Plate
	}
	return 1 // a tool, a material or a way that is another altogether
}
