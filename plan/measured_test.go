package plan

import (
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/plan/chance"
	"rebush/plan/job"
	"rebush/plan/world"
)

// reading is one thing that was measured, and how to leave it out or to know it
// worse; less answers false where the job does not have it. moves says that the
// reading decides where something is, and not only how well that is known.
type reading struct {
	name  string
	less  func(j *job.Job) bool
	moves bool
}

// forget leaves a length out.
func forget(l *dim.Length) bool {
	had := l.Given()
	*l = dim.Length{}
	return had
}

// readingsOf are all that was measured of gears, holes and tools, one by one.
func readingsOf(j *job.Job) []reading {
	var out []reading
	for i := range j.Gears {
		out = append(out, gearFigures(j.Gears[i].Name, i)...)
	}
	for i := range j.Shafts {
		for k := range j.Shafts[i].Bores {
			out = append(out, boreReadings(j.Shafts[i].Bores[k].Name, i, k)...)
		}
	}
	for i := range j.Bushes {
		out = append(out, reading{"run-out of bush " + j.Bushes[i].Code, func(j *job.Job) bool {
			l := &j.Bushes[i].Runout
			return !j.Bushes[i].Turned && l.Float() <= 0.03 && forget(l)
		}, false})
	}
	double := func(l *dim.Length) bool {
		had := l.Given() && l.Float() > 0
		*l = dim.OfFloat(2 * l.Float())
		return had
	}
	out = append(out,
		reading{"half the doubt of a clamping", func(j *job.Job) bool { return double(&j.Shop.SetupU) }, true},
		reading{"half the doubt of a hole", func(j *job.Job) bool { return double(&j.Shop.HoleU) }, true})
	for i := range j.Shop.Instruments {
		out = append(out, reading{"half the doubt of the " + j.Shop.Instruments[i].Name,
			func(j *job.Job) bool { return double(&j.Shop.Instruments[i].U) }, true})
	}
	return out
}

// gearFigures are those of one mesh. A run-out larger than is usual, and a tip
// that belongs to other teeth, are bad news, which is not asked for here.
func gearFigures(name string, i int) (out []reading) {
	of := func(what string, moves bool, at func(g *job.Gear) *dim.Length) {
		out = append(out, reading{name + " " + what, func(j *job.Job) bool {
			l := at(&j.Gears[i])
			return l != nil && forget(l)
		}, moves})
	}
	usual := func(l *dim.Length, most float64) *dim.Length {
		if l.Float() > most {
			return nil
		}
		return l
	}
	fits := func(l *dim.Length, m float64, teeth int, shift float64) *dim.Length {
		if math.Abs(l.Float()-m*(float64(teeth)+2+2*shift)) > 0.1*m {
			return nil
		}
		return l
	}
	of("tip of the wheel", false, func(g *job.Gear) *dim.Length {
		return fits(&g.Wheel.Tip, g.Module, g.Wheel.Teeth, g.Wheel.Shift)
	})
	of("tip of the pinion", false, func(g *job.Gear) *dim.Length {
		if g.Pinion == nil {
			return nil
		}
		return fits(&g.Pinion.Tip, g.Module, g.Pinion.Teeth, g.Pinion.Shift)
	})
	of("run-out of the wheel", false, func(g *job.Gear) *dim.Length { return usual(&g.Wheel.Runout, 0.04) })
	of("thinning", false, func(g *job.Gear) *dim.Length { return &g.Thinned })
	of("face of the wheel", false, func(g *job.Gear) *dim.Length { return &g.Wheel.Face })
	of("place of the wheel", true, func(g *job.Gear) *dim.Length { return &g.Wheel.FromLeft })
	pinion := func(what string, at func(p *job.Pinion) *dim.Length) {
		of(what, false, func(g *job.Gear) *dim.Length {
			if g.Pinion == nil {
				return nil
			}
			return at(g.Pinion)
		})
	}
	worm := func(what string, at func(w *job.Worm) *dim.Length) {
		of(what, false, func(g *job.Gear) *dim.Length {
			if g.Worm == nil {
				return nil
			}
			return at(g.Worm)
		})
	}
	worm("tip of the worm", func(w *job.Worm) *dim.Length { return &w.Tip })
	pinion("run-out of the pinion", func(p *job.Pinion) *dim.Length { return usual(&p.Runout, 0.025) })
	pinion("doubt of the pinion", func(p *job.Pinion) *dim.Length { return &p.U })
	worm("doubt of the worm", func(w *job.Worm) *dim.Length { return &w.U })
	worm("play of the worm", func(w *job.Worm) *dim.Length { return usual(&w.BearingPlay, 0.05) })
	return append(out, reading{name + " form of the wheel", func(j *job.Job) bool {
		had := j.Gears[i].WheelForm != "" && j.Gears[i].WheelForm != "unknown"
		j.Gears[i].WheelForm = ""
		return had
	}, true})
}

// boreReadings are those of one hole.
func boreReadings(name string, i, k int) []reading {
	of := func(j *job.Job) *job.Bore { return &j.Shafts[i].Bores[k] }
	return []reading{
		{name + " widest", func(j *job.Job) bool { return forget(&of(j).Widest) }, true},
		{name + " narrowest", func(j *job.Job) bool { return forget(&of(j).Narrowest) }, true},
		{name + " side of the wear", func(j *job.Job) bool {
			had := of(j).WornTo != nil
			of(j).WornTo = nil
			return had
		}, true},
	}
}

// outside are the meshes of a trial that as entered would stand outside their
// limits: of those a reading is bad news, and not knowing it is the better news.
func outside(m chance.Model) []string {
	var out []string
	for _, g := range m.Gears {
		if g.CentreMM < g.WindowMM[0] || g.CentreMM > g.WindowMM[1] {
			out = append(out, g.Name)
		}
	}
	return out
}

// rightOf is the chance of a job, its model, and whether its plan may be carried out.
func rightOf(t *testing.T, j *job.Job) (r chance.Result, m chance.Model, ok bool) {
	t.Helper()
	w, c, err := ready(j, nil)
	if err != nil {
		t.Fatal(err)
	}
	of := tour(surveyedGround(w, c, j), chance.Settings{})
	s := of.nearest()
	m = s.Model
	if !s.OK || !s.Cuts {
		return r, m, false
	}
	if r, err = chance.Run(m, chance.Settings{Trials: 4 * chance.Block, Seed: 1}); err != nil {
		t.Fatal(err)
	}
	return r, m, true
}

// trucksHere is how many trucks are tried: as many as TRUCKS says (.ci/world).
func trucksHere() uint64 {
	n, _ := strconv.ParseUint(os.Getenv("TRUCKS"), 10, 32)
	return max(40, n)
}

// TestMeasuringLessNeverHelps: what is known less well than it was makes no job
// more likely to come right, on the same random numbers. It is asked of plans at
// more than even odds, and of the place of a mate where its mesh stands within its
// limits: of one that a reading says is wrong, not knowing it is the better news. A
// figure that moves where the old centre is thought to be moves the chance either way, and is asked of all of them together.
func TestMeasuringLessNeverHelps(t *testing.T) {
	dir := t.TempDir()
	tried, moved, fell, sum := 0, 0, 0, 0.0
	for seed := range trucksHere() {
		truck := world.Truck(seed, world.Options{Complete: true, Shop: "read-out"})
		read := func() *job.Job {
			j, err := truck.Read(dir)
			if err != nil {
				t.Fatal(err)
			}
			return j
		}
		j := read()
		was, m, ok := rightOf(t, j)
		if !ok || was.FirstTimeRight < 0.5 {
			continue
		}
		off := outside(m)
		for _, f := range readingsOf(j) {
			less := read()
			if !f.less(less) || slices.Contains(off, f.name[:strings.Index(f.name+" doubt of the ", " doubt of the ")]) {
				continue
			}
			got, _, ok := rightOf(t, less)
			if !ok {
				continue
			}
			gain := got.FirstTimeRight - was.FirstTimeRight
			if f.moves {
				moved++
				sum += gain
				continue
			}
			tried++
			if gain < -0.01 {
				fell++
			}
			if gain > 0.01 {
				t.Errorf("truck %d without %s: %.4f, before %.4f", seed, f.name, got.FirstTimeRight, was.FirstTimeRight)
			}
		}
	}
	t.Logf("%d doubts, %d of which cost more than a point; %d figures that move a centre, %+.4f on the mean", tried,
		fell, moved, sum/float64(moved))
	if tried < 12 || fell < tried/5 || moved < 40 {
		t.Errorf("%d doubts, %d felt, %d that move a centre: too few to show anything", tried, fell, moved)
	}
	if sum/float64(moved) > 0.002 {
		t.Errorf("measuring less of the centres gains %.4f on the mean", sum/float64(moved))
	}
}
