package carry

import (
	"math"
	"math/rand/v2"
)

// luck is one carrying out: each error is drawn from a source with a name of
// its own, so that the same hole meets the same luck wherever it is put.
type luck struct{ truck, turn uint64 }

// of opens the source of one error.
func (l luck) of(name string) *rand.Rand {
	h := uint64(14695981039346656037) // FNV-1a
	for i := range len(name) {
		h = (h ^ uint64(name[i])) * 1099511628211
	}
	return rand.New(rand.NewPCG(l.truck*0x9e3779b97f4a7c15^h, l.turn*0xd1342543de82ef95^h>>7))
}

// normal has mean 0 and a standard deviation.
func normal(r *rand.Rand, u float64) float64 { return u * r.NormFloat64() }

// pair is an error of a place, alike on both axes.
func pair(r *rand.Rand, u float64) [2]float64 { return [2]float64{normal(r, u), normal(r, u)} }

// even lies between two figures.
func even(r *rand.Rand, low, high float64) float64 { return low + (high-low)*r.Float64() }

// clocked has a length and any direction.
func clocked(r *rand.Rand, by float64) [2]float64 {
	sin, cos := math.Sincos(2 * math.Pi * r.Float64())
	return [2]float64{by * cos, by * sin}
}

func plus(p ...[2]float64) (sum [2]float64) {
	for _, q := range p {
		sum[0], sum[1] = sum[0]+q[0], sum[1]+q[1]
	}
	return sum
}

func minus(p, q [2]float64) [2]float64         { return [2]float64{p[0] - q[0], p[1] - q[1]} }
func times(f float64, p [2]float64) [2]float64 { return [2]float64{f * p[0], f * p[1]} }
func size(p [2]float64) float64                { return math.Hypot(p[0], p[1]) }
func towards(deg float64) [2]float64 {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	return [2]float64{cos, sin}
}
func (p place) mm() [2]float64 { return [2]float64{float64(p[0]), float64(p[1])} }
