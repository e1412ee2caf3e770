package route

import (
	"strings"
	"testing"

	"rebush/fits/finding"
)

// What each machine has to say.
func TestMachines(t *testing.T) {
	t.Run("no jig, worn", func(t *testing.T) {
		s := millShop()
		s.Machine = "drill press"
		r := Make(axle(), s, plainCut, plainRules())
		if len(r.Operations) != 0 || len(r.Troubles) != 2 || r.Troubles[0].Level != finding.Stop {
			t.Errorf("%d operations, %+v", len(r.Operations), r.Troubles)
		}
	})
	t.Run("no jig, hardly worn", func(t *testing.T) {
		j, s := axle(), millShop()
		s.Machine = "drill press"
		for i := range j.Bores {
			j.Bores[i].Wear = 0.04
		}
		r := Make(j, s, plainCut, plainRules())
		if o := find(t, r, "locate", "axle.left"); strings.Contains(o.Note.String(), "slip bush") {
			t.Errorf("there is no slip bush: %s", o.Note)
		}
	})
	t.Run("dials", func(t *testing.T) {
		s := millShop()
		s.Readout, s.ApproachY = false, "falling"
		o := find(t, Make(axle(), s, plainCut, plainRules()), "locate", "axle.left")
		if o.Approach != "x rising, y falling; take up the screw; lock both slides" {
			t.Error(o.Approach)
		}
	})
	t.Run("off place on a faceplate", func(t *testing.T) {
		// The hole that is there is run true, and the chassis goes 0.20 and 0.09
		// from there; seen from the right plate the target lies to the right of
		// the hole, so the chassis goes to the left.
		j, s := axle(), millShop()
		s.Machine = "lathe"
		j.Bores = j.Bores[1:]
		x := &j.Bores[0]
		x.Old, x.At, x.Repaired = [2]float64{46.21, 14.88}, [2]float64{46.007, 14.971}, true
		up := find(t, Make(j, s, plainCut, plainRules()), "set up", "")
		for _, w := range []string{"as the earlier repair left it", "0.20 mm to the left and 0.09 mm down"} {
			if !strings.Contains(up.Note.String(), w) {
				t.Errorf("no %q in %q", w, up.Note)
			}
		}
	})
	t.Run("lathe", func(t *testing.T) {
		s := millShop()
		s.Machine = "lathe"
		r := Make(axle(), s, plainCut, plainRules())
		up := find(t, r, "set up", "")
		for _, w := range []string{"counterweight", "by hand", "guard shut", "300 rev/min", "0.07 mm up"} {
			if !strings.Contains(up.Note.String(), w) {
				t.Errorf("no %q in %q", w, up.Note)
			}
		}
		for _, o := range r.Operations {
			if o.Setup == "A" && o.Cut != nil && o.Cut.Ideal > 300+1e-9 {
				t.Errorf("%s at %.0f rev/min on a faceplate", o.Do, o.Cut.Ideal)
			}
		}
	})
	t.Run("lathe, two shafts are two set-ups", func(t *testing.T) {
		j, s := axle(), millShop()
		s.Machine = "lathe"
		more := axle().Bores
		for i := range more {
			more[i].Name, more[i].Shaft = strings.Replace(more[i].Name, "axle", "rear", 1), "rear"
		}
		j.Bores = append(j.Bores, more...)
		n := 0
		for _, u := range Make(j, s, plainCut, plainRules()).Setups {
			if u.Clamping {
				n++
			}
		}
		if n != 2 {
			t.Errorf("%d clampings", n)
		}
	})
}
