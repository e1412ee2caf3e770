package route

import (
	"rebush/fits/dim"
	"rebush/fits/say"
	"rebush/plan/seat"
)

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

// turned are the sizes of a bush that has to be turned, "" of any other.
func (s *Shape) turned(metal string) say.Text {
	if s == nil {
		return ""
	}
	long := 0.0
	for _, step := range s.Steps {
		long += step.Long
	}
	d := s.Steps[0].D
	sizes := say.F("outside %v, bore %v, length %v, %s", say.Limits(d[0], d[1], 3), say.Limits(s.Bore[0], s.Bore[1], 3),
		say.MM(dim.Sig9(long), 2), metal)
	if len(s.Steps) > 1 {
		f := s.Steps[1]
		sizes += say.F(", with a shoulder of %v, %v thick", say.MM(f.D[0], 1), say.MM(f.Long, 2))
	}
	return sizes
}

// leftForReamer gives a bush that is turned here and reamed when it is in the bore
// that it goes in with: under the reamer by what that takes.
func (b *builder) leftForReamer(x Bore) Bore {
	if x.BushShape == nil || x.In || x.Finish != seat.Ream || len(x.FinishSizes) == 0 {
		return x
	}
	s, was := *x.BushShape, x.BushShape.Bore
	lo, hi := b.r.ReamStock(x.FinishSizes[0])
	s.Bore = [2]float64{dim.Sig9(x.FinishSizes[0] - hi), dim.Sig9(x.FinishSizes[0] - lo)}
	for i := range x.Closed {
		if x.Closed[i] > 0 { // it closes by as much
			x.Closed[i] += s.Bore[i] - was[i]
		}
	}
	x.BushShape, x.BushSizes = &s, s.turned(x.BushMetal)
	return x
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
