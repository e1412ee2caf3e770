package world

import (
	"slices"
	"strings"
	"testing"
)

// occurs is what a run of trucks has to hold, so that nothing that the planner
// can meet is left untried.
const occurs = `
1 axles; 2 axles; 3 axles; stepped axle; a shaft with one hole; a shaft that is left alone
rails above; load to one side; something thicker must pass
plates zinc die casting; plates zinc die-casting alloy 3; plates zinc alloy 5; plates brass sheet; plates free-cutting brass
plates mild steel; plates stainless steel; plates aluminium plate; plates aluminium die casting; plates grey cast iron
plates magnesium; plates acetal; plates of two thicknesses; outline by corners; thin edge; slot near the hole; unworn holes
condition sound; condition cracked; condition swollen; swollen and not seen; a sound sister
wear none; wear light; wear middling; wear heavy; wear very heavy
worn on opposite sides; one hole of two is worn; two loads; repaired before; bushed when it was made
drive none; drive worm; drive spur to a fixed place; drive spur to a shaft; drive train; no gears
worm above; worm below; worm on a slope; worm by the top of its shaft; one worm for two axles
wheel throated; wheel helical; wheel straight; wheel unknown; idler with one wheel; compound train; shifted teeth
wheel runs out; wheel outside the plates; mate moved since; mesh trusted; mesh not trusted; backlash by the handbook
measured by diameters; measured by diameters alone; measured by points; measured by a file of points; measured by four walls
measured by pins; measured by its old seat; measured by a bush still in; distance from edge to edge
centre by the drawing; centre on a sister; direction of the widest; held by a cap; round boss; little room for a flange
shop bare; shop hand; shop punch; shop jig; shop dials; shop read-out; shop lathe
boring head; mandrels; pins; compound; can turn a bush; could be sent out; own rules; no reamer; reamer by its limits
instrument with a bias; drill for a reamer; a shop that prepared
drawer empty; drawer a few; drawer usual; drawer full; bush porous; bush solid; bush plastic; bush brass; bush turned
bush with a flange; bush without a flange; bushes by class; bushes by limits; bushes by one size; fewer than two on hand
units mm; units in; carelessly measured; a reading refused at the bench
missing centre; missing widest; missing narrowest; missing widest_at; missing worn_to; missing edges; missing tip
missing form; missing runout; missing from_left; missing condition; missing current; missing load; missing rpm
missing state; missing rate; missing hours; missing price; missing location; missing complaint; missing symptoms
another truck could be had; the original is to be kept; bush chosen beforehand; finish chosen beforehand
coupled by rods; thickness beside the worn run; magnesium accepted
`

// wanted reads the list above.
func wanted() []string {
	var out []string
	for _, w := range strings.FieldsFunc(occurs, func(r rune) bool { return r == ';' || r == '\n' }) {
		if w = strings.TrimSpace(w); w != "" {
			out = append(out, w)
		}
	}
	return out
}

// TestShares: each of these occurs among 300 trucks, and none so often that the
// other side of it goes untried.
func TestShares(t *testing.T) {
	n := int(max(many(t), 300))
	counts := map[string]int{}
	for seed := range uint64(n) {
		for _, trait := range Truck(seed, Options{}).Traits {
			counts[trait]++
		}
	}
	var names []string
	for trait := range counts {
		names = append(names, trait)
	}
	slices.Sort(names)
	for _, trait := range names {
		t.Logf("%5.1f %% %s", 100*float64(counts[trait])/float64(n), trait)
	}
	list := wanted()
	if len(list) < 110 {
		t.Fatalf("the list holds %d things", len(list))
	}
	for _, trait := range list {
		if c := counts[trait]; c == 0 || c == n {
			t.Errorf("%d of %d trucks: %s", c, n, trait)
		}
	}
	for _, c := range []struct {
		trait     string
		low, high int
	}{
		{"mesh trusted", 100, 260}, {"mesh not trusted", 50, 200}, {"no gears", 20, 90}, {"units in", 60, 160},
		{"shop bare", 8, 50}, {"drawer empty", 15, 70}, {"condition sound", 240, 299}, {"wear middling", 90, 220},
		{"measured by diameters", 150, 290},
	} {
		if k := 300 * counts[c.trait] / n; k < c.low || k > c.high {
			t.Errorf("%d of 300 trucks: %s; wanted %d to %d", k, c.trait, c.low, c.high)
		}
	}
}
