package target

import (
	"testing"

	"rebush/plan/job"
	"rebush/plan/survey"
)

// A sound seat gives a new bush its place where it stands in it; one that an
// earlier repair put off place does not, however sound it is.
func TestSeatOffPlaceGivesNoPlace(t *testing.T) {
	for _, c := range []struct {
		bore job.Bore
		want bool
	}{
		{job.Bore{Seat: &job.OldSeat{Sound: true}}, true},
		{job.Bore{Seat: &job.OldSeat{Sound: true}, Repaired: true}, false},
		{job.Bore{Seat: &job.OldSeat{}}, false},
		{job.Bore{Cap: true}, true},
		{job.Bore{}, false},
	} {
		if got := Sits(survey.Hole{Bore: &c.bore}); got != c.want {
			t.Errorf("%+v: %v", c.bore, got)
		}
	}
}
