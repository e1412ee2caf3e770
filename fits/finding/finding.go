// Package finding is what the plan has to say about itself: a stop, a caution
// or a note, with the place, the figure, the limit and what would mend it.
package finding

import (
	"encoding/json"
	"strings"

	"rebush/fits/say"
)

// Level ranks a finding.
type Level string

// The three levels. A stop means: do not machine. A caution: go on, but know
// this. A note is for information.
const (
	Stop    Level = "stop"
	Caution Level = "caution"
	Note    Level = "note"
)

// Rule is what a finding is about, a constant of the room that raises it: the
// stage of the plan that it belongs to, and its short and stable name, with a
// stroke between: "seat/no seat". JSON and paper have the name alone.
type Rule string

// Stage is the part of the plan that the rule belongs to.
func (r Rule) Stage() string {
	stage, _, ok := strings.Cut(string(r), "/")
	if !ok {
		return ""
	}
	return stage
}

// Name is the rule as it is printed.
func (r Rule) Name() string {
	if _, name, ok := strings.Cut(string(r), "/"); ok {
		return name
	}
	return string(r)
}

// String is the name.
func (r Rule) String() string { return r.Name() }

// MarshalJSON prints the name.
func (r Rule) MarshalJSON() ([]byte, error) { return json.Marshal(r.Name()) }

// Place is what a finding is about: in words, "front axle.left", and the line
// of the job or the shop that would be changed; Line is 0 where there is none.
type Place struct {
	Where        string
	File         string
	Line, Column int
}

// Finding is one thing said. Have and Want are absent where the matter has no
// figure.
type Finding struct {
	Level  Level    `json:"level"`
	Rule   Rule     `json:"rule"`
	Where  string   `json:"where"` // "front axle.left"
	Have   *float64 `json:"have"`
	Want   *float64 `json:"want"`
	Unit   string   `json:"unit"`
	Text   say.Text `json:"text"`  // in the words of the bench
	Fix    say.Text `json:"fix"`   // what would change it
	Tried  []Tried  `json:"tried"` // changes with which the job was planned again
	File   string   `json:"file"`
	Line   int      `json:"line"`
	Column int      `json:"column"`
}

// Tried is a change with which the whole job was planned again, and what came
// of it.
type Tried struct {
	Change         say.Text `json:"change"`
	Kind           string   `json:"kind"` // buy | make | mend | rule | measure | send out
	Cost           *float64 `json:"cost"` // of what is bought or sent out; nil where no price is known
	OK             *bool    `json:"ok"`   // the job may be machined with it; nil where a figure is asked that nobody can expect
	FirstTimeRight *float64 `json:"first_time_right"`
}

// List gathers findings in the order in which they were said.
type List []Finding

// Raise says one thing about a place. Against sets its figure beside it.
func (l *List) Raise(level Level, rule Rule, at Place, text, fix say.Text) *Finding {
	*l = append(*l, Finding{Level: level, Rule: rule, Where: at.Where, Text: text, Fix: fix, File: at.File, Line: at.Line, Column: at.Column})
	return &(*l)[len(*l)-1]
}

// Against sets what is against what would be needed, in a unit.
func (f *Finding) Against(have, want float64, unit string) {
	f.Have, f.Want, f.Unit = &have, &want, unit
}

// Add appends one that was raised elsewhere.
func (l *List) Add(f Finding) { *l = append(*l, f) }

// Stops says whether any finding forbids machining.
func (l List) Stops() bool { return l.Count(Stop) > 0 }

// Count counts the findings of one level.
func (l List) Count(level Level) int {
	n := 0
	for _, f := range l {
		if f.Level == level {
			n++
		}
	}
	return n
}
