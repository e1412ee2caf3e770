package target

import "math"

// edges are the two limits of one gear, as centre distances of the BARE bore
// centres (no running clearance), at a given place of all shafts.
type edges struct {
	a            float64 // of the bore centres
	n            Point   // unit vector from the shaft towards its mate
	near, far    float64 // a under load, clearances taken the way that brings the gears nearest and farthest
	nNear, nFar  Point   // how the limits change: their unit vectors, or the mean of both at the middle
	lo, hi       float64 // window shifted for the clearances
	inLo, inHi   float64 // and narrowed by so many doubts
	u            float64 // standard uncertainty of the centre distance
	empty        bool    // nothing left between the shifted edges
	wLo, wHi     float64 // the window as given
	width        float64 // of the window as given, the unit of a violation
	shaft, mate  int
	moves, mMove bool // the shaft moves, its mate moves
}

// edge works the limits out. The gears see bore centre + (Cd/2) towards the
// load. The tight edge must hold at whichever clearance brings the gears
// nearer, the loose one at the other.
func (in Input) edge(g Gear, t []Point) edges {
	s := in.Shafts[g.Shaft]
	p := s.bare(t[g.Shaft], g.Share)
	m := g.MateAt
	pLift := [2]Point{s.lift(g.Share, lo), s.lift(g.Share, hi)}
	var mLift [2]Point
	e := edges{shaft: g.Shaft, mate: g.Mate, moves: s.fixed() < 0 && !s.held, wLo: g.Lo, wHi: g.Hi}
	if g.Mate >= 0 {
		ms := in.Shafts[g.Mate]
		m = ms.bare(t[g.Mate], g.MateShare)
		mLift = [2]Point{ms.lift(g.MateShare, lo), ms.lift(g.MateShare, hi)}
		e.mMove = ms.fixed() < 0 && !ms.held
	}
	e.a, e.n = g.Geometry.Distance(p, m)
	from := func(p Point, lift [2]Point) [2]Point {
		return [2]Point{{p[0] + lift[0][0], p[1] + lift[0][1]}, {p[0] + lift[1][0], p[1] + lift[1][1]}}
	}
	e.near, e.far, e.nNear, e.nFar = span(g.Geometry, from(p, pLift), from(m, mLift))
	e.lo, e.hi = g.Lo+e.a-e.near, g.Hi+e.a-e.far
	mid := (e.lo + e.hi) / 2
	if e.lo > e.hi {
		e.empty = true
		e.lo, e.hi = mid, mid
	}
	e.u = in.doubt(g)
	deep := e.u
	if e.moves || e.mMove {
		deep *= in.inside()
	}
	e.inLo, e.inHi = e.lo+deep, e.hi-deep
	if e.inLo >= mid {
		e.inLo, e.inHi = mid, mid
		n := Point{(e.nNear[0] + e.nFar[0]) / 2, (e.nNear[1] + e.nFar[1]) / 2}
		e.nNear, e.nFar = n, n
	}
	e.width = math.Max(math.Abs(g.Hi-g.Lo), 1e-3)
	return e
}

// doubt is the standard uncertainty of the centre distance that will be made:
//
//	u_a = sqrt(u_setup^2 + u_hole^2/n + u_geom^2 + u_mate^2)
//
// A mate on another shaft brings its own holes, and its centres' doubt where it
// is fixed, taken along the line of the original centres. Two shafts that are cut
// in one clamping stand to each other as they are whatever its error; in two
// clampings each brings its own.
func (in Input) doubt(g Gear) float64 {
	s := in.Shafts[g.Shaft]
	t, _ := s.mean()
	m := g.MateAt
	if g.Mate >= 0 {
		mt, _ := in.Shafts[g.Mate].mean()
		m = in.Shafts[g.Mate].bare(mt, g.MateShare)
	}
	_, n := g.Geometry.Distance(s.bare(t, g.Share), m)
	given := GivenDoubt(g.UGeom, g.UMate)
	v := given*given + s.doubt(n, g.Share)
	cut := 0.0 // variance of the clampings
	if s.fixed() < 0 {
		cut = s.USetup * s.USetup
	}
	if g.Mate >= 0 {
		m := in.Shafts[g.Mate]
		v += m.doubt(n, g.MateShare)
		switch {
		case m.fixed() >= 0:
		case s.fixed() < 0 && in.OneClamping:
			cut = 0
		default:
			cut += m.USetup * m.USetup
		}
	}
	return math.Sqrt(v + cut)
}

// GivenDoubt is the standard uncertainty of a mesh beside that of where its
// shafts are, mm: of the geometry, and of the place of a fixed mate.
func GivenDoubt(uGeom, uMate float64) float64 { return math.Hypot(uGeom, uMate) }

// short says by how much the narrowed window is missed: too near, too far.
func (e edges) short() (near, far float64) {
	return math.Max(0, e.inLo-e.a), math.Max(0, e.a-e.inHi)
}
