package route

import (
	"math"

	"rebush/fits/say"
)

// spot starts a hole in solid metal, so that the drill does not wander.
func (b *builder) spot(x Bore, where string, far bool, common func(Operation) Operation) planned {
	d := math.Min(b.r.SpotMost, x.mid()/2)
	d = math.Floor(d*2+1e-9) / 2
	o := common(Operation{Kind: KindSpot, Do: say.F("Spot %s on its new centre, in the solid metal", where),
		Tool: "spot drill 90 degrees", ToolMM: math.NaN(), HoleMM: d,
		Note: say.F("about %v across: the next tool finds its start there", say.MM(d, 1).About())})
	if far {
		o.Note = join(o.Note, say.F("a long one, no thicker anywhere than the near hole; needs a reach of at least %v",
			say.MM(b.j.Width-x.Plate+d/2, 1)))
	}
	return planned{o: o, q: &Query{Op: OpDrill, Dia: d, Through: d / 2, Material: x.Metal}, pass: d, // and no hole yet
		tool: Tool{Name: "spot drill", Size: d, Reach: b.deep(OpDrill, d)}}
}

// pilot is the largest drill up to a size that goes into solid metal. Half the
// seat leaves the tool that makes its place metal to work in.
func (b *builder) pilot(most float64, far bool) (Tool, bool) {
	for i := len(b.s.Drills) - 1; i >= 0; i-- {
		if t := b.s.Drills[i]; t.Size <= most+1e-9 && b.canDrill(t) && (!far || b.reaches(t, OpDrill)) {
			return t, true
		}
	}
	return Tool{}, false
}

// reachNote says what reach and shank an operation needs where the tool may not
// have them.
func (b *builder) reachNote(st step, x Bore, far bool) say.Text {
	if st.bar || st.op != OpPlunge && !far {
		return ""
	}
	w := say.F("needs a reach of %v", say.MM(b.through(x), 1))
	if far {
		w = say.F("needs a reach of at least %v, and no thicker shank so far up", say.MM(b.deep(st.op, st.tool.Size), 1))
	}
	if st.tool.Assumed {
		w += say.F("; not given, taken as a usual short one: flutes %v, shank %v: look before it is fed",
			say.MM(st.tool.Reach, 1), say.MM(st.tool.Shank, 1))
	}
	return w
}
