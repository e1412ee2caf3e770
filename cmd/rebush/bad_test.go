package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestBadInput: each bad file gets clear lines and exit 2 or 3, and a sheet
// that was there is not touched.
func TestBadInput(t *testing.T) {
	folder := t.TempDir()
	good, err := os.ReadFile(demo)
	if err != nil {
		t.Fatal(err)
	}
	shop, err := os.ReadFile("../../testdata/situations/shop.yaml")
	if err != nil {
		t.Fatal(err)
	}
	put := func(name string, data []byte) string {
		path := filepath.Join(folder, name)
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	put("shop.yaml", shop)
	swap := func(old, new string) []byte {
		if !strings.Contains(string(good), old) {
			t.Fatalf("the demo job has no %q", old)
		}
		return []byte(strings.Replace(string(good), old, new, 1))
	}
	if err := os.Mkdir(filepath.Join(folder, "folder.yaml"), 0o700); err != nil {
		t.Fatal(err)
	}
	zeros := put("zeros.yaml", nil)
	if err := os.Truncate(zeros, 100<<20); err != nil {
		t.Fatal(err)
	}
	cases := []struct {
		name string
		data []byte // nil: the file is there, or is not meant to be
		code int
		says string
	}{
		{"missing.yaml", nil, unreadable, "no such file"},
		{"folder.yaml", nil, unreadable, "folder"},
		{"zeros.yaml", nil, wrong, "zeros.yaml"},
		{"empty.yaml", []byte{}, wrong, "empty"},
		{"binary.yaml", []byte("\x7fELF\x02\x01\x01\x00\xff\xfe"), wrong, "binary.yaml:1"},
		{"alias.yaml", append([]byte("a: &x [1]\nb: *x\n"), good...), wrong, "alias"},
		{"nan.yaml", swap("widest: 3.61", "widest: .nan"), wrong, "widest"},
		{"huge.yaml", swap("widest: 3.61", "widest: 1e400"), wrong, "widest"},
		{"negative.yaml", swap("{thickness: 3.0}", "{thickness: -3.0}"), wrong, "thickness"},
		{"outside.yaml", swap("centre: [12.00, 8.05]", "centre: [90.00, 8.05]"), wrong, "centre"},
		{"twice.yaml", swap("name: rear axle", "name: front axle"), wrong, "front axle"},
		{"nogear.yaml", swap("on: front axle", "on: middle axle"), wrong, "middle axle"},
		{"metal.yaml", swap("material: zinc die casting", "material: unobtainium"), wrong, "unobtainium"},
		{"side.yaml", swap("worn_to: 90", "worn_to: 0"), wrong, "worn_to"},
		{"comment.yaml", swap("widest: 3.61", "widest: #31"), wrong, "#31"},
		{"comma.yaml", swap("    journal: 3.46", "    journal: {left: 3,46}"), wrong, "3,46"},
		{"inch.yaml", swap("widest: 3.61", "widest: 0.1303"), wrong, "widest"},
		{"key.yaml", swap("condition: sound", "conditon: sound"), wrong, "condition"},
	}
	for _, c := range cases {
		path := filepath.Join(folder, c.name)
		if c.data != nil {
			put(c.name, c.data)
		}
		paper := put("paper.pdf", []byte("an old sheet"))
		for _, args := range [][]string{{"check", path}, {path, "-o", paper}, {"plan", "--json", path},
			{"template", path, "-o", paper}} {
			code, out, errOut := ran("", args...)
			if code != c.code || !strings.Contains(errOut, c.says) || out != "" ||
				strings.Contains(errOut, "fault in rebush") {
				t.Errorf("%s %s: exit %d, want %d; %q on standard output; %q wants %q", args[0], c.name, code, c.code,
					out, errOut, c.says)
			}
			if lines := strings.Count("\n"+errOut, "\n"+path+":"); lines > 8 {
				t.Errorf("%s %s: %d lines of errors:\n%s", args[0], c.name, lines, errOut)
			}
		}
		if old, err := os.ReadFile(paper); err != nil || string(old) != "an old sheet" {
			t.Errorf("%s: the paper was touched", c.name)
		}
	}
	left, err := filepath.Glob(filepath.Join(folder, "*.pdf"))
	if err != nil || len(left) != 1 {
		t.Errorf("left behind: %v", left)
	}
}

// TestUnwritable: a place that cannot be written to is exit 3.
func TestUnwritable(t *testing.T) {
	for _, to := range []string{filepath.Join(t.TempDir(), "no", "such", "folder", "x.pdf"),
		filepath.Join(demo, "x.pdf")} {
		if code, _, errOut := ran("", "sheet", demo, "-o", to); code != unreadable || errOut == "" {
			t.Errorf("%s: exit %d, %q", to, code, errOut)
		}
	}
}

// TestFault: a panic is told as a fault of the program, exit 4.
func TestFault(t *testing.T) {
	e := newEnv(nil, &strings.Builder{}, &strings.Builder{})
	out := oneJob(e, options{}, "x", false, func(string, *outcome) error { panic("a broken promise") })
	if out.code != fault || !strings.Contains(out.said.String(), "report it") ||
		!strings.Contains(out.said.String(), "a broken promise") {
		t.Errorf("exit %d, %q", out.code, out.said.String())
	}
}

func FuzzCommandLine(f *testing.F) {
	for _, s := range []string{"lookup limits 8 H7", "lookup drill 31 --json",
		"lookup mesh spur --teeth 12,32 --module 0.5", "lookup press --edge 1", "help x", "tables -- " +
			"nothing", "lookup speed a b c"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, line string) {
		args := strings.Fields(line)
		// Only commands that write nothing, and read no file by chance.
		if len(args) == 0 || args[0] != "lookup" && args[0] != "tables" && args[0] != "help" ||
			strings.Contains(line, "circle") || strings.Contains(line, "shop") {
			return
		}
		if code, out, errOut := ran("", args...); code == fault || code != done && out != "" ||
			strings.Contains(out, "NaN") {
			t.Errorf("%q: exit %d, %q, %q", args, code, out, errOut)
		}
	})
}
