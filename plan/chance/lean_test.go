package chance

import "testing"

// The right bore stands 0.1 along the line of centres and 0.2 across it off the
// left one: the tightest tooth comes 0.1 x 0.1 + 0.2 x 0.2 = 0.05 nearer. The
// pair runs at its distance and 0.0175 of half the clearance; 8.04 binds.
func TestLeanCostsTheTightestTooth(t *testing.T) {
	for _, row := range []struct {
		centre float64
		lost   int
		cause  string
	}{
		{8.065, 100, "drive: shaft leans in the mesh"}, // 8.0325
		{8.075, 0, ""}, // 8.0425
	} {
		m := plainJob()
		m.Bores = append(m.Bores, m.Bores[0])
		m.Bores[1].Name, m.Bores[1].Right, m.Bores[1].TargetMM = "axle.right", true, [2]float64{0.2, 0.1}
		m.Bores[1].Survey.Centre = m.Bores[1].TargetMM
		g := &m.Gears[0]
		g.CentreMM, g.LeanAlong, g.LeanAcross = row.centre, 0.1, 0.2
		r := run(t, m, 100)
		if r.LostCount != row.lost || r.Right != 100-row.lost {
			t.Errorf("%v: %d right, %d lost; want %d lost", row.centre, r.Right, r.LostCount, row.lost)
		}
		if row.cause != "" && (len(r.Causes) != 1 || r.Causes[0].Cause.String() != row.cause) {
			t.Errorf("%v: %+v", row.centre, r.Causes)
		}
	}
}
