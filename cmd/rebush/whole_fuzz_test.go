package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// FuzzWholeWay takes the bytes of a job file all the way: read, planned,
// printed. Whatever they are, the program ends with a code of its own, never
// with a fault, its JSON is JSON, a sheet is there whole or not at all, and no
// figure on the screen is none.
func FuzzWholeWay(f *testing.F) {
	for _, pattern := range []string{"../../testdata/situations/*.yaml", "../../testdata/jobs/gullwrack*.yaml"} {
		names, err := filepath.Glob(pattern)
		if err != nil {
			f.Fatal(err)
		}
		for _, name := range names {
			data, err := os.ReadFile(name)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(data)
		}
	}
	shops := map[string][]byte{}
	for _, name := range []string{"situations/shop.yaml", "situations/shop-odd-reamer.yaml", "jobs/shop-gullwrack.yaml"} {
		data, err := os.ReadFile("../../testdata/" + name)
		if err != nil {
			f.Fatal(err)
		}
		shops[filepath.Base(name)] = data
	}
	f.Fuzz(func(t *testing.T, job []byte) {
		dir := t.TempDir()
		for name, data := range shops {
			if err := os.WriteFile(filepath.Join(dir, name), data, 0o600); err != nil {
				t.Fatal(err)
			}
		}
		name, paper := filepath.Join(dir, "job.yaml"), filepath.Join(dir, "job.pdf")
		if err := os.WriteFile(name, job, 0o600); err != nil {
			t.Fatal(err)
		}
		code, out, said := ran("", "plan", name, "--json", "--trials", "100")
		if code < 0 || code > 2 {
			t.Fatalf("plan: exit %d: %s", code, said)
		}
		if code < 2 && !json.Valid([]byte(out)) {
			t.Errorf("plan --json: no JSON: %.200s", out)
		}
		code, out, said = ran("", "sheet", name, "-o", paper, "--trials", "100")
		if code < 0 || code > 2 {
			t.Fatalf("sheet: exit %d: %s", code, said)
		}
		for _, word := range []string{"NaN", "+Inf", "-Inf", "%!"} {
			if strings.Contains(out, word) && !bytes.Contains(job, []byte(word)) {
				t.Errorf("sheet says %s: %s", word, out)
			}
		}
		pdf, err := os.ReadFile(paper)
		switch {
		case code == 2 && err == nil:
			t.Errorf("exit 2, and a sheet of %d bytes", len(pdf))
		case code < 2 && err != nil:
			t.Errorf("exit %d, and no sheet: %v", code, err)
		case code < 2 && !bytes.HasSuffix(bytes.TrimSpace(pdf), []byte("%%EOF")):
			t.Errorf("a sheet that is not whole: %d bytes", len(pdf))
		}
	})
}
