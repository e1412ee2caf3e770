package job

import (
	"os"
	"testing"
)

func BenchmarkRead(b *testing.B) {
	data, err := os.ReadFile(situations + "/plain.yaml")
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Parse("plain.yaml", situations, data, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
