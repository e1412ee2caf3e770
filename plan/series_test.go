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

// Where no bush of the list fits, the job is planned again with bushes of the
// series that are sold: none is chosen in silence, and the verdict is to buy.
func TestSeriesWhereTheListHasNone(t *testing.T) {
	file := seriesJob(t, "journal: 3.46", "journal: 2.96")
	p := makePlan(t, file, plan.Options{Trials: 4096, Seed: 1})
	if p.OK || p.Way != "leave" || len(p.Seats) != 0 || len(p.Operations) != 0 || p.Chance != nil {
		t.Errorf("ok %v, way %s, %d seats, %d operations", p.OK, p.Way, len(p.Seats), len(p.Operations))
	}
	v := p.Verdict
	if v.Choice != "buy first" || len(v.Needs) != 1 || v.Then == nil || v.Then.Way != "re-bush" || !(*v.Then.FirstTimeRight > 0.5) {
		t.Fatalf("%s, needs %+v, then %+v", v.Choice, v.Needs, v.Then)
	}
	bought := 0
	for _, f := range p.Findings {
		if f.Level == finding.Stop && f.Rule.Name() == "no seat" && f.Where == "front axle.left" {
			for _, d := range f.Tried {
				if strings.HasPrefix(d.Change.String(), "bush sintered plain") && d.Kind == "buy" && d.OK != nil && *d.OK {
					bought++
				}
			}
		}
	}
	if bought == 0 {
		t.Errorf("no bush of the series stands beside the stop: %+v", p.Findings)
	}
	for _, c := range cutPlan(t, file, plan.Options{NoChance: true}).Seats[0].Candidates {
		if !strings.HasPrefix(c.Bush, "drawer") || c.Feasible || c.Reason == "" {
			t.Errorf("%+v", c)
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
