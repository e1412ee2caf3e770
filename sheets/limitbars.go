package sheets

import (
	"fmt"
	"strconv"
	"strings"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/route"
	"rebush/sheets/draw"
)

// limitBars are pictures of what is cut and gauged at the holes of a plan, one
// for all holes that are alike: seat, bush and pins, and bore, axle and pins, on
// one scale.
func limitBars(p *paper, pl *plan.Plan, place string) {
	type alike struct {
		holes      []string
		seat, bore barPicture
	}
	var groups []*alike
	known := map[string]*alike{}
	for _, s := range pl.Seats {
		seat, bore := seatBars(p.u, pl, s), boreBars(p.u, pl, s)
		if len(seat.rows) < 2 || len(bore.rows) < 2 {
			continue
		}
		key := ""
		for _, r := range append(seat.rows[:len(seat.rows):len(seat.rows)], bore.rows...) {
			key += fmt.Sprintf("%s %.3f %.3f|", r.name, r.lo, r.hi)
		}
		if known[key] == nil {
			known[key] = &alike{seat: seat, bore: bore}
			groups = append(groups, known[key])
		}
		known[key].holes = append(known[key].holes, s.Bore)
	}
	for i, g := range groups {
		p.spare("limits "+strconv.Itoa(i), place, func() *block {
			b := p.block()
			half := b.Width / 2
			if max(labelWide(b, g.seat.rows), labelWide(b, g.bore.rows)) > half-30 { // one below the other
				half = b.Width
			}
			for _, x := range []*barPicture{&g.seat, &g.bore} {
				x.label = labelWide(b, x.rows) + 3
				x.room = half - x.label - 5
			}
			k := barScale(g.seat, g.bore)
			b.y = 1.4
			scaleBar(b, b.Width, b.y, k)
			unit := map[string]string{"mm": "mm", "in": "inches"}[p.u.one()]
			b.y = b.write(0, b.y, b.Width-45, "Limits, "+listed(g.holes)+": diameters in "+unit, draw.Bold, b.st.small) + 1
			if half < b.Width {
				b.y = max(drawBars(b, 0, b.y, g.seat, k), drawBars(b, half, b.y, g.bore, k)) + 1.6
			} else {
				b.y = drawBars(b, 0, drawBars(b, 0, b.y, g.seat, k)+1, g.bore, k) + 1.6
			}
			b.Reach(b.y)
			return b
		})
	}
}

// labelWide is how wide the names of a picture are.
func labelWide(b *block, rows []barRow) float64 {
	w := 0.0
	for _, r := range rows {
		w = max(w, draw.Width(printable(b.bench.say(r.name)), draw.Regular, b.st.small))
	}
	return w
}

// listed are names in a breath, those of one shaft by its name.
func listed(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	var out []string
	for i := 0; i < len(names); i++ {
		s := names[i]
		if i+1 < len(names) && shaftOf(s) == shaftOf(names[i+1]) {
			s += " and " + names[i+1]
			i++
		}
		out = append(out, s)
	}
	return strings.Join(out, "; ")
}

// seatBars are what the tool leaves, what the seat may be, the outside of the
// bush and the pins that gauge the seat.
func seatBars(u units, pl *plan.Plan, s plan.Seat) barPicture {
	lim, ok := exactly(seatLimits(pl, s))
	if s.Part != nil || !ok {
		return barPicture{}
	}
	in := units(u.one()).said()
	name := "seat "
	var rows []barRow
	if tool, ok := entries(pl, s.Bore, "tool/hole_mm"); ok && isCut(pl, s.Bore) {
		if f := say.MMs(tool[0], tool[1], 3).Number(in); f != say.MMs(lim[0], lim[1], 3).Number(in) {
			rows = append(rows, barRow{name: "as cut " + f, lo: tool[0], hi: tool[1], as: asPassing})
		} else {
			name = "seat, as cut "
		}
	}
	rows = append(rows, barRow{name: name + say.Range(*seatLimits(pl, s)).Number(in), lo: lim[0], hi: lim[1],
		as: asLimits, ruled: true})
	if od, ok := entries(pl, s.Bore, "bush/od_mm"); ok {
		rows = append(rows, barRow{name: "bush " + say.Limits(od[0], od[1], 3).Number(in), lo: od[0], hi: od[1], as: asPart})
	}
	return barPicture{rows: pinned(rows, pl, s.Bore, func(op plan.Operation) bool {
		return op.Kind == route.KindSizeSeat || op.Kind == route.KindGauge && op.Setup != "finish"
	})}
}

// boreBars are the axle, the bore when the bush is in, what the finished bore
// may be and the pins that gauge it.
func boreBars(u units, pl *plan.Plan, s plan.Seat) barPicture {
	lim, ok := exactly(s.BoreMM)
	if !ok {
		return barPicture{}
	}
	in := units(u.one()).said()
	var rows []barRow
	if e, ok := pl.Ledger["seats/"+s.Bore+"/journal_mm"]; ok {
		rows = append(rows, barRow{name: "axle " + say.MM(e.Value, 3).Number(in), lo: e.Value, hi: e.Value, as: asSize})
	}
	if e := pl.Ledger["seats/"+s.Bore+"/must_pass_mm"]; e.Value > 0 {
		rows = append(rows, barRow{name: "has to pass " + say.MM(e.Value, 3).Number(in), lo: e.Value, hi: e.Value,
			as: asSize})
	}
	if x, ok := entries(pl, s.Bore, "closed_mm"); ok {
		rows = append(rows, barRow{name: "pressed in " + say.MMs(x[0], x[1], 3).Number(in), lo: x[0], hi: x[1],
			as: asPassing})
	}
	rows = append(rows, barRow{name: "bore " + say.Range(*s.BoreMM).Number(in), lo: lim[0], hi: lim[1],
		as: asLimits, ruled: true})
	return barPicture{rows: pinned(rows, pl, s.Bore, func(op plan.Operation) bool {
		return op.Kind == route.KindSizeBore || op.Kind == route.KindGauge && op.Setup == "finish"
	})}
}

// exactly are the two ends of limits in mm.
func exactly(r *plan.MMRange) (lim [2]float64, ok bool) {
	if r == nil || !r.Min.Given() || !r.Max.Given() {
		return lim, false
	}
	lim[0], _ = r.Min.Exact()
	lim[1], _ = r.Max.Exact()
	return lim, true
}

// entries are a pair of limits of a seat as the plan keeps them.
func entries(pl *plan.Plan, bore, key string) (lim [2]float64, ok bool) {
	lo, is := pl.Ledger["seats/"+bore+"/"+key+"/min"]
	hi, are := pl.Ledger["seats/"+bore+"/"+key+"/max"]
	return [2]float64{lo.Value, hi.Value}, is && are
}

// isCut says whether a seat is made in this job, and not one that is there.
func isCut(pl *plan.Plan, bore string) bool {
	for _, op := range pl.Operations {
		if op.Kind == route.KindSizeSeat && (op.Bore == bore || strings.Contains(op.Do.String(), bore)) { // or both at once
			return true
		}
	}
	return false
}

// pinned adds the pins by which a hole is gauged in the first of some operations
// that has pins, by their names.
func pinned(rows []barRow, pl *plan.Plan, bore string, in func(plan.Operation) bool) []barRow {
	for _, op := range pl.Operations {
		if op.Bore != bore || !in(op) || op.Pins == [2]float64{} {
			continue
		}
		for i, name := range []string{op.Go.String() + " goes", op.NoGo.String() + " does not"} {
			if d := op.Pins[i]; d > 0 {
				rows = append(rows, barRow{name: name, lo: d, hi: d, as: asSize})
			}
		}
		break
	}
	return rows
}
