package seat

import (
	"fmt"
	"math"
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
	strapSlide
	lastWhat
)

// gap is how far the figure is from what would be needed, for telling which of
// two failures at one question is nearer: in mm where sizes are compared, later
// as a share of the larger.
func (f Fail) gap() float64 {
	d := math.Abs(f.Want - f.Have)
	switch f.What {
	case dropsLoose, tooTight, strapSlide:
		return d / 1000
	}
	if f.Question <= 2 {
		return d
	}
	return d / math.Max(1e-12, math.Max(math.Abs(f.Want), math.Abs(f.Have)))
}

// Text says the reason with its figure, in words of the bench.
func (f Fail) Text() string {
	switch f.What {
	case shortOfCleanUp:
		return fmt.Sprintf("does not clean up the wear: seat radius %.3f mm, needs %.3f", f.Have, f.Want)
	case shortOfFill:
		return fmt.Sprintf("too much of the worn wall stays: seat radius %.3f mm, needs %.3f for compound to fill the rest", f.Have, f.Want)
	case dropsLoose:
		if f.Have < -200 {
			return fmt.Sprintf("far too loose for this seat: %.2f mm of gap", -f.Have/1000)
		}
		return fmt.Sprintf("too loose to press: interference from %.0f um, needs more than %.0f", f.Have, f.Want)
	case tooTight:
		if f.Have > 200 {
			return fmt.Sprintf("far too large for this seat: %.2f mm over it", f.Have/1000)
		}
		return fmt.Sprintf("too tight to press: interference up to %.0f um, at most %.0f", f.Have, f.Want)
	case openedTooFar:
		return fmt.Sprintf("bore would have to be opened by %.2f mm after pressing, at most %.2f", f.Have, f.Want)
	case otherFinish:
		return fmt.Sprintf("cannot be finished as asked (%s): the bore closes to %.3f mm, wanted from %.3f", f.Name, f.Have, f.Want)
	case noSuchWay:
		reach := "up to"
		if f.Have < f.Want {
			reach = "from"
		}
		return fmt.Sprintf("wants a seat of %.2f mm, %s reaches %s %.2f", f.Have, f.Name, reach, f.Want)
	case wallTooThin, wallTooThinForPress:
		if f.Have <= 0 {
			return fmt.Sprintf("would break %.2f mm out of the edge, and a press needs %.2f mm left", -f.Have, f.Want)
		}
		if f.What == wallTooThinForPress {
			return fmt.Sprintf("leaves %.2f mm at the edge, needs %.2f for a press", f.Have, f.Want)
		}
		return fmt.Sprintf("leaves %.2f mm at the edge, needs %.2f for any seat", f.Have, f.Want)
	case pressTooHeavy:
		return fmt.Sprintf("press up to %.0f um beside a thin wall, at most %.0f", f.Have, f.Want)
	case castingCracks:
		return fmt.Sprintf("pulls the casting with %.0f MPa, at most %.0f", f.Have, f.Want)
	case plateYields:
		return fmt.Sprintf("pulls the metal left at the edge with %.0f MPa on the mean, at most %.0f", f.Have, f.Want)
	case doesNotHold:
		return fmt.Sprintf("holds %.1f %s, needs %.1f, and has no second hold", f.Have, f.Name, f.Want)
	case compoundGap:
		return fmt.Sprintf("gap for compound %.3f mm on diameter, wants %.3f", f.Have, f.Want)
	case compoundPorous:
		return "compound does not bond to an oil-filled bush"
	case compoundHot:
		return fmt.Sprintf("gets %.0f C hot, compound is trusted to %.0f", f.Have, f.Want)
	case oldSeatSpoilt:
		return "the old seat is not sound"
	case boreTooLarge:
		places := 3
		if math.Abs(f.Have-f.Want) < 0.001 {
			places = 4
		}
		return fmt.Sprintf("bore ends up to %.*f mm, at most %.*f", places, f.Have, places, f.Want)
	case nothingPasses:
		return fmt.Sprintf("what must pass is %.3f mm, the largest bore that still runs is %.3f", f.Have, f.Want)
	case seizes:
		return fmt.Sprintf("runs with %.0f um at the hot or cold end of use, needs %.0f", f.Have, f.Want)
	case noContact:
		return fmt.Sprintf("touches %.2f mm of the seat between the chamfers, needs more than %.0f", f.Have, f.Want)
	case wallOfBush:
		return fmt.Sprintf("wall of the bush would be %.2f mm, needs %.2f", f.Have, f.Want)
	case tooShort:
		return fmt.Sprintf("seat only %.2f mm long, needs %.2f or a flange", f.Have, f.Want)
	case sideRoom:
		return fmt.Sprintf("takes %.2f mm of the side play, %.2f is there", f.Have, f.Want)
	case flangeRoom:
		return fmt.Sprintf("flange %.1f mm, room for %.1f", f.Have, f.Want)
	case pressureHigh:
		return fmt.Sprintf("bearing pressure %.2f MPa, at most %.2f", f.Have, f.Want)
	case speedHigh:
		return fmt.Sprintf("rubbing speed %.2f m/s, at most %.2f", f.Have, f.Want)
	case pvHigh:
		return fmt.Sprintf("pv %.2f MPa m/s, at most %.2f", f.Have, f.Want)
	case noCurrentPlastic:
		return "plastic breaks the current path on the live side"
	case noCurrentCompound:
		return "compound breaks the current path on the live side"
	case neighbour:
		return fmt.Sprintf("leaves %.2f mm to %s, needs %.2f", f.Have, f.Name, f.Want)
	case strapSlide:
		return fmt.Sprintf("slide in the strap %.0f um, wants %.0f", f.Have, f.Want)
	}
	return ""
}

func fail(question int, w what, have, want float64) Fail {
	return Fail{Question: question, What: w, Have: have, Want: want}
}
