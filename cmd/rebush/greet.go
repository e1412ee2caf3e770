package main

import (
	"bufio"
	"fmt"
	"io"
	"strings"
)

// choices are what somebody who typed nothing but the name is offered.
var choices = []struct {
	key, command, what, wants string
}{
	{"1", "start", "a new truck: asks questions and writes a job file",
		"Name for the job file (Enter: job.yaml): "},
	{"2", "check", "a job file that is there: is anything wrong with it?",
		"Which job file? Type its name, or drag it here: "},
	{"3", "sheet", "the setup sheet of a job, beside it", "Which job file? Type its name, or drag it here: "},
}

// greet is `rebush` alone on a terminal: it says what this is, and does what is
// chosen until nothing is. Where nobody can answer, it is the help.
func greet(e *env) error {
	if !e.terminal || !e.inTerminal {
		return helpFor(e, nil)
	}
	e.printf("%s plans new bearings for the worn axle holes of a table-top railway truck\n"+
		"and prints the sheet that is taken to the machine.\n", program)
	in := bufio.NewReader(e.in)
	e.in = in
	for {
		e.printf("\n")
		for _, c := range choices {
			e.printf("  %s  %-6s %s\n", c.key, c.command, c.what)
		}
		e.printf("\nA number, or Enter to end (rebush help tells the rest): ")
		picked, ok := typed(in)
		if !ok || picked == "" {
			return nil
		}
		found := false
		for _, c := range choices {
			if picked != c.key && !strings.EqualFold(picked, c.command) {
				continue
			}
			found = true
			e.printf("%s", c.wants)
			name, ok := typed(in)
			if !ok {
				return nil
			}
			if name == "" && c.command != "start" {
				break
			}
			line := []string{c.command}
			if name != "" {
				line = append(line, "--", name)
			}
			tell(e, dispatch(e, line)) // told, and on to the next
		}
		if !found {
			e.printf("There is no %q here: type 1, 2 or 3.\n", picked)
		}
	}
}

// typed is one line that was typed, without the quotes that a shell puts round
// a file that was dragged. At the end of the input ok is false.
func typed(in *bufio.Reader) (text string, ok bool) {
	line, err := in.ReadString('\n')
	if err != nil && line == "" {
		return "", false
	}
	line = strings.TrimSpace(line)
	for _, q := range []string{`"`, "'"} {
		if len(line) > 1 && strings.HasPrefix(line, q) && strings.HasSuffix(line, q) {
			line = line[1 : len(line)-1]
		}
	}
	return line, true
}

// waits says whether a window has to be held open at the end: the program was
// started by itself, by a double click or by files dropped on it, and the
// window closes with it. After a conversation that went well nothing is left to
// read.
func waits(ownWindow bool, args []string, code int) bool {
	return ownWindow && (len(args) > 1 || code != done)
}

// waitForKey holds a window open until somebody has read what is in it.
func waitForKey(in io.Reader, out io.Writer) {
	fmt.Fprint(out, "\nPress Enter to close this window. ")
	_, _ = bufio.NewReader(in).ReadString('\n')
}
