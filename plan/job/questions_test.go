package job

import (
	"slices"
	"strings"
	"testing"

	"rebush/fits/table"
)

// asExample answers a question as its row in the list has it.
func asExample(iv *Interview, st Step) string {
	switch st.Part + "/" + st.ID {
	case "plates/shafts":
		return "2"
	case "shaft/name", "gear/on", "wheelbase/from":
		return usualName(st.Index)
	case "bore/span to":
		return map[int]string{0: "rear axle", 1: "front axle"}[st.Index] + "." + string(st.Side)
	case "feature/another", "bush/another":
		return map[bool]string{true: "yes", false: "no"}[st.Index == 0]
	case "feature/name":
		return "screw hole " + string(rune('a'+st.Index))
	case "shop/machine":
		return "drill press"
	case "shop/file", "bore/probed":
		return ""
	case "bush/code":
		return "drawer " + string(rune('6'+st.Index))
	}
	return st.Example
}

// everyStep answers the short way and then every group of the further questions;
// before each group it calls between.
func everyStep(iv *Interview, between func(), answer func(Step)) {
	for group := 0; ; {
		st, ok := iv.Next()
		switch {
		case ok:
			answer(st)
		case group == len(Groups()):
			return
		default:
			iv.More(Groups()[group].Name)
			group++
			between()
		}
	}
}

// TestQuestions: every question that has a number is put, in the order of the
// numbers and once of one thing, where all groups are asked for.
func TestQuestions(t *testing.T) {
	asked := map[string]bool{}
	for _, gear := range []string{"worm", "spur"} {
		iv := NewInterview("new.yaml")
		iv.Folder = "."
		last := map[string]int{}
		everyStep(iv, func() { clear(last) }, func(st Step) {
			text := asExample(iv, st)
			switch st.Part + "/" + st.ID {
			case "gear/kind":
				text = gear
			case "bore/bushed":
				text = map[bool]string{true: "yes", false: "no"}[st.Side == Left]
			case "bore/probed":
				text = "points.csv"
			}
			if wrong := iv.Answer(st, text); wrong != "" {
				t.Fatalf("%s: %q: %s", st.at(), text, wrong)
			}
			asked[st.Part+"/"+st.ID] = true
			of := strings.TrimSuffix(st.at(), st.ID)
			if st.Number > 0 && st.Number <= last[of] {
				t.Errorf("%s, %d, is put after %d", st.at(), st.Number, last[of])
			}
			last[of] = max(last[of], st.Number)
		})
	}
	var numbers []int
	for _, q := range Questions() {
		if !asked[q.Part+"/"+q.ID] {
			t.Errorf("%d, %s/%s, is never put", q.Number, q.Part, q.ID)
		}
		if q.Number > 0 {
			numbers = append(numbers, q.Number)
		}
		if q.Why == "" || q.Unknown == "" || q.Ask == "" || q.Example == "" {
			t.Errorf("%s/%s does not say what it is for, or what is done without it", q.Part, q.ID)
		}
		if q.Group != "" && !slices.ContainsFunc(Groups(), func(g Group) bool { return g.Name == q.Group }) {
			t.Errorf("%s/%s is asked in %q, which nobody offers", q.Part, q.ID, q.Group)
		}
		for _, c := range q.when {
			question(c.part, c.id) // panics where there is none
		}
	}
	slices.Sort(numbers)
	for i, n := range numbers {
		if n != i+1 {
			t.Fatalf("number %d stands in the place of %d", n, i+1)
		}
	}
	if len(numbers) < 90 {
		t.Errorf("only %d questions have a number", len(numbers))
	}
}

// TestExampleGoesTogether: what the worked example fills in is a job that reads
// without a mistake, and each of its answers is of a question that there is.
func TestExampleGoesTogether(t *testing.T) {
	iv := NewInterview("new.yaml")
	said := map[string]bool{}
	everyStep(iv, func() {}, func(st Step) {
		text := Example()(st.Part, string(st.Side), st.ID)
		if st.ID == "file" {
			text = ""
		}
		said[st.Part+"/"+st.ID] = true
		if wrong := iv.Answer(st, text); wrong != "" {
			t.Fatalf("%s: %q: %s", st.at(), text, wrong)
		}
		if d := iv.Doubts(st); len(d) > 0 {
			t.Errorf("%s: %q: %s", st.at(), text, d)
		}
	})
	j, err := Parse("new.yaml", ".", iv.Text(), Options{})
	if err != nil {
		t.Fatalf("%v\n%s", err, iv.Text())
	}
	_, b := j.Bore("front axle.right")
	if b == nil || b.Centre.Y.String() != "16.07 mm" || j.Gears[0].Pinion.Teeth != 12 || j.Bushes[0].OD.Class != "r6" ||
		j.Swap.Price != 58 || j.Swap.Hours != 0.4 || b.Edges[0].AtDeg != 90 || b.WornTo[0] != 90 || j.Noisy != Yes ||
		j.Binds != No || j.Symptoms.Rims != "tight" || j.Bushes[0].FlangeThickness.String() != "0.8 mm" {
		t.Errorf("%s", iv.Text())
	}
	table, err := table.Parse("example", "example.csv", exampleTable)
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range table.Rows {
		if q := question(row.Get("part"), row.Get("id")); !said[q.Part+"/"+q.ID] && q.ID != "name" {
			t.Errorf("%s/%s of the example is not put of one axle", q.Part, q.ID)
		}
	}
}

// TestGroupsOfGains: the words of each change that a plan is tried with, and that a
// question would answer, leads to the group of that question.
func TestGroupsOfGains(t *testing.T) {
	for key, want := range map[string]string{"the tip diameter of the pinion of drive measured, if it comes out at 7.00 mm": "mesh",
		"drive tried with a dummy axle and a strip of paper": "mesh", "the run-out of the wheel of drive measured": "mesh",
		"measure the narrowest with pins": "pins", "take the middles with an indicator": "instrument",
		"the metal left to the edge at 90 degrees of front axle.left measured again": "room", "the wheelbase measured again": "casting",
		"the old bush of front axle.left pushed out and its seat measured": "old bush", "make a jig plate pinned in sound holes": "",
		"the wheel of drive trued to half its run-out": "", "bush drawer 7, to buy": "", "": ""} {
		if got := GroupOf(key); got != want {
			t.Errorf("%q leads to %q, want %q", key, got, want)
		}
	}
}
