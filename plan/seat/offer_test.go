package seat

import (
	"testing"

	"rebush/fits/dim"
	"rebush/plan/job"
)

// Every mend of a hole is offered, rising, with the very answers that the
// search gives for it alone; one that the hole is not open to says why.
func TestOfferOfEveryMend(t *testing.T) {
	in, _ := read(t, bench1, truck)
	all := sites(in.Job)
	all[1].Touch = false
	got, _ := Offer(in, all)
	if len(got) != 1 || got[0].Name() != "drive.left" {
		t.Fatalf("%d offers", len(got))
	}
	re := got[0].Of(Rebush)
	want := Search(got[0].Hole, []Mend{Rebush}, in.Stock, in.Shop, in.Rules)
	if !re.OK() || re.WhyNot != "" {
		t.Errorf("re-bush: %q", re.WhyNot)
	}
	same(t, re.Answers, want)
	for _, b := range re.Buy {
		if !b.Feasible || !b.Bush.ToBuy {
			t.Errorf("%s to buy: %+v", b.Bush.Code, b.Fail)
		}
	}
	if new := got[0].Of(Renew); new.OK() || new.WhyNot == "" || new.Owner == "" || new.Answers != nil {
		t.Errorf("renew where nothing is to renew: %+v", new)
	}
	in.Job.Shafts[0].Bores[0].Seat = &job.OldSeat{Diameter: dim.Must("5 mm"), Sound: true}
	all[0].Seat, all[0].USeat, all[0].At = 5.005, 0.003, all[0].Old.Worn.O
	got, _ = Offer(in, all)
	if new := got[0].Of(Renew); !new.OK() || new.Answers[0].Way.Kind != OldSeatWay {
		t.Errorf("renew in a sound seat: %+v", new)
	}
	in.Job.Choose = map[string]string{"": "solid 5"}
	if got, _ = Offer(in, all); len(got[0].Of(Rebush).Buy) != 0 {
		t.Error("the job chose its bush, and others are offered to buy")
	}
}

// An old bush that is still in hides its seat: that is asked for first.
func TestOldBushIsAskedFor(t *testing.T) {
	in, _ := read(t, bench1, truck)
	in.Job.Shafts[0].Bores[0].Bushed = true
	got, _ := Offer(in, sites(in.Job))
	if asks := got[0].Of(Rebush).Asks; asks != "seat" {
		t.Errorf("asks %q", asks)
	}
	if asks := got[1].Of(Rebush).Asks; asks != "" {
		t.Errorf("asks %q of a hole without a bush", asks)
	}
}
