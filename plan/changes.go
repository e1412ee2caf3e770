package plan

import (
	"maps"
	"slices"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
)

// changeKind is what sort of thing is done otherwise. The words are those of the
// JSON key tried[].kind.
type changeKind string

// The kinds of change.
const (
	buy     changeKind = "buy"
	makeIt  changeKind = "make" // an aid, or by another way of working
	mend    changeKind = "mend"
	rule    changeKind = "rule" // what the job asks for, otherwise
	measure changeKind = "measure"
	sendOut changeKind = "send out"
)

// change is one thing done otherwise than the job has it.
type change struct {
	Kind       changeKind
	Key        string              // what is changed, for ties
	Words      say.Text            // what is done, to stand before a colon: "send the boring out"
	Verb, What say.Text            // the same in two: "buy", "a 5 mm H7 reamer"
	Cost       *float64            // money, nil where no price is known
	Expected   *float64            // of a measurement, the figure with which it is tried
	Missing    bool                // a figure that nobody has given
	Do         func(*job.Job) bool // makes it in a copy of the job; false where nothing comes of it; nil: nobody can expect it
	Bought     []string            // bushes of the series
	Shelf      bool                // it touches what can be bought or made alone, and no figure that was measured
	For        []string            // the stops that it is meant for, by stopKey; none: all
}

// both is two changes made together.
func both(a, b change) change {
	c := change{Kind: a.Kind, Key: a.Key + "\x00" + b.Key, Words: say.F("%v, and %v", a.Words, b.Words),
		Verb: a.Verb, What: say.F("%v, and %v %v", a.What, b.Verb, b.What), Bought: slices.Concat(a.Bought, b.Bought),
		Shelf: a.Shelf && b.Shelf, For: slices.Concat(a.For, b.For)}
	if b.Kind == measure {
		c.Kind = measure // it can change what is bought
	}
	if a.Cost != nil && b.Cost != nil {
		sum := *a.Cost + *b.Cost
		c.Cost = &sum
	}
	c.Do = func(j *job.Job) bool { return a.in(j) && b.in(j) }
	return c
}

// in makes a change in a copy of a job.
func (c change) in(j *job.Job) bool {
	return c.Do == nil && len(c.Bought) > 0 || c.Do != nil && c.Do(j)
}

// priced are the words of a change with its price, where one is known.
func (c change) priced(currency string) say.Text {
	if c.Cost == nil {
		return c.Words
	}
	return say.F("%v (%v)", c.Words, finding.Money(*c.Cost, currency))
}

// editable is a copy of a job in which a change may be made: everything that a
// change touches is the copy's own.
func editable(j *job.Job) *job.Job {
	c, shop := *j, *j.Shop
	c.Shop = &shop
	shop.Reamers, shop.Mandrels = slices.Clip(shop.Reamers), slices.Clip(shop.Mandrels)
	shop.Compounds, shop.Drills = slices.Clip(shop.Compounds), slices.Clip(shop.Drills)
	c.Bushes = slices.Clone(j.Bushes)
	c.Choose, c.Way = map[string]string{}, map[string]string{}
	maps.Copy(c.Choose, j.Choose)
	maps.Copy(c.Way, j.Way)
	c.Gears = slices.Clone(j.Gears)
	for i := range c.Gears {
		g := &c.Gears[i]
		if p := g.Pinion; p != nil {
			own := *p
			g.Pinion = &own
		}
		if p := g.Worm; p != nil {
			own := *p
			g.Worm = &own
		}
	}
	c.Shafts = slices.Clone(j.Shafts)
	for i := range c.Shafts {
		c.Shafts[i].Bores = slices.Clone(c.Shafts[i].Bores)
		for k := range c.Shafts[i].Bores {
			b := &c.Shafts[i].Bores[k]
			with := map[string]string{}
			maps.Copy(with, b.With)
			b.With, b.Edges = with, slices.Clone(b.Edges)
		}
	}
	return &c
}
