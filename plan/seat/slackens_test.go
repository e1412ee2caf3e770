package seat

import (
	"testing"

	"rebush/fits/press"
)

// A bush 4/6, 4 long, in a zinc ring of 24 with 0.010 of press left, friction
// 0.05. By hand, for each MPa 6 x (1.43333/E + 2.26/100000) of interference:
//
//	fresh      E 85500: 2.3618e-4, 42.34 MPa, 0.05 x pi x 6 x 4 x 42.34 = 160 N
//	100 days   E 20700: 5.5106e-4, 18.15 MPa, 68 N
//	5 years    E  7550: 1.27467e-3, 7.845 MPa, 30 N
func TestSlackening(t *testing.T) {
	a := Answer{SeatHigh: 6, Contact: 4, Left: 0.010, Hold: press.Seat{D: 6, Di: 4, L: 4, Wall: press.Ring{OD: 24},
		Housing: press.Elastic{E: 20700, Nu: 0.3}, Bush: press.Elastic{E: 100000, Nu: 0.34}}}
	p := Plate{ELow: 85500, ERelaxed: 20700, EYears: 7550}
	want := "; with the largest seat and the smallest bush from 160 N along when new to 68 N in 100 days and 30 N in 5 years " +
		"if it creeps as alloy 3 does at 25 C under a lasting load"
	if got := a.slackening(&p, 0.05).String(); got != want {
		t.Errorf("got  %q\nwant %q", got, want)
	}
	if got := a.slackening(&Plate{ELow: 85500}, 0.05); got != "" {
		t.Errorf("nothing is known of its creep: %q", got)
	}
	a.Left = 0
	if got := a.slackening(&p, 0.05); got != "" {
		t.Errorf("no press is left: %q", got)
	}
}
