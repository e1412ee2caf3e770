package plan

import (
	"fmt"
	"math"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/seat"
	"rebush/plan/survey"
)

// edge is metal at the edge that misses what is needed by no more than the
// measuring can tell: if it comes out at that or better.
func (f *fixer) edge(bore string, a *seat.Answer) {
	short := a.Fail.Want - a.Fail.Have
	shaft, b := f.g.own.Bore(bore)
	if shaft == nil || b == nil || short <= 0 {
		return
	}
	r, err := f.g.w.instr.Of(b, "edges", survey.Width)
	if err != nil {
		r = f.g.w.instr.Default(survey.Width)
	}
	if short > 2*r.U {
		return
	}
	short = math.Ceil(short*1000) / 1000
	for i, e := range b.Edges {
		size := e.Metal
		if !size.Given() {
			size = e.Away
		}
		want := dim.OfFloat(size.Float() + short)
		v := want.Float()
		f.add(change{Kind: measure, Key: fmt.Sprintf("edge %s %d", bore, i), Verb: "measure again", Expected: &v,
			Words: say.F("the metal left to the edge at %.0f degrees of %s measured again, if it comes out at %v or better", e.AtDeg, bore, say.MM(want.Float(), 3).Trim()),
			What:  say.F("the metal left to the edge at %.0f degrees of %s, wanted %v or better", e.AtDeg, bore, say.MM(want.Float(), 3).Trim()),
			Do: func(j *job.Job) bool {
				_, b := j.Bore(bore)
				if b.Edges[i].Metal.Given() {
					b.Edges[i].Metal = want
				} else {
					b.Edges[i].Away = want
				}
				return true
			}})
	}
}

// wheelbase is one that the holes dispute: expected as they have it.
func (f *fixer) wheelbase() {
	g, w := f.g.survey.Growth, f.g.own.Chassis.Wheelbase
	if g.OtherMM == 0 || w == nil || !w.Found.Given() {
		return
	}
	other := g.OtherMM
	if dim.Near(w.Found.Float(), 6) == dim.Near(other, 6) {
		other = g.MM
	}
	want := dim.OfFloat(dim.Near(other, 6))
	v := want.Float()
	f.add(change{Kind: measure, Key: "wheelbase", Verb: "measure again", What: "the wheelbase", Expected: &v,
		Words: say.F("the wheelbase measured again, if it comes out at %v as between the old centres", say.MM(v, 3).Trim()),
		Do: func(j *job.Job) bool {
			own := *j.Chassis.Wheelbase
			own.Found = want
			j.Chassis.Wheelbase = &own
			return true
		}})
}

// overlap is a mesh whose figures cannot all be right: what each would come out at
// nobody can expect.
func (f *fixer) overlap(s finding.Finding) {
	for _, d := range f.g.meshes.Drives {
		if d.Name == s.Where {
			f.add(change{Kind: measure, Key: "mesh " + d.Name, Missing: true, Verb: "measure again", What: d.Again(),
				Words: say.F("the place of the mate and the teeth of %s measured again", d.Name)})
		}
	}
}

// centre is a middle that nobody has given and nothing tells. Where the other
// plate has it, that is what it would be expected to be.
func (f *fixer) centre(s finding.Finding) {
	c := change{Kind: measure, Key: "centre " + s.Where, Missing: true, Verb: "measure",
		What:  say.F("%s (its middle, widest and narrowest)", s.Where),
		Words: say.F("the middle of %s measured", s.Where)}
	f.add(c)
}

// oldSeat is a seat that an old bush hides: expected like that of the other
// plate, where that is known.
func (f *fixer) oldSeat(bore string) {
	shaft, b := f.g.own.Bore(bore)
	if shaft == nil || b == nil {
		return
	}
	c := change{Kind: measure, Key: "old seat " + bore, Missing: true, Verb: "push out the old bush and measure",
		What: say.F("the seat of %s", bore), Words: say.F("the old bush of %s pushed out and its seat measured", bore)}
	for i := range shaft.Bores {
		other := shaft.Bores[i].Seat
		if other == nil || !other.Sound {
			continue
		}
		v := other.Diameter.Float()
		c.Expected = &v
		c.Words = say.F("the old bush of %s pushed out, if its seat comes out sound at %v as on the other side", bore, say.MM(other.Diameter.Float(), 3).Trim())
		c.Do = func(j *job.Job) bool {
			_, b := j.Bore(bore)
			seat := *other
			b.Bushed, b.Seat = false, &seat
			return true
		}
	}
	f.add(c)
}

// mesh is a mesh whose tightest tooth would bind: its figures known better, gears
// that run truer, bores that leave the axles less play.
func (f *fixer) mesh() {
	for _, c := range gearReadings(f.g.own, f.g.w, f.g.meshes.Drives) {
		f.add(c)
	}
	for _, c := range readings(f.g.own, f.g.w.instr) {
		f.add(c)
	}
	f.add(openedToAxles())
}
