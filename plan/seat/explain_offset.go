package seat

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/ledger"
)

// eccentric explains how far and which way the bore of a bush stands off its
// outside, and how well that can be set.
func (e *explainer) eccentric(row *Row) {
	p, h := e.page, &e.x.Hole
	target := e.book.Page("targets/" + e.x.Name())
	nums, again := e.place()
	given := len(nums)
	nums = append(nums, target.Num("target_mm/0"), target.Num("target_mm/1"))
	var side [2]ledger.Num
	for i, axis := range []string{"along", "up"} {
		side[i] = p.Calc("offset_mm/"+string(rune('0'+i)), "middle of the bore from that of the seat, "+axis, "mm",
			"new centre less the middle of the hole that is there", "plane geometry", func(v []float64) float64 {
				_, at := again(v)
				return micro(v[given+i] - at[i])
			}, nums...)
	}
	off := p.Calc2("offset_mm", "middle of the bore from that of the outside", "mm", "both sides of a right angle",
		"plane geometry", math.Hypot, side[0], side[1])
	p.Calc3("set_u_mm", "doubt of the bore's place from turning and setting the bush", "mm",
		"how well it is set over, and the offset by the doubt of its angle", "plane geometry", SetDoubt, off,
		e.rule("clock_deg"), e.rule("set_over_mm"))
	row.SeatAtMM, row.OffsetMM = dim.PlaceXY(h.At), dim.PlaceXY([2]float64{side[0].V, side[1].V})
}

// bores are the bores of round bushes by which one is judged: for its stress, its
// hold, and its least and largest closure. Of a bush that is not eccentric all are
// its own.
func (e *explainer) bores(f figures) (stress, hold ledger.Num, closure both) {
	p, b := e.page, &e.a.Bush
	own := p.Leaf("bush_bore_mm", "bore of the bush before pressing, middle of its limits", "mm", e.bushLine("bore"),
		(b.BLow+b.BHigh)/2)
	if b.Off == 0 {
		return own, own, both{own, own}
	}
	off := p.Num("offset_mm")
	const ring = "METHODS.md 2"
	stiff := p.Calc2("bush_bore_mm/stiff", "bore of a round bush as thick as its thick side", "mm",
		"bore less twice the offset, not below 0", "plan/seat/"+ring, ThickBore, own, off)
	thin := func(key string, seat ledger.Num) ledger.Num {
		return p.Calc3("bush_bore_mm/"+key, "bore of a round bush as thin as its thin side", "mm",
			"bore and twice the offset, no more than 0.998 of the seat", "plan/seat/"+ring, ThinBore, own, off, seat)
	}
	return stiff, thin("soft", f.seat.most), both{stiff, thin("softest", f.seat.least)}
}
