package target

import (
	"testing"

	"rebush/plan/chance"
)

// The chance in closed form is that of the trials where the model is straight:
// one and two meshes on a shaft cut in one clamping, a train, a shaft that stays
// beside one that is cut. 200 000 trials know it to 0.001.
func TestChanceAgreesWithTrials(t *testing.T) {
	bore := func(name string, at Point, fixed bool) []Bore {
		var out []Bore
		for _, side := range []string{".left", ".right"} {
			out = append(out, Bore{Name: name + side, Original: at, Found: at, Cov: Round(0.02), Fixed: fixed})
		}
		return out
	}
	two := func(fixed bool) Input {
		return Input{Move: 0.0005, OneClamping: true,
			Shafts: []Shaft{
				{Name: "a", USetup: 0.03, UHole: 0.02, Bores: bore("a", Point{10, 6}, false)},
				{Name: "b", USetup: 0.03, UHole: 0.02, Bores: bore("b", Point{22.05, 6}, fixed)}},
			Gears: []Gear{
				{Name: "worm", Mate: -1, MateAt: Point{10, 14.06}, Geometry: level{}, Lo: 8.06, Hi: 8.16, Trusted: true,
					UGeom: 0.01, UMate: 0.01, Share: 0.5},
				{Name: "pair", Shaft: 0, Mate: 1, Geometry: spur{}, Lo: 12.04, Hi: 12.14, Trusted: true, UGeom: 0.02,
					Share: 0.5, MateShare: 0.5},
				{Name: "above", Mate: -1, MateAt: Point{15.8, 12.8}, Geometry: spur{}, Lo: 8.9, Hi: 9.06, Trusted: true,
					UGeom: 0.02, Share: 0.5, Turn: [2]float64{8.93, 9.05}}}}
	}
	single := two(false)
	single.Gears = single.Gears[:1]
	for what, in := range map[string]Input{"one mesh": single, "a train": two(false), "beside one that stays": two(true)} {
		out := place(t, in)
		at := []Point{}
		for _, s := range out.Shafts {
			at = append(at, s.T)
		}
		got := in.chance(at, func(Gear) bool { return true })
		want := trialsOf(t, in, at)
		if want < 0.3 || want > 0.995 {
			t.Errorf("%s: %v shows little", what, want)
		}
		near(t, what, got, want, 0.003)
	}
}

// trialsOf is the share of trials in which all meshes come right, of bores that
// fail in nothing else.
func trialsOf(t *testing.T, in Input, at []Point) float64 {
	t.Helper()
	m := chance.Model{Setups: []chance.Setup{{Name: "A", UMM: in.Shafts[0].USetup}}}
	for i, s := range in.Shafts {
		m.Shafts = append(m.Shafts, chance.Shaft{Name: s.Name})
		for k, b := range s.Bores {
			x := chance.Bore{Name: b.Name, Shaft: i, Right: k == 1, TargetMM: at[i], UHoleMM: s.UHole,
				Survey: chance.Survey{Centre: at[i], R: 1, JournalR: 1}, Seat: chance.SeatSize{Mid: 8},
				OD: chance.Size{Low: 8.01, High: 8.01}, Hole: chance.Size{Low: 2.04, High: 2.04}, PressUM: [2]float64{0, 30},
				Finish: chance.BoreInPlace, ToolMM: [2]float64{2.04, 2.04}, BoreMM: [2]float64{2.01, 2.1},
				RunningUM: [2]float64{0, 0}, JournalMM: 2.04}
			if b.Fixed {
				x.Kind, x.Survey.Cov = chance.Leave, [3]float64{b.Cov[0][0], 0, b.Cov[1][1]}
			}
			m.Bores = append(m.Bores, x)
		}
	}
	for _, g := range in.Gears {
		l := in.limit(g, at)
		x := chance.Gear{Name: g.Name, On: g.Shaft, Station: g.Share, MateOn: g.Mate, MateStation: g.MateShare,
			Open: [2]float64{-l.n[0], -l.n[1]}, CentreMM: l.a, WindowMM: [2]float64{g.Lo, g.Hi}, UGeomMM: g.UGeom, UMateMM: g.UMate}
		if g.Turn != [2]float64{} {
			x.TightMM, x.LooseMM, x.RunoutMM = g.Turn[0]-0.01, g.Turn[1]+0.01, [2]float64{0.01, 0.01}
		}
		m.Gears = append(m.Gears, x)
	}
	r, err := chance.Run(m, chance.Settings{Trials: 200000, Seed: 3})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range r.Causes {
		t.Logf("%v %.4f", c.Cause, c.Share)
	}
	return r.FirstTimeRight
}
