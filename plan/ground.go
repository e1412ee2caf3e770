package plan

import (
	"slices"

	"rebush/fits/ledger"
	"rebush/plan/choice"
	"rebush/plan/job"
	"rebush/plan/seat"
	"rebush/plan/target"
)

// ground is what every way of a job stands on: what was found, before anything
// is placed or cut. It is made once and never changed.
type ground struct {
	w        *books
	c        seat.Casting
	own      *job.Job // as it was written
	j        *job.Job // with the axles left alone that need nothing
	shop     target.Shop
	book     *ledger.Ledger
	survey   Surveyed
	meshes   Meshed
	handling handling
	choice   choice.Rules
	needed   []string // bores that something is wrong with, in the order of the job
}

// surveyedGround looks at a truck. An axle of which no hole needs anything is kept, as
// if the job left it alone; where none does, all are looked at as they are.
func surveyedGround(w *books, c seat.Casting, j *job.Job) *ground {
	g := look(w, c, j, j)
	asFound := g.weighing(nil)
	g.needed = asFound.Needed()
	if kept := leaving(j, g.needed); kept != nil {
		needed := g.needed
		g = look(w, c, j, kept)
		g.needed = needed
	}
	return g
}

// look surveys a job and its meshes.
func look(w *books, c seat.Casting, own, j *job.Job) *ground {
	g := &ground{w: w, c: c, own: own, j: j, shop: w.places(j.Shop), book: ledger.New()}
	g.weighs()
	g.survey = surveyed(w, j, g.book)
	g.meshes = meshed(w, j, g.book, g.shop, g.survey.Holes, seat.RulesOf(w.rules))
	return g
}

// restocked is the same truck in a shop that differs in what it can buy or make
// alone: what was found stands.
func (g *ground) restocked(w *books, c seat.Casting, j *job.Job) *ground {
	on := *g
	on.w, on.c, on.own, on.j = w, c, j, j
	if kept := leaving(j, g.needed); kept != nil {
		on.j = kept
	}
	on.weighs()
	return &on
}

// weighs reads what seats are weighed by in this shop.
func (g *ground) weighs() {
	g.w.rules.Fill(&g.handling)
	g.choice = choice.Rules{Rate: 1, SetupHours: g.j.Shop.SetupHours}
	g.w.rules.Fill(&g.choice)
	if g.j.Shop.PerHour != nil {
		g.choice.Rate, g.choice.Priced = *g.j.Shop.PerHour, true
	}
}

// leaving is a job in which the shafts are left alone that have none of some
// bores; nil where that changes nothing, or would leave all of them.
func leaving(j *job.Job, needed []string) *job.Job {
	out := editable(j)
	changed, working := false, false
	for i := range out.Shafts {
		s := &out.Shafts[i]
		if s.Leave {
			continue
		}
		if slices.ContainsFunc(s.Bores, func(b job.Bore) bool {
			return slices.Contains(needed, s.Name+"."+string(b.Side)) || fixedMend(j, s.Name+"."+string(b.Side)) != ""
		}) {
			working = true
			continue
		}
		s.Leave, changed = true, true
	}
	if !changed || !working {
		return nil
	}
	return out
}

// fixedMend is the mend that a job asks for at a bore, "" any.
func fixedMend(j *job.Job, bore string) seat.Mend {
	if m := j.Way[bore]; m != "" {
		return seat.Mend(m)
	}
	return seat.Mend(j.Way[""])
}
