package target

import (
	"math"
	"slices"

	"rebush/plan/mesh"
)

// Placed is where one bore goes.
type Placed struct {
	Name         string
	At           Point
	FromOriginal Point // mm
	FromFound    Point // mm
	Fixed        bool
}

// ShaftOut is where a shaft goes.
type ShaftOut struct {
	Name  string
	Mean  Point // weighted mean of the original centres, before any move
	UMean float64
	T     Point // where it goes
	Moved Point // T less Mean
	// InU is the length of the move in standard uncertainties of the mean.
	InU   float64
	UT    float64 // standard uncertainty of each bore's place: set-up and hole
	Fixed bool
	Bores []Placed
	// LeastMove is where the least move goes that brings every mesh inside its
	// window by the doubts asked for; Chance and LeastChance are how likely the
	// trusted meshes of this shaft all come right with all shafts where they go, and
	// with all of them there.
	LeastMove           Point
	Chance, LeastChance float64
	Counts              bool // it carries a trusted mesh and may move
}

// GearOut is what a pair gets.
type GearOut struct {
	Name      string
	Trusted   bool
	Centre    float64 // centre distance of the bore centres at the target
	Near, Far float64 // under load, at the clearances that bring the gears nearest and farthest
	Lo, Hi    float64 // window under load, as given
	// FitLo and FitHi are the same window for the bore centres, shifted for
	// the running clearances; AimLo and AimHi are narrowed by the doubt.
	FitLo, FitHi, AimLo, AimHi float64
	U                          float64 // standard uncertainty of the centre distance
	Towards                    Point   // unit vector from the shaft towards its mate
	Correction                 Point   // shortest move of its shaft that this pair alone would ask of the original centres
	Bound                      string  // "near" or "far": the edge that stopped the move; "" where none did
	// Missed is by how much the narrowed window is missed at the target, above
	// 0 too far, below 0 too near. Outside is the same for the window that is
	// only shifted for clearance: there the pair is wrong more often than not.
	Missed, Outside float64
	Empty           bool // the window as given has nothing in it: its middle is aimed at
	NoRoom          bool // the spread of the running clearance leaves nothing in it
	Stuck           bool // neither of its shafts may move
}

// Fight is two windows of which one can be met only at the other's cost.
type Fight struct {
	A, B         string  // gear names
	AMiss, BMiss float64 // signed as GearOut.Missed
	Shaft        string  // the shaft both pull at
}

// Gap is how much wider both windows together would have to be, mm.
func (f Fight) Gap() float64 { return math.Abs(f.AMiss) + math.Abs(f.BMiss) }

// Output is the answer.
type Output struct {
	Shafts []ShaftOut
	Gears  []GearOut
	// AllMet says that every window which could move a shaft was met. Where it
	// is false Fights names who stood in whose way; none is named where a
	// single pair asked for more than the longest move.
	AllMet bool
	Fights []Fight
}

const (
	settled = 1e-11 // mm: places closer than this are the same
	missing = 1e-6  // mm: a window missed by less is met
)

// Place finds the targets. First the least move: the least sum over all bores of
// (T-O)' C^-1 (T-O) subject to the narrowed windows of the trusted pairs, by
// Newton on the binding windows: narrowed by Input.Inside doubts, or where not
// all can be met so by as many as they can, and by one at least. From there it goes
// to where the meshes are likeliest to come right, see likelier.
//
// Where the windows cannot all be met it takes the least sum of squared
// violations in units of the windows' widths, and among equals the least move; it
// gives in still more where a shaft would otherwise be sent farther than
// Input.MostMove, or in a fight than half as far again as any one pair asks.
// Errors are of Validate.
func Place(in Input) (Output, error) {
	if err := in.Validate(); err != nil {
		return Output{}, err
	}
	p := newProblem(in)
	t, lambda, ok := p.search(0)
	met := ok
	asked := in
	for k := math.Max(1, in.Inside); met && k > 0.75; k -= 0.5 {
		deep := in.deeper(math.Max(1, k), t, p.mean)
		if to, l, fits := newProblem(deep).search(0); fits {
			t, lambda, asked = to, l, deep
			break
		}
	}
	unmoved := judge(asked, p.mean)
	if !met {
		// A shaft in a fight is not sent much farther than any one pair asks:
		// beyond that it only slides aside for a crumb of centre distance.
		ask := 0.
		for _, g := range unmoved {
			if bad(g) {
				ask = math.Max(ask, math.Abs(g.Missed))
			}
		}
		p.most = math.Min(p.most, 1.5*ask)
	}
	for give := 1e-4; !ok && give < 1e3; give *= 3 {
		t, lambda, ok = p.search(give)
	}
	if !ok {
		t, lambda = p.mean, make([][2]float64, len(in.Gears))
	}
	least := t
	if met {
		t = newProblem(asked).likelier(t)
	}
	out := Output{Gears: judge(in, t), AllMet: met}
	for i := range out.Gears {
		g := &out.Gears[i]
		if m := unmoved[i].Missed; m != 0 {
			g.Correction = mesh.Correction(unmoved[i].Towards, m)
		}
		if l := lambda[i]; l[0] > l[1] {
			g.Bound = "near"
		} else if l[1] > 0 {
			g.Bound = "far"
		}
	}
	for i := range in.Shafts {
		s := p.shaft(i, t[i])
		on := func(g Gear) bool { return g.Shaft == i || g.Mate == i }
		s.LeastMove = least[i]
		s.Counts = !s.Fixed && slices.ContainsFunc(in.Gears, func(g Gear) bool { return g.Trusted && on(g) })
		s.Chance, s.LeastChance = in.chance(t, on), in.chance(least, on)
		out.Shafts = append(out.Shafts, s)
	}
	if !met {
		out.Fights = fights(in, out.Gears)
	}
	return out, nil
}

// judge says how every pair would stand with the shafts at the given places.
// Correction and Bound are left empty.
func judge(in Input, at []Point) []GearOut {
	out := make([]GearOut, len(in.Gears))
	for i, g := range in.Gears {
		e := in.edge(g, at)
		out[i] = GearOut{Name: g.Name, Trusted: g.Trusted, Centre: e.a, Near: e.near, Far: e.far, Lo: g.Lo, Hi: g.Hi,
			FitLo: e.lo, FitHi: e.hi, AimLo: e.inLo, AimHi: e.inHi, U: e.u, Towards: e.n,
			Empty: g.Lo > g.Hi, NoRoom: e.empty && g.Lo <= g.Hi, Stuck: !e.moves && !e.mMove}
		out[i].Missed = miss(e.a, e.inLo, e.inHi)
		out[i].Outside = miss(e.a, e.lo, e.hi)
	}
	return out
}

func miss(a, lo, hi float64) float64 {
	switch {
	case a < lo-missing/1000:
		return a - lo
	case a > hi+missing/1000:
		return a - hi
	}
	return 0
}

func (p *problem) shaft(i int, t Point) ShaftOut {
	s := p.in.Shafts[i]
	w := p.weight[i]
	o := ShaftOut{Name: s.Name, Mean: p.mean[i], T: t, Fixed: s.fixed() >= 0, UT: math.Hypot(s.USetup, s.UHole)}
	o.UMean = 1 / math.Sqrt(smallest(w))
	if o.Fixed {
		o.UT = o.UMean
	}
	d := Point{t[0] - o.Mean[0], t[1] - o.Mean[1]}
	o.Moved = d
	o.InU = math.Sqrt(math.Max(0, d[0]*(w[0][0]*d[0]+w[0][1]*d[1])+d[1]*(w[1][0]*d[0]+w[1][1]*d[1])))
	for _, b := range s.Bores {
		at := t
		if b.Fixed {
			at = b.Original
		}
		o.Bores = append(o.Bores, Placed{Name: b.Name, At: at, Fixed: b.Fixed,
			FromOriginal: Point{at[0] - b.Original[0], at[1] - b.Original[1]},
			FromFound:    Point{at[0] - b.Found[0], at[1] - b.Found[1]}})
	}
	return o
}

// smallest eigenvalue of a symmetric matrix.
func smallest(c Cov) float64 {
	m, d := (c[0][0]+c[1][1])/2, (c[0][0]-c[1][1])/2
	return math.Max(m-math.Hypot(d, c[0][1]), 1e-300)
}

// fights pairs the windows that stayed missed: each with the one on a shaft it
// shares that pulls hardest against it.
//
// A miss below half a percent of the window is the give of the others' fight.
func fights(in Input, gears []GearOut) []Fight {
	bad := func(g GearOut) bool {
		return bad(g) && math.Abs(g.Missed) > 0.005*math.Abs(g.Hi-g.Lo)
	}
	var out []Fight
	seen := map[[2]int]bool{}
	for i := range gears {
		if !bad(gears[i]) {
			continue
		}
		best, at, on := 0., -1, -1
		for j := range gears {
			if j == i || !bad(gears[j]) {
				continue
			}
			for _, s := range []int{in.Gears[i].Shaft, in.Gears[i].Mate} {
				if s < 0 || in.Shafts[s].fixed() >= 0 || s != in.Gears[j].Shaft && s != in.Gears[j].Mate {
					continue
				}
				pi, pj := pull(in.Gears[i], gears[i], s), pull(in.Gears[j], gears[j], s)
				if c := -(pi[0]*pj[0] + pi[1]*pj[1]); at < 0 || c > best {
					best, at, on = c, j, s
				}
			}
		}
		if at < 0 {
			continue
		}
		k := [2]int{min(i, at), max(i, at)}
		if seen[k] {
			continue
		}
		seen[k] = true
		a, b := gears[k[0]], gears[k[1]]
		out = append(out, Fight{A: a.Name, B: b.Name, AMiss: a.Missed, BMiss: b.Missed, Shaft: in.Shafts[on].Name})
	}
	return out
}

func bad(g GearOut) bool { return g.Trusted && !g.Stuck && math.Abs(g.Missed) > missing }

// pull is the way a missed window wants shaft s to go.
func pull(g Gear, o GearOut, s int) Point {
	k := 1. // too far: towards the mate
	if o.Missed < 0 {
		k = -1
	}
	if s == g.Mate {
		k = -k
	}
	return Point{k * o.Towards[0], k * o.Towards[1]}
}
