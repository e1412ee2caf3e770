package job

import "fmt"

// checkRecord: a record speaks of the reamers of this shop, and counts what can
// be counted.
func checkRecord(r *reader, s *Shop, v *value) {
	if v == nil {
		return
	}
	var called []string
	for _, t := range s.Reamers {
		called = append(called, t.Called())
	}
	if of := v.get("reamers"); of != nil {
		for _, name := range of.order {
			known(r, of.get(name), "reamer", name, called)
		}
	}
	if p := s.Record.Slips; p != nil {
		at := v.get("slips")
		if p.Slipped > p.Holes {
			r.say(at.get("slipped").place(at), fmt.Sprintf("slips: %d of %d holes slipped", p.Slipped, p.Holes),
				"slipped counts those that went wrong among all holes")
		}
		if p.Jobs > p.Holes {
			r.say(at.get("jobs").place(at), fmt.Sprintf("slips: %d jobs with %d holes in all", p.Jobs, p.Holes),
				"a job counts where a hole of it was gauged")
		}
	}
}
