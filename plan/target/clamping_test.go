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

// A hole that is cut anyway is aimed further inside where a shop asks for that,
// and a move weighs so much that nothing else draws it: with
// u 0.025495 two and a half of them inside 8.098450 to 8.179279 is past its
// middle, 8.138865. A sound shaft that meets its window is not cut for that, and
// one that misses it goes as far in as any other.
func TestAimedFurtherInside(t *testing.T) {
	in := worm()
	in.Inside, in.Move = 2.5, 1
	near(t, "the middle", 14.06-place(t, in).Shafts[0].T[1], 8.138865, 1e-6)
	in.Gears[0].Hi = 8.4
	near(t, "2.5 u inside", 14.06-place(t, in).Shafts[0].T[1], 8.098450+2.5*0.0254951, 1e-6)
	in.Inside = 1.7
	near(t, "1.7 u inside", 14.06-place(t, in).Shafts[0].T[1], 8.098450+1.7*0.0254951, 1e-6)
	in.Inside, in.Shafts[0].Sound = 2.5, true
	near(t, "sound, off its window", 14.06-place(t, in).Shafts[0].T[1], 8.098450+2.5*0.0254951, 1e-6)
	in.Gears[0].MateAt[1] += 0.08
	out := place(t, in)
	near(t, "sound, inside its window", out.Shafts[0].Moved[1], 0, 1e-12)
	if out.Gears[0].Missed != 0 || out.Gears[0].Correction[1] != 0 {
		t.Errorf("%+v", out.Gears[0])
	}
	in.Shafts[0].Sound = false
	near(t, "worn, inside its window", 14.14-place(t, in).Shafts[0].T[1], 8.098450+2.5*0.0254951, 1e-6)
	in.Inside = -1
	if err := in.Validate(); err == nil {
		t.Error("-1 doubts are taken")
	}
}
