package say_test

import (
	"testing"

	"rebush/fits/say"
)

// Both sides of every limit; nothing is ever certain, and what is possible is
// never none.
func TestInHundred(t *testing.T) {
	for f, want := range map[float64]say.Text{0: "0 in 100", 0.0001: "under 1 in 100", 0.0049: "under 1 in 100", 0.005: "1 in 100",
		0.872: "87 in 100", 0.8749: "87 in 100", 0.875: "88 in 100", 0.9949: "99 in 100", 0.995: "over 99 in 100", 1: "over 99 in 100"} {
		if got := say.InHundred(f); got != want {
			t.Errorf("InHundred(%v) is %q, want %q", f, got, want)
		}
	}
}
