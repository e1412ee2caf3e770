package spelling_test

import (
	"strings"
	"testing"

	"rebush/fits/spelling"
)

func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		// The textbook pair of Levenshtein's measure, from memory.
		{"kitten", "sitting", 3},
		{"", "abc", 3}, {"abc", "", 3}, {"same", "same", 0},
		{"wiedst", "widest", 1}, // two neighbours swapped
		{"jornal", "journal", 1}, {"zamk", "zamak", 1}, {"Ø3", "O3", 1},
		{strings.Repeat("a", 200), strings.Repeat("a", 64) + "b", 0}, // only the first 64 count
	} {
		if got := spelling.Distance(c.a, c.b); got != c.want {
			t.Errorf("%q to %q: %d, want %d", c.a, c.b, got, c.want)
		}
		if spelling.Distance(c.a, c.b) != spelling.Distance(c.b, c.a) {
			t.Errorf("%q and %q are not as far one way as the other", c.a, c.b)
		}
	}
}

func TestNearest(t *testing.T) {
	keys := []string{"widest", "widest_at", "narrowest", "Letter"}
	for word, want := range map[string]string{
		"widset": "widest", "Widest_a": "widest_at", "narrow": "narrowest", "letter": "Letter", "WIDEST": "widest",
	} {
		if got := spelling.Nearest(word, keys); got != want {
			t.Errorf("%s: %s, want %s", word, got, want)
		}
	}
	if got := spelling.Nearest("ab", []string{"xb", "ax"}); got != "xb" {
		t.Errorf("of two as near the earlier: %s", got)
	}
	if got := spelling.Nearest("word", nil); got != "" {
		t.Errorf("of nothing: %q", got)
	}
}
