package seat

import (
	"strings"

	"rebush/fits/say"
)

// Fail is the one reason why a candidate fell. It is written out in words only
// when it is read, since the search makes many.
type Fail struct {
	Question   Question
	What       what
	Have, Want float64 // in Unit; of a tool that is missing the limits of the seat that is wanted
	Name       string
	Part       string  // the reason is one of what stands round the bush: "plug", "sleeve"; "" of the bush
	Chance     float64 // of one that misses by little: how likely it comes right all the same, less than Least
	Least      float64
	Gap        float64 // how much is missed, as a share of what such a figure may be: METHODS.md 1
}

type what int

const (
	noFail what = iota
	shortOfCleanUp
	shortOfFill
	dropsLoose
	tooTight
	openedTooFar
	otherFinish
	noSuchWay
	wallTooThin
	wallTooThinForPress
	pressTooHeavy
	castingCracks
	plateYields
	doesNotHold
	compoundGap
	compoundPorous
	compoundHot
	oldSeatSpoilt
	boreTooLarge
	nothingPasses
	seizes
	wallOfBush
	noContact
	tooShort
	sideRoom
	flangeRoom
	pressureHigh
	speedHigh
	pvHigh
	noCurrentPlastic
	noCurrentCompound
	neighbour
	capSlide
	noTool
	noLathe
	wallOfPart
	noPartTool
	lastWhat
)

// farOff is how far a bush may miss a seat, um, before its gap is said as a
// length and not as a fit: nobody would press it.
const farOff = 200

// Text says the reason with its figure, in words of the bench. Two figures that
// would print alike get more digits, until they differ.
func (f Fail) Text() say.Text {
	if f.Part != "" {
		of := f
		of.Part = ""
		if f.What == noPartTool {
			return say.F("its %s %v", f.Part, of.Text())
		}
		return say.F("its %s: %v", f.Part, of.Text())
	}
	if f.Least > 0 {
		of := f
		of.Least = 0
		return say.F("%v; right in %v, at least %v are asked for", of.Text(), hundreds(f.Chance), hundreds(f.Least))
	}
	name := say.Words(f.Name)
	// against sets what is against what is wanted; the second has its unit from
	// the first.
	against := func(format string, unit string, places int) say.Text {
		return say.F(format, say.Num(f.Have, places, unit).Apart(f.Want), say.Num(f.Want, places,
			unit).Apart(f.Have).Bare())
	}
	switch f.What {
	case shortOfCleanUp:
		return against("does not clean up the wear: seat radius %v, needs %v", "mm", 3)
	case shortOfFill:
		return against("too much of the worn wall stays: seat radius %v, needs %v for compound to fill the rest",
			"mm", 3)
	case dropsLoose:
		if f.Have < -farOff {
			return say.F("%v too loose for this seat", say.MM(-f.Have/1000, 2))
		}
		if f.Have < 0 {
			return say.F("too loose to press: up to %v of gap, and it must be tight", say.Um(-f.Have, 0))
		}
		return against("too loose to press: interference from %v, needs more than %v", "um", 0)
	case tooTight:
		if f.Have > f.Want+farOff {
			return say.F("%v too large for this seat", say.MM((f.Have-f.Want)/1000, 2))
		}
		return against("too tight to press: interference up to %v, at most %v", "um", 0)
	case openedTooFar:
		return against("bore would have to be opened by %v after pressing, at most %v", "mm", 2)
	case otherFinish:
		return say.F("cannot be finished as asked (%s): ", f.Name) + against("the bore closes to %v, wanted from %v",
			"mm", 3)
	case noSuchWay:
		reach := say.Text(" reaches up to ")
		if f.Have < f.Want {
			reach = " reaches from "
		}
		return against("wants a seat of %v, "+escaped(name+reach)+"%v", "mm", 2)
	case wallTooThin, wallTooThinForPress:
		what := map[what]string{wallTooThin: "any seat", wallTooThinForPress: "a press"}[f.What]
		if f.Have < 0 {
			return say.F("would break %v out of the edge; %s needs %v left", say.MM(-f.Have, 2), what,
				say.MM(f.Want, 2).Bare())
		}
		return against("leaves %v at the edge, needs %v for "+what, "mm", 2)
	case pressTooHeavy:
		return against("press up to %v beside a thin wall, at most %v", "um", 0)
	case castingCracks:
		return against("tension in the casting %v, at most %v", "MPa", 0)
	case plateYields:
		return against("mean tension in the metal left at the edge %v, at most %v", "MPa", 0)
	case doesNotHold:
		return against("holds %v, needs %v, and has no second hold", f.Name, 1)
	case compoundGap:
		if f.Have <= 0 {
			return say.F("is %v larger than the seat, compound wants a gap of %v on diameter", say.Um(-1000*f.Have,
				0), say.MM(f.Want, 3))
		}
		return against("gap for compound %v on diameter, wants %v", "mm", 3)
	case compoundPorous:
		return "compound does not bond to an oil-filled bush"
	case compoundHot:
		return against("gets %v hot, compound is trusted to %v", "C", 0)
	case noPartTool:
		return say.F("wants a hole of at least %v, and no tool that is here makes one", say.MM(f.Have, 2))
	case wallOfPart:
		if f.Have < 0 {
			return say.F("would break %v out of %s, needs %v of its wall left", say.MM(-f.Have, 2), f.Name,
				say.MM(f.Want, 2).Bare())
		}
		return against("leaves %v of the wall of "+escaped(name)+", needs %v", "mm", 2)
	case noLathe:
		return "it has to be turned, and there is no lathe"
	case noTool:
		text := say.F("no tool that is here makes its seat of %v to %v", say.MM(f.Have, 3).Bare(), say.MM(f.Want, 3))
		if f.Name != "" {
			text += say.F(": the nearest is the %s", f.Name)
		}
		return text
	case oldSeatSpoilt:
		return "the old seat is not sound"
	case boreTooLarge:
		return against("bore ends up to %v, at most %v", "mm", 3)
	case nothingPasses:
		return against("what must pass is %v, the largest bore that still runs is %v", "mm", 3)
	case seizes:
		if f.Have < 0 {
			return say.F("binds by %v at the hot or cold end of use, needs %v of clearance", say.Um(-f.Have, 0),
				say.Um(f.Want, 0).Bare())
		}
		return against("runs with %v at the hot or cold end of use, needs %v", "um", 0)
	case noContact:
		return "the chamfers at both ends leave nothing of the seat to hold"
	case wallOfBush:
		if f.Have < 0 {
			return "the bore would be larger than the outside of the bush"
		}
		return against("wall of the bush would be %v, needs %v", "mm", 2)
	case tooShort:
		return against("seat only %v long, needs %v or a flange", "mm", 2)
	case sideRoom:
		return against("takes %v of the side play, %v is there", "mm", 2)
	case flangeRoom:
		return against("flange %v, room for %v", "mm", 1)
	case pressureHigh:
		return against("bearing pressure %v, at most %v", "MPa", 2)
	case speedHigh:
		return against("rubbing speed %v, at most %v", "m/s", 2)
	case pvHigh:
		return against("pv %v, at most %v", "MPa m/s", 2)
	case noCurrentPlastic:
		return "plastic breaks the current path on the live side"
	case noCurrentCompound:
		return "compound breaks the current path on the live side"
	case neighbour:
		if f.Have < 0 {
			return say.F("would break %v into %s, needs %v left", say.MM(-f.Have, 2), f.Name, say.MM(f.Want, 2).Bare())
		}
		return against("leaves %v to "+escaped(name)+", needs %v", "mm", 2)
	case capSlide:
		if f.Have < 0 {
			return say.F("%v larger than the seat under the cap, wants %v of play", say.Um(-f.Have, 0),
				say.Um(f.Want, 0).Bare())
		}
		return against("play under the cap %v, wants %v", "um", 0)
	}
	return ""
}

// hundreds is a chance in whole hundreds.
func hundreds(p float64) say.Text { return say.F("%.0f of 100", 100*p) }

// escaped keeps a name from being read as a format.
func escaped(name say.Text) string { return strings.ReplaceAll(string(name), "%", "%%") }

func fail(question Question, w what, have, want float64) Fail {
	return Fail{Question: question, What: w, Have: have, Want: want}
}
