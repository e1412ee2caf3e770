package job

import (
	"strings"
)

// nearest returns the candidate that takes the fewest letters to reach, "" for
// an empty list. Ties go to the earlier candidate.
func nearest(word string, candidates []string) string {
	best, least := "", 1<<30
	w := strings.ToLower(strings.ReplaceAll(word, "-", "_"))
	for _, c := range candidates {
		d := distance(w, strings.ToLower(c))
		if strings.HasPrefix(strings.ToLower(c), w) && len(w) > 2 {
			d = min(d, 2)
		}
		if d < least {
			best, least = c, d
		}
	}
	return best
}

// distance counts the letters to put in, take out, change or swap with their
// neighbour. Words over 64 letters count by their first 64.
func distance(a, b string) int {
	x, y := clip(a), clip(b)
	prev2, prev, cur := make([]int, len(y)+1), make([]int, len(y)+1), make([]int, len(y)+1)
	for k := range prev {
		prev[k] = k
	}
	for i := 1; i <= len(x); i++ {
		cur[0] = i
		for k := 1; k <= len(y); k++ {
			cost := 1
			if x[i-1] == y[k-1] {
				cost = 0
			}
			cur[k] = min(prev[k]+1, cur[k-1]+1, prev[k-1]+cost)
			if i > 1 && k > 1 && x[i-1] == y[k-2] && x[i-2] == y[k-1] {
				cur[k] = min(cur[k], prev2[k-2]+1)
			}
		}
		prev2, prev, cur = prev, cur, prev2
	}
	return prev[len(y)]
}

func clip(s string) []rune {
	r := []rune(s)
	if len(r) > 64 {
		r = r[:64]
	}
	return r
}

// orList writes "a, b or c".
func orList(words []string) string {
	if len(words) == 0 {
		return ""
	}
	if len(words) == 1 {
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " or " + words[len(words)-1]
}
