package main

import "slices"

// command is one command, or one kind of question of a command.
type command struct {
	name     string
	args     string // what stands behind it
	what     string // one line
	more     string // the rest of its help
	examples []string
	flags    []string // options that it takes; --help is for every one
	jobs     bool     // its words are jobs, or folders of them,
	before   int      // but for so many that stand before them;
	keeps    kind     // and it takes files of this kind too
	sub      []*command
	run      func(e *env, o options, words []string) error
}

// commands are all the commands in the order of the help.
func commands() []*command {
	all := jobCommands()
	return append(all, patternCommand(), tablesCommand(), lookupCommand(), schemaCommand(), helpCommand(), completionCommand())
}

func find(list []*command, name string) *command {
	i := slices.IndexFunc(list, func(c *command) bool { return c.name == name })
	if i < 0 {
		return nil
	}
	return list[i]
}

func names(list []*command) []string {
	var out []string
	for _, c := range list {
		out = append(out, c.name)
	}
	return out
}
