package route

import (
	"rebush/fits/say"
	"rebush/plan/seat"
)

// trialTools are the tools that make a seat, in their order, with the steps of the
// spindle: the trial hole comes before the rows that have them.
func (b *builder) trialTools(x Bore) say.Text {
	var w []say.Text
	hole := 0.0
	put := func(name say.Text, q Query) {
		cut, err := b.cut(q)
		switch {
		case err != nil:
			w = append(w, name)
		case cut.ByHand:
			w = append(w, name+" by hand")
		default:
			w = append(w, say.F("%v at %.0f rev/min", name, cut.RPM))
		}
	}
	for _, st := range b.opening(x, false) {
		put(words(st.tool.Name), Query{Op: st.op, Dia: st.tool.Size, From: hole, Through: x.Plate, ThinWall: x.thin(),
			Head: st.head, Material: x.Metal})
		hole = st.tool.Size
	}
	q := Query{Op: OpReam, Dia: x.WaySize, Through: x.Plate, ThinWall: x.thin(), Material: x.Metal}
	switch x.Way {
	case seat.BoringHead:
		return join("by "+list(w), "then the boring head as on the job")
	case seat.EndMill:
		q.Op = OpPlunge
	}
	put(words(x.WayName), q)
	if b.jigThick() > 0 {
		return "through the jig clamped on the scrap: " + say.Join(", ", w...)
	}
	return "by " + say.Join(", ", w...)
}

// reamerKind is what a reamer is taken for, and how far another kind has to go:
// its lead has to leave the plate, or the far edge of the seat stays narrow.
func (b *builder) reamerKind() say.Text {
	lead := say.MM(b.r.Overrun, 1)
	if b.s.Machine == ByHand {
		return "a hand reamer: on by its lead, until its parallel part has left the plate; a stop does not tell it"
	}
	return say.F("a machine reamer, whose lead is no longer than the %v that it goes beyond; a hand reamer goes on until its "+
		"parallel part has left the plate, or is not used", lead)
}
