package target

import (
	"math"

	"rebush/fits/ledger"
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/survey"
)

// Hole is one bore whose old centre is known, as its shaft stands in it: as it
// was surveyed, how the shaft is pressed, and where the bore goes.
type Hole struct {
	Survey survey.Hole
	Load   Point      // unit vector in which the shaft is pressed
	Clear  [2]float64 // least and most running clearance on diameter that the finished bore may have, mm
	Keeps  bool       // its place is given, whatever the meshes want: see Sits

	Target Point   // its new centre
	UPlace float64 // standard uncertainty of the place that will be made, mm
	Touch  bool    // to be bushed
}

// Name is the bore's: "front axle.left".
func (h Hole) Name() string { return h.Survey.Name() }

// Left says that its shaft is left alone.
func (h Hole) Left() bool { return h.Survey.Shaft.Leave }

// New is where the shaft stood when the truck was new.
func (h Hole) New() Stand { return Stand{h.Survey.Worn.O, h.Survey.Worn.C, h.Load} }

// Found is where it stands now: at the end of the lobe that it has worn.
func (h Hole) Found() Stand {
	return Stand{h.Survey.FoundCentre(h.Load), h.Survey.AsFound(h.Load), h.Load}
}

// After is where it will stand: half the middle running clearance from the new
// centre; of a shaft that is left alone, as found.
func (h Hole) After() Stand {
	if h.Left() {
		return h.Found()
	}
	return Stand{h.Target, (h.Clear[0] + h.Clear[1]) / 4, h.Load}
}

// Lifted is where it drops to when the truck is lifted off its wheels: the
// other side of its bore.
func (h Hole) Lifted() Stand {
	s := h.After()
	s.Off = -s.Off
	return s
}

// Kept is where it will stand in a hole that gets no bush: as far off as it
// does now.
func (h Hole) Kept() Stand {
	s := h.After()
	if !h.Done() {
		s.Off = h.Survey.AsFound(h.Load)
	}
	return s
}

// keepsPlace says that a bore keeps its place: its shaft is left alone, or its
// place is given.
func (h Hole) keepsPlace() bool { return h.Left() || h.Keeps }

// Done says that this job has bushed the hole and finished its bore.
func (h Hole) Done() bool { return h.Survey.Bore.Now != nil && h.Survey.Bore.Now.Done }

// worked says that it keeps the place in which this job has made its seat.
func (h Hole) worked() bool { return h.keepsPlace() && h.Survey.Bore.Now != nil }

// Sits says that a hole has a seat which gives a new bush its place: as this job
// has made it, under a cap, or that of the old bush where it is sound.
func Sits(h survey.Hole) bool {
	b := h.Bore
	if b.Now != nil {
		return b.Now.Placed
	}
	return b.Cap || b.Seat != nil && b.Seat.Sound && !b.Repaired
}

// well says that a hole is not worn: round, never mended, and its play no more
// than is accepted, mm.
func (h Hole) well(accepted float64) bool {
	b, w := h.Survey.Bore, h.Survey.Worn
	if b.Now != nil {
		return b.Now.Done
	}
	return w.Round && !b.Bushed && b.Seat == nil && !b.Repaired && 2*w.C+w.W <= accepted+1e-9
}

// Axle is one shaft in its holes, axle or idler.
type Axle struct {
	Shaft      *job.Shaft
	TowardsDeg float64 // the way it is pressed, degrees
	Holes      []Hole  // whose old centres are known, left first; one or two
}

// Axles are the shafts of a job whose place is known, in its order.
type Axles []Axle

// LoadTowards is the way in degrees that a shaft is pressed in its bores: as
// the job says, else away from the rails.
func LoadTowards(c job.Chassis, s *job.Shaft) float64 { return c.LoadTowards(s) }

// AxlesOf gathers the holes of a job by shaft. clear tells the running
// clearances that a finished bore may have, keeps whether its place is given.
func AxlesOf(j *job.Job, holes []survey.Hole, clear func(survey.Hole) [2]float64, keeps func(survey.Hole) bool) Axles {
	var out Axles
	for i := range j.Shafts {
		a := Axle{Shaft: &j.Shafts[i], TowardsDeg: LoadTowards(j.Chassis, &j.Shafts[i])}
		sin, cos := math.Sincos(a.TowardsDeg * math.Pi / 180)
		for _, h := range holes {
			if h.Known && h.Shaft.Name == a.Shaft.Name {
				a.Holes = append(a.Holes, Hole{Survey: h, Load: Point{cos, sin}, Clear: clear(h), Keeps: keeps(h),
					Target: h.Worn.O})
			}
		}
		if len(a.Holes) > 0 {
			out = append(out, a)
		}
	}
	return out
}

// Keeping are the same shafts with other holes whose place is given.
func (x Axles) Keeping(keeps func(survey.Hole) bool) Axles {
	out := make(Axles, len(x))
	for i, a := range x {
		a.Holes = append([]Hole(nil), a.Holes...)
		for k := range a.Holes {
			a.Holes[k].Keeps = keeps(a.Holes[k].Survey)
		}
		out[i] = a
	}
	return out
}

// For are the shafts as the meshes need them.
func (x Axles) For() []mesh.Shaft {
	out := make([]mesh.Shaft, len(x))
	for i, a := range x {
		s := mesh.Shaft{Name: a.Shaft.Name, Holes: len(a.Holes), U: a.doubt()}
		n := float64(len(a.Holes))
		for _, h := range a.Holes {
			s.Centre[0] += h.Survey.Worn.O[0]
			s.Centre[1] += h.Survey.Worn.O[1]
		}
		s.Centre[0] /= n
		s.Centre[1] /= n
		out[i] = s
	}
	return out
}

// doubt is that of the least known old centre of a shaft, mm.
func (a Axle) doubt() float64 {
	u := 0.0
	for _, h := range a.Holes {
		u = math.Max(u, h.Survey.U)
	}
	return u
}

// well says that no hole of a shaft is worn: both are bushed, or neither.
func (a Axle) well(accepted float64) bool {
	for _, h := range a.Holes {
		if !h.well(accepted) {
			return false
		}
	}
	return true
}

// of are the holes that a mesh hangs on: those of its wheel's shaft, then those
// of its mate's, where that is on the job. wheel is how many are of the first.
func (x Axles) of(d mesh.Drive) (holes []Hole, wheel int) {
	holes = append(holes, x[d.Shaft].Holes...)
	wheel = len(holes)
	if d.OnJob() {
		holes = append(holes, x[d.Mate].Holes...)
	}
	return holes, wheel
}

// page is where the ledger keeps a bore's new place.
func (h Hole) page(book *ledger.Ledger) ledger.Page { return book.Page("targets/" + h.Name()) }

// with is the hole as the ledger has it: survey.Held figures of the worn hole,
// then its new centre where that is among them.
func (h Hole) with(v []float64) Hole {
	h.Survey = h.Survey.With(v)
	if len(v) > survey.Held {
		h.Target = Point{v[survey.Held], v[survey.Held+1]}
	}
	return h
}
