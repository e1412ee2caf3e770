package seat

import (
	"cmp"
	"math"
	"slices"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/limits"
	"rebush/fits/material"
	"rebush/fits/table"
	"rebush/plan/habit"
	"rebush/plan/job"
	"rebush/plan/survey"
)

// Tables are the handbook tables in force, and how well this shop measures a
// bush, mm.
type Tables struct {
	Library         *table.Library
	Table           *table.Rules
	Metals          *material.Registry
	Limits          *limits.Limits
	UBore, UOutside dim.Length
	Habits          habit.Habits // what this shop's tools really do
	Memo            *Memo        // what other plans by these tables have worked out, nil nothing
}

// Input is what the search reads beside the holes: the job with its shop, the
// tables, and what of them it decides by.
type Input struct {
	Job *job.Job
	Tables
	Casting Casting
	Stock   []Bush // the job's list
	Brief   bool   // only what goes: those that fell, and why, are left out
	Shop    Shop
	Rules   Rules
}

// FromJob reads the bushes, the tools and the rules. What it leaves out of them
// is said.
func FromJob(j *job.Job, t Tables, c Casting) (Input, finding.List) {
	in := Input{Job: j, Tables: t, Casting: c, Rules: RulesOf(t.Table)}
	var said finding.List
	in.Stock = in.bushes(&said)
	in.Shop = in.tools(&said)
	return in, said
}

// Site is one bore as survey and target leave it.
type Site struct {
	Old    survey.Hole
	At     [2]float64 // new centre
	UPlace float64    // standard uncertainty of where the hole will be cut, mm
	Touch  bool       // to be dealt with: it has a new centre and is not left alone
	// Seat is the diameter of an old seat as it was read, mm, and how well.
	Seat, USeat float64
}

// Name is the bore's.
func (s Site) Name() string { return s.Old.Name() }

func (s Site) side() job.Side { return s.Old.Bore.Side }

// hole describes a bore to the search; sites are all bores of the job.
func (in *Input) hole(s Site, sites []Site) Hole {
	b, shaft, c := s.Old.Bore, s.Old.Shaft, in.Job.Chassis
	h := Hole{
		Name: s.Name(), At: s.At, UPlace: s.UPlace, USurvey: s.Old.U,
		Journal: s.Old.Journal(), JournalU: in.Table.V("u_journal_mm"), MustPass: shaft.Through(b.Side),
		Plate: c.Thickness.On(b.Side).Float(), RoomIn: b.RoomIn.Float(), RoomOut: b.RoomOut.Float(),
		SideRoom: in.sideRoom(s, sites), TLow: in.Rules.UseLow, THigh: in.Rules.UseHigh, Plate2: in.Casting.Plate,
		Live: c.Current == "axles" && shaft.Insulated != string(b.Side), Finish: in.finish(s.Name()),
	}
	if c.TemperatureGiven {
		h.TLow, h.THigh = c.TemperatureLow, c.TemperatureHigh
	}
	if shaft.LoadN != nil {
		h.Load = *shaft.LoadN / float64(max(1, len(shaft.Bores)))
	}
	if shaft.RPM != nil {
		h.RPM = *shaft.RPM
	}
	if mat := shaftMaterial(shaft, in.Metals); mat != nil {
		h.JournalA = least(mat, "expansion")
	}
	in.around(&h, s, sites)
	if b.Seat != nil {
		h.Old = &OldSeat{Low: s.Seat - s.USeat, High: s.Seat + s.USeat, Sound: b.Seat.Sound,
			Off: apart(thereAt(s.Old), s.At)}
	}
	if n := b.Now; n != nil {
		h.worked(n)
	}
	if b.Cap {
		h.Cap = 2 * s.Old.Worn.R
	}
	if in.Shop.Compound && !h.Live && h.There == 0 {
		h.Fill = in.fillRadius(s.Old, s.At)
	}
	return h
}

// around is what stands round the new centre of a bore: the hole that is there,
// edges, a boss and other holes.
func (in *Input) around(h *Hole, s Site, sites []Site) {
	h.There, h.S = s.there(), clears(s.Old, s.At, s.there())
	edges := freeEdges(s.Old, s.At, s.there(), measured(s.Old.Bore), in.Job.Chassis)
	first := nearestOf(edges, func(freeEdge) bool { return true })
	h.Edge, h.EdgeName, h.Edge2 = first.away, first.name, otherWay(edges, first, in.Rules.CornerDeg)
	if b := s.Old.Bore; b.Boss.Given() {
		h.BossR, h.BossE = b.Boss.Float()/2, offBoss(s.Old, s.At)
	}
	h.Near = append(neighbours(s, sites), in.otherHoles(s)...)
	slices.SortStableFunc(h.Near, func(a, b Near) int {
		return cmp.Or(by(a.At-a.R, b.At-b.R), cmp.Compare(a.Name, b.Name))
	})
}

// worked is what the search has to know of a hole in which this job has been at
// work.
func (h *Hole) worked(n *job.Now) {
	h.Old = &OldSeat{Low: n.SeatMM - n.USeatMM, High: n.SeatMM + n.USeatMM, Sound: !n.Recut, Made: true,
		Off: apart(n.At, h.At)}
	h.Follows, h.USurvey = n.Placed && h.Old.Off <= inPlace, n.UAtMM
	if n.Bush != "" && !n.Out {
		h.Bush, h.Bore = n.Bush, [2]float64{n.BoreMM - n.UBore, n.BoreMM + n.UBore}
	}
}

// sideRoom is the length that a flange of this bore may take between plate and
// hub, NaN where the shaft or the width was not measured. Washers can come out
// where a flange goes in; a flange in the other plate takes as much.
func (in *Input) sideRoom(s Site, sites []Site) float64 {
	if !sidePlayKnown(in.Job, s.Old.Shaft) {
		return math.NaN()
	}
	sharing := 0
	for _, o := range sites {
		if o.Old.Shaft.Name == s.Old.Shaft.Name && o.Touch {
			sharing++
		}
	}
	room := SidePlay(s.Old.Shaft.HubToHub.Float(), in.Job.Chassis.Width.Float(), FlangesIn(s.Old.Shaft), 0) - in.Rules.SideLow
	return room / float64(max(1, sharing))
}

// finish is how the job wants a bore to come to its size, "" any way.
func (in *Input) finish(bore string) Finish {
	if f := in.Job.Finish[bore]; f != "" {
		return Finish(f)
	}
	return Finish(in.Job.Finish[""])
}

// chosenCode is the bush that the job chooses for a bore, "" none.
func (in *Input) chosenCode(bore string) string {
	if _, b := in.Job.Bore(bore); b != nil && b.Now != nil && b.Now.Bush != "" && !b.Now.Out {
		return b.Now.Bush // it is in
	}
	if code := in.Job.Choose[bore]; code != "" {
		return code
	}
	return in.Job.Choose[""]
}

func (in *Input) fillRadius(old survey.Hole, at [2]float64) float64 {
	of := filled{old.Stands(), at, in.Rules.FillDeg}
	return in.Memo.radius(of, func() float64 { return fillRadius(old, at, of.degrees) })
}

// fillRadius is the least seat radius about a new centre that stands in unworn
// wall over so many degrees, mm, to a hundredth of a um.
func fillRadius(old survey.Hole, at [2]float64, degrees float64) float64 {
	worn := old.Stands()
	lo, hi := worn.R/2, worn.SeatRadius(at)
	for range 17 {
		mid := (lo + hi) / 2
		if arc, _ := worn.UncutArc(at, mid); 360-arc < degrees {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi
}
