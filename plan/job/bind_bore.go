package job

import (
	"math"

	"rebush/fits/dim"
)

// bindBores fills the bores of a shaft, left before right.
func bindBores(r *reader, s *Shaft, v *value, c Chassis) {
	for _, side := range Sides {
		from := v.get("bores").get(string(side))
		if from == nil {
			continue
		}
		b := Bore{Name: s.Name + "." + string(side), Shaft: s.Name, Side: side}
		store(&b, from)
		b.Bushed = b.Bushed || b.BushedOD.Given()
		if seen := from.get("seen_from"); seen.text() == "right" {
			if c.Length.Given() {
				b.turnOver(mirror{c.Length})
			} else {
				r.say(seen.pos, "seen_from: right needs the length of the plate to turn the figures over",
					"write outline: {length: ..., height: ...} under chassis")
			}
		}
		s.Bores = append(s.Bores, b)
	}
}

// turnOver brings figures measured from the right side into the frame of the
// left.
func (b *Bore) turnOver(m mirror) {
	b.Centre = m.point(b.Centre)
	if b.WidestAt != nil {
		*b.WidestAt = m.deg(*b.WidestAt)
	}
	for i, deg := range b.WornTo {
		b.WornTo[i] = m.deg(deg)
	}
	for i, p := range b.Probed {
		b.Probed[i] = m.point(p)
	}
	if b.Seat != nil {
		b.Seat.Centre = m.point(b.Seat.Centre)
	}
	for i, e := range b.Edges {
		b.Edges[i].AtDeg = m.deg(e.AtDeg)
	}
	if w := b.Walls; w != nil {
		w[0], w[1] = m.x(w[1]), m.x(w[0])
	}
	if b.Oil != nil {
		b.Oil.AtDeg = m.deg(b.Oil.AtDeg)
	}
}

// mirror turns x about the length of the outline, directions about the
// vertical.
type mirror struct{ length dim.Length }

func (m mirror) x(l dim.Length) dim.Length {
	if !l.Given() {
		return l
	}
	return dim.OfMM(m.length.MM().Sub(l.MM()))
}

func (m mirror) point(p Point) Point { return Point{m.x(p.X), p.Y} }

func (m mirror) deg(d float64) float64 { return turn(180 - d) }

// turn brings a direction into 0 to 360.
func turn(deg float64) float64 {
	d := math.Mod(deg, 360)
	if d < 0 {
		d += 360
	}
	return d
}
