package route

import (
	"math"
	"slices"

	"rebush/fits/say"
)

// slip is one slip bush: the tool or the rod that runs in it, and the limits of
// its bore, mm.
type slip struct {
	tool float64
	bore [2]float64
}

// slips are the slip bushes of the job by the size of what runs in them, rising.
// Each bore is larger than the largest that its tool can be: a drill is made to
// its name and under, a reamer cuts no larger than its seat may become.
func (b *builder) slips() []slip {
	most := map[float64]float64{}
	put := func(d, largest float64) { most[d] = math.Max(most[d], largest) }
	for _, x := range b.j.Bores {
		for _, y := range b.cutsOf(x) {
			for _, d := range b.guided(y) {
				put(d, d)
				if sameSize(d, y.WaySize) {
					put(d, y.Seat[1])
				}
			}
		}
	}
	for _, c := range b.clampings() {
		for _, name := range c.from {
			for _, x := range c.bores {
				if at := b.bore(name); x.Shaft == at.Shaft {
					up := b.steppedRod(at, x).d[1]
					put(up, up)
				}
			}
		}
	}
	var out []slip
	for d, largest := range most {
		out = append(out, slip{d, [2]float64{largest + b.r.SlipLeast, largest + b.r.SlipMost}})
	}
	slices.SortFunc(out, func(p, q slip) int {
		if p.tool < q.tool {
			return -1
		}
		return 1
	})
	return out
}

// jigThick is how thick the jig plate is, which guides its largest tool over so
// many of its diameters, mm; 0 where there is no jig.
func (b *builder) jigThick() float64 {
	if !b.loose() || !b.s.Jig {
		return 0
	}
	all := b.slips()
	if len(all) == 0 {
		return 0
	}
	return math.Ceil(b.r.JigDiameters*all[len(all)-1].tool - 1e-9)
}

// slipOutside is the one outside of all slip bushes, whole millimetres.
func (b *builder) slipOutside() float64 {
	all := b.slips()
	if len(all) == 0 {
		return 0
	}
	return math.Ceil(all[len(all)-1].bore[1] + 2*b.r.SlipWall - 1e-9)
}

// slide is what slides by hand and its hole; without the table both are of one
// size.
func (b *builder) slide(d float64) (hole, in [2]float64) {
	if b.r.Slide == nil {
		return [2]float64{d, d}, [2]float64{d, d}
	}
	return b.r.Slide(d)
}

// name is a slip bush by the tool that runs in it.
func (s slip) name() say.Text { return say.F("slip bush %v", say.MM(s.tool, 3).Trim()) }

// bored are the limits of its bore.
func (s slip) bored() say.Text { return say.F("bored %v", say.Limits(s.bore[0], s.bore[1], 3)) }

// placeWithin is how true the bush holes of a jig plate stand, either way: what a
// hole through a slip bush is reckoned with has to hold them too.
func (b *builder) placeWithin() say.Text {
	if b.r.JigHole <= 0 {
		return ""
	}
	return say.F("each within %v of its figures", say.MM(b.r.JigHole, 3))
}
