package drills

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rebush/fits/dim"
)

func ends(list []Tool) string {
	if len(list) == 0 {
		return "none"
	}
	return fmt.Sprintf("%d: %s to %s", len(list), list[0].Name, list[len(list)-1].Name)
}

func TestSet(t *testing.T) {
	d := builtIn(t)
	for text, want := range map[string]string{
		"metric 0.1":              "91: 1 mm to 10 mm",
		"metric 0,1":              "91: 1 mm to 10 mm",
		"metric 0.10 mm":          "91: 1 mm to 10 mm",
		"metric 0.5":              "25: 1 mm to 13 mm",
		"metric 0.1 1 to 6":       "51: 1 mm to 6 mm",
		"metric 0.1 1-6":          "51: 1 mm to 6 mm",
		"metric 0.1 from 6 to 1":  "51: 1 mm to 6 mm",
		"metric 0.2":              "61: 1 mm to 13 mm",
		"metric":                  "141: 1 mm to 13 mm",
		"metric 0.3 to 25":        "223: 0.3 mm to 25 mm", // the whole drawer but 0.2, 0.22, 0.25 and 0.28
		"number":                  "60: #60 to #1",
		"Numbers":                 "60: #60 to #1",
		"number 1 to 80":          "80: #80 to #1",
		"number 61-80":            "20: #80 to #61",
		"letter":                  "26: A to Z",
		"letter A to M":           "13: A to M",
		"fraction":                "29: 1/16 in to 1/2 in",
		"fraction 1/64":           "29: 1/16 in to 1/2 in",
		"fraction 1/32":           "15: 1/16 in to 1/2 in",
		"fraction 1/16 to 1/4":    "13: 1/16 in to 1/4 in",
		"fraction 1/64 1/16 to 1": "61: 1/16 in to 1 in",
	} {
		list, err := d.Set(text)
		if err != nil || ends(list) != want {
			t.Errorf("%q: %s, %v; want %s", text, ends(list), err, want)
		}
	}
	for _, text := range []string{"", "imperial", "metric x", "metric 0", "metric 0.001 1 to 25", "number 0.1", "number 1 to 98", "letter A to 5", "metric 0.1 -1 to 3", "metric 0.1 1 to", "machine reamer"} {
		list, err := d.Set(text)
		if err == nil || !strings.Contains(err.Error(), "metric 0.1") {
			t.Errorf("%q: %s, %v; want an error that names the sets", text, ends(list), err)
		}
	}
}

func TestOwned(t *testing.T) {
	d := builtIn(t)
	singles := []Tool{{Size: dim.Must("4.85")}, {Name: "#31", Size: dim.Must("#31")}, {Size: dim.Must("16")}}
	list, err := d.Owned([]string{"metric 0.1", "metric 0.5", "number"}, singles, dim.Must("10"))
	if err != nil {
		t.Fatal(err)
	}
	names := map[string]int{}
	for i, x := range list {
		if i > 0 && x.Size.Less(list[i-1].Size) {
			t.Errorf("%s stands after %s", x.Name, list[i-1].Name)
		}
		if names[x.Name]++; names[x.Name] > 1 {
			t.Errorf("%s is listed twice", x.Name)
		}
		if dim.Must("10").Less(x.Size) {
			t.Errorf("%s does not go into the chuck", x.Name)
		}
		want := map[string]int{"4.85 mm": 0, "#31": 1}
		if k, ok := want[x.Name]; ok && x.Index != k || !ok && x.Index != -1 {
			t.Errorf("%s has place %d", x.Name, x.Index)
		}
	}
	if len(list) != 91+60+1 { // one single is new, #31 is in the box of numbers
		t.Errorf("%d drills, want 152", len(list))
	}
	if _, err := d.Owned([]string{"bits"}, nil, dim.Length{}); err == nil {
		t.Error("bits are not a set")
	}
	if list, err := d.Owned(nil, nil, dim.Length{}); err != nil || len(list) != 0 {
		t.Errorf("nothing owned: %v, %v", list, err)
	}
}

func TestOwnedKeepsWithinTheChuck(t *testing.T) {
	d := builtIn(t)
	rapid.Check(t, func(t *rapid.T) {
		sets := rapid.SliceOf(rapid.SampledFrom(d.SetNames())).Draw(t, "sets")
		all, err := d.Owned(sets, nil, dim.Length{})
		if err != nil {
			t.Fatal(err)
		}
		limit := dim.OfFloat(rapid.Float64Range(0, 15).Draw(t, "chuck"))
		some, err := d.Owned(sets, nil, limit)
		if err != nil {
			t.Fatal(err)
		}
		if len(some) > len(all) || len(some) > 0 && limit.Less(some[len(some)-1].Size) {
			t.Fatalf("%d of %d drills, chuck %s", len(some), len(all), limit)
		}
	})
}

func FuzzSet(f *testing.F) {
	for _, s := range []string{"metric 0.1", "number 1 to 80", "letter A-M", "fraction 1/64 1/16 to 1", "metric 0.01 1 to 5"} {
		f.Add(s)
	}
	d := builtIn(f)
	f.Fuzz(func(t *testing.T, s string) {
		list, err := d.Set(s)
		if (err == nil) == (len(list) == 0) || len(list) > maxSet+1 {
			t.Fatalf("%q: %d drills, %v", s, len(list), err)
		}
		for _, x := range list {
			if x.Size.Sign() <= 0 || x.Name == "" {
				t.Fatalf("%q: %+v", s, x)
			}
		}
		if _, err := d.Lookup(s, dim.MM); err == nil && strings.TrimSpace(s) == "" {
			t.Fatalf("%q is a drill", s)
		}
	})
}
