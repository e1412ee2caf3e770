// Package safety says each hazard where it acts: beside the operation, on page
// one of the sheet, on the form that is filled in at the bench, on the page for
// the owner. Words and sources stand in the table "hazards"; this room finds
// the rows that belong to a metal and an operation, and no others.
package safety

import (
	"sort"
	"strings"

	"rebush/fits/material"
)

// Line is one thing said of a hazard.
type Line struct {
	Hazard string `json:"hazard"` // "eyes", "magnesium fire"
	Words  string `json:"words"`
	Source string `json:"source"`
	Each   bool   `json:"-"` // said with every operation, not only the first of its set-up
}

// A Place is where a line is printed.
type Place string

// The places, as the table writes them.
const (
	Operation Place = "operation" // beside it
	PageOne   Place = "page one"  // of the sheet
	LookFor   Place = "look for"  // a box to tick before the first cut
	Before    Place = "before"    // with what is laid out
	Proving   Place = "proving"   // before ohms are read
	Form      Place = "form"      // filled in at the bench
	Owner     Place = "owner"     // the page with the verdict
)

// Fact is what must hold beside metal and kind of operation.
type Fact string

// The facts, as the table writes them.
const (
	Spindle          Fact = "spindle" // a machine turns tool or work
	FirstSetUp       Fact = "first set-up"
	FromBelow        Fact = "from below"      // by a hand under the chassis
	UnderThePress    Fact = "under the press" // a mandrel goes through a bush
	Compound         Fact = "compound"        // a retaining compound is used
	Leaded           Fact = "leaded"          // chips of a metal that holds lead
	Air              Fact = "air"             // blown dry
	InMagnesium      Fact = "in magnesium"    // the bush sits in a chassis of magnesium
	ConditionUnknown Fact = "condition unknown"
	ToBeCut          Fact = "to be cut" // the chassis, somewhere in the route
)

// Unsaid is a chassis of which nobody has said what it is.
const Unsaid material.Kind = "unsaid"

// Work is what is done to what: one operation, or, with no operation named,
// the job as a whole.
type Work struct {
	Operation string          // its kind, as the route has it
	Metals    []material.Kind // that are cut, pressed or handled
	Near      []material.Kind // beside them; they count for "any but"
	Facts     map[Fact]bool
}

// Lines is how many lines page one has room for, so that they are read.
const Lines = 5

// At lists what is said at a place of one operation, or of the job as a whole,
// in the order of the table.
func (b *Book) At(p Place, w Work) []Line {
	out := []Line{}
	for _, r := range b.rows {
		if r.at[p] && r.meets(w) {
			out = append(out, r.line)
		}
	}
	return out
}

// First lists the five lines of page one: of those that any work of a job
// calls for, the ones of the lowest ranks.
func (b *Book) First(job []Work) []Line {
	var hits []row
	for _, r := range b.rows {
		if !r.at[PageOne] {
			continue
		}
		for _, w := range job {
			if r.meets(w) && !covered(hits, r) {
				hits = append(hits, r)
				break
			}
		}
	}
	sort.SliceStable(hits, func(i, k int) bool { return hits[i].rank < hits[k].rank })
	out := []Line{}
	for i, r := range hits {
		if i == Lines {
			break
		}
		out = append(out, r.line)
	}
	return out
}

// covered says whether a row found before speaks of the hazard too: "clamping
// and chuck key" leaves nothing to say for "clamping".
func covered(hits []row, r row) bool {
	for _, h := range hits {
		if strings.HasPrefix(h.line.Hazard, r.line.Hazard) {
			return true
		}
	}
	return false
}
