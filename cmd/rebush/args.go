package main

import (
	"fmt"
	"os"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"
)

// typed is a command line taken apart: options anywhere, then words. Behind
// `--` everything is a word.
type typed struct {
	flags []string // as typed, each value behind its option
	names []string // of the options, in order
	words []string
}

// takeApart sorts options from words. A word that begins with a minus and a
// digit is an option's value or a word, never an option.
func takeApart(args []string) (typed, error) {
	var t typed
	for i := 0; i < len(args); i++ {
		a := args[i]
		switch {
		case a == "--":
			t.words = append(t.words, args[i+1:]...)
			return t, nil
		case a == "-" || !strings.HasPrefix(a, "-") || isNumber(a):
			t.words = append(t.words, a)
			continue
		}
		name, value, hasValue := strings.Cut(strings.TrimLeft(a, "-"), "=")
		f, ok := flagNamed(name)
		if !ok {
			return t, usage("there is no option %s; the nearest is %s", a, nearestFlag(name))
		}
		t.names = append(t.names, f.name)
		switch {
		case f.value == "" && hasValue:
			return t, usage("--%s takes no value", f.name)
		case f.value == "":
			t.flags = append(t.flags, "--"+f.name)
			continue
		case !hasValue && (i+1 == len(args) || args[i+1] == "--"):
			return t, usage("%s wants a value: %s %s", a, f.dashed(), f.value)
		case !hasValue:
			i++
			value = args[i]
			if g, ok := flagNamed(strings.TrimLeft(value, "-")); ok && strings.HasPrefix(value, "--") {
				return t, usage("%s wants a value, and %s is an option", a, g.dashed())
			}
		}
		if slices.Contains(t.flags, "--"+f.name) {
			return t, usage("%s stands twice", f.dashed())
		}
		t.flags = append(t.flags, "--"+f.name, value)
	}
	return t, nil
}

func isNumber(s string) bool {
	return len(s) > 1 && (s[1] >= '0' && s[1] <= '9' || s[1] == '.')
}

func nearestFlag(name string) string {
	var all []string
	for _, f := range flagDefs {
		all = append(all, f.name)
	}
	f, _ := flagNamed(nearest(name, all))
	return f.dashed()
}

// dispatch finds the command that the words name and runs it.
func dispatch(e *env, args []string) error {
	t, err := takeApart(args)
	if err != nil {
		return err
	}
	if slices.Contains(t.names, "version") {
		e.printf("%s\n", program)
		return nil
	}
	helpAsked := slices.Contains(t.names, "help")
	if len(t.words) == 0 {
		return helpFor(e, nil)
	}
	path, words, err := choose(t.words)
	if helpAsked && err == nil {
		return helpFor(e, path)
	}
	if err != nil {
		return err
	}
	cmd := path[len(path)-1]
	full := pathName(path)
	for _, n := range t.names {
		if !slices.Contains(cmd.flags, n) {
			f, _ := flagNamed(n)
			return &usageError{fmt.Sprintf("%s has no option %s", full, f.dashed()), full}
		}
	}
	line := append([]string{"rebush"}, strings.Fields(full)...)
	line = append(append(append(line, t.flags...), "--"), words...)
	return app(e).Run(line)
}

// choose finds the command: the first word is one exactly, or else a job that
// exists or ends in .yaml or .yml, which is then drawn. Some commands are
// chosen from by a second and third word.
func choose(words []string) (path []*command, rest []string, err error) {
	list := commands()
	cmd := find(list, words[0])
	if cmd == nil {
		if isJob(words[0]) {
			return []*command{find(list, "sheet")}, words, nil
		}
		for _, end := range []string{".yaml", ".yml"} {
			if isFile(words[0] + end) {
				return nil, nil, &usageError{fmt.Sprintf("%q is no command; did you mean the job %s?", words[0], words[0]+end), ""}
			}
		}
		return nil, nil, &usageError{fmt.Sprintf("%q is no command and no job file that exists; the nearest command is %q", words[0], nearest(words[0], names(list))), ""}
	}
	path, rest = []*command{cmd}, words[1:]
	for len(cmd.sub) > 0 {
		if len(rest) == 0 {
			return path, nil, &usageError{fmt.Sprintf("%s wants one of: %s", pathName(path), strings.Join(names(cmd.sub), ", ")), pathName(path)}
		}
		next := find(cmd.sub, rest[0])
		if next == nil {
			return path, nil, &usageError{fmt.Sprintf("%s knows no %q; the nearest is %q", pathName(path), rest[0], nearest(rest[0], names(cmd.sub))), pathName(path)}
		}
		cmd, path, rest = next, append(path, next), rest[1:]
	}
	return path, rest, nil
}

func isJob(word string) bool {
	low := strings.ToLower(word)
	if strings.HasSuffix(low, ".yaml") || strings.HasSuffix(low, ".yml") || word == "-" {
		return true
	}
	return isFile(word)
}

func isFile(path string) bool {
	info, err := os.Stat(path)
	return err == nil && !info.IsDir()
}

func pathName(path []*command) string {
	var s []string
	for _, c := range path {
		s = append(s, c.name)
	}
	return strings.Join(s, " ")
}

// app is the command table as the library wants it. Errors come back from Run
// untouched; the library prints nothing and never exits.
func app(e *env) *cli.App {
	return &cli.App{
		Name: "rebush", Writer: e.out, ErrWriter: e.errOut, HideHelp: true, HideVersion: true,
		ExitErrHandler: func(*cli.Context, error) {},
		OnUsageError:   func(_ *cli.Context, err error, _ bool) error { return usage("%v", err) },
		Commands:       asCLI(e, commands()),
	}
}

func asCLI(e *env, list []*command) []*cli.Command {
	var out []*cli.Command
	for _, c := range list {
		k := &cli.Command{Name: c.name, Usage: c.what, HideHelp: true, Subcommands: asCLI(e, c.sub),
			OnUsageError: func(_ *cli.Context, err error, _ bool) error { return usage("%v", err) }}
		for _, name := range c.flags {
			f, _ := flagNamed(name)
			k.Flags = append(k.Flags, f.cli())
		}
		if c.run != nil {
			k.Action = func(ctx *cli.Context) error { return c.run(e, readOptions(ctx), ctx.Args().Slice()) }
		}
		out = append(out, k)
	}
	return out
}
