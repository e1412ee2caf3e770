package plan_test

import (
	"math"
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/plan/verdict"
)

// TestTeethOverlap: a worm at 15.55 stands 0.5 nearer than one at 16.05, whose teeth
// overlap by 0.07 mm as found (7.93 against 8.00): 0.57. No
// doubt is that large: a stop that asks for the figures, though another truck is
// offered, and nothing is cut. With the worm at 15.95 it is 0.17 mm, more than four
// times hypot(0.0133, 0.02) = 0.096, and a stop too; where the worm was moved or
// the pair binds, what the shaft can go in its hole is taken off first.
func TestTeethOverlap(t *testing.T) {
	const runs, jams = "complaint: {binds: no, noisy: yes, rubs: no}\n", "complaint: {binds: yes, noisy: yes, rubs: no}\n"
	for _, c := range []struct {
		height           float64
		moved, asked     string
		short            float64
		stop, regardless bool
	}{
		{16.05, "", runs, 0.07, false, false},
		{15.95, "", runs, 0.17, true, false},
		{15.95, ", moved: yes", runs, 0.17, false, false},
		{15.95, "", jams, 0.17, false, false},
		{15.55, "", runs, 0.57, true, true},
		{15.55, ", moved: yes", runs, 0.57, true, true},
		{15.55, "", jams, 0.57, true, true},
	} {
		p := plain(t).gear(wormGear(c.height, c.moved)).add(c.asked + swapLine).plan()
		play := 0.0
		for _, b := range p.Survey {
			if strings.HasPrefix(b.Bore, "drive.") {
				play = math.Max(play, b.PlayMM.Float())
			}
		}
		if free := 0.096 + play; c.regardless != (c.short > free) {
			t.Fatalf("%+v: %v of play makes no such case", c, play)
		}
		if !c.stop {
			unsaid(t, p, "teeth overlap")
			continue
		}
		f := saidOf(t, p, "teeth overlap", "d")
		if f.Level != finding.Stop || p.OK || len(p.Operations) > 0 {
			t.Errorf("%+v: %+v, ok %v", c, f, p.OK)
		}
		near(t, "nearer than the least distance", *f.Want, *f.Have+c.short, 1e-3)
		if v := p.Verdict; v.Choice != verdict.MeasureFirst || len(v.Needs) != 1 || !strings.Contains(
			v.Needs[0].What.String(), "the worm of d") {
			t.Errorf("%+v: %+v", c, v)
		}
		unsaid(t, p, "mesh contradicts")
	}
}
