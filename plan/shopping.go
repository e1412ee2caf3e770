package plan

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"rebush/feeds/drills"
	"rebush/fits/dim"
	"rebush/fits/material"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/seat"
)

// series seeks bushes of the series that are sold: those that would go best.
func (f *fixer) series(t toured, bore string) {
	n, seen := 0, map[string]bool{}
	for _, s := range slices.SortedFunc(slices.Values(t.placings), func(a, b *placing) int { return cmp.Compare(a.key(), b.key()) }) {
		for i := range s.offers {
			if s.offers[i].Name() != bore {
				continue
			}
			for _, d := range s.offers[i].Mends {
				for _, a := range d.Buy {
					if !a.Feasible || seen[a.Bush.Code] || n == nearestMisses {
						continue
					}
					seen[a.Bush.Code] = true
					n++
					c := change{Kind: buy, Key: "bush " + a.Bush.Code, Words: say.F("bush %s, to buy", a.Bush.Code), Verb: "buy",
						What: say.F("bush %s", a.Bush.Code), Bought: []string{a.Bush.Code}, Shelf: true}
					if a.Bush.Priced {
						price := a.Bush.Price
						c.Cost = &price
					}
					f.add(c)
				}
			}
		}
	}
}

// reamers seeks reamers of the series that are sold whose hole lies nearest to
// the middle of two limits, and reaches between them.
func (f *fixer) reamers(low, high float64) {
	type sold struct {
		tool job.Tool
		off  float64
	}
	var list []sold
	for _, series := range drills.ReamerSeries() {
		for _, d := range f.g.w.drills.All(series) {
			if v := d.Size.Float(); v < low-0.1 || v > high+0.1 {
				continue
			}
			tool := job.Tool{Size: d.Size, Name: d.Name, Class: "H7", Index: len(f.g.own.Shop.Reamers)}
			if lo, hi, err := f.in.SeatBy(tool); err == nil && lo < high && hi > low {
				list = append(list, sold{tool, math.Abs(lo + hi - low - high)})
			}
		}
	}
	slices.SortStableFunc(list, func(a, b sold) int { return cmp.Compare(a.off, b.off) })
	for _, x := range list[:min(len(list), nearestMisses)] {
		f.add(reamer(x.tool))
	}
}

// reamer is a reamer to be bought.
func reamer(tool job.Tool) change {
	name := strings.TrimSpace(tool.Name + " " + tool.Class + " reamer")
	return change{Kind: buy, Key: "reamer " + name, Words: say.F("a %s, to buy", name), Verb: "buy", What: say.F("a %s", name),
		Shelf: true, Do: func(j *job.Job) bool {
			j.Shop.Reamers = append(j.Shop.Reamers, tool)
			return true
		}}
}

// head is a boring head, for a mill that has none that reaches so far.
func (f *fixer) head(low, high float64) {
	sh := f.g.own.Shop
	if sh.MachineKind != "mill" || sh.BoringFrom.Given() && sh.BoringFrom.Float() <= low && sh.BoringTo.Float() >= high {
		return
	}
	from, to := dim.OfFloat(math.Floor(low)), dim.OfFloat(math.Max(20, math.Ceil(high)))
	f.add(change{Kind: buy, Key: "boring head", Words: say.F("a boring head from %v, to buy", say.MM(from.Float(), 3).Trim()), Verb: "buy",
		What: say.F("a boring head from %v", say.MM(from.Float(), 3).Trim()), Shelf: true, Do: func(j *job.Job) bool {
			if j.Shop.BoringFrom.Given() {
				from, to = smaller(from, j.Shop.BoringFrom), larger(to, j.Shop.BoringTo)
			}
			j.Shop.BoringFrom, j.Shop.BoringTo = from, to
			return true
		}})
}

func smaller(a, b dim.Length) dim.Length {
	if b.Float() < a.Float() {
		return b
	}
	return a
}

func larger(a, b dim.Length) dim.Length {
	if b.Float() > a.Float() {
		return b
	}
	return a
}

// finisher is a reamer or a mandrel that brings a bore to size.
func (f *fixer) finisher(bore string, a *seat.Answer) {
	low, high := a.Bore[0], a.Bore[1]
	if high <= low {
		return
	}
	f.reamers(low, high)
	size := dim.OfFloat(math.Round((low+high)/2*1000)/1000 + 0.01)
	f.add(change{Kind: makeIt, Key: fmt.Sprintf("mandrel %v", size), Words: say.F("a sizing mandrel of %v, to make or to buy", say.MM(size.Float(), 3).Trim()),
		Verb: "make", What: say.F("a sizing mandrel of %v", say.MM(size.Float(), 3).Trim()), Shelf: true, Do: func(j *job.Job) bool {
			j.Shop.Mandrels = append(j.Shop.Mandrels, job.Tool{Size: size, Name: size.String(), Index: len(j.Shop.Mandrels)})
			return true
		}})
}

// compound is retaining compound for a shop without; false where it has some.
func (f *fixer) compound() (change, bool) {
	return change{Kind: buy, Key: "compound", Words: "retaining compound, to buy", Verb: "buy", What: "retaining compound", Shelf: true,
		Do: func(j *job.Job) bool {
			j.Shop.Compounds = append(j.Shop.Compounds, "retaining compound")
			return true
		}}, len(f.g.own.Shop.Compounds) == 0
}

// turnedMetal is what a bush is turned of where the job has none to turn.
const turnedMetal = "bearing bronze C93200"

// bushings are other bushes than the drawer holds, and another hold: turned of
// bronze in this shop or outside, set in compound, and both together.
func (f *fixer) bushings() {
	turned, hasTurned := f.turned()
	glue, hasGlue := f.compound()
	if hasTurned {
		f.add(turned)
	}
	if hasGlue {
		f.add(glue)
	}
	if hasTurned && hasGlue {
		f.add(both(turned, glue))
	}
}

// turned are bushes turned for their seats of a metal that carries current and
// stands a press; false where the shop can turn such ones already.
func (f *fixer) turned() (change, bool) {
	j := f.g.own
	lathe := j.Shop.Lathe || j.Shop.MachineKind == "lathe"
	for _, b := range j.Bushes {
		if b.Turned && lathe && f.solid(b.Material) {
			return change{}, false
		}
	}
	metal := turnedMetal
	for _, b := range j.Bushes {
		if b.Turned && f.solid(b.Material) {
			metal = b.Material
		}
	}
	c := change{Kind: makeIt, Key: "turned", Words: say.F("bushes turned of %s", metal), Verb: "buy",
		What: say.F("%s to turn the bushes from", metal), Shelf: true, Do: func(j *job.Job) bool {
			j.Shop.Lathe = true
			j.Bushes = append(j.Bushes, job.Bush{Code: "turned bush", Turned: true, Material: metal, Index: len(j.Bushes)})
			return true
		}}
	if !lathe {
		c.Kind, c.Words, c.Verb, c.What = sendOut, say.F("bushes of %s turned outside", metal), "have", say.F("bushes of %s turned outside", metal)
	}
	return c, true
}

// solid says whether a metal is a bronze or a brass that is not porous.
func (f *fixer) solid(name string) bool {
	m, err := f.g.w.materials.Find(name)
	return err == nil && (m.Kind == material.SolidBronze || m.Kind == material.BrassBush)
}

// mostRelaxed is how far a rule of judgement is stretched: no shop would answer
// for more.
const mostRelaxed = 1.5

// rule is a rule of judgement that the shop may set otherwise, where it answers
// for it.
func (f *fixer) rule(name string, want float64) {
	want = dim.Near(want, 4)
	if now := f.g.w.rules.V(name); want > mostRelaxed*now || want < now/mostRelaxed {
		return
	}
	f.add(change{Kind: rule, Key: fmt.Sprintf("rule %s %g", name, want), Verb: "answer for",
		Words: say.F("the rule %s at %g instead of %g, if the shop answers for it", name, want, f.g.w.rules.V(name)),
		What:  say.F("the rule %s at %g", name, want), Shelf: true, Do: func(j *job.Job) bool {
			rules := j.Shop.Rules.Copy()
			if rules.Set(name, want, math.NaN(), "tried") != nil {
				return false
			}
			j.Shop.Rules = rules
			return true
		}})
}

// moreOf buys bushes of which the drawer runs short.
func (f *fixer) moreOf(code string, n int) {
	for i := range f.g.own.Bushes {
		b := &f.g.own.Bushes[i]
		if b.Code != code {
			continue
		}
		c := change{Kind: buy, Key: "more " + code, Words: say.F("%d more of bush %s, to buy", n, code), Verb: "buy",
			What: say.F("%d more of bush %s", n, code), Shelf: true, Do: func(j *job.Job) bool {
				left := *j.Bushes[i].OnHand + n
				j.Bushes[i].OnHand = &left
				return true
			}}
		if b.Price != nil {
			cost := float64(n) * *b.Price
			c.Cost = &cost
		}
		f.add(c)
	}
}
