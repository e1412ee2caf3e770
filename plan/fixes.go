package plan

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"rebush/feeds/drills"
	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/route"
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/target"
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
	f := fixer{g: t.on, seen: map[string]int{}}
	o := t.nearest()
	for _, s := range o.Findings {
		if s.Level != finding.Stop {
			continue
		}
		f.of = stopKey(s)
		switch s.Rule {
		case seat.RuleNoSeat:
			f.seat(t, s.Where)
		case seat.RuleStock:
			f.moreOf(s.Where, int(math.Round(*s.Want-*s.Have)))
		case survey.RuleNoCentre:
			f.centre(s)
		case route.NoJig:
			if c, ok := jigPlate(f.g.own); ok {
				f.add(c)
			}
			if c, ok := boringOut(f.g.own); ok {
				f.add(c)
			}
		case target.TightTooth:
			f.mesh(s.Where)
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

// fixer gathers changes, each once.
type fixer struct {
	g    *ground
	of   string // the stop that changes are sought for
	list []change
	seen map[string]int
}

func (f *fixer) add(c change) {
	if i, ok := f.seen[c.Key]; ok {
		f.list[i].For = append(f.list[i].For, f.of)
		return
	}
	f.seen[c.Key] = len(f.list)
	c.For = []string{f.of}
	f.list = append(f.list, c)
}

// seat seeks what would let a bush be seated at a hole.
func (f *fixer) seat(t toured, bore string) {
	f.series(t, bore)
	f.unchosen(bore)
	for _, a := range f.misses(t, bore) {
		if low, high, ok := a.SeatThatWould(); ok {
			f.reamers(low, high, "seat of "+a.Bush.Code)
			f.head(low, high)
		}
		switch a.Fail.Figure() {
		case seat.OfBore, seat.OfFinish:
			f.finisher(bore, a)
		case seat.OfMetalLeft:
			f.edge(bore, a)
		case seat.OfHold, seat.OfGap, seat.OfInterference, seat.OfTension:
			f.compound()
		case seat.OfSeat:
			for _, c := range readings(f.g.own, f.g.w.instr) {
				f.add(c)
			}
		}
	}
	f.compound()
	f.turned()
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

// series seeks bushes of the series that are sold: those that would go best.
func (f *fixer) series(t toured, bore string) {
	n, seen := 0, map[string]bool{}
	for _, key := range slices.Sorted(maps.Keys(t.Stand)) {
		s := t.Stand[key]
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
	if fixedMend(j, bore) != "" {
		f.add(change{Kind: mend, Key: "way", Words: "another mend than the job asks for", Verb: "take",
			What: "another mend than the job asks for", Do: func(j *job.Job) bool {
				clear(j.Way)
				return true
			}})
	}
}

// reamers seeks reamers of the series that are sold whose hole lies between two
// limits.
func (f *fixer) reamers(low, high float64, _ string) {
	n := 0
	in := seatInput(f.g)
	for _, series := range drills.ReamerSeries() {
		for _, d := range f.g.w.drills.All(series) {
			v := d.Size.Float()
			if v < low-0.05 || v > high+0.05 || n == 2*nearestMisses {
				continue
			}
			tool := job.Tool{Size: d.Size, Name: d.Name, Class: "H7", Index: len(f.g.own.Shop.Reamers)}
			lo, hi, err := in.SeatBy(tool)
			if err != nil || lo < low-1e-6 || hi > high+1e-6 {
				continue
			}
			n++
			f.add(reamer(tool))
		}
	}
}

func seatInput(g *ground) seat.Input {
	in, _ := seat.FromJob(g.j, g.w.forSeat(), g.c)
	return in
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
	f.reamers(low, high, "bore")
	size := dim.OfFloat(math.Round((low+high)/2*1000)/1000 + 0.01)
	f.add(change{Kind: makeIt, Key: fmt.Sprintf("mandrel %v", size), Words: say.F("a sizing mandrel of %v, to make or to buy", say.MM(size.Float(), 3).Trim()),
		Verb: "make", What: say.F("a sizing mandrel of %v", say.MM(size.Float(), 3).Trim()), Shelf: true, Do: func(j *job.Job) bool {
			j.Shop.Mandrels = append(j.Shop.Mandrels, job.Tool{Size: size, Name: size.String(), Index: len(j.Shop.Mandrels)})
			return true
		}})
}

// compound is retaining compound for a shop without.
func (f *fixer) compound() {
	if len(f.g.own.Shop.Compounds) > 0 {
		return
	}
	f.add(change{Kind: buy, Key: "compound", Words: "retaining compound, to buy", Verb: "buy", What: "retaining compound", Shelf: true,
		Do: func(j *job.Job) bool {
			j.Shop.Compounds = append(j.Shop.Compounds, "retaining compound")
			return true
		}})
}

// turnedMetal is what a bush is turned of where the job has none to turn.
const turnedMetal = "bearing bronze C93200"

// turned are bushes turned for their seats: in this shop, or by somebody with a
// lathe.
func (f *fixer) turned() {
	j := f.g.own
	metal, has := turnedMetal, false
	for _, b := range j.Bushes {
		if b.Turned {
			metal, has = b.Material, true
		}
	}
	lathe := j.Shop.Lathe || j.Shop.MachineKind == "lathe"
	if has && lathe {
		return
	}
	c := change{Kind: makeIt, Key: "turned", Words: say.F("bushes turned of %s", metal), Verb: "turn", What: say.F("the bushes of %s", metal),
		Shelf: true, Do: func(j *job.Job) bool {
			j.Shop.Lathe = true
			if !has {
				j.Bushes = append(j.Bushes, job.Bush{Code: "turned bush", Turned: true, Material: metal, Index: len(j.Bushes)})
			}
			return true
		}}
	if !lathe {
		c.Kind, c.Words, c.Verb = sendOut, say.F("bushes of %s turned outside", metal), "have turned"
	}
	f.add(c)
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

// centre is a middle that nobody has given and nothing tells. Where the other
// plate has it, that is what it would be expected to be.
func (f *fixer) centre(s finding.Finding) {
	c := change{Kind: measure, Key: "centre " + s.Where, Missing: true, Verb: "measure",
		What:  say.F("the middle of the hole %s, and how wide and how narrow it is", s.Where),
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

// mesh is a mesh whose tightest tooth would bind: its mating gear in a place that
// is known better, gears that run truer.
func (f *fixer) mesh(gear string) {
	for _, c := range readings(f.g.own, f.g.w.instr) {
		f.add(c)
	}
	f.add(change{Kind: makeIt, Key: "true " + gear, Words: say.F("the gears of %s trued to half their run-out", gear), Verb: "true",
		What: say.F("the gears of %s to half their run-out", gear), Do: func(j *job.Job) bool {
			for i := range j.Gears {
				g := &j.Gears[i]
				if g.Name != gear || !g.Wheel.Runout.Given() {
					continue
				}
				g.Wheel.Runout = dim.OfFloat(g.Wheel.Runout.Float() / 2)
				return true
			}
			return false
		}})
	f.add(change{Kind: makeIt, Key: "own axle", Words: "the bores opened to their own axles", Verb: "open", What: "the bores to their own axles",
		Shelf: true, Do: finishBy("to its own axle")})
}
