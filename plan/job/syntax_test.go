package job

import (
	"errors"
	"strings"
	"testing"
	"unicode/utf16"
)

// faulty is the dull job with one fault of its YAML, and a second mistake farther
// down that the fault must not hide.
func faulty(t *testing.T, old, new string) Problems {
	t.Helper()
	text := strings.Replace(dullWith(t, old), old, new, 1)
	text = strings.Replace(text, "wheel_form: throated", "wheel_form: throted", 1)
	_, err := Parse("job.yaml", situations, []byte(text), Options{})
	var ps Problems
	if !errors.As(err, &ps) {
		t.Fatalf("%q for %q is taken: %v", new, old, err)
	}
	return ps
}

// TestSyntax: a fault of YAML is told on the line of the culprit, with what would
// be right, and hides no other mistake. One fault is one message.
func TestSyntax(t *testing.T) {
	const other = `wheel_form: "throted" is not throated, helical, straight or unknown; did you mean "throated"?`
	for _, c := range []struct{ name, old, new, want string }{
		{"tab", "    rpm: 420", "\trpm: 420", "job.yaml:22:1: a tab stands at the beginning of this line; indent with spaces"},
		{"tab behind spaces", "        narrowest: 3.51", "      \tnarrowest: 3.51",
			"job.yaml:31:7: a tab stands at the beginning of this line; indent with spaces"},
		{"too far left", "        narrowest: 3.51", "      narrowest: 3.51",
			"job.yaml:31:7: this line is indented by 6 spaces, those around it by 8; give keys of one record the same number of spaces"},
		{"too far right", "        narrowest: 3.51", "         narrowest: 3.51",
			"job.yaml:31:10: this line is indented by 9 spaces, those around it by 8; give keys of one record the same number of spaces"},
		{"in between", "        narrowest: 3.51", "       narrowest: 3.51",
			"job.yaml:31:8: this line is indented by 7 spaces, those around it by 8; give keys of one record the same number of spaces"},
		{"no colon", "        narrowest: 3.51", "        narrowest 3.51",
			"job.yaml:31:18: a colon is missing behind the key; write `narrowest: 3.51`"},
		{"no colon at a record", "    bores:", "    bores", "job.yaml:27:10: a colon is missing behind the key; write `bores:`"},
		{"equals", "        narrowest: 3.51", "        narrowest = 3.51",
			"job.yaml:31:18: no colon stands behind the key; write `narrowest: 3.51`"},
		{"tight colon", "        narrowest: 3.51", "        narrowest:3.51",
			"job.yaml:31:18: no space stands behind the colon; write `narrowest: 3.51`"},
		{"tight colon on the first line", "rebush: 1 ", "rebush:1 ", "job.yaml:1:7: no space stands behind the colon; write `rebush: 1`"},
		{"tight colon in braces", "{at: 270, metal: 6.2}", "{at:270, metal: 6.2}",
			"job.yaml:34:18: at:270: no space stands behind the colon; write `at: 270`"},
		{"tight dash", "  - name: rear axle", "  -name: rear axle",
			"job.yaml:42:3: no space stands behind the dash; write `- name: rear axle`"},
		{"open bracket", "[12.00, 8.05]", "[12.00, 8.05", "job.yaml:29:17: this [ is not closed; close it with ]"},
		{"open brace", "{left: {thickness: 3.0},", "{left: {thickness: 3.0,", "job.yaml:12:11: this { is not closed; close it with }"},
		{"wrong bracket", "[12.00, 8.05]", "[12.00, 8.05}", "job.yaml:29:29: this } closes a [; write ]"},
		{"one bracket too many", "[12.00, 8.05]", "[12.00, 8.05]]", "job.yaml:29:30: this ] closes nothing; take it away, or open it before"},
		{"no comma", "{at: 270, metal: 6.2}", "{at: 270 metal: 6.2}",
			"job.yaml:34:25: a comma is missing before metal:; part the keys in braces by commas"},
		{"inner bracket", "{at: 270, metal: 6.2}", "{at: 270, metal: [6.2}", "job.yaml:34:34: this [ is not closed; close it with ]"},
		{"behind a list over lines", "    backlash: [0.05, 0.12]\nbushes:", "    backlash: [0.05,\n\n      0.12\n    ]\nbushes",
			"job.yaml:60:7: a colon is missing behind the key; write `bushes:`"},
		{"what has to be there", "  plates: {left: {thickness: 3.0}, right: {thickness: 3.0}}", "  plates: }{",
			"job.yaml:12:3: a value is missing, or a bracket stands where none belongs; write `key: value`"},
		{"open quote", "title: Plain axle under a worm, holes worn upwards", `title: "Plain axle`,
			`job.yaml:3:8: this quote is not closed; close it on the same line: "Plain axle"`},
		{"open quote in braces", "wheel: {on: front axle,", `wheel: {on: "front axle,`,
			`job.yaml:54:17: this quote is not closed; close it on the same line: "front axle"`},
		{"text behind a quote", "title: Plain axle under a worm, holes worn upwards", `title: "Plain" axle`,
			`job.yaml:3:8: text stands behind the closing quote; put the whole in single quotes: '"Plain" axle'`},
		{"second colon", "title: Plain axle under a worm, holes worn upwards", "title: Plain: axle",
			`job.yaml:3:13: a second colon stands on this line; put the text in quotes: title: "Plain: axle"`},
		{"at sign", "title: Plain", "title: @home, plain",
			`job.yaml:3:8: text that begins with "@" has to stand in quotes; write title: "@home, plain axle under a worm, holes w...`},
		{"backslash", "title: Plain axle under a worm, holes worn upwards", `title: "C:\qain"`,
			`job.yaml:3:11: a backslash in double quotes is not understood; use single quotes`},
		{"number drill", "bushes:", "bushes: [#31]\nbushels:", "job.yaml:57:10: #31 without quotes begins a comment, and the rest of the line " +
			`is lost; write "#31" in quotes, or no 31`},
		{"nonsense", "    rpm: 420", "    }{", "job.yaml:22:5: the indentation does not fit the lines around it; " +
			"give keys of one record the same number of spaces; begin list items with - "},
	} {
		ps := faulty(t, c.old, c.new)
		if !strings.Contains("\n"+ps.Error()+"\n", "\n"+c.want+"\n") {
			t.Errorf("%s:\n got %v\nwant %s", c.name, ps, c.want)
		}
		if !strings.Contains(ps.Error(), other) {
			t.Errorf("%s hides the other mistake: %v", c.name, ps)
		}
		if most := 2 + strings.Count(c.new, "bushels"); len(ps) > most {
			t.Errorf("%s: %d messages for two mistakes:\n%v", c.name, len(ps), ps)
		}
	}
}

// TestManyFaults: as many faults as there are lines are told in their order.
func TestManyFaults(t *testing.T) {
	text := dullWith(t, "rebush")
	for _, c := range [][2]string{{"widest: 3.61", "widest:3.61"}, {"[12.01, 8.04]", "[12.01, 8.04"}, {"teeth: 24,", "teeth: 24"},
		{"condition: sound", "condition sound"}} {
		text = strings.Replace(text, c[0], c[1], 1)
	}
	_, err := Parse("job.yaml", situations, []byte(text), Options{})
	var ps Problems
	errors.As(err, &ps)
	var lines []int
	for _, p := range ps {
		lines = append(lines, p.Pos.Line)
	}
	if len(lines) != 4 || lines[0] != 10 || lines[1] != 30 || lines[2] != 36 || lines[3] != 54 {
		t.Errorf("lines %v: %v", lines, err)
	}
}

// TestLineLeftOut: the line behind one that cannot be read at all is read.
func TestLineLeftOut(t *testing.T) {
	ps := faulty(t, "    rpm: 420\n    load: 2.5 N", "    }{\n    load: 2.5 stone")
	if !strings.Contains(ps.Error(), `job.yaml:23:11: load: "stone" is not a unit of force`) {
		t.Error(ps)
	}
}

// TestMark: the line stands below a message, with a mark under the culprit, no
// wider than a screen, and with nothing in it that a terminal would obey.
func TestMark(t *testing.T) {
	for _, c := range []struct {
		p    Problem
		want string
	}{
		{Problem{Pos{"a.yaml", 3, 61}, "w", "r", strings.Repeat("abcdefghi ", 12)},
			"a.yaml:3:61: w; r\n     3 | ...abcdefghi abcdefghi abcdefghi abcdefghi abcdefghi abcdefghi abc...\n" +
				"       |                        ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^"},
		{Problem{Pos{"a.yaml", 30, 17}, "widest: 361 mm is wrong", "3.61 would fit", "        widest: 361   # wide"},
			"a.yaml:30:17: widest: 361 mm is wrong; 3.61 would fit\n    30 |         widest: 361   # wide\n       |                 ^^^"},
		{Problem{Pos{"a.yaml", 3, 4}, "w", "r", `a: "b c", d`}, "a.yaml:3:4: w; r\n     3 | a: \"b c\", d\n       |    ^^^^^"},
		{Problem{Pos{"a.yaml", 3, 1}, "w", "r", "größe: [1, 2]"}, "a.yaml:3:1: w; r\n     3 | größe: [1, 2]\n       | ^^^^^"},
		{Problem{Pos{"a.yaml", 3, 5}, "w", "r", "ab: \x1b[2J\u202e"}, "a.yaml:3:5: w; r\n     3 | ab: ?[2J?\n       |     ^^^^^"},
		{Problem{Pos{"a.yaml", 3, 101}, "w", "r", strings.Repeat("x", 90) + strings.Repeat(" 12345678", 4)}, ""},
		{Problem{Pos{"a.yaml", 3, 1}, "w", "r", ""}, "a.yaml:3:1: w; r"},
		{Problem{Pos{"a.yaml", 0, 0}, "w", "r", "x"}, "a.yaml: w; r"},
	} {
		got := Problems{c.p}.Screen(0)
		if c.want != "" && got != c.want {
			t.Errorf("got\n%s\nwant\n%s", got, c.want)
		}
		for _, l := range strings.Split(got, "\n") {
			if len([]rune(l)) > screenWidth {
				t.Errorf("%d wide: %s", len(l), l)
			}
		}
		if c.want == "" && (!strings.Contains(got, " | ...") || !strings.HasSuffix(got, "^^^^")) {
			t.Error(got)
		}
	}
}

// TestScreenful: very many mistakes are counted, not listed.
func TestScreenful(t *testing.T) {
	var ps Problems
	for range 30 {
		ps = append(ps, Problem{Wrong: "w"})
	}
	if s := ps.Screen(0); strings.Count(s, "\n") != 20 || !strings.HasSuffix(s, "and 10 more mistakes: mend these first") {
		t.Error(s)
	}
}

// TestTypewritten: what editors and word processors make of a job is read, or told
// for what it is.
func TestTypewritten(t *testing.T) {
	plain := dullWith(t, "widest: 3.61")
	whole, err := Parse("job.yaml", situations, []byte(plain), Options{})
	if err != nil {
		t.Fatal(err)
	}
	want := string(whole.Canonical())
	wide := func(big, mark bool) string {
		var b strings.Builder
		units := utf16.Encode([]rune(plain))
		if mark {
			units = append([]uint16{0xFEFF}, units...)
		}
		for _, u := range units {
			if hi, lo := byte(u>>8), byte(u); big {
				b.Write([]byte{hi, lo})
			} else {
				b.Write([]byte{lo, hi})
			}
		}
		return b.String()
	}
	with := func(old, new string) string { return strings.ReplaceAll(plain, old, new) }
	for name, text := range map[string]string{
		"UTF-16 LE": wide(false, true), "UTF-16 BE": wide(true, true), "LE without a mark": wide(false, false), "BE without a mark": wide(true, false),
		"mark": "\uFEFF" + plain, "CRLF": with("\n", "\r\n"), "hard spaces": with(" ", "\u00A0"), "thin spaces": with(": ", ":\u202F"),
		"curly quotes": with("sintered bronze", "“sintered bronze”"), "curly key": with("on: front axle", "on: ‘front axle’"),
		"low quotes": with("[front axle, rear axle]", "[„front axle“, „rear axle“]"), "tab behind a colon": with("widest: ", "widest:\t"),
		"zero width": with("widest", "wid\u200Best"), "unit of a module": with("module: 0.5", "module: 0.5 mm"),
		"degrees": with("widest_at: 90", "widest_at: 90°"), "degree words": with("widest_at: 90", "widest_at: 90 deg"), "turns": with("rpm: 420", "rpm: 420 rpm"),
	} {
		j, err := Parse("job.yaml", situations, []byte(text), Options{})
		if err != nil {
			t.Errorf("%s: %v", name, err)
		} else if string(j.Canonical()) != want {
			t.Errorf("%s: another job", name)
		}
	}
	for text, want := range map[string]string{
		"PK\x03\x04....word/document.xml":                           "this is a word processor's file (.docx), not plain text; " + savedPlain,
		"PK\x03\x04mimetypeapplication/vnd.oasis.opendocument.text": "this is a word processor's file (.odt), not plain text; " + savedPlain,
		"PK\x03\x04xl/workbook.xml":                                 "this is a spreadsheet (.xlsx), not plain text; " + savedPlain,
		`{\rtf1\ansi rebush: 1}`:                                    "this is a word processor's file (RTF), not plain text; " + savedPlain,
		"\xD0\xCF\x11\xE0\xA1\xB1":                                  "this is a file of an older word processor or spreadsheet (.doc, .xls), not plain text; " + savedPlain,
		"%PDF-1.7":                                                  "this is a PDF, not plain text; " + savedPlain,
	} {
		if _, err := Parse("job.yaml", ".", []byte(text), Options{}); err == nil || err.Error() != "job.yaml:1:1: "+want {
			t.Errorf("%q: %v", text, err)
		}
	}
	// An accent in another code is told where it stands.
	if _, err := Parse("job.yaml", ".", []byte("rebush: 1\ntitle: caf\xe9"), Options{}); err == nil ||
		!strings.HasPrefix(err.Error(), "job.yaml:2:11: byte 0xe9 is not UTF-8 text;") {
		t.Error(err)
	}
}
