package plan_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/plan"
)

// seriesJob is a dull job with a journal that no bush of its list fits, and
// with the lines of the bush that could be turned taken out.
func seriesJob(t *testing.T, more ...string) string {
	t.Helper()
	dir := t.TempDir()
	for _, name := range []string{"plain.yaml", "shop.yaml"} {
		data, err := os.ReadFile(fileOf(t, name))
		if err != nil {
			t.Fatal(err)
		}
		text := string(data)
		if name == "plain.yaml" {
			var keep []string
			for _, line := range strings.Split(text, "\n") {
				if !strings.Contains(line, "own turning") {
					keep = append(keep, line)
				}
			}
			text = strings.Join(keep, "\n")
			for i := 0; i+1 < len(more); i += 2 {
				if !strings.Contains(text, more[i]) {
					t.Fatalf("the demo lacks %q", more[i])
				}
				text = strings.Replace(text, more[i], more[i+1], 1)
			}
		}
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return filepath.Join(dir, "plain.yaml")
}

// Where no bush of the list fits, the series that can be bought are searched
// too: the bush is marked, stands on the buy list, and the list's own bushes
// keep their reasons.
func TestSeriesWhereTheListHasNone(t *testing.T) {
	file := seriesJob(t, "journal: 3.46", "journal: 2.96")
	p := cutPlan(t, file, plan.Options{NoChance: true})
	s := p.Seats[0]
	if s.Bore != "front axle.left" || !strings.HasPrefix(s.Bush, "sintered plain") {
		t.Fatalf("%s gets %q: %+v", s.Bore, s.Bush, s.Candidates)
	}
	own, bought := 0, 0
	for _, c := range s.Candidates {
		switch {
		case strings.HasPrefix(c.Bush, "drawer"):
			own++
			if c.Feasible || c.Reason == "" {
				t.Errorf("%s with %s: feasible %v, reason %q", c.Bush, c.Tool, c.Feasible, c.Reason)
			}
		case !c.Feasible:
			t.Errorf("%s of the series is told of and does not fit: %s", c.Bush, c.Reason)
		default:
			bought++
		}
	}
	if own == 0 || bought == 0 {
		t.Errorf("%d own candidates, %d to be bought", own, bought)
	}
	noted := false
	for _, f := range p.Findings {
		noted = noted || f.Rule.Name() == "to buy" && f.Level == finding.Note && f.Where == s.Bore
	}
	listed := false
	for _, b := range p.Buy {
		listed = listed || strings.Contains(b.What.String(), s.Bush)
	}
	if !noted || !listed {
		t.Errorf("noted %v, on the buy list %v (%+v)", noted, listed, p.Buy)
	}
	for _, bad := range p.Book.Recompute() {
		t.Error(bad)
	}
	for _, k := range p.Book.Keys() {
		if e, _ := p.Book.Get(k); e.Leaf && !source.MatchString(e.Source) {
			t.Errorf("leaf %s has source %q", k, e.Source)
		}
	}
}

// A bush that the job chooses is not gone beyond.
func TestChosenBushKeepsTheSeriesOut(t *testing.T) {
	file := seriesJob(t, "journal: 3.46", "journal: 2.96", "complaint:", "choose: {front axle.left: drawer 7}\ncomplaint:")
	p := cutPlan(t, file, plan.Options{NoChance: true})
	for _, c := range p.Seats[0].Candidates {
		if c.Bush != "drawer 7" {
			t.Errorf("candidate %s", c.Bush)
		}
	}
}
