package plan

import (
	"sort"

	"rebush/fits/ledger"
	"rebush/fits/material"
	"rebush/plan/chance"
	"rebush/plan/job"
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/target"
)

// Options are what the command line can set.
type Options struct {
	Trials   int
	Seed     uint64
	NoChance bool // leave the Monte Carlo out
}

// maker carries one plan through the chain. Each step fills in what the next
// one reads; none reaches back.
type maker struct {
	j    *job.Job
	opt  Options
	p    *Plan
	book *ledger.Ledger

	*books
	shafts    []shaftState
	gears     []*gear
	settled   target.Settled
	seated    Seated
	targetOut target.Output

	result *chance.Result

	casting             seat.Casting
	chassis             *material.Material // of casting
	plate               seat.Plate         // likewise
	holes               []survey.Hole      // as surveyed, in job order
	bores               []*bore            // likewise
	grown               bool               // against its sister, beyond what may be machined
	forbidden           string             // a metal that must not be cut, in a word
	setupU              float64
	holeU               float64
	setupFrom, holeFrom string // where those two stand
	stock               []seat.Bush
	shop                seat.Shop
	seatRule            seat.Rules
}

// bore is what is known of one bore as the chain goes on.
type bore struct {
	shaft *job.Shaft
	b     *job.Bore

	old survey.Hole // as surveyed; the next seven are of it

	known    bool // the old centre is known
	worn     survey.WornBore
	found    [2]float64 // middle of the hole as found
	u        float64
	method   string
	points   [][2]float64
	leftOut  []int
	residual []float64

	target   [2]float64
	targeted bool
	uPlace   float64
	load     [2]float64 // unit vector in which the shaft is pressed

	touch   bool // to be dealt with at all
	hole    seat.Hole
	answers []seat.Answer
	chosen  *seat.Answer
}

func (b *bore) name() string { return b.b.Name }

// of finds a bore by name.
func (m *maker) of(name string) *bore {
	for _, b := range m.bores {
		if b.name() == name {
			return b
		}
	}
	return nil
}

// on returns the bores of one shaft.
func (m *maker) on(shaft string) []*bore {
	var out []*bore
	for _, b := range m.bores {
		if b.shaft.Name == shaft {
			out = append(out, b)
		}
	}
	return out
}

func stable[T any](list []T, less func(a, b T) bool) {
	sort.SliceStable(list, func(i, k int) bool { return less(list[i], list[k]) })
}
