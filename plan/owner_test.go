package plan

import (
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/verdict"
)

// TestForOwner: the wear of each shaft, the play and the gears are told in
// words; a caution in those of the table and once, what is for the bench alone
// not, a caution that the table does not know in its own words.
func TestForOwner(t *testing.T) {
	deg := 92.0
	p := &Plan{Job: &job.Job{Binds: job.Yes, Chassis: job.Chassis{Condition: "unknown"},
		Shafts: []job.Shaft{{Name: "front axle", Bores: []job.Bore{{Name: "front axle.left", Side: job.Left},
			{Name: "front axle.right", Side: job.Right}}}}},
		Survey: []SurveyedBore{{Bore: "front axle.left", WearMM: dim.Typed("0.1600"), WearDeg: &deg,
			PlayMM: dim.Typed("0.2100")}, {Bore: "front axle.right", WearMM: dim.Typed("0.0100")}},
		Mesh: []Mesh{{Gear: "cord drive", Words: "away from the pinion by 0.14 mm; backlash found 0.17 mm, was 0.05 mm"}}}
	for _, at := range []string{"front axle.left", "front axle.right"} {
		p.Findings.Raise(finding.Caution, "seat/press slackens", finding.Place{Where: at}, "64 MPa", "")
	}
	p.Findings.Raise(finding.Note, "route/turned over", finding.Place{}, "turned over", "")
	p.Findings.Raise(finding.Caution, "seat/of another year", finding.Place{}, "something new", "")
	p.Findings.Raise(finding.Note, verdict.RulePrice, finding.Place{}, "no price is given", "")
	p.Findings.Raise(finding.Note, verdict.RuleValue, finding.Place{}, "dearer than it is worth", "")
	got, err := ForOwner(p)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		what string
		list []say.Text
		want []string
	}{
		{"wrong", got.Wrong, []string{"You told us that it binds.",
			"The holes of the front axle are worn: left by 0.16 mm upwards. It shakes by up to 0.21 mm.",
			"cord drive: the gear stands away from the pinion by 0.14 mm; the play of its teeth is 0.17 mm, and was 0.05 mm."}},
		{"cautions", got.Cautions, []string{"In this metal a pressed-in bearing can slacken over the years: have its play looked at now and then.",
			"Something new.", "Dearer than it is worth."}},
		{"unknown", got.Unknown, []string{"No price is given.",
			"Nobody has said that the casting or the plates are sound: that is looked at first."}},
	} {
		var said []string
		for _, s := range c.list {
			said = append(said, s.String())
		}
		if strings.Join(said, "|") != strings.Join(c.want, "|") {
			t.Errorf("%s:\n%s\nwant\n%s", c.what, strings.Join(said, "\n"), strings.Join(c.want, "\n"))
		}
	}
}
