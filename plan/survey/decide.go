package survey

import (
	"rebush/fits/dim"
	"rebush/fits/finding"
)

// Holes finds the old centre of every bore from all that tells of it, in the
// job's order. The best evidence wins, and two kinds that disagree are said.
// What another bore or a frame tells comes after every bore has spoken for
// itself.
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
	return holes, said
}

// bore is one bore while it is being looked at.
type bore struct {
	*Found
	hole  Hole
	heard []heard
	own   int // of heard: the best that it tells of itself beyond doubt, or -1
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
	if b.own, _ = b.best(); b.own >= 0 && b.heard[b.own].Doubtful {
		b.own = -1
	}
}

// borrow asks the other bores of the shaft, and then drawing and sister.
func (b *bore) borrow(desk []bore) {
	for i := range desk {
		if o := &desk[i]; o != b && o.hole.Shaft == b.hole.Shaft && o.own >= 0 {
			b.ask(otherPlate(o.hole, o.heard[o.own].Evidence, b.Drilling), sayNoAnswer)
		}
	}
	for _, s := range b.Frames {
		b.ask(s, sayNoFrame)
	}
}

// otherPlate is what another bore of the same shaft tells. Its figures are what
// the ledger holds of that bore.
func otherPlate(o Hole, e Evidence, drilling Figure) Source {
	at := func(axis string, v float64) Figure {
		return Figure{Key: o.key("centre_mm/" + axis), V: dim.Sig9(v), Other: o.Name()}
	}
	return Source{
		What:    ByOtherPlate.String(),
		Figures: []Figure{at("0", e.Centre[0]), at("1", e.Centre[1]), drilling},
		Find: func(in []float64) (Answer, error) {
			return Answer{Evidence: OtherPlate([2]float64{in[0], in[1]}, e.Cov, in[2])}, nil
		},
	}
}

func (b *bore) best() (int, []Disagree) { return Best(b.evidence()) }

func (b *bore) evidence() []Evidence {
	out := make([]Evidence, len(b.heard))
	for i, h := range b.heard {
		out[i] = h.Evidence
	}
	return out
}

// settle takes the best evidence.
func (b *bore) settle() Hole {
	h := b.hole
	best, differ := b.best()
	h.Evidence, h.Used = b.evidence(), best
	if best < 0 {
		sayNoCentre(b.said, b.Place, h.Shaft.Leave)
		return h
	}
	x := b.heard[best]
	sayCentre(b.said, b.Place, x.Evidence)
	for _, d := range differ {
		if d.A == best || d.B == best {
			sayDisagree(b.said, b.Place, d)
		}
	}
	h.Known, h.Method, h.U, h.By = true, x.Method, x.U(), x.By
	if h.By == "" || x.Method == ByArc || x.Method == ByConsensus {
		h.By = x.Method.String() // without a journal more hangs on the way than on the instrument
	}
	h.centre, h.wear = x, b.worn(x)
	h.Worn = *h.wear.Bore
	h.Worn.O, h.Worn.Cov = x.Centre, x.Cov
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
