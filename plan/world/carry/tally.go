package carry

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
)

// Tally gathers what became of many trucks and prints it.
type Tally struct {
	Trucks int
	All    []Carried
}

// Add counts one truck.
func (t *Tally) Add(c Carried) {
	t.Trucks++
	t.All = append(t.All, c)
}

// group is the plans of one kind: stated and what came right, means over plans.
type group struct {
	n                            int
	stated, right, seats, meshes float64
	square                       float64 // of stated less right, for its own standard error
}

func (g *group) add(c Carried) {
	g.n++
	g.stated, g.right = g.stated+c.Stated, g.right+c.Right
	g.seats, g.meshes = g.seats+c.Seats, g.meshes+c.Meshes
	d := c.Right - c.Stated
	g.square += d * d
}

func (g group) mean() (stated, right, u float64) {
	n := float64(g.n)
	stated, right = g.stated/n, g.right/n
	d := right - stated
	return stated, right, math.Sqrt(math.Max(0, g.square/n-d*d) / math.Max(1, n-1))
}

func (g group) line(name string) string {
	if g.n == 0 {
		return ""
	}
	s, r, u := g.mean()
	n := float64(g.n)
	return fmt.Sprintf("  %-28s %4d  %.3f  %.3f  %+.3f  %.3f   %.3f  %.3f\n", name, g.n, s, r, r-s, u, g.seats/n, g.meshes/n)
}

// Bands are those of stated chance.
var Bands = []float64{0, 0.4, 0.6, 0.8, 0.9, 0.95, 0.98, 1.0001}

func bandOf(x float64) string {
	for i := 1; i < len(Bands); i++ {
		if x < Bands[i] {
			return fmt.Sprintf("stated %.2f to %.2f", Bands[i-1], min(Bands[i], 1))
		}
	}
	return "stated beyond"
}

// Of are the plans that cut and suit.
func (t *Tally) Of(suits func(Carried) bool) (out []Carried) {
	for _, c := range t.All {
		if c.Cut && suits(c) {
			out = append(out, c)
		}
	}
	return out
}

// Off is how much more came right than was stated, and the standard error of it.
func Off(of []Carried) (off, u float64) {
	var g group
	for _, c := range of {
		g.add(c)
	}
	s, r, u := g.mean()
	return r - s, u
}

// Chances prints what came right of what was stated.
func (t *Tally) Chances() string {
	groups := map[string]*group{}
	put := func(name string, c Carried) {
		if groups[name] == nil {
			groups[name] = &group{}
		}
		groups[name].add(c)
	}
	first, feared := map[string]float64{}, map[string]float64{}
	over, under, n := 0, 0, 0
	var brier, single, mean float64
	cut := t.Of(func(Carried) bool { return true })
	for _, c := range cut {
		put("all", c)
		put("meshes "+c.Class, c)
		put(bandOf(c.Stated), c)
		for why, share := range c.First {
			first[why] += share
		}
		for why, share := range c.Feared {
			feared[why] += share
		}
		n++
		if c.Stated > 0.9 {
			over++
		}
		if c.Stated < 0.7 {
			under++
		}
		mean += c.Right
	}
	if n == 0 {
		return "no plan cuts\n"
	}
	mean /= float64(n)
	for _, c := range cut { // of each turn: right or not
		brier += c.Right*(1-c.Stated)*(1-c.Stated) + (1-c.Right)*c.Stated*c.Stated
		single += c.Right*(1-mean)*(1-mean) + (1-c.Right)*mean*mean
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%d trucks, %d plans that cut\n", t.Trucks, n)
	fmt.Fprintf(&b, "  %-28s %4s  %-5s  %-5s  %-6s  %-5s   %-5s  %-5s\n", "", "n", "state", "right", "off", "s.e.", "seats", "meshes")
	for _, name := range slices.Sorted(maps.Keys(groups)) {
		b.WriteString(groups[name].line(name))
	}
	fmt.Fprintf(&b, "  stated over 0.9: %.0f %%; under 0.7: %.0f %%\n", 100*float64(over)/float64(n), 100*float64(under)/float64(n))
	fmt.Fprintf(&b, "  Brier %.4f; the one average %.3f gives %.4f\n", brier/float64(n), mean, single/float64(n))
	fmt.Fprintf(&b, "  failed first, %% of all: %s\n", largest(first, 100/float64(n)))
	fmt.Fprintf(&b, "  stated to fail first: %s\n", largest(feared, 100/float64(n)))
	return b.String()
}

// largest prints shares, the largest first.
func largest(of map[string]float64, times float64) string {
	names := slices.SortedFunc(maps.Keys(of), func(x, y string) int {
		return cmp.Or(cmp.Compare(of[y], of[x]), cmp.Compare(x, y))
	})
	parts := make([]string, len(names))
	for i, name := range names {
		parts[i] = fmt.Sprintf("%s %.2f", name, times*of[name])
	}
	return strings.Join(parts, "; ")
}

// Worst prints the trucks with the largest disagreement.
func (t *Tally) Worst(n int) string {
	of := t.Of(func(Carried) bool { return true })
	slices.SortFunc(of, func(a, b Carried) int {
		return cmp.Compare(math.Abs(b.Right-b.Stated), math.Abs(a.Right-a.Stated))
	})
	var b strings.Builder
	for _, c := range of[:min(n, len(of))] {
		fmt.Fprintf(&b, "  truck %d, meshes %s: stated %.3f, right %.3f; %v\n", c.Seed, c.Class, c.Stated, c.Right, c.First)
	}
	return b.String()
}

// Closed prints how the press came out against what the plans state.
func (t *Tally) Closed() string {
	var c closings
	for _, x := range t.All {
		c.n, c.inside, c.loose, c.tight = c.n+x.Close.n, c.inside+x.Close.inside, c.loose+x.Close.loose, c.tight+x.Close.tight
	}
	n := float64(c.n + c.loose + c.tight)
	return fmt.Sprintf("press: %.0f seats, %.1f %% looser and %.1f %% tighter than the limits stated; closure inside its band in %.1f %% of the rest\n", n,
		100*float64(c.loose)/n, 100*float64(c.tight)/n, 100*float64(c.inside)/float64(c.n))
}
