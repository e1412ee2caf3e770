package survey

import (
	"fmt"
	"math"
)

// seat is the seat of the old bush, where the bush is out and its seat sound.
func (r reader) seat() Source {
	old := r.h.Bore.Seat
	if old == nil || !old.Sound || !old.Centre.Given() {
		return Source{}
	}
	s := Source{What: "seat"}
	c, d := r.seatBy(&s, Middle), r.seatBy(&s, Width)
	s.Figures = append(r.point("seat_mm", "the old bush's seat", "seat", old.Centre.Float()),
		r.u("u_centre_mm", "a middle", c), r.seatDiameter(d))
	s.Find = func(in []float64) (Answer, error) {
		e := SoundSeat([2]float64{in[0], in[1]}, in[2])
		e.Bore = roundBore(e.Centre, in[3])
		e.Bore.Cov = e.Cov
		return Answer{Evidence: e}, nil
	}
	return s
}

// seatBy is how well the middle or the diameter of an old bush's seat is known: by
// the instrument that is named for the seat, where that reads such a figure.
func (r reader) seatBy(s *Source, what Quantity) Reading {
	b := r.h.Bore
	name := b.With["seat"]
	middle, width := r.tools.CanRead(name, Middle), r.tools.CanRead(name, Width)
	switch {
	case what == Middle && (b.With["centre"] != "" || !middle):
		return r.by(s, b, "centre", Middle)
	case what == Width && middle && !width:
		return r.tools.Default(Width)
	}
	return r.by(s, b, "seat", what)
}

func (r reader) seatDiameter(g Reading) Figure {
	return r.figure("seat_mm/diameter", "diameter of the old bush's seat, less the instrument's bias", "seat",
		r.h.Bore.Seat.Diameter.Float()-g.Bias)
}

// roundBore is a hole of which nothing is worn.
func roundBore(at [2]float64, diameter float64) *WornBore {
	b := NewWornBore(at, diameter/2, 0, 0, 0)
	b.Round = true
	return &b
}

// diameters are the widest and the narrowest, read or found with pins, and the
// middle of the hole.
func (r reader) diameters() Source {
	b := r.h.Bore
	if !b.Centre.Given() || !b.Widest.Given() || !b.Narrowest.Given() && !r.pinned() {
		return Source{}
	}
	s := Source{What: "widest and narrowest"}
	widest, uWidest := r.widest(&s)
	narrowest, uNarrowest := r.narrowest(&s)
	middle := r.by(&s, b, "centre", Middle)
	s.Figures = append(r.point("found_mm", "the middle of the hole as found", "centre", r.h.Middle), widest,
		narrowest, r.u("u_middle_mm", "the middle", middle), uWidest, uNarrowest,
		rule(r.rules.Get("u_direction_deg")), r.h.journal, rule(r.rules.Get("u_journal_mm")))
	s.Figures = append(s.Figures, r.usual()...)
	s.add(rule(r.rules.Get("clearance_max_um")))
	n := len(s.Figures)
	s.Figures = append(s.Figures, r.sides()...)
	sides, line := len(b.WornTo), -1
	if b.WidestAt != nil {
		line = s.add(r.direction("widest_at", "direction of the widest", "widest_at", *b.WidestAt))
	}
	s.Find = func(in []float64) (Answer, error) {
		d := Diameters{Middle: [2]float64{in[0], in[1]}, Widest: in[2], Narrowest: in[3], UMiddle: in[4],
			UWidest: in[5], UNarrow: in[6], UDir: in[7] * deg, Journal: in[8], UJournal: in[9], Usual: usual(in[10 : n-1]), Clear: in[n-1] / 1000,
			Old: narrowest.Key, Shaft: "side of wear of " + r.h.Shaft.Name, WornTo: radians(in[n : n+sides])}
		if line >= 0 {
			d.WidestAt, d.HasWidestAt = in[line]*deg, true
		}
		e, err := FromDiameters(d)
		return Answer{Evidence: e}, err
	}
	return s
}

// widest is the largest diameter, with its doubt.
func (r reader) widest(s *Source) (d, u Figure) {
	g := r.by(s, r.h.Bore, "widest", Width)
	s.By = g.Name
	d = r.figure("widest_mm", "widest, less the instrument's bias", "widest", r.h.Bore.Widest.Float()-g.Bias)
	return d, r.u("u_widest_mm", "the widest", g)
}

// narrowest is the smallest diameter, with its doubt: as it was read, else
// between the pins.
func (r reader) narrowest(s *Source) (d, u Figure) {
	if !r.h.Bore.Narrowest.Given() {
		return r.pins(s)
	}
	g := r.by(s, r.h.Bore, "narrowest", Width)
	d = r.figure("narrowest_mm", "narrowest, less the instrument's bias", "narrowest",
		r.h.Bore.Narrowest.Float()-g.Bias)
	return d, r.u("u_narrowest_mm", "the narrowest", g)
}

// pinned says whether pins told the old diameter.
func (r reader) pinned() bool { return r.h.Bore.PinGoes.Given() && r.h.Bore.PinStops.Given() }

// pins is the old diameter between a pin that goes and the next that stops.
func (r reader) pins(s *Source) (d, u Figure) {
	g := r.by(s, r.h.Bore, "pins", Pin)
	goes := r.figure("pins/goes_mm", "pin that goes", "pins", r.h.Bore.PinGoes.Float())
	stops := r.figure("pins/stops_mm", "pin that stops", "pins", r.h.Bore.PinStops.Float())
	d = computed(r.figure("pins/between_mm", "old diameter, between the pins", "pins", 0),
		"the middle of the pin that goes and the one that stops",
		func(in []float64) float64 { d, _ := PinBand(in[0], in[1], 0, 0); return d }, goes, stops)
	u = computed(
		r.figure("pins/between_u_mm", "standard uncertainty of the old diameter between the pins", "pins", 0),
		"anywhere between the pins alike, and the doubt of the pins",
		func(in []float64) float64 { _, u := PinBand(in[0], in[1], 0, 0); return math.Hypot(u, in[2]) }, goes, stops,
		r.u("u_pin_mm", "a pin", g))
	return d, u
}

// round tells of a hole by its diameters alone; its centre is found otherwise.
// Of a spoilt seat the hole is the seat as it stands.
func (r reader) round() Source {
	s, b := Source{What: "diameters"}, r.h.Bore
	if r.h.Spoilt() {
		s.add(r.seatDiameter(r.seatBy(&s, Width)))
		s.Find = func(in []float64) (Answer, error) {
			return Answer{Evidence: Evidence{Bore: roundBore([2]float64{}, in[0])}}, nil
		}
		return s
	}
	journal := r.h.journal
	old, widest := journal, journal // where nothing was measured: as large as the journal
	if b.Widest.Given() {
		widest, _ = r.widest(&s)
		old = widest
		if b.Narrowest.Given() {
			old, _ = r.narrowest(&s)
		}
	}
	sides := r.sides()
	if len(sides) == 0 {
		sides = []Figure{r.direction("worn_to/0", "side it has worn to (0 where it is not said)", "worn_to", 0)}
	}
	s.Figures = append([]Figure{old, widest, journal}, sides...)
	s.Find = func(in []float64) (Answer, error) {
		w := NewWornBore([2]float64{}, in[0]/2, in[2]/2, math.Max(0, in[1]-in[0]), between(radians(in[3:])))
		return Answer{Evidence: Evidence{Bore: &w}}, nil
	}
	return s
}

// walls are four walls on the axes, with the old diameter and the side that it
// has worn to.
func (r reader) walls() Source {
	b := r.h.Bore
	if b.Walls == nil {
		return Source{}
	}
	s := Source{What: "four walls"}
	if !r.pinned() && !b.Narrowest.Given() {
		sayEvidence(&s.Said, r.j.Place(b.Name),
			"four walls need the old diameter too: an entering pin or the narrowest",
			"give pins: {goes, stops} or narrowest")
		return s
	}
	for i, name := range []string{"left", "right", "bottom", "top"} {
		s.add(r.figure("walls/"+name, name+" wall", "walls", b.Walls[i].Float()))
	}
	old := r.narrowest
	if r.pinned() {
		old = r.pins
	}
	d, uOld := old(&s)
	s.Figures = append(s.Figures, r.u("u_wall_mm", "one wall", r.by(&s, b, "walls", Middle)), d, uOld, r.h.journal,
		rule(r.rules.Get("u_direction_deg")))
	s.Figures = append(s.Figures, r.usual()...)
	n := len(s.Figures)
	s.Figures = append(s.Figures, r.sides()...)
	s.Find = func(in []float64) (Answer, error) {
		e, err := FromWalls(Walls{Left: in[0], Right: in[1], Bottom: in[2], Top: in[3], UWall: in[4], R: in[5] / 2,
			UR: in[6] / 2, Old: d.Key, JournalR: in[7] / 2, UDir: in[8] * deg, Usual: usual(in[9:n]),
			WornTo: radians(in[n:])})
		return Answer{Evidence: e}, err
	}
	return s
}

// spans are distances from edge to edge to other bores whose middles were
// measured.
func (r reader) spans() Source {
	b := r.h.Bore
	if len(b.Spans) == 0 {
		return Source{}
	}
	s := Source{What: "spans", Figures: r.point("found_mm", "the middle of the hole as found", "centre", r.h.Middle)}
	var names []string
	for i, span := range b.Spans {
		_, to := r.j.Bore(span.To)
		if to == nil || !to.Centre.Given() {
			continue
		}
		g, place := r.by(&s, b, "spans", Width), r.by(&s, to, "centre", Middle)
		key := func(k string) string { return fmt.Sprintf("spans/%d/%s", i, k) }
		s.Figures = append(s.Figures,
			r.figure(key("inside_mm"), "nearest edges to "+span.To, "spans", span.Inside.Float()),
			r.figure(key("outside_mm"), "farthest edges to "+span.To, "spans", span.Outside.Float()),
			r.u(key("u_mm"), "one span", g))
		s.Figures = append(s.Figures, r.point(key("to_mm"), "the middle of "+span.To, "spans", to.Centre.Float())...)
		s.Figures = append(s.Figures, r.u(key("u_to_mm"), "that middle", place))
		names = append(names, to.Name)
	}
	if len(names) < 2 || !b.Centre.Given() {
		sayFewSpans(&s.Said, r.j.Place(b.Name))
		return s
	}
	s.Find = func(in []float64) (Answer, error) {
		list := make([]Span, len(names))
		for i, name := range names {
			v := in[2+6*i:]
			apart, u := SpanCentre(v[0], v[1], v[2], v[2])
			list[i] = Span{To: [2]float64{v[3], v[4]}, Apart: apart, U: u, UTo: v[5], Name: name}
		}
		e, err := FromSpans(list, [2]float64{in[0], in[1]})
		return Answer{Evidence: e}, err
	}
	return s
}
