package job

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

var (
	yamlLine   = regexp.MustCompile(`^yaml: (?:line (\d+): )?(.*)$`)
	tabIndent  = regexp.MustCompile(`^ *\t`)
	tightColon = regexp.MustCompile(`^\s*(- )?([a-z_]+):([^\s:#]\S*)\s*(#.*)?$`)
	twoColons  = regexp.MustCompile(`^\s*(- )?([a-z_]+): +([^"'{\[#].*: .*)$`)
	hashNumber = regexp.MustCompile(`[\[{,:]\s*(#\s?\d{1,2})\b`)
)

// explain puts an error of the YAML reader in words of the bench.
func explain(file, text string, err error) Problem {
	lines := strings.Split(text, "\n")
	m := yamlLine.FindStringSubmatch(strings.ReplaceAll(err.Error(), "\n", " "))
	line, message := 0, err.Error()
	if m != nil {
		line, _ = strconv.Atoi(m[1])
		message = m[2]
	}
	for i, l := range lines {
		if tabIndent.MatchString(l) {
			return Problem{Pos{file, i + 1, strings.IndexByte(l, '\t') + 1},
				"a tab stands at the beginning of this line", "indent with spaces"}
		}
	}
	for i, l := range lines {
		if at := hashNumber.FindStringSubmatchIndex(l); at != nil && (line == 0 || i < line+1) {
			name := l[at[2]:at[3]]
			return Problem{Pos{file, i + 1, at[2] + 1},
				name + " without quotes begins a comment, and the rest of the line is lost",
				fmt.Sprintf("write %q in quotes, or no %s", strings.ReplaceAll(name, " ", ""),
					strings.Trim(name, "# "))}
		}
	}
	if line == 0 && strings.Contains(message, "anchor") {
		name := strings.Trim(strings.TrimPrefix(message, "unknown anchor "), "'")
		name = strings.TrimSuffix(name, "' referenced")
		for i, l := range lines {
			if at := strings.Index(l, "*"+name); at >= 0 {
				return Problem{Pos{file, i + 1, at + 1}, "an alias (*" + name + ") is not read here",
					"write the values out where they belong"}
			}
		}
	}
	line = min(max(line, 1), len(lines))
	for line < len(lines) && strings.TrimSpace(lines[line-1]) == "" {
		line++
	}
	here := lines[line-1]
	column := len(here) - len(strings.TrimLeft(here, " ")) + 1
	if strings.Contains(message, "mapping values") || strings.Contains(message, "could not find expected ':'") ||
		strings.Contains(message, "document start") {
		for _, i := range []int{line, line - 1, line + 1} {
			if i < 1 || i > len(lines) {
				continue
			}
			l := strings.TrimRight(lines[i-1], "\r ")
			if m := tightColon.FindStringSubmatch(l); m != nil {
				return Problem{Pos{file, i, strings.IndexByte(l, ':') + 1}, "no space stands behind the colon",
					fmt.Sprintf("write `%s: %s`", m[2], m[3])}
			}
			if m := twoColons.FindStringSubmatch(l); m != nil {
				return Problem{Pos{file, i, strings.LastIndex(l, ": ") + 1}, "a second colon stands on this line",
					fmt.Sprintf("put the text in quotes: %s: \"%s\"", m[2], strings.ReplaceAll(m[3], `"`, "'"))}
			}
		}
	}
	wrong, right := plainYAML(message)
	return Problem{Pos{file, line, column}, wrong, right}
}

func plainYAML(message string) (wrong, right string) {
	has := func(s string) bool { return strings.Contains(message, s) }
	switch {
	case has("mapping values are not allowed"):
		return "this line or the one before it is indented wrongly, or a second colon stands on it",
			"put text that holds a colon in quotes; give keys of one record the same indentation"
	case has("did not find expected ',' or"):
		return "a list or record in brackets is not closed, or a comma is missing",
			"close it with ] or }, with commas between its parts"
	case has("did not find expected key"), has("did not find expected '-'"), has("block sequence entries"):
		return "the indentation does not fit the lines around it",
			"give keys of one record the same number of spaces; begin list items with - "
	case has("could not find expected ':'"):
		return "a colon is missing after a key here or on the line before", "write `key: value`"
	case has("cannot start any token"):
		return "this line begins with a character that YAML keeps for itself",
			"put text that begins with @, ` or % in quotes"
	case has("quoted scalar"), has("unexpected end of stream"):
		return "a quote is opened and not closed", "close it on the same line"
	case has("escape"):
		return "a backslash in double quotes is not understood", "use single quotes"
	case has("document start"):
		return "what stands here belongs to no key", "begin at the left margin with `rebush: 1`"
	}
	return "this is not YAML: " + message, "see the example in the README"
}
