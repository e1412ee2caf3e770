package survey

import (
	"strings"
	"testing"

	"rebush/plan/job"
)

// TestAgainst: what one load does not wear is asked about, by name, once for each
// shaft; wear along a load that is said, and wear within the doubt, is not.
func TestAgainst(t *testing.T) {
	to := func(side float64, widest string) job.Bore {
		b := measured(t)
		b.WornTo, b.Widest = []float64{side}, mmOf(t, widest)
		return b
	}
	down := 270.0
	for name, c := range map[string]struct {
		left, right job.Bore
		load        *float64
		says        []string
	}{
		"as pressed":                {to(90, "3.30"), to(80, "3.30"), nil, nil},
		"opposite":                  {to(270, "3.30"), to(85, "3.30"), nil, []string{"drive.left has worn downwards (270 degrees) and drive.right upwards (85)"}},
		"opposite, within doubt":    {to(270, "3.21"), to(85, "3.30"), nil, nil},
		"against the usual side":    {to(270, "3.30"), to(265, "3.30"), nil, []string{"pressed upwards", "pressed upwards"}},
		"along a load that is said": {to(270, "3.30"), to(265, "3.30"), &down, nil},
	} {
		k := oneShaft(t, c.left, c.right)
		k.Shafts[0].LoadTowards = c.load
		_, said, _ := k.survey()
		var got []string
		for _, f := range said {
			if f.Rule == RuleSide {
				got = append(got, f.Text.String())
			}
		}
		if len(got) != len(c.says) {
			t.Errorf("%s: %q", name, got)
			continue
		}
		for i, s := range c.says {
			if !strings.Contains(got[i], s) {
				t.Errorf("%s: %q, want %q", name, got[i], s)
			}
		}
	}
}
