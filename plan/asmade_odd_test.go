package plan_test

import (
	"strings"
	"testing"

	"rebush/plan"
)

// TestOddSizesAsMade: one thing gauged of one hole, or of a hole that is kept
// under a cap, renewed or left alone: there is a plan or a word of why not, and
// never a panic.
func TestOddSizesAsMade(t *testing.T) {
	for _, name := range []string{"plain.yaml", "renew.yaml", "thin-edge.yaml", "pellinthwaite.yaml"} {
		s := demo(t, name)
		was := s.plan()
		at := map[string]string{}
		for _, x := range was.Targets {
			if x.TargetMM != nil {
				at[x.Bore] = "[" + x.TargetMM[0].String() + " mm, " + x.TargetMM[1].String() + " mm]"
			}
		}
		for k, x := range was.Survey {
			if k > 1 || at[x.Bore] == "" || strings.Contains(s.job, "\nmade:") {
				continue
			}
			_, b := was.Job.Bore(x.Bore)
			sh, _ := was.Job.Bore(x.Bore)
			journal := sh.Journal.On(b.Side).Float()
			for what, made := range map[string]string{
				"place alone": "centre: " + at[x.Bore],
				"bore alone":  "bore: " + decimalOf(journal+0.03) + " mm",
				"seat, large": "seat: " + decimalOf(journal+3) + " mm",
				"bore, large": "bore: " + decimalOf(journal+0.3) + " mm, centre: " + at[x.Bore],
			} {
				j, err := s.add("made:\n  " + x.Bore + ": {" + made + "}\n").read()
				if err != nil {
					continue // refused by its line
				}
				p, err := plan.Make(j, plan.Options{NoChance: true})
				if err != nil {
					t.Errorf("%s %s, %s: %v", name, x.Bore, what, err)
					continue
				}
				if err := wholesome(p, true); err != nil {
					t.Errorf("%s %s, %s: %v", name, x.Bore, what, err)
				}
				if !p.AsMade || len(p.Inspect) == 0 && !strings.Contains(everything(p), "sizes as made") {
					t.Errorf("%s %s, %s: as made %v, %d sizes and not a word", name, x.Bore, what, p.AsMade, len(p.Inspect))
				}
			}
		}
	}
}
