package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"rebush/fits/table"
	"rebush/testdata"
)

// TestTablesChecks: every printed row is worked out and listed, on screen and
// as JSON, and all agree.
func TestTablesChecks(t *testing.T) {
	if slices.Contains(table.Names(), checksWord) {
		t.Fatal("a table has the name of the list of checks")
	}
	want := 0
	for _, name := range testdata.Files(t, "checks") {
		want += len(testdata.Rows[checkRow](t, name))
	}
	code, out, _ := ran("", "tables", "checks", "--json")
	var all checksJSON
	if err := json.Unmarshal([]byte(out), &all); code != done || err != nil {
		t.Fatalf("exit %d, %v", code, err)
	}
	if all.Rows != want || all.Disagree != 0 || all.Figures != len(all.Checks) {
		t.Errorf("%d rows, %d disagree, %d figures of %d; want %d rows", all.Rows, all.Disagree, len(all.Checks),
			all.Figures, want)
	}
	i := slices.IndexFunc(all.Checks, func(c checkJSON) bool { return c.Row == "FIT-001" })
	if i < 0 || all.Checks[i].Expected != "15" || *all.Checks[i].Low != 15 || *all.Checks[i].High != 15 ||
		!all.Checks[i].Agrees || !strings.Contains(all.Checks[i].Source, "ISO 286-1") {
		t.Errorf("FIT-001: %+v", all.Checks[max(i, 0)])
	}
	code, out, _ = ran("", "tables", "checks")
	lines := strings.Split(strings.TrimSpace(out), "\n")
	last := regexp.MustCompile(`^184 rows, (\d+) figures: \d+ agree, 0 disagree$`)
	if code != done || !last.MatchString(lines[len(lines)-1]) {
		t.Errorf("exit %d, last line %q", code, lines[len(lines)-1])
	}
	if n := strings.Count(out, " agrees "); n != all.Figures {
		t.Errorf("%d lines agree, want %d", n, all.Figures)
	}
}

// TestTablesChecksDisagree: with a shop's table that has 16 um for the 15 of
// IT7 over 6 to 10 mm, what was printed of that is not met: it is said, counted,
// and the exit is 1.
func TestTablesChecksDisagree(t *testing.T) {
	dir := t.TempDir()
	grades, err := os.ReadFile("../../fits/table/data/limits_it.csv")
	if err != nil {
		t.Fatal(err)
	}
	changed := bytes.Replace(grades, []byte("\n6,10,IT7,15,"), []byte("\n6,10,IT7,16,"), 1)
	shop, err := os.ReadFile("../../testdata/situations/shop.yaml")
	if err != nil || bytes.Equal(changed, grades) {
		t.Fatal("no row to change", err)
	}
	shop = append(shop, []byte("\ntables: {limits_it: grades.csv}\n")...)
	for name, data := range map[string][]byte{"grades.csv": changed, "shop.yaml": shop} {
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	code, out, _ := ran("", "tables", "checks", "--shop", filepath.Join(dir, "shop.yaml"))
	if !regexp.MustCompile(`(?m)^FIT-001 +DISAGREES +15 +exact +16 `).MatchString(out) || code != refused {
		t.Errorf("exit %d: %s", code, out[max(0, len(out)-600):])
	}
	code, out, _ = ran("", "tables", "checks", "--json", "--shop", filepath.Join(dir, "shop.yaml"))
	var all checksJSON
	if err := json.Unmarshal([]byte(out), &all); code != refused || err != nil || all.Disagree < 5 {
		t.Errorf("exit %d, %v, %d disagree", code, err, all.Disagree)
	}
}
