package survey

import (
	"fmt"
	"math"

	"rebush/fits/finding"
	"rebush/fits/table"
	"rebush/plan/job"
)

const deg = math.Pi / 180

// Input is what a job tells the survey, bore by bore in the job's order.
type Input struct{ Bores []Found }

// Found is one bore as it was found, with every way in which its old centre may
// be known.
type Found struct {
	Hole  Hole // Shaft, Bore and Middle are set
	Place finding.Place

	Own    []Source // what was measured at the bore itself; best asked first
	Frames []Source // what a drawing or a sister tells
	Round  Source   // its diameters alone, for a hole of which nothing else tells the wear
	// Drilling is what the bores of one shaft differ by as they were drilled.
	Drilling Figure
	// PressedDeg is the way that the shaft is pressed, degrees.
	PressedDeg float64
}

// reader reads one bore.
type reader struct {
	j     *job.Job
	tools *Instruments
	rules *table.Rules
	memo  *Memo
	h     Hole
}

// FromJob reads the bores of a job, with the instruments that measured them and
// the defaults in force; memo hands on what was found from the same points, nil
// nothing.
func FromJob(j *job.Job, tools *Instruments, rules *table.Rules, memo *Memo) Input {
	var in Input
	for i := range j.Shafts {
		s := &j.Shafts[i]
		for k := range s.Bores {
			r := reader{j, tools, rules, memo, Hole{Shaft: s, Bore: &s.Bores[k]}}
			in.Bores = append(in.Bores, r.found())
		}
	}
	return in
}

func (r reader) found() Found {
	b := r.h.Bore
	if b.Centre.Given() {
		r.h.Middle = b.Centre.Float()
	}
	if r.h.Spoilt() {
		r.h.Middle = b.Seat.Centre.Float()
	}
	r.h.journal, r.h.Used = r.journal(), -1
	f := Found{Hole: r.h, Place: r.j.Place(b.Name), Frames: r.frames(), Round: r.round(), Drilling: r.drilling(),
		PressedDeg: r.j.Chassis.LoadTowards(r.h.Shaft)}
	if !b.Repaired {
		for _, of := range []func() Source{r.seat, r.probed, r.diameters, r.walls, r.spans} {
			if s := of(); s.Find != nil || len(s.Said) > 0 {
				f.Own = append(f.Own, s)
			}
		}
	}
	return f
}

// drilling is the doubt with which one plate tells of the other.
func (r reader) drilling() Figure {
	if r.j.Chassis.DrilledTogether == job.Yes {
		return rule(r.rules.Get("u_other_plate_drilled_together_mm"))
	}
	return rule(r.rules.Get("u_other_plate_mm"))
}

func (r reader) key(k string) string { return r.h.key(k) }

// line is where a figure of the bore stands in the job.
func (r reader) line(figure string) string { return r.j.Source(r.h.Line(figure)) }

// figure is one that was read at the bore, in mm.
func (r reader) figure(key, what, line string, v float64) Figure {
	return Figure{Key: r.key(key), What: what, Unit: "mm", Source: r.line(line), V: v}
}

// point are the two figures of a place.
func (r reader) point(key, of, line string, at [2]float64) []Figure {
	return []Figure{r.figure(key+"/0", "x of "+of, line, at[0]), r.figure(key+"/1", "y of "+of, line, at[1])}
}

// u is the doubt of a figure that an instrument read.
func (r reader) u(key, of string, g Reading) Figure {
	return Figure{Key: r.key(key), What: "standard uncertainty of " + of + ", " + g.Name, Unit: "mm", Source: g.From,
		V: g.U}
}

// journal is the diameter of the journal that wore the hole, 0 where it was not
// measured.
func (r reader) journal() Figure {
	return Figure{Key: r.key("journal_now_mm"), What: "journal", Unit: "mm",
		Source: r.j.Source("shafts/" + r.h.Shaft.Name + "/journal"), V: r.h.Journal()}
}

// direction is one that was read at the bore, in degrees.
func (r reader) direction(key, what, line string, v float64) Figure {
	return Figure{Key: r.key(key), What: what, Unit: "deg", Source: r.line(line), V: v}
}

// sides are the directions that it has worn to.
func (r reader) sides() []Figure {
	var out []Figure
	for i, d := range r.h.Bore.WornTo {
		out = append(out, r.direction(fmt.Sprintf("worn_to/%d", i), "side it has worn to", "worn_to", d))
	}
	return out
}

// usual is what is known of the side of wear where nobody says it.
func (r reader) usual() []Figure {
	towards := r.j.Chassis.LoadTowards(r.h.Shaft)
	source := r.j.Source("chassis/rails")
	if r.h.Shaft.LoadTowards != nil {
		source = r.j.Source("shafts/" + r.h.Shaft.Name + "/load_towards")
	}
	out := []Figure{{Key: r.key("pressed_deg"), What: "the way the shaft is pressed", Unit: "deg", Source: source,
		V: towards}}
	for _, name := range []string{"u_usual_side_deg", "usual_side_share", "unsaid_worn_share", "unsaid_wear_least_mm",
		"unsaid_wear_most_mm"} {
		out = append(out, rule(r.rules.Get(name)))
	}
	return out
}

// usual is the same from its figures.
func usual(in []float64) Usual {
	return Usual{Rad: in[0] * deg, U: in[1] * deg, Share: in[2], Worn: in[3], Least: in[4], Most: in[5]}
}

// by says how well a figure of a bore is known. A name that no shop and no
// table knows is told, and the default taken.
func (r reader) by(s *Source, b *job.Bore, key string, what Quantity) Reading {
	g, err := r.tools.Of(b, key, what)
	if err != nil {
		sayNoInstrument(&s.Said, r.j.Place(b.Name), err)
		return r.tools.Default(what)
	}
	return g
}

func radians(degrees []float64) []float64 {
	out := make([]float64, len(degrees))
	for i, d := range degrees {
		out[i] = d * deg
	}
	return out
}
