package job

import (
	"os"
	"testing"
)

func BenchmarkRead(b *testing.B) {
	data, err := os.ReadFile(jobs + "/corvelhurst.yaml")
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Parse("corvelhurst.yaml", jobs, data, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
