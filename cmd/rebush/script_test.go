package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"rebush": main, "half-written": halfWritten})
}

// halfWritten is a program that begins a paper, says so, and waits to be
// interrupted.
func halfWritten() {
	d := &desk{}
	f, err := d.begin(os.Args[1])
	if err != nil {
		panic(err)
	}
	fmt.Println(f.Name())
	select {}
}

// TestScripts runs the end-to-end cases of testdata/script, each a text file:
// commands, and what they print and leave behind. $JOBS is testdata/jobs,
// $DULL testdata/situations.
func TestScripts(t *testing.T) {
	jobs, err := filepath.Abs("../../testdata/jobs")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:  "../../testdata/script",
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"append": appendLine, "replace": replaceWords},
		Setup: func(e *testscript.Env) error {
			e.Setenv("JOBS", jobs)
			e.Setenv("DULL", filepath.Join(filepath.Dir(jobs), "situations"))
			return nil
		},
	})
}

// appendLine is `append FILE WORD...`: one line more at the end of a file.
func appendLine(ts *testscript.TestScript, _ bool, args []string) {
	f, err := os.OpenFile(ts.MkAbs(args[0]), os.O_APPEND|os.O_WRONLY, 0)
	ts.Check(err)
	_, err = f.WriteString(strings.Join(args[1:], " ") + "\n")
	ts.Check(err)
	ts.Check(f.Close())
}

// replaceWords is `replace FILE OLD NEW`: the first OLD of a file becomes NEW.
func replaceWords(ts *testscript.TestScript, _ bool, args []string) {
	text := ts.ReadFile(args[0])
	if !strings.Contains(text, args[1]) {
		ts.Fatalf("%s holds no %q", args[0], args[1])
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(strings.Replace(text, args[1], args[2], 1)), 0o600))
}
