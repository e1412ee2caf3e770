package chance

import (
	"math"
	"math/rand/v2"
	"sync"
)

// Block is how many trials share one seeding.
const Block = 4096

// gamma is the step of the counter of every stream.
const gamma = 0x9e3779b97f4a7c15

// mix turns a counter into 64 random bits. A stream is a start; its word for
// trial t is mix(start + t*gamma), so that a word that nobody needs need not
// be made and no source can push another out of step.
//
// Source: SplitMix64 of Steele, Lea and Flood, "Fast splittable pseudorandom
// number generators", OOPSLA 2014, with the finisher that the Java library
// ships (from memory; held to printed outputs in the test).
func mix(z uint64) uint64 {
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// starts sets the starts of the streams of one owner (a bore, a gear, a
// clamping) for one block from the block's PCG seeding.
func starts(dst []uint64, base uint64, owner int, key uint64) {
	for k := range dst {
		dst[k] = mix(base + mix(key^mix(uint64(owner)<<16|uint64(k)+1)))
	}
}

// blockBase is the seeding of one block.
func blockBase(pcg *rand.PCG, seed uint64, block int) uint64 {
	pcg.Seed(seed, uint64(block))
	return pcg.Uint64()
}

// tables turn 32 random bits into a standard normal error and into the cosine
// of a random clocking.
//
// The normal one is the inverse of the distribution function at 4097 even
// steps with straight pieces between. The two outermost pieces, beyond 3.49
// standard deviations, end where they keep the mean of the tail, near 4.0:
// one trial in two thousand sees it, by 0.1 of a standard deviation or so.
// The figures are rounded to a millionth, so that every platform has the same.
//
// Source: inverse transform by table, e.g. L. Devroye, Non-Uniform Random
// Variate Generation, 1986, ch. II (from memory).
type tables struct {
	z   [cells + 1]float32
	cos [turns]float32
}

const (
	cells = 4096
	turns = 1024
)

var sharedTables = sync.OnceValue(func() *tables {
	t := &tables{}
	round := func(v float64) float32 { return float32(math.Round(v*1e6) / 1e6) }
	for i := 1; i < cells; i++ {
		t.z[i] = round(math.Sqrt2 * math.Erfinv(2*float64(i)/cells-1))
	}
	// Mean of the tail beyond z that holds a share 1/cells: phi(z)*cells.
	edge := float64(t.z[cells-1])
	mean := math.Exp(-edge*edge/2) / math.Sqrt(2*math.Pi) * cells
	t.z[cells] = round(2*mean - edge)
	t.z[0] = -t.z[cells]
	for i := range t.cos {
		t.cos[i] = round(math.Cos(2 * math.Pi * (float64(i) + 0.5) / turns))
	}
	return t
})

// normal is a standard normal error.
func (t *tables) normal(u uint32) float64 {
	i := u >> 20
	a := t.z[i]
	return float64(a + float32(float32(u&(1<<20-1))*(1.0/(1<<20))*(t.z[i+1]-a)))
}

// clock is the direction of a random clocking, as cosine and sine.
func (t *tables) clock(u uint32) (cos, sin float64) {
	i := u >> 22
	return float64(t.cos[i]), float64(t.cos[(i-turns/4)&(turns-1)])
}

// even is a number even over 0 to 1, never either end.
func even(u uint32) float64 { return (float64(u) + 0.5) * (1.0 / (1 << 32)) }
