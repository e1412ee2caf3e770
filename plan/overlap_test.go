package plan

import (
	"math"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/world"
)

// overlapFrom is the first seed of the trucks that are looked at for teeth inside
// each other: no other test looks at them.
const overlapFrom = 88_000_000

// TestHonestTeethDoNotOverlap: of trucks whose figures are what was measured, at
// most one in a hundred is stopped for teeth inside each other, with two standard
// errors of that share. With the pitch diameter of a worm misread by four modules
// all are whose teeth were measured.
func TestHonestTeethDoNotOverlap(t *testing.T) {
	dir, geared, hit, wrong, told := t.TempDir(), 0, 0, 0, 0
	overlaps := func(j *job.Job) bool {
		w, c, err := ready(j, nil)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range surveyedGround(w, c, j).meshes.Findings {
			if f.Rule == mesh.Overlap {
				if f.Level != finding.Stop {
					t.Errorf("%+v", f)
				}
				return true
			}
		}
		return false
	}
	trusted := func(j *job.Job) bool {
		w, c, err := ready(j, nil)
		if err != nil {
			t.Fatal(err)
		}
		d := surveyedGround(w, c, j).meshes.Drives
		return len(d) > 0 && d[0].Trusted
	}
	for seed := range trucksHere() {
		truck := world.Truck(overlapFrom+seed, world.Options{Apt: true, Complete: true})
		j, err := truck.Read(dir)
		if err != nil {
			t.Fatal(err)
		}
		if len(j.Gears) == 0 {
			continue
		}
		geared++
		if overlaps(j) {
			hit++
			t.Logf("truck %d is stopped", overlapFrom+seed)
		}
		if g := &j.Gears[0]; trusted(j) && g.Worm != nil && g.Worm.PitchDiameter.Given() &&
			!leftAlone(j, g.Wheel.On) && !g.Tight.Given() {
			// The pitch diameter misread by four modules puts the tight distance two
			// modules out, more than any play.
			g.Worm.PitchDiameter, g.Worm.Tip = dim.OfFloat(g.Worm.PitchDiameter.Float()+4*g.Module), dim.Length{}
			wrong++
			if overlaps(j) {
				told++
			}
		}
	}
	t.Logf("%d of %d geared trucks are stopped; %d of %d with a worm misread", hit, geared, told, wrong)
	if geared == 0 || float64(hit) > 0.01*float64(geared)+2*math.Sqrt(0.01*0.99*float64(geared)) {
		t.Errorf("%d of %d trucks are stopped", hit, geared)
	}
	if wrong == 0 || told < wrong {
		t.Errorf("only %d of %d misread worms are told", told, wrong)
	}
}
