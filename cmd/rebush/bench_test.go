package main

import (
	"bytes"
	"testing"
)

// BenchmarkSheetCommand times the whole of `rebush sheet` on the first demo,
// chance and improvements included.
func BenchmarkSheetCommand(b *testing.B) {
	b.ReportAllocs()
	for range b.N {
		var out, errOut bytes.Buffer
		if code := run([]string{"rebush", "sheet", "../../testdata/jobs/pellinthwaite.yaml", "-o",
			b.TempDir() + "/x.pdf"}, bytes.NewReader(nil), &out, &errOut); code != 0 {
			b.Fatal(errOut.String())
		}
	}
}
