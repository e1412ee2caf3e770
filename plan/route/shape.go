package route

import "rebush/plan/seat"

// Shape is a round piece that is turned for this job, as a drawing of it in
// section has it.
type Shape struct {
	For   string // bore that it goes into, or that it stands in
	Steps []Round
	Bore  [2]float64 // limits of the hole through it, mm; 0 none
}

// Round is one step of a shape: least and largest diameter and length in mm,
// from the end that goes in first; a length of 0 is not known.
type Round struct {
	D    [2]float64
	Long float64
}

// shapeOf is the shape of a bush that has to be turned, nil of any other.
func shapeOf(b seat.Bush) *Shape {
	if !b.Turned {
		return nil
	}
	s := &Shape{Steps: []Round{{D: [2]float64{b.ODLow, b.ODHigh}, Long: b.Length}}, Bore: [2]float64{b.BLow, b.BHigh}}
	if b.FlangeOD > 0 {
		s.Steps[0].Long -= b.FlangeT
		s.Steps = append(s.Steps, Round{D: [2]float64{b.FlangeOD, b.FlangeOD}, Long: b.FlangeT})
	}
	return s
}

// shape is a rod as it is drawn.
func (r rod) shape(of string) Shape {
	s := Shape{For: of}
	for i, d := range r.d {
		s.Steps = append(s.Steps, Round{D: [2]float64{d, d}, Long: r.length[i]})
	}
	return s
}

// locatedShapes are the rods of a clamping that stands on finished seats.
func (b *builder) locatedShapes(c clamping) []Shape {
	var out []Shape
	for _, name := range c.from {
		seat := b.bore(name)
		for _, x := range c.bores {
			if x.Shaft == seat.Shaft {
				out = append(out, b.steppedRod(seat, x).shape(name))
			}
		}
	}
	return out
}
