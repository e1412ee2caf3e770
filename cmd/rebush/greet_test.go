package main

import (
	"bytes"
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"
	"testing"
)

// greeted is a whole conversation of `rebush` alone on a terminal.
func greeted(t *testing.T, answers string) string {
	t.Helper()
	var b bytes.Buffer
	e := newEnv(strings.NewReader(answers), &b, &b)
	e.terminal, e.inTerminal = true, true
	if err := dispatch(e, nil); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// TestGreet: on a terminal it offers start, check and sheet, does what is
// chosen, tells what is wrong with it, and goes on until nothing is chosen.
func TestGreet(t *testing.T) {
	for _, none := range []string{"", "\n"} {
		out := greeted(t, none)
		for _, w := range []string{"rebush 1", "  1  start", "  2  check", "  3  sheet"} {
			if strings.Count(out, w) != 1 {
				t.Errorf("%q: %q is not offered once:\n%s", none, w, out)
			}
		}
	}
	dir := t.TempDir()
	for _, n := range []string{"plain.yaml", "shop.yaml"} {
		b, err := os.ReadFile("../../testdata/situations/" + n)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, n), b, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	t.Chdir(dir)
	out := greeted(t, "9\n2\n\"plain.yaml\"\ncheck\nnowhere.yaml\n3\n'plain.yaml'\n\n")
	for _, w := range []string{`There is no "9" here`, "plain.yaml: nothing wrong: job 2026-301",
		"nowhere.yaml: there is no such file", "plain.pdf: "} {
		if !strings.Contains(out, w) {
			t.Errorf("no %q in\n%s", w, out)
		}
	}
	if _, err := os.Stat("plain.pdf"); err != nil {
		t.Error(err)
	}
	// A name that looks like an option is a name.
	if out := greeted(t, "2\n--json\n\n"); !strings.Contains(out, "--json: there is no such file") {
		t.Errorf("%s", out)
	}
}

// TestNoGreeting: on a pipe it is the help, and so it is with --help.
func TestNoGreeting(t *testing.T) {
	for _, half := range []bool{false, true} {
		var b bytes.Buffer
		e := newEnv(strings.NewReader("1\n"), &b, &b)
		e.terminal, e.inTerminal = half, !half
		if err := dispatch(e, nil); err != nil || !strings.Contains(b.String(), "rebush verdict JOB...") {
			t.Errorf("%v, %s", err, b.String())
		}
	}
	var b bytes.Buffer
	e := newEnv(strings.NewReader(""), &b, &b)
	e.terminal, e.inTerminal = true, true
	if err := dispatch(e, []string{"--help"}); err != nil || !strings.Contains(b.String(), "rebush verdict JOB...") {
		t.Errorf("--help on a terminal: %v, %s", err, b.String())
	}
}

// TestWindowStaysOpen: a window of its own is held open where a file was
// dropped on the program, and after a conversation it is not.
func TestWindowStaysOpen(t *testing.T) {
	for _, c := range []struct {
		own  bool
		args []string
		code int
		want bool
	}{
		{true, []string{"rebush.exe", `C:\trucks\job.yaml`}, done, true}, {true, []string{"rebush.exe"}, done, false},
		{true, []string{"rebush.exe", "x"}, wrong, true}, {true, []string{"rebush.exe"}, fault, true},
		{false, []string{"rebush.exe", "job.yaml"}, wrong, false},
	} {
		if got := waits(c.own, c.args, c.code); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
	in := strings.NewReader("\nleft")
	var b bytes.Buffer
	waitForKey(in, &b)
	if !strings.Contains(b.String(), "Press Enter") {
		t.Errorf("%q", b.String())
	}
}

// TestDropped: a job named alone, by its whole path, is drawn beside itself.
func TestDropped(t *testing.T) {
	dir := t.TempDir()
	for _, n := range []string{"plain.yaml", "shop.yaml"} {
		b, err := os.ReadFile("../../testdata/situations/" + n)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, n), b, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if code, out, errOut := ran("", filepath.Join(dir, "plain.yaml")); code != done || errOut != "" {
		t.Errorf("exit %d, %s%s", code, out, errOut)
	}
	if _, err := os.Stat(filepath.Join(dir, "plain.pdf")); err != nil {
		t.Error(err)
	}
}

// TestBuild: the revision where it is known, with a plus where files were
// changed since.
func TestBuild(t *testing.T) {
	set := func(kv ...string) *debug.BuildInfo {
		var b debug.BuildInfo
		for i := 0; i < len(kv); i += 2 {
			b.Settings = append(b.Settings, debug.BuildSetting{Key: kv[i], Value: kv[i+1]})
		}
		return &b
	}
	for want, info := range map[string]*debug.BuildInfo{
		"source":        set("vcs.modified", "true"),
		"0123456789ab":  set("vcs.revision", "0123456789abcdef0123", "vcs.modified", "false"),
		"0123456789ab+": set("vcs.modified", "true", "vcs.revision", "0123456789abcdef0123"),
		"0123":          set("vcs.revision", "0123"),
	} {
		if got := buildOf(info); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
