package job

import "rebush/fits/dim"

// Gear is one mesh: a wheel on a shaft and its pinion or worm.
type Gear struct {
	Name          string
	Kind          string // spur | worm
	WheelForm     string // throated | helical | straight | unknown (worm)
	Module        float64
	PressureAngle float64 // degrees, 20 by default; the normal one of a worm drive
	ShaftAngle    float64 // degrees, 90 by default
	Thinned       dim.Length
	Tight         dim.Length    // centre distance at which its teeth touch on both sides, as it was tried
	Backlash      [2]dim.Length // circumferential; not given: handbook rows
	Wheel         Wheel
	Pinion        *Pinion
	Worm          *Worm
}

// Wheel is the gear on the worn shaft.
type Wheel struct {
	On       string
	Teeth    int
	Runout   dim.Length // total indicator reading
	FromLeft dim.Length // middle of the face from the outside of the left plate
	Face     dim.Length
	Tip      dim.Length // measured tip diameter
	Throat   dim.Length
	Shift    float64
}

// Pinion is a spur wheel's mate: on a shaft of the job or at a fixed place.
type Pinion struct {
	On     string
	At     Point
	Teeth  int
	Runout dim.Length
	Face   dim.Length
	Tip    dim.Length
	Shift  float64
	U      dim.Length // standard uncertainty of a fixed place
	Moved  bool
}

// Pitch is the pitch diameter of a worm for a wheel of that module, mm: as given,
// else that of a thread of full depth within its outside diameter. derived says
// that it is the latter; without either it is 0.
func (w Worm) Pitch(module float64) (d float64, derived bool) {
	switch {
	case w.PitchDiameter.Given():
		return w.PitchDiameter.Float(), false
	case w.Tip.Given():
		return w.Tip.Float() - 2*module, true
	}
	return 0, false
}

// Worm lies across the wheel at a height (of its own shaft) above the datum.
type Worm struct {
	Starts        int
	PitchDiameter dim.Length
	Height        dim.Length // of its axis
	Top           dim.Length // top of its shaft, instead of Height
	Hand          string
	Slope         float64 // degrees, rising towards the front
	EndFloat      dim.Length
	Offset        dim.Length
	BearingPlay   dim.Length
	U             dim.Length
	Moved         bool
	ShaftDiameter dim.Length // needed with Top
	Tip           dim.Length
}

// Size is a bush diameter as it is known: nominal with a class (Low and High
// are not given), limits as measured over a box of them (Nominal is not given),
// or one measured size (Nominal, Low and High are that size). Measured is true
// of the last two. The zero Size of a turned bush is not known at all.
type Size struct {
	Nominal   dim.Length
	Class     string // "" where limits or one measured size are given
	Low, High dim.Length
	Measured  bool
}

// Bush is one entry of the stock list, or a bush that can be turned.
type Bush struct {
	Code            string
	Bore, OD        Size
	Length          dim.Length // includes the flange
	FlangeOD        dim.Length
	FlangeThickness dim.Length
	Runout          dim.Length // total run-out of bore to outside
	Material        string
	Price           *float64
	OnHand          *int
	Turned          bool // make: turned
	WallFinishUm    *float64
	ToBuy           bool // from a built-in series, not the shop's list
	Index           int  // place in the job's list
}

// Flanged says whether the bush has a flange.
func (b Bush) Flanged() bool { return b.FlangeOD.Given() }

// Made is a size as made, for inspection.
type Made struct {
	Bore     string
	Seat     dim.Length
	Diameter dim.Length // bore as made
	Centre   Point
	With     string
}

// Swap is another truck that could be had.
type Swap struct {
	Price      float64
	Hours      float64
	SecondHand bool
	Chance     *float64
}

// Symptoms that look like a worn hole and are not.
type Symptoms struct{ Rims, Hubs, Gauge, Ohms string }
