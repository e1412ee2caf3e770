package plan

import (
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/survey"
)

// otherPlateRule names the doubt with which one plate tells of the other.
func (m *maker) otherPlateRule() string {
	if m.j.Chassis.DrilledTogether == job.Yes {
		return "u_other_plate_drilled_together_mm"
	}
	return "u_other_plate_mm"
}

// borrowed is what another bore, a drawing or a sister tells.
func (m *maker) borrowed(b *bore, own map[*bore]*survey.Evidence) []survey.Evidence {
	var out []survey.Evidence
	for _, o := range m.on(b.shaft.Name) {
		if o == b || own[o] == nil {
			continue
		}
		rule := m.otherPlateRule()
		e := survey.OtherPlate(own[o].Centre, own[o].Cov, m.rules.V(rule))
		out = append(out, e)
		if own[b] == nil {
			m.used(rule)
		}
	}
	for _, from := range []struct {
		by survey.Method
		at job.Point
		of func(job.Feature) job.Point
	}{
		{survey.ByDrawing, b.shaft.Design, func(f job.Feature) job.Point { return f.Design }},
		{survey.BySister, b.shaft.Sister, func(f job.Feature) job.Point { return f.Sister }},
	} {
		if !from.at.Given() {
			continue
		}
		var fs []survey.Feature
		u, err := m.instr.named("", "centre")
		if err != nil {
			continue
		}
		for _, f := range m.j.Chassis.Features {
			if to := from.of(f); to.Given() && f.At.Given() && (f.Plate == "" || f.Plate == b.b.Side) {
				fs = append(fs, survey.Feature{Name: f.Name, From: to.Float(), To: f.At.Float(), U: u.u})
			}
		}
		frame, err := survey.Align(fs)
		if err != nil {
			m.say(finding.Note, "survey/frame", b,
				say.F("%s is not used: %v", from.by, err), "give two or three unworn holes under chassis: features")
			continue
		}
		out = append(out, survey.FromFrame(from.by, frame, from.at.Float(), u.u))
	}
	return out
}
