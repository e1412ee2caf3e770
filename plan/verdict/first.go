package verdict

import (
	"math"
	"slices"
	"strings"

	"rebush/fits/finding"
	"rebush/fits/say"
)

// Try is a change with which the whole job was planned again, and the verdict
// that came of it.
type Try struct {
	finding.Tried
	Key      string   // what is changed, for ties
	Do, What say.Text // "measure", "the middle of front axle.left"
	Expected *float64 // figure that a measurement is expected to give
	Missing  bool     // a figure that nobody has given
	Then     *Result  // nil where the job could not be planned, or nobody can expect the figure
}

// first says whether a try is of a kind that can come before the choice.
func (t Try) first() bool {
	switch t.Kind {
	case "measure", "buy", "make", "send out":
		return true
	}
	return false
}

// First is the verdict with what to measure or to buy before it: where the
// choice is no repair though something is wrong, and one change was tried with
// which it would be one; or where a figure is missing that nobody can expect and
// without which none can be judged. The cheapest of what would be chosen then
// comes first; of equals what costs least to do, then by key.
//
// The runner-up is then what would be chosen without it.
//
// Source: METHODS.md 3.
func (r Result) First(c Case, tries []Try) Result {
	r.Tried = nil
	for _, t := range tries {
		r.Tried = append(r.Tried, t.Tried)
	}
	if c.doomed() || r.Repairs() || r.Choice != Swap && r.Cures {
		return r
	}
	best, asked := -1, []int(nil)
	for i, t := range tries {
		switch {
		case !t.first():
		case t.Then != nil && t.Then.Repairs():
			if best < 0 || t.before(tries[best]) {
				best = i
			}
		case t.Missing && t.OK == nil:
			asked = append(asked, i)
		}
	}
	if best >= 0 || len(asked) > 0 {
		r.RunnerUp = &RunnerUp{r.Choice, "if nothing is done first"}
	}
	switch {
	case best >= 0:
		t := tries[best]
		r.Choice, r.Cures = t.choice(), false
		r.Needs = []Need{{t.Do, t.What, t.Cost, t.Expected}}
		r.Then = t.then()
		r.Bores = everyBore(c.Bores, nil)
		r.Sentence = c.afterMending(c.firstWords(t), false)
	case len(asked) > 0:
		r.Choice, r.Cures = MeasureFirst, false
		slices.SortFunc(asked, func(a, b int) int { return strings.Compare(tries[a].Key, tries[b].Key) })
		for _, i := range asked {
			r.Needs = append(r.Needs, Need{tries[i].Do, tries[i].What, tries[i].Cost, nil})
		}
		r.Bores = everyBore(c.Bores, nil)
		r.Sentence = c.afterMending(c.askedWords(r.Needs), false)
	}
	return r
}

func (t Try) choice() Name {
	if t.Kind == "measure" {
		return MeasureFirst
	}
	return BuyFirst
}

// chosen is the row of what would be chosen then.
func (t Try) chosen() WayRow {
	return t.Then.way(t.Then.Choice)
}

func (t Try) then() *Then {
	w := t.chosen()
	return &Then{Way: w.Way, Cost: w.Cost, FirstTimeRight: w.FirstTimeRight, Unpriced: w.Unpriced}
}

// before orders tries by what the job costs with them, then by what they cost
// themselves, then by what is changed.
func (t Try) before(o Try) bool {
	cost := func(t Try) float64 {
		w := t.chosen()
		switch {
		case w.Cost != nil:
			return *w.Cost
		case w.Hours != nil:
			return *w.Hours
		}
		return math.Inf(1)
	}
	own := func(t Try) float64 {
		if t.Cost == nil {
			return 0
		}
		return *t.Cost
	}
	if a, b := cost(t), cost(o); math.Abs(a-b) > 1e-9 {
		return a < b
	}
	if a, b := own(t), own(o); math.Abs(a-b) > 1e-9 {
		return a < b
	}
	return strings.Compare(t.Key, o.Key) < 0
}

// notYet begins to tell what comes before the choice, with the reason why
// nothing is done as it is, where there is one.
func (c *Case) notYet(why say.Text) say.Text {
	out := say.Text("Not yet")
	if len(c.Mend) > 0 {
		out = "Nothing more yet"
	}
	if why != "" {
		return say.F("%v, since %v. ", out, why)
	}
	return out + ". "
}

// firstWords tell an owner what comes before the choice.
func (c *Case) firstWords(t Try) say.Text {
	w := t.chosen()
	out := c.notYet(c.why(c.weigh())) + say.F("First %v %v: ", t.Do, t.What)
	if t.Expected != nil {
		out += "if it comes out as expected, we would advise "
	} else {
		out += "with that we would advise "
	}
	out += say.Words(w.Way.Owner())
	if w.Cost != nil {
		out += say.F(", %v%v", c.money(*w.Cost), AllTold(w.Unpriced))
	} else if w.Hours != nil {
		out += say.F(", about %v of work", hours(weighed{hours: w.Hours}))
	}
	if w.FirstTimeRight != nil {
		out += say.F("; %v such jobs come right at the first go", say.InHundred(*w.FirstTimeRight))
	}
	return out + "."
}

// askedWords tell what has to be measured before anything can be judged: each
// thing with what is done to it, where that is not said already.
func (c *Case) askedWords(needs []Need) say.Text {
	var list []say.Text
	for i, n := range needs {
		if i > 0 && n.Do == needs[i-1].Do {
			list = append(list, n.What)
			continue
		}
		list = append(list, n.Do+" "+n.What)
	}
	why := c.why(c.weigh())
	for _, k := range c.Works {
		if k.Asks != "" {
			why = k.Unknown
		}
	}
	return c.notYet(why) + say.F("First %v: until then no repair can be judged.", and(list))
}

// Against says why a way is not the one that is advised, "" where it is.
func (r Result) Against(way Name, currency string) say.Text {
	if way == "" || way == r.Choice {
		return ""
	}
	money := func(v float64) say.Text { return say.Join(" ", amount(v).Text(), say.Words(currency)) }
	advised, chosen := say.F("we advise %s", string(r.Choice)), r.way(r.Choice)
	switch w := r.way(way); {
	case w.WhyNot != "":
		return say.F("%v; %s: %v", advised, string(way), w.WhyNot)
	case w.Cost != nil && w.FirstTimeRight != nil:
		against := say.Text("")
		if chosen.Cost != nil {
			against = say.F(" against %v", money(*chosen.Cost))
		}
		return say.F("%v; %s would cost %v%v, and %v such jobs come right at the first go", advised, string(way),
			money(*w.Cost), against, say.InHundred(*w.FirstTimeRight))
	}
	return advised
}

// way is the row of a way; none of a name that is no way.
func (r Result) way(name Name) WayRow {
	for _, w := range r.Ways {
		if w.Way == name {
			return w
		}
	}
	return WayRow{}
}
