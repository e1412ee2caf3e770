package plan

import (
	"slices"

	"rebush/fits/finding"
)

// measuredStages are the steps that the measurements alone give rise to: the
// file as it is read, the survey of the holes and the meshes as found. What
// `survey` shows is theirs.
var measuredStages = []string{"job", "survey", "mesh"}

// Measured are the findings of the plan that the measurements alone give rise
// to, in the plan's order.
func (p *Plan) Measured() finding.List {
	out := finding.List{}
	for _, f := range p.Findings {
		if slices.Contains(measuredStages, f.Rule.Stage()) {
			out.Add(f)
		}
	}
	return out
}
