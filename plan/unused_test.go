package plan_test

import (
	"encoding/json"
	"regexp"
	"slices"
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/plan"
	"rebush/plan/job"
)

// asPlanned is all that a plan says but for the hash of its job and the notes on
// keys that are not used.
func asPlanned(t *testing.T, p *plan.Plan) string {
	t.Helper()
	c := *p
	c.Hash = ""
	c.Findings = slices.DeleteFunc(slices.Clone(p.Findings), func(f finding.Finding) bool { return f.Rule == job.KeyNotUsed })
	b, err := json.Marshal(c)
	if err != nil {
		t.Fatal(err)
	}
	// each stands in a folder of its own
	return regexp.MustCompile(`[^" ]*shop\.yaml`).ReplaceAllString(string(b), "shop.yaml")
}

// TestUnusedKeysAreUnused: a key that a job is told is not used changes nothing
// of its plan, and one that changes the plan is not said to be unused.
func TestUnusedKeysAreUnused(t *testing.T) {
	for _, c := range []struct {
		after, key string
		used       bool
	}{
		{"    load: 2.5 N", "    pull: 6 N", false},
		{"        widest_at: 90", "        lift: 0.15", false},
		{"worm: {starts: 1", "hand: left", false},
		{"make: turned", "wall_finish_um: 12", false},
		{"    load: 2.5 N", "    material: POM", true},
		{"    load: 2.5 N", "    back_to_back: 24", true},
	} {
		t.Run(strings.TrimSpace(c.key), func(t *testing.T) {
			plain, given := c.after, c.after+", "+c.key
			if strings.HasPrefix(c.after, " ") { // a line of its own: the others keep their numbers
				plain, given = c.after+"\n#", c.after+"\n"+c.key
			}
			// in use from cold to hot, where the metal of a shaft tells
			of := demo(t, "plain.yaml").with("  current: none", "  current: none\n  temperature: [-20, 80]")
			without, with := of.with(c.after, plain).plan(), of.with(c.after, given).plan()
			noted := slices.ContainsFunc(with.Findings, func(f finding.Finding) bool { return f.Rule == job.KeyNotUsed })
			if noted == c.used {
				t.Errorf("said to be unused: %v", noted)
			}
			if same := asPlanned(t, without) == asPlanned(t, with); same == c.used {
				t.Errorf("the plan is the same: %v", same)
			}
		})
	}
}
