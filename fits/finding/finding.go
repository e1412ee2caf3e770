// Package finding is what the plan has to say about itself: a stop, a caution
// or a note, with the place, the figure, the limit and what would mend it.
package finding

// Level ranks a finding.
type Level string

// The three levels. A stop means: do not machine. A caution: go on, but know
// this. A note is for information.
const (
	Stop    Level = "stop"
	Caution Level = "caution"
	Note    Level = "note"
)

// Finding is one thing said. Have and Want are absent where the matter has no
// figure. File, line and column point at the line of the job or shop that
// would be changed.
type Finding struct {
	Level  Level    `json:"level"`
	Rule   string   `json:"rule"`  // short and stable: "wall", "holding", "mesh window"
	Where  string   `json:"where"` // "front axle.left"
	Have   *float64 `json:"have"`
	Want   *float64 `json:"want"`
	Unit   string   `json:"unit"`
	Text   string   `json:"text"` // in the words of the bench
	Fix    string   `json:"fix"`  // what would change it
	File   string   `json:"file"`
	Line   int      `json:"line"`
	Column int      `json:"column"`
}

// List gathers findings in the order in which they were said.
type List []Finding

// Add appends one.
func (l *List) Add(f Finding) { *l = append(*l, f) }

// Say appends a finding without figures.
func (l *List) Say(level Level, rule, where, text, fix string) {
	l.Add(Finding{Level: level, Rule: rule, Where: where, Text: text, Fix: fix})
}

// Figure appends a finding that sets what is against what would be needed.
func (l *List) Figure(level Level, rule, where string, have, want float64, unit, text, fix string) {
	l.Add(Finding{Level: level, Rule: rule, Where: where, Have: &have, Want: &want, Unit: unit, Text: text, Fix: fix})
}

// Stops says whether any finding forbids machining.
func (l List) Stops() bool {
	for _, f := range l {
		if f.Level == Stop {
			return true
		}
	}
	return false
}

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
