package verdict

import "rebush/fits/say"

// Before is one thing that may be measured, bought or made before a choice, with
// the case as it then is.
type Before struct {
	Do, What say.Text
	Asked    bool // a figure that nobody can expect: without it no repair is judged
	Case     Case
}

// Before is what a try leaves to be weighed at other figures, of its case; ok is
// false where it cannot come before the choice.
func (t Try) Before(c Case) (b Before, ok bool) {
	asked := t.Missing && t.OK == nil
	return Before{Do: t.Do, What: t.What, Asked: asked, Case: c}, t.first() && (asked || t.Then != nil)
}

// before are the things that may come before a swap: where one of them would make
// a repair the choice it comes first, and a swap does not win.
func (c *Case) before(w Name) []Before {
	if w != Swap || c.First == nil || c.doomed() {
		return nil
	}
	return c.First()
}

// repairs says that the case with one thing done first is repaired, after a change
// of its ways.
func (b *Before) repairs(t *Case, change func([]weighed)) bool {
	l := t.weigh()
	if change != nil {
		change(l)
	}
	i := t.pick(l)
	return i >= 0 && l[i].cures && l[i].name.Cuts()
}

// with is the case with one figure changed.
func (c *Case) with(change func(*Case, float64), v float64) *Case {
	t := *c
	if c.Other != nil {
		other := *c.Other
		t.Other = &other
	}
	change(&t, v)
	return &t
}
