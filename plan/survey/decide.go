package survey

import (
	"rebush/fits/finding"
)

// Holes finds the old centre of every bore from all that tells of it together, in
// the job's order; what disagrees is said. What another bore or a frame tells
// comes after every bore has spoken for itself.
func Holes(in Input) ([]Hole, finding.List) {
	desk := make([]bore, len(in.Bores))
	var said finding.List
	for i := range in.Bores {
		desk[i] = bore{Found: &in.Bores[i], hole: in.Bores[i].Hole, said: &said}
		desk[i].speak()
	}
	for i := range desk {
		desk[i].borrow(desk)
	}
	holes := make([]Hole, len(desk))
	for i := range desk {
		holes[i] = desk[i].settle()
	}
	crossed(desk, holes)
	against(desk, holes, &said)
	return holes, said
}

// bore is one bore while it is being looked at.
type bore struct {
	*Found
	hole  Hole
	heard []heard
	own   *heard // what it tells of itself, nil for nothing
	said  *finding.List
}

// heard is a source that was asked, and what it answered.
type heard struct {
	Source
	Answer
}

// how is in words what the answer comes from.
func (h heard) how() string {
	if h.Method == NoMethod {
		return h.What
	}
	return h.Method.String()
}

// ask asks a source, and says so where it has no answer.
func (b *bore) ask(s Source, fails func(at *finding.List, p finding.Place, what string, err error)) {
	*b.said = append(*b.said, s.Said...)
	if s.Find == nil {
		return
	}
	a, err := s.ask()
	if err != nil {
		fails(b.said, b.Place, s.What, err)
		return
	}
	if len(a.Points) > 0 {
		b.hole.Points, b.hole.Residuals, b.hole.LeftOut = a.Points, a.Residuals, a.LeftOut
		sayPoints(b.said, b.Place, a)
		a.Words = nil
	}
	b.heard = append(b.heard, heard{s, a})
}

// speak asks what was measured at the bore itself.
func (b *bore) speak() {
	if b.hole.Bore.Repaired {
		sayRepaired(b.said, b.Place)
	}
	for _, s := range b.Own {
		b.ask(s, sayNoAnswer)
	}
	if len(b.heard) > 0 {
		all := together(b.heard)
		b.own = &all
	}
}

// borrow asks the other bores of the shaft, and then drawing and sister.
func (b *bore) borrow(desk []bore) {
	for i := range desk {
		o := &desk[i]
		if o == b || o.hole.Shaft != b.hole.Shaft || o.own == nil {
			continue
		}
		// A hole of which nothing was measured is not placed by a doubtful one.
		if b.own != nil || !o.own.Doubtful {
			b.ask(otherPlate(*o.own, b.Drilling), sayNoAnswer)
		}
	}
	for _, s := range b.Frames {
		b.ask(s, sayNoFrame)
	}
}

// otherPlate is what another bore of the same shaft tells, by all its figures.
func otherPlate(own heard, drilling Figure) Source {
	n := len(own.Figures)
	return Source{
		What:    ByOtherPlate.String(),
		Figures: append(append([]Figure(nil), own.Figures...), drilling),
		Find: func(in []float64) (Answer, error) {
			a, err := own.Find(in[:n])
			e := OtherPlate(a.Centre, a.Cov, in[n])
			if e.Parts = a.Parts; a.Doubtful {
				e.doubt("the old centre of the other plate's bore is doubtful itself")
			}
			return Answer{Evidence: e}, err
		},
	}
}

// together is a source that asks several and puts their answers together.
func together(all []heard) heard {
	if len(all) == 1 {
		return all[0]
	}
	s := Source{}
	lead := all[leads(evidenceOf(all))]
	s.What, s.By = lead.how()+", and what agrees with it", lead.By
	for _, h := range all {
		s.Figures = append(s.Figures, h.Figures...)
	}
	s.Find = func(in []float64) (Answer, error) {
		es := make([]Evidence, len(all))
		for i, h := range all {
			a, err := h.Find(in[:len(h.Figures)])
			if err != nil {
				return Answer{}, err
			}
			es[i], in = a.Evidence, in[len(h.Figures):]
		}
		c := Combine(es)
		return Answer{Evidence: Evidence{Rank: es[c.Leads].Rank, Centre: c.Centre, Cov: c.Cov,
			Parts: c.Parts, Doubtful: es[c.Leads].Doubtful}}, nil
	}
	a, _ := s.ask() // each of them has answered before
	return heard{s, a}
}

func evidenceOf(all []heard) []Evidence {
	out := make([]Evidence, len(all))
	for i, h := range all {
		out[i] = h.Evidence
	}
	return out
}

// settle puts the evidence together.
func (b *bore) settle() Hole {
	h := b.hole
	h.Evidence = evidenceOf(b.heard)
	c := Combine(h.Evidence)
	h.Used, h.Weights = c.Leads, c.Weights
	if c.Leads < 0 {
		sayNoCentre(b.said, b.Place, h.Shaft.Leave)
		return h
	}
	x := b.heard[c.Leads]
	sayCentre(b.said, b.Place, x.Evidence)
	for _, d := range c.Differ {
		sayDisagree(b.said, b.Place, d)
	}
	h.centre, h.wear = together(b.heard), b.worn(x)
	h.Known, h.Method, h.U, h.By = true, x.Method, h.centre.U(), x.By
	if h.By == "" || x.Method == ByArc || x.Method == ByConsensus {
		h.By = x.Method.String() // without a journal more hangs on the way than on the instrument
	}
	h.Worn = *h.wear.Bore
	h.Worn.O, h.Worn.Cov = h.centre.Centre, h.centre.Cov
	if !h.Bore.Centre.Given() && !h.Spoilt() {
		h.Middle = h.Worn.Found()
	}
	return h
}

// worn describes the worn hole: by the evidence of its centre, where that tells
// of the wear, else by the first that does, else by the diameters alone. A
// spoilt seat is the hole as it stands.
func (b *bore) worn(x heard) heard {
	if !b.hole.Spoilt() {
		for _, h := range append([]heard{x}, b.heard...) {
			if h.Bore != nil {
				return h
			}
		}
	}
	*b.said = append(*b.said, b.Round.Said...)
	a, _ := b.Round.ask() // it has no way to fail
	return heard{b.Round, a}
}
