package plan

import (
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/target"
)

// done says that this job has bushed a hole and finished its bore.
func done(h survey.Hole) bool { return h.Bore.Now != nil && h.Bore.Now.Done }

// allDone says whether every hole of a shaft is.
func allDone(holes []survey.Hole, s *job.Shaft) bool {
	for _, h := range holes {
		if h.Shaft == s && !done(h) {
			return false
		}
	}
	return true
}

// playOf is the play that a shaft has in a hole as it now is, mm on diameter.
func playOf(h survey.Hole, tools *survey.Instruments) float64 {
	if done(h) {
		return max(0, h.Bore.Now.BoreMM-h.Journal())
	}
	return h.Play(tools)
}

// standsMM is the centre distance of a mesh under load as the truck now is: in
// bores that are finished as they were made, else as found.
func (g *ground) standsMM(i int, d mesh.Drive) float64 {
	worked := false
	stands := func(axle int) []target.Stand {
		var out []target.Stand
		for _, h := range g.meshes.Axles[axle].Holes {
			s := h.Found()
			if done(h.Survey) {
				worked, s = true, h.After()
				s.Centre = h.Survey.Bore.Now.At
			}
			out = append(out, s)
		}
		return out
	}
	wheel, mate := stands(d.Shaft), []target.Stand(nil)
	if d.OnJob() {
		mate = stands(d.Mate)
	}
	if !worked {
		return g.meshes.FoundMM[i]
	}
	return target.Distance(d, wheel, mate)
}

// finishedOf are the holes that this job has finished.
func finishedOf(holes []survey.Hole) []seat.Site {
	var out []seat.Site
	for _, h := range holes {
		if done(h) {
			out = append(out, seat.Site{Old: h})
		}
	}
	return out
}
