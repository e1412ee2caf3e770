package route

import (
	"strings"
	"testing"

	"rebush/plan/job"
	"rebush/plan/seat"
)

// A boring head that is set for the far seat is larger than the rough near hole:
// it cuts both to one size about one axis, else its tip must pass untouched.
func TestPastNear(t *testing.T) {
	bore := func(side job.Side, low, x float64) Bore {
		return Bore{Name: "axle." + string(side), Shaft: "axle", Side: side, Way: seat.BoringHead,
			Seat: [2]float64{low, low + 0.02}, At: [2]float64{x, 8}}
	}
	near := bore(job.Left, 5.986, 16)
	for _, c := range []struct {
		name       string
		far        Bore
		say, other string
	}{
		{"one size, one axis", bore(job.Right, 5.986, 16), "both come to size together", "both come to size together"},
		{"another size", bore(job.Right, 6.986, 16), "tip touches nothing", ""},
		{"another axis", bore(job.Right, 5.986, 16.01), "tip touches nothing", ""},
	} {
		k := clamping{bores: []Bore{near, c.far}, far: map[string]bool{c.far.Name: true}}
		if got := k.pastNear(c.far).String(); !strings.Contains(got, c.say) {
			t.Errorf("%s: far: %q", c.name, got)
		}
		if got := k.pastNear(near).String(); !strings.Contains(got, c.other) || c.other == "" && got != "" {
			t.Errorf("%s: near: %q", c.name, got)
		}
	}
	if got := (clamping{bores: []Bore{near}}).pastNear(near); got != "" {
		t.Errorf("one hole by itself: %q", got)
	}
}

// The shafts that are left alone want rods too: the narrower hole of each.
func TestOtherRods(t *testing.T) {
	j := axle()
	j.Shafts = append(j.Shafts, Shaft{Name: "idle"})
	j.Marks = []Mark{{Name: "idle.left", Dia: 3.52}, {Name: "idle.right", Dia: 3.50}, {Name: "axle.left", Dia: 4}}
	r := Make(j, millShop(), plainCut, plainRules())
	for _, o := range r.Operations {
		if o.Kind == KindLineUp {
			if got := o.Note.String(); got != "the other rods as close as they go in: idle 3.5 mm" {
				t.Errorf("%q", got)
			}
			return
		}
	}
	t.Error("nothing is lined up")
}
