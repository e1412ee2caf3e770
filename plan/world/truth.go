package world

// Truth is the truck as it is and as it was, which nobody on the bench knows.
// Lengths are in mm, directions in degrees anticlockwise from +x, all in the
// frame of the job: seen from the left, x along the truck, y up.
type Truth struct {
	Material      string
	Thickness     [2]float64 // left, right
	Width         float64    // outside to outside
	Length        float64
	Height        float64
	Outline       []Point // corners in order
	Condition     string  // sound | cracked | swollen
	Growth        float64 // share by which the casting has grown since it was made
	RailsAbove    bool
	DrilledAsPair bool
	Shafts        []Shaft
	Gears         []Gear
	Features      []Feature
	Bench         Bench
}

// Bench is what the shop truly does, which its file may or may not say.
type Bench struct {
	Setup, Hole float64 // standard deviation of placing a clamping and a hole in it, mm on each axis
	Careful     bool    // reams through a bush, with oil, as slowly as it should
}

// Shaft is an axle or another shaft and the holes it runs in.
type Shaft struct {
	Name     string
	Leave    bool
	Design   Point      // centre by the drawing
	Journal  [2]float64 // diameter of each end
	MustPass [2]float64 // thickest thing that goes through that hole, 0 for none thicker
	Load     float64    // direction in which it is pressed
	Bores    [2]*Bore   // left, right; nil where it has no hole
}

// Bore is one hole: what stands in the plate now, and where it once was.
type Bore struct {
	Name     string
	Hole     Hole    // as it is now, or the bore of the bush that is in
	Centre   Point   // true old centre as the maker made it, grown with the casting
	Seat     float64 // diameter of the seat of a bush it was made with, 0 for none
	Repaired bool    // somebody put another hole there
	Edges    []Edge  // free edges round it
}

// Edge is a free edge in a direction, from the middle of the hole as it stood
// before it wore.
type Edge struct{ Deg, Away float64 }

// Feature is an unworn hole.
type Feature struct {
	Name     string
	Plate    int // 0 left, 1 right
	At       Point
	Design   Point
	Diameter float64
}

// Gear is one mesh. Of Teeth and Screw one is given.
type Gear struct {
	Name    string
	Wheel   string // the shaft that the wheel sits on
	Mate    string // the shaft of the pinion, "" for a fixed place
	Teeth   *Teeth
	Screw   *Screw
	Form    string     // of a worm wheel: throated | helical | straight
	At      Point      // the mate's place now; a worm lies at that height
	Was     Point      // its place while the holes wore
	Slope   float64    // of a worm, degrees, rising towards +x
	Design  float64    // centre distance by the drawing
	Runout  [2]float64 // total indicator reading of wheel and mate
	Tip     [2]float64 // true tip diameters of wheel and mate
	Face    float64    // width of the wheel
	Left    float64    // middle of that face from the outside of the left plate
	Moved   bool       // the mate was renewed or moved since the holes wore
	Trusted bool       // both tip diameters were measured
	Unsaid  float64    // part of the thinning that is error of making, and of which nobody knows
	Odd     [2]bool    // wheel, pinion: cut on the blank of another tooth count, which nobody wrote down
}

// Backlash is the gap square to the flanks at a distance of the two axes.
func (g Gear) Backlash(distance float64) float64 {
	if g.Screw != nil {
		return g.Screw.Backlash(distance)
	}
	return g.Teeth.Backlash(distance)
}

// Distance is that of the axes where the wheel's shaft stands at a place: of a
// worm square to its axis, of a pinion from its middle.
func (g Gear) Distance(wheel, mate Point) float64 {
	if g.Screw == nil {
		return wheel.To(mate)
	}
	return abs(normalTo(g.Slope, Point{wheel[0] - mate[0], wheel[1] - mate[1]}))
}

// Shaft finds a shaft by its name, nil where there is none.
func (t *Truth) Shaft(name string) *Shaft {
	for i := range t.Shafts {
		if t.Shafts[i].Name == name {
			return &t.Shafts[i]
		}
	}
	return nil
}

// Bore finds a hole by its name, nil where there is none.
func (t *Truth) Bore(name string) *Bore {
	for i := range t.Shafts {
		for _, b := range t.Shafts[i].Bores {
			if b != nil && b.Name == name {
				return b
			}
		}
	}
	return nil
}
