package plan

import (
	"math"
	"testing"

	"rebush/fits/dim"
	"rebush/plan/chance"
	"rebush/plan/mesh"
	"rebush/plan/world"
)

// factsOf is a job as its trials read it, with the plan that it is of.
func factsOf(t *testing.T, seed uint64) (s steps, f chance.Facts) {
	t.Helper()
	j, err := world.Truck(seed, world.Options{}).Read(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	w, c, err := ready(j, nil)
	if err != nil {
		t.Fatal(err)
	}
	g := surveyedGround(w, c, j)
	of := tour(g, chance.Settings{})
	s = of.nearest().steps
	return s, g.trialFacts(s)
}

// driveOf is a mesh of a plan by its name.
func driveOf(s steps, name string) mesh.Drive {
	for _, d := range s.Target.Drives {
		if d.Name == name {
			return d
		}
	}
	return mesh.Drive{}
}

// Every mesh of a truck is tried. Of one whose shafts stay as they are the
// trials have, without errors, the centre distance that is printed as found.
func TestEveryMeshIsTried(t *testing.T) {
	untouched, pairs, placeless := 0, 0, 0
	for seed := range uint64(80) {
		s, f := factsOf(t, seed)
		if !s.Target.OK {
			continue
		}
		found := map[string]dim.Gauged{}
		for _, m := range s.Target.Meshes {
			found[m.Gear] = m.FoundCentreMM
		}
		m, _ := chance.FromPlan(f)
		for i, p := range f.Pairs {
			pairs++
			if p.Placeless {
				placeless++
				continue
			}
			if d := driveOf(s, p.Name); d.Trusted == (len(p.SpreadMM) > 0) || p.UGeomMM != d.UTeeth || d.UGeom < d.UTeeth {
				t.Errorf("truck %d, %s: trusted %v, tried with %d shifts, u %v of %v", seed, p.Name, d.Trusted,
					len(p.SpreadMM), p.UGeomMM, d.UGeom)
			}
			touched, shift := false, 0.0
			for _, h := range f.Holes {
				for _, at := range []struct {
					on      int
					station float64
					sign    float64
				}{{p.On, p.Station, 1}, {p.Mate, p.MateStation, -1}} {
					if h.On != at.on {
						continue
					}
					touched = touched || h.Fitting != nil
					share := 1 - at.station
					if h.Bore.Side == "right" {
						share = at.station
					}
					if s.Target.Axles[h.On].Holes[len(s.Target.Axles[h.On].Holes)-1].Name() == s.Target.Axles[h.On].Holes[0].Name() {
						share = 1
					}
					load := s.Target.Axles[h.On].Holes[0].Load
					shift -= at.sign * share * h.FoundMM * (load[0]*p.Towards[0] + load[1]*p.Towards[1])
				}
			}
			if touched {
				continue
			}
			untouched++
			if got, want := m.Gears[i].CentreMM+shift, found[p.Name].Float(); math.Abs(got-want) > 0.002 {
				t.Errorf("truck %d, %s: tried at %.4f, found at %.4f", seed, p.Name, got, want)
			}
		}
		if len(f.Pairs) != len(m.Gears) {
			t.Errorf("truck %d: %d meshes, %d tried", seed, len(f.Pairs), len(m.Gears))
		}
	}
	if untouched < 5 || pairs < 60 {
		t.Errorf("%d meshes, %d of untouched shafts: too few to show anything", pairs, untouched)
	}
	t.Logf("%d meshes, %d of untouched shafts, %d of no known place", pairs, untouched, placeless)
}
