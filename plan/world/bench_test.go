package world

import "testing"

func BenchmarkTruck(b *testing.B) {
	seed := uint64(0)
	for b.Loop() {
		Truck(seed, Options{})
		seed++
	}
}
