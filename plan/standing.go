package plan

import "rebush/plan/survey"

// standing is where a shaft stands at a gear's station when each of its bores
// is offset from a centre by off towards the load.
func standing(s shaftState, share float64, centre func(*bore) [2]float64, off func(*bore) float64) [2]float64 {
	at := func(b *bore) [2]float64 {
		c, o := centre(b), off(b)
		return [2]float64{c[0] + o*b.load[0], c[1] + o*b.load[1]}
	}
	if len(s.bores) == 1 {
		return at(s.bores[0])
	}
	l, r := at(s.bores[0]), at(s.bores[1])
	return [2]float64{l[0] + (r[0]-l[0])*share, l[1] + (r[1]-l[1])*share}
}

func oldCentre(b *bore) [2]float64 { return b.worn.O }

// originally is how far a shaft stood from its old centre when it was new.
func originally(b *bore) float64 { return b.worn.C }

// surveyed is the bore as surveyed, with the worn hole that is asked about just
// now in it.
func (b *bore) surveyed() survey.Hole {
	h := b.old
	h.Worn, h.Middle = b.worn, b.found
	return h
}

func asFound(b *bore) float64           { return b.surveyed().AsFound(b.load) }
func foundCentre(b *bore) [2]float64    { return b.surveyed().FoundCentre(b.load) }
func moved(b *bore) bool                { return b.old.Moved() }
func spoiltSeat(b *bore) bool           { return b.old.Spoilt() }
func (b *bore) stands() survey.WornBore { return b.surveyed().Stands() }
