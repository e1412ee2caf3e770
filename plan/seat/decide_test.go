package seat

import (
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/plan/job"
)

// The job's choice goes before the list; a bush of the series is offered where
// nothing of the list can be seated, and not where one was chosen.
func TestDecideLooksFurtherOnlyWhereItMay(t *testing.T) {
	none := truck[:strings.Index(truck,
		"  - {code: solid 5")] + "  - {code: thin, bore: 3.2, bore_class: F7, od: 3.9, od_class: s7, length: 3.0, material: bearing bronze C93200}\n"
	in, _ := read(t, bench1, none, func(j *job.Job) {
		// A journal of 2.97 for the bushes of 3 mm that are sold.
		s := &j.Shafts[0]
		s.Journal, s.Unworn = job.Ends{Left: dim.Must("2.97 mm"), Right: dim.Must("2.97 mm")}, job.Ends{}
	})
	got, _ := decide(in, sites(in.Job))
	if len(got) != 2 || got[0].Chosen == nil || !got[0].Chosen.Bush.ToBuy || got[0].Chosen != &got[0].Answers[0] {
		t.Fatalf("%d bores, chosen %+v", len(got), got[0].Chosen)
	}
	bought := 0
	for _, a := range got[0].Answers {
		if a.Bush.ToBuy {
			bought++
			if a.Bush.Index < len(in.Job.Bushes) || !a.Feasible {
				t.Errorf("%s comes before the job's own, or does not fit: %v", a.Bush.Code, a.Fail.Text())
			}
		}
	}
	if bought == 0 || bought > mostToBuy {
		t.Errorf("%d bushes to buy", bought)
	}
	in.Job.Choose = map[string]string{"": "thin"}
	if got, _ := decide(in, sites(in.Job)); got[0].Chosen != nil {
		t.Errorf("chose %s against the job", got[0].Chosen.Bush.Code)
	}
	in, _ = read(t, bench1, truck)
	in.Job.Choose = map[string]string{"": "solid 5", "drive.right": "own turning"}
	got, _ = decide(in, sites(in.Job))
	for _, a := range got[1].Answers {
		if a.Bush.Code != "own turning" {
			t.Errorf("%s was asked about", a.Bush.Code)
		}
	}
	all := sites(in.Job)
	all[0].Touch = false
	if got, _ := decide(in, all); len(got) != 1 || got[0].Name() != "drive.right" {
		t.Errorf("%d bores, first %s", len(got), got[0].Name())
	}
}

// Of a series that offers many no more than a dozen are shown.
func TestFewToBuy(t *testing.T) {
	in, _ := read(t, bench1, truck)
	all := sites(in.Job)
	h := in.hole(all[0], all)
	many := make([]Bush, 2*mostToBuy)
	for i := range many {
		many[i] = in.Stock[0]
		many[i].Index = i
	}
	if got := in.toBuy(h, h.Mends(), many); len(got) != mostToBuy {
		t.Errorf("%d of %d are shown", len(got), len(many))
	}
}

// The bushes to buy stand behind the job's own, whatever else is alike.
func TestSeriesComesAfterTheList(t *testing.T) {
	in, _ := read(t, bench1, truck)
	var said finding.List
	list := in.series(&said)
	if len(list) < 20 || len(said) > 0 {
		t.Fatalf("%d bushes, %v", len(list), said)
	}
	for i, b := range list {
		if b.Index < len(in.Stock) || i > 0 && b.Index <= list[i-1].Index || !b.ToBuy || b.Source == "" {
			t.Fatalf("%+v", b)
		}
	}
}
