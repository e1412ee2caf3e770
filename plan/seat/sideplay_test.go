package seat

import (
	"math"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/plan/job"
	"rebush/plan/survey"
)

// Which washers come off once flanges take up length: side play 0.1 to 0.4.
func TestKeptWashers(t *testing.T) {
	mm := func(list ...string) (out []dim.Length) {
		for _, s := range list {
			out = append(out, dim.Must(s+" mm"))
		}
		return out
	}
	r := rules(t)
	for _, c := range []struct {
		name    string
		washers []dim.Length
		flanges float64
		kept    float64
		out     []float64
	}{
		// 20 - 18 = 2.0 between hubs and plates.
		{"no flange", mm("1", "0.8"), 0, 1.8, nil},
		{"room for both", mm("0.5"), 1.2, 0.5, nil},
		{"one washer for one flange", mm("0.8", "1"), 0.8, 1.0, []float64{0.8}},
		{"the thinnest that does it", mm("1", "0.8", "0.1"), 0.8, 1.1, []float64{0.8}},
		{"both", mm("0.7", "0.7"), 1.6, 0, []float64{0.7, 0.7}},
		{"the thickest first where none does it", mm("0.5", "1"), 1.9, 0, []float64{1, 0.5}},
	} {
		s := &job.Shaft{HubToHub: dim.Must("20 mm"), Washers: c.washers}
		kept, out := keptWashers(s, 18, c.flanges, r)
		if math.Abs(kept-c.kept) > 1e-9 || len(out) != len(c.out) {
			t.Errorf("%s: keeps %v, takes off %v", c.name, kept, out)
			continue
		}
		for i := range out {
			if out[i] != c.out[i] {
				t.Errorf("%s: takes off %v, want %v", c.name, out, c.out)
			}
		}
	}
}

func TestSidePlayIsSaid(t *testing.T) {
	r := rules(t)
	for _, c := range []struct {
		play float64
		gone []float64
		text string
		fix  string
	}{
		{0.25, nil, "", ""},
		{0.25, []float64{1}, "the flanges take the place of one washer of 1.00 mm: leave it out", ""},
		{0.25, []float64{0.5, 1}, "the flanges take the place of the washers of 1.00 and 0.50 mm: leave them out", ""},
		{0.04, nil, "side play would be 0.04 mm, least 0.10", "face 0.06 mm off the flanges, or a thinner washer"},
		{0.04, []float64{0.5, 0.5}, "side play would be 0.04 mm, least 0.10",
			"leave out the two washers of 0.50 mm and face 0.06 mm off the flanges"},
		{0.90, nil, "side play would be 0.90 mm, most 0.40", "put on a washer of 0.7 mm"}, // 0.65 to the middle
		{0.42, nil, "side play would be 0.42 mm, most 0.40", "put on a washer of 0.2 mm"},
		{0.90, []float64{1}, "side play would be 0.90 mm, most 0.40",
			"put a washer of 0.7 mm in the place of one washer of 1.00 mm"},
	} {
		var l finding.List
		saySidePlay(&l, finding.Place{Where: "axle"}, c.play, r, c.gone)
		switch {
		case c.text == "" && len(l) == 0:
		case len(l) != 1 || l[0].Text.String() != c.text || l[0].Fix.String() != c.fix:
			t.Errorf("%v, washers off %v: %+v", c.play, c.gone, l)
		}
	}
}

// What flanges take on one shaft, and whether it still waits for a bush.
func TestFlangesOn(t *testing.T) {
	one, other := &job.Shaft{Name: "one"}, &job.Shaft{Name: "other"}
	on := func(s *job.Shaft, a *Answer) Seated { return Seated{Site: Site{Old: survey.Hole{Shaft: s}}, Chosen: a} }
	list := []Seated{on(one, &Answer{SideUse: 0.8}), on(other, nil), on(one, &Answer{SideUse: 0.5})}
	if length, waiting := flangesOn(one, list); math.Abs(length-1.3) > 1e-12 || waiting {
		t.Errorf("%v, waits %v", length, waiting)
	}
	if length, waiting := flangesOn(other, list); length != 0 || !waiting {
		t.Errorf("%v, waits %v", length, waiting)
	}
}
