package job

import (
	"math"

	"rebush/fits/dim"
)

// mirror turns figures measured from the right side into the frame of the
// left: x about the length of the outline, directions about the vertical. The
// nil mirror leaves them alone.
type mirror struct{ length dim.Length }

func (m *mirror) x(l dim.Length) dim.Length {
	if m == nil || !l.Given() {
		return l
	}
	return dim.OfMM(m.length.MM().Sub(l.MM()))
}

func (m *mirror) point(p Point) Point { return Point{m.x(p.X), p.Y} }

func (m *mirror) deg(d float64) float64 {
	if m == nil {
		return d
	}
	return turn(180 - d)
}

// turn brings a direction into 0 to 360.
func turn(deg float64) float64 {
	d := math.Mod(deg, 360)
	if d < 0 {
		d += 360
	}
	return d
}

func bindBore(r *reader, v *value, shaft string, side Side, c Chassis) Bore {
	b := Bore{Name: shaft + "." + string(side), Shaft: shaft, Side: side,
		Widest: v.get("widest").length(), Narrowest: v.get("narrowest").length(),
		Bushed: v.get("bushed").tri() == Yes, Repaired: v.get("repaired").tri() == Yes,
		Boss: v.get("boss").length(), RoomIn: v.get("room").get("inside").length(), RoomOut: v.get("room").get("outside").length(),
		PinGoes: v.get("pins").get("goes").length(), PinStops: v.get("pins").get("stops").length(),
		Cap: v.get("hold").text() == "cap", Lift: v.get("lift").length()}
	var m *mirror
	if s := v.get("seen_from"); s.text() == "right" {
		if c.Length.Given() {
			m = &mirror{c.Length}
		} else {
			r.say(s.pos, "seen_from: right needs the length of the plate to turn the figures over", "write outline: {length: ..., height: ...} under chassis")
		}
	}
	if p := v.get("centre"); p != nil {
		b.Centre = m.point(p.point())
	}
	if a := v.get("widest_at"); a != nil {
		d := m.deg(a.num)
		b.WidestAt = &d
	}
	if w := v.get("worn_to"); w != nil {
		all := w.list
		if w.shape.kind != aList {
			all = []*value{w}
		}
		for _, a := range all {
			b.WornTo = append(b.WornTo, m.deg(a.num))
		}
	}
	if p := v.get("probed"); p != nil {
		if p.shape.kind == aList {
			for _, q := range p.list {
				b.Probed = append(b.Probed, m.point(q.point()))
			}
		} else {
			b.ProbedAt, b.Stylus = p.get("file").text(), p.get("stylus").length()
		}
	}
	if s := v.get("seat"); s != nil {
		b.Seat = &OldSeat{Diameter: s.get("diameter").length(), Centre: m.point(s.get("centre").point()), Sound: s.get("sound").tri() != No}
	}
	if w := v.get("with"); w != nil {
		b.With = map[string]string{}
		for _, what := range w.order {
			b.With[what] = w.get(what).raw
		}
	}
	for _, e := range v.get("edges").items() {
		b.Edges = append(b.Edges, Edge{AtDeg: m.deg(e.get("at").or(0)), Metal: e.get("metal").length(), Away: e.get("away").length()})
	}
	if w := v.get("walls"); w != nil {
		left, right := m.x(w.get("left").length()), m.x(w.get("right").length())
		if m != nil {
			left, right = right, left
		}
		b.Walls = &[4]dim.Length{left, right, w.get("bottom").length(), w.get("top").length()}
	}
	for _, s := range v.get("spans").items() {
		b.Spans = append(b.Spans, Span{To: s.get("to").text(), Inside: s.get("inside").length(), Outside: s.get("outside").length()})
	}
	if o := v.get("oil"); o != nil {
		b.Oil = &Oil{AtDeg: m.deg(o.get("at").or(90)), Diameter: o.get("diameter").length()}
	}
	return b
}
