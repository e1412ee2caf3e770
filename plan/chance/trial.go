package chance

import (
	"math"
	"math/rand/v2"
)

// class is how a trial ends, better before worse.
type class int32

const (
	right class = iota
	rework
	spoilt
	next
	lost
	classes
)

// The checks in the order of the job.
const (
	kSlip = iota
	kCleanup
	kPart
	kWall
	kLoose
	kCrack
	kTight
	kBoreSmall
	kBoreLarge
	kRunTight
	kRunLoose
	kMustPass
	kLean
	kNoBacklash
	kMeshTight
	kContact
	kMeshLoose
	checks
)

// sight is what the checks of one trial have seen so far: the worst class and
// the first check that failed, as check*places + place.
type sight struct {
	worst class
	first int32
}

func (s *sight) fail(c class, at int) {
	if c > s.worst {
		s.worst = c
	}
	if int32(at) < s.first {
		s.first = int32(at)
	}
}

// worker holds what one goroutine needs; nothing is allocated in the loop.
type worker struct {
	pcg    rand.PCG
	bore   [][boreStreams]uint64
	gear   [][gearStreams]uint64
	setup  []uint64
	tool   []uint64
	habit  []float64 // of each tool, in standard deviations
	sx, sy []float64 // of each clamping
	px, py []float64 // of each bore's axis, off its target
	qx, qy []float64 // the same with its share of the running clearance
	centre []float64 // of each pair, as it came out
	clear  []float64 // running clearance of each bore
	keys   keys      // of its streams; without, each is named by its place
}

// newWorker has room for as many tools as bores.
func newWorker(bores, gears, setups int) *worker {
	f := func(n int) []float64 { return make([]float64, n) }
	return &worker{bore: make([][boreStreams]uint64, bores), gear: make([][gearStreams]uint64, gears), setup: make([]uint64, setups),
		tool: make([]uint64, bores), habit: f(bores),
		sx: f(setups), sy: f(setups), px: f(bores), py: f(bores), qx: f(bores), qy: f(bores), centre: f(gears), clear: f(bores)}
}

func (w *worker) seed(seed uint64, block int) {
	base := blockBase(&w.pcg, seed, block)
	for i := range w.bore {
		starts(w.bore[i][:], base, ownBore, keyOf(w.keys.bore, i))
	}
	for i := range w.gear {
		starts(w.gear[i][:], base, ownGear, keyOf(w.keys.gear, i))
	}
	for i := range w.setup {
		starts(w.setup[i:i+1], base, ownSetup, keyOf(w.keys.setup, i))
	}
	for i := range w.tool {
		starts(w.tool[i:i+1], base, ownTool, keyOf(w.keys.tool, i))
	}
}

func keyOf(keys []uint64, i int) uint64 {
	if i < len(keys) {
		return keys[i]
	}
	return uint64(i)
}

// trial runs one trial of the block that was seeded. All products that are
// added to something are rounded by themselves, so that no platform fuses
// them and every platform counts the same.
func (w *worker) trial(c *compiled, t uint64) sight {
	t *= gamma
	s := sight{first: math.MaxInt32}
	w.clamp(c, t)
	for i := range c.bores {
		w.tryBore(c, i, t, &s)
	}
	for i := range c.gears {
		w.tryGear(c, i, t, &s)
	}
	return s
}

// clamp draws the error of every clamping, and what every tool does on the whole. Like tryBore and tryGear it takes
// the trial times gamma.
func (w *worker) clamp(c *compiled, t uint64) {
	for i, u := range c.setups {
		x := mix(w.setup[i] + t)
		w.sx[i] = float64(u * c.tab.normal(uint32(x)))
		w.sy[i] = float64(u * c.tab.normal(uint32(x>>32)))
	}
	for i := range c.tools {
		w.habit[i] = c.tab.normal(uint32(mix(w.tool[i] + t)))
	}
}

// tryGear runs the pair on the bores as they came out.
func (w *worker) tryGear(c *compiled, i int, t uint64, s *sight) {
	g, st, tab, places := &c.gears[i], &w.gear[i], c.tab, c.places
	a := g.centre
	for k := 0; k < g.n; k++ {
		j := g.bore[k]
		a += float64(g.wx[k]*w.qx[j]) + float64(g.wy[k]*w.qy[j])
	}
	x := mix(st[gDoubt] + t)
	// A doubt about the computed distances moves all limits alike.
	err := float64(g.um*tab.normal(uint32(x>>32))) - float64(g.ug*tab.normal(uint32(x)))
	a += err
	tilt := 0.0
	if g.onL >= 0 {
		dx, dy := g.bx+w.qx[g.onR]-w.qx[g.onL], g.by+w.qy[g.onR]-w.qy[g.onL]
		in := math.Abs(float64(dx*g.ox) + float64(dy*g.oy))
		out := math.Abs(float64(dx*g.oy) - float64(dy*g.ox))
		tilt = float64(in*g.along) + float64(out*g.across)
	}
	bad := g.bad
	if n := uint64(len(g.spread)); n > 0 {
		x = mix(st[gSpread] + t)
		k := x >> 32 * n >> 32
		if len(g.ties) > 0 {
			a += g.tied(err, w, k)
		}
		// What such teeth really are shows when the mesh is tried before the bores
		// are opened: no truck is lost by it.
		if shift := g.spread[k]; shift != 0 {
			a, bad = a-shift, next
		}
	}
	w.centre[i] = a
	g.turn(a, tilt, bad, s, places, i)
}

// tied is by how much the error of a distance differs from what was drawn, since
// the pair ran with it.
func (g *gearC) tied(err float64, w *worker, shift uint64) float64 {
	for k := range g.n {
		if j := g.bore[k]; g.stays[k] {
			err += float64(g.wx[k]*w.px[j]) + float64(g.wy[k]*w.py[j])
		}
	}
	t := g.ties[shift]
	return t.mean + float64((t.left-1)*err)
}

// off is what becomes of a pair that is not as it should be: one that runs, or
// one that does not.
func off(bad class, stuck bool) class {
	if stuck {
		return bad
	}
	return next
}

// turn is a whole turn of the pair at a mean distance of a: the tightest tooth,
// which the lean brings nearer by tilt at one end of its face, the loosest and
// the mean. bad is what becomes of a pair that does not run.
func (g *gearC) turn(a, tilt float64, bad class, s *sight, places, i int) {
	if near := a - g.reach; near < g.tight {
		s.fail(off(bad, near < g.bind), kNoBacklash*places+i)
	} else if near -= tilt; near < g.tight {
		s.fail(off(bad, near < g.bind), kLean*places+i)
	}
	if far := a + g.reach; far > g.loose {
		s.fail(off(bad, far > g.part), kContact*places+i)
	}
	if a < g.lo {
		s.fail(next, kMeshTight*places+i)
	} else if a > g.hi {
		s.fail(next, kMeshLoose*places+i)
	}
}
