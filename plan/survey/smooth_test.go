package survey

import (
	"fmt"
	"math"
	"testing"

	"rebush/plan/job"
)

// TestJobGoesSmoothly: as the widest of one hole is read from 3.200 to 3.400, all
// else left alone, no old centre of the shaft moves by more than the reading, even
// where the plates come to contradict each other; and both the doubt of what was
// read there and the doubt of all together do not fall for having worn less.
func TestJobGoesSmoothly(t *testing.T) {
	for name, change := range map[string]func(*job.Bore){
		"as it is":        func(*job.Bore) {},
		"with a line":     func(b *job.Bore) { at := 80.0; b.WidestAt = &at },
		"no side is said": func(b *job.Bore) { b.WornTo = nil },
		"two loads":       func(b *job.Bore) { b.WornTo = []float64{70, 110} },
		"no other plate":  func(b *job.Bore) {},
		"narrowest by pin": func(b *job.Bore) {
			b.Narrowest, b.PinGoes, b.PinStops = mmOf(t, "0"), mmOf(t, "3.195"), mmOf(t, "3.205")
		},
	} {
		var was [2]Hole
		for i := range 201 {
			b, o := measured(t), measured(t)
			change(&b)
			if b.PinGoes.Given() {
				b.Narrowest = job.Bore{}.Narrowest
			}
			if name == "no other plate" {
				o = job.Bore{Repaired: true}
			}
			b.Widest = mmOf(t, fmt.Sprintf("%.3f", 3.200+0.001*float64(i)))
			holes, _, _ := oneShaft(t, b, o).survey()
			for k, h := range holes {
				if !h.Known {
					t.Fatalf("%s: %s is not known", name, h.Name())
				}
				if i == 0 {
					continue
				}
				if step := dist(h.Worn.O, was[k].Worn.O); step > 0.001+1e-9 {
					t.Errorf("%s: widest %v: %s jumps %.5f", name, b.Widest, h.Name(), step)
				}
				if math.Abs(h.U-was[k].U) > 0.001 {
					t.Errorf("%s: widest %v: the doubt of %s goes from %.5f to %.5f", name, b.Widest, h.Name(), was[k].U, h.U)
				}
			}
			if i > 0 && name != "two loads" && holes[0].Evidence[0].U() < was[0].Evidence[0].U()-1e-9 {
				t.Errorf("%s: widest %v: better known for more wear", name, b.Widest)
			}
			was = [2]Hole{holes[0], holes[1]}
		}
	}
}
