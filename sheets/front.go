package sheets

import (
	"slices"
	"sort"
	"strings"

	"rebush/fits/dim"
	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/route"
	"rebush/sheets/draw"
)

// front is the first page of a sheet that is worked from: what to do and why,
// what can hurt, the cautions with their cures, the chassis as it is first
// clamped, and what to lay out.
func front(p *paper, pl *plan.Plan) {
	const what = "Setup sheet"
	p.section = what
	p.page()
	headed(p, pl, what)
	b := p.block()
	b.boxed(0.6, 2.5, func(in *block) {
		if pl.Verdict != nil && p.reason == "" { // else it speaks of the way that is advised
			in.para(pl.Verdict.Sentence.String(), draw.Bold, in.st.body)
		}
		in.para(chanceLine(pl.Chance), draw.Regular, in.st.body)
		in.para(why(p, pl), draw.Regular, in.st.body)
		in.para(countLine(pl), draw.Regular, in.st.body)
		in.y -= 1.5
	})
	p.add(b)
	lookForBox(p, pl.Safety.LookFor)
	pageOne(p, pl)
	cautions(p, pl)
	switch { // the card of the set-up has it too
	case len(pl.Holes) == 0:
	case p.how.tight():
		p.spare("first clamping", "front", func() *block { return firstClamping(p, pl, 15) })
	default:
		p.add(firstClamping(p, pl, 24))
	}
	layOut(p, pl)
	b = p.block()
	b.y = b.write(0, 0, b.Width, sameWord, draw.Regular, p.st.small)
	b.Reach(b.y)
	p.tight(b)
}

// why says in plain words what wear has done.
func why(p *paper, pl *plan.Plan) string {
	var worn, out []string
	for _, s := range pl.Survey {
		if !leftAlone(pl, s.Bore) && s.WearMM.Given() && s.WearMM.Float() > 0 {
			worn = append(worn, s.Bore+" "+wornWords(p.u, s))
		}
	}
	if len(worn) > 0 {
		out = append(out, "Why: worn are "+strings.Join(worn, ", ")+".")
	}
	for _, m := range pl.Mesh {
		if m.Words != "" {
			out = append(out, sentence(ended(m.Gear+": "+m.Words.String())))
		}
	}
	return strings.Join(out, " ")
}

// layOut lists what has to lie ready, each with a box: tools with the reach that
// they need, gauges, bushes, blocks, oil, scrap, indicator.
func layOut(p *paper, pl *plan.Plan) {
	lines := layOutLines(p, pl)
	if len(lines) == 0 {
		return
	}
	b := p.block()
	b.Anchor("lay out", 0)
	b.Bookmark("Lay out", 0, 0)
	b.para("Lay out", draw.Bold, p.st.body)
	b.y -= 1.5
	p.glue(b)
	tickLines(p, lines)
}

// tickLines are lines of a list with a box each: as many beside each other, four at
// the most, as each has room for.
func tickLines(p *paper, lines []string) {
	sort.SliceStable(lines, func(i, k int) bool { return abreastAt(p, lines[i]) > abreastAt(p, lines[k]) })
	for len(lines) > 0 {
		n := 4
		for n > 2 && abreastAt(p, lines[min(len(lines), n)-1]) < n {
			n--
		}
		b := p.block()
		w := (b.Width - 4*float64(n-1)) / float64(n)
		low := 0.0
		for k, s := range lines[:min(n, len(lines))] {
			low = max(low, smallTick(b, float64(k)*(w+4), 0, w, s))
		}
		lines = lines[min(n, len(lines)):]
		b.y = low
		b.Reach(low)
		p.tight(b)
	}
}

// abreastAt is how many lines like this one of a list have room beside each other.
func abreastAt(p *paper, s string) int {
	pt := p.st.aside() + 0.5
	wide := draw.Width(printable(p.bench.say(s)), draw.Regular, pt) + em(pt) + 2
	for n := 4; n > 2; n-- {
		if wide <= (p.width()-4*float64(n-1))/float64(n) {
			return n
		}
	}
	return 2
}

// smallTick is a line of a list with a small box.
func smallTick(b *block, x, y, w float64, s string) float64 {
	pt := b.st.aside() + 0.5
	t := em(pt) - 0.2
	b.Rect(x+0.3, y+0.2, t, t, 0.4)
	return b.write(x+t+2, y, w-t-2, s, draw.Regular, pt) + 0.3
}

// toBuy follows the name of what is not there yet: it is said where it is laid out
// and where it is bought, and not at each row again.
const toBuy = " (to buy)"

// layOutLines puts what is alike together: the pins, the bushes of a kind.
func layOutLines(p *paper, pl *plan.Plan) []string {
	var out []string
	at := map[string]int{}
	list := slices.Clone(pl.LayOut)
	for _, l := range pl.Buy { // what is bought for a rod or a jig
		name, _, _ := strings.Cut(l.What.String(), toBuy)
		bush := say.Words(name)
		if strings.HasPrefix(name, "slip bush ") && !slices.ContainsFunc(list, func(t say.Text) bool {
			return t.String() == name
		}) {
			list = append(list, bush)
		}
	}
	for _, t := range list {
		s := t.String()
		key, with, sep := "", "", ", "
		if k := strings.Index(s, " for "); k > 0 && strings.HasPrefix(s, "bush ") {
			key, with = s[:k], s[k+5:]
		} else if strings.HasPrefix(s, "pin ") {
			key, with = "pin", s[4:]
		} else if strings.HasPrefix(s, "slip bush ") {
			key, with = "slip bush", s[10:]
		}
		if i, ok := at[key]; ok && key != "" {
			out[i] += sep + with
			continue
		}
		if key != "" {
			at[key] = len(out)
		}
		if r := toolReach(pl, t); r > 0 {
			s += ", reach " + say.MM(r, 1).Rounded(dim.Up).Trim().In(p.u.said())
		}
		if slim(pl, t) {
			s += ", shank no thicker"
		}
		if key == "pin" {
			s = "pins " + with
		}
		out = append(out, s)
	}
	for _, s := range besides(pl) {
		if !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return out
}

// slim says whether a tool goes through a near hole with its shank: a drill or an
// end mill for a far plate.
func slim(pl *plan.Plan, tool say.Text) bool {
	return slices.ContainsFunc(pl.Operations, func(op plan.Operation) bool {
		return op.Tool == tool && op.Far && op.ToolMM.Given() && op.StopMM.Given() && op.Kind != route.KindSizeSeat
	})
}

// toolReach is the longest reach that a plan asks of a tool, 0 where none is
// known.
func toolReach(pl *plan.Plan, tool say.Text) float64 {
	most := 0.0
	for _, op := range pl.Operations {
		if op.Tool == tool {
			most = max(most, reachFor(pl, op))
		}
	}
	return most
}

// besides is what operations want beside tools, gauges and bushes.
func besides(pl *plan.Plan) []string {
	var out []string
	add := func(s string) {
		if s != "" && !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	indicator := false
	for _, op := range pl.Operations {
		if op.Kind == route.KindScrap {
			add("scrap of the metal and thickness of the plates")
		}
		add(op.Lubricant.String())
		if cutsIn(op) {
			add(op.Backing.String())
		}
		all := op.Do.String() + op.Note.String() + op.GaugeFirst.String()
		indicator = indicator || strings.Contains(all, "indicator") || strings.Contains(all, "reads true") ||
			strings.Contains(all, "trammed")
		for _, x := range [][2]string{{"then touch the ", "edge finder"}, {"stepped rod ", "stepped rods"},
			{"close-fitting rod through the better", "close-fitting rod for the better axle hole"}} {
			if op.Kind == route.KindSetUp && strings.Contains(all, x[0]) {
				add(x[1])
			}
		}
		if strings.Contains(op.Note.String(), "compound on the outside") || op.Kind == route.KindCure {
			add("retaining compound, degreaser")
		}
	}
	for _, s := range setups(pl) {
		if isClamping(s) && strings.Contains(s.Words.String(), "two blocks") {
			add("two blocks, clamps")
		}
	}
	if len(pl.Seats) > 0 {
		add("micrometer, caliper")
	}
	if indicator {
		add("dial indicator")
	}
	return out
}
