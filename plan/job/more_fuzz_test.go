package job

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rebush/fits/table"
)

// saidOf holds an error against what every reader promises: problems or a file
// that could not be read, each with words of a length that fits a screen.
func saidOf(t *testing.T, err error) {
	var ps Problems
	var fe *FileError
	if !errors.As(err, &ps) && !errors.As(err, &fe) {
		t.Fatalf("another error: %v", err)
	}
	for _, p := range ps {
		if p.Wrong == "" || p.Pos.Line < 0 || len([]rune(p.Wrong)) > mostLetters || len([]rune(p.Right)) > mostLetters {
			t.Fatalf("%+v", p)
		}
	}
	ps.Screen(40)
}

// FuzzPattern: any bytes as a pattern give an error by a line, or a job that is
// read alike twice and that gives nothing measured.
func FuzzPattern(f *testing.F) {
	f.Add([]byte(kindOfTruck))
	for _, p := range shipped(f) {
		data, err := os.ReadFile(p)
		if err != nil {
			f.Fatal(err)
		}
		if out, err := PatternOf(p, filepath.Dir(p), ".", data); err == nil {
			f.Add(out)
		}
	}
	f.Add([]byte("rebush: 1\nlike: job.yaml\n"))
	dir := f.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "own.yaml"), []byte(ownShop), 0o600); err != nil {
		f.Fatal(err)
	}
	text := strings.Replace(secondTruck, "kinds/", "", 1)
	f.Fuzz(func(t *testing.T, data []byte) {
		own := t.TempDir()
		if err := os.WriteFile(filepath.Join(own, "kind.yaml"), data, 0o600); err != nil {
			t.Fatal(err)
		}
		j, err := Parse("job.yaml", own, []byte(text), Options{Shop: filepath.Join(dir, "own.yaml")})
		if err != nil {
			saidOf(t, err)
			return
		}
		if !bytes.Equal(j.Canonical(), j.Canonical()) {
			t.Fatal("the canonical form differs from itself")
		}
		if p, err := ReadPattern(filepath.Join(own, "kind.yaml")); err != nil || p.Gives("job") || p.Gives("chassis/condition") {
			t.Fatalf("a pattern of one truck is taken: %v", err)
		}
	})
}

// FuzzPatternOf: any bytes give a pattern that reads as one, or an error.
func FuzzPatternOf(f *testing.F) {
	for _, p := range append(shipped(f), "testdata/all-keys.yaml") {
		data, err := os.ReadFile(p)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		out, err := PatternOf("job.yaml", ".", "kinds", data)
		if err != nil {
			saidOf(t, err)
			return
		}
		if p := parsePattern("kind.yaml", out); len(p.r.problems) > 0 {
			t.Fatalf("%v\n%s", p.r.problems, out)
		}
	})
}

// FuzzOwnTable: any bytes in the place of any table give a shop, or an error by
// the line of the shop file; a shop's own rules lie in their ranges.
func FuzzOwnTable(f *testing.F) {
	names := table.Names()
	for i := range names {
		f.Add([]byte("# Ours.\na,b\n1,2\n"), uint8(i))
	}
	f.Add([]byte("rule,low,high,unit,what,source\ncleanup_mm,0.03,,mm,cut,ours\n"), uint8(len(names)))
	f.Fuzz(func(t *testing.T, data []byte, which uint8) {
		name := "rules"
		if int(which) < len(names) {
			name = names[which]
		}
		dir := t.TempDir()
		if err := os.WriteFile(filepath.Join(dir, "own.csv"), data, 0o600); err != nil {
			t.Fatal(err)
		}
		s, err := parseShop("shop.yaml", dir, []byte("rebush_shop: 1\nmachine: {kind: mill}\npins: {from: 1, to: 6, step: 0.01, class: ZZ}\n"+
			"instruments: [{name: indicator, u: 0.01}]\ntables: {"+name+": own.csv}\n"))
		if err != nil {
			saidOf(t, err)
			return
		}
		for _, n := range s.Rules.Names() {
			if r := s.Rules.Get(n); r.Check(r.Low, r.High) != nil {
				t.Fatalf("%v", r.Check(r.Low, r.High))
			}
		}
	})
}
