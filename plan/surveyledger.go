package plan

import (
	"fmt"
	"math"

	"rebush/fits/ledger"
	"rebush/plan/survey"
)

const howWorn = "circle joined with the swept journal, own derivation: plan/survey/METHODS.md 1"

// explainer gathers the inputs of one old centre as it was measured, and works
// the centre out again from them.
type explainer struct {
	m      *maker
	b      *bore
	inputs []ledger.Num
}

func (x *explainer) key(k string) string { return "survey/" + x.b.name() + "/" + k }

// line is where a figure of this bore stands in the job.
func (x *explainer) line(figure string) string {
	return x.m.source("shafts/" + x.b.shaft.Name + "/bores/" + string(x.b.b.Side) + "/" + figure)
}

// leaf adds an input that was read, and returns its place among the inputs.
func (x *explainer) leaf(k, what, unit, source string, v float64) int {
	x.inputs = append(x.inputs, x.m.book.Leaf(x.key(k), what, unit, source, v))
	return len(x.inputs) - 1
}

// explainCentre records the old centre of a bore, its doubt and the worn hole
// round it, each computed from what was measured.
func (m *maker) explainCentre(b *bore, e survey.Evidence, own map[*bore]*survey.Evidence) {
	x := &explainer{m: m, b: b}
	again := lastOf(x.again(e, own))
	l := m.book
	calc := func(k, what, unit string, pick func(survey.Evidence) float64) {
		l.Calc(x.key(k), what, unit, "from "+e.Method.String(), howWorn, func(in []float64) float64 { return sig9(pick(again(in))) }, x.inputs...)
	}
	calc("centre_mm/0", "x of the old centre", "mm", func(e survey.Evidence) float64 { return e.Centre[0] })
	calc("centre_mm/1", "y of the old centre", "mm", func(e survey.Evidence) float64 { return e.Centre[1] })
	calc("centre_u_mm", "standard uncertainty of the old centre, largest", "mm", func(e survey.Evidence) float64 { return e.U() })
	m.explainHole(b, e, x, again)
}

// again returns a function that finds the evidence from the inputs that it
// records.
func (x *explainer) again(e survey.Evidence, own map[*bore]*survey.Evidence) func([]float64) survey.Evidence {
	b, m := x.b, x.m
	switch {
	case e.Rank == survey.RankSeat:
		s := b.b.Seat
		c := m.read(b, "centre", "centre")
		at := s.Centre.Float()
		x.leaf("seat_mm/0", "x of the old bush's seat", "mm", x.line("seat"), at[0])
		x.leaf("seat_mm/1", "y of the old bush's seat", "mm", x.line("seat"), at[1])
		x.leaf("u_centre_mm", "standard uncertainty of a middle, "+c.name, "mm", c.from, c.u)
		d := m.read(b, "seat", "width")
		x.leaf("seat_mm/diameter", "diameter of the old bush's seat, less the instrument's bias", "mm", x.line("seat"), s.Diameter.Float()-d.bias)
		return func(in []float64) survey.Evidence { return seatEvidence([2]float64{in[0], in[1]}, in[2], in[3]) }
	case e.Rank == survey.RankOutline || e.Rank == survey.RankArc:
		return x.probed()
	case e.Method == survey.ByDiameters:
		return x.diameters()
	case e.Method == survey.ByWalls:
		return x.walls(e)
	case e.Rank == survey.RankOther:
		for _, o := range m.on(b.shaft.Name) {
			if o == b || own[o] == nil {
				continue
			}
			other := own[o]
			ox, okx := m.book.Get("survey/" + o.name() + "/centre_mm/0")
			oy, oky := m.book.Get("survey/" + o.name() + "/centre_mm/1")
			if !okx || !oky {
				// The other bore is settled later in the job's order.
				m.explainCentre(o, *other, own)
				ox, _ = m.book.Get("survey/" + o.name() + "/centre_mm/0")
				oy, _ = m.book.Get("survey/" + o.name() + "/centre_mm/1")
			}
			x.inputs = append(x.inputs, ledger.Num{Key: "survey/" + o.name() + "/centre_mm/0", V: ox.Value}, ledger.Num{Key: "survey/" + o.name() + "/centre_mm/1", V: oy.Value}, m.ruleLeaf(m.otherPlateRule()))
			cov := other.Cov
			return func(in []float64) survey.Evidence {
				return survey.OtherPlate([2]float64{in[0], in[1]}, cov, in[2])
			}
		}
	}
	// Spans and frames: their own figures are many; the outcome is recorded
	// with the lines that they stand on.
	x.leaf("found_by/0", "x by "+e.Method.String(), "mm", x.line(""), e.Centre[0])
	x.leaf("found_by/1", "y by "+e.Method.String(), "mm", x.line(""), e.Centre[1])
	return func(in []float64) survey.Evidence {
		o := e
		o.Centre = [2]float64{in[0], in[1]}
		return o
	}
}

// diameters explains a centre by widest, narrowest and direction.
func (x *explainer) diameters() func([]float64) survey.Evidence {
	b, m := x.b, x.m
	uw := m.read(b, "widest", "width")
	un, narrow, line := m.read(b, "narrowest", "width"), b.b.Narrowest.Float(), "narrowest"
	if !b.b.Narrowest.Given() {
		d, u := survey.PinBand(b.b.PinGoes.Float(), b.b.PinStops.Float(), 0, 0)
		r := m.read(b, "pins", "pin")
		un, narrow, line = reading{name: r.name, u: math.Hypot(u, r.u), from: r.from}, d, "pins"
	}
	um := m.read(b, "centre", "centre")
	x.leaf("found_mm/0", "x of the middle of the hole as found", "mm", x.line("centre"), b.found[0])
	x.leaf("found_mm/1", "y of the middle of the hole as found", "mm", x.line("centre"), b.found[1])
	x.leaf("widest_mm", "widest, less the instrument's bias", "mm", x.line("widest"), b.b.Widest.Float()-uw.bias)
	x.leaf("narrowest_mm", "narrowest, less the instrument's bias", "mm", x.line(line), narrow-un.bias)
	x.leaf("u_middle_mm", "standard uncertainty of the middle, "+um.name, "mm", um.from, um.u)
	x.leaf("u_widest_mm", "standard uncertainty of the widest, "+uw.name, "mm", uw.from, uw.u)
	x.leaf("u_narrowest_mm", "standard uncertainty of the narrowest, "+un.name, "mm", un.from, un.u)
	x.inputs = append(x.inputs, m.ruleLeaf("u_direction_deg"))
	n := len(x.inputs)
	for i, d := range b.b.WornTo {
		x.leaf(fmt.Sprintf("worn_to/%d", i), "side it has worn to", "deg", x.line("worn_to"), d)
	}
	at := -1
	if b.b.WidestAt != nil {
		at = x.leaf("widest_at", "direction of the widest", "deg", x.line("widest_at"), *b.b.WidestAt)
	}
	journal, sides := b.journal(), len(b.b.WornTo)
	return func(in []float64) survey.Evidence {
		d := survey.Diameters{Middle: [2]float64{in[0], in[1]}, Widest: in[2], Narrowest: in[3], UMiddle: in[4], UWidest: in[5], UNarrow: in[6],
			UDir: in[7] * deg, Journal: journal, WornTo: radians(in[n : n+sides])}
		if at >= 0 {
			d.WidestAt, d.HasWidestAt = in[at]*deg, true
		}
		e, _ := survey.FromDiameters(d)
		return e
	}
}

// probed explains a centre by wall points.
func (x *explainer) probed() func([]float64) survey.Evidence {
	b, m := x.b, x.m
	s := m.read(b, "probed", "probe")
	source := x.line("probed")
	if b.b.ProbedAt != "" {
		source += ", " + b.b.ProbedAt
	}
	for i, p := range b.b.Probed {
		at := p.Float()
		x.leaf(fmt.Sprintf("probed/%d/0", i), fmt.Sprintf("x of point %d", i+1), "mm", source, at[0])
		x.leaf(fmt.Sprintf("probed/%d/1", i), fmt.Sprintf("y of point %d", i+1), "mm", source, at[1])
	}
	n := len(x.inputs)
	x.leaf("u_point_mm", "standard uncertainty of one point, "+s.name, "mm", s.from, s.u)
	x.leaf("journal_mm", "journal (0 not known)", "mm", m.source("shafts/"+b.shaft.Name+"/journal"), b.journal())
	x.leaf("stylus_mm", "ball of the stylus (0: corrected already)", "mm", source, b.b.Stylus.Float())
	x.inputs = append(x.inputs, m.ruleLeaf("u_journal_mm"), m.ruleLeaf("u_direction_deg"))
	for i, d := range b.b.WornTo {
		x.leaf(fmt.Sprintf("worn_to/%d", i), "side it has worn to", "deg", x.line("worn_to"), d)
	}
	sides := len(b.b.WornTo)
	return func(in []float64) survey.Evidence {
		pts := make([][2]float64, n/2)
		for i := range pts {
			pts[i] = [2]float64{in[2*i], in[2*i+1]}
		}
		journal := in[n+1]
		if journal > 0 {
			journal -= in[n+2]
		}
		got, _ := survey.FromProbe(survey.Probe{Points: pts, S: in[n], Journal: journal, UJournal: in[n+3], UDir: in[n+4] * deg, WornTo: radians(in[n+5 : n+5+sides])})
		ball(&got.Evidence, in[n+2])
		return got.Evidence
	}
}

// walls explains a centre by four walls.
func (x *explainer) walls(e survey.Evidence) func([]float64) survey.Evidence {
	b, m := x.b, x.m
	w := *b.b.Walls
	for i, name := range []string{"left", "right", "bottom", "top"} {
		x.leaf("walls/"+name, name+" wall", "mm", x.line("walls"), w[i].Float())
	}
	u := m.read(b, "walls", "centre")
	x.leaf("u_wall_mm", "standard uncertainty of one wall, "+u.name, "mm", u.from, u.u)
	x.leaf("old_radius_mm", "old radius", "mm", x.line("pins"), e.R)
	x.leaf("worn_to/0", "side it has worn to", "deg", x.line("worn_to"), b.b.WornTo[0])
	ur, journal := e.RU, b.journal()/2
	return func(in []float64) survey.Evidence {
		o, _ := survey.FromWalls(survey.Walls{Left: in[0], Right: in[1], Bottom: in[2], Top: in[3], UWall: in[4], R: in[5], UR: ur, JournalR: journal, WornTo: in[6] * deg})
		return o
	}
}

// explainHole records the worn hole: its old diameter, wear, direction and
// clearance, where the evidence tells of them.
func (m *maker) explainHole(b *bore, e survey.Evidence, x *explainer, again func([]float64) survey.Evidence) {
	l := m.book
	if e.Bore != nil {
		for _, f := range []struct {
			k, what, unit string
			pick          func(survey.WornBore) float64
		}{
			{"old_radius_mm/found", "old radius of the hole", "mm", func(w survey.WornBore) float64 { return w.R }},
			{"wear_mm", "depth of wear", "mm", func(w survey.WornBore) float64 { return w.W }},
			{"wear_rad", "direction of wear", "rad", func(w survey.WornBore) float64 { return w.ThetaRad }},
			{"clearance_mm", "clearance on radius when new", "mm", func(w survey.WornBore) float64 { return w.C }},
		} {
			l.Calc(x.key(f.k), f.what, f.unit, "from "+e.Method.String(), howWorn, func(in []float64) float64 {
				if w := again(in).Bore; w != nil {
					return sig9(f.pick(*w))
				}
				return 0
			}, x.inputs...)
		}
		m.explainDerived(b, x)
		return
	}
	src := x.line("")
	l.Leaf(x.key("old_radius_mm/found"), "old radius of the hole", "mm", src, sig9(b.worn.R))
	l.Leaf(x.key("wear_mm"), "depth of wear", "mm", src, sig9(b.worn.W))
	l.Leaf(x.key("wear_rad"), "direction of wear", "rad", src, sig9(b.worn.ThetaRad))
	l.Leaf(x.key("clearance_mm"), "clearance on radius when new", "mm", src, sig9(b.worn.C))
	m.explainDerived(b, x)
}

// explainDerived records what is printed of the hole beside its radius and
// direction.
func (m *maker) explainDerived(b *bore, x *explainer) {
	m.book.Calc(x.key("diameter_mm"), "diameter of the hole when it was new", "mm", "twice the old radius", howWorn,
		func(in []float64) float64 { return sig9(2 * in[0]) }, m.ledgerNum(x.key("old_radius_mm/found")))
	m.book.Calc(x.key("wear_deg"), "direction of wear, from +x anticlockwise", "deg", "the direction in degrees", howWorn,
		func(in []float64) float64 { return sig9(math.Mod(in[0]/deg+720, 360)) }, m.ledgerNum(x.key("wear_rad")))
	if b.journal() > 0 && b.b.Seat == nil {
		m.explainPlay(b, x)
	}
}

// explainPlay records the play as found: what wear and the old clearance leave
// on diameter, and what share of the journal that is.
func (m *maker) explainPlay(b *bore, x *explainer) {
	l := m.book
	journal := l.Leaf(x.key("journal_now_mm"), "journal", "mm", m.source("shafts/"+b.shaft.Name+"/journal"), b.journal())
	play := l.Calc(x.key("play_mm"), "play as found, on diameter", "mm", "old diameter and wear less the journal", "plane geometry",
		func(in []float64) float64 { return sig9(math.Max(0, 2*in[0]+in[1]-in[2])) }, m.ledgerNum(x.key("old_radius_mm/found")), m.ledgerNum(x.key("wear_mm")), journal)
	l.Calc(x.key("play_percent"), "play as found, share of the journal", "%", "play over journal", "arithmetic",
		func(in []float64) float64 { return math.Round(1000*in[0]/in[1]) / 10 }, play, journal)
}

// ledgerNum is an entry as an input.
func (m *maker) ledgerNum(key string) ledger.Num { return m.book.Num(key) }

func (m *maker) holeNums(b *bore) []ledger.Num { return b.old.Nums(m.book) }

// holeAgain makes the worn hole from those six inputs.
func holeAgain(b *bore, in []float64) survey.WornBore { return b.surveyed().With(in).Worn }
