package main

import (
	"strings"

	"rebush/fits/spelling"
)

// nearest is the candidate that takes the fewest letters to reach; of two as
// near the earlier.
func nearest(word string, candidates []string) string {
	best, least := "", 1<<30
	for _, c := range candidates {
		d := spelling.Distance(strings.ToLower(word), c)
		if len(word) > 1 && strings.HasPrefix(c, strings.ToLower(word)) {
			d = 1
		}
		if d < least {
			best, least = c, d
		}
	}
	return best
}
