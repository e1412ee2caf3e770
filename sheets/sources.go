package sheets

import (
	"sort"
	"strconv"
	"strings"

	"rebush/fits/ledger"
	"rebush/plan"
	"rebush/sheets/draw"
)

// mostSources is how many numbers paper explains; `why` explains all.
const mostSources = 60

// sources lists where the numbers came from, and the defaults that decided
// something.
func sources(p *paper, pl *plan.Plan) {
	keys, numbers, entries := ledgerOf(pl)
	if len(keys)+len(pl.Rules)+len(pl.Tables) == 0 {
		return
	}
	p.follow("Where the numbers come from", "sources")
	b := p.block()
	intro := "Each number has a short number of its own: `rebush why JOB NUMBER` follows it down to what was measured."
	if n := len(numbers); n > len(keys) {
		intro += " Here are " + strconv.Itoa(len(keys)) + " of " + strconv.Itoa(n) + ": those that decide what is cut."
	}
	b.para(intro, draw.Regular, p.st.small)
	p.glue(b)
	for _, k := range keys {
		b := p.block()
		sourceLine(b, numbers[k], k, entries[k])
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
	for _, r := range pl.Rules {
		b := p.block()
		s := r.What
		if s == "" {
			s = r.Name
		}
		s += ": " + r.Value
		if r.Source != "" {
			s += " (" + r.Source + ")"
		}
		s += ". Rule " + r.Name + "."
		b.para(s, draw.Regular, p.st.small)
		b.Board.Height = b.y - 1
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
		if !entries[k].Leaf && decides(k) && len(keys) < mostSources {
			keys = append(keys, k)
		}
	}
	return keys, numbers, entries
}

// decides says whether a number is one that the hands follow.
func decides(key string) bool {
	for _, part := range []string{"targets/", "seats/", "mesh/", "chance/", "survey/"} {
		if strings.HasPrefix(key, part) {
			return true
		}
	}
	return false
}

func sourceLine(b *block, n int, key string, e ledger.Entry) {
	pt := b.st.small
	nw := draw.Width("0000", draw.Bold, pt) + 2
	b.write(0, 0, nw, strconv.Itoa(n), draw.Bold, pt)
	head := key + " = " + valueOf(e)
	if e.Unit != "" {
		head += " " + e.Unit
	}
	y := b.write(nw, 0, b.Width-nw, head, draw.Bold, pt) + 0.6
	s := e.What
	if e.Formula != "" {
		s += ": " + e.Formula
	}
	if e.Source != "" {
		s += ". " + e.Source
	}
	y = b.write(nw, y, b.Width-nw, s, draw.Regular, pt)
	b.y = y + 0.8
	b.Reach(b.y)
}

// valueOf prints a figure: lengths in mm to a ten-thousandth, others short.
func valueOf(e ledger.Entry) string {
	if e.Unit == "mm" {
		return strconv.FormatFloat(e.Value, 'f', 4, 64)
	}
	return number(e.Value)
}
