package main

import (
	"strings"

	"rebush/plan"
	"rebush/plan/verdict"
)

// wayNamed is the way that a name on the command line means: small or capital
// letters, with strokes in the place of blanks where somebody saves the quotes.
func wayNamed(text string) (verdict.Name, error) {
	plain := func(s string) string { return strings.ReplaceAll(strings.ToLower(s), "-", " ") }
	var all []string
	for _, n := range verdict.Names() {
		if plain(string(n)) == plain(text) {
			return n, nil
		}
		all = append(all, string(n))
	}
	return "", usage("--way: there is no way called %q; there are %s", text, strings.Join(all, ", "))
}

// wayWords are the names of the ways as one word each, for completion.
func wayWords() string {
	var all []string
	for _, n := range verdict.Names() {
		all = append(all, strings.ReplaceAll(string(n), " ", "-"))
	}
	return strings.Join(all, " ")
}

// resultOf is what a plan comes to, in a few words.
func resultOf(p *plan.Plan) string {
	switch {
	case !p.OK:
		return "DO NOT MACHINE"
	case !p.Machines():
		return "nothing to machine: " + string(p.Goes())
	case p.NotAdvised != "":
		return "may be machined, NOT ADVISED"
	}
	return "may be machined"
}
