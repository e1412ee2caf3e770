package plan

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"rebush/plan/chance"
	"rebush/plan/job"
	"rebush/plan/seat"
	"rebush/plan/world"
)

// near is how far a printed figure may lie from the one that decided: what is
// rounded to nine digits, or to a millionth of a millimetre, before it goes on.
const near = 2e-6

// pair is one figure of a seat by the least and the most of it.
func pair(of func(*seat.Answer) [2]float64, by float64) (lo, hi func(bored) float64) {
	return func(b bored) float64 { return of(b.Chosen)[0] * by }, func(b bored) float64 { return of(b.Chosen)[1] * by }
}

// decided says by which value of the search each figure of a seat's page was
// decided.
func decided() map[string]func(bored) float64 {
	of := func(f func(*seat.Answer) float64) func(bored) float64 {
		return func(b bored) float64 { return f(b.Chosen) }
	}
	out := map[string]func(bored) float64{
		"bush/od_mm/min":         of(func(a *seat.Answer) float64 { return a.Bush.ODLow }),
		"bush/od_mm/max":         of(func(a *seat.Answer) float64 { return a.Bush.ODHigh }),
		"bush/bore_mm/min":       of(func(a *seat.Answer) float64 { return a.Bush.BLow }),
		"bush/bore_mm/max":       of(func(a *seat.Answer) float64 { return a.Bush.BHigh }),
		"tool/hole_mm/min":       of(func(a *seat.Answer) float64 { return a.Leaves[0] }),
		"tool/hole_mm/max":       of(func(a *seat.Answer) float64 { return a.Leaves[1] }),
		"accepted_um/min":        of(func(a *seat.Answer) float64 { return a.Presses[1] * 1000 }),
		"accepted_um/max":        of(func(a *seat.Answer) float64 { return a.Presses[0] * 1000 }),
		"interference_spring_um": of(func(a *seat.Answer) float64 { return a.Hold.At(a.Left).Spring * 1000 }),
		"seat_mm/min":            of(func(a *seat.Answer) float64 { return a.SeatLow }),
		"seat_mm/max":            of(func(a *seat.Answer) float64 { return a.SeatHigh }),
		"clears_mm":              func(b bored) float64 { return b.Wanted.S },
		"cleanup_mm":             of(func(a *seat.Answer) float64 { return a.CleanUp }),
		"interference_um/min":    of(func(a *seat.Answer) float64 { return a.ULow * 1000 }),
		"interference_um/max":    of(func(a *seat.Answer) float64 { return a.UHigh * 1000 }),
		"edge_mm": func(b bored) float64 {
			if b.Chosen.Way.Kind == seat.AsItIs { // from the middle of the hole that is there
				return b.Chosen.Ligament + b.Chosen.SeatHigh/2
			}
			return math.Min(b.Wanted.Edge, bossEdge(&b.Wanted))
		},
		"seat_chamfer_mm":          of(func(a *seat.Answer) float64 { return a.Chamfer }),
		"metal_left_mm":            of(func(a *seat.Answer) float64 { return a.Ligament }),
		"bush_bore_mm":             of(func(a *seat.Answer) float64 { return (a.Bush.BLow + a.Bush.BHigh) / 2 }),
		"bush_bore_mm/stiff":       of(func(a *seat.Answer) float64 { return a.Stress.Di }),
		"bush_bore_mm/soft":        of(func(a *seat.Answer) float64 { return a.Hold.Di }),
		"bush_bore_mm/softest":     of(func(a *seat.Answer) float64 { return a.ClosureAt[1].Di }),
		"offset_mm":                of(func(a *seat.Answer) float64 { return math.Hypot(a.Offset[0], a.Offset[1]) }),
		"offset_mm/0":              of(func(a *seat.Answer) float64 { return a.Offset[0] }),
		"offset_mm/1":              of(func(a *seat.Answer) float64 { return a.Offset[1] }),
		"tool/set_mm":              of((*seat.Answer).SetSize),
		"tool/over_um":             of(func(a *seat.Answer) float64 { return (a.Odds.SeatMid - a.SetSize()) * 1000 }),
		"expected_seat/seat_mm":    of(func(a *seat.Answer) float64 { return a.Odds.SeatMid }),
		"expected_seat/u_um":       of(func(a *seat.Answer) float64 { return a.Odds.ToolU * 1000 }),
		"expected_seat/scatter_um": of(func(a *seat.Answer) float64 { return a.Odds.SeatU * 1000 }),
		"set_u_mm":                 of(func(a *seat.Answer) float64 { return a.USet }),
		"plate_e_high":             of(func(a *seat.Answer) float64 { return a.Stress.Housing.E }),
		"bush_e_high":              of(func(a *seat.Answer) float64 { return a.Stress.Bush.E }),
		"bush_flow_high":           of(func(a *seat.Answer) float64 { return a.Stress.Bush.Yield }),
		"plate_e_low":              of(func(a *seat.Answer) float64 { return a.Hold.Housing.E }),
		"bush_e_low":               of(func(a *seat.Answer) float64 { return a.Hold.Bush.E }),
		"bush_flow_low":            of(func(a *seat.Answer) float64 { return a.Hold.Bush.Yield }),
		"pressure_fresh_mpa":       nil, // press_in_n tells
		"press_in_n/min":           of(func(a *seat.Answer) float64 { return a.PressIn }),
		"pressure_mpa/min":         of(func(a *seat.Answer) float64 { return a.PLow }),
		"pressure_mpa/max":         of(func(a *seat.Answer) float64 { return a.PHigh }),
		"hoop_mpa":                 of(func(a *seat.Answer) float64 { return a.Peak }),
		"hoop_limit_mpa":           of(func(a *seat.Answer) float64 { return a.PeakLimit }),
		"contact_mm":               of(func(a *seat.Answer) float64 { return a.Contact }),
		"loose_at_c":               of(func(a *seat.Answer) float64 { return a.LooseAt }),
		"pv":                       of(func(a *seat.Answer) float64 { return a.PV }),
		"length_mm":                of(func(a *seat.Answer) float64 { return a.Bearing }),
		"closure_plate_e_min":      of(func(a *seat.Answer) float64 { return a.ClosureAt[0].Housing.E }),
		"closure_plate_e_max":      of(func(a *seat.Answer) float64 { return a.ClosureAt[1].Housing.E }),
		"closure_bush_e_min":       of(func(a *seat.Answer) float64 { return a.ClosureAt[0].Bush.E }),
		"closure_bush_e_max":       of(func(a *seat.Answer) float64 { return a.ClosureAt[1].Bush.E }),
		"flow_min":                 of(func(a *seat.Answer) float64 { return a.ClosureAt[0].Bush.Yield }),
		"flow_max":                 of(func(a *seat.Answer) float64 { return a.ClosureAt[1].Bush.Yield }),
		"journal_mm":               func(b bored) float64 { return b.Wanted.Journal },
		"must_pass_mm":             func(b bored) float64 { return b.Wanted.MustPass },
		"part/hole_mm/min":         of(func(a *seat.Answer) float64 { return a.Part.SeatLow }),
		"part/hole_mm/max":         of(func(a *seat.Answer) float64 { return a.Part.SeatHigh }),
		"part/outside_mm/min":      of(func(a *seat.Answer) float64 { return a.Part.ODLow }),
		"part/outside_mm/max":      of(func(a *seat.Answer) float64 { return a.Part.ODHigh }),
		"part/off_mm":              nil, // the web tells
		"part/web_mm":              of(func(a *seat.Answer) float64 { return a.Part.Web }),
		"part/edge_mm":             nil, // the metal left tells
		"part/metal_left_mm":       of(func(a *seat.Answer) float64 { return a.Part.Left }),
		"part/factor":              of(func(a *seat.Answer) float64 { return a.Part.Factor() }),
		"part/pressure_mpa":        of(func(a *seat.Answer) float64 { return a.Part.PressMPa }),
		"there_mm":                 func(b bored) float64 { return b.Wanted.There },
		"plate_mm":                 func(b bored) float64 { return b.Wanted.Plate },
		"load_n":                   func(b bored) float64 { return b.Wanted.Load },
		"rpm":                      func(b bored) float64 { return b.Wanted.RPM },
		"expansion_plate":          func(b bored) float64 { return b.Wanted.Plate2.Alpha },
		"expansion_shaft":          func(b bored) float64 { return b.Wanted.JournalA },
		"expansion_bush":           of(func(a *seat.Answer) float64 { return a.Bush.Metal.Alpha }),
		"mandrel_mm":               of(func(a *seat.Answer) float64 { return a.FinishSizes[0] }),
		"bore_warm_mm":             of(func(a *seat.Answer) float64 { return a.Bore[0] }),
		"interference_left_um":     of(func(a *seat.Answer) float64 { return a.Left * 1000 }),
		// What the lead, the friction and the spring are, contact_mm, force_n and closure_um tell.
		"body_mm": nil, "lead_mm": nil, "use_c": nil, "friction_low": nil, "friction_high": nil,
		"spring_um/min": nil, "spring_um/max": nil,
	}
	both := func(key string, by float64, of func(*seat.Answer) [2]float64) {
		out[key+"/min"], out[key+"/max"] = pair(of, by)
	}
	both("force_n", 1, func(a *seat.Answer) [2]float64 { return a.Force })
	both("torque_nmm", 1, func(a *seat.Answer) [2]float64 { return a.Torque })
	both("closed_mm", 1, func(a *seat.Answer) [2]float64 { return a.Closed })
	both("bore_mm", 1, func(a *seat.Answer) [2]float64 { return a.Bore })
	both("expected_mm", 1, func(a *seat.Answer) [2]float64 { return a.Expected })
	both("closure_um", 1000, func(a *seat.Answer) [2]float64 {
		if a.MandrelIn {
			return [2]float64{a.Bush.BLow - a.Expected[1], a.Bush.BHigh - a.Expected[0]}
		}
		return a.Closure
	})
	for i, k := range []string{"min", "max"} {
		out["running_um/"+k] = func(b bored) float64 { return (b.Chosen.Bore[i] - b.Wanted.Journal) * 1000 }
	}
	return out
}

func bossEdge(h *seat.Hole) float64 {
	if h.BossR == 0 {
		return math.Inf(1)
	}
	return h.BossR - h.BossE
}

// figure is one printed figure, and what its rounding may make of it.
type figure struct{ v, by float64 }

// figures are those of a seat as JSON has them.
func figures(s *Seat) map[string]figure {
	out := map[string]figure{}
	number := func(k string, v *float64) {
		if v != nil {
			out[k] = figure{*v, 1e-6}
		}
	}
	ends := func(k string, v *MinMax) {
		if v != nil {
			number(k+"/min", v.Min)
			number(k+"/max", v.Max)
		}
	}
	size := func(k string, v MM) {
		if v.Given() {
			out[k] = figure{v.Float(), 0.0005 + near}
		}
	}
	// Limits are rounded into each other.
	limits := func(k string, v *MMRange) {
		if v != nil {
			out[k+"/min"], out[k+"/max"] = figure{v.Min.Float(), 0.001}, figure{v.Max.Float(), 0.001}
		}
	}
	ends("interference_um", s.InterferenceUM)
	ends("running_um", s.RunningUM)
	limits("seat_mm", s.SeatMM)
	limits("bore_mm", s.BoreMM)
	limits("closed_mm", s.ClosedMM)
	limits("expected_mm", s.ExpectedMM)
	size("cleanup_mm", s.CleanupMM)
	size("metal_left_mm", s.MetalLeftMM)
	number("hoop_mpa", s.HoopMPa)
	number("hoop_limit_mpa", s.HoopLimitMPa)
	number("loose_at_c", s.LooseAtC)
	number("pv", s.PV)
	ends("pressure_mpa", s.PressureMPa)
	ends("force_n", s.ForceN)
	ends("torque_nmm", s.TorqueNmm)
	ends("closure_um", s.ClosureUM)
	return out
}

// drift holds every figure of every chosen seat of a job against the value that
// the search decided by, and counts those that differ.
func drift(t *testing.T, name string, j *job.Job, count map[string]int) (seats int) {
	w, c, err := ready(j, nil)
	if err != nil {
		t.Fatal(err)
	}
	g := surveyedGround(w, c, j)
	of := tour(g, chance.Settings{})
	for i := range of.Ways {
		if of.Ways[i].placing != nil {
			seats += driftOf(t, name, w, of.Ways[i].steps, count)
		}
	}
	return seats
}

// driftOf holds the figures of one way.
func driftOf(t *testing.T, name string, w *books, got steps, count map[string]int) (seats int) {
	book, table := got.Book, decided()
	differ := func(b bored, what string, printed, want, by float64) {
		if !(math.Abs(printed-want) <= by) {
			if count[what]++; count[what] < 4 {
				t.Errorf("%s %s %s: printed %v, decided by %v", name, b.Name(), what, printed, want)
			}
		}
	}
	routeDrift(t, name, w, got, count)
	targetDrift(t, name, got, count)
	rows := map[string]*Seat{}
	for i := range got.Seats.Rows {
		rows[got.Seats.Rows[i].Bore] = &got.Seats.Rows[i]
	}
	for _, b := range boredOf(got.Survey.Holes, got.Target, got.Seats) {
		if b.Chosen == nil {
			continue
		}
		seats++
		row := rows[b.Name()]
		for k, p := range figures(row) {
			if want := table[k](b); !math.IsInf(want, 0) && !math.IsNaN(want) {
				differ(b, "printed "+k, p.v, want, math.Max(p.by, near*math.Abs(want)))
			}
		}
		page := "seats/" + b.Name() + "/"
		for _, k := range book.Keys() {
			k, ok := strings.CutPrefix(k, page)
			if !ok || strings.HasPrefix(k, "edges/") {
				continue
			}
			of, known := table[k]
			if !known {
				t.Errorf("%s %s: nothing says what decided %s", name, b.Name(), k)
			}
			if of == nil {
				continue
			}
			e, _ := book.Get(page + k)
			want := of(b)
			differ(b, k, e.Value, want, near*math.Max(1, math.Abs(want)))
		}
	}
	return seats
}

// oneMillimetre is a job with a bush whose thinnest wall is 1 mm but for the last
// bit, where the lead chamfer changes.
func oneMillimetre(t *testing.T) *job.Job {
	dir := t.TempDir()
	for name, edits := range map[string][]string{
		"plain.yaml": {"bore: 3.5, bore_class: F7, od: 6.0, od_class: s7", "bore: [3.500, 3.522], od: [5.522, 5.526]",
			"sintered bronze", "bearing bronze C93200"},
		"shop.yaml": {"{size: 6, class: H7}", "{size: 5.5, class: H7}, {size: 6, class: H7}"},
	} {
		text, err := os.ReadFile("../testdata/situations/" + name)
		if err != nil {
			t.Fatal(err)
		}
		text = []byte(strings.NewReplacer(edits...).Replace(string(text)))
		if err := os.WriteFile(filepath.Join(dir, name), text, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	j, err := job.Read(filepath.Join(dir, "plain.yaml"), job.Options{})
	if err != nil {
		t.Fatal(err)
	}
	b := &j.Bushes[0]
	if wall := (b.OD.Low.Float() - b.Bore.High.Float()) / 2; wall <= 1 || wall > 1+1e-12 {
		t.Fatalf("its wall is not just over 1 mm: %v", wall)
	}
	return j
}

// seeds are the trucks of the world that are looked at: as many as TRUCKS says.
func seeds(t *testing.T) []uint64 {
	n := 60
	if s := os.Getenv("TRUCKS"); s != "" {
		var err error
		if n, err = strconv.Atoi(s); err != nil {
			t.Fatal(err)
		}
	}
	out := make([]uint64, n)
	for i := range out {
		out[i] = uint64(i)
	}
	return out
}

// shipped hands on every job at hand, by the name of its file.
func shipped(t *testing.T, each func(name string, j *job.Job)) {
	t.Helper()
	for _, dir := range []string{"../testdata/jobs", "../testdata/situations"} {
		files, err := filepath.Glob(dir + "/*.yaml")
		if err != nil || len(files) == 0 {
			t.Fatal(dir, err)
		}
		for _, f := range files {
			if strings.HasPrefix(filepath.Base(f), "shop") {
				continue
			}
			j, err := job.Read(f, job.Options{})
			if err != nil {
				t.Fatal(err)
			}
			each(filepath.Base(f), j)
		}
	}
}

// drawn hands on trucks of the world.
func drawn(t *testing.T, seeds []uint64, each func(name string, j *job.Job)) {
	t.Helper()
	for _, seed := range seeds {
		j, err := world.Truck(seed, world.Options{}).Read(t.TempDir())
		if err != nil {
			t.Fatal(err)
		}
		each(fmt.Sprintf("truck %d", seed), j)
	}
}

// TestTrucksPrintWhatDecided: what is printed of a seat is what the search
// decided by, over every job at hand and many trucks.
func TestTrucksPrintWhatDecided(t *testing.T) {
	count, seats := map[string]int{}, 0
	shipped(t, func(name string, j *job.Job) { seats += drift(t, name, j, count) })
	seats += drift(t, "a wall of one millimetre", oneMillimetre(t), count)
	// In two of these trucks one load has worn a hole less far than another.
	drawn(t, append(seeds(t), 122, 345), func(name string, j *job.Job) { seats += drift(t, name, j, count) })
	if seats < 80 {
		t.Errorf("only %d seats were looked at", seats)
	}
	if len(count) > 0 {
		t.Errorf("of %d seats differ: %v", seats, count)
	}
}
