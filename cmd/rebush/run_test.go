package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// ran runs a command line in this process.
func ran(in string, args ...string) (code int, out, errOut string) {
	var o, e bytes.Buffer
	code = run(append([]string{"rebush"}, args...), strings.NewReader(in), &o, &e)
	return code, o.String(), e.String()
}

const (
	demo     = "../../testdata/situations/plain.yaml"
	probed   = "../../testdata/jobs/pellinthwaite-left.csv"
	shopFile = "../../testdata/situations/shop.yaml"
)

// TestCommandLines goes through command lines with what they end with.
func TestCommandLines(t *testing.T) {
	for _, c := range []struct {
		args []string
		code int
		out  string // a piece of standard output, "" for none at all
		err  string // a piece of standard error, "" for none at all
	}{
		{nil, done, "A truck is a bogie", ""},
		{[]string{"--help"}, done, "rebush sheet JOB", ""},
		{[]string{"--version"}, done, "rebush 1, build ", ""},
		{[]string{"-h", "lookup", "speed"}, done, "For example", ""},
		{[]string{"-h", "lookup", "mesh"}, done, "rebush lookup mesh spur|worm", ""},
		{[]string{"help", "cautions"}, done, "zinc", ""},
		{[]string{"help", "nonsense"}, wrong, "", "no help on"},
		{[]string{"chek", demo}, wrong, "", `"check"`},
		{[]string{"looku"}, wrong, "", `"lookup"`},
		{[]string{"lookup"}, wrong, "", "wants one of"},
		{[]string{"lookup", "speeed"}, wrong, "", `"speed"`},
		{[]string{"check"}, wrong, "", "which job"},
		{[]string{"check", ""}, wrong, "", "without a name"},
		{[]string{"check", "-", "-"}, wrong, "", "once only"},
		{[]string{"check", demo, "--jsn"}, wrong, "", "--json"},
		{[]string{"check", demo, "--trials", "3"}, wrong, "", "has no option --trials"},
		{[]string{"check", demo, "--json=yes"}, wrong, "", "takes no value"},
		{[]string{"plan", demo, "--seed"}, wrong, "", "wants a value"},
		{[]string{"plan", "--seed", "--json", demo}, wrong, "", "wants a value"},
		{[]string{"plan", demo, "--seed", "1", "--seed", "2"}, wrong, "", "stands twice"},
		{[]string{"plan", demo, "--seed", "-1"}, wrong, "", "--seed"},
		{[]string{"plan", demo, "--trials", "0"}, wrong, "", "--trials"},
		{[]string{"plan", demo, "--units", "ell"}, wrong, "", "mm, in or both"},
		{[]string{"sheet", demo, "--paper", "A5"}, wrong, "", "A4 and Letter"},
		{[]string{"sheet", demo, "--date", "25.11.2026"}, wrong, "", "2026-11-25"},
		{[]string{"sheet", demo, "-o", demo}, wrong, "", "written over"},
		{[]string{"sheet", demo, "-o", ""}, wrong, "", "-o"},
		{[]string{"sheet", demo, demo, "-o", "x.pdf"}, wrong, "", "both be drawn"},
		{[]string{"sheet", demo, demo}, wrong, "", "both be drawn"},
		{[]string{"sheet", demo, "other.yaml", "-o", "-"}, wrong, "", "one job only"},
		{[]string{"sheet", demo, "-o", "-", "--json"}, wrong, "", "either"},
		{[]string{"sheet", "-"}, wrong, "", "say -o"},
		{[]string{"template", demo, demo}, wrong, "", "one job file at a time"},
		{[]string{"why"}, wrong, "", "a job and a number"},
		{[]string{"why", demo}, done, "largest seat pressure, front axle, left = ", ""},
		{[]string{"why", demo, "slack"}, wrong, "", "no number \"slack\""},
		{[]string{"why", demo, "0"}, wrong, "", "no number 0"},
		{[]string{"why", demo, "pressure"}, wrong, "", "pressure_mpa"},
		{[]string{"check", shopFile}, done, "nothing wrong: a shop file", ""},
		{[]string{"plan", shopFile}, wrong, "", "this is a shop file, not a job"},
		{[]string{"inspect", demo}, wrong, "", "no sizes as made"},
		{[]string{"schema", "truck"}, wrong, "", "job and shop"},
		{[]string{"tables", "rule"}, wrong, "", `"rules"`},
		{[]string{"completion", "tcsh"}, wrong, "", "bash, zsh, fish and powershell"},
		{[]string{"lookup", "limits", "8 t7"}, wrong, "", "t7"},
		{[]string{"lookup", "limits", "0.8 N9"}, wrong, "", "N9"},
		{[]string{"lookup", "limits", "NaN H7"}, wrong, "", "not a length"},
		{[]string{"lookup", "limits", "1e400 H7"}, wrong, "", "1e400"},
		{[]string{"lookup", "limits", "-8 H7"}, wrong, "", "-8"},
		{[]string{"lookup", "drill", "#98"}, wrong, "", "#98"},
		{[]string{"lookup", "drill"}, wrong, "", "which drill"},
		{[]string{"lookup", "speed", "cheese", "drill", "3"}, wrong, "", "cheese"},
		{[]string{"lookup", "speed", "zinc", "die", "casting", "drill", "3"}, wrong, "", "quotes"},
		{[]string{"lookup", "speed", "brass", "drill", "0"}, wrong, "", "0"},
		{[]string{"lookup", "speed", "brass", "drill", "3", "--steps", "620,fast"}, wrong, "", "fast"},
		{[]string{"lookup", "speed", "brass", "drill", "3", "--steps", "0"}, wrong, "", "--steps"},
		{[]string{"lookup", "press"}, wrong, "", "--bush-bore"},
		{[]string{"lookup", "circle", "nowhere.csv"}, unreadable, "", "no such file"},
		{[]string{"lookup", "circle", "."}, unreadable, "", "folder"},
		{[]string{"lookup", "material", "unobtainium"}, wrong, "", "unobtainium"},
		{[]string{"lookup", "circle", probed, "--journal", "9", "--worn-to", "90"}, wrong, "", "journal is larger"},
		{[]string{"lookup", "circle", probed, "--journal", "3", "--worn-to", "270"}, done, "do not rely on this", ""},
		{[]string{"lookup", "circle", probed, "--journal", "3"}, wrong, "", "both --journal"},
		{[]string{"lookup", "circle", probed, "--fit", "best"}, wrong, "", "circumscribed"},
		{[]string{"lookup", "drill", "F", "--shop", "nowhere.yaml"}, unreadable, "", "no such file"},
		{[]string{"lookup", "speed", "brass", "drill", "3", "--shop", shopFile}, done, "set it to", ""},
		{[]string{"lookup", "drill", "31"}, done, "It may be either", ""},
		{[]string{"lookup", "drill", "--", "#31"}, done, "3.048", ""},
		{[]string{"--units", "in", "lookup", "drill", "0.25"}, done, "0.2500 in", ""},
		{[]string{"--json", "check", demo}, done, `"ok": true`, ""},
		{[]string{"survey", demo}, done, "front axle, left: worn 0.10 mm upwards", ""},
		{[]string{"why", demo, "1"}, done, "source:", ""},
		{[]string{"completion", "powershell"}, done, "@('start','check','survey',", ""},
		{[]string{"completion", "fish"}, done, "complete -c rebush", ""},
	} {
		code, out, errOut := ran("", c.args...)
		if code != c.code {
			t.Errorf("%q: exit %d, want %d\n%s%s", c.args, code, c.code, out, errOut)
		}
		for name, pair := range map[string][2]string{"standard output": {out, c.out},
			"standard error": {errOut, c.err}} {
			if pair[1] == "" && pair[0] != "" || !strings.Contains(pair[0], pair[1]) {
				t.Errorf("%q: %s is %q, want %q in it", c.args, name, pair[0], pair[1])
			}
		}
	}
}

// TestMadeOfWhatIsNotBushed: sizes as made of a bore that the plan leaves alone
// are a slip of the job file; of a plan that is stopped they cannot be judged,
// and the stop is said.
func TestMadeOfWhatIsNotBushed(t *testing.T) {
	for _, c := range []struct {
		job, made string
		code      int
		says      string
	}{
		{"plain", "rear axle.left: {seat: 5.01}", wrong,
			"rear axle.left: sizes as made are given for a bore that the plan does not bush"},
		{"plain", "front axle.left: {}", wrong, "front axle.left: no size as made is given"},
		{"thin-edge", "axle.left: {seat: 5.01}", refused, "DO NOT MACHINE"},
	} {
		data, err := os.ReadFile("../../testdata/situations/" + c.job + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		shop, err := filepath.Abs(shopFile)
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Replace(string(data), "shop: shop.yaml", "shop: "+shop, 1) + "\nmade: {" + c.made + "}\n"
		name := filepath.Join(t.TempDir(), "job.yaml")
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		code, out, errOut := ran("", "inspect", name)
		if code != c.code || !strings.Contains(out+errOut, c.says) {
			t.Errorf("%s: exit %d, want %d: %s%s", c.made, code, c.code, out, errOut)
		}
	}
}

// TestMeshNonsense: what cannot be a gear is said in words.
func TestMeshNonsense(t *testing.T) {
	base := []string{"lookup", "mesh", "spur", "--json"}
	for _, more := range [][]string{
		{"--module", "0.5", "--teeth", "12,32", "--angle", "0"},
		{"--module", "0.5", "--teeth", "12,32", "--angle", "90"},
		{"--module", "0.5", "--teeth", "0,32"}, {"--module", "0.5", "--teeth", "1,32"},
		{"--module", "0.5", "--teeth", "4,32"},
		{"--module", "0.5", "--teeth", "100000,32"}, {"--module", "0.5", "--teeth", "12.5,32"},
		{"--module", "0.5", "--teeth", "12"},
		{"--module", "0.5", "--teeth", "12,32", "--centre", "5"},
		{"--module", "0.5", "--teeth", "12,32", "--centre", "500"},
		{"--module", "NaN", "--teeth", "12,32"}, {"--module", "Inf", "--teeth", "12,32"},
		{"--module", "1e400", "--teeth", "12,32"},
		{"--module", "-1", "--teeth", "12,32"}, {"--module", "0.5", "--dp", "48", "--teeth", "12,32"},
		{"--teeth", "12,32"},
	} {
		code, out, errOut := ran("", append(base, more...)...)
		if code != wrong || out != "" || strings.Count(errOut, "\n") > 2 || errOut == "" {
			t.Errorf("%q: exit %d, %q, %q", more, code, out, errOut)
		}
	}
}

// TestHelpExamples runs every example of every help text.
func TestHelpExamples(t *testing.T) {
	t.Chdir("../..")
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "bores.csv"),
		[]byte("shaft,side,x,y,widest,narrowest\nfront,left,10,6,3.3,3.2\nfront,right,10,6,3.3,3.2\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	word := regexp.MustCompile(`"([^"]*)"|(\S+)`)
	n := 0
	var walk func(list []*command)
	walk = func(list []*command) {
		for _, c := range list {
			for _, x := range c.examples {
				var args []string
				for _, m := range word.FindAllStringSubmatch(x, -1) {
					w := m[1] + m[2]
					if strings.HasSuffix(w, ".pdf") || w == "truck.yaml" || w == "truck-kind.yaml" || w == "bores.csv" {
						w = filepath.Join(folder, w)
					}
					args = append(args, w)
				}
				if args[0] != "rebush" || args[1] == "start" && !strings.Contains(x, "--from") {
					continue // asks questions; TestStart answers them
				}
				n++
				if code, _, errOut := ran("", args[1:]...); code != done {
					t.Errorf("%s: exit %d: %s", x, code, errOut)
				}
			}
			if c.what == "" {
				t.Errorf("%s has no help", c.name)
			}
			walk(c.sub)
		}
	}
	walk(commands())
	if n < 25 {
		t.Errorf("only %d examples were run", n)
	}
}

// TestNoNumberIsNaN: the JSON of every lookup holds finite numbers only, and
// keys that end in _mm or _in hold strings.
func TestNoNumberIsNaN(t *testing.T) {
	var walk func(key string, v any)
	walk = func(key string, v any) {
		switch x := v.(type) {
		case map[string]any:
			for k, e := range x {
				walk(k, e)
			}
		case []any:
			for _, e := range x {
				walk(key, e)
			}
		case float64:
			if strings.HasSuffix(key, "_mm") || strings.HasSuffix(key, "_in") {
				t.Errorf("%s is the number %v", key, x)
			}
		case string:
			if x == "NaN" || strings.HasSuffix(x, "Inf") {
				t.Errorf("%s is %s", key, x)
			}
		}
	}
	for _, args := range [][]string{
		{"lookup", "limits", "8 H7/p6"}, {"lookup", "limits", "0.3125 FN2"}, {"lookup", "reamer", "5 H7"},
		{"lookup", "drill", "31", "--near"},
		{"lookup", "speed", "mild steel", "end mill", "6"},
		{"lookup", "mesh", "spur", "--module", "0.5", "--teeth", "12,32", "--centre", "11.3"},
		{"lookup", "press", "--bush-bore", "0", "--bush-od", "6", "--length", "4", "--interference", "0", "--bush",
			"1e5,0.3", "--housing", "1e5,0.3"},
		{"lookup", "material", "zinc die casting"}, {"plan", demo}, {"survey", demo}, {"verdict", demo},
	} {
		code, out, errOut := ran("", append(args, "--json")...)
		var v any
		if err := json.Unmarshal([]byte(out), &v); err != nil || code != done {
			t.Errorf("%q: exit %d, %v, %s", args, code, err, errOut)
			continue
		}
		walk("", v)
	}
}

// TestManyJobs: several jobs come out in the order of their names, and each
// says the same as alone.
func TestManyJobs(t *testing.T) {
	var names []string
	for _, n := range []string{"jobs/pellinthwaite", "situations/thin-edge", "jobs/wexmarrow", "situations/plain"} {
		names = append(names, "../../testdata/"+n+".yaml")
	}
	code, out, errOut := ran("", append([]string{"plan", "--json", "--trials", "2000"}, names...)...)
	if code != refused || errOut != "" {
		t.Errorf("exit %d, %s", code, errOut)
	}
	lines := strings.Split(strings.TrimSpace(out), "\n")
	if len(lines) != len(names) {
		t.Fatalf("%d lines for %d jobs", len(lines), len(names))
	}
	for i, n := range names {
		_, alone, _ := ran("", "plan", "--json", "--trials", "2000", n)
		var compact bytes.Buffer
		if err := json.Compact(&compact, []byte(alone)); err != nil {
			t.Fatal(err)
		}
		if strings.TrimSpace(compact.String()) != lines[i] {
			t.Errorf("%s is not the same among others as alone", n)
		}
	}
}
