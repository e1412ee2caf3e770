package chance

import (
	"hash/fnv"
	"math"
	"slices"
)

// The streams of a bore, a gear and a clamping: each word feeds at most two
// sources, low half first.
const (
	sSurvey  = iota // x, y of the old centre
	sHole           // x, y of the hole
	sSeat           // size of a seat that was measured, its lobes
	sSeatN          // normal error of the seat, wear depth
	sTrial          // the hole in scrap, gauging
	sSlip           // whether something slips, the friction
	sWall           // strength, normal error of a finished size
	sOD             // even, normal
	sHoleDia        // bore of the bush: even, normal
	sRunout         // clocking, amount
	sClosure        // flow, slope
	sFinish         // finished size, journal
	sPart           // whether the plug or sleeve fails
	boreStreams
)
const (
	gDoubt  = iota // geometry, mate
	gSpread        // which shift
	gearStreams
)
const (
	ownBore = iota + 1
	ownGear
	ownSetup
	ownTool
	ownShaft // of what both its bores share; no stream hangs on it
)

// boreC is a bore made ready for the loop, all in mm.
type boreC struct {
	kind             Kind
	finish           Finish
	setup            int
	vx, vy           float64 // from the old centre to the target
	survey           bool
	l11, l21, l22    float64 // square root of the covariance
	from             int     // bore whose old centre's error enters this one's, -1 none
	by               [2][2]float64
	r, jr, d, uDepth float64
	wx, wy           float64 // the way of the wear
	fx, fy, gx, gy   float64 // ends of the fan
	cosFan           float64
	uHole, uSet      float64
	partFails        float64
	fillFails        float64
	seatLo, seatW    float64
	tool             int     // whose habit it shares, -1 none
	toolU, sigma     float64 // of that, and from seat to seat
	lobes, slips     float64
	tried            bool
	gaugeU, eases    float64
	sizedU, stressU  float64
	seatMid          float64
	odLo, odW, odU   float64
	idLo, idW, idU   float64
	ecc              float64
	eccEven          bool
	uMin, uMax       float64
	elastic          float64
	flowLo, flowW    float64
	slopeLo, slopeW  float64
	toolLo, toolW    float64
	maxOpen          float64
	boreLo, boreHi   float64
	runLo, runHi     float64
	runMid           float64
	journal, uj      float64
	mustPass         float64
	left, none       float64
	nextLeft         float64
	ex, ey           float64 // the way to the edge
	stress, limit    float64 // per mm
	cap              float64
	next             bool
	nextR            float64
	large, spoilt    class // what becomes of a seat too large, of a bush too large
	lx, ly           float64
}

type gearC struct {
	n             int // bores that carry the pair
	bore          [4]int
	wx, wy        [4]float64 // weight of each bore's move
	centre        float64
	lo, hi, tight float64
	loose         float64
	bind, part    float64
	reach         float64   // half the run-out of both gears
	spread        []float64 // equally likely shifts of the limits
	ties          []pull    // by shift
	stays         [4]bool   // bores that stand where the pair ran
	ug, um        float64
	onL, onR      int
	bx, by        float64 // right target less left target
	ox, oy        float64
	along, across float64
	bad           class // what becomes of a pair that cannot run
}

// pull is a tie made ready: the error of the distance becomes mean + left times
// what was drawn.
type pull struct{ mean, left float64 }

type compiled struct {
	tab    *tables
	bores  []boreC
	gears  []gearC
	setups []float64
	tools  int // whose habits several bores may share
	places int // bores or gears, whichever are more
	keys   keys
}

// keys name the streams of bores, gears, clampings and tools, so that the order of
// a job decides no random number: by name, a clamping by the first of its bores in
// the order of their names.
type keys struct{ bore, gear, setup, tool []uint64 }

func (m *Model) keys() keys {
	var k keys
	of := map[int]string{}
	for _, b := range m.Bores {
		k.bore = append(k.bore, named(b.Name))
		if first, ok := of[b.Setup]; b.Kind == Cut && (!ok || b.Name < first) {
			of[b.Setup] = b.Name
		}
	}
	for _, g := range m.Gears {
		k.gear = append(k.gear, named(g.Name))
	}
	for i, s := range m.Setups {
		name, ok := of[i]
		if !ok {
			name = s.Name
		}
		k.setup = append(k.setup, named(name))
	}
	for _, name := range m.tools() {
		k.tool = append(k.tool, named(name))
	}
	return k
}

// tools are the tools that make seats, each once.
func (m *Model) tools() (out []string) {
	for i := range m.Bores {
		if b := &m.Bores[i]; b.Seat.ToolU > 0 && !slices.Contains(out, b.SeatBy) {
			out = append(out, b.SeatBy)
		}
	}
	return out
}

// named is a name as a number.
func named(name string) uint64 {
	h := fnv.New64a()
	h.Write([]byte(name))
	return h.Sum64()
}

func unit(deg float64) (x, y float64) {
	y, x = math.Sincos(deg * math.Pi / 180)
	return grid(x), grid(y)
}

// grid takes off the last digits, in which platforms differ.
func grid(v float64) float64 { return math.Round(v*1e12) / 1e12 }

func (m *Model) compile() *compiled {
	c := &compiled{tab: sharedTables(), bores: make([]boreC, len(m.Bores)), setups: make([]float64, len(m.Setups)),
		places: max(len(m.Bores), len(m.Gears)), keys: m.keys()}
	for i, s := range m.Setups {
		c.setups[i] = s.UMM
	}
	tools := m.tools()
	c.tools = len(tools)
	for i := range m.Bores {
		c.bores[i] = m.compileBore(&m.Bores[i])
		m.share(c, i)
		c.bores[i].tool = slices.Index(tools, m.Bores[i].SeatBy)
	}
	for i := range m.Gears {
		c.gears = append(c.gears, m.compileGear(&m.Gears[i]))
	}
	return c
}

func (m *Model) compileBore(b *Bore) boreC {
	s, w := b.Survey, b.Wall
	c := boreC{kind: b.Kind, finish: b.Finish, setup: b.Setup,
		vx: b.TargetMM[0] - s.Centre[0], vy: b.TargetMM[1] - s.Centre[1],
		r: s.R, jr: s.JournalR, d: s.D, uDepth: s.UDepthMM,
		uHole: b.UHoleMM, uSet: b.USetMM, partFails: b.PartFails, fillFails: b.FillFails, seatLo: b.Seat.Mid - b.Seat.Half, seatW: 2 * b.Seat.Half,
		toolU: b.Seat.ToolU, sigma: b.Seat.U, lobes: b.Seat.Lobes, slips: b.Slips, tried: b.Tried,
		gaugeU: b.GaugeUM / 1000, eases: b.EasesUM / 1000, sizedU: b.SizedUMM, stressU: w.StressU,
		seatMid: b.Seat.Mid, odLo: b.OD.Low, odW: b.OD.High - b.OD.Low, odU: b.OD.U,
		idLo: b.Hole.Low, idW: b.Hole.High - b.Hole.Low, idU: b.Hole.U,
		ecc: b.RunoutMM / 2, eccEven: b.RunoutEven,
		uMin: b.PressUM[0] / 1000, uMax: b.PressUM[1] / 1000,
		elastic: b.Closure.Elastic, flowLo: b.Closure.FlowUM[0] / 1000, flowW: (b.Closure.FlowUM[1] - b.Closure.FlowUM[0]) / 1000,
		slopeLo: b.Closure.Slope[0], slopeW: b.Closure.Slope[1] - b.Closure.Slope[0],
		toolLo: b.ToolMM[0], toolW: b.ToolMM[1] - b.ToolMM[0], maxOpen: b.MaxOpenMM,
		boreLo: b.BoreMM[0], boreHi: b.BoreMM[1], runLo: b.RunningUM[0] / 1000, runHi: b.RunningUM[1] / 1000,
		journal: b.JournalMM, uj: b.UJournalMM, mustPass: b.MustPassMM,
		left: w.LeftMM, none: w.NoneBelowMM, nextLeft: w.NextLeftMM, stress: w.StressPerUM * 1000, limit: w.StressLimit, cap: w.StressCapMPa,
		next: b.NextBush, nextR: b.NextSeatMM, large: lost, spoilt: spoilt}
	c.runMid = (c.runLo + c.runHi) / 2
	if b.Closure.FlowUM[1] <= 0 {
		c.flowLo = math.MaxFloat64 / 4
	}
	if b.Finish == BoreInPlace {
		c.ecc = 0
	}
	if b.NextBush || b.Bond {
		c.large = next
	}
	if !b.Replaceable {
		c.spoilt = c.large
	}
	c.root(s.Cov)
	c.wx, c.wy = unit(s.TowardsDeg)
	c.fx, c.fy = unit(s.TowardsDeg - s.FanDeg)
	c.gx, c.gy = unit(s.TowardsDeg + s.FanDeg)
	c.cosFan, _ = unit(s.FanDeg)
	c.ex, c.ey = unit(w.EdgeDeg)
	c.lx, c.ly = unit(m.Shafts[b.Shaft].LoadDeg)
	return c
}

func (m *Model) compileGear(g *Gear) gearC {
	c := gearC{centre: g.CentreMM, lo: g.WindowMM[0], hi: g.WindowMM[1], tight: g.TightMM, loose: g.LooseMM, bind: g.BindMM, part: g.PartMM,
		reach: (g.RunoutMM[0] + g.RunoutMM[1]) / 2, spread: g.SpreadMM,
		ug: g.UGeomMM, um: g.UMateMM, bad: lost, onL: -1, onR: -1,
		ox: g.Open[0], oy: g.Open[1], along: g.LeanAlong, across: g.LeanAcross}
	if c.tight == 0 {
		c.tight = -math.MaxFloat64
	}
	if c.loose == 0 {
		c.loose = math.MaxFloat64
	}
	if c.bind == 0 {
		c.bind = c.tight
	}
	if c.part == 0 {
		c.part = c.loose
	}
	if g.Placeless {
		c.bad = next
		return c
	}
	touched := false
	add := func(shaft int, station, sign float64) {
		left, right := m.boresOf(shaft)
		put := func(i int, w float64) {
			if i < 0 || w == 0 {
				return
			}
			c.bore[c.n], c.wx[c.n], c.wy[c.n] = i, sign*w*g.Open[0], sign*w*g.Open[1]
			c.stays[c.n] = m.Bores[i].Kind != Cut
			c.n++
			touched = touched || m.Bores[i].Kind != Leave
			if m.Bores[i].Kind == Cut && m.Bores[i].Eccentric {
				c.bad = next
			}
		}
		switch {
		case left < 0:
			put(right, 1)
		case right < 0:
			put(left, 1)
		default:
			put(left, 1-station)
			put(right, station)
		}
	}
	add(g.On, g.Station, 1)
	if g.MateOn != FixedMate {
		add(g.MateOn, g.MateStation, -1)
	}
	c.ties = m.pulls(g, &c)
	if !touched {
		c.bad = next // the job has not made it what it is
	}
	if l, r := m.boresOf(g.On); l >= 0 && r >= 0 && g.LeanAlong > 0 {
		c.onL, c.onR = l, r
		c.bx, c.by = m.Bores[r].TargetMM[0]-m.Bores[l].TargetMM[0], m.Bores[r].TargetMM[1]-m.Bores[l].TargetMM[1]
	}
	return c
}

// pulls makes the ties of a pair ready for the errors that its distance has kept
// since it ran: teeth, a fixed mate, and bores that are not cut.
func (m *Model) pulls(g *Gear, c *gearC) []pull {
	v := g.UGeomMM*g.UGeomMM + g.UMateMM*g.UMateMM
	for k := range c.n {
		if s := m.Bores[c.bore[k]].Survey.Cov; c.stays[k] {
			x, y := c.wx[k], c.wy[k]
			v += s[0]*x*x + 2*s[1]*x*y + s[2]*y*y + m.crossed(c, k)
		}
	}
	var out []pull
	for _, t := range g.Ties {
		out = append(out, pull{grid(v * t.Pull), grid(math.Sqrt(math.Max(0, 1-v*t.Sure)))})
	}
	return out
}

// boresOf finds the left and right bore of a shaft, -1 where there is none.
func (m *Model) boresOf(shaft int) (left, right int) {
	left, right = -1, -1
	for i := range m.Bores {
		if m.Bores[i].Shaft == shaft {
			if m.Bores[i].Right {
				right = i
			} else {
				left = i
			}
		}
	}
	return left, right
}
