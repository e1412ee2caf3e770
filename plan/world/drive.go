package world

import (
	"math"
)

// drives gives the axles their wheels, and the wheels their mates.
func (m *maker) drives() {
	s := m.stream("drives")
	kinds := words{{17, "none"}, {34, "worm"}, {22, "spur to a fixed place"}, {15, "spur to a shaft"}, {12, "train"}}
	kind := kinds.of(s)
	axles := len(m.truth.Shafts)
	m.drive(kind, 0)
	if axles < 2 {
		return
	}
	last := axles - 1
	switch {
	case kind == "worm" && s.yes(0.5):
		m.sameWorm(last)
	case s.yes(0.3):
		m.drive(kinds.of(s), last)
	}
}

// drive draws one mesh, or a train, on an axle.
func (m *maker) drive(kind string, axle int) {
	m.note("drive " + kind)
	name := m.truth.Shafts[axle].Name
	s := m.stream("drive " + name)
	switch kind {
	case "worm":
		m.worm(s, axle)
	case "spur to a fixed place":
		g := m.spur(s, axle, m.up(s))
		g.Name = name + " drive"
		m.addGear(s, g)
	case "spur to a shaft":
		g := m.spur(s, axle, m.up(s))
		g.Name, g.Mate = name+" drive", name+" motor shaft"
		d := one(s, 1.5, 2, 2.4, 3)
		m.shaft(g.Mate, g.At, [2]float64{d, d}, s.yes(0.65))
		m.addGear(s, g)
	case "train":
		m.train(s, axle)
	}
}

// up is the direction of a mate: mostly on the side away from the rails.
func (m *maker) up(s stream) float64 {
	deg := m.rails + s.between(-70, 70)
	if s.yes(0.12) {
		deg += 180
	}
	return deg
}

// spur draws a pair whose wheel sits on a shaft; At is the mate's place.
func (m *maker) spur(s stream, axle int, deg float64) Gear {
	shaft := m.truth.Shafts[axle]
	d := math.Max(shaft.Journal[0], shaft.Journal[1])
	t := &Teeth{Pressure: among(s, share[float64]{8, 20}, share[float64]{1, 14.5}), Pinion: s.whole(9, 18)}
	for range 40 { // teeth that leave room for both shafts
		t.Module = one(s, 0.3, 0.4, 0.5, 0.5, 0.6, 0.8, 1)
		if m.inch {
			t.Module = 25.4 / one(s, 24.0, 32, 48, 48, 64)
		}
		t.Wheel = s.whole(18, 48)
		if a := t.Module * float64(t.Wheel+t.Pinion) / 2; t.Module*float64(t.Wheel) > 1.8*d && a > d/2+4.5 && a < 26 {
			break
		}
	}
	if float64(t.Wheel+t.Pinion)*t.Module/2 < d/2+4.5 {
		t.Module, t.Wheel = 0.8, 30
	}
	if s.yes(0.15) {
		t.Shift = [2]float64{s.between(-0.1, 0.25), s.between(0, 0.4)}
		m.note("shifted teeth")
	}
	if s.yes(0.3) {
		t.Thinned = s.between(0.01, 0.1) * t.Module
	}
	g := Gear{Wheel: shaft.Name, Teeth: t}
	m.odd(s, &g)
	g.Design = t.At(m.whenNew(s, t.Module, 0.04, 0.12))
	tip, mate := t.Tips()
	g.Tip = [2]float64{tip - s.between(0, 0.03), mate - s.between(0, 0.03)}
	g.At = shaft.Design.Plus(deg, g.Design+s.normal(0.012))
	return g
}

// train is a fixed pinion, an idler or compound shaft, and the axle's wheel.
func (m *maker) train(s stream, axle int) {
	name := m.truth.Shafts[axle].Name
	first := m.spur(s, axle, m.up(s))
	first.Name, first.Mate = name+" last mesh", name+" idler"
	d := one(s, 1.5, 2, 2.4, 3)
	m.shaft(first.Mate, first.At, [2]float64{d, d}, s.yes(0.5))
	idler := len(m.truth.Shafts) - 1
	second := m.spur(s, idler, m.rails+s.between(-60, 60))
	if s.yes(0.45) { // a true idler: one wheel in both meshes
		t := *second.Teeth
		t.Module, t.Pressure, t.Thinned = first.Teeth.Module, first.Teeth.Pressure, first.Teeth.Thinned
		t.Wheel, t.Shift = first.Teeth.Pinion, [2]float64{first.Teeth.Shift[1], 0}
		second.Odd = [2]bool{first.Odd[1], false}
		second.Teeth = &t
		second.Design = t.At(m.whenNew(s, t.Module, 0.04, 0.12))
		tip, mate := t.Tips()
		second.Tip = [2]float64{tip - s.between(0, 0.03), mate - s.between(0, 0.03)}
		second.At = m.truth.Shafts[idler].Design.Plus(m.rails+s.between(-60, 60), second.Design+s.normal(0.012))
		m.note("idler with one wheel")
	} else {
		m.note("compound train")
	}
	second.Name = name + " first mesh"
	m.addGear(s, first)
	m.addGear(s, second)
}

// worm draws a worm across an axle.
func (m *maker) worm(s stream, axle int) {
	shaft := m.truth.Shafts[axle]
	w := &Screw{Pressure: among(s, share[float64]{8, 20}, share[float64]{1, 14.5})}
	w.Starts = among(s, share[int]{7, 1}, share[int]{2, 2}, share[int]{1, 3})
	d := math.Max(shaft.Journal[0], shaft.Journal[1])
	w.Module = one(s, 0.3, 0.4, 0.5, 0.5, 0.6, 0.8)
	if m.inch {
		w.Module = 25.4 / one(s, 32.0, 48, 48, 64)
	}
	w.Wheel = max(s.whole(12, 30), int(1.8*d/w.Module)+1)
	w.Diameter = math.Round(20*w.Module*s.between(9, 15)) / 20
	g := Gear{Name: shaft.Name + " drive", Wheel: shaft.Name, Screw: w}
	g.Form = words{{4, "throated"}, {3, "helical"}, {3, "straight"}}.of(s)
	if w.Straight = g.Form == "straight"; w.Straight {
		w.Starts = 1 // a steep thread over straight teeth touches at their corners alone
	}
	if s.yes(0.25) {
		w.Thinned = s.between(0.01, 0.1) * w.Module
	}
	m.odd(s, &g)
	g.Design = w.At(m.whenNew(s, w.Module, 0.03, 0.09))
	deg := 90.0
	if s.yes(0.2) {
		deg = 270
		m.note("worm below")
	} else {
		m.note("worm above")
	}
	if s.yes(0.12) {
		g.Slope = s.between(-3, 3)
		m.note("worm on a slope")
	}
	g.At = shaft.Design.Plus(deg+g.Slope, g.Design+s.normal(0.012))
	g.At[0] = shaft.Design[0]
	g.At[1] = shaft.Design[1] + math.Copysign(g.Design+s.normal(0.012), 180-deg)/math.Cos(g.Slope*math.Pi/180)
	g.Tip = [2]float64{w.Module*(float64(w.Wheel)+2+2*w.Shift) - s.between(0, 0.03), w.Diameter + 2*w.Module - s.between(0, 0.03)}
	m.addGear(s, g)
}

// sameWorm lets the worm of the first axle drive another one.
func (m *maker) sameWorm(axle int) {
	g := m.truth.Gears[0]
	if g.Slope != 0 {
		return
	}
	shaft := m.truth.Shafts[axle]
	s := m.stream("drive " + shaft.Name)
	own := *g.Screw
	own.Thinned -= g.Unsaid // its own wheel came out otherwise
	g.Screw = &own
	g.Name, g.Wheel = shaft.Name+" drive", shaft.Name
	g.At[0] = shaft.Design[0]
	m.note("one worm for two axles")
	m.addGear(s, g)
}

// addGear gives a mesh what all meshes have.
func (m *maker) addGear(s stream, g Gear) {
	g.Runout = [2]float64{s.between(0, 0.04), s.between(0, 0.025)}
	if s.yes(0.15) {
		g.Runout[0] = s.between(0.05, 0.12)
		m.note("wheel runs out")
	}
	m.thickness(s.of("thickness"), &g)
	t := &m.truth
	g.Face = s.between(1.2, 3.5)
	room := t.Width - t.Thickness[0] - t.Thickness[1]
	g.Face = math.Min(g.Face, room-1.5)
	g.Left = t.Thickness[0] + g.Face/2 + 0.5 + s.between(0, 1)*(room-g.Face-1)
	if s.yes(0.06) {
		g.Left = -g.Face/2 - s.between(0.5, 2)
		m.note("wheel outside the plates")
	}
	t.Gears = append(t.Gears, g)
}

// oddShare is how often a wheel or pinion of a truck that is apt is cut on the
// blank of another tooth count (j): then its teeth stand half a module farther
// out or in, and its tip says so to whoever measures it.
const oddShare = 0.08

func (m *maker) odd(s stream, g *Gear) {
	if !m.o.Apt {
		return
	}
	for k, part := range []string{"wheel", "pinion"} {
		s := s.of("odd " + part)
		if !s.yes(oddShare) || g.Screw != nil && k == 1 {
			continue
		}
		g.Odd[k] = true
		by := one(s, -0.5, 0.5)
		if g.Screw != nil {
			g.Screw.Shift += by
		} else {
			g.Teeth.Shift[k] += by
		}
		m.note("odd gear")
	}
}

// thicknessU is how far the teeth of one gear of a truck that is apt come out
// thicker or thinner than they were meant, mm along the reference circle: a
// quarter of the 0.001 to 0.002 inch that classes of fine-pitch gears allow on
// thickness (AGMA 2002, from memory).
const thicknessU = 0.010

// thickness makes the teeth of a pair as thick as they came out; nobody knows.
func (m *maker) thickness(s stream, g *Gear) {
	if !m.o.Apt {
		return
	}
	g.Unsaid = s.normal(thicknessU) + s.of("mate").normal(thicknessU)
	if g.Screw != nil {
		g.Screw.Thinned += g.Unsaid
	} else {
		t := *g.Teeth // an idler shares its teeth, and not what they mesh with
		t.Thinned += g.Unsaid
		g.Teeth = &t
	}
}

// whenNew is the normal backlash that the maker meant a mesh to have: between
// shares of a module, of which some lie below what is wanted today. A truck that
// is apt ran well when it was new.
func (m *maker) whenNew(s stream, module, low, high float64) float64 {
	share := s.between(low, high)
	if m.o.Apt {
		share += 0.08
	}
	return share * math.Max(module, 0.4)
}
