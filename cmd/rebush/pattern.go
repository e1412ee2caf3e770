package main

import (
	"path/filepath"

	"rebush/plan/job"
)

func patternCommand() *command {
	return &command{name: "pattern", args: "JOB", what: "what every truck of a kind shares, as a file for `like` in other jobs",
		flags: []string{"shop", "output", "force"}, run: runPattern,
		more: "Without -o it is written to standard output. It is the job without what is of one truck: its number, what was " +
			"measured of its holes, its condition, what its owner says. Another job of that kind says like: FILE and what was " +
			"measured of its own truck; what it says itself counts before the pattern. Maps merge by key, lists of things with " +
			"a name or a code by it, and all else is replaced whole; each file keeps its own units.",
		examples: []string{"rebush pattern testdata/jobs/pellinthwaite.yaml"}}
}

func runPattern(e *env, o options, words []string) error {
	path, err := one(words, "job file")
	if err != nil {
		return err
	}
	to, folder := o.text["output"], "."
	if path != "-" {
		folder = filepath.Dir(path)
	}
	if o.has("output") {
		switch {
		case to == "":
			return usage("-o wants the name of a file")
		case to != "-":
			folder = filepath.Dir(to)
			e.readAhead(o, []string{path})
			if err := e.desk.may(to, o.on["force"]); err != nil {
				return err
			}
		}
	}
	text, err := job.MakePattern(path, folder, job.Options{Shop: o.text["shop"], Stdin: e.in})
	if err != nil {
		return err
	}
	if !o.has("output") || to == "-" {
		return e.write(text)
	}
	if err := e.desk.put(to, text); err != nil {
		return &writeError{to, err}
	}
	e.printf("%s is written. A job of this kind says: like: %s\n", to, filepath.Base(to))
	return nil
}
