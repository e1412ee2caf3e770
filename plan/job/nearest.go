package job

import (
	"fmt"
	"strings"

	"rebush/fits/spelling"
)

// nearest is the candidate nearest to what somebody typed: a key, a name or a
// word of a list, in all of which a - may stand for a _.
func nearest(word string, candidates []string) string {
	return spelling.Nearest(strings.ReplaceAll(word, "-", "_"), candidates)
}

// some lists the first of many names.
func some(names []string) string {
	const most = 12
	if len(names) <= most {
		return strings.Join(names, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(names[:most], ", "), len(names)-most)
}

// orList writes "a, b or c".
func orList(words []string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:last], ", ") + " or " + words[last]
}
