package route

import (
	"math"
	"strings"

	"rebush/fits/say"
)

// rod is a round aid turned for this job: one diameter, or two steps.
type rod struct {
	d      []float64 // mm, in the order in which it goes in
	length []float64 // of each step, 0 not known
}

// words are its sizes.
func (r rod) words() say.Text {
	var w []say.Text
	for i, d := range r.d {
		step := say.F("%v", say.MM(d, 2))
		if r.length[i] > 0 {
			step = say.F("%v for %v", say.MM(d, 2), say.MM(r.length[i], 0))
		}
		w = append(w, step)
	}
	return say.Join(", then ", w...)
}

// steppedRod locates a chassis that is turned over: its foot fits the finished
// seat that now lies below, its upper part stands up through the hole that is
// still to be cut, into the light. A plain rod of the seat's size does not go
// through that hole. Where the hole lets it, the rod is plain.
func (b *builder) steppedRod(seat, uncut Bore) rod {
	foot := under(seat.Seat[0], b.r.RodUnder)
	up := foot
	if uncut.Found > 0 {
		up = math.Min(foot, under(uncut.Found, b.r.RodClear))
	}
	reach := 0.0
	if b.j.Width > 0 {
		reach = math.Ceil(b.j.Width - seat.Plate + b.r.RodStands)
	}
	return rod{d: []float64{foot, up}, length: []float64{math.Ceil(seat.Plate + b.r.RodStands), reach}}
}

// located are the rods of a clamping that stands on finished seats, in the
// order of its bores.
func (b *builder) located(c clamping) []say.Text {
	var out []say.Text
	for _, name := range c.from {
		seat := b.bore(name)
		for _, x := range c.bores {
			if x.Shaft == seat.Shaft {
				out = append(out, say.F("%v in %s", b.steppedRod(seat, x).words(), name))
			}
		}
	}
	return out
}

// bore is the bore of a name.
func (b *builder) bore(name string) Bore {
	for _, x := range b.j.Bores {
		if x.Name == name {
			return x
		}
	}
	return Bore{}
}

// makeRods turns rods, or has them turned where there is no lathe. What they
// are for is said in the name, their sizes in the words.
func (b *builder) makeRods(what string, sizes []say.Text, note say.Text, shapes ...Shape) {
	if len(sizes) == 0 {
		return
	}
	if !b.s.Lathe && b.s.Machine != OnLathe {
		b.buy(purchase{kind: BuyRod, tool: what + toBuy, spec: say.Join("; ", sizes...) + ": no lathe here to turn it"})
		return
	}
	name := plural(len(sizes), what, what+"s")
	said := []say.Text{say.Text(strings.ToUpper(name[:1])+name[1:]) + " " + say.Join("; ", sizes...), note}
	b.add(Operation{Kind: KindAid, Setup: atLathe, Do: say.F("Turn the %s", name),
		Tool:  "turning tool, silver steel in the collet",
		Gauge: "micrometer", Backing: "held short, the far end on a centre", Spindle: true, Shapes: shapes,
		Minutes: b.r.MakeRod * float64(len(sizes)),
		Note:    join(said...)})
}
