package world

import (
	"math"
)

// gearEntry measures one mesh: what can be counted is counted, what can be
// measured mostly is.
func (m *maker) gearEntry(g *Gear) *node {
	s := m.stream("mesh " + g.Name)
	e := record().set("name", text(g.Name))
	tips := s.yes(0.75) && !m.missing(g.Name+"/tip")
	g.Trusted = tips
	module, pressure, thinned := 0.0, 0.0, 0.0
	if g.Screw != nil {
		e.set("kind", text("worm"))
		module, pressure, thinned = g.Screw.Module, g.Screw.Pressure, g.Screw.Thinned
		form := g.Form
		if s.yes(0.05) || m.missing(g.Name+"/form") {
			form = "unknown"
			m.note("form of a worm wheel unknown")
			g.Trusted = false
		}
		e.set("wheel_form", text(form))
		m.note("wheel " + form)
	} else {
		e.set("kind", text("spur"))
		module, pressure, thinned = g.Teeth.Module, g.Teeth.Pressure, g.Teeth.Thinned
	}
	if m.inch {
		e.set("diametral_pitch", number(math.Round(25.4/module*1e6)/1e6))
	} else {
		e.set("module", number(module))
	}
	if g.Screw != nil && s.of("shaft angle").yes(0.1) {
		e.set("shaft_angle", number(90))
	}
	if pressure != 20 || s.yes(0.7) {
		e.set("pressure_angle", number(pressure))
	}
	if t := m.fine(thinned - g.Unsaid); t > m.rounded(0.002, 0.001, 0.0001) && s.yes(0.6) {
		e.set("thinned", size(t))
	}
	e.set("wheel", m.wheel(s, g, tips))
	if g.Screw != nil {
		e.set("worm", m.wormEntry(s, g, tips))
	} else {
		e.set("pinion", m.pinion(s, g, tips))
	}
	if s.yes(0.5) {
		low := math.Max(0.03, 0.06*module)
		e.set("backlash", list(size(m.usual(low)), size(m.usual(math.Min(low+s.between(0.05, 0.12), 0.6*module)))))
	} else {
		m.note("backlash by the handbook")
	}
	m.note(map[bool]string{true: "mesh trusted", false: "mesh not trusted"}[g.Trusted])
	return e
}

func (m *maker) wheel(s stream, g *Gear, tips bool) *node {
	w := record().set("on", text(g.Wheel))
	if g.Screw != nil {
		w.set("teeth", number(float64(g.Screw.Wheel)))
	} else {
		w.set("teeth", number(float64(g.Teeth.Wheel)))
		if g.Teeth.Shift[0] != 0 && s.yes(0.7) && !g.Odd[0] {
			w.set("shift", number(math.Round(100*g.Teeth.Shift[0])/100))
		}
	}
	if run := m.usual(g.Runout[0]); !m.missing(g.Name+"/runout") && (run == 0 || run.mm() > 0.004) {
		w.set("runout", size(run))
	}
	if !m.missing(g.Name + "/from_left") {
		w.set("from_left", size(m.coarse(g.Left))).set("face", size(m.coarse(g.Face)))
	}
	if tips {
		w.set("tip", size(m.usual(g.Tip[0]+s.of("wheel tip").normal(0.012))))
		if f := s.of("throat"); g.Form == "throated" && f.yes(0.4) {
			w.set("throat", size(m.usual(g.Tip[0]-f.between(0.03, 0.2))))
		}
	}
	return w
}

func (m *maker) pinion(s stream, g *Gear, tips bool) *node {
	p := record()
	if g.Mate != "" {
		p.set("on", text(g.Mate))
	}
	p.set("teeth", number(float64(g.Teeth.Pinion)))
	if f := s.of("pinion face"); f.yes(0.3) {
		p.set("face", size(m.coarse(g.Face+f.between(0.2, 1))))
	}
	if g.Teeth.Shift[1] != 0 && s.yes(0.7) && !g.Odd[1] {
		p.set("shift", number(math.Round(100*g.Teeth.Shift[1])/100))
	}
	if run := m.usual(g.Runout[1]); s.yes(0.5) && (run == 0 || run.mm() > 0.004) {
		p.set("runout", size(run))
	}
	if tips {
		p.set("tip", size(m.usual(g.Tip[1]+s.of("mate tip").normal(0.012))))
	}
	if g.Mate != "" {
		return p
	}
	in, _ := m.bench.take(s, "centre")
	p.set("at", m.readPoint(s, in, g.At))
	m.mateDoubt(s, g, p, in)
	return p
}

// mateDoubt is how well the mate's place is known, and whether it moved.
func (m *maker) mateDoubt(s stream, g *Gear, e *node, in instrument) {
	stated := size(max(m.rounded(in.u, 0.0005, 0.00002), m.rounded(0.002, 0.001, 0.0001)))
	if s.yes(0.5) {
		e.set("u", stated)
	}
	if g.Moved && !m.missing(g.Name+"/moved") {
		e.set("moved", yesNo(true))
	}
}

func (m *maker) wormEntry(s stream, g *Gear, tips bool) *node {
	w := record().set("starts", number(float64(g.Screw.Starts))).set("pitch_diameter", size(m.usual(g.Screw.Diameter)))
	in, _ := m.bench.take(s, "centre")
	if s.yes(0.25) {
		shaft := m.rounded(math.Min(2, g.Screw.Diameter*0.6), 0.1, 1.0/64)
		w.set("top", placeY(m.read(s, in, g.At[1]+shaft.mm()/2))).set("shaft_diameter", size(shaft))
		m.note("worm by the top of its shaft")
	} else {
		w.set("height", placeY(m.read(s, in, g.At[1])))
	}
	if tips {
		w.set("tip", size(m.usual(g.Tip[1]+s.of("mate tip").normal(0.012))))
	}
	if f := s.of("offset"); f.yes(0.1) {
		off := m.usual(f.normal(0.15))
		if abs(off.mm()) > 0.06 {
			w.set("offset", size(off))
		}
	}
	if s.yes(0.3) {
		w.set("hand", text(one(s, "right", "left")))
	}
	if g.Slope != 0 {
		w.set("slope", number(math.Round(2*g.Slope)/2))
	}
	if s.yes(0.2) {
		w.set("end_float", size(m.usual(s.between(0.05, 0.3))))
	}
	if s.yes(0.15) {
		w.set("bearing_play", size(m.usual(s.between(0.02, 0.08))))
	}
	m.mateDoubt(s, g, w, in)
	return w
}
