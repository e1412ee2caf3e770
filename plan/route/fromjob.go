package route

import (
	"sort"

	"rebush/feeds/cutting"
	"rebush/feeds/drills"
	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/limits"
	"rebush/fits/material"
	"rebush/fits/say"
	"rebush/fits/table"
	"rebush/plan/job"
	"rebush/plan/seat"
)

// Tables are the handbook tables in force.
type Tables struct {
	Rules   *table.Rules
	Metals  *material.Registry
	Limits  *limits.Limits
	Cutting *cutting.Cutting
	Drills  *drills.Drills
	Packing func(offset, bar float64) float64 // mm under one of three jaws, NaN where none does; nil: not known
}

// Input is what the route reads beside the tables: what the steps before it
// settled.
type Input struct {
	Seat     seat.Input                     // the job, its chassis and its shop as the search for bushes read them
	Seats    []seat.Seated                  // those without a bush are left out
	Toward   map[string][2]float64          // way in which the axle is pressed, by bore; a unit vector, or nothing
	Towards  func(degrees float64) say.Text // a direction in words
	Marks    []Mark                         // holes that are left alone, to measure from
	Done     []seat.Site                    // holes that this job has finished already
	Gears    []GearCheck                    // meshes to be tried
	Again    []string                       // bores to be measured again before the first cut
	SidePlay map[string]*dim.MMRange        // by shaft, as planned
}

// FromJob reads job, shop and rules into the terms of the route. Drills that
// cannot be read are named and left out.
func FromJob(t Tables, in Input) (Job, Shop, Rules, finding.List) {
	var said finding.List
	s := shopOf(t, in.Seat.Job.Shop, &said)
	j := in.job(t.Rules)
	for _, x := range in.Seats {
		if x.Chosen != nil {
			j.Bores = append(j.Bores, in.bore(x))
		}
	}
	for _, x := range in.Done {
		j.Done = append(j.Done, finished(x))
	}
	return j, s, rulesOf(t, in.Seat.Job.Shop, in.Seat.Casting.Material), said
}

// Handbook answers for the cutting figures of this job.
func (t Tables) Handbook(in Input) Handbook {
	return Handbook{Tables: t.Cutting, Metals: t.Metals, Chassis: in.Seat.Casting.Material, Shop: in.Seat.Job.Shop}
}

// Unsure says that nobody has said whether the casting is sound.
func Unsure(j *job.Job) bool { return j.Chassis.Condition == "" || j.Chassis.Condition == "unknown" }

func (in Input) job(rules *table.Rules) Job {
	read := in.Seat.Job
	c, metal := read.Chassis, in.Seat.Casting.Material
	j := Job{Width: c.Width.Float(), Length: c.Length.Float(), Unsure: Unsure(read),
		Soft: metal.Kind != material.Steel && metal.Kind != material.CastIron,
		Casting: metal.Kind == material.ZincCasting || metal.Kind == material.AluminiumCasting ||
			metal.Kind == material.MagnesiumCasting,
		Magnesium: metal.Kind == material.MagnesiumCasting, Leaded: metal.Leaded,
		Current: c.Current == "axles", DatumWords: read.Datum, Gears: in.Gears,
		Again: in.Again}
	for _, f := range c.Features {
		j.Features = append(j.Features, f.Name)
		if f.At.Given() {
			j.Marks = append(j.Marks, Mark{Name: f.Name, Side: f.Plate, At: f.At.Float(), Dia: f.Diameter.Float()})
		}
	}
	j.Marks = append(j.Marks, in.Marks...)
	lo, hi := rules.Pair("side_play_mm")
	for i := range read.Shafts {
		s := &read.Shafts[i]
		j.Rods = j.Rods || s.Rods
		j.Shafts = append(j.Shafts, shaftOf(s, read.Gears))
		if play := in.SidePlay[s.Name]; play != nil && !s.Leave {
			j.SidePlayWords = append(j.SidePlayWords,
				say.F("Side play of %s: planned %v (%v)", s.Name, say.Size(play.Min, 3), say.MMs(lo, hi, 1)))
		}
	}
	return j
}

// shaftOf tells how an axle goes together.
func shaftOf(s *job.Shaft, gears []job.Gear) Shaft {
	out := Shaft{Name: s.Name, BackToBack: s.BackToBack.Float(), HubToHub: s.HubToHub.Float()}
	if w := job.Side(s.Insulated); w == job.Left || w == job.Right {
		out.Insulated = w
	}
	out.Wheels = s.WheelDiameter.Given() || s.BackToBack.Given() || s.ContactsApart.Given() || out.Insulated != ""
	for i, side := range job.Sides {
		out.Journal[i] = s.Journal.On(side).Float()
		if out.MustPass[i] = s.MustPass.On(side).Float(); out.MustPass[i] <= 0 {
			out.MustPass[i] = s.Unworn.On(side).Float()
		}
	}
	for _, g := range gears {
		out.Gear = out.Gear || g.Wheel.On == s.Name || g.Pinion != nil && g.Pinion.On == s.Name
	}
	return out
}

func shopOf(t Tables, sh *job.Shop, said *finding.List) Shop {
	s := Shop{Machine: Machine(sh.MachineKind), Readout: sh.Readout, Jig: sh.Jig == "pinned", ApproachX: sh.ApproachX,
		ApproachY: sh.ApproachY,
		Lathe:     sh.Lathe, PressN: sh.PressN, MaxDrill: sh.MaxDrill.Float(), BoringFrom: sh.BoringFrom.Float(),
		BoringTo: sh.BoringTo.Float(),
		Drills:   drillsOf(t.Drills, sh, said)}
	for _, m := range sh.EndMills {
		s.EndMills = append(s.EndMills, toolOf(m.Name+" end mill", m.Size, &m))
	}
	sort.SliceStable(s.EndMills, func(i, k int) bool { return s.EndMills[i].Size < s.EndMills[k].Size })
	if p := sh.Pins; p != nil && p.Step.Float() > 0 {
		// A step that is whole in ten-thousandths of an inch and not in
		// micrometres belongs to a set in inches.
		s.Pins = &Pins{From: p.From.Float(), To: p.To.Float(), Step: p.Step.Float(), Inch: !p.Step.Um().IsInteger()}
	}
	return s
}

// toolOf is a tool of the shop; own is its line there, nil for one of a set.
func toolOf(name string, size dim.Length, own *job.Tool) Tool {
	t := Tool{Name: name, Size: size.Float()}
	if own != nil {
		t.Reach, t.Shank, t.For = own.Reach.Float(), own.Shank.Float(), own.For.Float()
	}
	return t
}

// drillsOf lists every drill of the shop, its series and its single ones,
// rising.
func drillsOf(table *drills.Drills, sh *job.Shop, said *finding.List) []Tool {
	var singles []drills.Tool
	for i, t := range sh.Drills {
		singles = append(singles, drills.Tool{Name: t.Name, Size: t.Size, Index: i})
	}
	owned, err := table.Owned(sh.DrillSeries, singles, sh.MaxDrill)
	if err != nil {
		said.Raise(finding.Caution, Drills, sh.PlaceAt("", "drills"), say.F("%v", err),
			"correct the drills in the shop file")
	}
	var out []Tool
	for _, o := range owned {
		var own *job.Tool
		if o.Index >= 0 && o.Index < len(sh.Drills) {
			own = &sh.Drills[o.Index]
		}
		out = append(out, toolOf(o.Name+" drill", o.Size, own))
	}
	return out
}

// rulesOf are the defaults in force, with what the tables say of reamers and of
// the shanks of drills.
func rulesOf(t Tables, sh *job.Shop, chassis *material.Material) Rules {
	var r Rules
	t.Rules.Fill(&r)
	r.ShankUnder, r.Stub, r.Overrun, r.Packing = t.shankUnder, t.Cutting.ShortMill, t.Cutting.Overrun(), t.Packing
	r.Slide = t.slide
	r.Beyond = func(d float64) float64 { return t.Cutting.Through(0, d) }
	r.ReamStock = func(d float64) (low, high float64) {
		lo, hi, _, err := t.Cutting.ReamStock(d, Machine(sh.MachineKind) == ByHand, chassis.Cutting)
		if err != nil {
			return t.Rules.Pair("ream_stock_mm")
		}
		return lo, hi
	}
	return r
}

// slide is H7 and g6, as slip bushes and their holes are made: limits in mm.
func (t Tables) slide(d float64) (hole, in [2]float64) {
	for i, class := range []string{"H7", "g6"} {
		c, err := t.Limits.Class(dim.OfFloat(d), class)
		if err != nil {
			return [2]float64{d, d}, [2]float64{d, d}
		}
		*[]*[2]float64{&hole, &in}[i] = [2]float64{c.Min().Float(), c.Max().Float()}
	}
	return hole, in
}

// shankUnder is how much a drill's shank may be under its name: h8, for the
// drills of the usual class.
func (t Tables) shankUnder(d float64) float64 {
	c, err := t.Limits.Class(dim.OfFloat(d), "h8")
	if err != nil {
		return 0
	}
	return c.WidthUm().InexactFloat64() / 1000
}
