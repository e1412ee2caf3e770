package main

import (
	"os"
	"strings"
	"testing"
)

// TestReadmeShowsWhatIsPrinted runs the commands whose output README.md shows:
// blocks that begin with "$ rebush". The lines of a block stand in the output
// in their order; a line of three dots leaves some out.
func TestReadmeShowsWhatIsPrinted(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir("../../testdata/jobs")
	t.Setenv("COLUMNS", "100")
	t.Setenv("NO_COLOR", "1")
	blocks := 0
	for _, part := range strings.Split(string(text), "\n```\n$ ")[1:] {
		block, _, _ := strings.Cut(part, "\n```")
		command, shown, _ := strings.Cut(block, "\n")
		words := strings.Fields(command)
		if words[0] != "rebush" {
			t.Fatalf("README.md shows a command that is not rebush: %s", command)
		}
		code, printed, said := ran("", words[1:]...)
		if code > 1 {
			t.Fatalf("%s: exit %d: %s", command, code, said)
		}
		blocks++
		rest := printed
		for _, line := range strings.Split(shown, "\n") {
			if strings.TrimSpace(line) == "..." {
				continue
			}
			_, after, found := strings.Cut(rest, line+"\n")
			if !found {
				t.Errorf("%s: README.md shows a line that it does not print there: %q", command, line)
				continue
			}
			rest = after
		}
	}
	if blocks < 3 {
		t.Errorf("README.md shows the output of %d commands", blocks)
	}
}
