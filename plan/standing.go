package plan

import (
	"math"

	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan/survey"
)

// surveyed is the bore as surveyed, with the worn hole that is asked about just
// now in it.
func (b *bore) surveyed() survey.Hole {
	h := b.old
	h.Worn, h.Middle = b.worn, b.found
	return h
}

func asFound(b *bore) float64           { return b.surveyed().AsFound(b.load) }
func moved(b *bore) bool                { return b.old.Moved() }
func spoiltSeat(b *bore) bool           { return b.old.Spoilt() }
func (b *bore) stands() survey.WornBore { return b.surveyed().Stands() }

// journal is the diameter that the lobe was worn by.
func (b *bore) journal() float64 { return b.old.Journal() }

// ledgerNum is an entry as an input.
func (m *maker) ledgerNum(key string) ledger.Num { return m.book.Num(key) }

// holeNums are the figures of a worn hole in the ledger; holeAgain makes the
// hole from them.
func (m *maker) holeNums(b *bore) []ledger.Num        { return b.old.Nums(m.book) }
func holeAgain(b *bore, in []float64) survey.WornBore { return b.surveyed().With(in).Worn }
func (m *maker) shaftCentre(name string) *[2]float64  { return survey.ShaftCentre(m.holes, name) }

// read says how well a figure of a bore is known. A name that no shop and no
// table knows is told, and the default taken.
func (m *maker) read(b *bore, figure, what string) reading {
	r, err := m.instr.of(b.b, figure, what)
	if err != nil {
		m.say(finding.Caution, survey.RuleInstrument, b, say.F("%v", err),
			"name it under instruments in the shop file with its u")
		r, _ = m.instr.named("", what)
	}
	return r
}

const deg = math.Pi / 180

const howWorn = survey.HowWorn
