package world

import (
	"math"
	"math/rand/v2"
	"slices"
)

// stream is a source of chance with a name of its own. Every figure of a truck
// is drawn from the stream of the thing it belongs to, so that a figure more in
// one place shifts none in another.
type stream struct {
	seed uint64
	name string
	r    *rand.Rand
}

// of opens the stream of a part of a thing.
func (s stream) of(part string) stream { return streamOf(s.seed, s.name+"/"+part) }

// streamOf opens the stream of a seed and a name.
func streamOf(seed uint64, name string) stream {
	h := uint64(14695981039346656037) // FNV-1a
	for i := range len(name) {
		h = (h ^ uint64(name[i])) * 1099511628211
	}
	return stream{seed, name, rand.New(rand.NewPCG(mixed(seed), mixed(h)))}
}

// mixed spreads neighbouring seeds far apart (the finalizer of splitmix64).
func mixed(x uint64) uint64 {
	x += 0x9e3779b97f4a7c15
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}

// yes is true with a probability.
func (s stream) yes(p float64) bool { return s.r.Float64() < p }

// between is even between two figures.
func (s stream) between(low, high float64) float64 { return low + (high-low)*s.r.Float64() }

// whole is even among the whole numbers from low to high, both included.
func (s stream) whole(low, high int) int { return low + s.r.IntN(high-low+1) }

// normal has mean 0 and a standard deviation; it is cut at four of them, where
// no instrument that was looked after errs.
func (s stream) normal(u float64) float64 {
	return u * math.Max(-4, math.Min(4, s.r.NormFloat64()))
}

// one picks from a list, each alike.
func one[T any](s stream, list ...T) T { return list[s.r.IntN(len(list))] }

// share is a choice with its weight.
type share[T any] struct {
	weight float64
	what   T
}

// among picks from choices by their weights.
func among[T any](s stream, list ...share[T]) T {
	sum := 0.0
	for _, c := range list {
		sum += c.weight
	}
	at := sum * s.r.Float64()
	for _, c := range list {
		if at -= c.weight; at < 0 {
			return c.what
		}
	}
	return list[len(list)-1].what
}

// words are choices of words by their weights.
type words []share[string]

func (w words) of(s stream) string { return among(s, w...) }

// shuffle brings a list into another order.
func shuffle[T any](s stream, list []T) []T {
	out := slices.Clone(list)
	s.r.Shuffle(len(out), func(i, k int) { out[i], out[k] = out[k], out[i] })
	return out
}
