package sheets

import (
	"slices"
	"sort"
	"strconv"
	"strings"

	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan"
	"rebush/sheets/draw"
)

// sources lists where the numbers came from, and the defaults that decided
// something.
func sources(p *paper, pl *plan.Plan) {
	keys, numbers, entries := ledgerOf(pl)
	if !pl.OK { // nothing to cut by
		keys = slices.DeleteFunc(keys, func(k string) bool { return strings.HasPrefix(k, "targets/") || strings.HasPrefix(k, "seats/") })
	}
	if len(keys)+len(pl.Rules)+len(pl.Tables) == 0 {
		return
	}
	p.open("Where the numbers come from", "sources")
	b := p.block()
	intro := "Each number has a short number of its own: `rebush why JOB NUMBER` follows it down to what was measured."
	if n := len(numbers); n > len(keys) {
		intro += " Here are " + strconv.Itoa(len(keys)) + " of " + strconv.Itoa(n) + ": those that decide what is cut and how it will run."
	}
	b.para(intro, draw.Regular, p.st.small)
	p.glue(b)
	last := ""
	for _, g := range grouped(keys, entries) {
		b := p.block()
		how := published(p.u, howOf(entries[g[0]]))
		words := how
		if how == last {
			words = "As above."
		}
		last = how
		sourceBlock(b, g, words, numbers, entries)
		p.tight(b)
	}
	if len(pl.Tables) > 0 {
		b := p.block()
		b.para("Tables of the shop's own, in the place of the built-in ones: "+strings.Join(pl.Tables, ", ")+".", draw.Regular, p.st.body)
		p.add(b)
	}
	if len(pl.Rules) == 0 {
		return
	}
	p.follow("Defaults that decided something", "rules")
	if p.u == "in" {
		b := p.block()
		b.para("A size in mm here is the published source's own, with the inch beside it.", draw.Regular, p.st.small)
		p.glue(b)
	}
	for _, r := range pl.Rules {
		b := p.block()
		s := r.What
		if s == "" {
			s = r.Name
		}
		s = sentence(published(p.u, s)) + ": " + r.Value.In(p.u.said())
		if r.Source != "" {
			s += " (" + published(p.u, sourceWords(r.Source)) + ")"
		}
		s += ". Rule " + r.Name + "."
		b.para(s, draw.Regular, p.st.small)
		b.Board.Height = b.y - 1.5
		p.tight(b)
	}
}

// ledgerOf chooses the entries that paper explains.
func ledgerOf(pl *plan.Plan) (keys []string, numbers map[string]int, entries map[string]ledger.Entry) {
	numbers = map[string]int{}
	entries = pl.Ledger
	var all []string
	if pl.Book != nil {
		all = pl.Book.Keys()
		if entries == nil {
			entries = pl.Book.Entries()
		}
	} else {
		for k := range entries {
			all = append(all, k)
		}
		sort.Strings(all)
	}
	for i, k := range all {
		numbers[k] = i + 1
	}
	for _, k := range all {
		if !entries[k].Leaf && rankOf(k) < len(decides) {
			keys = append(keys, k)
		}
	}
	sort.SliceStable(keys, func(i, k int) bool { return rankOf(keys[i]) < rankOf(keys[k]) })
	return keys, numbers, entries
}

// decides lists the results that the hands follow, or that say how the work
// will run, in the order in which paper explains them: part of the plan and
// name of the figure.
var decides = [][2]string{
	{"targets", "target_mm"}, {"survey", "centre_mm"}, {"survey", "centre_u_mm"}, {"survey", "wear_mm"},
	{"mesh", "window_mm"}, {"mesh", "found_backlash_mm"}, {"mesh", "target_backlash_mm"},
	{"seats", "seat_mm"}, {"seats", "cleanup_mm"}, {"seats", "metal_left_mm"}, {"seats", "interference_um"},
	{"seats", "force_n"}, {"seats", "hoop_mpa"}, {"seats", "closure_um"}, {"seats", "bore_mm"}, {"seats", "running_um"},
	{"shafts", "side_play_mm"},
}

// rankOf is the place of a key in decides, its length where it is not there.
func rankOf(key string) int {
	parts := strings.Split(key, "/")
	if len(parts) < 3 {
		return len(decides)
	}
	for i, d := range decides {
		if parts[0] == d[0] && parts[2] == d[1] {
			return i
		}
	}
	return len(decides)
}

// grouped puts together what one formula makes at several places.
func grouped(keys []string, entries map[string]ledger.Entry) [][]string {
	var out [][]string
	at := map[string]int{}
	for _, k := range keys {
		e := entries[k]
		id := e.What + "\x00" + e.Formula + "\x00" + e.Source
		i, ok := at[id]
		if !ok {
			i = len(out)
			at[id] = i
			out = append(out, nil)
		}
		out[i] = append(out[i], k)
	}
	return out
}

// sourceBlock explains one formula and lists what it made, each figure after
// its short number.
func sourceBlock(b *block, keys []string, how string, numbers map[string]int, entries map[string]ledger.Entry) {
	pt := b.st.small
	e := entries[keys[0]]
	head := sentence(e.What)
	if u := unitOf(b.u, e); u != "" && u != "-" {
		head += ", " + strings.Replace(u, "um", "µm", 1)
	}
	hw := b.Width * 0.42
	low := b.write(0, 0, hw-4, head, draw.Bold, pt)
	var each []string
	for _, k := range keys {
		place := k
		if parts := strings.Split(k, "/"); len(parts) > 1 {
			place = parts[1]
		}
		each = append(each, strconv.Itoa(numbers[k])+"  "+place+" "+valueOf(b.u, entries[k]))
	}
	y := 0.0
	half := (b.Width - hw - 4) / 2
	for i := 0; i < len(each); i += 2 {
		pair := each[i:min(i+2, len(each))]
		wide := false
		for _, t := range pair {
			wide = wide || draw.Width(printable(t), draw.Regular, pt) > half
		}
		next := y
		for k, t := range pair {
			if wide {
				next = b.write(hw, next, b.Width-hw, t, draw.Regular, pt) + 0.5
				continue
			}
			next = max(next, b.write(hw+float64(k)*(half+4), y, half, t, draw.Regular, pt)+0.5)
		}
		y = next
	}
	b.y = b.write(0, max(low+0.5, y), b.Width, how, draw.Regular, pt) + 1.4
	b.Reach(b.y)
}

// howOf is the formula of an entry and where it is from.
func howOf(e ledger.Entry) string {
	s := e.Formula
	if e.Source != "" {
		s = strings.TrimSuffix(s, ".") + ". " + sentence(sourceWords(e.Source))
	}
	return sentence(s)
}

// sourceWords spells out the mark of a judgement.
func sourceWords(s string) string { return strings.ReplaceAll(s, " (j)", ", a judgement") }

// valueOf prints a figure: a length a place finer than the tables have it, so
// that it can be followed; others short.
func valueOf(u units, e ledger.Entry) string {
	switch {
	case e.Unit == "mm" && u == "in":
		return strconv.FormatFloat(e.Value/25.4, 'f', 5, 64)
	case e.Unit == "mm":
		return strconv.FormatFloat(e.Value, 'f', 4, 64)
	case e.Unit == "um" && u == "in":
		return number(e.Value / 25.4)
	case e.Unit == "N" && u == "in":
		return say.Num(e.Value, 1, "N").Number(u.said())
	}
	return number(e.Value)
}

// unitOf is the unit that valueOf prints in.
func unitOf(u units, e ledger.Entry) string {
	if u == "in" {
		switch e.Unit {
		case "mm":
			return "in"
		case "um":
			return "thou"
		case "N":
			return "lb"
		}
	}
	return e.Unit
}
