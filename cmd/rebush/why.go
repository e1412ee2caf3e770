package main

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"rebush/fits/ledger"
	"rebush/plan"
)

// whyAnswer is a number with every other that it was made from.
type whyAnswer struct {
	Job    string                  `json:"job"`
	Key    string                  `json:"key"`
	Number int                     `json:"number"` // as paper prints it
	Ledger map[string]ledger.Entry `json:"ledger"`
}

func runWhy(e *env, o options, words []string) error {
	if len(words) != 2 {
		return usage("want a job and a key, got %d words; put quotes round a key with spaces in it", len(words))
	}
	with, err := o.planOptions()
	if err != nil {
		return err
	}
	return everyJob(e, o, words[:1], func(path string, out *outcome) error {
		p, err := o.plan(e, path, with, out)
		if err != nil {
			return err
		}
		key, err := keyOf(p, words[1])
		if err != nil {
			return err
		}
		a := whyAnswer{p.JobNumber, key, p.Book.Number(key), map[string]ledger.Entry{}}
		reach(p.Book, key, a.Ledger)
		out.answer = a
		tree(&out.text, p.Book, key, "", "", map[string]bool{})
		return nil
	})
}

// keyOf finds the key that was meant: a key, or its short number.
func keyOf(p *plan.Plan, text string) (string, error) {
	if _, ok := p.Book.Get(text); ok {
		return text, nil
	}
	keys := p.Book.Keys()
	if n, err := strconv.Atoi(strings.Trim(text, "[]# ")); err == nil {
		if n >= 1 && n <= len(keys) {
			return keys[n-1], nil
		}
		return "", usage("there is no number %d; the plan has 1 to %d", n, len(keys))
	}
	var like []string
	for _, k := range keys {
		if strings.Contains(k, text) && len(like) < 8 {
			like = append(like, k)
		}
	}
	if like == nil {
		like = []string{nearest(text, keys)}
	}
	return "", usage("the plan has no number %q; there is %s", text, strings.Join(like, ", "))
}

func reach(book *ledger.Ledger, key string, into map[string]ledger.Entry) {
	if _, ok := into[key]; ok {
		return
	}
	entry, ok := book.Get(key)
	if !ok {
		return
	}
	into[key] = entry
	for _, in := range entry.Inputs {
		reach(book, in, into)
	}
}

// tree prints a number and below it what it was made from, down to what was
// measured. A number met again is not taken apart again.
func tree(w io.Writer, book *ledger.Ledger, key, first, rest string, seen map[string]bool) {
	entry, ok := book.Get(key)
	if !ok {
		return
	}
	fmt.Fprintf(w, "%s%s = %s %s  [%d %s]\n", first, entry.What, strconv.FormatFloat(entry.Value, 'g', 9, 64), entry.Unit, book.Number(key), key)
	if seen[key] && len(entry.Inputs) > 0 {
		fmt.Fprintf(w, "%s  (taken apart above)\n", rest)
		return
	}
	seen[key] = true
	if entry.Formula != "" {
		fmt.Fprintf(w, "%s  %s\n", rest, entry.Formula)
	}
	if entry.Source != "" {
		fmt.Fprintf(w, "%s  source: %s\n", rest, entry.Source)
	}
	for i, in := range entry.Inputs {
		a, b := "├─ ", "│  "
		if i == len(entry.Inputs)-1 {
			a, b = "└─ ", "   "
		}
		tree(w, book, in, rest+a, rest+b, seen)
	}
}
