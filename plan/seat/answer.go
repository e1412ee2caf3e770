package seat

import (
	"math"
	"slices"
)

// Tools are the names of the tools that an answer takes: for the hole of its
// part, for its seat and for its bore, each once. What is there already, and a
// bore that is right as it closes, take none.
func (a *Answer) Tools() []string {
	var out []string
	add := func(name string) {
		if name != "" && !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	if a.Part != nil && !a.Part.Stays {
		add(a.Part.Way.Name)
	}
	if a.Way.Kind.cuts() {
		add(a.Way.Name)
	}
	add(a.FinishTool)
	return out
}

// takesOff says that a way takes metal off: none does that uses what is there.
func (k Kind) takesOff() bool { return k != OldSeatWay && k != CapWay && k != AsItIs }

// cuts says that a way is a tool of the shop.
func (k Kind) cuts() bool { return k == Reamer || k == BoringHead || k == EndMill }

// Turned is how many parts are turned for an answer: the bush, and what stands
// round it.
func (a *Answer) Turned() int {
	n := 0
	if a.Bush.Turned {
		n++
	}
	if a.Part != nil && !a.Part.Stays {
		n++
	}
	return n
}

// BushWall is the wall of the bush at the middle of its limits, mm: of one that is
// turned with its bore off its outside on the thin side.
func (a *Answer) BushWall() float64 {
	b := &a.Bush
	return (b.ODLow+b.ODHigh-b.BLow-b.BHigh)/4 - math.Hypot(a.Offset[0], a.Offset[1])
}

// MinutesMore is what an answer takes longer than a bush from the drawer that is
// pressed into a hole cut for it, by the rules of the shop, minutes: turning what
// is turned, and pressing in what stands round the bush.
func (a *Answer) MinutesMore(r Rules) float64 {
	min := float64(a.Turned()) * r.TurnMinutes
	if a.Part != nil && !a.Part.Stays {
		min += r.PressMinutes
	}
	return min
}
