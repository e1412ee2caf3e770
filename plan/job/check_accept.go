package job

import (
	"fmt"
	"strings"

	"rebush/fits/table"
)

// checkAccept holds what a job takes upon itself against the stops that may be
// accepted: a name that is none, one that may not be, and one that stands
// twice are mistakes.
func checkAccept(r *reader, root *value) {
	v := root.get("accept")
	if v == nil {
		return
	}
	stops, err := table.Stops()
	if err != nil {
		r.say(v.pos, "accept: "+err.Error(), "the built-in table of stops is at fault: please report it")
		return
	}
	var may, all []string
	by := map[string]table.StopRule{}
	for _, s := range stops {
		by[s.Name] = s
		all = append(all, s.Name)
		if s.Accept {
			may = append(may, s.Name)
		}
	}
	right := "write accept: [" + strings.Join(may, ", ") + "] or leave it out"
	seen := map[string]bool{}
	for _, item := range v.items() {
		name := item.text()
		s, ok := by[name]
		switch {
		case !ok && has(may, nearest(name, all)):
			r.say(item.pos, fmt.Sprintf("accept: there is no stop called %q", short(name)),
				"did you mean `"+nearest(name, all)+"`?")
		case !ok:
			r.say(item.pos, fmt.Sprintf("accept: there is no stop called %q", short(name)),
				right+"; no other stop can be accepted")
		case !s.Accept:
			r.say(item.pos, fmt.Sprintf("accept: the stop %q cannot be accepted", name), s.Instead)
		case seen[name]:
			r.say(item.pos, fmt.Sprintf("accept: %q stands twice", name), "keep one")
		}
		seen[name] = true
	}
}
