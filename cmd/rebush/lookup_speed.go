package main

import (
	"fmt"
	"slices"
	"strings"

	"rebush/feeds/cutting"
	"rebush/fits/dim"
	"rebush/fits/say"
)

// cuttingName is the name that the speed tables have for a material, however
// it was called.
func (b *books) cuttingName(c *cutting.Cutting, name string) (string, error) {
	for _, m := range c.Materials() {
		if strings.EqualFold(m, strings.TrimSpace(name)) {
			return m, nil
		}
	}
	reg, err := b.materials()
	if err != nil {
		return "", err
	}
	if m, err := reg.Find(name); err == nil && m.Cutting != "" && slices.Contains(c.Materials(), m.Cutting) {
		return m.Cutting, nil
	}
	return name, nil // the speed tables have aliases of their own
}

type speedSpan struct {
	Min  *float64 `json:"min"`
	Max  *float64 `json:"max"`
	Used *float64 `json:"used"`
}

type speedAnswer struct {
	Material   string     `json:"material"`
	Tool       string     `json:"tool"`
	Operation  string     `json:"operation"`
	DiameterMM dim.Gauged `json:"diameter_mm"`
	SpeedMMin  speedSpan  `json:"speed_m_min"`
	RPM        *float64   `json:"rpm"`
	Step       *float64   `json:"step"`
	StepNote   string     `json:"step_note"`
	FeedMMRev  *float64   `json:"feed_mm_rev"`
	FeedSpan   dim.MinMax `json:"feed_span_mm_rev"`
	ThrustN    *float64   `json:"thrust_n"`
	TorqueNmm  *float64   `json:"torque_nmm"`
	PowerW     *float64   `json:"power_w"`
	Basis      string     `json:"basis"`
	CappedBy   *string    `json:"capped_by"`
	Lubricant  string     `json:"lubricant"`
	Feed       say.Text   `json:"feed"`
	Holding    []string   `json:"holding"`
	Notes      []string   `json:"notes"`
	Sources    []string   `json:"sources"`

	dia dim.Length
}

func lookupSpeed(e *env, o options, words []string) error {
	return ask(e, o, func(b *books) (answer, error) {
		if len(words) != 3 {
			return nil, usage("want a material, an operation and a diameter, got %d words; put quotes round a name "+
				"of several words: \"zinc die casting\" drill 3.2", len(words))
		}
		dia, err := dim.Parse(words[2], o.bare())
		if err != nil {
			return nil, usage("the diameter: %v", err)
		}
		depth, err := o.lengthFrom("depth", 0, true)
		if err != nil {
			return nil, err
		}
		c, err := b.cutting()
		if err != nil {
			return nil, err
		}
		metal, err := b.cuttingName(c, words[0])
		if err != nil {
			return nil, err
		}
		r, err := c.Speed(cutting.Query{Material: metal, Tool: o.text["tool"], Operation: words[1],
			DiaMM: dia.Float(), DepthMM: depth.Float(),
			Hand: o.on["hand"], FullFeed: o.on["full-feed"]})
		if err != nil {
			return nil, err
		}
		a := newSpeedAnswer(r, dia)
		return a, a.setStep(b, c, o, r.RPM)
	})
}

func newSpeedAnswer(r cutting.Answer, dia dim.Length) *speedAnswer {
	a := &speedAnswer{Material: r.Material, Tool: r.Tool, Operation: r.Operation, DiameterMM: dia.Gauged(),
		SpeedMMin: speedSpan{dim.Number(r.VMin), dim.Number(r.VMax), dim.Number(r.VUsed)}, RPM: dim.Number(r.RPM),
		Basis: r.Basis, Lubricant: r.Lubricant, Feed: r.Words, Holding: append([]string{}, r.Holding...),
		Notes: append([]string{}, r.Notes...), dia: dia}
	if r.FeedMMRev > 0 {
		a.FeedMMRev, a.FeedSpan = dim.Number(r.FeedMMRev), *dim.Numbers(r.FeedLow, r.FeedHigh)
	}
	if r.ForcesKnown {
		a.ThrustN, a.TorqueNmm, a.PowerW = dim.Number(r.ThrustN), dim.Number(r.TorqueNmm), dim.Number(r.PowerW)
	}
	if r.CappedBy != "" {
		a.CappedBy = &r.CappedBy
	}
	for _, s := range r.Sources {
		a.Sources = append(a.Sources, strings.TrimSpace(s.Text+" ("+s.Address+")"))
	}
	return a
}

// setStep picks the step of the spindle: of --steps, else of the shop.
func (a *speedAnswer) setStep(b *books, c *cutting.Cutting, o options, rpm float64) error {
	steps, err := o.numbers("steps")
	if err != nil {
		return err
	}
	for _, s := range steps {
		if s <= 0 || s > 1e6 {
			return usage("--steps: a spindle does not turn at %g a minute", s)
		}
	}
	var lowest, highest float64
	if b.shop != nil && steps == nil {
		steps, lowest, highest = b.shop.Spindle, b.shop.SpindleMin, b.shop.SpindleMax
	}
	if steps == nil && highest == 0 {
		return nil
	}
	step := c.Step(steps, lowest, highest, rpm)
	a.Step = dim.Number(step.RPM)
	switch {
	case step.TooFast:
		a.StepNote = "even the slowest step is too fast: turn the spindle by hand"
	case step.AtTop:
		a.StepNote = "the spindle gives no more: feed more lightly"
	}
	return nil
}

func (a *speedAnswer) show(p *page, u dim.Units) {
	p.line("%s %s in %s, %s", a.Tool, a.Operation, a.Material, a.dia.Format(u))
	p.figures("speed", "%.4g m/min ("+a.Basis+" figures span %.4g to %.4g)",
		a.SpeedMMin.Used, a.SpeedMMin.Min, a.SpeedMMin.Max)
	p.figures("spindle", "%.0f rev/min", a.RPM)
	if a.Step != nil {
		s := fmt.Sprintf("%.0f", *a.Step)
		if a.StepNote != "" {
			s += "; " + a.StepNote
		}
		p.pair("set it to", "%s", s)
	}
	if a.CappedBy != nil {
		p.pair("held down by", "%s", *a.CappedBy)
	}
	p.pair("feed", "%s", a.Feed.In(u))
	if a.ThrustN != nil {
		p.figures("thrust", "%.0f N", a.ThrustN)
		p.figures("torque", "%.0f N mm, %.1f W", a.TorqueNmm, a.PowerW)
	}
	p.pair("on the cut", "%s", a.Lubricant)
	for _, s := range a.Holding {
		p.pair("hold", "%s", s)
	}
	for _, s := range a.Notes {
		p.pair("note", "%s", s)
	}
	for _, s := range a.Sources {
		p.pair("source", "%s", s)
	}
}
