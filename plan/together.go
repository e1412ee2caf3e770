package plan

import (
	"math"

	"rebush/plan/inspect"
	"rebush/plan/job"
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/target"
)

// together are the holes of a truck as they stand, those that were made where
// they were made, and what is asked of their places all at once.
type together struct {
	w     *books
	j     *job.Job
	t     target.Settled
	seats Seated
	holes []stood
	sites []inspect.Site
	from  []int // place of the first hole of each axle
}

// stood is one hole with what was gauged of it.
type stood struct {
	target.Hole
	bored
	made job.Made
	ok   bool       // something was
	seat float64    // its diameter, mm: as made, or the middle of its limits; 0 where it gets no bush
	off  [2]float64 // of its bore from the middle of what is gauged, mm: of its seat while no bush is in
	uOff float64    // standard uncertainty of how far off its centre the shaft stands, mm
	most float64    // the most running clearance that it has, or may have, mm
}

// newTogether puts the holes of a truck together as they were made. A place that
// nobody gauged counts at its target, with the doubt of the placing.
func newTogether(w *books, j *job.Job, of map[string]bored, t target.Settled, seats Seated) *together {
	x := &together{w: w, j: j, t: t, seats: seats}
	for _, a := range t.Axles {
		x.from = append(x.from, len(x.holes))
		for _, h := range a.Holes {
			st := h.After()
			s := stood{Hole: h, bored: of[h.Name()], uOff: (h.Clear[1] - h.Clear[0]) / (4 * math.Sqrt(3)), most: h.Clear[1]}
			p := inspect.Site{Name: h.Name(), Target: st.Centre, At: st.Centre, UMM: h.UPlace}
			if h.Left() {
				p.UMM, s.uOff = h.Survey.U, 0
			}
			if s.Chosen != nil {
				s.seat = (s.Chosen.SeatLow + s.Chosen.SeatHigh) / 2
			}
			if s.made, s.ok = j.MadeAt(h.Name()); s.ok && s.Chosen != nil {
				if !s.made.Diameter.Given() {
					s.off = s.Chosen.Offset
					p.Target = seatPlace(s.bored)
					p.At = p.Target
				}
				x.gauged(&s, &p)
			}
			x.holes, x.sites = append(x.holes, s), append(x.sites, p)
		}
	}
	return x
}

// gauged takes in what was gauged of a hole.
func (x *together) gauged(s *stood, p *inspect.Site) {
	g, _ := gaugeOf(x.w.instr, s.made.With, inspect.Seat)
	if s.made.Seat.Given() {
		s.seat = s.made.Seat.Float() - g.BiasMM
	}
	if s.made.Diameter.Given() {
		clear := math.Max(0, s.made.Diameter.Float()-g.BiasMM-s.Journal())
		s.Clear, s.most = [2]float64{clear, clear}, clear
		s.uOff = math.Hypot(g.UMM, s.Wanted.JournalU) / 2
	}
	if s.made.Centre.Given() {
		at, _ := gaugeOf(x.w.instr, s.made.With, inspect.Place)
		p.At, p.UMM, p.Gauged = s.made.Centre.Float(), at.UMM, true
	}
}

// Name is the hole's.
func (s stood) Name() string { return s.Hole.Name() }

// Journal is the diameter of its journal, mm.
func (s stood) Journal() float64 { return s.Survey.Journal() }

// stands are where the shaft of an axle stands, with the holes at these places.
func (x *together) stands(axle int, at [][2]float64) []target.Stand {
	var out []target.Stand
	for k := range x.t.Axles[axle].Holes {
		i := x.from[axle] + k
		st := x.holes[i].After()
		st.Centre = x.bore(i, at)
		out = append(out, st)
	}
	return out
}

// bore is where the bore of a hole is, with the holes at these places.
func (x *together) bore(i int, at [][2]float64) [2]float64 {
	return [2]float64{at[i][0] + x.holes[i].off[0], at[i][1] + x.holes[i].off[1]}
}

// of are the places of an axle's holes among all.
func (x *together) of(axle int) []int {
	var out []int
	for k := range x.t.Axles[axle].Holes {
		out = append(out, x.from[axle]+k)
	}
	return out
}

// here are the places as they were made.
func (x *together) here() [][2]float64 {
	out := make([][2]float64, len(x.sites))
	for k := range x.sites {
		out[k] = x.sites[k].At
	}
	return out
}

// inPlate are a hole and the others in its plate that get a bush.
func (x *together) inPlate(i int) []int {
	out := []int{i}
	for k := range x.holes {
		if k != i && x.holes[k].Survey.Bore.Side == x.holes[i].Survey.Bore.Side && x.holes[k].Chosen != nil {
			out = append(out, k)
		}
	}
	return out
}

// site is one hole for the room of the seat: as it was surveyed, or with the
// seat that was made.
func (x *together) site(i int, made bool) seat.Site {
	h := x.holes[i]
	s := seat.Site{Old: h.Survey, At: x.sites[i].At, UPlace: x.sites[i].UMM, Touch: h.Touch && h.Placed}
	if made && h.seat > 0 {
		s.Old = standingIn(h.Survey, job.Now{SeatMM: h.seat, At: x.sites[i].At, UAtMM: x.sites[i].UMM, Placed: true})
	}
	return s
}

// standingIn is a hole as it was surveyed, with a seat in its place.
func standingIn(h survey.Hole, n job.Now) survey.Hole {
	b := *h.Bore
	b.Now, h.Bore = &n, &b
	return h
}

// around are all holes as they stand, at these places.
func (x *together) around(at [][2]float64) []seat.Site {
	out := make([]seat.Site, len(x.holes))
	for i := range x.holes {
		out[i] = x.site(i, true)
		if n := out[i].Old.Bore.Now; n != nil {
			n.At = at[i]
		}
	}
	return out
}
