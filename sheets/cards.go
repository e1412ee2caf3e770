package sheets

import (
	"math"
	"strings"

	"rebush/plan"
	"rebush/plan/route"
)

// card is what the hands do in one place: a clamping, or all that is done at
// bench, lathe and press before the first clamping or after the last.
type card struct {
	set     plan.Setup // of a clamping
	clamped bool
	before  []row // made at the lathe for this clamping, before it
	clamp   []row
	groups  []group
}

// group is a run of rows that are worked in one way: for each of its places
// from the first row to the last.
type group struct {
	setup  string
	places []spot
	rows   []row
}

// spot is a place that the dials or the jig are set to.
type spot struct {
	shaft string
	ops   []int
}

// row is one line of a card: one operation, or several that differ in nothing
// but the hole. ops are indices into the operations of the plan.
type row struct{ ops []int }

// isClamping says whether a set-up holds the chassis under a tool.
func isClamping(s plan.Setup) bool { return s.Clamping || s.Plate != "" }

// cardsOf lays the operations of a plan onto cards, in their order.
func cardsOf(pl *plan.Plan) []card {
	var out []card
	var loose []int
	any := false
	for i := 0; i < len(pl.Operations); {
		name := pl.Operations[i].Setup
		k := i
		for k < len(pl.Operations) && pl.Operations[k].Setup == name {
			k++
		}
		set, _ := setupNamed(pl, name)
		if !isClamping(set) {
			for ; i < k; i++ {
				loose = append(loose, i)
			}
			continue
		}
		c := clampedCard(pl, set, i, k)
		if len(loose) > 0 {
			if any {
				c.before = rowsOf(pl, loose)
			} else {
				out = append(out, benchCard(pl, loose))
			}
			loose = nil
		}
		out, any = append(out, c), true
		i = k
	}
	if len(loose) > 0 {
		out = append(out, benchCard(pl, loose))
	}
	return out
}

// benchCard is what is done at bench, lathe and press, a group for each.
func benchCard(pl *plan.Plan, ops []int) card {
	var c card
	for i := 0; i < len(ops); {
		k := i
		for k < len(ops) && pl.Operations[ops[k]].Setup == pl.Operations[ops[i]].Setup {
			k++
		}
		c.groups = append(c.groups, group{setup: pl.Operations[ops[i]].Setup, rows: rowsOf(pl, ops[i:k])})
		i = k
	}
	return c
}

// clampedCard is one clamping: operations from to before end. Holes that are
// worked alike stand beside each other.
func clampedCard(pl *plan.Plan, set plan.Setup, from, end int) card {
	c := card{set: set, clamped: true}
	for i := from; i < end; {
		op := pl.Operations[i]
		k := i + 1
		switch {
		case op.Kind == route.KindSetUp:
			c.clamp = append(c.clamp, row{ops: []int{i}})
		case op.Kind == route.KindGauge || op.Bore == "":
			for k < end && (pl.Operations[k].Kind == route.KindGauge || pl.Operations[k].Bore == "") {
				k++
			}
			c.groups = append(c.groups, group{setup: set.Name, rows: rowsOf(pl, span(i, k))})
		default:
			for k < end && shaftOf(pl.Operations[k].Bore) == shaftOf(op.Bore) && pl.Operations[k].Kind != route.KindGauge {
				k++
			}
			g := group{setup: set.Name, places: []spot{{shaftOf(op.Bore), span(i, k)}}, rows: rowsOf(pl, span(i, k))}
			if n := len(c.groups); n > 0 && alongside(pl, c.groups[n-1], g) {
				c.groups[n-1].join(g)
			} else {
				c.groups = append(c.groups, g)
			}
		}
		i = k
	}
	return c
}

func span(from, end int) []int {
	var out []int
	for i := from; i < end; i++ {
		out = append(out, i)
	}
	return out
}

// rowsOf puts operations that follow each other and differ in nothing but the
// hole into one row.
func rowsOf(pl *plan.Plan, ops []int) []row {
	var out []row
	for _, i := range ops {
		if n := len(out); n > 0 && sameWork(pl.Operations[out[n-1].ops[0]], pl.Operations[i]) {
			out[n-1].ops = append(out[n-1].ops, i)
			continue
		}
		out = append(out, row{ops: []int{i}})
	}
	return out
}

// alongside says whether the holes of a second group are worked as those of the
// first.
func alongside(pl *plan.Plan, a, b group) bool {
	if len(a.places) == 0 || len(a.rows) != len(b.rows) {
		return false
	}
	per := len(a.places)
	for i := range a.rows {
		if len(a.rows[i].ops) != per*len(b.rows[i].ops) || !sameWork(pl.Operations[a.rows[i].ops[0]],
			pl.Operations[b.rows[i].ops[0]]) {
			return false
		}
	}
	return true
}

func (g *group) join(more group) {
	g.places = append(g.places, more.places...)
	for i := range g.rows {
		g.rows[i].ops = append(g.rows[i].ops, more.rows[i].ops...)
	}
}

// sameWork says whether two operations differ in nothing but the hole and the
// figures that stand for each hole by itself: limits, gauges, the force of a
// press.
func sameWork(a, b plan.Operation) bool {
	number := func(f *float64) float64 {
		if f == nil {
			return -1
		}
		return *f
	}
	return a.Bore != "" && b.Bore != "" && a.Setup == b.Setup && a.Kind == b.Kind && eachDo(a) == eachDo(b) &&
		sameTool(a, b) && number(a.RPM) == number(b.RPM) && a.DepthMM.String() == b.DepthMM.String() &&
		a.Lubricant == b.Lubricant && len(a.Shapes)+len(b.Shapes) == 0
}

// sameTool says whether one tool is used; the guide of a press is said of each
// hole.
func sameTool(a, b plan.Operation) bool {
	if a.Kind == route.KindPress && a.Halt > 0 && b.Halt > 0 {
		return pressTool(a) == pressTool(b)
	}
	return a.Tool == b.Tool
}

func pressTool(op plan.Operation) string {
	tool, _, _ := strings.Cut(op.Tool.String(), ", guide ")
	return tool
}

// alike says whether all operations of a row have the same limits and gauges.
func (r row) alike(pl *plan.Plan) bool {
	a := pl.Operations[r.ops[0]]
	limits := func(op plan.Operation) [2]string {
		if op.LimitsMM == nil {
			return [2]string{}
		}
		return [2]string{op.LimitsMM.Min.String(), op.LimitsMM.Max.String()}
	}
	for _, i := range r.ops[1:] {
		b := pl.Operations[i]
		if limits(a) != limits(b) || a.Go != b.Go || a.NoGo != b.NoGo || force(a) != force(b) || a.Tool != b.Tool {
			return false
		}
	}
	return true
}

// force is what is printed of the force of a press: whole newtons.
func force(op plan.Operation) [3]float64 {
	return [3]float64{math.Round(op.Halt), math.Round(op.Expect[0]), math.Round(op.Expect[1])}
}

// throughNear is said of a far hole, in its own words below the row.
const throughNear = " (through the near hole)"

// eachDo is what is done, with "each" for the hole.
func eachDo(op plan.Operation) string {
	return strings.ReplaceAll(each(op, op.Do.String()), throughNear, "")
}

// each puts "each" for the hole of an operation.
func each(op plan.Operation, s string) string {
	if op.Bore == "" {
		return s
	}
	return strings.ReplaceAll(s, op.Bore, "each")
}

// title is what a row does: "each" stands for holes of more than one shaft.
func (r row) title(pl *plan.Plan) string {
	op := pl.Operations[r.ops[0]]
	if len(r.ops) == 1 {
		return op.Do.String()
	}
	return r.named(pl, eachDo(op))
}

// named puts the names of the holes of a row in the place of "each", where they
// are of one shaft.
func (r row) named(pl *plan.Plan, s string) string {
	if len(r.ops) < 2 {
		return s
	}
	shaft := shaftOf(pl.Operations[r.ops[0]].Bore)
	var sides []string
	for _, i := range r.ops {
		bore := pl.Operations[i].Bore
		if shaftOf(bore) != shaft {
			return s
		}
		sides = append(sides, strings.TrimPrefix(bore, shaft+"."))
	}
	return strings.ReplaceAll(s, "each", shaft+", "+strings.Join(sides, " and "))
}

// cutsIn says whether a spindle turns in an operation.
func cutsIn(op plan.Operation) bool { return op.RPM != nil }
