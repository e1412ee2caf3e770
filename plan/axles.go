package plan

import (
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/verdict"
)

// newAxles are the axles that are made or bought anew on the way of that name:
// what is laid out, and what is said of each.
func (s showing) newAxles(j *job.Job) (layOut []say.Text, said finding.List) {
	if s.way != verdict.NewAxle || !s.cuts {
		return nil, nil
	}
	for i := range j.Shafts {
		shaft := &j.Shafts[i]
		if shaft.Leave || !verdict.Wasted(shaft.JournalState) {
			continue
		}
		journal := say.MM(shaft.Journal.On(job.Left).Float(), 3).Trim()
		if l, r := shaft.Journal.On(job.Left), shaft.Journal.On(job.Right); l.Float() != r.Float() {
			journal = say.MMs(l.Float(), r.Float(), 3)
		}
		layOut = append(layOut, say.F("new axle for %s, journals %v", shaft.Name, journal))
		said.Raise(finding.Caution, verdict.RuleNewAxle, j.PlaceAt(shaft.Name, "shafts/"+shaft.Name),
			say.F("the journal of %s is %s: the new axle is there before a bore is sized, its journals %v, long as the old one", shaft.Name, shaft.JournalState, journal),
			"measure the new journals; other figures than these want the plan made again")
	}
	return layOut, said
}
