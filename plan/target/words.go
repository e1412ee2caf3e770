package target

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/mesh"
)

// What the room has to say. The last two are said when the bushes are chosen.
const (
	Unreckoned   finding.Rule = "target/target"
	LongMove     finding.Rule = "target/long move"
	Likelier     finding.Rule = "target/likelier"
	Lean         finding.Rule = "target/lean"
	MeshOff      finding.Rule = "target/mesh off"
	MeshFixed    finding.Rule = "target/mesh fixed"
	MeshWindow   finding.Rule = "target/mesh window"
	WindowsFight finding.Rule = "target/windows fight"
	RodsDiffer   finding.Rule = "target/rods"
	TightTooth   finding.Rule = "seat/tightest tooth"
	AfterFitting finding.Rule = "seat/mesh after fitting"
)

func (s *settling) raise(level finding.Level, rule finding.Rule, at finding.Place,
	text, fix say.Text) *finding.Finding {
	return s.out.Findings.Raise(level, rule, at, text, fix)
}

func (s *settling) placeOf(d mesh.Drive) finding.Place { return s.j.PlaceAt(d.Name, "gears/"+d.Name) }

// longMove says where a bore goes farther than is usual, or than its old centre
// is known.
func (s *settling) longMove(h Hole, move, moved, u float64) {
	limit, doubts := s.rules.V("move_caution_mm"), s.rules.V("move_doubts")*u
	if move <= limit+1e-9 && (moved <= doubts+1e-9 || moved <= s.rules.V("move_least_mm")) {
		return
	}
	s.book.Cite("rules/move_caution_mm")
	s.book.Cite("rules/move_doubts")
	s.raise(finding.Caution, LongMove, s.j.Place(h.Name()),
		say.F("the new centre lies %v from the old one, and the old one is known to %v (the shaft's, from all its holes, to %v)",
			say.MM(move, 3), say.MM(h.Survey.U, 3), say.MM(u, 3)),
		"measure this bore and the place of the mating gear again before cutting").
		Against(dim.Sig9(move), math.Min(limit, dim.Sig9(doubts)), "mm")
}

// worthWords is the gain of a chance from which a longer move is told of.
const worthWords = 0.01

// likelierWords says where a shaft goes farther than its meshes need, since they
// come right more often there.
func (s *settling) likelierWords(shaft string, to ShaftOut) {
	if !to.Counts || to.Chance < to.LeastChance+worthWords {
		return
	}
	way := math.Hypot(to.T[0]-to.LeastMove[0], to.T[1]-to.LeastMove[1])
	s.raise(finding.Note, Likelier, s.j.Place(shaft), say.F("it goes %v farther than the least move into the backlash limits: "+
		"its meshes come right in %v so, in %v there", say.MM(way, 3), say.InHundred(to.Chance), say.InHundred(to.LeastChance)), "")
}

func (s *settling) leanFinding(d mesh.Drive, have float64) {
	limit, ok := d.LeanLimit(s.rules.V("lean_share_of_backlash"))
	if !ok || have <= limit+1e-9 {
		return
	}
	s.book.Cite("rules/lean_share_of_backlash")
	s.raise(finding.Caution, Lean, s.placeOf(d),
		say.F("its shaft leans between unlike bores and the teeth lose %v of backlash over their face, at most %v",
			say.MM(have, 3), say.MM(limit, 3)),
		"let both bores of the shaft be bushed (do: auto), which squares it").Against(have, limit, "mm")
}

// meshFindings says where a mesh is not what was asked for.
func (s *settling) meshFindings(d mesh.Drive, g GearOut) {
	off := func(miss float64) say.Text {
		way := "too far apart"
		if miss < 0 {
			way = "too near"
		}
		return say.F("%v %s", say.MM(math.Abs(miss), 3), way)
	}
	switch {
	case math.Abs(g.Missed) <= missing:
		return
	case !d.Trusted:
		s.raise(finding.Note, MeshOff, s.placeOf(d), say.F("by its figures this mesh would stand %s for its backlash "+
			"limits; it is not trusted and moved nothing", off(g.Missed)), "")
	case g.Stuck:
		s.raise(finding.Caution, MeshFixed, s.placeOf(d), say.F("neither shaft may move and the mesh stands %s for its "+
			"backlash limits", off(g.Missed)),
			"let one of the shafts be bushed (do: auto), or accept it")
	case math.Abs(g.Outside) > missing:
		s.raise(finding.Caution, MeshWindow, s.placeOf(d), say.F("the backlash limits cannot be met: the mesh stands %s "+
			"for them", off(g.Outside)),
			"wider backlash limits, or other gears")
	}
}

// fights says which windows cannot both be met.
func (s *settling) fights() {
	for _, f := range s.out.Output.Fights {
		s.raise(finding.Caution, WindowsFight, s.j.Place(f.Shaft),
			say.F("%s and %s cannot both have their backlash: together they are %v short (%s by %v, %s by %v)",
				f.A, f.B,
				say.MM(f.Gap(), 3), f.A, say.MM(math.Abs(f.AMiss), 3), f.B, say.MM(math.Abs(f.BMiss), 3)),
			"wider backlash limits for one of them, a tighter set-up, or other gears").
			Against(dim.Sig9(f.Gap()), 0, "mm")
	}
}

// tightTooth says what the tightest tooth of a turn is left with.
func tightTooth(j, want float64) say.Text {
	if j < 0 {
		return say.F("the tightest tooth of the turn would bind by %v square to the flank; it should keep %v of "+
			"backlash", say.MM(-j, 3), say.MM(want, 3))
	}
	return say.F("the tightest tooth would keep %v of backlash square to the flank, least %v", say.MM(j, 3),
		say.MM(want, 3))
}
