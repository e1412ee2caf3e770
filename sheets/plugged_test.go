package sheets

import (
	"testing"

	"rebush/plan"
	"rebush/plan/job"
)

// A plug stands beside the place of its bush: the picture of the clamping that
// cuts its hole has the figures that this clamping dials, and a chassis turned
// over is dialled from its own end there too.
func TestPictureOfAPlug(t *testing.T) {
	beside, turned := 0, 0
	for _, name := range []string{"plain", "stepped", "worm-moved", "oil-way"} {
		j, err := job.Read("../testdata/situations/"+name+".yaml", job.Options{})
		if err != nil {
			t.Fatal(err)
		}
		p, err := plan.Make(j, plan.Options{Way: "plug", NoChance: true})
		if err != nil {
			t.Fatal(err)
		}
		for _, set := range p.Setups {
			end, mirrored := dialEnd(p, set)
			if mirrored {
				turned++
				if want := j.Chassis.Length.Float(); end != want {
					t.Errorf("%s, set-up %s: dials at nothing at %v, want %v", name, set.Name, end, want)
				}
			}
			seen := map[string]bool{}
			for _, op := range p.Operations {
				shaft := shaftOf(op.Bore)
				if op.Setup != set.Name || op.AtMM == nil || seen[shaft] {
					continue
				}
				seen[shaft] = true
				for axis := range 2 {
					if got, want := targetAxis(p, set, shaft, "mm", axis), units("mm").figure(op.AtMM[axis])[0]; got != want {
						t.Errorf("%s, set-up %s, %s: the picture says %s, the dials %s", name, set.Name, shaft, got, want)
					}
				}
				for _, target := range p.Targets {
					if target.Bore == op.Bore && target.TargetMM != nil && !near(target.TargetMM[1], op.AtMM[1]) {
						beside++
					}
				}
			}
		}
	}
	if beside == 0 || turned == 0 {
		t.Errorf("walked %d plugs beside their bush, %d clampings turned over", beside, turned)
	}
}
