package job

import (
	"fmt"
	"math"
)

func checkGear(r *reader, j *Job, g *Gear, v *value) {
	m, dp := v.get("module"), v.get("diametral_pitch")
	switch {
	case m != nil && dp != nil:
		r.onlyOne(m, dp)
	case v.missing("module") && v.missing("diametral_pitch"):
		r.say(v.pos, "module is missing in "+v.path, "write module: 0.5 (mm), or diametral_pitch: 48")
	}
	w := v.get("wheel")
	onShaft := known(r, w.get("on"), "shaft", g.Wheel.On, j.shaftNames())
	z := float64(g.Wheel.Teeth)
	if g.Module > 0 {
		between(r, v.get("thinned"), g.Thinned, 0, 0.4*g.Module, fmt.Sprintf("module %g", round4(g.Module)))
		checkBacklash(r, g, v)
		tip := g.Module * (z + 2 + 2*g.Wheel.Shift)
		if z > 0 {
			why := fmt.Sprintf("%d teeth of module %g, whose tip diameter is about %s", g.Wheel.Teeth,
				round4(g.Module), r.show(tip))
			between(r, w.get("tip"), g.Wheel.Tip, 0.85*tip, 1.15*tip, why)
			between(r, w.get("throat"), g.Wheel.Throat, 0.85*tip, 1.15*tip, why)
		}
	}
	if g.Wheel.Tip.Given() && g.Wheel.Throat.Given() && g.Wheel.Tip.Less(g.Wheel.Throat) {
		r.say(w.get("throat").pos, "throat: it is larger than the tip diameter",
			"the throat is the waist of the wheel, tip its largest diameter")
	}
	checkFace(r, j, g, w)
	switch g.Kind {
	case "spur":
		if v.get("worm") != nil {
			r.say(v.get("worm").pos, "worm: this mesh is of kind spur", "write kind: worm, or give a pinion")
		}
		if v.missing("pinion") {
			r.say(v.pos, "pinion is missing in "+v.path,
				"write pinion: {at: [22.0, 6.0], teeth: 12}, or {on: SHAFT, teeth: 12}")
		}
	case "worm":
		if v.get("pinion") != nil {
			r.say(v.get("pinion").pos, "pinion: this mesh is of kind worm", "write kind: spur, or give a worm")
		}
		if v.missing("worm") {
			r.say(v.pos, "worm is missing in "+v.path, "write worm: {starts: 1, pitch_diameter: 6, height: 14.06}")
		}
		if g.WheelForm == "" {
			g.WheelForm = "unknown"
		}
	}
	var c [2]float64
	there := false
	if onShaft {
		c, there = roughShaft(j.shaft(g.Wheel.On))
	}
	if g.Pinion != nil {
		checkPinion(r, j, g, v.get("pinion"), c, there)
	}
	if g.Worm != nil {
		checkWorm(r, g, v.get("worm"), c, there)
	}
}

// onlyOne refuses two keys of which one has to be chosen, at the one that the job
// itself says where a pattern gives the other.
func (r *reader) onlyOne(a, b *value) {
	if a.pos.File == r.file && b.pos.File != r.file {
		a, b = b, a
	}
	where := ""
	if a.pos.File != b.pos.File {
		where = ", by the pattern: " + at(a.pos)
	}
	r.say(b.pos, fmt.Sprintf("%s: %s is given too%s", b.name, a.name, where), "keep one of them")
}

func round4(f float64) float64 { return math.Round(f*1e4) / 1e4 }

// roughShaft is about where a shaft lies.
func roughShaft(s *Shaft) (p [2]float64, ok bool) {
	n := 0.0
	for i := range s.Bores {
		if q, _, there := s.Bores[i].rough(); there {
			p[0], p[1], n = p[0]+q[0], p[1]+q[1], n+1
		}
	}
	if n == 0 {
		return p, false
	}
	return [2]float64{p[0] / n, p[1] / n}, true
}

func checkBacklash(r *reader, g *Gear, v *value) {
	b := v.get("backlash").items()
	if len(b) != 2 {
		return
	}
	for i, l := range g.Backlash {
		if l.Sign() != 0 {
			between(r, b[i], l, 0.012*g.Module, 0.7*g.Module, fmt.Sprintf("module %g", round4(g.Module)))
		}
	}
	if g.Backlash[1].Less(g.Backlash[0]) {
		r.say(b[0].pos, "backlash: the least is larger than the most", "write [least, most]")
	}
}

// checkFace: a wheel turns between the plates or outside them, not in one.
func checkFace(r *reader, j *Job, g *Gear, w *value) {
	f, c := w.get("from_left"), j.Chassis
	if f == nil || !c.Width.Given() {
		return
	}
	x, half, width := g.Wheel.FromLeft.Float(), g.Wheel.Face.Float()/2, c.Width.Float()
	if math.Abs(x-width/2) > width/2+20 {
		r.say(f.pos, fmt.Sprintf("from_left: %s is far outside a chassis %s wide", r.show(x), r.show(width)),
			"it is the middle of the face from the outside of the left plate")
		return
	}
	for _, plate := range [][2]float64{{0, c.Thickness.Left.Float()}, {width - c.Thickness.Right.Float(), width}} {
		if x+half > plate[0]+0.3 && x-half < plate[1]-0.3 {
			r.say(f.pos, fmt.Sprintf("from_left: a face of %s at %s runs in the plate that stands from %s to %s",
				r.show(2*half), r.show(x), r.show(plate[0]), r.show(plate[1])),
				"it is the middle of the face from the outside of the left plate")
		}
	}
}

// checkPinion: two spur gears mesh at about half their teeth times the module,
// and let go of each other 2 modules farther out.
func checkPinion(r *reader, j *Job, g *Gear, v *value, c [2]float64, there bool) {
	on, at := v.get("on"), v.get("at")
	if on != nil && at != nil {
		r.onlyOne(on, at)
		return
	}
	if v.missing("on") && v.missing("at") {
		r.say(v.pos, "pinion: give either on (a shaft) or at (a fixed place)",
			"write pinion: {at: [22.0, 6.0], teeth: 12}")
		return
	}
	if g.Module > 0 && g.Pinion.Teeth > 0 {
		tip := g.Module * (float64(g.Pinion.Teeth) + 2 + 2*g.Pinion.Shift)
		between(r, v.get("tip"), g.Pinion.Tip, 0.8*tip, 1.25*tip,
			fmt.Sprintf("%d teeth of module %g, whose tip diameter is about %s", g.Pinion.Teeth, round4(g.Module),
				r.show(tip)))
	}
	place := at
	var p [2]float64
	ok := g.Pinion.At.Given()
	if ok {
		p = g.Pinion.At.Float()
	}
	if on != nil {
		place = on
		if known(r, on, "shaft", g.Pinion.On, j.shaftNames()) {
			if g.Pinion.On == g.Wheel.On {
				r.say(on.pos, "on: wheel and pinion are on one shaft", "name the shaft of the pinion")
				return
			}
			p, ok = roughShaft(j.shaft(g.Pinion.On))
		}
	}
	if !ok || !there || g.Module == 0 || g.Pinion.Teeth == 0 || g.Wheel.Teeth == 0 || place == nil {
		return
	}
	a0 := g.Module * (float64(g.Wheel.Teeth+g.Pinion.Teeth)/2 + math.Max(0, g.Wheel.Shift+g.Pinion.Shift))
	apart(r, place, "pinion "+place.name, math.Hypot(p[0]-c[0], p[1]-c[1]), a0, g.Module)
}

// checkWorm: a worm and its wheel mesh at about half the sum of their pitch
// diameters.
func checkWorm(r *reader, g *Gear, v *value, c [2]float64, there bool) {
	h, top := v.get("height"), v.get("top")
	switch {
	case h != nil && top != nil:
		r.onlyOne(h, top)
		return
	case h == nil && top == nil:
		if v.missing("height") && v.missing("top") {
			r.say(v.pos, "worm: neither height nor top is given",
				"write height: 14.06, the height of its axis above the datum edge")
		}
		return
	case top != nil && v.get("shaft_diameter") == nil:
		r.say(top.pos, "top: the diameter of the worm's shaft is needed to come from its top to its axis",
			"write shaft_diameter: 2.0 beside it")
		return
	}
	d, derived := g.Worm.Pitch(g.Module)
	if d == 0 && v.missing("pitch_diameter") && v.missing("tip") {
		r.say(v.pos, "worm: its diameter is not given", "write tip: 7.00, its outside diameter as measured, or "+
			"pitch_diameter by a drawing")
		return
	}
	if d > 0 && g.Module > 0 {
		tip := d + 2*g.Module
		between(r, v.get("tip"), g.Worm.Tip, 0.85*tip, 1.15*tip,
			"pitch diameter and module, whose tip diameter is about "+r.show(tip))
		between(r, v.get("shaft_diameter"), g.Worm.ShaftDiameter, 0.8, d, "the pitch diameter of the worm")
		if derived && d < 2.6*g.Module {
			r.say(v.get("tip").pos, fmt.Sprintf("tip: a worm of %s outside has no core under threads of module %.4g",
				r.show(g.Worm.Tip.Float()), g.Module),
				"measure over the threads, and check the module")
			return
		}
	}
	if !there || d == 0 || g.Module == 0 || g.Wheel.Teeth == 0 {
		return
	}
	y, place := g.Worm.Height.Float(), h
	if top != nil {
		y, place = g.Worm.Top.Float()-g.Worm.ShaftDiameter.Float()/2, top
	}
	a0 := (d + g.Module*float64(g.Wheel.Teeth)) / 2
	apart(r, place, "worm "+place.name, math.Abs(y-c[1]), a0, g.Module)
}

// apart holds a centre distance against the one the teeth ask for: within 1.3
// modules, and 0.6 mm for small teeth.
func apart(r *reader, v *value, what string, found, standard, module float64) {
	if d := math.Max(1.3*module, 0.6); math.Abs(found-standard) > d {
		r.say(v.pos, fmt.Sprintf("%s: the gears stand %s apart, which does not go with their teeth", what,
			r.show(found)),
			fmt.Sprintf("expected about %s by module and teeth: check this place, the bore's centre and their units",
				r.show(standard)))
	}
}
