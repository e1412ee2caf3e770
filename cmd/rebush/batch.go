package main

import (
	"bytes"
	"errors"
	"fmt"
	"runtime"
	"runtime/debug"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
)

// outcome is what one job came to: what is printed, and what of it stands in
// the summary of several.
type outcome struct {
	path   string
	text   words        // for standard output
	raw    bytes.Buffer // paper for standard output, as it is
	said   bytes.Buffer // for standard error
	answer any          // for --json
	code   int
	row    row
}

// words are held for a screen of so many columns.
type words struct {
	bytes.Buffer
	wide int
}

func (w *words) columns() int { return w.wide }

// row is a line of the summary table.
type row struct{ number, result, right, stops, cautions, paper string }

// failure is what --json prints for a job that could not be done.
type failure struct {
	Job      *string      `json:"job"`
	File     string       `json:"file"`
	OK       bool         `json:"ok"`
	Findings finding.List `json:"findings"`
}

// work does one job. What it returns as an error is told on standard error.
type work func(path string, out *outcome) error

// everyJob does the jobs, as many at once as there are cores, and prints them
// in the order in which they were named. A bad job does not stop the others;
// the exit code is the highest of all.
func everyJob(e *env, o options, paths []string, do work) error {
	if err := namedJobs(paths); err != nil {
		return err
	}
	results := make([]chan *outcome, len(paths))
	slots := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i := range results {
		results[i] = make(chan *outcome, 1)
	}
	go func() {
		for i, path := range paths {
			slots <- struct{}{}
			go func() {
				defer func() { <-slots }()
				results[i] <- oneJob(e, o, path, len(paths) > 1, do)
			}()
		}
	}()
	worst := done
	rows := make([]*outcome, len(paths))
	for i := range paths {
		if e.errTerminal && len(paths) > 1 {
			fmt.Fprintf(e.stderr, "\r%d of %d", i+1, len(paths))
		}
		r := <-results[i]
		if e.errTerminal && len(paths) > 1 {
			fmt.Fprint(e.stderr, "\r\x1b[K")
		}
		if err := emit(e, o, r, len(paths) > 1); err != nil {
			return err
		}
		worst, rows[i] = max(worst, r.code), r
	}
	if len(paths) > 1 && !o.on["json"] {
		summary(e, rows)
	}
	return endWith(worst)
}

func namedJobs(paths []string) error {
	if len(paths) == 0 {
		return usage("which job? name a job file")
	}
	standard := 0
	for _, p := range paths {
		if p == "-" {
			standard++
		}
		if p == "" {
			return usage("a job file without a name")
		}
	}
	if standard > 1 {
		return usage("standard input can be read once only")
	}
	return nil
}

// oneJob does one job; a panic in it is its own fault and no other job's.
func oneJob(e *env, o options, path string, several bool, do work) (r *outcome) {
	r = &outcome{path: path, text: words{wide: e.wide}}
	fail := func(err error) {
		quiet := &env{errOut: &r.said, wide: e.wide}
		r.code = max(r.code, tell(quiet, err))
		r.row.result = map[int]string{wrong: "not understood", unreadable: "not read or written",
			fault: "fault in rebush"}[r.code]
		if o.on["json"] && several && r.answer == nil {
			r.answer = failure{nil, path, false, findingsOf(err)}
		}
	}
	defer func() {
		if p := recover(); p != nil {
			fail(&faultError{what: fmt.Sprint(p), stack: debug.Stack()})
		}
	}()
	if err := do(path, r); err != nil {
		var c *codeError
		if errors.As(err, &c) {
			r.code = max(r.code, c.code)
		} else {
			fail(err)
		}
	}
	return r
}

// emit prints one outcome.
func emit(e *env, o options, r *outcome, several bool) error {
	if _, err := e.errOut.Write(r.said.Bytes()); err != nil {
		return &writeError{"standard error", err}
	}
	if o.on["json"] {
		if r.answer == nil {
			return nil
		}
		b, err := encode(r.answer, !several)
		if err != nil {
			return err
		}
		return e.write(b)
	}
	if several && r.text.Len() > 0 {
		e.printf("== %s\n", r.path)
	}
	if err := e.write(r.raw.Bytes()); err != nil {
		return err
	}
	return e.say(r.text.Bytes())
}

func summary(e *env, rows []*outcome) {
	p := &page{w: e.out}
	var lines [][]string
	for _, r := range rows {
		lines = append(lines, []string{r.row.number, r.path, r.row.result, r.row.right, r.row.stops, r.row.cautions,
			r.row.paper})
	}
	p.line("")
	p.table([]string{"job", "file", "result", "right first time", "stops", "cautions", "paper"}, lines)
}

// findingsOf turns what is wrong with a file into findings.
func findingsOf(err error) finding.List {
	var list job.Problems
	out := finding.List{}
	if errors.As(err, &list) {
		for _, p := range list {
			out.Raise(finding.Stop, "job/job file",
				finding.Place{File: p.Pos.File, Line: p.Pos.Line, Column: p.Pos.Column},
				say.Words(p.Wrong), say.Words(p.Right))
		}
		return out
	}
	out.Raise(finding.Stop, "job/job file", finding.Place{},
		say.F("%v", err), "")
	return out
}
