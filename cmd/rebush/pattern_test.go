package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestPatternCommand: a pattern goes to standard output or to a file of its own,
// never over what was read; a job that names it is planned by it, and why names
// the line of the pattern.
func TestPatternCommand(t *testing.T) {
	dir := t.TempDir()
	put := func(name, text string) string {
		p := filepath.Join(dir, name)
		if err := os.WriteFile(p, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return p
	}
	whole, err := os.ReadFile("../../testdata/situations/plain.yaml")
	if err != nil {
		t.Fatal(err)
	}
	shop, err := os.ReadFile("../../testdata/situations/shop.yaml")
	if err != nil {
		t.Fatal(err)
	}
	path := put("plain.yaml", string(whole))
	put("shop.yaml", string(shop))
	code, out, errOut := ran("", "pattern", path)
	if code != done || errOut != "" || !strings.Contains(out, "\nrebush: 1") || strings.Contains(out, "widest") {
		t.Errorf("exit %d, %q: %s", code, errOut, out)
	}
	// from another folder the shop is named from there
	kinds := filepath.Join(dir, "kinds")
	if err := os.Mkdir(kinds, 0o755); err != nil {
		t.Fatal(err)
	}
	like := filepath.Join(kinds, "kind.yaml")
	if code, out, errOut = ran("", "pattern", path, "-o", like); code != done || !strings.Contains(out, "like: kind.yaml") {
		t.Errorf("exit %d, %q %q", code, out, errOut)
	}
	if text, err := os.ReadFile(like); err != nil || !strings.Contains(string(text), "shop: ../shop.yaml") {
		t.Errorf("%v: %s", err, text)
	}
	for _, to := range []string{path, filepath.Join(dir, "shop.yaml"), like} {
		before, _ := os.ReadFile(to)
		if code, _, errOut = ran("", "pattern", path, "-o", to); code != wrong {
			t.Errorf("-o %s: exit %d, %q", to, code, errOut)
		}
		if after, _ := os.ReadFile(to); string(before) != string(after) {
			t.Errorf("%s was written over", to)
		}
	}
	second := put("second.yaml", `rebush: 1
job: 2026-302
like: kinds/kind.yaml
chassis: {condition: sound}
shafts:
  - name: front axle
    bores:
      left: {centre: [12.00, 8.05], widest: 3.61, narrowest: 3.51, worn_to: 90}
      right: {centre: [12.01, 8.04], widest: 3.59, narrowest: 3.51, worn_to: 90}
  - name: rear axle
    do: leave
    bores:
      left: {centre: [53.00, 8.00], widest: 3.50, narrowest: 3.50}
      right: {centre: [53.01, 8.00], widest: 3.50, narrowest: 3.50}
`)
	if code, out, errOut = ran("", "check", second); code != done || !strings.Contains(out, "nothing wrong") {
		t.Errorf("exit %d, %q %q", code, out, errOut)
	}
	// the edge is the pattern's, the hole the job's
	code, out, errOut = ran("", "why", second, "seats/front axle.left/metal_left_mm")
	if code != done || !strings.Contains(out, "source: "+like+":2") || !strings.Contains(out, "source: "+second+":") {
		t.Errorf("exit %d, %q %q", code, out, errOut)
	}
	if code, _, errOut = ran("", "pattern", second); code != wrong || !strings.Contains(errOut, "second.yaml:3:7: this job has a pattern already, kinds/kind.yaml") {
		t.Errorf("exit %d, %q", code, errOut)
	}
	if code, _, errOut = ran("", "pattern", filepath.Join(dir, "none.yaml")); code != unreadable {
		t.Errorf("exit %d, %q", code, errOut)
	}
	if code, _, errOut = ran("", "check", put("alone.yaml", "rebush: 1\nlike: none.yaml\n")); code != unreadable ||
		!strings.Contains(errOut, "alone.yaml:2:7: "+filepath.Join(dir, "none.yaml")+": there is no such file") {
		t.Errorf("exit %d, %q", code, errOut)
	}
	// no paper stands over a pattern
	if code, _, errOut = ran("", "sheet", second, "-o", like, "--force"); code != wrong {
		t.Errorf("exit %d, %q", code, errOut)
	}
}
