package route

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rebush/plan/seat"
)

// The tools before a seat, by what the shop owns.
func TestOpening(t *testing.T) {
	cases := []struct {
		name   string
		change func(*Bore, *Shop)
		want   string
		buy    int
	}{
		{"mill, then the drill in the window", func(*Bore, *Shop) {}, "locate 4 mm end mill; open 4.7 mm drill", 0},
		{"the drill bought for the reamer goes first", func(_ *Bore, s *Shop) {
			s.Drills = append(s.Drills, Tool{Name: "4.85 mm drill", Size: 4.85, For: 5})
		}, "locate 4 mm end mill; open 4.85 mm drill", 0},
		{"an end mill in the window does both", func(_ *Bore, s *Shop) {
			s.EndMills = append(s.EndMills, Tool{Name: "4.75 mm end mill", Size: 4.75})
		}, "locate 4.75 mm end mill", 0},
		{"a thick shank comes down on the plate: 3 and 2 beyond it want flutes of 5", func(_ *Bore, s *Shop) {
			s.EndMills[1].Reach, s.EndMills[1].Shank = 4.9, 6
		}, "locate 4.5 mm end mill (to buy); open 4.7 mm drill", 1},
		{"flutes as long as that", func(_ *Bore, s *Shop) { s.EndMills[1].Reach, s.EndMills[1].Shank = 5, 6 },
			"locate 4 mm end mill; open 4.7 mm drill", 0},
		{"a lobe wider than the mill: one to buy", func(x *Bore, _ *Shop) { x.S = 2.1 },
			"locate 4.5 mm end mill (to buy); open 4.7 mm drill", 1},
		{"the boring head rather than a purchase", func(x *Bore, s *Shop) { x.S, x.Found, s.BoringFrom = 2.1, 4, 4 },
			"locate boring head", 0},
		{"a drill below the window, said",
			func(_ *Bore, s *Shop) {
				s.Drills = []Tool{{Name: "4.5 mm drill",
					Size: 4.5}}
			}, "locate 4 mm end mill; open 4.5 mm drill", 0},
		{"no drill near: one to buy", func(_ *Bore, s *Shop) { s.Drills = nil },
			"locate 4 mm end mill; open 4.7 mm drill (to buy)", 1},
		{"a large jump goes in steps", func(x *Bore, s *Shop) {
			x.WaySize, x.Seat, s.Pins.To = 7, [2]float64{7.005, 7.015}, 8
			s.Drills = []Tool{{Name: "5 mm drill", Size: 5}, {Name: "5.8 mm drill", Size: 5.8},
				{Name: "6.7 mm drill", Size: 6.7}}
		}, "locate 4 mm end mill; open 5 mm drill; open 5.8 mm drill; open 6.7 mm drill", 0},
		{"the bar needs room to go in", func(x *Bore, s *Shop) {
			x.Way, x.WayName, s.BoringFrom = seat.BoringHead, "boring head", 4.4
		}, "open 4 mm end mill; locate boring head", 0},
		{"end mill on size: a lighter one first",
			func(x *Bore, _ *Shop) { x.Way, x.WayName = seat.EndMill, "5 mm end mill" }, "locate 4 mm end mill", 0},
		{"drill press: slip bushes, the lobe first", func(_ *Bore, s *Shop) { s.Machine, s.Jig, s.Lathe = DrillPress, true, true },
			"locate 4 mm drill; open 4.7 mm drill", 0},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			x, s := axle().Bores[0], millShop()
			c.change(&x, &s)
			r := Make(Job{Width: 16, Bores: []Bore{x}}, s, plainCut, plainRules())
			var got []string
			for _, k := range kinds(r, x.Name) {
				if strings.HasPrefix(k, "locate") || strings.HasPrefix(k, "open") {
					got = append(got, k)
				}
			}
			if d := cmp.Diff(c.want, strings.Join(got, "; ")); d != "" {
				t.Error(d)
			}
			if tools := withoutGauges(r.Buy); len(tools) != c.buy {
				t.Errorf("to buy: %v, want %d", tools, c.buy)
			}
		})
	}
}

// Far holes are cut in the same clamping where the tools reach.
func TestReach(t *testing.T) {
	cases := []struct {
		name    string
		change  func(*Job, *Shop)
		setups  int
		up      string
		because string
	}{
		{"all reach", func(*Job, *Shop) {}, 1, "left", ""},
		{"a chassis wider than five diameters", func(j *Job, _ *Shop) { j.Width = 22 }, 2, "left",
			"4 mm end mill reaches 20 mm"},
		{"the shop says how far it reaches", func(j *Job, s *Shop) {
			j.Width = 21
			s.EndMills[1].Reach = 30
		}, 1, "left", ""},
		{"a mill that is bought anyway is bought long enough", func(j *Job, _ *Shop) {
			j.Width, j.Bores[0].S = 21, 2.1
		}, 1, "left", ""},
		{"a thick shank", func(_ *Job, s *Shop) { s.EndMills[1].Shank = 6 }, 2, "left",
			"(6 mm) does not pass the near hole, which is 4.70 mm"},
		{"end mills of which nothing is said are short", func(_ *Job, s *Shop) { s.EndMills[1].Reach, s.EndMills[1].Shank = 0, 0 }, 2, "left",
			"4 mm end mill (6 mm) does not pass"},
		{"a short reamer", func(j *Job, _ *Shop) { j.Bores[0].Reach, j.Bores[1].Reach = 12, 12 }, 2, "left", "reaches 12 mm"},
		{"the larger seat goes uppermost", func(j *Job, s *Shop) {
			j.Bores[1].WaySize, j.Bores[1].WayName, j.Bores[1].Seat = 6, "6 mm reamer", [2]float64{6.005, 6.012}
			s.Drills = append(s.Drills, Tool{Name: "5.7 mm drill", Size: 5.7})
		}, 1, "right", ""},
		{"the far reamer is larger than the near hole before its last tool", func(j *Job, _ *Shop) {
			j.Bores[1].WaySize, j.Bores[1].WayName, j.Bores[1].Seat = 5.3, "5.3 mm reamer", [2]float64{5.305, 5.312}
		}, 2, "left", "5 mm H7 reamer is larger than the near hole before its last tool"},
		{"width not given", func(j *Job, _ *Shop) { j.Width = 0 }, 2, "left", "width"},
		{"drill press", func(_ *Job, s *Shop) { s.Machine, s.Jig = DrillPress, true }, 2, "left", ""},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			j, s := axle(), millShop()
			c.change(&j, &s)
			r := Make(j, s, plainCut, plainRules())
			var got []Setup
			for _, u := range r.Setups {
				if u.Clamping {
					got = append(got, u)
				}
			}
			if len(got) != c.setups || string(got[0].Plate) != c.up {
				t.Fatalf("set-ups %+v, want %d with %s first", got, c.setups, c.up)
			}
			said := ""
			for _, x := range r.Troubles {
				if x.Rule.Name() == "turned over" {
					said = x.Text.String()
				}
			}
			if (said != "") != (c.because != "") || !strings.Contains(said, c.because) {
				t.Errorf("said %q, want %q", said, c.because)
			}
			if c.setups == 2 {
				var second Operation
				for _, o := range r.Operations {
					if o.Kind == "set up" {
						second = o
					}
				}
				if !strings.Contains(second.Do.String(), "MIRRORED") || !strings.Contains(second.Note.String(),
					"rod") || !strings.Contains(second.Note.String(), "axle.left") {
					t.Errorf("second set-up: %s %s", second.Do, second.Note)
				}
				o := find(t, r, "locate", "axle.right")
				if s.Machine == DrillPress {
					if o.At != nil || o.Approach != "" || !o.Placed {
						t.Errorf("a drill press has no dials: %v %q", o.At, o.Approach)
					}
					return
				}
				if at := o.At; math.Abs(at[0]-48) > 1e-9 || math.Abs(at[1]-6) > 1e-9 {
					t.Errorf("the dial of the turned chassis reads %v, want 48 (58 less 10) and 6", *at)
				}
			}
		})
	}
}

// The far hole is never cut before the near one lets the tool pass, and the
// same tool goes through both.
func TestMergeToolByTool(t *testing.T) {
	r := Make(axle(), millShop(), plainCut, plainRules())
	var got []string
	for _, o := range r.Operations {
		if o.Setup == "A" && o.Bore != "" {
			got = append(got, string(o.Kind)+" "+o.Bore)
		}
	}
	want := []string{"locate axle.left", "locate axle.right", "open axle.left", "open axle.right",
		"chamfer axle.left", "chamfer axle.right",
		"size seat axle.left", "gauge axle.left", "gauge axle.right"}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	if o := find(t, r, "size seat", ""); !strings.Contains(o.Do.String(), "axle.left and axle.right in one stroke") ||
		!(o.Cut.Depth >= 16) {
		t.Errorf("%s, %v deep", o.Do, o.Cut.Depth)
	}
	if first, second := find(t, r, "locate", "axle.left"), find(t, r, "locate",
		"axle.right"); first.Minutes < second.Minutes+2.9 {
		t.Errorf("%.1f and %.1f minutes: the second hole needs no tool change", first.Minutes, second.Minutes)
	}
}

// A shaft with alike seats goes into the clamping that another shaft wants with
// its larger seat uppermost, where the tools reach: one set-up less.
func TestAlikeSeatsGoWithTheOthers(t *testing.T) {
	j, s := axle(), millShop()
	s.Drills = append(s.Drills, Tool{Name: "5.7 mm drill", Size: 5.7})
	other := axle().Bores
	for i := range other {
		other[i].Name, other[i].Shaft = strings.Replace(other[i].Name, "axle", "rear", 1), "rear"
	}
	other[1].WaySize, other[1].WayName, other[1].Seat = 6, "6 mm reamer", [2]float64{6.005, 6.012}
	j.Bores = append(j.Bores, other...)
	var got []string
	for _, u := range Make(j, s, plainCut, plainRules()).Setups {
		if u.Clamping {
			got = append(got, string(u.Plate)+": "+strings.Join(u.Bores, ", "))
		}
	}
	if d := cmp.Diff([]string{"right: axle.right, axle.left, rear.right, rear.left"}, got); d != "" {
		t.Error(d)
	}
}
