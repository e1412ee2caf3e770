package main

import (
	"io"
	"math"

	"rebush/fits/dim"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/survey"
)

// largestFile is the largest file of points that is read.
const largestFile = 1 << 20

type circleAnswer struct {
	XMM      dim.Gauged `json:"x_mm"`
	YMM      dim.Gauged `json:"y_mm"`
	RadiusMM dim.Gauged `json:"radius_mm"`
	UMM      dim.Gauged `json:"u_mm"`
	RMSMM    dim.Gauged `json:"rms_mm"`
	Fit      string     `json:"fit"`
	Points   int        `json:"points"`
	ZoneMM   dim.Gauged `json:"zone_mm"`
	WearMM   dim.Gauged `json:"wear_mm"`
	WearDeg  *float64   `json:"wear_deg"`
	Doubtful bool       `json:"doubtful"` // not to be relied on; the note says why
	Note     string     `json:"note"`
}

// readPoints reads a file of points; "-" is standard input.
func readPoints(e *env, path string, bare dim.Unit) ([][2]float64, error) {
	name := path
	var data []byte
	var err error
	if path == "-" {
		name = "standard input"
		data, err = io.ReadAll(io.LimitReader(e.in, largestFile+1))
	} else {
		data, err = readSmall(path)
	}
	if err != nil {
		return nil, &job.FileError{Path: name, Err: err}
	}
	if len(data) > largestFile {
		return nil, usage("%s is larger than 1 MiB; is it the right file?", name)
	}
	points, _, problems := job.Points(name, data, bare)
	if len(problems) > 0 {
		return nil, problems
	}
	out := make([][2]float64, len(points))
	for i, p := range points {
		out[i] = p.Float()
	}
	return out, nil
}

func lookupCircle(e *env, o options, words []string) error {
	return ask(e, o, func(b *books) (answer, error) {
		path, err := one(words, "file of points")
		if err != nil {
			return nil, err
		}
		pts, err := readPoints(e, path, o.bare())
		if err != nil {
			return nil, err
		}
		s, err := o.lengthFrom("spread", 0, false)
		if err != nil {
			return nil, err
		}
		if o.has("journal") || o.has("worn-to") {
			return wornCircle(b, o, pts, s.Float())
		}
		return plainCircle(o, pts, s.Float())
	})
}

func plainCircle(o options, pts [][2]float64, s float64) (answer, error) {
	fit := o.text["fit"]
	if fit == "" {
		fit = "least"
	}
	a := &circleAnswer{Fit: fit, Points: len(pts)}
	var c survey.Circle
	var err error
	switch fit {
	case "least":
		var f survey.LeastFit
		f, err = survey.Least(pts, s)
		c = f.Circle
		if u := f.U(); u > 0 || s > 0 {
			a.UMM = gauged(u)
		}
	case "taubin":
		c, err = survey.Taubin(pts)
	case "pratt":
		c, err = survey.Pratt(pts)
	case "kasa":
		c, err = survey.Kasa(pts)
	case "inscribed":
		c, err = survey.Inscribed(pts)
	case "circumscribed":
		c, err = survey.Circumscribed(pts)
	case "zone":
		var z survey.Zone
		z, err = survey.MinimumZone(pts)
		c, a.ZoneMM = z.Circle, gauged(z.Width)
	default:
		return nil, usage("--fit: there is no %q; there are least, taubin, pratt, kasa, zone, inscribed and "+
			"circumscribed", fit)
	}
	if err != nil {
		return nil, usage("%v", err)
	}
	a.set(c, c.RMS(pts))
	return a, nil
}

func (a *circleAnswer) set(c survey.Circle, rms float64) {
	a.XMM, a.YMM = gauged(c.Centre[0]), gauged(c.Centre[1])
	a.RadiusMM, a.RMSMM = gauged(c.R), gauged(rms)
}

func wornCircle(b *books, o options, pts [][2]float64, s float64) (answer, error) {
	if !o.has("journal") || !o.has("worn-to") {
		return nil, usage("a worn bore wants both --journal DIAMETER and --worn-to DEGREES")
	}
	if o.has("fit") {
		return nil, usage("--fit is for round holes; a worn bore is fitted by its whole outline")
	}
	journal, err := o.lengthFrom("journal", 0, true)
	if err != nil {
		return nil, err
	}
	side, err := o.numbers("worn-to")
	if err != nil {
		return nil, err
	}
	if len(side) < 1 || len(side) > 2 {
		return nil, usage("--worn-to takes one side, or two for a bore pressed two ways")
	}
	rad := func(deg float64) float64 { return deg * math.Pi / 180 }
	probe := survey.Probe{Points: pts, S: s, Journal: journal.Float(), UJournal: b.rules.V("u_journal_mm"),
		UDir: rad(b.rules.V("u_direction_deg")), Against: b.rules.V("side_against_chi2")}
	for _, d := range side {
		probe.WornTo = append(probe.WornTo, rad(d))
	}
	pd, err := survey.FromProbe(probe)
	if err != nil {
		return nil, usage("%v", err)
	}
	likeliest := pd.Believed
	n := len(pts) - len(pd.LeftOut)
	a := &circleAnswer{Fit: "worn bore: " + likeliest.Shape.String(), Points: n, UMM: gauged(pd.U()),
		WearMM: gauged(pd.Bore.W), WearDeg: dim.Number(pd.Bore.ThetaRad * 180 / math.Pi),
		Doubtful: pd.Doubtful, Note: say.Join("; ", pd.Words...).String()}
	a.set(survey.Circle{Centre: pd.Centre, R: pd.R}, math.Sqrt(likeliest.SSQ()/float64(n)))
	return a, nil
}

func (a *circleAnswer) show(p *page, u dim.Units) {
	mm := func(g dim.Gauged) string { return g.Length().Format(u) }
	p.pair("fit", "%s of %d points", a.Fit, a.Points)
	p.pair("centre", "x %s, y %s", mm(a.XMM), mm(a.YMM))
	p.pair("radius", "%s", mm(a.RadiusMM))
	p.pair("centre known to", "%s", mm(a.UMM))
	p.pair("spread of the points", "%s", mm(a.RMSMM))
	p.pair("zone", "%s", mm(a.ZoneMM))
	if a.WearDeg != nil {
		p.pair("worn", "%s towards %.0f deg", mm(a.WearMM), *a.WearDeg)
	}
	if a.Doubtful {
		p.pair("doubtful", "do not rely on this")
	}
	p.pair("note", "%s", a.Note)
}
