package main

import "rebush/plan/job"

func schemaCommand() *command {
	return &command{name: "schema", args: "[job|shop]", what: "JSON Schema of a job or shop file", run: runSchema,
		flags: []string{"json"},
		more: "An editor that knows JSON Schema then helps with the keys. Names, units and sense only `rebush " +
			"check` can judge.",
		examples: []string{"rebush schema job", "rebush schema shop"}}
}

func runSchema(e *env, o options, words []string) error {
	kind := "job"
	if len(words) > 0 {
		var err error
		if kind, err = one(words, "kind of file"); err != nil {
			return err
		}
	}
	s := job.Schema(kind)
	if s == nil {
		return usage("there is no schema of %q; there are job and shop", kind)
	}
	return e.write(s)
}
