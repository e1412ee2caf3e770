package job

import (
	"bytes"
	"errors"
	"os"
	"testing"
)

// FuzzParse: any bytes give a job or an error of one of the two kinds, and a
// job that is read has the same canonical form twice.
func FuzzParse(f *testing.F) {
	files := shipped(f)
	for _, p := range append(files, "testdata/all-keys.yaml") {
		data, err := os.ReadFile(p)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	for _, s := range []string{"", "a: &a [*a]", "rebush: 1\nchassis:\n  plates: #31", "? [a]: b", "{left: 3,16}",
		"rebush: 1\n---\n", "a: !!binary x", "- - - -", "rebush: 1\nshafts: [{bores: {left: {probed: [[1,2],[3]]}}}]"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		j, err := Parse("job.yaml", "testdata", data, Options{})
		var ps Problems
		var fe *FileError
		if err != nil {
			if j != nil || !errors.As(err, &ps) && !errors.As(err, &fe) {
				t.Fatalf("%v with %v", j, err)
			}
			return
		}
		if c := j.Canonical(); len(c) == 0 || !bytes.Equal(c, j.Canonical()) {
			t.Fatal("the canonical form differs from itself")
		}
		Unused(j)
	})
}

// FuzzPoints: any bytes give points or problems with a place.
func FuzzPoints(f *testing.F) {
	for _, s := range []string{"x,y\n1,2\n", "1;2", "1,5;2,5", "\t", "1 2", "a,b,c"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		points, lines, problems := Points("p.csv", data, 0)
		if len(points) != len(lines) || len(points) == 0 && len(problems) == 0 {
			t.Fatalf("%d points, %d lines, %d problems", len(points), len(lines), len(problems))
		}
		for _, p := range problems {
			if p.Pos.Line < 1 || p.Pos.Column < 0 {
				t.Fatalf("no place: %+v", p)
			}
		}
	})
}
