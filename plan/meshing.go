package plan

import (
	"fmt"
	"math"
	"strings"

	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/target"
)

// gear is one mesh as the chain carries it.
type gear struct {
	g        *job.Gear
	pair     mesh.Pair
	geometry target.Geometry
	shaft    int // index among the shafts that can be placed
	mate     int // -1: at a fixed place
	mateAt   [2]float64
	uMate    float64
	share    float64
	mShare   float64
	tir      float64 // of both gears, added: the tightest tooth
	tirU     float64 // of both gears, as their doubts add
	window   mesh.Window
	wish     mesh.Wish
	trusted  bool
	uGeom    float64
	moved    bool
	nums     []ledger.Num // its window in the ledger
	closes   float64      // how much nearer the rim of a throated wheel comes by standing off its middle, mm
}

// shaftState is one shaft with its bores as the target room wants it.
type shaftState struct {
	s     *job.Shaft
	bores []*bore // those whose centre is known
	fixed bool
}

// loadTowards is the way a shaft is pressed in its bores, degrees.
func (m *maker) loadTowards(s *job.Shaft) float64 {
	switch {
	case s.LoadTowards != nil:
		return *s.LoadTowards
	case m.j.Chassis.RailsAbove:
		return 270
	}
	return 90
}

// placeable lists the shafts that have a known centre.
func (m *maker) placeable() []shaftState {
	var out []shaftState
	for i := range m.j.Shafts {
		s := &m.j.Shafts[i]
		st := shaftState{s: s, fixed: s.Leave}
		for _, b := range m.on(s.Name) {
			if b.known {
				st.bores = append(st.bores, b)
				sin, cos := math.Sincos(m.loadTowards(s) * deg)
				b.load = [2]float64{cos, sin}
			}
		}
		if len(st.bores) > 0 {
			out = append(out, st)
		}
	}
	return out
}

// spacing is the distance between the middles of the plates, 0 unknown.
func (m *maker) spacing() float64 {
	c := m.j.Chassis
	if !c.Width.Given() {
		return 0
	}
	return c.Width.Float() - (c.Thickness.Left.Float()+c.Thickness.Right.Float())/2
}

// share says where a gear stands between the bores: 0 left, 1 right.
func (m *maker) share(w job.Wheel) float64 {
	b := m.spacing()
	if !w.FromLeft.Given() || b <= 0 {
		return 0.5
	}
	return (w.FromLeft.Float() - m.j.Chassis.Thickness.Left.Float()/2) / b
}

// gearsOf builds the meshes of the job. One that cannot be reckoned is said
// and left out.
func (m *maker) gearsOf(shafts []shaftState) []*gear {
	index := map[string]int{}
	for i, s := range shafts {
		index[s.s.Name] = i
	}
	var out []*gear
	for i := range m.j.Gears {
		g := &m.j.Gears[i]
		k, ok := index[g.Wheel.On]
		if !ok {
			m.sayGear(finding.Caution, "mesh/mesh", g,
				"the place of its shaft is not known, so this mesh is not worked out", "")
			continue
		}
		x := &gear{g: g, shaft: k, mate: -1, share: m.share(g.Wheel), mShare: m.share(g.Wheel), tir: g.Wheel.Runout.Float(), tirU: g.Wheel.Runout.Float()}
		if err := m.buildGear(x, shafts, index); err != nil {
			text := strings.NewReplacer("gear 1", "the wheel", "gear 2", "the pinion").Replace(err.Error())
			m.sayGear(finding.Caution, "mesh/mesh", g,
				say.Words(text), "check teeth, module, angle and place of the mating gear")
			continue
		}
		out = append(out, x)
	}
	return out
}

func (m *maker) buildGear(x *gear, shafts []shaftState, index map[string]int) error {
	g := x.g
	switch {
	case g.Kind == "worm" && g.Worm != nil:
		if err := m.wormOf(x, shafts); err != nil {
			return err
		}
	case g.Kind == "spur" && g.Pinion != nil:
		if err := m.spurOf(x, index); err != nil {
			return err
		}
	default:
		return fmt.Errorf("a %s gear needs its mating gear", g.Kind)
	}
	if err := x.pair.Validate(); err != nil {
		return err
	}
	if g.Backlash[0].Given() {
		x.wish = mesh.Wish{Lo: g.Backlash[0].Float(), Hi: g.Backlash[1].Float()}
	} else {
		d, err := mesh.HandbookWish(m.lib, g.Module)
		if err != nil {
			return err
		}
		x.wish = d.Wish
		m.sayGear(finding.Note, "mesh/backlash by handbook", g,
			say.F("no backlash is given: %v square to the flanks is taken (%s, %s)", say.MMs(d.Lo, d.Hi, 3), d.Least.Address, d.Most.Address), "give backlash: [least, most] for this gear")
	}
	lim := m.meshLimits(m.rules.V("contact_ratio_min"), m.rules.V("tight_tooth_backlash_mm"))
	m.used("contact_ratio_min")
	m.used("tight_tooth_backlash_mm")
	w, err := mesh.WindowOf(x.pair, g.Module, x.wish, x.tir, lim)
	if err != nil {
		return err
	}
	if w.Lo += x.closes; w.Lo > w.Hi {
		w.Empty = true
	}
	x.window = w
	if w.Empty {
		m.sayGear(finding.Caution, "mesh/window empty", g,
			say.F("no centre distance gives this backlash with enough teeth in contact (%s against %s): the middle, %v, is aimed at", w.LoBy, w.HiBy, say.MM(w.Middle(), 3)), "wider backlash limits or other gears")
	}
	x.trusted = x.pair.Measured()
	x.uGeom = mesh.UGeometry(x.pair, g.Module, m.rules.V("u_geometry_trusted_mm"), m.rules.V("u_geometry_module_factor"))
	m.used("u_geometry_trusted_mm")
	for _, t := range x.pair.Tips() {
		if !t.Agrees {
			m.sayGear(finding.Caution, "mesh/tooth count", g,
				say.F("tip diameter %v measured, %v expected: this blank belongs to %.1f teeth, so the mesh only reports and moves nothing", say.MM(t.Measured, 2), say.MM(t.Expected, 2), t.VirtualTeeth), "check module and teeth, or give the profile shift")
		}
	}
	m.runsOut(x, shafts)
	if !x.trusted {
		m.used("u_geometry_module_factor")
		m.sayGear(finding.Note, "mesh/mesh not trusted", g,
			say.F("not given: %s; so this mesh is reported but moves no shaft", strings.Join(unmeasured(g), ", ")), "measure and give it")
	}
	return nil
}

// unmeasured lists what a pair would have to be measured for to be trusted.
func unmeasured(g *job.Gear) []string {
	var out []string
	if !g.Wheel.Tip.Given() {
		out = append(out, "the tip diameter of the wheel (tip)")
	}
	if g.Kind == "worm" && (g.WheelForm == "" || g.WheelForm == "unknown") {
		out = append(out, "the form of the wheel (wheel_form)")
	}
	if g.Pinion != nil && !g.Pinion.Tip.Given() {
		out = append(out, "the tip diameter of the pinion (tip)")
	}
	if len(out) == 0 {
		out = append(out, "a tip diameter that fits the tooth count")
	}
	return out
}

// meshLimits are the rules by which a window is cut.
func (m *maker) meshLimits(contact, tooth float64) mesh.Limits {
	return mesh.Limits{ContactRatio: contact, ContactHard: m.rules.V("contact_ratio_hard"), TightTooth: tooth, TipModules: m.rules.V("tip_clearance_modules")}
}

func (m *maker) wormOf(x *gear, shafts []shaftState) error {
	g, w := x.g, x.g.Worm
	form := mesh.Form(g.WheelForm)
	if g.WheelForm == "" {
		form = mesh.Unknown
	}
	x.pair = mesh.Worm{Form: form, Module: g.Module, Starts: w.Starts, Teeth: g.Wheel.Teeth, PitchDiameter: w.PitchDiameter.Float(),
		Angle: g.PressureAngle, Shift: g.Wheel.Shift, Thinned: g.Thinned.Float(), ShaftAngle: g.ShaftAngle, WheelTip: g.Wheel.Tip.Float(), WormTip: w.Tip.Float()}
	height := w.Height.Float()
	switch {
	case w.Height.Given():
	case w.Top.Given() && w.ShaftDiameter.Given():
		height = w.Top.Float() - w.ShaftDiameter.Float()/2
	case w.Top.Given():
		return fmt.Errorf("the top of the worm's shaft needs its diameter too: give shaft_diameter, or the height of the axis")
	default:
		return fmt.Errorf("the height of the worm is not given")
	}
	c := m.shaftCentre(g.Wheel.On)
	if c == nil {
		return fmt.Errorf("the place of its wheel is not known")
	}
	x.mateAt = [2]float64{c[0], height}
	x.geometry = mesh.Along{SlopeDeg: w.Slope, Below: height < c[1]}
	x.uMate = math.Hypot(m.mateU(w.U.Float(), w.U.Given()), w.BearingPlay.Float()/math.Sqrt(12))
	x.moved = w.Moved
	f := x.pair.(mesh.Worm)
	if w.EndFloat.Given() {
		m.sayGear(finding.Note, "mesh/end float", g,
			say.F("%v of end float of the worm shows as %.1f degrees of play at the wheel, beside the backlash", say.MM(w.EndFloat.Float(), 2), f.EndFloatPlay(w.EndFloat.Float())), "")
	}
	if w.Offset.Given() && g.Wheel.Face.Given() {
		closes, err := f.OffsetClosure(math.Abs(w.Offset.Float()), g.Wheel.Face.Float())
		if err != nil {
			return err
		}
		if x.closes = closes; closes > 0.001 {
			m.sayGear(finding.Caution, "mesh/wheel off its middle", g,
				say.F("the wheel stands %v off the middle of the worm: the rim of its throat comes %v closer", say.MM(w.Offset.Float(), 2), say.MM(closes, 3)), "centre the wheel on its axle")
		}
	}
	if form == mesh.Straight && g.Wheel.Face.Given() && g.Wheel.Face.Float() < f.FaceNeeded() {
		m.sayGear(finding.Caution, "mesh/narrow wheel", g,
			say.F("a straight-cut wheel under this worm is touched %v either side of its middle; a face of %v runs on its edges and the tight distance comes out too large", say.MM(f.FaceNeeded()/2, 2), say.MM(g.Wheel.Face.Float(), 2)), "")
	}
	return nil
}

// mateU is the doubt of a mate's place.
func (m *maker) mateU(u float64, given bool) float64 {
	if given {
		return u
	}
	r, err := m.instr.named("", "centre")
	if err != nil {
		return 0
	}
	return r.u
}

func (m *maker) spurOf(x *gear, index map[string]int) error {
	g, p := x.g, x.g.Pinion
	x.pair = mesh.Spur{Module: g.Module, Z1: g.Wheel.Teeth, Z2: p.Teeth, Angle: g.PressureAngle, X1: g.Wheel.Shift, X2: p.Shift,
		Thinned: g.Thinned.Float(), Tip1: g.Wheel.Tip.Float(), Tip2: p.Tip.Float()}
	x.geometry = mesh.Across{}
	x.tir += p.Runout.Float()
	x.tirU = math.Hypot(x.tirU, p.Runout.Float())
	x.moved = p.Moved
	if p.On != "" {
		k, ok := index[p.On]
		if !ok {
			return fmt.Errorf("the place of %s, where the pinion sits, is not known", p.On)
		}
		x.mate = k
		return nil
	}
	x.mateAt = p.At.Float()
	x.uMate = m.mateU(p.U.Float(), p.U.Given())
	return nil
}

func (m *maker) sayGear(level finding.Level, rule finding.Rule, g *job.Gear, text, fix say.Text) {
	pos := m.j.At("gears/" + g.Name)
	m.p.Findings.Raise(level, rule, finding.Place{Where: g.Name, File: pos.File, Line: pos.Line, Column: pos.Column},
		text,
		fix)
}

// distance is a mesh's centre distance with its shafts standing as told.
func (x *gear) distance(shafts []shaftState, centre func(*bore) [2]float64, off func(*bore) float64) float64 {
	p := standing(shafts[x.shaft], x.share, centre, off)
	w := x.mateAt
	if x.mate >= 0 {
		w = standing(shafts[x.mate], x.mShare, centre, off)
	}
	a, _ := x.geometry.Distance(p, w)
	return a
}

// play is the backlash at a centre distance, never below 0.
func (x *gear) play(a float64) float64 {
	j, err := x.pair.Backlash(a)
	if err != nil {
		return math.NaN()
	}
	return math.Max(0, j)
}

// foundMesh says what wear has done to a mesh, in words and number, and
// whether the figures contradict themselves.
func (m *maker) foundMesh(x *gear, shafts []shaftState) (words say.Text) {
	found := x.distance(shafts, foundCentre, asFound)
	was := x.distance(shafts, oldCentre, originally)
	mate := "the pinion"
	if x.g.Kind == "worm" {
		mate = "the worm"
	}
	words = mesh.WearWords(mesh.StateAt(x.pair, was), mesh.StateAt(x.pair, found), mate)
	uSurvey := 0.0
	for _, b := range shafts[x.shaft].bores {
		uSurvey = math.Max(uSurvey, b.u)
	}
	switch agree, short := mesh.Agree(x.pair, found, uSurvey, x.uGeom, x.moved, m.j.Binds == job.Yes); agree {
	case mesh.CannotReach:
		m.sayGear(finding.Note, "mesh/mesh tight as found", x.g,
			say.F("the shaft cannot reach the end of its hole: the teeth meet first, short by %v", say.MM(short, 3)), "")
	case mesh.Contradicts:
		x.trusted = false
		tight := x.pair.Tight()
		have, want := sig9(found), sig9(tight)
		yet := "yet nothing binds"
		if m.j.Binds == job.Unsaid {
			yet = "yet nobody says that it binds"
		}
		m.p.Findings.Raise(finding.Caution, "mesh/mesh contradicts", m.j.Place(x.g.Name),
			say.F("by these figures the teeth would have jammed as found (centre distance %v, least %v), %s: the mesh is not trusted and moves nothing", say.MM(found, 3), say.MM(tight, 3), yet),
			"check the place of the mating gear and the tooth counts; say moved: yes if it was renewed since").Against(have, want, "mm")
	}
	return words
}
