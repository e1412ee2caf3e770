package route

import (
	"math"

	"rebush/fits/say"
)

// stop is how far the tip of a tool goes below the face that it comes down on,
// mm: the jig's where a jig guides it, else that of the upper plate, also where it
// goes on to the far one. 0 where no figure is set: by hand, from below, a chamfer.
func (b *builder) stop(p planned) float64 {
	if math.IsNaN(p.o.Depth) || p.o.Kind == KindChamfer || p.o.byHand() || p.o.FromBelow {
		return 0
	}
	out := p.o.Depth + b.jigThick()
	if p.o.Far {
		out += b.j.Width - p.q.Through
	}
	return out
}

// stopWords says from where the stop of a guided tool is set.
func (b *builder) stopWords(stop float64) say.Text {
	if b.jigThick() <= 0 || stop <= 0 {
		return ""
	}
	return say.F("stop set %v below the face of the jig", say.MM(stop, 1))
}
