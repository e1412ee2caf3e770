package plan

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/survey"
)

const deg = math.Pi / 180

// surveyAll finds the old centre of every bore from all the evidence given;
// the best wins, and two kinds that disagree are said.
func (m *maker) surveyAll() {
	for i := range m.j.Shafts {
		s := &m.j.Shafts[i]
		for k := range s.Bores {
			m.bores = append(m.bores, &bore{shaft: s, b: &s.Bores[k], old: survey.Hole{Shaft: s, Bore: &s.Bores[k]}})
		}
	}
	evidence := map[*bore][]survey.Evidence{}
	for _, b := range m.bores {
		evidence[b] = m.ownEvidence(b)
	}
	// What another bore or a frame tells comes after every bore has spoken for
	// itself.
	own := map[*bore]*survey.Evidence{}
	for _, b := range m.bores {
		if i, _ := survey.Best(evidence[b]); i >= 0 && !evidence[b][i].Doubtful {
			own[b] = &evidence[b][i]
		}
	}
	for _, b := range m.bores {
		evidence[b] = append(evidence[b], m.borrowed(b, own)...)
	}
	for _, b := range m.bores {
		m.settle(b, evidence[b], own)
	}
	for _, b := range m.bores {
		h := &b.old
		h.Known, h.Worn, h.Middle, h.U, h.Points, h.Residuals, h.LeftOut = b.known, b.worn, b.found, b.u, b.points, b.residual, b.leftOut
		h.By = m.surveyBy(b)
	}
	m.growth()
}

// radians of directions as they stand in the job.
func radians(degrees []float64) []float64 {
	out := make([]float64, len(degrees))
	for i, d := range degrees {
		out[i] = d * deg
	}
	return out
}

// journal is the diameter that the lobe was worn by.
func (b *bore) journal() float64 { return b.old.Journal() }

// ownEvidence is what was measured at the bore itself.
func (m *maker) ownEvidence(b *bore) []survey.Evidence {
	if b.b.Centre.Given() {
		b.found = b.b.Centre.Float()
	}
	if spoiltSeat(b) {
		b.found = b.b.Seat.Centre.Float()
	}
	if b.b.Repaired {
		m.say(finding.Note, "survey/repaired before", b,
			"an earlier repair: its place is not trusted", "")
		return nil
	}
	var out []survey.Evidence
	take := func(e survey.Evidence, err error, what string) {
		if err != nil {
			m.say(finding.Caution, "survey/evidence", b,
				say.F("%s: %v", what, err), "measure it again, or leave it out")
			return
		}
		out = append(out, e)
	}
	if s := b.b.Seat; s != nil && s.Sound && s.Centre.Given() {
		c, d := m.read(b, "centre", "centre"), m.read(b, "seat", "width")
		take(seatEvidence(s.Centre.Float(), c.u, s.Diameter.Float()-d.bias), nil, "seat")
	}
	if len(b.b.Probed) > 0 {
		m.probed(b, take)
	}
	if b.b.Centre.Given() && b.b.Widest.Given() && b.b.Narrowest.Given() {
		m.diameters(b, b.b.Widest.Float(), b.b.Narrowest.Float(), m.read(b, "widest", "width"), m.read(b, "narrowest", "width"), take)
	} else if b.b.Centre.Given() && b.b.Widest.Given() && b.b.PinGoes.Given() && b.b.PinStops.Given() {
		r := m.read(b, "pins", "pin")
		d, u := survey.PinBand(b.b.PinGoes.Float(), b.b.PinStops.Float(), 0, 0)
		m.diameters(b, b.b.Widest.Float(), d, m.read(b, "widest", "width"), reading{name: r.name, u: math.Hypot(u, r.u), from: r.from}, take)
	}
	if w := b.b.Walls; w != nil {
		m.walls(b, *w, take)
	}
	if len(b.b.Spans) > 0 {
		m.spans(b, take)
	}
	return out
}

// seatEvidence is a sound seat with its round hole, nothing of which is worn.
func seatEvidence(at [2]float64, u, diameter float64) survey.Evidence {
	e := survey.SoundSeat(at, u)
	w := survey.NewWornBore(e.Centre, diameter/2, 0, 0, 0)
	w.Cov, w.Round = e.Cov, true
	e.Bore = &w
	return e
}

// read says how well a figure of a bore is known. A name that no shop and no
// table knows is told, and the default taken.
func (m *maker) read(b *bore, figure, what string) reading {
	r, err := m.instr.of(b.b, figure, what)
	if err != nil {
		m.say(finding.Caution, "survey/instrument", b,
			say.F("%v", err), "name it under instruments in the shop file with its u")
		r, _ = m.instr.named("", what)
	}
	return r
}

func (m *maker) diameters(b *bore, widest, narrowest float64, uw, un reading, take func(survey.Evidence, error, string)) {
	d := survey.Diameters{
		Middle: b.found, UMiddle: m.read(b, "centre", "centre").u,
		Widest: widest - uw.bias, Narrowest: narrowest - un.bias, UWidest: uw.u, UNarrow: un.u,
		WornTo: radians(b.b.WornTo), UDir: m.rules.V("u_direction_deg") * deg, Journal: b.journal(),
	}
	if b.b.WidestAt != nil {
		d.WidestAt, d.HasWidestAt = *b.b.WidestAt*deg, true
	}
	m.used("u_direction_deg")
	e, err := survey.FromDiameters(d)
	take(e, err, "widest and narrowest")
}

func (m *maker) probed(b *bore, take func(survey.Evidence, error, string)) {
	pts := make([][2]float64, len(b.b.Probed))
	for i, p := range b.b.Probed {
		pts[i] = p.Float()
	}
	s := m.read(b, "probed", "probe")
	// The middle of a ball runs on the same outline drawn in by its radius:
	// old circle and journal both smaller by it, the rest unchanged.
	d := b.b.Stylus.Float()
	journal := b.journal()
	if journal > 0 {
		journal -= d
	}
	got, err := survey.FromProbe(survey.Probe{Points: pts, S: s.u, Journal: journal, UJournal: m.rules.V("u_journal_mm"),
		WornTo: radians(b.b.WornTo), UDir: m.rules.V("u_direction_deg") * deg})
	if err == nil && d > 0 {
		ball(&got.Evidence, d)
		pts = outwards(pts, got.Centre, d/2)
	}
	if err == nil {
		b.points, b.residual, b.leftOut = pts, got.Residuals, got.LeftOut
		for _, w := range got.Words {
			level := finding.Note
			if got.Doubtful || len(got.LeftOut) > 0 {
				level = finding.Caution
			}
			m.say(level, "survey/probed points", b,
				w, "")
		}
		got.Words = nil
	}
	take(got.Evidence, err, "probed points")
}

// ball puts back what a stylus of diameter d took off both circles.
func ball(e *survey.Evidence, d float64) {
	e.R += d / 2
	if e.Bore != nil {
		e.Bore.R += d / 2
		e.Bore.JournalR += d / 2
	}
}

// outwards moves points away from a centre.
func outwards(pts [][2]float64, from [2]float64, by float64) [][2]float64 {
	out := make([][2]float64, len(pts))
	for i, p := range pts {
		dx, dy := p[0]-from[0], p[1]-from[1]
		k := 1 + by/math.Max(math.Hypot(dx, dy), by)
		out[i] = [2]float64{from[0] + k*dx, from[1] + k*dy}
	}
	return out
}

func (m *maker) walls(b *bore, w [4]dim.Length, take func(survey.Evidence, error, string)) {
	r, u := 0.0, 0.0
	switch {
	case b.b.PinGoes.Given() && b.b.PinStops.Given():
		d, ud := survey.PinBand(b.b.PinGoes.Float(), b.b.PinStops.Float(), 0, 0)
		r, u = d/2, math.Hypot(ud, m.read(b, "pins", "pin").u)/2
	case b.b.Narrowest.Given():
		n := m.read(b, "narrowest", "width")
		r, u = (b.b.Narrowest.Float()-n.bias)/2, n.u/2
	default:
		m.say(finding.Caution, "survey/evidence", b,
			"four walls need the old diameter too: an entering pin or the narrowest", "give pins: {goes, stops} or narrowest")
		return
	}
	if len(b.b.WornTo) == 0 {
		m.say(finding.Caution, "survey/evidence", b,
			"four walls need the side it has worn to", "give worn_to")
		return
	}
	e, err := survey.FromWalls(survey.Walls{Left: w[0].Float(), Right: w[1].Float(), Bottom: w[2].Float(), Top: w[3].Float(),
		UWall: m.read(b, "walls", "centre").u, R: r, UR: u, JournalR: b.journal() / 2, WornTo: b.b.WornTo[0] * deg})
	take(e, err, "four walls")
}

func (m *maker) spans(b *bore, take func(survey.Evidence, error, string)) {
	var list []survey.Span
	for _, s := range b.b.Spans {
		o := m.of(s.To)
		if o == nil || !o.b.Centre.Given() {
			continue
		}
		r := m.read(b, "spans", "width")
		apart, u := survey.SpanCentre(s.Inside.Float(), s.Outside.Float(), r.u, r.u)
		list = append(list, survey.Span{To: o.b.Centre.Float(), Apart: apart, U: u, UTo: m.read(o, "centre", "centre").u, Name: o.name()})
	}
	if len(list) < 2 || !b.b.Centre.Given() {
		m.say(finding.Note, "survey/evidence", b,
			"spans place a centre only from two other bores and a rough centre; they are not used", "")
		return
	}
	e, err := survey.FromSpans(list, b.found)
	take(e, err, "spans")
}

// settle takes the best evidence of one bore.
func (m *maker) settle(b *bore, es []survey.Evidence, own map[*bore]*survey.Evidence) {
	best, differ := survey.Best(es)
	row := SurveyedBore{Bore: b.name()}
	if b.b.Centre.Given() || spoiltSeat(b) {
		row.FoundMM = xy(b.found)
	}
	for i, e := range es {
		row.Evidence = append(row.Evidence, Evidence{Rank: e.Rank, What: e.Method.String(), CentreMM: xy(e.Centre), UMM: mm4(e.U()), Used: i == best})
	}
	if best < 0 {
		level, text := finding.Stop, say.Text("nothing tells where the old centre was")
		if b.shaft.Leave {
			level, text = finding.Caution, "nothing tells where this bore is: the shaft is left alone, but nothing is worked out from its place"
		}
		m.say(level, "survey/no centre", b,
			text, "measure centre, widest, narrowest and worn_to; or probe the wall; or measure the other plate's bore")
		m.p.Survey = append(m.p.Survey, row)
		return
	}
	e := es[best]
	for _, w := range e.Words {
		level := finding.Note
		if e.Doubtful {
			level = finding.Caution
		}
		m.say(level, "survey/old centre", b,
			w, "")
	}
	for _, d := range differ {
		if d.A == best || d.B == best {
			m.say(finding.Caution, "survey/evidence disagrees", b,
				d.Words, "measure the doubtful one again")
		}
	}
	if spoiltSeat(b) {
		e.Bore = nil // the hole is the seat as it stands
	}
	b.known, b.method, b.u = true, e.Method.String(), e.U()
	b.old.Method = e.Method
	if e.Bore != nil {
		b.worn = *e.Bore
	} else {
		b.worn = m.wearOf(b, e, es)
	}
	b.worn.O, b.worn.Cov = e.Centre, e.Cov
	if !b.b.Centre.Given() && !spoiltSeat(b) {
		b.found = b.worn.Found()
		row.FoundMM = xy(b.found)
	}
	m.explainCentre(b, e, own)
	row.CentreMM = &XY{m.ledgerMM4(b, "centre_mm/0"), m.ledgerMM4(b, "centre_mm/1")}
	row.CentreUMM = m.ledgerMM4(b, "centre_u_mm")
	row.Method = e.Method.String()
	row.DiameterMM = m.ledgerMM4(b, "diameter_mm")
	row.WearMM = m.ledgerMM4(b, "wear_mm")
	if b.worn.W > 0 && (len(b.b.WornTo) > 0 || b.b.WidestAt != nil || len(b.points) > 0) {
		row.WearDeg = num(m.ledgerNum("survey/" + b.name() + "/wear_deg").V)
	}
	if j := b.journal(); j > 0 && b.b.Seat == nil {
		row.ClearanceMM = m.ledgerMM4(b, "clearance_mm")
		row.PlayMM = m.ledgerMM4(b, "play_mm")
		row.PlayPercent = num(m.ledgerNum("survey/" + b.name() + "/play_percent").V)
	}
	m.p.Survey = append(m.p.Survey, row)
}

// wearOf describes the worn hole where the best evidence of its centre tells
// nothing of its wear: from another kind that does, else from the diameters,
// else as a round hole.
func (m *maker) wearOf(b *bore, e survey.Evidence, es []survey.Evidence) survey.WornBore {
	if spoiltSeat(b) {
		d := b.b.Seat.Diameter.Float() - m.read(b, "seat", "width").bias
		out := survey.NewWornBore(e.Centre, d/2, 0, 0, 0)
		out.Round = true
		return out
	}
	for _, o := range es {
		if o.Bore != nil {
			return *o.Bore
		}
	}
	r := b.journal() / 2
	w := 0.0
	if b.b.Widest.Given() && b.b.Narrowest.Given() {
		r = b.b.Narrowest.Float() / 2
		w = math.Max(0, b.b.Widest.Float()-b.b.Narrowest.Float())
	} else if b.b.Widest.Given() {
		r = b.b.Widest.Float() / 2
	}
	theta := 0.0
	if len(b.b.WornTo) > 0 {
		theta = b.b.WornTo[0] * deg
	}
	out := survey.NewWornBore(e.Centre, r, b.journal()/2, w, theta)
	return out
}

func (m *maker) ledgerMM4(b *bore, k string) MM {
	e, ok := m.book.Get("survey/" + b.name() + "/" + k)
	if !ok {
		return MM{}
	}
	return mm4(e.Value)
}

// surveyBy names what the old centre was found with.
func (m *maker) surveyBy(b *bore) string {
	switch b.old.Method {
	case survey.ByDiameters:
		return m.read(b, "widest", "width").name
	case survey.ByOutline:
		return m.read(b, "probed", "probe").name
	}
	return b.old.Method.String()
}
