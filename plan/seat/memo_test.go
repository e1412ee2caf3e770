package seat

import (
	"testing"

	"rebush/fits/finding"
)

// A memo changes no figure: what is offered with it, the first time and again, is
// what is offered without.
func TestMemoChangesNothing(t *testing.T) {
	in, _ := read(t, bench1+lathe+compound, truck)
	in.Job.Chassis.Current = "none" // so that a seat could be filled
	all := sites(in.Job)
	want, _ := Offer(in, all)
	in.Memo = new(Memo)
	for range 2 {
		got, _ := Offer(in, all)
		for i := range want {
			if got[i].Hole.Fill != want[i].Hole.Fill || want[i].Hole.Fill == 0 {
				t.Errorf("filled from %v, want %v", got[i].Hole.Fill, want[i].Hole.Fill)
			}
			for k, m := range want[i].Mends {
				if m.Mend == Rebush {
					same(t, got[i].Mends[k].Answers, m.Answers)
					same(t, got[i].Mends[k].Buy, m.Buy)
					for n, a := range m.Answers {
						if b := got[i].Mends[k].Answers[n]; b.Chance != a.Chance || b.Finish != a.Finish {
							t.Errorf("%s: %v by %s, want %v by %s", a.Bush.Code, b.Chance, b.Finish, a.Chance, a.Finish)
						}
					}
				}
			}
		}
	}
	var said finding.List
	if len(in.Memo.fill) < 2 || len(in.series(&said)) != len(in.Memo.series) {
		t.Errorf("%d radii and %d bushes are kept", len(in.Memo.fill), len(in.Memo.series))
	}
	if len(in.Memo.chances) < 5 {
		t.Errorf("%d chances are kept", len(in.Memo.chances))
	}
	// Another place is another question.
	all[0].At[0] += 0.1
	if h := in.hole(all[0], all); h.Fill == want[0].Hole.Fill {
		t.Error("another place has the same answer")
	}
}
