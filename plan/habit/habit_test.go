package habit

import (
	"math"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/table"
	"rebush/plan/job"
)

func mm(t *testing.T, s string) dim.Length {
	t.Helper()
	l, err := dim.Parse(s, dim.MM)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func rulesOf(t *testing.T) *table.Rules {
	t.Helper()
	r, err := table.ReadRules(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	// As the figures by hand have them, whatever the table says.
	nan := math.NaN()
	for name, v := range map[string][2]float64{"habit_reamed_um": {0, 4}, "habit_reamed_scatter_um": {3, nan},
		"habit_bored_um": {0, 2}, "habit_bored_scatter_um": {3.5, nan}, "habit_milled_um": {0, 8},
		"habit_milled_scatter_um": {8, nan}, "habit_clearance_um": {0, 4}, "habit_clearance_scatter_um": {4, nan},
		"habit_slips": {0.01, nan}, "record_prior_jobs": {4, nan}, "record_least_jobs": {3, nan},
		"record_slip_scatters": {5, nan}} {
		if err := r.Set(name, v[0], v[1], "by hand"); err != nil {
			t.Fatal(err)
		}
	}
	return r
}

func close(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 6e-4 { // printed to a thousandth of a um
		t.Errorf("%s: %.5f, want %.5f", what, got, want)
	}
}

// By hand: the rule has 0 with a spread of 4 um and scatter 3 worth 4 jobs, the
// record 6 with 1.5 um and scatter 2 of 8 jobs.
//
//	mean     (0/16 + 6/2.25) / (1/16 + 1/2.25) = 2.66667/0.506944 = 5.26027
//	u        1/root(0.506944)                                     = 1.40449
//	scatter  root((4 x 9 + 8 x 4)/12) = root(5.66667)             = 2.38048
//	share    (4 x 0.01 + 8 x 2/20)/12                             = 0.07
//	setup    root((4 x 0.010^2 + 8 x 0.020^2)/12) = root(0.0003)  = 0.01732
//
// A record without u or scatter: 3 jobs at 6 um, u 3/root 3 = 1.73205:
// mean 2/(1/16 + 1/3) = 5.05263, u 1/root(0.395833) = 1.58944.
func TestJoined(t *testing.T) {
	sh := &job.Shop{Record: &job.Record{
		Reamed: &job.Recorded{Over: mm(t, "0.006"), U: mm(t, "0.0015"), Scatter: mm(t, "0.002"), Jobs: 8},
		Reamers: map[string]job.Recorded{"5 mm H7": {Over: mm(t, "0.006"), Jobs: 3},
			"6 mm H7": {Over: mm(t, "0.009"), Jobs: 2}},
		Bored: &job.Recorded{Over: mm(t, "0.050"), Scatter: mm(t, "0.050"), Jobs: 2},
		Place: &job.RecordedPlace{Setup: mm(t, "0.020"), Hole: mm(t, "0.020"), Jobs: 8},
		Slips: &job.RecordedSlips{Slipped: 2, Holes: 20, Jobs: 8},
	}}
	h := Of(sh, rulesOf(t), Place{SetupMM: 0.010, HoleMM: 0.010})
	r := h.Seat(Reamed, "")
	close(t, "mean", r.OverUm, 5.26027)
	close(t, "u", r.UOverUm, 1.40449)
	close(t, "scatter", r.ScatterUm, 2.38048)
	close(t, "share", h.Slips.Share, 0.07)
	close(t, "setup", 1000*h.Place.SetupMM, 17.32)
	five := h.Seat(Reamed, "5 mm H7")
	close(t, "one reamer", five.OverUm, 5.05263)
	close(t, "its u", five.UOverUm, 1.58944)
	close(t, "its scatter", five.ScatterUm, 3)
	// Another reamer is not known: the rule's mean, the shop's scatter.
	six := h.Seat(Reamed, "6 mm H7")
	close(t, "another", six.OverUm, 0)
	close(t, "its u", six.UOverUm, 4)
	close(t, "its scatter", six.ScatterUm, 2.38048)
	// Two jobs change nothing.
	if b := h.Seat(Bored, ""); b != Ruled(rulesOf(t), Place{}).Ways[Bored] || b.Recorded() {
		t.Errorf("two jobs: %+v", b)
	}
	if got := r.Source(); got != "shop's record, 8 jobs: record/reamed" {
		t.Errorf("%s", got)
	}
	if h.Clearance.Recorded() || h.Clearance.UOverUm != 4 {
		t.Errorf("clearance that nobody recorded: %+v", h.Clearance)
	}
}

// A shop without a record does as the rules have it.
func TestWithout(t *testing.T) {
	h := Of(&job.Shop{}, rulesOf(t), Place{SetupMM: 0.01, HoleMM: 0.02})
	for w, want := range map[Way][3]float64{Reamed: {0, 4, 3}, Bored: {0, 2, 3.5}, Milled: {0, 8, 8}} {
		s := h.Seat(w, "5 mm H7")
		if [3]float64{s.OverUm, s.UOverUm, s.ScatterUm} != want || s.Recorded() {
			t.Errorf("%s: %+v", w, s)
		}
	}
	if h.Place.HoleMM != 0.02 || h.Slips.Share != 0.01 {
		t.Errorf("%+v %+v", h.Place, h.Slips)
	}
}

// What is known without doubt stands, and nothing is divided by none.
func TestJoinEdges(t *testing.T) {
	if m, u := JoinMean(1, 0, 5, 2); m != 1 || u != 0 {
		t.Error(m, u)
	}
	if m, u := JoinMean(1, 2, 5, 0); m != 5 || u != 0 {
		t.Error(m, u)
	}
	if JoinScatter(3, 0, 9, 0) != 3 || JoinShare(0.1, 0, 1, 0) != 0.1 {
		t.Error("no jobs on either side")
	}
}
