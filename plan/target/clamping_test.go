package target

import (
	"math"
	"testing"
)

// between is the doubt of a pair whose both shafts are cut: holes 0.010 in two
// bores each, geometry 0.02, clamping 0.05.
func between(t *testing.T, oneClamping, mateStays bool) float64 {
	t.Helper()
	in := worm()
	in.OneClamping = oneClamping
	in.Shafts[0].USetup = 0.05
	mate := in.Shafts[0]
	mate.Name = "motor shaft"
	mate.Bores = append([]Bore(nil), mate.Bores...)
	for i := range mate.Bores {
		b := &mate.Bores[i]
		b.Original[1] += 8.12
		b.Fixed, b.Cov = mateStays, Round(0.03)
	}
	in.Shafts = append(in.Shafts, mate)
	in.Gears[0].Mate, in.Gears[0].MateShare, in.Gears[0].UMate = 1, 0.5, 0
	return place(t, in).Gears[0].U
}

// Two shafts that are cut in one clamping share its error, so that it stands
// between them nowhere; in two it counts twice, and once beside a shaft that
// stays: its two bores known to 0.03 each.
func TestClampingCancels(t *testing.T) {
	holes := 0.010*0.010/2 + 0.02*0.02
	near(t, "in one", between(t, true, false), math.Sqrt(holes+0.010*0.010/2), 1e-9)
	near(t, "in two", between(t, false, false), math.Sqrt(holes+0.010*0.010/2+2*0.05*0.05), 1e-9)
	for _, one := range []bool{true, false} {
		near(t, "beside one that stays", between(t, one, true), math.Sqrt(holes+0.03*0.03/2+0.05*0.05), 1e-9)
	}
}

// What is printed as the doubt of a mesh is the doubt that it was aimed with.
func TestDoubtIsPrinted(t *testing.T) {
	b := newBench(t, 7.70, 7.90)
	got := b.settle()
	near(t, "u", got.Meshes[0].UMM.Float(), got.Output.Gears[0].U, 5e-5)
	if e, ok := b.book.Get("mesh/cog/u_mm"); !ok || e.Value < 0.01 {
		t.Errorf("%+v", e)
	}
}
