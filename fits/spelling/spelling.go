// Package spelling tells how far apart two words are, for naming the nearest
// known one to what somebody typed.
package spelling

import "strings"

// Nearest is the candidate that takes the fewest letters to reach, capitals
// aside: "" for an empty list, of two as near the earlier. A word that only
// stops short of a candidate is next to it.
func Nearest(word string, candidates []string) string {
	best, least := "", 1<<30
	word = strings.ToLower(word)
	for _, c := range candidates {
		low := strings.ToLower(c)
		d := Distance(word, low)
		if len(word) > 1 && strings.HasPrefix(low, word) {
			d = min(d, 1)
		}
		if d < least {
			best, least = c, d
		}
	}
	return best
}

// most is how many letters of a word count.
const most = 64

// Distance counts the letters to put in, take out, change or swap with their
// neighbour between two words. Only the first 64 letters of each count.
//
// Source: optimal string alignment (Damerau 1964, Levenshtein 1966).
func Distance(a, b string) int {
	x, y := letters(a), letters(b)
	before, last, row := make([]int, len(y)+1), make([]int, len(y)+1), make([]int, len(y)+1)
	for k := range last {
		last[k] = k
	}
	for i := 1; i <= len(x); i++ {
		row[0] = i
		for k := 1; k <= len(y); k++ {
			change := last[k-1]
			if x[i-1] != y[k-1] {
				change++
			}
			row[k] = min(last[k]+1, row[k-1]+1, change)
			if i > 1 && k > 1 && x[i-1] == y[k-2] && x[i-2] == y[k-1] {
				row[k] = min(row[k], before[k-2]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(y)]
}

func letters(s string) []rune {
	r := []rune(s)
	return r[:min(len(r), most)]
}
