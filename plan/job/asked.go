package job

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"rebush/fits/dim"
)

// asBefore is the reason of a question that goes on from the one before it.
const asBefore = "As before."

// Measuring is what to measure and why, by the numbers of the form, in lines of
// at most wide letters.
func Measuring(wide int) []string {
	var out []string
	put := func(indent, s string) {
		line := indent
		for _, w := range strings.Fields(s) {
			if len([]rune(line))+len([]rune(w))+1 > wide && strings.TrimSpace(line) != "" {
				out = append(out, line)
				line = strings.Repeat(" ", len(indent))
			}
			if strings.TrimSpace(line) != "" {
				line += " "
			}
			line += w
		}
		out = append(out, line)
	}
	groups := append([]Group{{"", "First: these lead to a verdict"}}, Groups()...)
	for _, g := range groups {
		out = append(out, "", strings.ToUpper(g.Title[:1])+g.Title[1:])
		for _, q := range byNumber() {
			if q.Group != g.Name || q.Number == 0 {
				continue
			}
			s := q.Named()
			if len(q.Figures) > 1 {
				s += " (" + strings.Join(q.Figures, ", ") + ")"
			}
			s += ", such as " + q.Example + "."
			if q.Why != asBefore {
				s += " " + q.Why
			}
			put(fmt.Sprintf("%4d  ", q.Number), s+" Not known: "+q.Unknown)
		}
	}
	return out[1:]
}

// Asks is the question that asks for what a problem says is missing.
func Asks(p Problem) (q Question, ok bool) {
	if !p.missing() {
		return q, false
	}
	name, _, found := strings.Cut(p.Wrong, ":")
	if !found || strings.Contains(name, " ") {
		name = strings.Fields(p.Wrong + " ?")[0]
	}
	for _, o := range questions() {
		for _, f := range o.figures {
			if last := f.keys[0][strings.LastIndexByte(f.keys[0], '/')+1:]; last == name && o.Number > 0 && o.Group == "" {
				if ok && q.Number != o.Number {
					return Question{}, false // more than one
				}
				q, ok = o, true
			}
		}
	}
	return q, ok
}

// GroupOf is the group of questions that would tell what a plan was tried with,
// by the words of the change; "" where none would.
func GroupOf(change string) string {
	for _, q := range byNumber() {
		if q.Group != "" && q.Gain != "" && strings.Contains(change, q.Gain) {
			return q.Group
		}
	}
	return ""
}

// Has says whether a group has a question that would be put.
func (iv *Interview) Has(group string) bool {
	return !iv.group(group, func(st Step) bool {
		_, ok := iv.said[st.at()]
		return ok
	})
}

// Hole is a hole as it was told: its largest and smallest diameter in mm and the
// way that it is worn, in degrees, below 0 where it is round.
func (iv *Interview) Hole(st Step) (widest, narrowest, deg float64, ok bool) {
	q := question("bore", "across")
	across, wrong := q.read(iv.said[Step{q, st.Index, st.Side}.at()], iv.units())
	if wrong != "" || len(across) < 2 {
		return 0, 0, 0, false
	}
	w, err1 := dim.Parse(across[0], iv.units())
	n, err2 := dim.Parse(across[1], iv.units())
	if err1 != nil || err2 != nil {
		return 0, 0, 0, false
	}
	deg = -1
	q = question("bore", "worn to")
	at, wrong := q.read(iv.said[Step{q, st.Index, st.Side}.at()], iv.units())
	if wrong == "" && len(at) == 1 && at[0] != "" {
		if deg, err1 = strconv.ParseFloat(at[0], 64); err1 != nil {
			return 0, 0, 0, false
		}
		deg = turn(deg)
	}
	return w.Float(), n.Float(), deg, true
}

// byNumber are the questions in the order of their numbers.
func byNumber() []Question {
	list := slices.Clone(questions())
	slices.SortStableFunc(list, func(a, b Question) int { return a.Number - b.Number })
	return list
}
