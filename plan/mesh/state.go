package mesh

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/say"
)

// State is how a pair stands at one centre distance, in figures fit to print:
// backlash is never negative.
type State struct {
	Centre       float64 // mm, as the bores and loads would have it
	Backlash     float64 // circumferential, mm, 0 or more
	Normal       float64 // mm, 0 or more
	ContactRatio float64 // 0 where the teeth do not meet
	// Short is by how much the shaft cannot come as near as Centre says,
	// because the flanks touch first; 0 where they do not.
	Short float64
	// Apart says that the teeth no longer reach each other.
	Apart bool
}

// StateAt returns the state of a valid pair at a centre distance of a mm. It
// answers for any a; a that is no number is taken as the tight distance.
func StateAt(p Pair, a float64) State {
	tight := p.Tight()
	if math.IsNaN(a) || math.IsInf(a, 0) {
		a = tight
	}
	s := State{Centre: a, Short: math.Max(0, tight-a)}
	at := math.Max(a, tight)
	j, err := p.Backlash(at)
	if err != nil {
		s.Apart = true
		return s
	}
	n, _ := p.Normal(at)
	s.Backlash, s.Normal = math.Max(0, j), math.Max(0, n)
	s.ContactRatio, _ = p.ContactRatio(at)
	return s
}

// WearWords says what wear did to a pair, from its state with the shaft in the
// bore as it was when new to that with the shaft as found, both under load:
// "closer to the worm by 0.10 mm; backlash found 0, was 0.05 mm". mate is what the
// other part is called at the bench: "the worm", "the pinion".
func WearWords(original, found State, mate string) say.Text {
	d := dim.Near(found.Centre-original.Centre, 6)
	way := "closer to"
	switch {
	case math.Abs(d) < 0.005:
		return say.F("wear has not changed the distance to %s; backlash %v", mate, backlashWords(found))
	case d > 0:
		way = "away from"
	}
	return say.F("%s %s by %v; backlash found %v, was %v", way, mate, say.MM(math.Abs(d), 2), backlashWords(found), backlashWords(original))
}

func backlashWords(s State) say.Text {
	switch {
	case s.Apart:
		return "beyond counting: the teeth do not reach"
	case s.Backlash < 0.005:
		return "0"
	}
	return say.F("%v", say.MM(s.Backlash, 2))
}

// Agreement is what a found centre distance says of the geometry that was
// entered.
type Agreement string

// The three answers.
const (
	Agrees Agreement = "agrees"
	// CannotReach: the flanks stop the shaft before the end of its worn hole.
	// It is no fault of the figures: the gears bind, or the mate was moved
	// since the wear was made.
	CannotReach Agreement = "the shaft cannot reach the end of its hole"
	// Contradicts: the shaft has run where these gears would not go together.
	// The figures of the gears or of the survey are wrong; trust neither to
	// move a shaft.
	Contradicts Agreement = "the gears as entered would not go together where the shaft has run"
)

// Agree compares the centre distance found under load with the tight one:
// nearer by more than twice both doubts together is a contradiction where the
// mate stands as it did (moved false) and nothing binds. short is by how much
// the tight distance is missed.
func Agree(p Pair, found, uSurvey, uGeom float64, moved, binds bool) (verdict Agreement, short float64) {
	short = math.Max(0, p.Tight()-found)
	switch {
	case moved || binds:
		if short > 0 {
			return CannotReach, short
		}
	case short > 2*math.Hypot(uSurvey, uGeom):
		return Contradicts, short
	}
	return Agrees, short
}

// TightestTooth returns the normal backlash in mm, negative for an overlap,
// that the tightest tooth keeps with a run-out of tir mm (total indicator
// reading).
func TightestTooth(p Pair, a, tir float64) (float64, error) { return p.Normal(a - tir/2) }
