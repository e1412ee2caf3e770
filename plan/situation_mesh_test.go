package plan_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/plan"
)

func meshOf(t testing.TB, p *plan.Plan) plan.Mesh {
	t.Helper()
	if len(p.Mesh) != 1 {
		t.Fatalf("%d meshes\n%s", len(p.Mesh), everything(p))
	}
	return p.Mesh[0]
}

// wormGear is a throated wheel of 20 teeth, axial module 0.5, under a worm of
// 6 mm: tight at (6 + 10)/2 = 8.000.
func wormGear(height float64, more string) string {
	return fmt.Sprintf("  - {name: d, kind: worm, wheel_form: throated, module: 0.5, wheel: {on: drive, teeth: 20, tip: 11.0, runout: 0.02}, worm: {starts: 1, pitch_diameter: 6, height: %.4f%s}, backlash: [0.05, 0.12]}\n", height, more)
}

// perMM is the circumferential backlash per millimetre of that drive:
// 2 tan(alpha_x), tan(alpha_x) = tan 20/cos(lead), tan(lead) = 0.5/6.
func perMM() float64 {
	return 2 * math.Tan(20*math.Pi/180) / math.Cos(math.Atan(0.5/6))
}

// aimed is the centre distance of bare centres at which a mesh is likeliest to come
// right that has room from lo to hi, known to u, with nothing beside it: the middle.
// What the way from the old centre weighs takes a micron off.
func aimed(lo, hi, _, _ float64) float64 { return (lo + hi) / 2 }

// asks is the shortest way of such a mesh that stood at found: to a doubt inside,
// or to the middle.
func asks(lo, hi, u, found float64) float64 {
	if lo+u > hi-u {
		return (lo + hi) / 2
	}
	return math.Max(lo+u, math.Min(hi-u, found))
}

// doubtWorm is u_a of plan/target/METHODS.md 3 for these jobs: set-up 0.010, two holes of
// 0.010, geometry 0.02, mate 0.010 (worst instrument for a middle) and the usual play
// of its bearings, 0.05/sqrt 12: sqrt(0.0001 + 0.00005 + 0.0004 + 0.0001 +
// 0.000208) = 0.02929.
var doubtWorm = math.Sqrt(0.010*0.010 + 0.010*0.010/2 + 0.02*0.02 + 0.010*0.010 + 0.05*0.05/12)

// TestWormAboveAndBelow: old centre (10, 8), clearance 0.02, wear 0.10; the
// shaft lies 0.12 from the old centre as found, 0.02 when new.
func TestWormAboveAndBelow(t *testing.T) {
	down := plain(t).with("rails: below", "rails: above").drive("centre: [10.00, 7.95], widest: 3.30, narrowest: 3.20, worn_to: 270", "centre: [10.00, 7.95], widest: 3.30, narrowest: 3.20, worn_to: 270")
	high := func() situation {
		return plain(t).with("8.05", "12.05")
	}
	for _, c := range []struct {
		name           string
		s              situation
		found, was     float64 // centre distances
		bare           float64 // of the old centre
		sign           float64 // +1: the load closes the mesh
		words          string
		loadDeg, wearY float64
	}{
		{"worm above, rails below", plain(t).gear(wormGear(16.14, "")), 8.02, 8.12, 8.14, 1, "closer to the worm by 0.10 mm", 90, 8},
		{"worm above, rails above", down.gear(wormGear(16.14, "")), 8.26, 8.16, 8.14, -1, "away from the worm by 0.10 mm", 270, 8},
		{"worm below, rails below", high().gear(wormGear(3.86, "")), 8.26, 8.16, 8.14, -1, "away from the worm by 0.10 mm", 90, 12},
		{"load named", plain(t).with("    rpm: 400\n", "    rpm: 400\n    load_towards: 270\n").drive("centre: [10.00, 7.95], widest: 3.30, narrowest: 3.20, worn_to: 270", "centre: [10.00, 7.95], widest: 3.30, narrowest: 3.20, worn_to: 270").gear(wormGear(16.14, "")), 8.26, 8.16, 8.14, -1, "away from the worm by 0.10 mm", 270, 8},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.s.t = t
			p := c.s.plan()
			m := meshOf(t, p)
			k := perMM()
			nearMM(t, "centre distance found", m.FoundCentreMM, c.found, 1e-4)
			nearMM(t, "backlash found", m.FoundBacklashMM, (c.found-8)*k, 1e-4)
			nearMM(t, "backlash when new", m.OriginalBacklashMM, (c.was-8)*k, 1e-4)
			if !strings.HasPrefix(m.Words.String(), c.words) {
				t.Errorf("%q", m.Words)
			}
			if !m.Trusted {
				t.Error("wheel tip and form are given: trusted")
			}
			nearMM(t, "window", m.BacklashWindowMM[0], 0.05, 1e-9)
			nearMM(t, "window", m.BacklashWindowMM[1], 0.12, 1e-9)
			// The window for the bare centres: clearance 0.015 to 0.060 on
			// diameter, so a shift of 0.0075 to 0.030 with the load.
			lo, hi := 8+0.05/k, 8+0.12/k
			if c.sign > 0 {
				lo, hi = lo+0.030, hi+0.0075
			} else {
				lo, hi = lo-0.0075, hi-0.030
			}
			want := aimed(lo, hi, doubtWorm, c.bare)
			const by = 1.5e-3
			// The worm lies above: a shorter distance is a move up, and the other
			// way round below.
			up := c.bare - want
			if strings.HasPrefix(c.name, "worm below") {
				up = -up
			}
			for _, b := range []string{"drive.left", "drive.right"} {
				tg := targetOf(t, p, b)
				nearXY(t, "target", tg.TargetMM, 10, c.wearY+up, by)
				nearXY(t, "from the old centre", tg.FromOriginalMM, 0, up, by)
				near(t, "load", *tg.LoadTowardsDeg, c.loadDeg, 0)
				nearMM(t, "u of the place", tg.UMM, math.Hypot(0.010, 0.010), 1e-4)
			}
			own := c.bare - asks(lo, hi, doubtWorm, c.bare)
			if strings.HasPrefix(c.name, "worm below") {
				own = -own
			}
			nearXY(t, "correction", m.CorrectionMM, 0, own, 2e-4)
			// Middle clearance 0.0375 on diameter: 0.01875 with the load.
			nearMM(t, "centre distance at the target", m.TargetCentreMM, want-c.sign*0.01875, by)
			nearMM(t, "backlash at the target", m.TargetBacklashMM, (want-c.sign*0.01875-8)*k, by)
			nearMM(t, "backlash lifted", m.LiftedBacklashMM, (want+c.sign*0.01875-8)*k, by)
		})
	}
}

// involute is one spur pair for working windows out by bisection, independent
// of the room for meshes: the formulas of plan/mesh/METHODS.md 1.
type involute struct{ m, z1, z2 float64 }

func (g involute) backlash(a float64) float64 {
	al := 20 * math.Pi / 180
	inv := func(x float64) float64 { return math.Tan(x) - x }
	aw := math.Acos(g.m * (g.z1 + g.z2) / 2 * math.Cos(al) / a)
	jn := g.m * math.Cos(al) * (g.z1 + g.z2) * (inv(aw) - inv(al))
	return jn / math.Cos(aw)
}

func (g involute) at(j float64) float64 {
	lo, hi := g.m*(g.z1+g.z2)/2, g.m*(g.z1+g.z2)/2*1.05
	for range 80 {
		if mid := (lo + hi) / 2; g.backlash(mid) < j {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

func spurGear(pinion string) string {
	return "  - {name: d, kind: spur, module: 0.5, wheel: {on: drive, teeth: 36, tip: 19.0}, pinion: {teeth: 12, tip: 7.0, " + pinion + "}, backlash: [0.03, 0.09]}\n"
}

// TestSpurPairs: module 0.5, 36 and 12 teeth, standard and tight at 12.000.
func TestSpurPairs(t *testing.T) {
	g := involute{0.5, 36, 12}
	near(t, "backlash at 12.100, own evaluation", g.backlash(12.1), 0.07564, 1e-5)
	// Pressed and worn to 180 degrees, away from a pinion in front: found at
	// x = 9.88, new at 9.98.
	back := plain(t).with("    rpm: 400\n", "    rpm: 400\n    load_towards: 180\n").
		drive("centre: [9.95, 8.00], widest: 3.30, narrowest: 3.20, worn_to: 180", "centre: [9.95, 8.00], widest: 3.30, narrowest: 3.20, worn_to: 180")
	p := back.gear(spurGear("at: [21.98, 8.00], u: 0.005")).plan()
	m := meshOf(t, p)
	nearMM(t, "found", m.FoundCentreMM, 12.10, 1e-4)
	nearMM(t, "backlash found", m.FoundBacklashMM, 0.07564, 1e-4)
	nearMM(t, "backlash when new", m.OriginalBacklashMM, 0, 1e-4)
	// Bare centres 11.98 apart. Window, shifted: the load opens the mesh, so
	// lo - 0.0075, hi - 0.030; u_a with u of the mate 0.005.
	u := math.Sqrt(0.0001 + 0.00005 + 0.0004 + 0.000025)
	// Nobody measured the run-outs: 0.04 and 0.025, half of which the tightest tooth
	// comes nearer; 0.01 square to the flank is 0.0107 round the circle.
	tooth := math.Max(g.at(0.03), g.at(0.0107)+0.0325)
	want := aimed(tooth-0.0075, g.at(0.09)-0.030, u, 11.98)
	tg := targetOf(t, p, "drive.left")
	nearXY(t, "target", tg.TargetMM, 21.98-want, 8, 1.5e-3)
	nearXY(t, "correction", m.CorrectionMM, 11.98-asks(g.at(0.03)-0.0075, g.at(0.09)-0.030, u, 11.98), 0, 2e-4)
	nearMM(t, "backlash at the target", m.TargetBacklashMM, g.backlash(want+0.01875), 1.5e-3)
	if m.ContactRatio == nil || *m.ContactRatio < 1.2 || *m.ContactRatio > 1.41 {
		t.Errorf("contact ratio %v", m.ContactRatio)
	}

	// The pinion on the other shaft, which is left alone: both pressed up, the
	// wheel 0.12 and the pinion 0.02 above their old centres.
	near22 := plain(t).with("[48.00, 8.00]", "[22.10, 8.00]")
	p = near22.gear(spurGear("on: other")).plan()
	m = meshOf(t, p)
	nearMM(t, "found, pinion on a shaft", m.FoundCentreMM, math.Hypot(12.1, 0.10), 1e-4)
	nearMM(t, "backlash found", m.FoundBacklashMM, g.backlash(math.Hypot(12.1, 0.10)), 1e-4)
	nearXY(t, "the shaft left alone stays", targetOf(t, p, "other.left").TargetMM, 22.10, 8, 1e-9)
	nearXY(t, "and does not move", targetOf(t, p, "other.left").FromOriginalMM, 0, 0, 1e-9)

	// Without a tip the pair reports and moves nothing.
	s := back.gear(strings.Replace(spurGear("at: [21.98, 8.00]"), ", tip: 7.0", "", 1))
	p = s.plan()
	m = meshOf(t, p)
	if m.Trusted {
		t.Error("trusted without the pinion's tip")
	}
	nearXY(t, "correction of an untrusted pair", m.CorrectionMM, 0, 0, 0)
	nearXY(t, "target", targetOf(t, p, "drive.left").TargetMM, 10, 8, 1e-4)
	if f := saidOf(t, p, "mesh not trusted", "d"); f.Level != finding.Note || !strings.Contains(f.Text.String(), "tip") {
		t.Errorf("%+v", f)
	}
	nearMM(t, "it still reports", m.FoundBacklashMM, 0.07564, 1e-4)
}

// TestMeshContradicts: worm at 16.05, found under load at 7.93, tight 8.00:
// short by 0.07, more than 2 hypot(0.0133, 0.02) = 0.048.
func TestMeshContradicts(t *testing.T) {
	p := plain(t).gear(wormGear(16.05, "")).add("complaint: {binds: no, noisy: yes, rubs: no}\n").plan()
	f := saidOf(t, p, "mesh contradicts", "d")
	if f.Level != finding.Caution || meshOf(t, p).Trusted {
		t.Errorf("%+v", f)
	}
	nearXY(t, "moves nothing", targetOf(t, p, "drive.left").TargetMM, 10, 8, 1e-4)
	nearMM(t, "never below nothing", meshOf(t, p).FoundBacklashMM, 0, 0)
	// It binds, or the worm was moved: the shaft cannot go so far, short by 0.07.
	for _, s := range []situation{
		plain(t).gear(wormGear(16.05, "")).add("complaint: {binds: yes}\n"),
		plain(t).gear(wormGear(16.05, ", moved: yes")).add("complaint: {binds: no}\n"),
	} {
		p := s.plan()
		unsaid(t, p, "mesh contradicts")
		f := saidOf(t, p, "mesh tight as found", "d")
		if !strings.Contains(f.Text.String(), "0.070") {
			t.Error(f.Text)
		}
		if !meshOf(t, p).Trusted {
			t.Error("trust lost")
		}
	}
	// Short by 0.04 only: inside the doubt, nothing is said.
	unsaid(t, plain(t).gear(wormGear(16.08, "")).add("complaint: {binds: no}\n").plan(), "mesh contradicts")
}

// TestMeshWindows: an empty one aims at its middle; without one the handbook's
// rows: class B least 0.002 in, class A most 0.007 in at 50.8 to the inch,
// square to the flanks.
func TestMeshWindows(t *testing.T) {
	// 0.30 of backlash asks for a = 8.411; contact ratio 1.2 ends near 8.3.
	p := plain(t).gear(strings.Replace(wormGear(16.14, ""), "[0.05, 0.12]", "[0.30, 0.34]", 1)).plan()
	f := saidOf(t, p, "window empty", "d")
	if f.Level != finding.Caution {
		t.Errorf("%+v", f)
	}
	m := meshOf(t, p)
	if w := m.BacklashWindowMM; w == nil || w[0] != w[1] {
		t.Errorf("window %v", w)
	}
	p = plain(t).gear(strings.Replace(wormGear(16.14, ""), ", backlash: [0.05, 0.12]", "", 1)).plan()
	f = saidOf(t, p, "backlash by handbook", "d")
	if f.Level != finding.Note || !strings.Contains(f.Text.String(), "0.051 to 0.178") {
		t.Errorf("%+v", f)
	}
	m = meshOf(t, p)
	sin := 2 * math.Sin(20*math.Pi/180)
	nearMM(t, "least", m.BacklashWindowMM[0], 0.0508/sin*perMM(), 2e-4)
	nearMM(t, "most", m.BacklashWindowMM[1], 0.1778/sin*perMM(), 2e-4)
	// A straight wheel runs tight farther out: plan/mesh/METHODS.md 2.4, normal module 0.5,
	// 24 teeth: 9.075. At 9.075 under load nothing is left.
	straight := strings.NewReplacer("throated", "straight", "teeth: 20", "teeth: 24", "tip: 11.0", "tip: 13.0").Replace(wormGear(8.12+9.075, ", moved: yes"))
	m = meshOf(t, plain(t).gear(straight).plan())
	nearMM(t, "straight wheel, found", m.FoundCentreMM, 9.075, 1e-4)
	nearMM(t, "straight wheel, backlash found", m.FoundBacklashMM, 0, 1e-3)
	m = meshOf(t, plain(t).gear(strings.Replace(straight, "straight", "helical", 1)).plan())
	if m.FoundBacklashMM.Float() < 0.04 {
		t.Errorf("a helical wheel at the same place has %s", m.FoundBacklashMM)
	}
	// Form unknown: not trusted, and the words name the form.
	p = plain(t).gear(strings.Replace(wormGear(16.14, ""), "wheel_form: throated, ", "", 1)).plan()
	if f := saidOf(t, p, "mesh not trusted", "d"); !strings.Contains((f.Text + f.Fix).String(), "form") {
		t.Errorf("%+v", f)
	}
}

// TestGoodBoresUnderAMovedWorm: nothing is worn, yet the new worm stands 0.10
// too near: the shaft has to move, so its bores are bushed.
func TestGoodBoresUnderAMovedWorm(t *testing.T) {
	const round = "centre: [10.00, 8.00], widest: 3.20, narrowest: 3.20"
	p := plain(t).drive(round, round).gear(wormGear(16.02, ", moved: yes")).plan()
	// Bare 8.02; wanted from 8 + 0.05/0.7305 + 0.030 to 8 + 0.12/0.7305 + 0.0075,
	// whose middle is 8.1351: the old centres of good bores are known so well that
	// the way to it weighs three microns.
	nearXY(t, "target", targetOf(t, p, "drive.left").TargetMM, 10,
		8.02+8-aimed(8+0.05/perMM()+0.030, 8+0.12/perMM()+0.0075, doubtWorm, 8.02), 3e-3)
	if len(p.Seats) != 2 {
		t.Errorf("%d seats\n%s", len(p.Seats), everything(p))
	}
	// With the worm where it belongs nothing is cut.
	p = plain(t).drive(round, round).gear(wormGear(16.14, "")).plan()
	if len(p.Seats) != 0 || !p.OK {
		t.Errorf("%d seats, ok %v\n%s", len(p.Seats), p.OK, everything(p))
	}
	if p.Verdict.Choice != "leave" {
		t.Errorf("%+v", p.Verdict)
	}
}

// TestCoarseInstruments: callipers of 0.046 cannot tell 3.20 by 3.30 from round
// (2 hypot(0.046, 0.046) = 0.13), but 0.14 of play is not well as it is.
func TestCoarseInstruments(t *testing.T) {
	p := plain(t).inShop("{name: bore gauge, u: 0.004}", "{name: calliper inside, u: 0.046}").plan()
	if len(p.Seats) != 2 {
		t.Errorf("%d seats\n%s", len(p.Seats), everything(p))
	}
}

// TestRepairedHoleAsFound: an earlier repair stands at (10.1, 8.2), 3.5 at the
// widest; the old centre comes from the other plate, (10, 8). With both plates
// so, left at 8.2 + (3.5 - 3.16)/2 = 8.37 under load and right at 8.12: at the
// middle 8.245, so 16.40 - 8.245 = 8.155 to the worm.
func TestRepairedHoleAsFound(t *testing.T) {
	p := plain(t).drive("repaired: yes, centre: [10.1, 8.2], widest: 3.5, narrowest: 3.3, worn_to: 90", "centre: [10.00, 8.05], widest: 3.30, narrowest: 3.20, worn_to: 90").gear(wormGear(16.40, "")).plan()
	nearMM(t, "found", meshOf(t, p).FoundCentreMM, 8.155, 1e-4)
	nearXY(t, "target", targetOf(t, p, "drive.left").TargetMM, 10, targetOf(t, p, "drive.right").TargetMM[1].Float(), 2e-3)
	if err := wholesome(p, true); err != nil {
		t.Error(err)
	}
}
