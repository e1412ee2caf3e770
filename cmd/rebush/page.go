package main

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// page is an answer for reading: pairs of a name and a figure, the figures
// standing below each other, and tables.
type page struct {
	w     io.Writer
	pairs [][2]string
}

// figures is pair for figures: where one of them is absent it says nothing.
func (p *page) figures(name, format string, f ...*float64) {
	a := make([]any, len(f))
	for i := range f {
		if f[i] == nil {
			return
		}
		a[i] = *f[i]
	}
	p.pair(name, "%s", fmt.Sprintf(format, a...))
}

// pair holds a line back until the block is full. An empty value says nothing.
func (p *page) pair(name, format string, a ...any) {
	if s := fmt.Sprintf(format, a...); s != "" {
		p.pairs = append(p.pairs, [2]string{name, s})
	}
}

// widest is how wide lines are where no screen is narrower.
const widest = 98

// room is how many columns there are for a text of so many at most.
func (p *page) room(most int) int {
	if s, ok := p.w.(interface{ columns() int }); ok && s.columns() > 0 {
		return min(most, s.columns())
	}
	return most
}

// flush prints the block. On a screen too narrow for two columns the figures
// stand under their names.
func (p *page) flush() {
	wide := 0
	for _, kv := range p.pairs {
		wide = max(wide, utf8.RuneCountInString(kv[0]))
	}
	room := p.room(widest) - wide - 2
	for _, kv := range p.pairs {
		if room < 24 && room < widest-wide-2 {
			fmt.Fprintln(p.w, strings.TrimRight(kv[0], " "))
			p.prose("      ", widest, kv[1])
			continue
		}
		for i, line := range wrap(kv[1], room) {
			name := kv[0]
			if i > 0 {
				name = ""
			}
			fmt.Fprintf(p.w, "%s  %s\n", padded(name, wide), line)
		}
	}
	p.pairs = nil
}

// line prints a line of its own.
func (p *page) line(format string, a ...any) {
	p.flush()
	fmt.Fprintf(p.w, format+"\n", a...)
}

// prose prints a text in lines of so many columns at most, each behind an
// indent; an empty text is no line.
func (p *page) prose(indent string, most int, text string) {
	for _, l := range wrap(text, p.room(most)-utf8.RuneCountInString(indent)) {
		if l != "" {
			fmt.Fprintf(p.w, "%s%s\n", indent, l)
		}
	}
}

// table prints rows under heads, each column as wide as it needs.
func (p *page) table(heads []string, rows [][]string) {
	p.flush()
	wide := make([]int, len(heads))
	for _, r := range append([][]string{heads}, rows...) {
		for i, c := range r {
			wide[i] = max(wide[i], utf8.RuneCountInString(c))
		}
	}
	total := -2
	for _, n := range wide {
		total += n + 2
	}
	if total > p.room(total) {
		p.cards(heads, rows)
		return
	}
	for _, r := range append([][]string{heads}, rows...) {
		var b strings.Builder
		for i, c := range r {
			if i > 0 {
				b.WriteString("  ")
			}
			b.WriteString(padded(c, wide[i]))
		}
		fmt.Fprintln(p.w, strings.TrimRight(b.String(), " "))
	}
}

// cards prints the rows of a table that is wider than the screen one under the
// other.
func (p *page) cards(heads []string, rows [][]string) {
	for _, r := range rows {
		fmt.Fprintln(p.w, strings.Trim(strings.TrimSpace(heads[0])+": "+strings.TrimSpace(r[0]), ": "))
		for i, c := range r[1:] {
			if c != "" && c != "-" {
				fmt.Fprintln(p.w, "  "+strings.TrimPrefix(strings.TrimSpace(heads[i+1])+": ", ": ")+c)
			}
		}
	}
}

func padded(s string, wide int) string {
	return s + strings.Repeat(" ", max(0, wide-utf8.RuneCountInString(s)))
}

// wrap breaks text at spaces; words longer than a line stay whole.
func wrap(s string, wide int) []string {
	wide = max(wide, 24)
	var out []string
	for _, par := range strings.Split(s, "\n") {
		line := ""
		for _, w := range strings.Fields(par) {
			switch {
			case line == "":
				line = w
			case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(w) <= wide:
				line += " " + w
			default:
				out = append(out, line)
				line = w
			}
		}
		out = append(out, line)
	}
	return out
}
