package main

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"rebush/fits/dim"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/fits/spelling"
	"rebush/plan"
)

// whyAnswer is a number with every other that it was made from.
type whyAnswer struct {
	Job    string                  `json:"job"`
	Key    string                  `json:"key"`
	Number int                     `json:"number"` // as paper prints it
	Ledger map[string]ledger.Entry `json:"ledger"`
}

// whyList is every number that the plan can explain.
type whyList struct {
	Job    string                  `json:"job"`
	Ledger map[string]ledger.Entry `json:"ledger"`
}

func runWhy(e *env, o options, words []string) error {
	if len(words) == 0 || len(words) > 2 {
		return usage("want a job and a number of its plan, got %d words; put quotes round a key with spaces in it",
			len(words))
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
		if len(words) == 1 {
			out.answer = whyList{p.JobNumber, p.Book.Entries()}
			fmt.Fprintf(&out.text, "rebush why %s NUMBER takes one of these apart; rebush why %s WORD finds those "+
				"with a word in them.\n", path, path)
			listed(&out.text, p.Book, worthAsking(p.Book), o.unitsOf(p))
			return nil
		}
		u := o.unitsOf(p)
		key, err := keyOf(p, words[1], u)
		if err != nil {
			return err
		}
		a := whyAnswer{p.JobNumber, key, p.Book.Number(key), map[string]ledger.Entry{}}
		reach(p.Book, key, a.Ledger)
		out.answer = a
		tree(&out.text, p.Book, key, "", "", map[string]bool{}, u)
		return nil
	})
}

// keyOf finds the key that was meant: a key, or its short number.
func keyOf(p *plan.Plan, text string, u dim.Units) (string, error) {
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
		entry, _ := p.Book.Get(k)
		if low := strings.ToLower(text); strings.Contains(strings.ToLower(k), low) ||
			strings.Contains(strings.ToLower(entry.What), low) {
			like = append(like, k)
		}
	}
	switch {
	case len(like) == 1:
		return like[0], nil
	case like == nil:
		return "", usage("the plan has no number %q; the nearest is %s; rebush why JOB alone lists them", text,
			spelling.Nearest(text, keys))
	}
	var b strings.Builder
	listed(&b, p.Book, like[:min(len(like), 30)], u)
	if len(like) > 30 {
		fmt.Fprintf(&b, "... and %d more\n", len(like)-30)
	}
	return "", usage("%q is said of several numbers; give the number in brackets of the one that you mean:\n%s", text,
		strings.TrimRight(b.String(), "\n"))
}

// worthAsking leaves out what was read from a file as it stands, and the
// inner workings of operations.
func worthAsking(book *ledger.Ledger) []string {
	var out []string
	for _, k := range book.Keys() {
		if e, _ := book.Get(k); len(e.Inputs) > 0 && e.Unit != "rad" && !strings.HasPrefix(k, "operations/") {
			out = append(out, k)
		}
	}
	return out
}

// listed prints numbers a line each: the short number, what it is, the key.
func listed(w io.Writer, book *ledger.Ledger, keys []string, u dim.Units) {
	for _, k := range keys {
		e, _ := book.Get(k)
		fmt.Fprintf(w, "%6s  %s = %s  (%s)\n", fmt.Sprintf("[%d]", book.Number(k)), e.What, valued(e, u), k)
	}
}

// valued is a number of the ledger with its unit.
func valued(e ledger.Entry, u dim.Units) string {
	given := len(e.Inputs) == 0
	if u == dim.InInch && (e.Unit == "mm" || e.Unit == "um") {
		if in := dim.Sig9(e.Value / 25.4); given && e.Unit == "mm" && in == math.Round(in*1e6)/1e6 {
			return plainly(in) + " in" // as it was typed, or as a tool is stamped
		}
		// A place finer than the plan has it, so that it can be followed.
		if e.Unit == "um" {
			return say.Um(e.Value, 1).In(u)
		}
		return strconv.FormatFloat(e.Value/25.4, 'f', 5, 64) + " in"
	}
	s := exactly(e.Value, e.Unit, given)
	if e.Unit == "" || e.Unit == "-" {
		return s
	}
	return s + " " + e.Unit
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
func tree(w io.Writer, book *ledger.Ledger, key, first, rest string, seen map[string]bool, u dim.Units) {
	entry, ok := book.Get(key)
	if !ok {
		return
	}
	fmt.Fprintf(w, "%s%s = %s  [%d %s]\n", first, entry.What, valued(entry, u), book.Number(key), key)
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
		tree(w, book, in, rest+a, rest+b, seen, u)
	}
}
