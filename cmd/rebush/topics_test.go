package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rebush/plan/verdict"
)

// TestFileHelp: the job in the help of files is read without a mistake, with
// the demo's shop beside it, and can be planned.
func TestFileHelp(t *testing.T) {
	_, text, _ := ran("", "help", "file")
	from, to := strings.Index(text, "rebush: 1"), strings.Index(text, "Inside { }")
	if from < 0 || to < from {
		t.Fatalf("no job in\n%s", text)
	}
	folder := t.TempDir()
	shop, err := os.ReadFile(shopFile)
	if err != nil {
		t.Fatal(err)
	}
	for name, data := range map[string][]byte{"shop.yaml": shop, "job.yaml": []byte(text[from:to])} {
		if err := os.WriteFile(filepath.Join(folder, name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	path := filepath.Join(folder, "job.yaml")
	if code, out, errOut := ran("", "check", path); code != done || !strings.Contains(out, "nothing wrong") {
		t.Errorf("check: exit %d, %s%s", code, out, errOut)
	}
	if code, out, errOut := ran("", "plan", "--trials", "1000", path); code != done ||
		!strings.Contains(out, "Seat front axle.left\nbush") {
		t.Errorf("plan: exit %d, %s%s", code, out, errOut)
	}
}

// TestJobHelp: every step of the help of a job is a command that there is.
func TestJobHelp(t *testing.T) {
	_, text, _ := ran("", "help", "job")
	n := 0
	for _, line := range strings.Split(text, "\n") {
		_, rest, ok := strings.Cut(line, "rebush ")
		if !ok {
			continue
		}
		n++
		if word := strings.Fields(rest)[0]; find(commands(), word) == nil {
			t.Errorf("%q: there is no command %q", line, word)
		}
	}
	if n < 10 {
		t.Errorf("only %d commands are named", n)
	}
	for _, line := range strings.Split(text+fileHelp, "\n") {
		if len([]rune(line)) > 130 {
			t.Errorf("too wide for a terminal: %q", line)
		}
	}
}

// TestWaysHelp: the help of the ways has a line for each of the nine.
func TestWaysHelp(t *testing.T) {
	_, text, _ := ran("", "help", "ways")
	for _, n := range verdict.Names() {
		if !strings.Contains(text, "\n"+string(n)+"  ") {
			t.Errorf("no line for %s", n)
		}
	}
}
