package survey

import (
	"math"

	"rebush/fits/finding"
	"rebush/fits/say"
)

// RuleSide is about holes that have worn to a side that their load does not press
// them to, or to opposite sides of one shaft.
const RuleSide finding.Rule = "survey/side of wear"

// against asks about wear that one load does not make: the two holes of a shaft
// worn in opposite ways, and a hole worn away from where its shaft is pressed while
// the job says nothing of the load.
func against(desk []bore, holes []Hole, said *finding.List) {
	for i, h := range holes {
		to, ok := h.wornTo()
		if !ok {
			continue
		}
		opposite := false
		for k, o := range holes {
			other, known := o.wornTo()
			if k == i || o.Shaft != h.Shaft || !known || apart(to, other) <= math.Pi/2 {
				continue
			}
			if opposite = true; k > i {
				sayOpposite(said, desk[i].Place, h, o, to, other)
			}
		}
		pressed := desk[i].PressedDeg * deg
		if !opposite && h.Shaft.LoadTowards == nil && apart(to, pressed) > math.Pi/2 {
			sayAgainst(said, desk[i].Place, to, pressed)
		}
	}
}

// wornTo is the way that a hole has surely worn: said or fitted, and deeper than
// twice its doubt.
func (h Hole) wornTo() (rad float64, ok bool) {
	w := h.Worn
	if !h.Known || h.Bore.Repaired || w.Round || w.W <= 2*w.WU || w.W <= 0 {
		return 0, false
	}
	return w.ThetaRad, len(h.Bore.WornTo) == 1 || len(h.Bore.WornTo) == 0 && len(h.Points) > 0
}

// Towards is a direction in words of somebody who looks at the left side.
func Towards(degrees float64) say.Text {
	names := [...]say.Text{"to the right", "up and to the right", "upwards", "up and to the left", "to the left",
		"down and to the left", "downwards", "down and to the right"}
	return names[int(math.Floor(math.Mod(degrees+22.5+720, 360)/45))%8]
}

func sayOpposite(l *finding.List, at finding.Place, a, b Hole, toA, toB float64) {
	l.Raise(finding.Caution, RuleSide, at, say.F(
		"%s has worn %s (%.0f degrees) and %s %s (%.0f): one load does not wear the two holes of a shaft in opposite ways",
		a.Name(), Towards(toA/deg), angle(toA)/deg, b.Name(), Towards(toB/deg), angle(toB)/deg),
		"look at both, seen from the left side: which of the two is right? Where both are, the shaft was twisted in its holes")
}

func sayAgainst(l *finding.List, at finding.Place, to, pressed float64) {
	l.Raise(finding.Caution, RuleSide, at, say.F(
		"it has worn %s (%.0f degrees), but the shaft is taken as pressed %s", Towards(to/deg), angle(to)/deg,
		Towards(pressed/deg)),
		"look again, seen from the left side; where it is so, say which way the shaft is pressed: load_towards")
}
