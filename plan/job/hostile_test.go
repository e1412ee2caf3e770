package job

import (
	"errors"
	"fmt"
	"strings"
	"testing"
)

// TestHostile: files made to be heavy give a short answer.
func TestHostile(t *testing.T) {
	keys := &strings.Builder{}
	for i := 0; keys.Len() < 1<<20-40; i++ {
		fmt.Fprintf(keys, "key%d: 1\n", i)
	}
	for name, text := range map[string]string{
		"dashes":      strings.Repeat("- ", 1<<19),
		"braces":      strings.Repeat("{a: ", 1<<18),
		"keys":        keys.String(),
		"same key":    strings.Repeat("a: 1\n", 200000),
		"long word":   "rebush: " + strings.Repeat("9", 1<<19),
		"long list":   "rebush: 1\nshafts: [" + strings.Repeat("1,", 1<<19-20) + "]",
		"indentation": indented(3000),
		"question":    strings.Repeat("? ", 1<<18),
	} {
		_, err := Parse("job.yaml", ".", []byte(text), Options{})
		var ps Problems
		if !errors.As(err, &ps) || len(ps) == 0 || len(ps) > mostProblems+1 {
			t.Errorf("%s: %d problems", name, len(ps))
			continue
		}
		for _, p := range ps {
			if len(p.Error()) > 1000 {
				t.Errorf("%s: a line of %d letters", name, len(p.Error()))
				break
			}
		}
	}
}

func indented(n int) string {
	var b strings.Builder
	for i := 0; i < n && b.Len() < 1<<20-n-10; i++ {
		b.WriteString(strings.Repeat(" ", i) + "a:\n")
	}
	return b.String()
}
