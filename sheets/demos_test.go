package sheets

import (
	"path/filepath"
	"strings"
	"testing"

	"rebush/plan"
	"rebush/plan/job"
)

// demos plans every demo job of the project, and the dull ones of the tests.
func demos(t testing.TB) map[string]*plan.Plan {
	t.Helper()
	files, err := filepath.Glob("../testdata/jobs/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	dull, err := filepath.Glob("../testdata/situations/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	files = append(files, dull...)
	out := map[string]*plan.Plan{}
	for _, f := range files {
		name := strings.TrimSuffix(filepath.Base(f), ".yaml")
		if strings.HasPrefix(name, "shop") {
			continue
		}
		j, err := job.Read(f, job.Options{})
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		p, err := plan.Make(j, plan.Options{NoChance: true})
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		out[name] = p
	}
	if len(out) < 3 {
		t.Fatalf("%d demo jobs, want at least 3", len(out))
	}
	return out
}

// Every demo goes onto every paper, in every size and unit, and no rule of
// paper is broken.
func TestDemoGeometry(t *testing.T) {
	paperGeometry(t, demos(t))
}

// The text of each demo's setup sheet, as an independent reader sees it.
func TestDemoText(t *testing.T) {
	for name, p := range demos(t) {
		golden(t, name, open(t, write(t, must(Setup(p, Options{})))).all())
	}
}

// The demo sheets stay small, and the same job gives the same bytes.
func TestDemoBytes(t *testing.T) {
	again := demos(t)
	for name, p := range demos(t) {
		a, b := write(t, must(Setup(p, Options{}))), write(t, must(Setup(again[name], Options{})))
		if string(a) != string(b) {
			t.Errorf("%s: the same job gave different bytes", name)
		}
		if len(a) > 150_000 {
			t.Errorf("%s: %d bytes, want at most 150000", name, len(a))
		}
	}
}
