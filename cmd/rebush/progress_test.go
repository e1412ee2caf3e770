package main

import (
	"bytes"
	"os"
	"strings"
	"testing"
)

// TestProgress: on a terminal several jobs are counted on standard error and
// the count is wiped; one job, or no terminal, has none. Standard output is
// the same either way.
func TestProgress(t *testing.T) {
	work := func(terminal bool, jobs ...string) (out, errOut string) {
		var o, e bytes.Buffer
		env := newEnv(strings.NewReader(""), &o, &e)
		env.errTerminal = terminal
		if err := runSurvey(env, options{}, jobs); err != nil {
			t.Fatal(err)
		}
		return o.String(), e.String()
	}
	two := []string{demo, "../../testdata/jobs/wexmarrow.yaml"}
	quiet, none := work(false, two...)
	loud, count := work(true, two...)
	if none != "" || quiet != loud || quiet == "" {
		t.Errorf("without a terminal %q; output the same: %v", none, quiet == loud)
	}
	if !strings.Contains(count, "\r1 of 2") || !strings.Contains(count, "\r2 of 2") ||
		!strings.HasSuffix(count, "\r\x1b[K") {
		t.Errorf("%q does not count two jobs and wipe it", count)
	}
	if _, one := work(true, demo); one != "" {
		t.Errorf("one job is counted: %q", one)
	}
}

// TestNoColour: colour stands on a terminal only, never with NO_COLOR or on a
// dumb terminal, and the words are the same without it.
func TestNoColour(t *testing.T) {
	for _, c := range []struct {
		terminal      bool
		noColour, dim string // of NO_COLOR and TERM
		want          bool
	}{
		{true, "", "xterm", true}, {true, "1", "xterm", false}, {true, "", "dumb", false}, {false, "", "xterm", false},
	} {
		t.Setenv("NO_COLOR", c.noColour)
		t.Setenv("TERM", c.dim)
		if got := colourful(c.terminal); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
	thin := "../../testdata/situations/thin-edge.yaml"
	shown := func(colour bool) string {
		var o bytes.Buffer
		e := newEnv(os.Stdin, &o, &o)
		e.colour = colour
		if err := runPlan(e, options{text: map[string]string{"trials": "500"}},
			[]string{thin}); codeOf(err) != refused {
			t.Fatal(err)
		}
		return o.String()
	}
	plain, painted := shown(false), shown(true)
	if strings.Contains(plain, "\x1b") || !strings.Contains(plain, "DO NOT MACHINE\n") ||
		!strings.Contains(plain, "stop: ") {
		t.Errorf("without colour: %.200s", plain)
	}
	bare := painted
	for _, code := range []string{red, yellow, bold, "0"} {
		bare = strings.ReplaceAll(bare, "\x1b["+code+"m", "")
	}
	if painted == plain || bare != plain {
		t.Error("colour changes the words, or there is none")
	}
}
