package job

import (
	"strings"

	"rebush/fits/spelling"
)

// nearest returns the candidate that takes the fewest letters to reach, "" for
// an empty list. Ties go to the earlier candidate.
func nearest(word string, candidates []string) string {
	best, least := "", 1<<30
	w := strings.ToLower(strings.ReplaceAll(word, "-", "_"))
	for _, c := range candidates {
		d := spelling.Distance(w, strings.ToLower(c))
		if strings.HasPrefix(strings.ToLower(c), w) && len(w) > 2 {
			d = min(d, 2)
		}
		if d < least {
			best, least = c, d
		}
	}
	return best
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
