package plan

import "rebush/plan/seat"

// fixer gathers changes, each once.
type fixer struct {
	g    *ground
	in   *seat.Input // what the search reads of the shop
	of   string      // the stop that changes are sought for
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
