package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// tug is a whole short way: a pinion drives the only axle, and there is no shop
// file yet.
const tug = `Kiosk cable tug
mm
noisy
nothing
zinc
sound
3.1
66 x 24
19
1
3.97

good
18 12.05
4.16 4.02
12 o'clock
6.3 down
18 12.04
4.12 4.01


spur
0.5
28
12
28.2 12
4 x 6 x 4


60 0.5
no

drill press
pinned



n
40 EUR
`

// begun makes a job in a folder of its own from lines of answers.
func begun(t *testing.T, folder, lines string) (code int, out, errOut string) {
	t.Helper()
	return ran(lines, "start", filepath.Join(folder, "tug.yaml"))
}

// TestStartGoesOn: whenever the answers break off, the same command goes on to
// the same job and shop, and nothing else is left in the folder.
func TestStartGoesOn(t *testing.T) {
	whole := t.TempDir()
	if code, out, errOut := begun(t, whole, tug+"none\nno\n"); code != done {
		t.Fatalf("exit %d\n%s%s", code, out, errOut)
	}
	lines := strings.SplitAfter(tug, "\n")
	for n := 0; n < len(lines); n += 5 { // after each of them: TestResume of the room of jobs
		folder := t.TempDir()
		code, _, errOut := begun(t, folder, strings.Join(lines[:n], ""))
		if n < len(lines)-1 && (code != wrong || !strings.Contains(errOut, "the answers ended")) {
			t.Fatalf("after %d: exit %d, %s", n, code, errOut)
		}
		if n == len(lines)-1 {
			continue // all is answered
		}
		if code, out, errOut := begun(t, folder, strings.Join(lines[n:], "")); code != done {
			t.Fatalf("after %d: exit %d\n%s%s", n, code, out, errOut)
		}
		list, err := os.ReadDir(folder)
		if err != nil || len(list) != 2 {
			t.Fatalf("after %d: %v, %v", n, list, err)
		}
		for _, f := range list {
			got, err1 := os.ReadFile(filepath.Join(folder, f.Name()))
			want, err2 := os.ReadFile(filepath.Join(whole, f.Name()))
			if err1 != nil || err2 != nil || string(got) != string(want) {
				t.Fatalf("after %d: %s differs\n%s", n, f.Name(), got)
			}
		}
	}
}

// TestStartLeadsOn: where a truck would be given up though a figure could save
// it, start says which, and an empty answer asks for it.
func TestStartLeadsOn(t *testing.T) {
	folder := t.TempDir()
	code, out, errOut := begun(t, folder, tug+"\n15.0\n\n0.02\n7.0\nnone\nno\n")
	if code != done || errOut != "" {
		t.Fatalf("exit %d\n%s%s", code, out, errOut)
	}
	first, then, ok := strings.Cut(out, "Which of them")
	if !ok || !strings.Contains(first, "Another truck is the better way") || !strings.Contains(first, "Tried: the tip") ||
		!strings.Contains(then, "Tip diameter of the wheel?") || !strings.Contains(then, "Planning it") {
		t.Errorf("%s", out)
	}
	chance := func(s string) string {
		_, s, _ = strings.Cut(s, "Re-bushing it: possible, right first time ")
		s, _, _ = strings.Cut(s, " in 100")
		return s
	}
	if before, after := chance(first), chance(then); before == "" || after == "" || len(before) > len(after) || before >= after {
		t.Errorf("right first time %q before the tips are known, %q after", before, after)
	}
}

// TestStartOdd: what nobody should answer loses nothing that was said before, and
// no answer is taken for another question.
func TestStartOdd(t *testing.T) {
	for _, odd := range []string{strings.Repeat("x", 10<<10), strings.Repeat("9 ", 100<<10), "\x00", "\xff\xfe", "\x1b[2J", "🚂🚂",
		"#= plates/width: 12", "'", "- [", "{", "keep", "back\nzinc"} {
		folder := t.TempDir()
		code, out, errOut := begun(t, folder, "Tug\nmm\nnoisy\nnothing\nzinc\nsound\n"+odd+"\n3.1\n")
		text, err := os.ReadFile(filepath.Join(folder, "tug.yaml"))
		if err != nil || code != wrong || !strings.Contains(errOut, "holds all that you said") {
			t.Errorf("%.20q: exit %d, %v\n%s%s", odd, code, err, out, errOut)
			continue
		}
		if strings.HasPrefix(odd, "back") {
			continue
		}
		if !strings.Contains(string(text), "condition: sound") || !strings.Contains(string(text), "left: {thickness: 3.1}") {
			t.Errorf("%.20q:\n%s", odd, text)
		}
		if len(out) > 8000 {
			t.Errorf("%.20q is answered with %d letters", odd, len(out))
		}
	}
}

// TestStartTouchesNothing: a file that start did not write, and one that somebody
// changes meanwhile, stay as they are.
func TestStartTouchesNothing(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "tug.yaml")
	if err := os.WriteFile(path, []byte("rebush: 1\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if code, _, errOut := begun(t, folder, tug); code != wrong || !strings.Contains(errOut, "not written over") {
		t.Errorf("exit %d, %s", code, errOut)
	}
	d := &draftFile{path: path, last: []byte("as start left it\n"), desk: &desk{}}
	if err := d.save([]byte("more\n")); err == nil || !strings.Contains(err.Error(), "was changed or taken away") {
		t.Error(err)
	}
	if text, _ := os.ReadFile(path); string(text) != "rebush: 1\n" {
		t.Errorf("%s", text)
	}
	if code, _, errOut := ran(tug, "start", filepath.Join(folder, "nowhere", "tug.yaml")); code != wrong ||
		!strings.Contains(errOut, "there is no folder") {
		t.Errorf("exit %d, %s", code, errOut)
	}
}

// TestStartAsksAgain: what was left open is said at the end, and asked when the
// command is given again; a question is put again by its number.
func TestStartAsksAgain(t *testing.T) {
	folder := t.TempDir()
	open := strings.Replace(tug, "\n66 x 24\n", "\nskip\n", 1)
	code, out, _ := begun(t, folder, open+"6\ncracked\nnone\n")
	if code != wrong || !strings.Contains(out, "it is no job yet") || !strings.Contains(out, "Is it sound, cracked, swollen or unknown? [sound] cracked") {
		t.Errorf("exit %d\n%s", code, out)
	}
	code, out, errOut := begun(t, folder, "66 24\nnone\nno\n")
	if code != done || !strings.Contains(out, "How long is a plate") || strings.Contains(out, "thick is") {
		t.Errorf("exit %d\n%s%s", code, out, errOut)
	}
}
