package plan

import (
	"rebush/plan/job"
	"rebush/plan/survey"
)

// indicator is the kind of instrument that a shop can borrow where it has none that
// reads a place.
const indicator = "indicator"

// anIndicator is how well one reads, as usual; ok is false where the shop has an
// instrument that reads a middle as well.
func anIndicator(j *job.Job, instr *survey.Instruments) (r survey.Reading, ok bool) {
	r, err := instr.Named(indicator, survey.Middle)
	if err != nil {
		return r, false
	}
	for _, in := range j.Shop.Instruments {
		if instr.CanRead(in.Name, survey.Middle) && in.U.Float() <= r.U+1e-9 {
			return r, false
		}
	}
	return r, true
}
