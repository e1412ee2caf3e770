package choice

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// drawn is a small truck: up to two axles of up to two holes, each with up to
// three offers.
func drawn(t *rapid.T) (holes []Hole, stock map[string]int) {
	figure := func(name string, list ...float64) float64 { return rapid.SampledFrom(list).Draw(t, name) }
	for _, axle := range []string{"front", "rear"}[:rapid.IntRange(1, 2).Draw(t, "axles")] {
		for _, side := range []string{"left", "right"}[:rapid.IntRange(1, 2).Draw(t, "holes")] {
			h := Hole{Name: axle + "." + side, Axle: axle}
			for _, key := range []string{"a", "b", "c"}[:rapid.IntRange(1, 3).Draw(t, "offers")] {
				h.Offers = append(h.Offers, Offer{Mend: rapid.IntRange(1, 3).Draw(t, "mend"), Key: key,
					Bush:   rapid.SampledFrom([]string{"", "p", "q"}).Draw(t, "bush"),
					Chance: figure("chance", 0.6, 0.9, 0.905, 0.92, 0.99), Minutes: figure("minutes", 5, 10, 40),
					Parts: figure("parts", 0, 1, 8), Spoilt: figure("spoilt", 0, 2), Setups: rapid.IntRange(0, 1).Draw(t, "setups"),
					Tools:  rapid.SampledFrom([][]string{nil, {"x"}, {"y"}, {"x", "z"}}).Draw(t, "tools"),
					Turned: rapid.IntRange(0, 2).Draw(t, "turned"), Glued: rapid.IntRange(0, 1).Draw(t, "glued"),
					Poor: rapid.IntRange(0, 4).Draw(t, "poor") == 0, LeftMM: figure("left", 1, 1.03, 1.2, math.Inf(1))})
			}
			holes = append(holes, h)
		}
	}
	return holes, map[string]int{"p": rapid.IntRange(0, 3).Draw(t, "stock")}
}

// option is one set of offers, one for each hole.
type option struct {
	index                       []int
	cost, chance, left          float64
	poor, turned, glued, distin int
	key                         string
}

// every is all sets of offers, whatever they are.
func every(holes []Hole, r Rules) (out []option) {
	total := 1
	for _, h := range holes {
		total *= len(h.Offers)
	}
	for n := range total {
		o, rest := option{chance: 1, left: math.Inf(1)}, n
		var offers []Offer
		tools := map[string]bool{}
		for _, h := range holes {
			k := rest % len(h.Offers)
			rest /= len(h.Offers)
			x := h.Offers[k]
			o.index, offers = append(o.index, k), append(offers, x)
			o.chance *= x.Chance
			o.left = math.Min(o.left, x.LeftMM)
			o.turned, o.glued = o.turned+x.Turned, o.glued+x.Glued
			if x.Poor {
				o.poor++
			}
			for _, t := range x.Tools {
				tools[t] = true
			}
			o.key += x.Key + "\x00"
		}
		o.distin, o.cost = len(tools), Cost(offers, r)
		out = append(out, o)
	}
	return out
}

// byHand is METHODS.md 2 over all sets, written down anew.
func byHand(holes []Hole, stock map[string]int, has int, r Rules) (index []int) {
	all := slices.DeleteFunc(every(holes, r), func(o option) bool {
		used, gravest := 0, 0
		for i, k := range o.index {
			x := holes[i].Offers[k]
			if gravest = max(gravest, x.Mend); x.Bush == "p" {
				used++
			}
		}
		return gravest != has || used > stock["p"]
	})
	if len(all) == 0 {
		return nil
	}
	cheapest := slices.MinFunc(all, func(a, b option) int {
		return cmp.Or(cmp.Compare(a.poor, b.poor), near(a.cost, b.cost), strings.Compare(a.key, b.key))
	})
	all = slices.DeleteFunc(all, func(o option) bool { return o.poor != cheapest.poor || o.chance < cheapest.chance-r.Tie-1e-9 })
	most := math.Inf(-1)
	for _, o := range all {
		if !math.IsInf(o.left, 1) {
			most = math.Max(most, o.left)
		}
	}
	step := func(o option) float64 {
		if math.IsInf(o.left, 1) {
			return 0
		}
		return math.Floor((most-o.left)/r.MetalTie + 1e-9)
	}
	return slices.MinFunc(all, func(a, b option) int {
		return cmp.Or(a.turned-b.turned, a.glued-b.glued, a.distin-b.distin, cmp.Compare(step(a), step(b)), near(a.cost, b.cost),
			strings.Compare(a.key, b.key))
	}).index
}

func near(a, b float64) int {
	if math.Abs(a-b) <= 1e-9 {
		return 0
	}
	return cmp.Compare(a, b)
}

// Of a small truck Pick finds what is best of all sets.
func TestBestOfAllSets(t *testing.T) {
	found := 0
	rapid.Check(t, func(t *rapid.T) {
		holes, stock := drawn(t)
		for has := 1; has <= 3; has++ {
			want := byHand(holes, stock, has, rules)
			got, ok := Pick(holes, stock, has, rules)
			if ok != (want != nil) || !slices.Equal(got, want) {
				t.Fatalf("mend %d: %v, of all sets %v", has, got, want)
			}
			if ok {
				found++
			}
		}
	})
	if found == 0 {
		t.Error("nothing was ever picked")
	}
}

// The order of holes and of their offers decides nothing: the same is done at
// each hole.
func TestOrderOfOffersDecidesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		holes, stock := drawn(t)
		has := rapid.IntRange(1, 3).Draw(t, "has")
		want := done(holes, stock, has)
		for range 4 {
			rand.Shuffle(len(holes), func(i, k int) { holes[i], holes[k] = holes[k], holes[i] })
			for _, h := range holes {
				rand.Shuffle(len(h.Offers), func(i, k int) { h.Offers[i], h.Offers[k] = h.Offers[k], h.Offers[i] })
			}
			if got := done(holes, stock, has); got != want {
				t.Fatalf("%s\n%s", got, want)
			}
		}
	})
}

// done is what is done at each hole, in the order of their names.
func done(holes []Hole, stock map[string]int, has int) string {
	pick, ok := Pick(holes, stock, has, rules)
	if !ok {
		return "nothing"
	}
	var out []string
	for i, k := range pick {
		out = append(out, holes[i].Name+" "+holes[i].Offers[k].Key)
	}
	slices.Sort(out)
	return strings.Join(out, "\n")
}
