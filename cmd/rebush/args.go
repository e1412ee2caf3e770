package main

import (
	"fmt"
	"os"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"rebush/fits/spelling"
)

// The command line is read once, here: options are taken from among the words,
// wherever they stand, and the library, which wants options first, is handed
// the words alone. It finds the command that they name.

// options is every option of a command line as it was typed.
type options struct {
	text map[string]string // of those with a value
	on   map[string]bool   // of those without

	several bool // more than one job was asked for, or a folder of them
}

// has says whether an option with a value was given.
func (o options) has(name string) bool { _, ok := o.text[name]; return ok }

// given says whether any option of a name was given.
func (o options) given(name string) bool { return o.on[name] || o.has(name) }

// takeApart sorts options from words. Behind `--` everything is a word. A word
// that begins with a minus and a digit is an option's value or a word, never an
// option.
func takeApart(args []string) (o options, words []string, err error) {
	o = options{text: map[string]string{}, on: map[string]bool{}}
	for i := 0; i < len(args); i++ {
		a := args[i]
		switch {
		case a == "--":
			return o, append(words, args[i+1:]...), nil
		case a == "-" || !strings.HasPrefix(a, "-") || isNumber(a):
			words = append(words, a)
			continue
		}
		name, value, hasValue := strings.Cut(strings.TrimLeft(a, "-"), "=")
		f, ok := flagNamed(name)
		switch {
		case !ok:
			return o, nil, usage("there is no option %s; the nearest is %s", a, nearestFlag(name))
		case f.value == "" && hasValue:
			return o, nil, usage("--%s takes no value", f.name)
		case f.value == "":
			o.on[f.name] = true
			continue
		case !hasValue && (i+1 == len(args) || args[i+1] == "--"):
			return o, nil, usage("%s wants a value: %s %s", a, f.dashed(), f.value)
		case !hasValue:
			i++
			value = args[i]
			if g, ok := flagNamed(strings.TrimLeft(value, "-")); ok && strings.HasPrefix(value, "--") {
				return o, nil, usage("%s wants a value, and %s is an option", a, g.dashed())
			}
		}
		if o.has(f.name) {
			return o, nil, usage("%s stands twice", f.dashed())
		}
		o.text[f.name] = strings.TrimSpace(value)
	}
	return o, words, nil
}

func isNumber(s string) bool {
	return len(s) > 1 && (s[1] >= '0' && s[1] <= '9' || s[1] == '.')
}

// dispatch reads a command line and runs what it asks for.
func dispatch(e *env, args []string) error {
	o, words, err := takeApart(args)
	switch {
	case err != nil:
		return err
	case o.on["version"]:
		e.printf("%s\n", versionLine())
		return nil
	case len(words) == 0 && len(o.on)+len(o.text) == 0:
		return greet(e)
	case len(words) == 0:
		return helpFor(e, nil)
	}
	return app(e, o).Run(append([]string{"rebush", "--"}, words...))
}

// app is the command table as the library wants it. Errors come back from Run
// untouched; the library prints nothing and never exits.
func app(e *env, o options) *cli.App {
	return &cli.App{
		Name: "rebush", Writer: e.out, ErrWriter: e.errOut, HideHelp: true, HideVersion: true,
		ExitErrHandler: func(*cli.Context, error) {},
		Commands:       asCLI(e, o, nil, commands()),
		Action:         func(ctx *cli.Context) error { return aJob(e, o, ctx.Args().Slice()) },
	}
}

func asCLI(e *env, o options, above []*command, list []*command) []*cli.Command {
	var out []*cli.Command
	for _, c := range list {
		path := append(slices.Clone(above), c)
		out = append(out, &cli.Command{Name: c.name, Usage: c.what, HideHelp: true, SkipFlagParsing: true,
			Subcommands: asCLI(e, o, path, c.sub),
			Action:      func(ctx *cli.Context) error { return perform(e, o, path, ctx.Args().Slice()) }})
	}
	return out
}

// aJob runs a command line that begins with no command: with a job, which is
// then drawn: it exists, or ends in .yaml or .yml.
func aJob(e *env, o options, words []string) error {
	list := commands()
	if isJob(words[0]) {
		return perform(e, o, []*command{find(list, "sheet")}, words)
	}
	for _, end := range []string{".yaml", ".yml"} {
		if isFile(words[0] + end) {
			return usage("%q is no command; did you mean the job %s?", words[0], words[0]+end)
		}
	}
	return usage("%q is no command and no job file that exists; the nearest command is %q", words[0],
		spelling.Nearest(words[0], names(list)))
}

// perform runs the command that a path ends in. One of several kinds of
// question is not done without the next word, which is none of them here.
func perform(e *env, o options, path []*command, words []string) error {
	c, name := path[len(path)-1], pathName(path)
	switch {
	case len(c.sub) > 0 && len(words) > 0:
		return &usageError{fmt.Sprintf("%s knows no %q; the nearest is %q", name, words[0],
			spelling.Nearest(words[0], names(c.sub))), name}
	case len(c.sub) > 0 && !o.on["help"]:
		return &usageError{fmt.Sprintf("%s wants one of: %s", name, strings.Join(names(c.sub), ", ")), name}
	case o.on["help"]:
		return helpFor(e, path)
	}
	for _, f := range flagDefs {
		if o.given(f.name) && !slices.Contains(c.flags, f.name) {
			return &usageError{fmt.Sprintf("%s has no option %s", name, f.dashed()), name}
		}
	}
	if c.jobs {
		first := min(c.before, len(words))
		jobs, several, err := e.gather(words[first:], c.keeps)
		if err != nil {
			return err
		}
		o.several, words = several, append(slices.Clone(words[:first]), jobs...)
	}
	return c.run(e, o, words)
}

func isJob(word string) bool {
	low := strings.ToLower(word)
	if strings.HasSuffix(low, ".yaml") || strings.HasSuffix(low, ".yml") || word == "-" {
		return true
	}
	return isFile(word) || kindOf(word) == aFolder
}

func isFile(path string) bool {
	info, err := os.Stat(path)
	return err == nil && !info.IsDir()
}

func pathName(path []*command) string { return strings.Join(names(path), " ") }
