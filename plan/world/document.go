package world

import (
	"slices"
	"strconv"
	"strings"
)

// A ticks is a length in steps of 1e-8 mm, fine enough that a ten-millionth of
// an inch and every fraction of the bench is a whole number of them.
type ticks int64

const (
	perMM   ticks = 100_000_000
	perInch ticks = 2_540_000_000
)

func (t ticks) mm() float64 { return float64(t) / float64(perMM) }

// kind is what a value of a file is.
type kind int

const (
	aText kind = iota
	aNumber
	aLength
	anAngle // degrees anticlockwise from +x
	aList
	aRecord
)

// axis is what a length is measured along, for what is seen from another side.
type axis int

const (
	across axis = iota // a size, the same from everywhere
	along              // a place along the truck
	upward             // a place up from the datum edge
)

// node is a value of a job or shop file before it is written down: it can be
// written in either unit, mirrored, or with its lists in another order.
type node struct {
	kind   kind
	text   string  // a text; a length as somebody typed it, "" for a plain figure
	number float64 // a number or an angle
	length ticks
	axis   axis
	free   bool // the order of this list decides nothing
	keys   []string
	items  []*node
	block  bool // written line by line, however short
	stamp  bool // a length as it is stamped on a tool: it keeps its unit
}

func text(s string) *node       { return &node{kind: aText, text: s} }
func number(f float64) *node    { return &node{kind: aNumber, number: f} }
func size(t ticks) *node        { return &node{kind: aLength, length: t} }
func placeX(t ticks) *node      { return &node{kind: aLength, length: t, axis: along} }
func placeY(t ticks) *node      { return &node{kind: aLength, length: t, axis: upward} }
func angle(deg float64) *node   { return &node{kind: anAngle, number: deg} }
func record() *node             { return &node{kind: aRecord} }
func list(items ...*node) *node { return &node{kind: aList, items: items} }

// anyOrder is a list whose order decides nothing.
func anyOrder(items ...*node) *node { return &node{kind: aList, items: items, free: true} }

// typed is a length as somebody typed it, with its unit or name.
func typed(s string, t ticks) *node { return &node{kind: aLength, text: s, length: t} }

// tool is a length that names a tool.
func tool(t ticks) *node { return &node{kind: aLength, length: t, stamp: true} }

func yesNo(b bool) *node {
	if b {
		return text("yes")
	}
	return text("no")
}

// set adds a key, or puts another value under one that is there.
func (n *node) set(key string, v *node) *node {
	if i := slices.Index(n.keys, key); i >= 0 {
		n.items[i] = v
		return n
	}
	n.keys, n.items = append(n.keys, key), append(n.items, v)
	return n
}

// get is the value of a key, nil where there is none.
func (n *node) get(key string) *node {
	if n == nil || n.kind != aRecord {
		return nil
	}
	if i := slices.Index(n.keys, key); i >= 0 {
		return n.items[i]
	}
	return nil
}

// each visits a value and all that it holds.
func (n *node) each(see func(*node)) {
	see(n)
	for _, item := range n.items {
		item.each(see)
	}
}

// clone copies a value with all that it holds.
func (n *node) clone() *node {
	if n == nil {
		return nil
	}
	c := *n
	c.keys = slices.Clone(n.keys)
	c.items = make([]*node, len(n.items))
	for i, item := range n.items {
		c.items[i] = item.clone()
	}
	return &c
}

// width is how long a value may be and still stand on one line.
const width = 92

// write prints a value as YAML in a unit, below an indent.
func (n *node) write(b *strings.Builder, unit, indent string) {
	for i, item := range n.items {
		head := indent + "- "
		if n.kind == aRecord {
			head = indent + n.keys[i] + ":"
		}
		one := item.line(unit)
		if len(item.items) == 0 || !item.block && len(head)+1+len(one) <= width {
			if n.kind == aRecord {
				head += " "
			}
			b.WriteString(head + one + "\n")
			continue
		}
		if n.kind == aRecord {
			b.WriteString(head + "\n")
			item.write(b, unit, indent+"  ")
			continue
		}
		var inner strings.Builder
		item.write(&inner, unit, indent+"  ")
		b.WriteString(head + strings.TrimPrefix(inner.String(), indent+"  "))
	}
}

// line prints a value on one line.
func (n *node) line(unit string) string {
	switch n.kind {
	case aNumber, anAngle:
		return strconv.FormatFloat(n.number, 'f', -1, 64)
	case aLength:
		return n.written(unit)
	case aText:
		if strings.ContainsAny(n.text, ",#:{}[]\"") {
			return strconv.Quote(n.text)
		}
		return n.text
	}
	parts := make([]string, len(n.items))
	for i, item := range n.items {
		parts[i] = item.line(unit)
		if n.kind == aRecord {
			parts[i] = n.keys[i] + ": " + parts[i]
		}
	}
	if n.kind == aRecord {
		return "{" + strings.Join(parts, ", ") + "}"
	}
	return "[" + strings.Join(parts, ", ") + "]"
}

// written prints a length: as it was typed, or bare in the unit of the file
// where that is exact, else in mm with its unit.
func (n *node) written(unit string) string {
	switch {
	case strings.ContainsAny(n.text, "#"):
		return strconv.Quote(n.text)
	case n.text != "":
		return n.text
	case unit == "mm":
		return decimal(n.length, 8)
	case n.length%254 == 0:
		return decimal(n.length/254, 7)
	}
	return decimal(n.length, 8) + " mm"
}

// decimal prints a whole number of 10^-places without trailing zeros.
func decimal(n ticks, places int) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	s := strconv.FormatInt(int64(n), 10)
	if len(s) <= places {
		s = strings.Repeat("0", places-len(s)+1) + s
	}
	cut := len(s) - places
	frac := strings.TrimRight(s[cut:], "0")
	if frac == "" {
		return sign + s[:cut]
	}
	return sign + s[:cut] + "." + frac
}
