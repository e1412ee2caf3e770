package seat

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/ledger"
)

// PartRow is what stands in the plate round a bush, as it is printed.
type PartRow struct {
	Mend        Mend         `json:"mend"`  // "plug", or "bush in a bush" of a sleeve
	Stays       bool         `json:"stays"` // it is the old bush, which is left in
	Material    string       `json:"material"`
	AtMM        *dim.XY      `json:"at_mm"` // middle of its hole
	Tool        string       `json:"tool"`  // what makes its hole
	HoleMM      *dim.MMRange `json:"hole_mm"`
	OutsideMM   *dim.MMRange `json:"outside_mm"`
	HeldBy      string       `json:"held_by"`
	Second      string       `json:"second"`
	WebMM       dim.Gauged   `json:"web_mm"` // wall left round the seat of the bush; absent where that cuts through its rim
	MetalLeftMM dim.Gauged   `json:"metal_left_mm"`
	ForceN      *dim.MinMax  `json:"force_n"` // to press it in
}

// inPart says that the seat lies within what stands round it, so that this presses
// on the plate.
func (e *explainer) inPart() bool { return e.a.Part != nil && !e.a.Part.through }

// aroundIt names what a seat is cut in.
func (e *explainer) aroundIt() string {
	if e.a.Part == nil {
		return e.in.Casting.Plate.Name
	}
	return e.in.Casting.Plate.Name + " with " + e.a.Part.name() + " in it"
}

// where says where a figure of what a seat is cut in stands: that of the plate, or
// that of the part in it.
func (e *explainer) where(property string, v, ofPlate float64, high bool) string {
	if e.a.Part == nil || v == ofPlate {
		return e.plate(property, high)
	}
	if e.a.Part.Stays {
		return "materials:1: the worst of all that bushes are made of, but for plastic"
	}
	mat, _ := e.in.Metals.Find(e.a.Part.Metal.Name)
	return inTable(mat, property, high)
}

// part explains what stands in the plate round the bush.
func (e *explainer) part(row *Row) {
	p, part := e.page, e.a.Part
	source := e.boreLine("bushed")
	if !part.Stays {
		source = e.toolOf(part.Way) + ", for a part turned to it"
	}
	hole := both{p.Leaf("part/hole_mm/min", "least hole of "+part.name(), "mm", source, part.SeatLow),
		p.Leaf("part/hole_mm/max", "largest hole of "+part.name(), "mm", source, part.SeatHigh)}
	turned := e.in.Table.Get("turned_bush_mm").Address + ": turned for this hole"
	if part.Stays {
		turned = source
	}
	outside := both{p.Leaf("part/outside_mm/min", "least outside of "+part.name(), "mm", turned, part.ODLow),
		p.Leaf("part/outside_mm/max", "largest outside of "+part.name(), "mm", turned, part.ODHigh)}
	row.Part = &PartRow{Mend: part.Mend, Stays: part.Stays, Material: part.Metal.Name, AtMM: dim.PlaceXY(part.At),
		Tool: part.Way.Name, HoleMM: hole.limits(), OutsideMM: outside.sizes(), HeldBy: string(part.HeldBy),
		Second: part.Second.String(), ForceN: dim.Numbers(part.PressN[0], part.PressN[1])}
	if !part.through {
		off := p.Leaf("part/off_mm", "middle of the seat from that of "+part.name(), "mm", "plane geometry",
			apart(part.At, e.a.SeatAt))
		row.Part.WebMM = dim.Size(p.Calc3("part/web_mm", "wall of "+part.name()+" left round the seat", "mm",
			"half its hole less the way between both middles and half the seat", "plane geometry", Web, hole.least, off,
			p.Num("seat_mm/max")).V)
	}
	if !math.IsInf(part.Left, 1) {
		edge := p.Leaf("part/edge_mm", "middle of "+part.name()+" to what is nearest of edge and boss", "mm",
			e.boreLine("edges"), part.Hole.EdgeAway())
		row.Part.MetalLeftMM = dim.Size(p.Calc2("part/metal_left_mm", "metal left between "+part.name()+" and edge", "mm",
			"distance of the edge less half its largest hole", "plane geometry", MetalLeft, edge, hole.most).V)
	}
}

// tension explains the largest tension in the plate: that of the press itself, or
// where the seat lies within a part what both press on its hole.
func (e *explainer) tension(pressure ledger.Num, own func() ledger.Num) ledger.Num {
	if !e.inPart() {
		return own()
	}
	p, part := e.page, e.a.Part
	factor := p.Calc1("part/factor", "largest tension in the plate for each MPa in the hole of "+part.name(), "-",
		"the larger of that at the hole and that at the free edge", lame,
		func(d float64) float64 { return tensionFactor(part.Hole.wall(d), d) }, p.Num("part/hole_mm/max"))
	return p.Calc3("hoop_mpa", "largest tension in the plate", "MPa",
		"largest pressure of the bush and of what stands round it, times that", "plan/seat/METHODS.md 3", PlateTension,
		pressure, p.Leaf("part/pressure_mpa", "largest pressure of "+part.name()+" in its hole", "MPa",
			"pressed as a bush of its own, solid", part.PressMPa), factor)
}
