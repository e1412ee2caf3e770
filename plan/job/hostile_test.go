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

// TestHostileFaults: a file that is full of faults is given up after some work,
// not mended for minutes: no more than mostBytes and one file are read in trials.
func TestHostileFaults(t *testing.T) {
	for name, line := range map[string]string{"brackets": "a: [1, 2\n", "tabs": "\ta: 1\n", "quotes": "a: \"x\n", "words": "a: 1\nb c d\n",
		"steps": "   a: 1\n b: 2\n"} {
		text := strings.Repeat(line, largestHeals/len(line)-1)
		h := &healer{file: "job.yaml", lines: strings.Split(text, "\n")}
		h.heal()
		if most := mostBytes + 60*largestHeals; h.bytes > most {
			t.Errorf("%s: %d bytes were read in trials, more than %d", name, h.bytes, most)
		}
		if len(h.problems) == 0 || len(h.problems) > mostHealed+1 {
			t.Errorf("%s: %d problems", name, len(h.problems))
		}
	}
}
