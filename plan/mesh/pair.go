package mesh

import (
	"fmt"
	"math"
)

// Pair is a spur pair or a worm drive. All distances are centre distances in
// mm; errors are *RangeError or *DistanceError.
type Pair interface {
	Validate() error
	Standard() float64
	Tight() float64
	Normal(a float64) (float64, error)   // normal backlash, mm, negative: overlap
	Backlash(a float64) (float64, error) // circumferential at the operating pitch circle, mm
	Radial(a float64) float64
	OperatingAngle(a float64) (float64, error) // degrees
	ContactRatio(a float64) (float64, error)   // limited to the base tangent points
	CentreForNormal(j float64) (float64, error)
	CentreForBacklash(j float64) (float64, error)
	CentreForContactRatio(eps float64) (float64, error)
	TipClearance(a float64) (tip1, tip2 float64)
	Lowest(clearance float64) Lowest
	Tips() []Tip
	Measured() bool
}

var (
	_ Pair = Spur{}
	_ Pair = Worm{}
)

// Wish is the backlash wanted, mm. Normal says that it is measured square to
// the flanks, as the handbook rows are; else it is circumferential at the
// operating pitch circle, as a job gives it.
type Wish struct {
	Lo, Hi float64
	Normal bool
}

// Limits are the rules by which a window is cut.
type Limits struct {
	ContactRatio float64 // least on the loose side, 1.2
	ContactHard  float64 // for pairs that never had the former, 1.0
	TightTooth   float64 // normal backlash that the tightest tooth keeps, mm
	TipModules   float64 // least gap of tip and root, modules
	NewRight     float64 // share of pairs that stood inside their backlash limits when new
}

// Window is the range of centre distances that a pair wants for its shaft
// under load. Where Empty, both ends are kept as they came out (Lo above Hi):
// aim for the middle and say so.
type Window struct {
	Lo, Hi     float64 // mm
	LoBy, HiBy Edge    // what sets the edge
	Contact    float64 // the contact ratio that was asked of the loose side
	FewTeeth   bool    // the pair never reaches the usual contact ratio
	Empty      bool
}

// Edge is what sets an end of a window.
type Edge string

// The edges. ByFlanks is the tight distance, where the flanks touch.
const (
	ByBacklash  Edge = "backlash"
	ByRunout    Edge = "run-out"
	ByFlanks    Edge = "flanks"
	ByTipOnRoot Edge = "tip on root"
	ByFillet    Edge = "tip in fillet"
	ByContact   Edge = "contact ratio"
)

// Aim is what a window stands for as an aim: its ends, or its middle twice
// where it is empty.
func Aim(lo, hi float64) (float64, float64) {
	if lo > hi {
		mid := (lo + hi) / 2
		return mid, mid
	}
	return lo, hi
}

// Middle of the window, mm.
func (w Window) Middle() float64 { return (w.Lo + w.Hi) / 2 }

// Width of the window, mm, negative where it is empty.
func (w Window) Width() float64 { return w.Hi - w.Lo }

// WindowOf cuts the window of a pair, which is of the mean over a whole turn.
// runout is the total indicator reading of the wheel, or of both gears added, mm:
// the tightest tooth stands half of it nearer, the loosest half of it farther. It
// raises the lower edge only where the tightest would keep less normal backlash
// than the rule asks, and lowers the upper one only where the loosest would have
// less contact.
func WindowOf(p Pair, module float64, wish Wish, runout float64, lim Limits) (Window, error) {
	if err := p.Validate(); err != nil {
		return Window{}, err
	}
	if err := inRange("the run-out of the gear", runout, 0, 4*module, "from 0 mm to a few modules"); err != nil {
		return Window{}, err
	}
	if !(wish.Lo >= 0 && wish.Hi >= wish.Lo) || math.IsInf(wish.Hi, 0) {
		return Window{}, fmt.Errorf("the backlash wanted runs from %.4g to %.4g mm; write the least first, 0 or more", wish.Lo, wish.Hi)
	}
	centre := p.CentreForBacklash
	if wish.Normal {
		centre = p.CentreForNormal
	}
	lo, err := centre(wish.Lo)
	if err != nil {
		return Window{}, err
	}
	hi, err := centre(wish.Hi)
	if err != nil {
		return Window{}, err
	}
	w := Window{Lo: lo, Hi: hi, LoBy: ByBacklash, HiBy: ByBacklash, Contact: lim.ContactRatio}
	tooth, err := p.CentreForNormal(lim.TightTooth)
	if err != nil {
		return Window{}, err
	}
	if tooth+runout/2 > w.Lo {
		w.Lo, w.LoBy = tooth+runout/2, ByRunout
	}
	if low := p.Lowest(lim.TipModules * module); low.By != ByFlanks && low.At > w.Lo {
		w.Lo, w.LoBy = low.At, low.By
	}
	loose, err := p.CentreForContactRatio(lim.ContactRatio)
	if err != nil {
		w.FewTeeth, w.Contact = true, lim.ContactHard
		loose, err = p.CentreForContactRatio(lim.ContactHard)
	}
	if err == nil && loose-runout/2 < w.Hi {
		w.Hi, w.HiBy = loose-runout/2, ByContact
	}
	w.Empty = w.Lo > w.Hi
	return w, nil
}

// UGeometry returns the standard uncertainty in mm of a centre distance worked
// out for a pair: trusted where its tips were measured, else moduleFactor
// modules.
func UGeometry(p Pair, module, trusted, moduleFactor float64) float64 {
	if p.Measured() {
		return trusted
	}
	return moduleFactor * module
}
