package main

import (
	"bytes"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// TestHarmless: what could move a cursor, turn the direction of reading or be
// no text is written out; letters of any tongue stay.
func TestHarmless(t *testing.T) {
	for in, want := range map[string]string{
		"plain, Ø 3 ± 0.1 µm ≤ ř ├─ 後\n\tx": "plain, Ø 3 ± 0.1 µm ≤ ř ├─ 後\n\tx",
		"\x1b[2J":                           `\x1b[2J`,
		"\x1b]0;title\a":                    `\x1b]0;title\x07`,
		"a\x00b\rc\x7f":                     `a\x00b\x0dc\x7f`,
		"\u009b31m":                         `\u009b31m`, // the one-letter form of ESC [
		"abc\u202edef\u2066\u200f":          `abc\u202edef\u2066\u200f`,
		"\ufeffx\u2028y":                    `\ufeffx\u2028y`,
		"tag \U000e0041":                    `tag \U000e0041`,
		"bad \xc3( \xff and \xff[ \xf0\x9f": `bad \xc3( \xff and \xff[ \xf0\x9f`,
	} {
		if got := harmless(in); got != want {
			t.Errorf("%q becomes %q, want %q", in, got, want)
		}
	}
}

// TestPaintedOnScreen: our own paint becomes codes of the terminal, those of a
// name do not.
func TestPaintedOnScreen(t *testing.T) {
	var b bytes.Buffer
	e := newEnv(nil, &b, &b)
	e.colour = true
	e.printf("%s: %s\n", e.paint(red, "stop"), "drawer \x1b[32m7")
	if want := "\x1b[31;1mstop\x1b[0m: drawer \\x1b[32m7\n"; b.String() != want {
		t.Errorf("%q, want %q", b.String(), want)
	}
}

// TestPlainJSON: JSON says the same, in letters that turn nothing round.
func TestPlainJSON(t *testing.T) {
	b, err := encode(map[string]string{"name": "a\u202eb\u009bc\U000e0041d\x1b"}, false)
	if want := "{\"name\":\"a\\u202eb\\u009bc\\udb40\\udc41d\\u001b\"}\n"; err != nil || string(b) != want {
		t.Errorf("%s, want %s, %v", b, want, err)
	}
}

// TestBroken: pieces are no wider than the screen, hang where their text
// stands, and hold every word; what fits is left alone.
func TestBroken(t *testing.T) {
	for _, c := range []struct {
		line string
		wide int
		want []string
	}{
		{"as it is,   with its blanks", 27, []string{"as it is,   with its blanks"}},
		{"one two three four", 9, []string{"one two", "  three", "  four"}},
		{"  - one two three", 11, []string{"  - one two", "    three"}},
		{"seat   the hole that is cut", 20, []string{"seat   the hole that", "       is cut"}},
		{"│  ├─ a result of two", 14, []string{"│  ├─ a result", "│  │  of two"}},
		{"└─ a result of two", 11, []string{"└─ a result", "   of two"}},
		{"unbreakablyunbreakably one", 10, []string{"unbreakablyunbreakably", "  one"}},
	} {
		if d := cmp.Diff(c.want, broken(c.line, c.wide)); d != "" {
			t.Errorf("%q at %d (-want +got)\n%s", c.line, c.wide, d)
		}
	}
}

// TestNarrowScreens: every command keeps to a screen of 40 columns and up, says
// the same words as without one, and a table too wide stands row by row.
func TestNarrowScreens(t *testing.T) {
	for _, args := range [][]string{{"help"}, {"help", "sheet"}, {"help", "lookup", "press"}, {"tables"},
		{"survey", demo}, {"plan", demo, "--trials", "300"}, {"verdict", demo, "--trials", "300"},
		{"why", demo, "--trials", "300", "seats/front axle.left/pressure_mpa/max"}, {"lookup", "drill", "3.31"},
		{"lookup", "speed", "brass", "drill", "3"}, {"lookup", "limits", "8 H7/p6"},
		{"plan", demo, "nowhere.yaml", "--trials", "300"}} {
		t.Setenv("COLUMNS", "")
		_, far, _ := ran("", args...)
		for _, columns := range []string{"40", "57", "80", "200"} {
			t.Setenv("COLUMNS", columns)
			_, near, errOut := ran("", args...)
			room := map[string]int{"40": 40, "57": 57, "80": 80, "200": 200}[columns]
			for _, l := range strings.Split(near+errOut, "\n") {
				text := strings.TrimLeft(l, " │├└─")
				if n := len([]rune(l)); n > room && strings.Contains(text, " ") {
					t.Errorf("%v at %s: %d columns: %q", args, columns, n, l)
				}
			}
			words := func(s string) string { // without what draws a tree, and without a table
				return strings.Join(strings.Fields(strings.NewReplacer("│", " ", "├", " ", "└", " ", "─", " ").Replace(s)), " ")
			}
			if a, b := words(far), words(near); a != b && !strings.Contains(near, "way: ") && !strings.Contains(near, "result: ") &&
				!strings.Contains(near, "table: ") && !strings.Contains(near, "series: ") {
				t.Errorf("%v at %s: other words\n%s", args, columns, cmp.Diff(a, b))
			}
		}
	}
	t.Setenv("COLUMNS", "40")
	_, out, _ := ran("", "lookup", "drill", "3.31")
	if !strings.Contains(out, "series: number\n  below: #30, 3.264 mm\n  above: #29, 3.454 mm\n") {
		t.Errorf("the table of drills at 40 columns:\n%s", out)
	}
	t.Setenv("COLUMNS", "3")
	if _, out, _ := ran("", "help"); !strings.Contains(out, "rebush plans the re-bushing of worn axle") {
		t.Error("narrower than 40 columns nothing is broken further")
	}
}
