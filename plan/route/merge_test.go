package route

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"rebush/plan/seat"
)

// Nothing is cut through a finished seat: once the near seat of a shaft has its
// size, no tool goes on to the far one, but for the reamer that sizes both in
// one stroke, or the boring head that does at one setting. And no tool goes through a near hole that is smaller than it is.
func TestNothingCutsThroughAFinishedSeat(t *testing.T) {
	seen := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		j, s := axle(), millShop()
		s.BoringFrom, s.BoringTo = 4, 30
		for d := 3.0; d < 9; d += 0.1 {
			s.Drills = append(s.Drills, Tool{Name: fmt.Sprintf("%.1f mm drill", d), Size: d, Reach: 40})
		}
		s.EndMills = []Tool{{Name: "4 mm end mill", Size: 4, Reach: 30, Shank: 4}, {Name: "5 mm end mill", Size: 5, Reach: 30, Shank: 5}}
		alike := rapid.Bool().Draw(t, "alike")
		for i := range j.Bores {
			x := &j.Bores[i]
			x.WaySize = rapid.SampledFrom([]float64{5, 5.5, 6, 7}).Draw(t, "size")
			x.Way = rapid.SampledFrom([]seat.Kind{seat.Reamer, seat.BoringHead, seat.EndMill}).Draw(t, "way")
			x.WayName = fmt.Sprintf("%v mm %s", x.WaySize, x.Way)
			x.Seat = [2]float64{x.WaySize + 0.005, x.WaySize + 0.012}
			x.Reach, x.Shank = 40, x.WaySize
			if alike && i > 0 {
				y := j.Bores[0]
				x.Way, x.WayName, x.WaySize, x.Seat, x.Shank = y.Way, y.WayName, y.WaySize, y.Seat, y.Shank
			}
		}
		r := Make(j, s, plainCut, plainRules())
		for _, u := range r.Setups {
			if !u.Clamping || len(u.Bores) != 2 {
				continue
			}
			seen["together"]++
			near, far := u.Bores[0], u.Bores[1]
			hole, finished := map[string]float64{near: 3.2, far: 3.2}, false
			for _, o := range r.Operations {
				if o.Setup != u.Name || o.Kind == KindGauge || o.Kind == KindSetUp {
					continue
				}
				if o.Bore == far && o.Kind != KindChamfer {
					if finished {
						t.Fatalf("%s after the near seat is finished: %+v", o.Do, j.Bores)
					}
					if o.ToolMM > hole[near]+1e-9 {
						t.Fatalf("%s by %.2f through a near hole of %.2f", o.Do, o.ToolMM, hole[near])
					}
				}
				hole[o.Bore] = o.HoleMM
				finished = finished || o.Bore == near && o.Kind == KindSizeSeat
			}
			sized := 0
			for _, o := range r.Operations {
				if o.Setup == u.Name && o.Kind == KindSizeSeat {
					sized++
				}
			}
			a, c := j.Bores[0], j.Bores[1]
			if stroke := a.Way == c.Way && a.Way != seat.EndMill && a.WayName == c.WayName; stroke != (sized == 1) {
				t.Fatalf("%d strokes for %s and %s", sized, a.WayName, c.WayName)
			}
			if sized == 1 {
				seen["one stroke"]++
			}
		}
	})
	if seen["together"] < 10 || seen["one stroke"] < 3 {
		t.Errorf("walked %v", seen)
	}
}
