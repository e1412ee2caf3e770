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
	"rebush/sheets"
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
			tellerOf(p, o.unitsOf(p)).listed(&out.text, worthAsking(p.Book))
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
		tellerOf(p, u).tree(&out.text, key, "", "", map[string]bool{})
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
	tellerOf(p, u).listed(&b, like[:min(len(like), 30)])
	if len(like) > 30 {
		fmt.Fprintf(&b, "... and %d more\n", len(like)-30)
	}
	return "", usage("%q is said of several numbers; give the number of the one that you mean:\n%s", text,
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

// teller tells of figures as paper does: in its words and units, each with its
// place and the number that asks for it.
type teller struct {
	book *ledger.Ledger
	u    dim.Units
	say  func(string) string
}

func tellerOf(p *plan.Plan, u dim.Units) teller {
	return teller{p.Book, u, sheets.BenchNames(p.Job)}
}

// figure is a figure with its place: "wear, front axle, left = 0.1 mm".
func (t teller) figure(key string, e ledger.Entry) string {
	what := e.What
	if at := placeOf(key); at != "" && !strings.Contains(what, at) {
		what += ", " + at
	}
	return t.say(what + " = " + valued(e, t.u))
}

// placeOf is the bore, shaft, gear or operation that a key is of, "" for those
// of the whole truck.
func placeOf(key string) string {
	parts := strings.Split(key, "/")
	if len(parts) < 3 {
		return ""
	}
	switch parts[0] {
	case "survey", "mesh", "targets", "seats", "shafts":
		return parts[1]
	case "operations":
		return "operation " + parts[1]
	}
	return ""
}

// listed prints figures a line each, with the key that stands in JSON.
func (t teller) listed(w io.Writer, keys []string) {
	for _, k := range keys {
		e, _ := t.book.Get(k)
		fmt.Fprintf(w, "why %-4d %s  (%s)\n", t.book.Number(k), t.figure(k, e), k)
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
	if e.Unit == "um" { // paper has no micrometres
		return exactly(e.Value/1000, "mm", given) + " mm"
	}
	s := exactly(e.Value, e.Unit, given)
	if e.Unit == "N" || e.Unit == "N mm" {
		_, after, _ := strings.Cut(s, ".")
		return say.Num(e.Value, len(after), e.Unit).In(say.Bench(u))
	}
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
func (t teller) tree(w io.Writer, key, first, rest string, seen map[string]bool) {
	entry, ok := t.book.Get(key)
	if !ok {
		return
	}
	fmt.Fprintf(w, "%s%s  (why %d)\n", first, t.figure(key, entry), t.book.Number(key))
	if seen[key] && len(entry.Inputs) > 0 {
		fmt.Fprintf(w, "%s  (taken apart above)\n", rest)
		return
	}
	seen[key] = true
	if entry.Formula != "" {
		fmt.Fprintf(w, "%s  %s\n", rest, t.say(entry.Formula))
	}
	if entry.Source != "" {
		fmt.Fprintf(w, "%s  source: %s\n", rest, t.say(entry.Source))
	}
	for i, in := range entry.Inputs {
		a, b := "├─ ", "│  "
		if i == len(entry.Inputs)-1 {
			a, b = "└─ ", "   "
		}
		t.tree(w, in, rest+a, rest+b, seen)
	}
}
