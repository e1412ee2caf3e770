package plan

import "rebush/plan/survey"

// surveyed is the bore as surveyed, with the worn hole that is asked about just
// now in it.
func (b *bore) surveyed() survey.Hole {
	h := b.old
	h.Worn, h.Middle = b.worn, b.found
	return h
}

func asFound(b *bore) float64           { return b.surveyed().AsFound(b.load) }
func moved(b *bore) bool                { return b.old.Moved() }
func spoiltSeat(b *bore) bool           { return b.old.Spoilt() }
func (b *bore) stands() survey.WornBore { return b.surveyed().Stands() }
