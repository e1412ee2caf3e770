package main

import (
	"strings"

	"rebush/fits/spelling"
)

func helpCommand() *command {
	return &command{name: "help", args: "[TOPIC]", what: "this, a command, or a topic", run: runHelp,
		flags: []string{"paper", "large", "output", "force"},
		more:  "help words WORD explains one word. help evening -o FILE makes the page of the first evening, to be printed.",
		examples: []string{"rebush help", "rebush help lookup speed", "rebush help cautions",
			"rebush help evening -o evening.pdf"}}
}

func topicNames() []string {
	var out []string
	for _, t := range topics {
		out = append(out, t.name)
	}
	return out
}

func runHelp(e *env, o options, words []string) error {
	evening := len(words) == 1 && words[0] == "evening"
	switch {
	case len(words) == 0:
		return helpFor(e, nil)
	case o.has("output") && !evening:
		return usage("only the page of the first evening goes to a file: rebush help evening -o FILE")
	case evening && o.has("output"):
		return eveningPage(e, o)
	case evening:
		return showEvening(e)
	case words[0] == "words":
		return showWords(e, strings.Join(words[1:], " "))
	}
	for _, t := range topics {
		if len(words) == 1 && t.name == words[0] {
			e.printf("%s\n", t.text)
			return nil
		}
	}
	list := commands()
	var path []*command
	for _, w := range words {
		c := find(list, w)
		if c == nil {
			return usage("there is no help on %q; the nearest is %q", w,
				spelling.Nearest(w, append(names(list), topicNames()...)))
		}
		path, list = append(path, c), c.sub
	}
	return helpFor(e, path)
}

// helpFor prints the help of a command, or of the whole program.
func helpFor(e *env, path []*command) error {
	p := &page{w: e.out}
	if len(path) == 0 {
		p.line("rebush plans the re-bushing of worn axle holes in table-top railway motor trucks")
		p.line("and prints the sheet that is taken to the machine.")
		p.line("(A truck is a bogie, and a bush is a bushing.)\n")
		for _, c := range commands() {
			p.pair("  rebush "+strings.TrimSpace(c.name+" "+c.args), "%s", c.what)
		}
		p.pair("  rebush JOB", "the same as rebush sheet JOB")
		p.line("\nA file named - is standard input. Options stand before or after file names.")
		p.line("New here: rebush help job. Other topics: %s. rebush help COMMAND tells more.",
			strings.Join(topicNames()[1:], ", "))
		return nil
	}
	c := path[len(path)-1]
	p.line("rebush %s: %s", strings.TrimSpace(pathName(path)+" "+c.args), c.what)
	if c.more != "" {
		p.line("")
		p.prose("", 90, c.more)
	}
	if len(c.sub) > 0 {
		p.line("")
		for _, s := range c.sub {
			p.pair("  "+strings.TrimSpace(s.name+" "+s.args), "%s", s.what)
		}
		p.flush()
	}
	if len(c.flags) > 0 {
		p.line("\nOptions:")
		for _, n := range c.flags {
			f, _ := flagNamed(n)
			p.pair("  "+strings.TrimSpace(f.dashed()+" "+f.value), "%s", f.what)
		}
		p.flush()
	}
	if len(c.examples) > 0 {
		p.line("\nFor example:")
		for _, x := range c.examples {
			p.line("  %s", x)
		}
	}
	return nil
}
