package route

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rebush/plan/job"
	"rebush/plan/seat"
)

// A bush made to fit: nothing is cut, the hole is gauged first, the bush turned
// to it; eccentric by 0.1 it is moved over by 0.1 in the chuck (the indicator
// reads 0.2), and turned round to where its thin side belongs. From 6, 8 to
// 6.06, 8.08 is 53.13 degrees by the triangle 3, 4, 5; seen from outside the
// right plate that is 126.87. Five degrees out: 2 x 0.1 x sin 2.5 = 0.009.
func TestMadeToFit(t *testing.T) {
	for _, side := range []job.Side{job.Left, job.Right} {
		j := axle()
		for i := range j.Bores {
			x := &j.Bores[i]
			x.Way, x.Mend = seat.OldSeatWay, seat.Renew
			if x.Side != side {
				continue
			}
			x.Mend, x.SeatAt, x.At = seat.MadeToFit, [2]float64{6, 8}, [2]float64{6.06, 8.08}
			x.BushMade, x.BushSizes, x.FlangeOD = true, "outside 5.020 mm", 0
		}
		rules := plainRules()
		rules.Packing = func(e, bar float64) float64 { return 1.5*e + math.Sqrt(bar*bar/4-0.75*e*e) - bar/2 }
		s := partShop()
		r := Make(j, s, plainCut, rules)
		name := "axle." + string(side)
		if d := cmp.Diff([]string{"gauge", "turn", "press", "gauge"}, steps(r, name)); d != "" {
			t.Error(d)
		}
		for _, o := range r.Operations {
			if o.Cut != nil || o.Kind == KindSetUp {
				t.Errorf("%s, where nothing is cut", o.Do)
			}
		}
		turn := find(t, r, KindTurn, name).Note.String()
		// Bar of 7: the next whole mm over 5.031 and 1.
		if strings.Contains(turn, "in one chucking") {
			t.Errorf("the outside and a bore that stands off it come from two: %s", turn)
		}
		for _, w := range []string{"ECCENTRIC", "over by 0.100 mm", "reads 0.200 mm", "0.15 mm of packing", "7 mm bar", "mark the thin side",
			"0.007 to 0.026 mm over it"} {
			if !strings.Contains(turn, w) {
				t.Errorf("no %q in %s", w, turn)
			}
		}
		press := find(t, r, KindPress, name).Note.String()
		for _, w := range []string{"to 53 degrees", "0.009 mm to the side"} {
			if !strings.Contains(press, w) {
				t.Errorf("no %q in %s", w, press)
			}
		}
		if strings.Contains(press, "127 degrees") != (side == job.Right) {
			t.Errorf("%s: %s", side, press)
		}
	}
}

// Bushes of one size with unlike offsets are not turned together.
func TestUnlikeOffsetsAreTurnedApart(t *testing.T) {
	j := axle()
	for i := range j.Bores {
		x := &j.Bores[i]
		x.Way, x.Mend, x.BushMade, x.BushSizes = seat.OldSeatWay, seat.MadeToFit, true, "outside 5.020 mm"
		x.SeatAt = [2]float64{x.At[0] + 0.1*float64(i), x.At[1]}
	}
	n := 0
	for _, o := range Make(j, partShop(), askedCut, plainRules()).Operations {
		if o.Kind == KindTurn {
			n++
		}
	}
	if n != 2 {
		t.Errorf("%d turnings, want 2", n)
	}
}
