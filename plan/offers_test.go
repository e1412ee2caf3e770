package plan

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"rebush/plan/job"
	"rebush/plan/seat"
	"rebush/plan/world"
)

// TestListOrderOffersTheSame: what could be done at each hole of a truck, in which
// order, and why the rest does not go, is the same in whatever order shop, drawer
// and job stand in their files.
func TestListOrderOffersTheSame(t *testing.T) {
	open := map[seat.Mend]int{}
	for seed := range uint64(40) {
		truck := world.Truck(seed, world.Options{})
		want := offered(t, truck, open)
		for mix := range uint64(2) {
			if got := offered(t, truck.Shuffled(mix+1), nil); got != want {
				t.Fatalf("truck %d:\n%s", seed, differing(got, want))
			}
		}
	}
	for _, m := range []seat.Mend{seat.Renew, seat.Rebush, seat.MadeToFit, seat.BushInABush, seat.Plug} {
		if open[m] == 0 {
			t.Errorf("no hole was open to %s", m)
		}
	}
}

// TestOffersHoldTheWear: whatever is offered at a hole takes in the hole that is
// there, point by point of its outline, leaves the walls that the rules want, and
// brings the bore to where it belongs.
func TestOffersHoldTheWear(t *testing.T) {
	looked := map[seat.Mend]int{}
	for seed := range uint64(60) {
		j, err := world.Truck(seed, world.Options{}).Read(t.TempDir())
		if err != nil {
			t.Fatal(err)
		}
		w, c, err := ready(j, nil)
		if err != nil {
			t.Fatal(err)
		}
		g := surveyedGround(w, c, j)
		least, good := w.rules.V("least_wall_mm"), 1e-6
		for _, s := range g.placed(nil) {
			for _, o := range s.offers {
				at := [2]float64(o.At)
				for _, m := range o.Mends {
					for _, a := range slices.Concat(m.Answers, m.Buy) {
						if !a.Feasible {
							continue
						}
						looked[m.Mend]++
						say := func(what string, args ...any) {
							t.Errorf("truck %d %s %s %s: %s", seed, o.Name(), m.Mend, a.Bush.Code, fmt.Sprintf(what, args...))
						}
						if d := gapOf([2]float64{a.SeatAt[0] + a.Offset[0], a.SeatAt[1] + a.Offset[1]}, at); d > 1e-6 {
							say("its bore stands %v off", d)
						}
						if wall := a.BushWall(); a.Bush.Turned && wall < least-0.01 {
							say("its wall is %v", wall)
						}
						middle, radius := a.SeatAt, a.SeatLow/2
						switch {
						case a.Part != nil && !a.Part.Stays:
							middle, radius = a.Part.At, a.Part.SeatLow/2
							if web := radius - gapOf(middle, a.SeatAt) - a.SeatHigh/2; !a.Part.Through() && web < least-good {
								say("%v is left of its part", web)
							}
						case m.Mend == seat.Renew || m.Mend == seat.MadeToFit || a.Filled:
							continue
						}
						for _, p := range o.Old.Stands().Outline(360) {
							if d := gapOf(p, middle) - radius; d > good {
								say("the worn wall stands %v out of a hole of %v", d, radius)
								break
							}
						}
					}
				}
			}
		}
	}
	for _, m := range seat.MendsRising()[1:] {
		if looked[m] < 5 {
			t.Errorf("only %d answers of %s were looked at", looked[m], m)
		}
	}
}

func gapOf(a, b [2]float64) float64 { return math.Hypot(a[0]-b[0], a[1]-b[1]) }

// offered tells in words and figures all that is offered at the holes of a truck.
func offered(t *testing.T, truck world.World, open map[seat.Mend]int) string {
	t.Helper()
	j, err := truck.Read(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(told(t, j, open), "\n")
}

func told(t *testing.T, j *job.Job, open map[seat.Mend]int) []string {
	t.Helper()
	w, c, err := ready(j, nil)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	g := surveyedGround(w, c, j)
	for _, s := range g.placed(nil) {
		for _, o := range s.offers {
			for _, m := range o.Mends {
				at := fmt.Sprint(s.keeps, " ", o.Name(), " ", m.Mend, " ")
				out = append(out, fmt.Sprint(at, m.WhyNot, m.Owner, m.Asks))
				if m.OK() && open != nil {
					open[m.Mend]++
				}
				for _, a := range slices.Concat(m.Answers, m.Buy) {
					out = append(out, at+answerTold(&a))
				}
			}
		}
	}
	slices.Sort(out) // shafts and holes may stand in another order too
	return out
}

func answerTold(a *seat.Answer) string {
	var why []string
	for _, f := range a.Fails {
		why = append(why, f.Text().String())
	}
	low, high, ok := a.SeatThatWould()
	out := fmt.Sprintf("%s by %s %s: %v %.7f to %.7f, left %.6f, chance %.6f, %s by %s %s; would %.6f %.6f %v", a.Bush.Code,
		a.Way.Name, a.HeldBy, a.Feasible, a.SeatLow, a.SeatHigh, a.Ligament, a.Chance, a.Finish, a.FinishTool, a.Second,
		low, high, ok)
	if p := a.Part; p != nil {
		out += fmt.Sprintf("; in %s %.6f to %.6f by %s, %s, web %.6f", p.Mend, p.SeatLow, p.SeatHigh, p.Way.Name, p.HeldBy, p.Web)
	}
	return out + strings.Join(why, "; ")
}

// differing are the first lines that two texts do not share.
func differing(got, want string) string {
	a, b := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			return "got  " + a[i] + "\nwant " + b[i]
		}
	}
	return fmt.Sprintf("%d lines, want %d", len(a), len(b))
}
