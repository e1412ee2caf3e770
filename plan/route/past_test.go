package route

import (
	"strings"
	"testing"

	"rebush/plan/seat"
)

// pairOf are two seats of a boring head, the far one at another size or place, in a
// shaft 16 mm over all.
func pairOf(far func(*Bore)) Job {
	j := axle()
	for i := range j.Bores {
		x := &j.Bores[i]
		x.Way, x.WayName, x.WaySize, x.Seat, x.Found = seat.BoringHead, "boring head", 0, [2]float64{6.99, 7.01}, 5.6
		x.S = 2.9
	}
	far(&j.Bores[1])
	return j
}

// A boring head brings two seats of one size about one axis to size at each of its
// settings. Set for any other far seat it has to turn clear of the rough near hole,
// by hand: the near seat of 7 mm is bored to 6.8 before its last cut (0.2 left, a
// multiple of 0.05), so a far seat of 6.6 is passed at 6.6 + 2 x 0.1 = 6.8, one of
// 6.62 is not; and 0.05 beside the axis costs 0.1.
func TestBarThroughNearHole(t *testing.T) {
	for _, c := range []struct {
		name     string
		far      func(*Bore)
		setups   int
		strokes  int
		say, not string
	}{
		{"one size, one axis", func(*Bore) {}, 1, 1, "both come to size together", "tip turns"},
		{"just clear", func(x *Bore) { x.Seat = [2]float64{6.59, 6.61} }, 1, 2, "tip turns at least 0.1 mm clear",
			"come to size together"},
		{"not clear", func(x *Bore) { x.Seat = [2]float64{6.61, 6.63} }, 2, 2, "", "tip turns"},
		{"beside", func(x *Bore) { x.Seat, x.At[0] = [2]float64{6.59, 6.61}, 10.05 }, 2, 2, "", "tip turns"},
		{"beside and clear", func(x *Bore) { x.Seat, x.At[0] = [2]float64{6.49, 6.51}, 10.05 }, 1, 2, "tip turns", ""},
		{"one size, two axes", func(x *Bore) { x.At[0] = 10.01 }, 2, 2, "", "come to size together"},
		{"the far hole is worn to 6.72 and 0.1 more, so 6.80 is not enough for both", func(x *Bore) { x.S = 3.36 }, 1, 1,
			"up to 6.83 mm", "up to 6.8 mm"},
	} {
		j, s := pairOf(c.far), millShop()
		if strings.Contains(c.say, "6.83") { // 0.2 under 7.03
			j.Bores[0].Seat, j.Bores[1].Seat = [2]float64{7.02, 7.04}, [2]float64{7.02, 7.04}
		}
		s.BoringFrom, s.BoringTo = 6, 20
		r := Make(j, s, plainCut, plainRules())
		setups, strokes, said := 0, 0, ""
		for _, u := range r.Setups {
			if u.Clamping {
				setups++
			}
		}
		for _, o := range r.Operations {
			if said += o.Note.String() + "\n"; o.Kind == KindSizeSeat {
				strokes++
			}
		}
		if setups != c.setups || strokes != c.strokes || !strings.Contains(said, c.say) ||
			c.not != "" && strings.Contains(said, c.not) {
			t.Errorf("%s: %d set-ups, %d last tools: %s", c.name, setups, strokes, said)
		}
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
			if got := o.Note.String(); got != "every bore wiped clean first: no chip, no grit; the other rods as close as they go in: idle 3.5 mm" {
				t.Errorf("%q", got)
			}
			return
		}
	}
	t.Error("nothing is lined up")
}
