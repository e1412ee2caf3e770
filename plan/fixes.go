package plan

import (
	"math"
	"slices"

	"rebush/fits/finding"
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/route"
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/target"
	"rebush/plan/verdict"
)

// nearestMisses is how many of the nearest misses of a hole changes are sought
// for.
const nearestMisses = 3

// stopKey names a stop.
func stopKey(f finding.Finding) string { return f.Rule.Name() + "\x00" + f.Where }

// fixes are the changes that could take away what stops a truck: each comes from
// what stops it, and from the nearest misses where no bush can be seated. None of
// them is known to help before it was tried.
func (t toured) fixes() []change {
	f := fixer{g: t.on, in: &t.placings[0].in, seen: map[string]int{}}
	o := t.nearest()
	for _, s := range o.Findings {
		if s.Level != finding.Stop {
			continue
		}
		f.of = stopKey(s)
		switch s.Rule {
		case seat.RuleNoSeat:
			f.seat(t, s.Where)
		case verdict.RuleWay:
			f.unchosen("")
		case seat.RuleStock:
			f.moreOf(s.Where, int(math.Round(*s.Want-*s.Have)))
		case survey.RuleNoCentre:
			f.centre(s)
		case survey.RuleGrowth:
			f.wheelbase()
		case route.NoJig:
			if c, ok := jigPlate(f.g.own); ok {
				f.add(c)
			}
			if c, ok := boringOut(f.g.own); ok {
				f.add(c)
			}
		case mesh.Overlap:
			f.overlap(s)
		case target.TightTooth:
			f.mesh()
		}
	}
	for _, name := range asking(t) {
		f.of = seatUnknown + "\x00" + name
		f.oldSeat(name)
	}
	return f.list
}

// seatUnknown stands for the rule of a hole whose seat an old bush hides.
const seatUnknown = "seat unknown"

// asking are the bores whose seat nobody knows, over all ways.
func asking(t toured) []string {
	var out []string
	for i := range t.Ways {
		for _, name := range t.Ways[i].steps.Asks {
			if !slices.Contains(out, name) {
				out = append(out, name)
			}
		}
	}
	slices.Sort(out)
	return out
}

// seat seeks what would let a bush be seated at a hole.
func (f *fixer) seat(t toured, bore string) {
	f.series(t, bore)
	f.unchosen(bore)
	for _, a := range f.misses(t, bore) {
		if low, high, ok := a.SeatThatWould(); ok {
			f.reamers(low, high)
			f.head(low, high)
		}
		if name, want := a.Fail.Rule(f.g.w.rules.V); name != "" {
			f.rule(name, want)
		}
		switch a.Fail.Figure() {
		case seat.OfBore, seat.OfFinish:
			f.finisher(bore, a)
		case seat.OfMetalLeft:
			f.edge(bore, a)
		case seat.OfTool:
			f.head(a.Fail.Have, a.Fail.Have)
		case seat.OfSeat:
			for _, c := range readings(f.g.own, f.g.w.instr) {
				f.add(c)
			}
		}
	}
	f.bushings()
}

// misses are the nearest misses of a hole over all ways, each bush once.
func (f *fixer) misses(t toured, bore string) []*seat.Answer {
	var out []*seat.Answer
	seen := map[string]bool{}
	for i := range t.Ways {
		if t.Ways[i].placing == nil {
			continue
		}
		n := 0
		for k := range t.Ways[i].bores {
			x := &t.Ways[i].bores[k]
			if x.Name() != bore {
				continue
			}
			for m := range x.Answers {
				a := &x.Answers[m]
				key := a.Bush.Code + "\x00" + a.Way.Name + "\x00" + string(a.Mend)
				if a.Feasible || seen[key] || n == nearestMisses {
					continue
				}
				seen[key] = true
				n++
				out = append(out, a)
			}
		}
	}
	return out
}

// unchosen lets a hole have another bush, or come to size another way, than the
// job asks for.
func (f *fixer) unchosen(bore string) {
	j := f.g.own
	if j.Choose[bore] != "" || j.Choose[""] != "" {
		f.add(change{Kind: rule, Key: "choose", Words: "any bush of the list instead of the one that the job chooses", Verb: "take",
			What: "any bush of the list", Shelf: true, Do: func(j *job.Job) bool {
				clear(j.Choose)
				return true
			}})
	}
	if j.Finish[bore] != "" || j.Finish[""] != "" {
		f.add(change{Kind: rule, Key: "finish", Words: "bring the bores to size any way instead of the one that the job asks for",
			Verb: "bring", What: "the bores to size any way", Shelf: true, Do: func(j *job.Job) bool {
				j.Finish = map[string]string{}
				return true
			}})
	}
	if fixedMend(j, bore) != "" || bore == "" && len(j.Way) > 0 {
		f.add(change{Kind: mend, Key: "way", Words: "another mend than the job asks for", Verb: "take",
			What: "another mend than the job asks for", Do: func(j *job.Job) bool {
				clear(j.Way)
				return true
			}})
	}
}
