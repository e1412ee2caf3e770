package table

import "strings"

// Standing is what a row rests on, told from the words of its source.
type Standing int

// The standings, best first. A row whose source names two of them has the
// weaker one: what was only remembered is not made better by a page that says
// where it would be found.
const (
	Published Standing = iota // read on a page that the source names
	WorkedOut                 // follows from such figures, or from plane geometry
	Practice                  // habit of the trade, or a judgement, without a source
	Memory                    // printed somewhere, but nobody saw the page
)

// String is the standing as people read it.
func (s Standing) String() string {
	return [...]string{"read on a page", "worked out", "practice or judgement", "from memory"}[s]
}

// Standing tells what the row rests on. Besides its source it reads the column
// basis, where a table has one. A row without a source of its own counts as
// practice.
func (r Row) Standing() Standing {
	source, basis := strings.ToLower(r.Source()), strings.ToLower(r.Get("basis"))
	has := func(words ...string) bool {
		for _, w := range words {
			if strings.Contains(source, w) {
				return true
			}
		}
		return false
	}
	switch {
	case has("from memory") || strings.HasPrefix(basis, "from_memory") || basis == "remembered":
		return Memory
	case source == "" || has("common practice", "(j)", "judgement", "common advice", "class by kind"):
		return Practice
	case strings.HasPrefix(basis, "derived") || has("own derivation", "geometry", "derived from", "arithmetic only"):
		return WorkedOut
	}
	return Published
}

// Count is how many rows of a table have each standing.
type Count [Memory + 1]int

// Standings counts the rows of the table.
func (t *Table) Standings() (c Count) {
	for _, r := range t.Rows {
		c[r.Standing()]++
	}
	return c
}
