package carry

import (
	"fmt"
	"strings"
)

// Backlash prints where the backlash comes right.
func (t *Tally) Backlash() string {
	type sum struct{ n, p, s, m, o, pn, sn, mn, on float64 }
	sums := map[string]*sum{}
	names := []string{"trusted", "trusted, window >= 4 u", "trusted, wear under 0.03", "untrusted", "untrusted, window >= 4 u"}
	for _, c := range t.All {
		worn := 0.0
		for _, e := range c.Survey {
			worn = max(worn, e.Wear)
		}
		for _, m := range c.Meshed {
			if !m.Moves {
				continue
			}
			kind := "untrusted"
			if m.Trusted {
				kind = "trusted"
			}
			keys := []string{kind}
			if m.Wide {
				keys = append(keys, kind+", window >= 4 u")
			}
			if m.Trusted && worn < 0.03 {
				keys = append(keys, "trusted, wear under 0.03")
			}
			for _, k := range keys {
				if sums[k] == nil {
					sums[k] = &sum{}
				}
				s := sums[k]
				s.n++
				s.p, s.s, s.m, s.o = s.p+m.Planned, s.s+m.Surveyed, s.m+m.Middle, s.o+m.Old
				s.pn, s.sn, s.mn, s.on = s.pn+m.PlannedNone, s.sn+m.SurveyedNone, s.mn+m.MiddleNone, s.on+m.OldNone
			}
		}
	}
	var b strings.Builder
	fmt.Fprintf(&b, "backlash in its window (none at all), %% of turns; bored at the\n  %-26s %4s  %-13s %-13s %-13s %-13s\n", "", "n", "planned", "surveyed", "worn middle", "true old centre")
	for _, k := range names {
		if s := sums[k]; s != nil {
			f := 100 / s.n
			fmt.Fprintf(&b, "  %-26s %4.0f  %5.1f (%4.1f)  %5.1f (%4.1f)  %5.1f (%4.1f)  %5.1f (%4.1f)\n", k, s.n, f*s.p, f*s.pn, f*s.s, f*s.sn, f*s.m, f*s.mn, f*s.o, f*s.on)
		}
	}
	return b.String()
}

// Held is the mean over the meshes of a kind.
func (t *Tally) Held(suits func(Meshing) bool) (mean Meshing) {
	n := 0.0
	for _, c := range t.All {
		for _, m := range c.Meshed {
			if m.Moves && suits(m) {
				n++
				mean.Planned, mean.Surveyed = mean.Planned+m.Planned, mean.Surveyed+m.Surveyed
				mean.Middle, mean.Old = mean.Middle+m.Middle, mean.Old+m.Old
			}
		}
	}
	mean.Planned, mean.Surveyed, mean.Middle, mean.Old = mean.Planned/n, mean.Surveyed/n, mean.Middle/n, mean.Old/n
	return mean
}
