package survey

import "math"

// TwoLoads is a hole that was loaded to and fro between two directions, as two
// diameters tell of it. Its lobe may be so wide that no diameter of the old hole is
// left: then the narrowest reads too large.
type TwoLoads struct {
	Widest, Narrowest float64
	U                 float64 // of their difference
	Journal           float64 // diameter
	Half, UHalf       float64 // half the angle between the loads, radians
	Clear             float64 // clearance on diameter up to which new holes are taken as alike, mm
}

// Depth is the mean depth of wear and its standard deviation. Of a depth w the old
// diameter is widest - w, and the narrowest should read what stands square to the
// middle of the loads; each depth counts by how well that fits, and a clearance
// beyond the usual by how far, half of it being one standard deviation.
func (t TwoLoads) Depth() (w, u float64) {
	const steps = 160
	most := t.Widest - t.Journal
	if most <= 0 || t.U <= 0 {
		return math.Max(0, t.Widest-t.Narrowest), t.U
	}
	var all, sum, square float64
	for _, half := range normally(t.Half, t.UHalf, 25) {
		for i := range steps + 1 {
			w := most * float64(i) / steps
			b := NewWornBore([2]float64{}, (t.Widest-w)/2, t.Journal/2, w, 0)
			b.FanHalf = math.Max(0, half.v)
			misfit := (t.Narrowest - b.Reach(math.Pi/2) - b.Reach(-math.Pi/2)) / t.U
			loose := math.Max(0, most-w-t.Clear) / (t.Clear / 2)
			p := half.p * math.Exp(-(misfit*misfit+loose*loose)/2)
			all, sum, square = all+p, sum+p*w, square+p*w*w
		}
	}
	if all < 1e-200 {
		return math.Max(0, t.Widest-t.Narrowest), t.U
	}
	w = sum / all
	return w, math.Max(t.U, math.Sqrt(math.Max(0, square/all-w*w)))
}
