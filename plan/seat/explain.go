package seat

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/ledger"
	"rebush/fits/press"
	"rebush/plan/survey"
)

// Explain writes what is known of a bore's seat into the ledger, page
// seats/<bore>, and returns it as it is printed. The old centre and the target
// must be in the ledger already.
func Explain(book *ledger.Ledger, in Input, x Seated) Row {
	row := x.row(in.Rules)
	if x.Chosen == nil {
		return row
	}
	if seen := x.Chosen.Seen; seen != nil {
		x.Hole = *seen
	}
	e := &explainer{in: &in, x: &x, a: x.Chosen, book: book, page: book.Page("seats/" + x.Name())}
	f := e.sizes(&row)
	row.ExpectedSeat = e.leaves()
	if e.a.HeldBy == ByPress {
		e.press(&row, f)
	} else {
		e.still(&row, f)
	}
	e.bore(&row, f)
	e.warmth(&row, f)
	e.load(&row)
	return row
}

// both are the least and the most of a figure.
type both struct{ least, most ledger.Num }

func (b both) numbers() *dim.MinMax { return dim.Numbers(b.least.V, b.most.V) }
func (b both) limits() *dim.MMRange { return dim.Limits(b.least.V, b.most.V) }
func (b both) sizes() *dim.MMRange  { return dim.Sizes(b.least.V, b.most.V) }

// figures are those of a seat that others follow from.
type figures struct{ od, bore, seat, u both }

func itself(v float64) float64 { return v }

// inUM is a formula in mm whose outcome is printed in um.
func inUM(f func(a, b float64) float64) func(a, b float64) float64 {
	return func(a, b float64) float64 { return f(a, b) * 1000 }
}

// sizes explains the limits of bush and seat, and what lies between them and
// the metal round them.
func (e *explainer) sizes(row *Row) figures {
	a, p := e.a, e.page
	od, bore, tool := e.bushLine("od"), e.bushLine("bore"), e.toolLine()
	f := figures{
		od: both{p.Leaf("bush/od_mm/min", "least outside of the bush", "mm", od, a.Bush.ODLow),
			p.Leaf("bush/od_mm/max", "largest outside of the bush", "mm", od, a.Bush.ODHigh)},
		bore: both{p.Leaf("bush/bore_mm/min", "least bore of the bush", "mm", bore, a.Bush.BLow),
			p.Leaf("bush/bore_mm/max", "largest bore of the bush", "mm", bore, a.Bush.BHigh)},
	}
	least, most := "least hole that "+a.Way.Name+" leaves", "largest hole that "+a.Way.Name+" leaves"
	leaves := both{p.Leaf("tool/hole_mm/min", least, "mm", tool, a.Leaves[0]), p.Leaf("tool/hole_mm/max", most, "mm",
		tool, a.Leaves[1])}
	f.seat = e.accepted(f.od, leaves, least, most)
	if e.x.Hole.Offset != ([2]float64{}) {
		e.eccentric(row)
	}
	row.SeatMM = f.seat.limits()
	if a.AsLeft() {
		row.SeatMM = f.seat.sizes()
	}
	if !math.IsInf(a.CleanUp, 1) {
		row.CleanupMM = dim.Size(p.Calc2("cleanup_mm", "seat radius less what the wear needs", "mm",
			"half the least seat less the radius that clears the wear", "plane geometry", CleanUp, f.seat.least, e.clears()).V)
	}
	const limits = "limits of bush and seat"
	f.u = both{
		p.Calc2("interference_um/min", "least interference on diameter", "um", "smallest bush less largest seat",
			limits,
			inUM(Interference), f.od.least, f.seat.most),
		p.Calc2("interference_um/max", "largest interference on diameter", "um", "largest bush less smallest seat",
			limits,
			inUM(Interference), f.od.most, f.seat.least)}
	row.InterferenceUM = f.u.numbers()
	if a.Part != nil {
		e.part(row)
	}
	switch {
	case math.IsInf(a.Ligament, 1):
	case e.inPart():
		row.MetalLeftMM = dim.Size(p.Calc2("metal_left_mm", "metal left between "+a.Part.name()+" and edge", "mm",
			"distance of the edge less half the largest hole of it", "plane geometry", MetalLeft, p.Num("part/edge_mm"),
			p.Num("part/hole_mm/max")).V)
	case a.Part != nil && a.Part.Left < MetalLeft(e.x.Hole.EdgeAway(), a.SeatHigh):
		row.MetalLeftMM = dim.Size(p.Calc2("metal_left_mm", "metal left between plug and edge", "mm",
			"distance of the edge less half the largest hole of it, which is less than beside the seat", "plane geometry",
			MetalLeft, p.Num("part/edge_mm"), p.Num("part/hole_mm/max")).V)
	default:
		row.MetalLeftMM = dim.Size(p.Calc2("metal_left_mm", "metal left between seat and edge", "mm",
			"distance of the edge less half the largest seat", "plane geometry", MetalLeft, e.edge(), f.seat.most).V)
	}
	return f
}

// accepted explains the limits of a seat: those of the holes that its tool leaves,
// or what of them goes with the bush where not all do.
func (e *explainer) accepted(od, leaves both, least, most string) both {
	a, p := e.a, e.page
	rules := map[what][2]string{dropsLoose: {"turned_press_um", "most_press_share"}, tooTight: {"turned_press_um", "most_press_share"},
		pressTooHeavy: {"turned_press_um", "light_press_share"}, compoundGap: {"compound_gap_mm", "compound_gap_mm"}}
	rule, narrow := rules[a.Slight.What]
	end := func(i int, key, extent, as string, leaves, od ledger.Num, of func(hole, outside, press float64) float64) ledger.Num {
		if !narrow || math.IsNaN(a.Presses[i]) {
			return p.Calc1("seat_mm/"+key, extent+" diameter of the seat", "mm", as, a.Way.Kind.limits(), itself, leaves)
		}
		um := p.Leaf("accepted_um/"+key, "interference that the seat must leave, or may", "um", e.cited(rule[i]), a.Presses[i]*1000)
		return p.Calc("seat_mm/"+key, extent+" diameter of a seat that is accepted", "mm",
			as+", as far as it leaves the bush such an interference", a.Way.Kind.limits(),
			func(v []float64) float64 { return of(v[0], v[1], v[2]/1000) }, leaves, od, um)
	}
	return both{end(1, "min", "least", least, leaves.least, od.most, LeastAccepted), end(0, "max", "largest", most, leaves.most, od.least, MostAccepted)}
}

// place are the figures that the middle of a seat in its worn hole is given by,
// and both made again from them: the new centre, or of a hole that is not cut its
// own middle.
func (e *explainer) place() ([]ledger.Num, func(v []float64) (survey.Hole, [2]float64)) {
	if e.a.Way.Kind == AsItIs {
		return e.x.Old.Nums(e.book), func(v []float64) (survey.Hole, [2]float64) {
			old := e.x.Old.With(v[:survey.Held])
			return old, old.Stands().O
		}
	}
	target := e.book.Page("targets/" + e.x.Name())
	nums := append(e.x.Old.Nums(e.book), target.Num("target_mm/0"), target.Num("target_mm/1"))
	return nums, func(v []float64) (survey.Hole, [2]float64) {
		return e.x.Old.With(v[:survey.Held]), [2]float64{v[survey.Held], v[survey.Held+1]}
	}
}

// micro rounds a place to below what is printed, and above what two ways of
// summing differ by.
func micro(v float64) float64 { return dim.Near(v, 6) }

const wornOutline = "circle joined with the swept journal, own derivation: plan/survey/METHODS.md 1"

func (e *explainer) clears() ledger.Num {
	nums, again := e.place()
	given := len(nums)
	nums = append(nums, e.there()...)
	return e.page.Calc("clears_mm", "seat radius that just clears the worn outline about the new centre", "mm",
		"the larger of |T-O| + R and |T-D| + r, D being O moved by clearance and wear; and of |T-c| + half the old seat where there is one",
		wornOutline, func(v []float64) float64 {
			old, at := again(v)
			return micro(clears(old, at, last(v[given:], 0)))
		}, nums...)
}

// there is the round hole that is in the plate, as a figure: none where there is
// none.
func (e *explainer) there() []ledger.Num {
	if e.x.Hole.There == 0 {
		return nil
	}
	figure := "seat"
	if e.x.Old.Bore.Seat == nil {
		figure = "bushed"
	}
	return []ledger.Num{e.page.Leaf("there_mm", "diameter of the hole that is there", "mm", e.boreLine(figure),
		e.x.Hole.There)}
}

// edge is the way from the new centre to what is nearest of edge and boss.
func (e *explainer) edge() ledger.Num {
	nums, again := e.place()
	given := len(nums)
	for i, v := range measured(e.x.Old.Bore) {
		nums = append(nums, e.page.Leaf("edges/"+string(rune('0'+i%10)), "metal measured to an edge", "mm",
			e.boreLine("edges"), v))
	}
	edges := len(nums)
	nums = append(nums, e.there()...)
	name := e.x.Hole.EdgeName
	if name == "" {
		name = "the outside of the boss"
	}
	return e.page.Calc("edge_mm", "new centre to "+name, "mm",
		"least of: edge as measured from the hole less the move towards it, outline, outside of the boss", "plane geometry",
		func(v []float64) float64 {
			old, at := again(v)
			h := Hole{Edge: nearestOf(freeEdges(old, at, last(v[edges:], 0), v[given:edges], e.in.Job.Chassis),
				func(freeEdge) bool { return true }).away,
				BossR: e.x.Hole.BossR, BossE: offBoss(old, at)}
			return micro(h.EdgeAway())
		}, nums...)
}

// contact is the length of seat that the bush touches.
func (e *explainer) contact() ledger.Num {
	h, b := &e.x.Hole, &e.a.Bush
	return e.page.Calc4("contact_mm", "length of seat in contact", "mm",
		"the shorter of plate and bush less both lead chamfers", "plane geometry", Contact,
		e.page.Leaf("plate_mm", "thickness of the plate", "mm", e.line("chassis/plates/"+string(e.x.side())), h.Plate),
		e.page.Leaf("body_mm", "length of the bush without its flange", "mm", e.bushLine("length"), b.body(h.Plate)),
		e.chamfer(),
		e.page.Leaf("lead_mm", "lead chamfer of the bush", "mm", e.ruleLine("bush_chamfer_mm"), e.in.Rules.lead(b)))
}

// chamfer is what is broken off the edge of the seat.
func (e *explainer) chamfer() ledger.Num {
	if e.a.Bush.FlangeOD <= 0 {
		return e.rule("seat_chamfer_mm")
	}
	return e.page.Calc2("seat_chamfer_mm", "chamfer of the seat, under the flange", "mm",
		"root radius of the flange and what the chamfer exceeds it by", "plane geometry",
		func(root, over float64) float64 { return Chamfer(true, 0, root, over) },
		e.rule("flange_root_mm"), e.rule("flange_chamfer_over_root_mm"))
}

// smoothing is what roughness takes off a press.
func (e *explainer) smoothing() ledger.Num {
	if m := e.a.Bush.Metal; m.Porous || m.Plastic {
		return e.book.Leaf("rules/no smoothing", "smoothing of a porous or plastic bush", "um",
			e.in.Table.Get("smoothing_factor").Address+": not meant for a porous face", 0)
	}
	return e.book.Page("rules").Calc3("smoothing", "what roughness takes off a press", "um",
		"factor x (Rz of the bush + Rz of the seat)",
		dinSmoothing, press.Smoothing, e.rule("smoothing_factor"), e.rule("rz_bush_um"), e.rule("rz_seat_um"))
}

const dinSmoothing = "DIN 7190 smoothing rule: fits/press/METHODS.md 5"

// warmth explains at which temperature the bush comes loose.
func (e *explainer) warmth(row *Row, f figures) {
	a, p := e.a, e.page
	if math.IsNaN(a.LooseAt) {
		return
	}
	row.LooseAtC = dim.Number(p.Calc4("loose_at_c", "temperature at which the least press is gone", "C",
		"20 + interference that springs back / (seat diameter x difference of expansion)",
		"linear expansion: fits/press/METHODS.md 6",
		func(spring, seat, plate, bush float64) float64 { return LooseAt(spring/1000, seat, plate, bush) },
		e.spring, f.seat.most, e.plateExpansion(), e.bushExpansion()).V)
}

func (e *explainer) plateExpansion() ledger.Num {
	p := &e.x.Hole.Plate2
	return e.page.Leaf("expansion_plate", "expansion of "+e.aroundIt(), "1e-6/K",
		e.where("expansion", p.Alpha, e.in.Casting.Plate.Alpha, false), p.Alpha)
}

func (e *explainer) bushExpansion() ledger.Num {
	m := &e.a.Bush.Metal
	return e.page.Leaf("expansion_bush", "expansion of "+m.Name, "1e-6/K", e.bush("expansion", false), m.Alpha)
}

// load explains what the bearing bears.
func (e *explainer) load(row *Row) {
	if math.IsNaN(e.a.PV) {
		return
	}
	h, p := &e.x.Hole, e.page
	row.PV = dim.Number(p.Calc4("pv", "pressure times rubbing speed", "MPa m/s",
		"load / (journal x length) x pi x journal x speed / 60000",
		"projected area, plain bearing practice", PV,
		p.Leaf("load_n", "load on this bearing", "N",
			e.shaftLine("load")+", shared between the bearings of the shaft", h.Load),
		p.Num("journal_mm"),
		p.Leaf("length_mm", "length of the bearing", "mm", e.bushLine("length"), e.a.Bearing),
		p.Leaf("rpm", "speed of the shaft", "rev/min", e.shaftLine("rpm"), h.RPM)).V)
}
