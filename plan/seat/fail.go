package seat

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Fail is the one reason why a candidate fell. It is written out in words only
// when it is read, since the search makes many.
type Fail struct {
	Question   int // 1 to 11, in the order in which they are asked
	What       what
	Have, Want float64 // mm, N, MPa or um as the reason says
	Name       string
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
	lastWhat
)

// gap is how far the figure is from what would be needed, for telling which of
// two failures at one question is nearer: in mm where sizes are compared, later
// as a share of the larger.
func (f Fail) gap() float64 {
	d := math.Abs(f.Want - f.Have)
	switch f.What {
	case dropsLoose, tooTight, capSlide:
		return d / 1000
	}
	if f.Question <= 2 {
		return d
	}
	return d / math.Max(1e-12, math.Max(math.Abs(f.Want), math.Abs(f.Have)))
}

// farOff is how far a bush may miss a seat, um, before its gap is said as a
// length and not as a fit: nobody would press it.
const farOff = 200

// Text says the reason with its figure, in words of the bench. Two figures that
// would print alike get more digits, until they differ.
func (f Fail) Text() string {
	say := func(text string, digits int) string {
		have, want := apart(f.Have, f.Want, digits)
		return fmt.Sprintf(text, have, want)
	}
	switch f.What {
	case shortOfCleanUp:
		return say("does not clean up the wear: seat radius %s mm, needs %s", 3)
	case shortOfFill:
		return say("too much of the worn wall stays: seat radius %s mm, needs %s for compound to fill the rest", 3)
	case dropsLoose:
		if f.Have < -farOff {
			return fmt.Sprintf("%.2f mm too loose for this seat", -f.Have/1000)
		}
		if f.Have < 0 {
			return fmt.Sprintf("too loose to press: up to %.0f um of gap, and it must be tight", -f.Have)
		}
		return say("too loose to press: interference from %s um, needs more than %s", 0)
	case tooTight:
		if f.Have > f.Want+farOff {
			return fmt.Sprintf("%.2f mm too large for this seat", (f.Have-f.Want)/1000)
		}
		return say("too tight to press: interference up to %s um, at most %s", 0)
	case openedTooFar:
		return say("bore would have to be opened by %s mm after pressing, at most %s", 2)
	case otherFinish:
		return fmt.Sprintf("cannot be finished as asked (%s): ", f.Name) + say("the bore closes to %s mm, wanted from %s", 3)
	case noSuchWay:
		reach := " reaches up to %s"
		if f.Have < f.Want {
			reach = " reaches from %s"
		}
		return say("wants a seat of %s mm, "+strings.ReplaceAll(f.Name, "%", "%%")+reach, 2)
	case wallTooThin, wallTooThinForPress:
		what := map[what]string{wallTooThin: "any seat", wallTooThinForPress: "a press"}[f.What]
		if f.Have < 0 {
			return fmt.Sprintf("would break %.2f mm out of the edge; %s needs %.2f left", -f.Have, what, f.Want)
		}
		return say("leaves %s mm at the edge, needs %s for "+what, 2)
	case pressTooHeavy:
		return say("press up to %s um beside a thin wall, at most %s", 0)
	case castingCracks:
		return say("tension in the casting %s MPa, at most %s", 0)
	case plateYields:
		return say("mean tension in the metal left at the edge %s MPa, at most %s", 0)
	case doesNotHold:
		return say("holds %s "+f.Name+", needs %s, and has no second hold", 1)
	case compoundGap:
		if f.Have <= 0 {
			return fmt.Sprintf("is %.0f um larger than the seat, compound wants a gap of %.3f mm on diameter", -1000*f.Have, f.Want)
		}
		return say("gap for compound %s mm on diameter, wants %s", 3)
	case compoundPorous:
		return "compound does not bond to an oil-filled bush"
	case compoundHot:
		return say("gets %s C hot, compound is trusted to %s", 0)
	case oldSeatSpoilt:
		return "the old seat is not sound"
	case boreTooLarge:
		return say("bore ends up to %s mm, at most %s", 3)
	case nothingPasses:
		return say("what must pass is %s mm, the largest bore that still runs is %s", 3)
	case seizes:
		if f.Have < 0 {
			return fmt.Sprintf("binds by %.0f um at the hot or cold end of use, needs %.0f of clearance", -f.Have, f.Want)
		}
		return say("runs with %s um at the hot or cold end of use, needs %s", 0)
	case noContact:
		return "the chamfers at both ends leave nothing of the seat to hold"
	case wallOfBush:
		if f.Have < 0 {
			return "the bore would be larger than the outside of the bush"
		}
		return say("wall of the bush would be %s mm, needs %s", 2)
	case tooShort:
		return say("seat only %s mm long, needs %s or a flange", 2)
	case sideRoom:
		return say("takes %s mm of the side play, %s is there", 2)
	case flangeRoom:
		return say("flange %s mm, room for %s", 1)
	case pressureHigh:
		return say("bearing pressure %s MPa, at most %s", 2)
	case speedHigh:
		return say("rubbing speed %s m/s, at most %s", 2)
	case pvHigh:
		return say("pv %s MPa m/s, at most %s", 2)
	case noCurrentPlastic:
		return "plastic breaks the current path on the live side"
	case noCurrentCompound:
		return "compound breaks the current path on the live side"
	case neighbour:
		if f.Have < 0 {
			return fmt.Sprintf("would break %.2f mm into %s, needs %.2f left", -f.Have, f.Name, f.Want)
		}
		return say("leaves %s mm to "+strings.ReplaceAll(f.Name, "%", "%%")+", needs %s", 2)
	case capSlide:
		if f.Have < 0 {
			return fmt.Sprintf("%.0f um larger than the seat under the cap, wants %.0f of play", -f.Have, f.Want)
		}
		return say("play under the cap %s um, wants %s", 0)
	}
	return ""
}

// apart prints two figures with as many digits as it takes to tell them apart,
// three more at the most.
func apart(have, want float64, digits int) (string, string) {
	for more := 0; ; more++ {
		h, w := strconv.FormatFloat(have, 'f', digits+more, 64), strconv.FormatFloat(want, 'f', digits+more, 64)
		if h != w || more == 3 {
			return h, w
		}
	}
}

func fail(question int, w what, have, want float64) Fail {
	return Fail{Question: question, What: w, Have: have, Want: want}
}
