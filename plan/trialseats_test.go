package plan

import (
	"math"
	"testing"

	"rebush/plan/chance"
	"rebush/plan/seat"
)

// What chose a seat and what its trials find agree, each hole tried by itself with
// no mesh: within 0.02, of which 0.005 is noise of 8192 trials and the rest the
// clean-up, which the closed form takes as one normal error.
func TestSeatsAreTriedAsChosen(t *testing.T) {
	n, eccentric, worst := 0, 0, 0.0
	for seed := uint64(7000); seed < 7060; seed++ {
		s, f := factsOf(t, seed)
		want := map[string]*seat.Answer{}
		for _, x := range s.Seats.Bores {
			if x.Chosen != nil {
				want[x.Name()] = x.Chosen
			}
		}
		m, ok := chance.FromPlan(f)
		if !ok {
			continue
		}
		for _, b := range m.Bores {
			a := want[b.Name]
			if a == nil || b.Kind == chance.Leave {
				continue
			}
			one := m
			one.Bores, one.Gears = []chance.Bore{b}, nil
			r, err := chance.Run(one, chance.Settings{Trials: 2 * chance.Block, Seed: 1, Workers: 1})
			if err != nil {
				t.Fatal(err)
			}
			if n++; a.USet > 0 {
				eccentric++
			}
			worst = math.Max(worst, math.Abs(r.FirstTimeRight-a.Chance))
			if math.Abs(r.FirstTimeRight-a.Chance) > 0.02 {
				t.Errorf("truck %d %s (%s, %s): closed form %.4f, trials %.4f: %v", seed, b.Name, a.Way.Name, a.HeldBy, a.Chance, r.FirstTimeRight, r.Causes)
			}
		}
	}
	t.Logf("%d seats, %d eccentric, worst %.4f", n, eccentric, worst)
	if n < 40 {
		t.Errorf("only %d seats", n)
	}
}
