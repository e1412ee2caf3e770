package survey

import (
	"flag"
	"os"
	"testing"

	"rebush/testdata/own"
)

var update = flag.Bool("update", false, "write testdata/own/wornbores.csv anew")

// TestWornBoresAreMade: the file of worn bores is what its generator makes.
func TestWornBoresAreMade(t *testing.T) {
	const name = "../../testdata/own/wornbores.csv"
	made := own.WornBores(own.BoreSeed)
	if *update {
		if err := os.WriteFile(name, []byte(made), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	kept, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if string(kept) != made {
		t.Errorf("%s is not what testdata/own/bores.go makes with seed %d", name, own.BoreSeed)
	}
	if other := own.WornBores(own.BoreSeed + 1); other == made {
		t.Error("another seed makes the same bores")
	}
}
