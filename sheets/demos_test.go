package sheets

import (
	"path/filepath"
	"strings"
	"testing"

	"rebush/plan"
	"rebush/plan/job"
)

// demos plans every demo job of the project.
func demos(t testing.TB) map[string]*plan.Plan { return planned(t, "../testdata/jobs") }

// dull plans the jobs without a story, each of which shows one thing.
func dull(t testing.TB) map[string]*plan.Plan { return planned(t, "../testdata/situations") }

func planned(t testing.TB, folder string) map[string]*plan.Plan {
	t.Helper()
	files, err := filepath.Glob(folder + "/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
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
		t.Fatalf("%d jobs in %s, want at least 3", len(out), folder)
	}
	return out
}

// Every demo goes onto every paper, in every size and unit, and no rule of
// paper is broken.
func TestDemoGeometry(t *testing.T) {
	paperGeometry(t, demos(t))
}

// Every dull job goes onto every paper as it comes.
func TestDullGeometry(t *testing.T) {
	var c counts
	for name, p := range dull(t) {
		for what, d := range allPaper(t, p, Options{}) {
			for _, bad := range checkGeometry(d, &c) {
				t.Errorf("%s, %s: %s", name, what, bad)
			}
		}
	}
	if c.pages < 50 {
		t.Errorf("only %d pages were looked at", c.pages)
	}
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
