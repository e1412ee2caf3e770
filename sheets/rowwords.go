package sheets

import (
	"slices"
	"strconv"
	"strings"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/route"
	"rebush/plan/safety"
)

// said is one thing said of an operation, in which "each" stands for its hole.
type said struct {
	text string
	bold bool
}

// held is what a card says once for all its rows.
type held struct {
	text  map[string]bool   // what is said
	side  map[bool][]string // the same of all cuts in the near plate, and in the far one
	lines []string          // in the order in which it is said
	some  []some            // the same of several rows only
	hurts []safety.Line     // what can hurt in most rows
	from  int               // numbers of the first and last row with a spindle
	to    int
	at    string // numbers of the operations, where they do not follow each other
}

// some is what is said of several rows of a card, with the numbers of their
// operations.
type some struct {
	at    string
	lines []string
}

// severalRows is from how many rows on the same words stand once above them, with
// the numbers (j).
const severalRows = 3

func (h held) has(s string) bool { return h.text[s] }

// parts are the things that a text says, one after the other.
func parts(s string) []string {
	var out []string
	for _, x := range strings.Split(s, "; ") {
		if x = strings.TrimSpace(x); x != "" {
			out = append(out, x)
		}
	}
	return out
}

// backed begins what lies behind the metal that is cut.
const backed = "backing: "

// reasonOnly begins what only explains a figure: `why` has it.
const reasonOnly = "held to: "

// stopSet begins where the stop of a guided tool is set, which stands with the tool.
const stopSet = "stop set "

// saidOf lists what a row says of one operation beside its figures.
func saidOf(p *paper, pl *plan.Plan, c card, i int) []said {
	op := pl.Operations[i]
	var out []said
	add := func(s string, bold bool) {
		for _, x := range parts(each(op, s)) {
			if strings.HasPrefix(x, "not given, taken as") {
				x = "reach " + x
			}
			if strings.HasPrefix(x, reasonOnly) || strings.HasPrefix(x, "needs a reach of ") ||
				strings.HasPrefix(x, stopSet) || op.Halt > 0 &&
				(strings.HasPrefix(x, "expect ") || strings.HasPrefix(x, "HALT at ")) {
				continue // these stand large, or with the tool
			}
			out = append(out, said{x, bold || strings.Contains(x, "HALT") || strings.Contains(x, "never ")})
		}
	}
	if op.Kind == route.KindSetUp {
		add(op.Holding.String(), false)
	}
	if r := reachFor(pl, op); r > 0 && op.Far {
		add(say.F("tip %v below the upper face, no thicker shank above it", say.MM(r, 1)).In(p.u.said()), false)
	}
	if cutsIn(op) && op.DepthMM.Given() && !op.Far {
		from := "depth from the upper face"
		if op.DialMM == nil && op.AtMM != nil {
			from = "stop from the face of the jig, depth from the upper face of the plate under it"
		}
		add(from+", a chamfer's from where it touches", false)
	}
	if op.Kind == route.KindGauge && fromBelow(pl, op) && op.NoGo != "" {
		add("gauged from below: what must not go in does not pass the near seat", false)
	}
	for _, f := range strings.SplitN(feedOf(p.u, op), ": ", 2) { // how, then how much
		add(f, false)
	}
	if op.Far && strings.Contains(op.Do.String(), throughNear) {
		add("through the near hole", false)
	}
	if op.ThrustN != nil && *op.ThrustN >= 10 {
		add(say.F("thrust about %v", say.Force(*op.ThrustN, "N")).In(p.u.said()), false)
	}
	if op.Backing != "" {
		add(backed+op.Backing.String(), false)
	}
	if op.Lubricant != "" {
		add("oil: "+op.Lubricant.String(), false)
	}
	if op.Kind != route.KindSetUp && op.Holding != "" && op.Holding != c.set.Words &&
		!strings.HasPrefix(op.Holding.String(), "as set up in ") {
		add(op.Holding.String(), false)
	}
	if op.Gauge != "" && op.Gauge != "pins" {
		add("gauge: "+op.Gauge.String(), false)
	}
	add(op.Note.String(), false)
	return out
}

// stack is the chassis as an operation meets it: the near plate, the gap, the
// far plate, in mm.
func stack(pl *plan.Plan, op plan.Operation) (near, gap, far float64, ok bool) {
	set, _ := setupNamed(pl, op.Setup)
	return plates(pl, set)
}

func plates(pl *plan.Plan, set plan.Setup) (near, gap, far float64, ok bool) {
	if pl.Job == nil {
		return 0, 0, 0, false
	}
	c := pl.Job.Chassis
	near, far = c.Thickness.Left.Float(), c.Thickness.Right.Float()
	if set.Plate == "right" {
		near, far = far, near
	}
	gap = c.Width.Float() - near - far
	return near, gap, far, near > 0 && far > 0 && gap > 0
}

// heldOf finds what nearly all rows of a clamping with a spindle say alike: it
// stands once above them.
func heldOf(p *paper, pl *plan.Plan, c card) held {
	h := held{text: map[string]bool{}, side: map[bool][]string{}}
	if !c.clamped {
		return h
	}
	n := 0
	sides := map[bool]int{} // cuts in the near and in the far plate
	of := map[string]map[bool]int{}
	rows := map[string][]int{} // the rows that say it
	numbers := map[string][]string{}
	times, hurts := map[string]int{}, map[string]int{}
	var order []string
	var lines []safety.Line
	for _, g := range c.groups {
		for _, r := range g.rows {
			for _, i := range r.ops {
				op := pl.Operations[i]
				if !cutsIn(op) {
					continue
				}
				n++
				if h.from == 0 {
					h.from = op.Number
				}
				h.to = op.Number
				sides[op.Far]++
				for _, s := range saidOf(p, pl, c, i) {
					if times[s.text]++; times[s.text] == 1 {
						order, of[s.text] = append(order, s.text), map[bool]int{}
					}
					of[s.text][op.Far]++
					numbers[s.text] = append(numbers[s.text], strconv.Itoa(op.Number))
					if l := rows[s.text]; len(l) == 0 || l[len(l)-1] != r.ops[0] {
						rows[s.text] = append(l, r.ops[0])
					}
				}
				for _, l := range op.Safety {
					if hurts[l.Words]++; hurts[l.Words] == 1 {
						lines = append(lines, l)
					}
				}
			}
		}
	}
	for _, s := range order {
		if n > 1 && times[s] == n && !strings.HasPrefix(s, "never") {
			h.text[s] = true
			h.lines = append(h.lines, s)
		}
	}
	for _, far := range []bool{false, true} {
		for _, s := range order {
			if sides[far] > 1 && sides[!far] > 0 && times[s] == sides[far] && of[s][far] == sides[far] {
				h.text[s] = true
				h.side[far] = append(h.side[far], s)
			}
		}
	}
	for _, s := range order {
		if !h.text[s] && len(rows[s]) >= severalRows && !strings.HasPrefix(s, "never") {
			h.text[s] = true
			at := strings.Join(numbers[s], ", ")
			k := slices.IndexFunc(h.some, func(x some) bool { return x.at == at })
			if k < 0 {
				k, h.some = len(h.some), append(h.some, some{at: at})
			}
			h.some[k].lines = append(h.some[k].lines, s)
		}
	}
	for _, l := range lines {
		if n > 1 && 2*hurts[l.Words] > n && !l.Each {
			h.hurts = append(h.hurts, l)
		}
	}
	return h
}

// rowText is what stands below a row: what is said of all its holes, then what
// of one of them only, each behind its name.
func rowText(p *paper, pl *plan.Plan, c card, r row, h held) (lines []string, bold []string) {
	all := make([][]said, len(r.ops))
	for k, i := range r.ops {
		all[k] = saidOf(p, pl, c, i)
	}
	common := func(s said) bool {
		for _, list := range all {
			if !slices.Contains(list, s) {
				return false
			}
		}
		return true
	}
	put := func(s said, who string) {
		text := sentence(s.text)
		if who != "" {
			text = sentence(who) + ": " + s.text
		}
		if s.bold {
			bold = append(bold, text)
		} else {
			lines = append(lines, text)
		}
	}
	seen := map[string]bool{}
	for _, s := range all[0] {
		if common(s) && !h.has(s.text) && !seen[s.text] {
			seen[s.text] = true
			put(nameIt(pl, r, s), "")
		}
	}
	for k, list := range all {
		var own []string
		strong := false
		for _, s := range list {
			if common(s) || h.has(s.text) {
				continue
			}
			own = append(own, nameIt(pl, r, s).text)
			strong = strong || s.bold
		}
		if len(own) > 0 {
			put(said{strings.Join(own, "; "), strong}, holeIn(pl, r, k))
		}
	}
	return lines, bold
}

// nameIt puts the hole back where a row has but one.
func nameIt(pl *plan.Plan, r row, s said) said {
	if op := pl.Operations[r.ops[0]]; len(r.ops) == 1 && op.Bore != "" {
		s.text = unEach(op, s.text)
	}
	return s
}

// unEach is the text of one operation as the plan has it.
func unEach(op plan.Operation, s string) string {
	for _, whole := range []string{op.Note.String(), op.Gauge.String(), op.Backing.String(), op.Holding.String(),
		op.GaugeFirst.String()} {
		for _, x := range parts(whole) {
			if each(op, x) == s {
				return x
			}
		}
	}
	return s
}

// holeIn names the hole of operation k of a row: by its side where all are of
// one shaft, by its shaft where all are in one plate.
func holeIn(pl *plan.Plan, r row, k int) string {
	bore := pl.Operations[r.ops[k]].Bore
	shafts, sides := map[string]bool{}, map[string]bool{}
	for _, i := range r.ops {
		b := pl.Operations[i].Bore
		shafts[shaftOf(b)] = true
		sides[strings.TrimPrefix(b, shaftOf(b)+".")] = true
	}
	side := strings.TrimPrefix(bore, shaftOf(bore)+".")
	switch {
	case len(shafts) == 1 && len(r.ops) > 1:
		return side
	case len(sides) == 1 && len(r.ops) > 1:
		return shaftOf(bore)
	case side == bore:
		return bore
	}
	return shaftOf(bore) + ", " + side
}

// rowSafety is what can hurt in a row and is not said above all rows.
func rowSafety(pl *plan.Plan, r row, h held) []string {
	var out []string
	for _, i := range r.ops {
		fresh, _ := pl.FreshSafety(i)
		for _, l := range fresh {
			said := slices.ContainsFunc(h.hurts, func(x safety.Line) bool { return x.Words == l.Words })
			if s := sentence(l.Words); !said && !slices.Contains(out, s) {
				out = append(out, s)
			}
		}
	}
	return out
}

// fromBelow says whether a hole lies in the lower plate of its clamping.
func fromBelow(pl *plan.Plan, op plan.Operation) bool {
	set, ok := setupNamed(pl, op.Setup)
	_, side, cut := strings.Cut(op.Bore, shaftOf(op.Bore)+".")
	return ok && cut && set.Plate != "" && side != string(set.Plate)
}
