package checked

import (
	"math"

	"rebush/plan/mesh"
)

// inch turns inch inputs into mm.
func (in *inputs) centre() float64 {
	if in.has("C") {
		return in.v("C") * 25.4
	}
	return in.need("a")
}

func (in *inputs) spur() mesh.Spur {
	s := mesh.Spur{Module: in.v("m"), Z1: int(in.need("z1")), Z2: int(in.need("z2")), Angle: in.need("alpha"),
		X1: in.v("x1"), X2: in.v("x2"), Thinned: in.v("T"), Tip1: in.v("da1"), Tip2: in.v("da2")}
	if in.has("P") {
		m, err := mesh.ModuleFromDP(in.v("P"))
		if err != nil {
			in.fail("%v", err)
		}
		s.Module = m
	}
	if err := s.Validate(); err != nil {
		in.fail("%v", err)
	}
	return s
}

// worm builds the drive of the named form. Rows give the module as mx or mn;
// the wheel's own kind is what the form takes. Missing counts that the asked
// figure does not use are filled in.
func (in *inputs) worm(form mesh.Form) mesh.Worm {
	w := mesh.Worm{Form: form, Starts: 1, Teeth: 24, PitchDiameter: in.v("d1"), Angle: 20, ShaftAngle: in.v("Sigma")}
	if in.has("z1") {
		w.Starts = int(in.v("z1"))
	}
	if in.has("starts") {
		w.Starts = int(in.v("starts"))
	}
	if in.has("z2") {
		w.Teeth = int(in.v("z2"))
	}
	if in.has("alpha_n") {
		w.Angle = in.v("alpha_n")
	}
	if in.has("Dw") {
		w.PitchDiameter = in.v("Dw") * 25.4
	}
	switch {
	case in.has("DP"):
		w.Module = 25.4 / in.v("DP")
	case in.has("mx"):
		w.Module = in.v("mx")
	case form == mesh.Straight:
		w.Module = in.need("mn")
	default:
		w.Module = axialFromNormal(in.need("mn"), w.Starts, w.PitchDiameter)
	}
	if w.PitchDiameter == 0 { // a wheel's figure only
		w.PitchDiameter = 12 * w.Module
	}
	if err := w.Validate(); err != nil {
		in.fail("%v", err)
	}
	return w
}

// axialFromNormal turns the normal module of a worm into its axial one, both mm:
// sin of the lead angle is normal module x starts over pitch diameter.
func axialFromNormal(normal float64, starts int, pitchDiameter float64) float64 {
	return normal / math.Cos(math.Asin(normal*float64(starts)/pitchDiameter))
}
