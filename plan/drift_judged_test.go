package plan

import (
	"math"
	"testing"

	"rebush/plan/job"
)

// judgedDrift holds what is printed of chance and verdict against the ledger,
// which works both out again from its own entries.
func judgedDrift(t *testing.T, name string, j *job.Job) (figures int) {
	t.Helper()
	p, err := Make(j, Options{Trials: 512, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	same := func(key string, printed *float64, by float64) {
		e, ok := p.Book.Get(key)
		if ok != (printed != nil) {
			t.Errorf("%s: %s is explained: %v, printed: %v", name, key, ok, printed != nil)
			return
		}
		if ok {
			figures++
			if !(math.Abs(e.Value-*printed) <= by) {
				t.Errorf("%s: %s is %v in the ledger and %v in print", name, key, e.Value, *printed)
			}
		}
	}
	if p.Verdict != nil {
		for _, o := range p.Verdict.Options {
			same("verdict/options/"+string(o.Name)+"/hours", o.Hours, 0.005+1e-9)
			same("verdict/options/"+string(o.Name)+"/cost", o.Cost, 0.005+1e-9)
		}
	}
	if c := p.Chance; c != nil {
		for key, v := range map[string]float64{"first_time_right": c.FirstTimeRight, "low": c.Low, "high": c.High, "saved": c.Saved, "lost": c.Lost} {
			same("chance/"+key, &v, 1e-9)
		}
	}
	return figures
}

// TestChanceAndVerdictPrintWhatIsExplained, over every job at hand and some
// trucks of the world.
func TestChanceAndVerdictPrintWhatIsExplained(t *testing.T) {
	figures := 0
	look := func(name string, j *job.Job) { figures += judgedDrift(t, name, j) }
	shipped(t, look)
	drawn(t, seeds(t), look)
	if figures < 200 {
		t.Errorf("only %d figures were looked at", figures)
	}
}
