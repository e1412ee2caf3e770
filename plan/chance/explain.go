package chance

import "rebush/fits/ledger"

// Explain writes what the trials say into the ledger: each share by trying the
// model again with the trials and the seed that the ledger has.
func (m Model) Explain(book *ledger.Ledger, r Result) {
	page := book.Page("chance")
	trials := page.Leaf("trials", "trials", "-", "command line: --trials", float64(r.Trials))
	seed := page.Leaf("seed", "seed of the random numbers", "-", "command line: --seed", float64(r.Seed))
	again := ledger.LastOf(func(in []float64) Result {
		r, _ := Run(m, Settings{Trials: int64(in[0]), Seed: int64(in[1])})
		return r
	})
	for _, f := range []struct {
		key, what, formula string
		of                 func(Result) float64
	}{
		{"first_time_right", "share of trials that come right first time",
			"every doubt of this plan drawn anew in each simulated job: an estimate",
			func(r Result) float64 { return r.FirstTimeRight }},
		{"low", "least share right first time, 95 %", "Wilson interval of that share",
			func(r Result) float64 { return r.Low }},
		{"high", "most share right first time, 95 %", "Wilson interval of that share",
			func(r Result) float64 { return r.High }},
		{"saved", "share right after rework or another bush", "the same trials", func(r Result) float64 { return r.Saved }},
		{"lost", "share of trials in which the truck is lost", "the same trials", func(r Result) float64 { return r.Lost }},
	} {
		page.Calc(f.key, f.what, "-", f.formula, "Monte Carlo after JCGM 101; Wilson 1927",
			func(in []float64) float64 { return f.of(again(in)) }, trials, seed)
	}
}
