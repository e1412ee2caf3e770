package route

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"rebush/fits/table"
	"rebush/plan/job"
	"rebush/plan/seat"
)

// plainCut answers every question with 20 m/min on a spindle of three steps.
func plainCut(q Query) (Cut, error) {
	ideal := 1000 * 20 / (math.Pi * q.Dia)
	if q.Head == "faceplate" {
		ideal = math.Min(ideal, 300)
	}
	c := Cut{Ideal: ideal, Feed: 0.03, Depth: q.Through + 2, Thrust: math.NaN(), Minutes: 0.1}
	for _, s := range []float64{250, 600, 1200} {
		if s <= ideal {
			c.RPM = s
		}
	}
	c.ByHand = c.RPM == 0
	return c, nil
}

// plainRules are the defaults as they come, with a reamer that takes 0.2 to
// 0.3 mm and shanks of h8 at 4 mm.
func plainRules() Rules {
	rules, err := table.ReadRules(table.BuiltIn())
	if err != nil {
		panic(err)
	}
	var r Rules
	rules.Fill(&r)
	r.ReamStock = func(float64) (float64, float64) { return 0.2, 0.3 }
	r.ShankUnder = func(float64) float64 { return 0.018 }
	r.Stub = func(d float64) (float64, float64, bool) { return 11, math.Max(6, d), true }
	r.Overrun = 2
	return r
}

// axle is one shaft with two worn bores in 3 mm plates, 16 mm over all.
func axle() Job {
	bore := func(side job.Side) Bore {
		return Bore{Name: "axle." + string(side), Shaft: "axle", Side: side, Plate: 3, At: [2]float64{10, 6},
			Old: [2]float64{10, 6.07}, Found: 3.2,
			S: 1.75, Allow: 0.1, Wear: 0.1, Ligament: 3.4, Way: seat.Reamer, WayName: "5 mm H7 reamer", WaySize: 5,
			Seat: [2]float64{5.005, 5.012},
			Bush: "drawer 7", BushMetal: "sintered bronze", OD: [2]float64{5.019, 5.031}, U: [2]float64{0.007, 0.026},
			Length: 3.8, FlangeOD: 7, Porous: true,
			HeldBy: "press", Second: seat.Flange, PressN: [2]float64{50, 400}, Finish: "as delivered",
			Limits: [2]float64{3.175, 3.22}, Closed: [2]float64{3.18, 3.21},
			Journal: 3.16, LoadDeg: 90}
	}
	return Job{Width: 16, Length: 58, Soft: true, Bores: []Bore{bore("left"), bore("right")},
		Shafts: []Shaft{{Name: "axle", Journal: [2]float64{3.16, 3.16}, Insulated: "right", Wheels: true}}}
}

func millShop() Shop {
	return Shop{Machine: Mill, Readout: true, PressN: 600, Pins: &Pins{From: 1, To: 6, Step: 0.01},
		Drills: []Tool{{Name: "3.5 mm drill", Size: 3.5}, {Name: "4 mm drill", Size: 4},
			{Name: "4.7 mm drill", Size: 4.7}, {Name: "5.1 mm drill", Size: 5.1}},
		EndMills: []Tool{{Name: "3 mm end mill", Size: 3, Reach: 20, Shank: 3}, {Name: "4 mm end mill", Size: 4, Reach: 20, Shank: 4}}}
}

func kinds(r Route, bore string) []string {
	var out []string
	for _, o := range r.Operations {
		if o.Bore == bore {
			out = append(out, string(o.Kind)+" "+o.Tool.String())
		}
	}
	return out
}

func find(t *testing.T, r Route, kind Kind, bore string) Operation {
	t.Helper()
	for _, o := range r.Operations {
		if o.Kind == kind && (bore == "" || o.Bore == bore) {
			return o
		}
	}
	t.Fatalf("no operation %q on %q", kind, bore)
	return Operation{}
}

// Whatever the shop, the order can be carried out.
func TestOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j, s := axle(), millShop()
		s.Machine = rapid.SampledFrom([]Machine{Mill, DrillPress, OnLathe, ByHand}).Draw(t, "machine")
		s.Jig = true
		s.Readout = rapid.Bool().Draw(t, "readout")
		j.Width = rapid.Float64Range(8, 40).Draw(t, "width")
		s.PressN = rapid.Float64Range(0, 900).Draw(t, "press")
		n := rapid.IntRange(0, len(s.Drills)).Draw(t, "drills")
		s.Drills = s.Drills[:n]
		for i := range j.Bores {
			x := &j.Bores[i]
			x.S = rapid.Float64Range(1.6, 2.4).Draw(t, "s")
			x.Finish = rapid.SampledFrom([]seat.Finish{"as delivered", "to its own axle", "bore"}).Draw(t, "finish")
			x.FinishTool = "boring head"
		}
		r := Make(j, s, plainCut, plainRules())
		same := cmp.Comparer(func(a, b float64) bool { return a == b || math.IsNaN(a) && math.IsNaN(b) })
		if d := cmp.Diff(r, Make(j, s, plainCut, plainRules()), same); d != "" {
			t.Fatal("two makings differ: " + d)
		}
		gauged, pressed := map[string]int{}, map[string]int{}
		last := len(r.Operations) - 1
		for i, o := range r.Operations {
			if o.Number != 10*(i+1) || o.Do == "" {
				t.Fatalf("%d: %+v", i, o)
			}
			if o.Cut != nil && o.Backing == "" {
				t.Fatalf("%s has no backing", o.Do)
			}
			switch o.Kind {
			case "gauge":
				if o.OfSeat {
					gauged[o.Bore] = i + 1
				}
			case "press":
				pressed[o.Bore] = i + 1
				if o.GaugeFirst == "" {
					t.Fatalf("%s has no box", o.Do)
				}
			case "wheels":
				if i != last || o.GaugeFirst == "" {
					t.Fatalf("wheels at %d of %d", i, last)
				}
			}
			if o.Kind != "press" {
				continue
			}
			for _, x := range j.Bores {
				if gauged[x.Name] == 0 {
					t.Fatalf("%s before the seat of %s is gauged", o.Do, x.Name)
				}
			}
		}
		if len(pressed) != 2 {
			t.Fatalf("pressed %v", pressed)
		}
	})
}

// A job without bores has nothing to do, and hollow figures are no reason to
// fall over.
func TestHollow(t *testing.T) {
	if r := Make(Job{}, Shop{}, plainCut, Rules{}); len(r.Operations) != 0 {
		t.Error(r)
	}
	fail := func(Query) (Cut, error) { return Cut{}, fmt.Errorf("no table") }
	r := Make(axle(), Shop{Machine: Mill}, fail, plainRules())
	if !strings.Contains(find(t, r, "locate", "axle.left").Note.String(), "no table") {
		t.Error("a missing figure is not said")
	}
}
