package plan

import (
	"cmp"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan/inspect"
	"rebush/plan/mesh"
	"rebush/plan/route"
	"rebush/plan/safety"
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/target"
)

// What is printed of the route.
type (
	Operation = route.Row
	Setup     = route.Setup
	BuyLine   = route.BuyLine
	Step      = route.Step
	Safety    = route.Said
)

// Routed is the route of a job: what is done in which order, and what that
// wants and warns of.
type Routed struct {
	Rows            []Operation
	Setups          []Setup
	Scrap           []string // tools that are tried in scrap before the truck is cut
	Buy             []BuyLine
	LayOut          []say.Text
	Proving         []Step
	PageOne, Before []safety.Line
	Findings        finding.List
}

// routed lays out the operations for the seats that were chosen, and explains
// their figures.
func routed(w *books, in route.Input, book *ledger.Ledger) Routed {
	tables := w.forRoute()
	j, shop, rules, said := route.FromJob(tables, in)
	cuts := tables.Handbook(in)
	r := route.Make(j, shop, cuts.Cut, rules)
	for _, x := range j.Bores {
		if x.Way == seat.CapWay {
			book.Cite("rules/cap_slide_um") // what its seat is gauged by
		}
	}
	out := Routed{Setups: r.Setups, Scrap: r.Scrap, Buy: r.Buy, LayOut: r.LayOut, Findings: said}
	for _, t := range r.Troubles {
		out.Findings.Raise(t.Level, t.Rule, in.Seat.Job.Place(t.Where), t.Text, t.Fix).Against(dim.Sig9(t.Have),
			dim.Sig9(t.Want), cmp.Or(t.Unit, "mm"))
	}
	hurt := w.hazards(in.Seat.Casting, in.Seat.Job)
	beside, pageOne, before := hurt.Beside(r)
	out.PageOne, out.Before, out.Proving = pageOne, before, hurt.Proved(r)
	explain := route.Explainer{Book: book, Cuts: cuts, Plates: in.Seat.Job.Source("chassis/plates"),
		Handling: w.rules.Get("minutes_tool_change").Address}
	for i, o := range r.Operations {
		row := explain.Row(o)
		row.Safety = beside[i]
		out.Rows = append(out.Rows, row)
	}
	return out
}

// forRoute are the tables that the route reads.
func (w *books) forRoute() route.Tables {
	return route.Tables{Rules: w.rules, Metals: w.materials, Limits: w.limits, Cutting: w.cutting, Drills: w.drills,
		Packing: inspect.Packing}
}

// checks are the meshes that are tried before the bores are opened, each with
// the limits of its backlash that decide.
func checks(drives []mesh.Drive) []route.GearCheck {
	var out []route.GearCheck
	for _, d := range drives {
		least, most := d.PlayLimits()
		out = append(out, route.GearCheck{Name: d.Name, Shaft: d.Wheel, Backlash: [2]float64{least, most}})
	}
	return out
}

// marks are the holes that are left alone and whose place is known: places to
// measure from.
func marks(holes []survey.Hole) []route.Mark {
	var out []route.Mark
	for _, h := range holes {
		if h.Known && h.Shaft.Leave {
			m := route.Mark{Name: h.Name(), Side: h.Bore.Side, At: h.Middle, U: h.U}
			if h.Bore.Narrowest.Given() {
				m.Dia = h.Bore.Narrowest.Float()
			}
			out = append(out, m)
		}
	}
	return out
}

// toward is the way in which each axle is pressed, by bore.
func toward(axles target.Axles) map[string][2]float64 {
	out := map[string][2]float64{}
	for _, a := range axles {
		for _, h := range a.Holes {
			out[h.Name()] = h.Load
		}
	}
	return out
}

// forRoute is what the steps before settled for the route.
func forRoute(holes []survey.Hole, t target.Settled, seats Seated) route.Input {
	return route.Input{Seat: seats.In, Seats: seats.Bores, Toward: toward(t.Axles), Gears: checks(t.Drives),
		SidePlay: seats.SidePlay, Marks: marks(holes), Done: finishedOf(holes),
		Again: movedFar(t), Towards: survey.Towards}
}

// movedFar are the bores that go farther than is usual, or than their old centre is
// known: they are measured again before the first cut.
func movedFar(t target.Settled) []string {
	var out []string
	for _, f := range t.Findings {
		if f.Rule == target.LongMove {
			out = append(out, f.Where)
		}
	}
	return out
}
