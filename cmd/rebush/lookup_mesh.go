package main

import (
	"fmt"

	"rebush/fits/dim"
	"rebush/plan/mesh"
)

type spurAnswer struct {
	meshAnswer
	Uncapped *float64    `json:"contact_ratio_uncapped"`
	PlayDeg  [2]*float64 `json:"play_deg"` // of each gear with the other held
}

type wormAnswer struct {
	LeadAngle *float64 `json:"lead_angle_deg"`
	meshAnswer
	SelfLocking *float64   `json:"self_locking_mu"`
	PlayDeg     *float64   `json:"play_deg"` // of the wheel with the worm held
	FaceMM      dim.Gauged `json:"face_needed_mm"`
}

// moduleOf reads --module or --dp.
func moduleOf(o options) (float64, error) {
	switch {
	case o.has("module") == o.has("dp"):
		return 0, usage("give the module (--module 0.5) or the diametral pitch (--dp 48), one of the two")
	case o.has("dp"):
		p, err := o.number("dp", 0)
		if err != nil {
			return 0, err
		}
		m, err := mesh.ModuleFromDP(p)
		if err != nil {
			return 0, usage("--dp: %v", err)
		}
		return m, nil
	}
	return o.number("module", 0)
}

func lookupSpur(e *env, o options, words []string) error {
	if err := none(words); err != nil {
		return err
	}
	return ask(e, o, func(b *books) (answer, error) {
		m, err := moduleOf(o)
		if err != nil {
			return nil, err
		}
		z, err := o.whole("teeth")
		if err != nil {
			return nil, err
		}
		if len(z) != 2 {
			return nil, usage("--teeth wants both tooth counts: --teeth 12,32")
		}
		s := mesh.Spur{Module: m, Z1: z[0], Z2: z[1]}
		if s.Angle, err = o.number("angle", 20); err != nil {
			return nil, err
		}
		x, err := o.numbers("shift")
		if err != nil {
			return nil, err
		}
		switch len(x) {
		case 0:
		case 2:
			s.X1, s.X2 = x[0], x[1]
		default:
			return nil, usage("--shift wants the factor of both gears: --shift 0.4,0")
		}
		if s.Thinned, err = o.thinned(); err != nil {
			return nil, err
		}
		if s.Tip1, s.Tip2, err = o.tips(); err != nil {
			return nil, err
		}
		if err := s.Validate(); err != nil {
			return nil, usage("%v", err)
		}
		a := &spurAnswer{}
		at, err := a.fill(o, s)
		if err != nil {
			return nil, err
		}
		if v, err := s.ContactRatioUncapped(at); err == nil {
			a.Uncapped = dim.Number(v)
		}
		if g1, g2, err := s.Angular(at); err == nil && g1 >= 0 {
			a.PlayDeg = [2]*float64{dim.Number(orNothing(g1)), dim.Number(orNothing(g2))}
		}
		return a, nil
	})
}

func lookupWorm(e *env, o options, words []string) error {
	if err := none(words); err != nil {
		return err
	}
	return ask(e, o, func(b *books) (answer, error) {
		m, err := moduleOf(o)
		if err != nil {
			return nil, err
		}
		z, err := o.whole("teeth")
		if err != nil {
			return nil, err
		}
		starts, err := o.whole("starts")
		if err != nil {
			return nil, err
		}
		if starts == nil {
			starts = []int{1}
		}
		if len(z) != 1 || len(starts) != 1 {
			return nil, usage("--teeth wants the tooth count of the wheel and --starts that of the worm: --starts 1 " +
				"--teeth 20")
		}
		d1, err := o.lengthFrom("worm-diameter", 0, true)
		if err != nil {
			return nil, err
		}
		if !d1.Given() || !o.has("wheel-form") {
			return nil, usage("--worm-diameter and --wheel-form are wanted; a wheel is throated, helical or " +
				"straight: look at it")
		}
		w := mesh.Worm{Form: mesh.Form(o.text["wheel-form"]), Module: m, Starts: starts[0], Teeth: z[0],
			PitchDiameter: d1.Float()}
		if w.Angle, err = o.number("angle", 20); err != nil {
			return nil, err
		}
		if w.ShaftAngle, err = o.number("shaft-angle", 90); err != nil {
			return nil, err
		}
		if w.Shift, err = o.number("shift", 0); err != nil {
			return nil, err
		}
		if w.Thinned, err = o.thinned(); err != nil {
			return nil, err
		}
		if err := w.Validate(); err != nil {
			return nil, usage("%v", err)
		}
		a := &wormAnswer{LeadAngle: dim.Number(w.LeadAngle()), SelfLocking: dim.Number(w.SelfLocking())}
		if f := w.FaceNeeded(); f > 0 {
			a.FaceMM = gauged(f)
		}
		at, err := a.fill(o, w)
		if err != nil {
			return nil, err
		}
		if v, err := w.Angular(at); err == nil && v >= 0 {
			a.PlayDeg = dim.Number(orNothing(v))
		}
		return a, nil
	})
}

func (o options) thinned() (float64, error) {
	l, err := o.lengthFrom("thinned", 0, false)
	return l.Float(), err
}

func (o options) tips() (one, two float64, err error) {
	if !o.has("tips") {
		return 0, 0, nil
	}
	v, err := o.numbers("tips")
	if err == nil && len(v) != 2 {
		err = usage("--tips wants both tip diameters: --tips 7.0,17.0")
	}
	if err != nil {
		return 0, 0, err
	}
	k := 1.0
	if o.bare() == dim.Inch {
		k = dim.Must("1 in").Float()
	}
	return v[0] * k, v[1] * k, nil
}

func (a *spurAnswer) show(p *page, u dim.Units) {
	a.lines(p, u)
	if a.Uncapped != nil && a.ContactRatio != nil &&
		fmt.Sprintf("%.3f", *a.Uncapped) != fmt.Sprintf("%.3f", *a.ContactRatio) {
		p.figures("contact ratio of handbooks", "%.3f: too high here: contact cannot pass the base tangent points",
			a.Uncapped)
	}
	p.figures("play of each gear, the other held", "%.3f and %.3f deg", a.PlayDeg[0], a.PlayDeg[1])
	p.pair("note", "%s", a.Note)
	p.pair("source", "involute geometry, any handbook of gearing")
}

func (a *wormAnswer) show(p *page, u dim.Units) {
	a.lines(p, u)
	p.figures("lead angle", "%.3f deg", a.LeadAngle)
	p.figures("play of the wheel, the worm held", "%.3f deg", a.PlayDeg)
	p.figures("self-locking from", "friction %.3f, at rest", a.SelfLocking)
	if a.FaceMM.Given() {
		p.pair("the wheel's face must be at least", "%s mm", a.FaceMM)
	}
	p.pair("note", "%s", a.Note)
	p.pair("source", "involute geometry, any handbook of gearing")
}
