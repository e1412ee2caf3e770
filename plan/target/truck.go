package target

import (
	"fmt"
	"math"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/mesh"
)

// Skew returns how a shaft leans between its bores: in plan (along the truck)
// and in height, degrees, both above 0 when the left end lies further along +x
// or higher. spacing is the distance of the bores' middles, mm.
//
//	skew = atan((x_left - x_right)/spacing)
func Skew(left, right Point, spacing float64) (skewDeg, tiltDeg float64, err error) {
	if !(spacing > 0) {
		return 0, 0, fmt.Errorf("the bores of the shaft stand %.4g mm apart; it should be more than 0", spacing)
	}
	d := 180 / math.Pi
	return math.Atan((left[0]-right[0])/spacing) * d, math.Atan((left[1]-right[1])/spacing) * d, nil
}

// Ends is where a shaft's two ends stand.
type Ends struct{ Left, Right Point }

// Wheelbase returns the distance of two shafts along the truck, mm: between
// the middles of their ends.
func Wheelbase(front, rear Ends) float64 {
	return math.Abs((front.Left[0] + front.Right[0] - rear.Left[0] - rear.Right[0]) / 2)
}

// Rock returns the gap in mm under one wheel when the other three stand:
//
//	g = G |(y_FL - y_FR) - (y_RL - y_RR)| / L
//
// spacing L is the distance of the plates' middles, contacts G that of the
// rails' contacts, both mm; wheels of one shaft are taken as equal.
func Rock(front, rear Ends, spacing, contacts float64) (float64, error) {
	if !(spacing > 0) || !(contacts > 0) {
		return 0, fmt.Errorf("rock needs the distance of the plates (have %.4g mm) and of the rail contacts (have "+
			"%.4g mm), both above 0", spacing, contacts)
	}
	return contacts * math.Abs((front.Left[1]-front.Right[1])-(rear.Left[1]-rear.Right[1])) / spacing, nil
}

// ends are where a shaft's ends stand; one that is known in one bore only is
// taken as square.
func ends(s []Stand) Ends { return Ends{Left: s[0].At(), Right: s[len(s)-1].At()} }

// carriers are the two shafts that wheelbase and rock are told of: those that
// the job names, else the first and the last that carry wheels.
func carriers(c job.Chassis, x Axles) (pair [2]Axle, ok bool) {
	var found []Axle
	if w := c.Wheelbase; w != nil {
		for _, name := range w.Between {
			for _, a := range x {
				if a.Shaft.Name == name {
					found = append(found, a)
				}
			}
		}
		if len(found) != 2 {
			return pair, false
		}
	}
	if c.Wheelbase == nil {
		for _, a := range x {
			if a.Shaft.WheelDiameter.Given() || a.Shaft.ContactsApart.Given() {
				found = append(found, a)
			}
		}
	}
	if len(found) < 2 {
		return pair, false
	}
	return [2]Axle{found[0], found[len(found)-1]}, true
}

// truck reports wheelbase and four-wheel rock, found and after.
func (s *settling) truck() {
	pair, ok := carriers(s.j.Chassis, s.out.Axles)
	if !ok {
		return
	}
	n := len(pair[0].Holes)
	holes := append(append([]Hole(nil), pair[0].Holes...), pair[1].Holes...)
	page := s.book.Page("truck")
	both := func(k, what string, of func(front, rear Ends) float64) dim.FoundAfterMM {
		calc := func(k, what string, p pose) dim.Gauged {
			return dim.Place(p.calc(page, k, what, "mm", "from where both axles stand under load", plane, holes,
				func(at []Stand, _ []float64) float64 { return of(ends(at[:n]), ends(at[n:])) }).V)
		}
		return dim.FoundAfterMM{Found: calc(k+"/found", what+" as found", asFound), After: calc(k+"/after",
			what+" after the job", after)}
	}
	s.out.Truck.WheelbaseMM = both("wheelbase_mm", "wheelbase under load", Wheelbase)
	s.rods(pair)
	contacts := 0.0
	for _, a := range pair {
		if a.Shaft.ContactsApart.Given() {
			contacts = a.Shaft.ContactsApart.Float()
		}
	}
	if spacing := mesh.Spacing(s.j.Chassis); contacts > 0 && spacing > 0 && n == 2 && len(holes) == 4 {
		s.out.Truck.RockMM = both("rock_mm", "four-wheel rock", func(front, rear Ends) float64 {
			gap, _ := Rock(front, rear, spacing, contacts)
			return gap
		})
	}
}

// rods says where coupled axles would not match their rods: the sister's
// wheelbase is taken for the length of the rods.
func (s *settling) rods(pair [2]Axle) {
	w := s.j.Chassis.Wheelbase
	if w == nil || !w.Sister.Given() || !pair[0].Shaft.Rods && !pair[1].Shaft.Rods {
		return
	}
	most := s.rules.V("rods_mm")
	s.book.Cite("rules/rods_mm")
	off := dim.Sig9(s.out.Truck.WheelbaseMM.After.Float() - w.Sister.Float())
	if math.Abs(off) <= most+1e-9 {
		return
	}
	s.raise(finding.Caution, RodsDiffer, s.j.PlaceAt("chassis", "chassis/wheelbase"),
		say.F("coupled axles: after the job the wheelbase differs from the rods by %v", say.MM(off, 3).Signed()),
		"both axles have to match the rods: move one of them (load and mesh allowing), or ease the "+
			"rods").Against(off, most, "mm")
}
