package main

import "strings"

// nearest is the candidate that takes the fewest letters to reach; of two as
// near the earlier.
func nearest(word string, candidates []string) string {
	best, least := "", 1<<30
	for _, c := range candidates {
		d := letters(strings.ToLower(word), c)
		if len(word) > 1 && strings.HasPrefix(c, strings.ToLower(word)) {
			d = 1
		}
		if d < least {
			best, least = c, d
		}
	}
	return best
}

// letters counts the letters to put in, take out or change, on the first 40.
func letters(a, b string) int {
	x, y := []rune(a), []rune(b)
	x, y = x[:min(len(x), 40)], y[:min(len(y), 40)]
	row := make([]int, len(y)+1)
	for k := range row {
		row[k] = k
	}
	for i := 1; i <= len(x); i++ {
		corner := row[0]
		row[0] = i
		for k := 1; k <= len(y); k++ {
			change := corner
			if x[i-1] != y[k-1] {
				change++
			}
			corner = row[k]
			row[k] = min(change, row[k]+1, row[k-1]+1)
		}
	}
	return row[len(y)]
}
