package main

import (
	"strings"

	"rebush/fits/spelling"
	"rebush/fits/table"
)

// showWords explains the words of the bench and of limits that paper uses, or
// those that were asked for.
func showWords(e *env, asked string) error {
	t, err := table.BuiltIn().Get("words")
	if err != nil {
		return &faultError{what: err.Error()}
	}
	p := &page{w: e.out}
	if asked == "" {
		p.line("Two words, one thing: a truck is a bogie, and a bush is a bushing.\n")
	}
	var all []string
	found := false
	for _, r := range t.Rows {
		word, forms := r.Get("word"), strings.Split(r.Get("also"), ";")
		all = append(append(all, word), forms...)
		if asked != "" && !isForm(asked, append(forms, word)) {
			continue
		}
		found = true
		p.pair(word, "%s", r.Get("meaning"))
	}
	if !found {
		return usage("no paper uses the word %q; the nearest is %q", asked, spelling.Nearest(asked, all))
	}
	p.flush()
	return nil
}

// isForm says whether a word is one of some, or a part of one, as metal is of
// metal left.
func isForm(asked string, forms []string) bool {
	for _, f := range forms {
		for _, part := range append(strings.Fields(f), f) {
			if strings.EqualFold(part, asked) {
				return true
			}
		}
	}
	return false
}
