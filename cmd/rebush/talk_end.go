package main

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/job"
	"rebush/plan/verdict"
	"rebush/sheets"
)

// conclude checks the job, plans it, and says what comes of it; more is true
// where further questions are to be put.
func (t *talk) conclude() (more bool, err error) {
	if t.file == nil {
		return false, t.e.write(t.iv.Text())
	}
	j, err := t.o.read(t.e, t.iv.File)
	var list job.Problems
	if errors.As(err, &list) {
		return t.unfinished(list)
	}
	if err != nil {
		return false, err
	}
	fmt.Fprintf(t.out, "\n%s is written, and goes together. Planning it ...\n", t.iv.File)
	with, err := t.o.planOptions()
	if err != nil {
		return false, err
	}
	p, err := plan.Make(j, with)
	if err != nil {
		return false, err
	}
	t.verdict(p)
	group, ok := t.menu(p)
	switch {
	case ok && group != "":
		if group != backward {
			t.iv.More(group)
		}
		return true, t.save()
	case ok:
		return false, t.sheet(p)
	}
	return false, nil
}

// unfinished says what is missing in the job, or does not go together, each with
// the number of the question that asks for it, and asks which is answered again.
func (t *talk) unfinished(list job.Problems) (more bool, err error) {
	fmt.Fprintf(t.out, "\n%s is written, but it is no job yet:\n", t.iv.File)
	for _, p := range list {
		s := p.Error()
		if q, ok := job.Asks(p); ok {
			s += fmt.Sprintf(". It is question %d, %s. %s", q.Number, q.Box, q.Why)
		}
		t.item("-", s)
	}
	for {
		fmt.Fprint(t.out, "   Which question is to be put again (its number; Enter: none now)? ")
		text := strings.ToLower(t.line())
		if t.ended || text == "" || text == "no" || text == "none" {
			t.note(fmt.Sprintf("Measure what is missing, then: rebush start %s", shellWord(t.iv.File)))
			return false, endWith(wrong)
		}
		if n, err := strconv.Atoi(text); err == nil && t.iv.Again(n) {
			return true, t.save()
		}
		t.note("No question of that number was put.")
	}
}

// verdict says in a few lines what came of the job.
func (t *talk) verdict(p *plan.Plan) {
	p = t.o.worded(p)
	pg := &page{w: t.out}
	v := p.Verdict
	for _, l := range wrap(v.Sentence.String(), 78) {
		pg.line("%s", t.e.paint(bold, l))
	}
	showNeeds(pg, v)
	if v.Choice == verdict.Swap || !p.OK {
		for _, w := range p.Ways {
			if w.Way == verdict.Rebush {
				pg.line("Re-bushing it: %s.", strings.TrimSuffix(reBushWords(w), "."))
				if w.OK && p.Verdict.Choice == verdict.Swap {
					pg.line("To see that all the same: rebush sheet %s --way re-bush", shellWord(t.iv.File))
				}
			}
		}
	}
	pg.flush()
	if !p.OK {
		t.stops(p)
	}
}

// mostStops is how many stops are told at the end of start; verdict tells all.
const mostStops = 4

func (t *talk) stops(p *plan.Plan) {
	fmt.Fprintln(t.out, t.e.paint(red, "DO NOT MACHINE"))
	n := 0
	for _, f := range p.Findings {
		if f.Level != finding.Stop {
			continue
		}
		if n++; n > mostStops {
			fmt.Fprintf(t.out, "and more: rebush verdict %s\n", shellWord(t.iv.File))
			return
		}
		s := f.Text.String()
		if f.Where != "" {
			s = f.Where + ": " + s
		}
		t.item("-", s)
	}
}

// reBushWords say of re-bushing why it cannot be, or how often it comes right.
func reBushWords(w verdict.WayRow) string {
	if !w.OK {
		return wayWordsOf(w)
	}
	s := "possible"
	if w.FirstTimeRight != nil {
		s += ", right first time " + say.InHundred(*w.FirstTimeRight).String()
	}
	if w.Cost != nil {
		s += ", about " + strconv.FormatFloat(*w.Cost, 'f', 0, 64)
	}
	return s
}

// gain is the most that the answers of a group were found to bring.
type gain struct {
	words string
	right float64
}

// gains are what a plan was tried with, by the group of questions that would tell it.
func gains(p *plan.Plan) (of map[string]gain, other []string) {
	of = map[string]gain{}
	add := func(change say.Text, words string, right float64) {
		group := job.GroupOf(change.String())
		if group == "" {
			other = append(other, words)
		} else if had, ok := of[group]; !ok || right > had.right {
			of[group] = gain{words, right}
		}
	}
	currency := currencyOf(p)
	if p.Verdict != nil {
		for _, t := range p.Verdict.Tried {
			add(t.Change, t.Said(currency, p.OK).String(), deref(t.FirstTimeRight))
		}
	}
	for _, f := range p.Findings {
		if f.Level == finding.Stop {
			for _, t := range f.Tried {
				add(t.Change, t.Said(currency, p.OK).String(), deref(t.FirstTimeRight))
			}
		}
	}
	if p.Chance != nil {
		for _, g := range p.Chance.Improve {
			add(g.Change, fmt.Sprintf("%v: right first time %v", g.Change, say.InHundred(g.FirstTimeRight)), g.FirstTimeRight)
		}
	}
	slices.Sort(other)
	return of, slices.Compact(other)
}

func deref(f *float64) float64 {
	if f == nil {
		return 0
	}
	return *f
}

// backward is the answer of a menu that goes back to the last question.
const backward = "back"

// menu offers what more could be told; ok is false where no more answers come.
func (t *talk) menu(p *plan.Plan) (group string, ok bool) {
	p = t.o.worded(p)
	found, other := gains(p)
	if len(other) > 0 {
		fmt.Fprintln(t.out, "\nTo buy or to do otherwise, the whole job planned again with each:")
		for _, s := range other[:min(len(other), 5)] {
			t.note("- " + s)
		}
	}
	groups := t.groups(found)
	fmt.Fprintln(t.out, "\nMore that you could tell:")
	for i, g := range groups {
		f, tried := found[g.Name]
		switch {
		case tried:
			t.item(strconv.Itoa(i+1), g.Title+". Tried: "+f.words)
		default:
			if i == 0 || found[groups[i-1].Name] != (gain{}) {
				t.note("Not tried, since nothing tells what they would come out at:")
			}
			t.item(strconv.Itoa(i+1), g.Title)
		}
	}
	best := ""
	if _, tried := found[first(groups)]; tried && !(p.Verdict.Cures && p.Verdict.Choice.Cuts()) {
		best = "1" // before it is given up
	}
	for {
		usual := "Enter: no more"
		if best != "" {
			usual = "none: no more"
		}
		fmt.Fprintf(t.out, "   Which of them (its number; %s)? ", usual)
		if best != "" {
			fmt.Fprintf(t.out, "[%s] ", best)
		}
		text := strings.ToLower(t.line())
		if t.ended {
			fmt.Fprintln(t.out)
			return "", false
		}
		if text == "" {
			text = best
		}
		if text == "" || text == "no" || text == "none" || text == "n" {
			return "", true
		}
		if text == "back" && t.iv.Back() {
			return backward, true
		}
		for _, g := range groups {
			if g.Name == text {
				return text, true
			}
		}
		if n, err := strconv.Atoi(text); err == nil && n >= 1 && n <= len(groups) {
			return groups[n-1].Name, true
		}
		t.note(fmt.Sprintf("A number from 1 to %d, or none.", len(groups)))
	}
}

func first(groups []job.Group) string {
	if len(groups) == 0 {
		return ""
	}
	return groups[0].Name
}

// item is a line of a list with its number.
func (t *talk) item(number, s string) {
	for i, l := range wrap(s, 70) {
		if i > 0 {
			number = ""
		}
		fmt.Fprintf(t.out, "   %3s  %s\n", number, l)
	}
}

// groups are those that have a question left, what was tried before the rest, the
// most that it brings first.
func (t *talk) groups(found map[string]gain) (out []job.Group) {
	for _, g := range job.Groups() {
		if !t.iv.Asked(g.Name) && t.iv.Has(g.Name) {
			out = append(out, g)
		}
	}
	rank := func(g job.Group) float64 {
		if f, ok := found[g.Name]; ok {
			return 1 + f.right
		}
		return 0
	}
	slices.SortStableFunc(out, func(a, b job.Group) int { return cmp.Compare(rank(b), rank(a)) })
	return out
}

// sheet offers the paper.
func (t *talk) sheet(p *plan.Plan) error {
	to, err := t.o.paths(t.e, []string{t.iv.File}, "")
	if err != nil {
		return err
	}
	path := to[t.iv.File]
	for {
		fmt.Fprintf(t.out, "   Shall the sheet be made now, %s (yes, no)? [no] ", path)
		text := strings.ToLower(t.line())
		switch {
		case t.ended || text == "" || text == "n" || text == "no":
			fmt.Fprintf(t.out, "%s\n", strings.TrimSpace("Later: rebush sheet "+shellWord(t.iv.File)))
			return nil
		case text == "y" || text == "yes":
			po, _, err := t.o.drawingOptions()
			if err != nil {
				return err
			}
			doc, err := sheets.Setup(p, po)
			if err != nil {
				return err
			}
			return t.e.deliver(t.o, doc, path)
		}
		t.note("yes or no.")
	}
}
