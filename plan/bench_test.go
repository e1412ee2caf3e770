package plan_test

import (
	"testing"

	"rebush/plan"
	"rebush/plan/job"
)

// BenchmarkPlan times the plan of the first demo, with and without its trials.
func BenchmarkPlan(b *testing.B) {
	j, err := job.Read("../testdata/jobs/pellinthwaite.yaml", job.Options{})
	if err != nil {
		b.Fatal(err)
	}
	for _, c := range []struct {
		name string
		o    plan.Options
	}{{"without chance", plan.Options{NoChance: true}}, {"with chance", plan.Options{Trials: 20000, Seed: 1}}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for range b.N {
				if _, err := plan.Make(j, c.o); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
