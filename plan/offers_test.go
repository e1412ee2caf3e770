package plan

import (
	"fmt"
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
	for _, keeps := range g.placings() {
		for _, o := range g.place(keeps, nil).offers {
			for _, m := range o.Mends {
				at := fmt.Sprint(slices.Sorted(slices.Values(keeps)), " ", o.Name(), " ", m.Mend, " ")
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
