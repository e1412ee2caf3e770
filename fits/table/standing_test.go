package table_test

import (
	"testing"

	"rebush/fits/table"
)

func TestStanding(t *testing.T) {
	for _, c := range []struct {
		csv  string
		want table.Standing
	}{
		{"a,source\n1,DIN 1420", table.Published},
		{"a,source\n1,\"DIN 1420, from memory\"", table.Memory},
		{"a,source\n1,\"common practice, no source (j)\"", table.Practice},
		{"a,source\n1,\"from memory, common practice\"", table.Memory},
		{"a,source\n1,", table.Practice},
		{"a,source\n1,plane geometry: teeth that bind do not turn", table.WorkedOut},
		{"a,basis,source\n1,derived_m,a handbook", table.WorkedOut},
		{"a,basis,source\n1,from_memory_ft,a handbook", table.Memory},
		{"a,basis,source\n1,remembered,a handbook", table.Memory},
		{"a,basis,source\n1,published_ft,a handbook", table.Published},
	} {
		tab, err := table.Parse("t", "t.csv", []byte(c.csv))
		if err != nil {
			t.Fatal(err)
		}
		if got := tab.Rows[0].Standing(); got != c.want {
			t.Errorf("%q: %v, want %v", c.csv, got, c.want)
		}
		if n := tab.Standings(); n[c.want] != 1 {
			t.Errorf("%q: counted %v", c.csv, n)
		}
	}
}
