package job

import (
	"fmt"
	"regexp"
	"strings"
	"unicode/utf8"
)

var (
	tabIndent    = regexp.MustCompile(`^ *\t`)
	hashNumber   = regexp.MustCompile(`[\[{,:]\s*(#\s?\d{1,2})\b`)
	tightColon   = regexp.MustCompile(`^(\s*(?:- )?)([a-z_]+):([^\s:#]\S*)(\s*(?:#.*)?)$`)
	tightDash    = regexp.MustCompile(`^(\s*)-([a-z_]+:.*)$`)
	keyAndText   = regexp.MustCompile(`^(\s*(?:- )?)([A-Za-z_]+):\s+(\S.*)$`)
	otherColon   = regexp.MustCompile(`^(\s*(?:- )?)([a-z_]+)\s*[=;]\s*(\S.*)$`)
	noColon      = regexp.MustCompile(`^(\s*(?:- )?)([a-z_]+)\s+(\S.*)$`)
	bareWord     = regexp.MustCompile(`^(\s*(?:- )?)([a-z_]+)\s*$`)
	noComma      = regexp.MustCompile(`([^\s,\[{:])\s+("?[a-z_]+"?:\s)`)
	looksLikeKey = regexp.MustCompile(`^\s*(- )?[A-Za-z_]+:(\s|$)|^\s*- `)
	alias        = regexp.MustCompile(`[:\[,]\s*(\*\w+)`)
	quotedText   = regexp.MustCompile(`^"([^"]*)"\s*(\S.*)$`)
)

// cures are the ways to mend a line, the likeliest first.
func (h *healer) cures(at int, err error) (out []cure) {
	line := strings.TrimRight(h.lines[at], "\r \t")
	body, remark := parted2(line)
	col := func(i int) int { return utf8.RuneCountInString(line[:i]) + 1 }
	add := func(column int, mended, wrong, right string) {
		out = append(out, cure{at: at, column: column, line: mended + remark, wrong: wrong, right: right})
	}
	guess := func(column int, mended, wrong, right string) {
		add(column, mended, wrong, right)
		out[len(out)-1].guess = true
	}
	if tabIndent.MatchString(line) {
		rest := strings.TrimLeft(line, " \t")
		for _, n := range h.indents(at) {
			out = append(out, cure{at: at, column: strings.IndexByte(line, '\t') + 1, line: strings.Repeat(" ", n) + rest,
				wrong: "a tab stands at the beginning of this line", right: "indent with spaces"})
		}
	}
	if m := hashNumber.FindStringSubmatchIndex(line); m != nil {
		name := strings.ReplaceAll(line[m[2]:m[3]], " ", "")
		out = append(out, cure{at: at, guess: true, column: col(m[2]), line: line[:m[2]] + `"` + name + `"` + line[m[3]:],
			wrong: name + " without quotes begins a comment, and the rest of the line is lost",
			right: fmt.Sprintf("write %q in quotes, or no %s", name, strings.Trim(name, "#"))})
	}
	if m := alias.FindStringSubmatchIndex(body); m != nil && strings.Contains(err.Error(), "anchor") {
		guess(col(m[2]), body[:m[2]]+`"`+body[m[2]:m[3]]+`"`+body[m[3]:],
			"an alias ("+short(body[m[2]:m[3]])+") is not read here", "write the values out where they belong")
	}
	if m := tightColon.FindStringSubmatch(line); m != nil {
		out = append(out, cure{at: at, column: strings.IndexByte(line, ':') + 1, line: m[1] + m[2] + ": " + m[3] + m[4],
			wrong: "no space stands behind the colon", right: fmt.Sprintf("write `%s: %s`", m[2], short(m[3]))})
	}
	if prev := h.before(at); prev >= 0 {
		if m := tightColon.FindStringSubmatch(strings.TrimRight(h.lines[prev], "\r ")); m != nil {
			out = append(out, cure{at: prev, column: len(m[1]) + len(m[2]) + 1, line: m[1] + m[2] + ": " + m[3] + m[4],
				wrong: "no space stands behind the colon", right: fmt.Sprintf("write `%s: %s`", m[2], short(m[3]))})
		}
	}
	if m := tightDash.FindStringSubmatch(line); m != nil {
		out = append(out, cure{at: at, column: len(m[1]) + 1, line: m[1] + "- " + m[2], wrong: "no space stands behind the dash",
			right: fmt.Sprintf("write `- %s`", short(m[2]))})
	}
	h.inQuotes(body, guess, col)
	h.inBrackets(body, guess, col)
	if m := keyAndText.FindStringSubmatch(body); m != nil && !strings.ContainsAny(m[3][:1], `"'[{`) {
		quoted := `"` + strings.NewReplacer(`"`, "'", `\`, "/").Replace(m[3]) + `"`
		column := len(m[1]) + len(m[2]) + 3
		if i := strings.LastIndex(body, ": "); i > len(m[1])+len(m[2]) {
			add(col(i), m[1]+m[2]+": "+quoted, "a second colon stands on this line",
				fmt.Sprintf("put the text in quotes: %s: %s", m[2], short(quoted)))
		}
		if strings.ContainsAny(m[3][:1], "@`%&*!|>,") {
			add(column, m[1]+m[2]+": "+quoted, fmt.Sprintf("text that begins with %q has to stand in quotes", m[3][:1]),
				fmt.Sprintf("write %s: %s", m[2], short(quoted)))
		}
	}
	if m := otherColon.FindStringSubmatch(body); m != nil {
		add(len(m[1])+len(m[2])+1, m[1]+m[2]+": "+m[3], "no colon stands behind the key",
			fmt.Sprintf("write `%s: %s`", m[2], short(m[3])))
	}
	if m := noColon.FindStringSubmatch(body); m != nil {
		add(len(m[1])+len(m[2])+1, m[1]+m[2]+": "+m[3], "a colon is missing behind the key",
			fmt.Sprintf("write `%s: %s`", m[2], short(m[3])))
	}
	if m := bareWord.FindStringSubmatch(body); m != nil {
		add(len(m[1])+len(m[2])+1, m[1]+m[2]+":", "a colon is missing behind the key", "write `"+m[2]+":`")
	}
	return append(out, h.reindented(at)...)
}

// reindented are the cures of a line that is indented wrongly, or stands after one
// that is.
func (h *healer) reindented(at int) (out []cure) {
	const right = "give keys of one record the same number of spaces"
	if !looksLikeKey.MatchString(h.lines[at]) {
		return nil
	}
	prev := h.before(at)
	here := indent(h.lines[at])
	if prev >= 0 && indent(h.lines[prev]) < here {
		if older := h.before(prev); older >= 0 && indent(h.lines[older]) == here && keyAndText.MatchString(h.lines[prev]) {
			out = append(out, cure{at: prev, column: indent(h.lines[prev]) + 1, line: strings.Repeat(" ", here) + strings.TrimLeft(h.lines[prev], " "),
				wrong: fmt.Sprintf("this line is indented by %d spaces, those around it by %d", indent(h.lines[prev]), here), right: right})
		}
	}
	for _, n := range h.indents(at) {
		if n != here {
			out = append(out, cure{at: at, column: here + 1, line: strings.Repeat(" ", n) + strings.TrimLeft(h.lines[at], " "),
				wrong: fmt.Sprintf("this line is indented by %d spaces, those around it by %d", here, n), right: right})
		}
	}
	return out
}

// indents are those of the lines around one: the next, the last before, and one
// step deeper.
func (h *healer) indents(at int) (out []int) {
	prev, next := h.before(at), h.after(at)
	if next > at && !strings.HasPrefix(strings.TrimLeft(h.lines[next], " "), "\t") {
		out = append(out, indent(h.lines[next]))
	}
	if prev >= 0 {
		out = append(out, indent(h.lines[prev]), indent(h.lines[prev])+2)
		for i := h.before(prev); i >= 0 && len(out) < 8; i = h.before(i) {
			if indent(h.lines[i]) < out[len(out)-1]-2 {
				out = append(out, indent(h.lines[i]))
			}
		}
	}
	return append(out, 0)
}

// parted2 parts a line from the remark at its end. Quotes keep a # in.
func parted2(line string) (body, remark string) {
	quote := byte(0)
	for i := 0; i < len(line); i++ {
		switch c := line[i]; {
		case quote != 0:
			if c == quote {
				quote = 0
			}
		case c == '"' || c == '\'':
			if i == 0 || strings.IndexByte(" [{,:", line[i-1]) >= 0 {
				quote = c
			}
		case c == '#' && (i == 0 || line[i-1] == ' '):
			body = strings.TrimRight(line[:i], " ")
			return body, line[len(body):]
		}
	}
	return line, ""
}

// inQuotes are the cures of quotes that are not closed, that text stands behind,
// or that hold a backslash.
func (h *healer) inQuotes(body string, add func(int, string, string, string), col func(int) int) {
	for _, q := range []string{`"`, `'`} {
		open := -1
		for i := 0; i < len(body); i++ {
			if body[i] != q[0] {
				continue
			}
			switch {
			case open >= 0:
				open = -1
			case i == 0 || strings.IndexByte(" [{,:", body[i-1]) >= 0:
				open = i
			}
		}
		if open >= 0 {
			if i := strings.IndexAny(body[open:], ",]}"); i > 0 {
				add(col(open), body[:open+i]+q+body[open+i:], "this quote is not closed", "close it on the same line: "+
					short(body[open:open+i]+q))
			}
			add(col(open), body+q, "this quote is not closed", "close it on the same line: "+short(body[open:]+q))
		}
	}
	if m := keyAndText.FindStringSubmatch(body); m != nil {
		if t := quotedText.FindStringSubmatch(m[3]); t != nil && !strings.ContainsAny(m[3], "'") {
			add(len(m[1])+len(m[2])+3, m[1]+m[2]+": '"+m[3]+"'", "text stands behind the closing quote",
				"put the whole in single quotes: '"+short(m[3])+"'")
		}
	}
	if i := strings.IndexByte(body, '\\'); i >= 0 && strings.Contains(body, `"`) && !strings.Contains(body, "'") {
		add(col(i), strings.ReplaceAll(body, `"`, "'"), "a backslash in double quotes is not understood", "use single quotes")
	}
}

// inBrackets are the cures of a bracket that is not closed, one too many, or a
// comma that is missing.
func (h *healer) inBrackets(body string, add func(int, string, string, string), col func(int) int) {
	if m := noComma.FindStringSubmatchIndex(body); m != nil && strings.ContainsAny(body, "[{") {
		mended := body
		for range 4 {
			mended = noComma.ReplaceAllString(mended, "$1, $2")
		}
		add(col(m[3]), mended, "a comma is missing before "+strings.TrimSpace(body[m[4]:m[5]]), "part the keys in braces by commas")
	}
	closes := map[byte]byte{'[': ']', '{': '}'}
	var open []int
	quote := byte(0)
	for i := 0; i < len(body); i++ {
		c := body[i]
		switch {
		case quote != 0:
			if c == quote {
				quote = 0
			}
		case (c == '"' || c == '\'') && i > 0 && strings.IndexByte(" [{,", body[i-1]) >= 0:
			quote = c
		case c == '[' || c == '{':
			open = append(open, i)
		case c == ']' || c == '}':
			if n := len(open); n == 0 {
				add(col(i), body[:i]+body[i+1:], fmt.Sprintf("this %c closes nothing", c), "take it away, or open it before")
				return
			} else if want := closes[body[open[n-1]]]; want != c {
				// closed by the wrong one, or the inner one not closed
				if n > 1 && closes[body[open[n-2]]] == c {
					add(col(open[n-1]), body[:i]+string(want)+body[i:], fmt.Sprintf("this %c is not closed", body[open[n-1]]),
						fmt.Sprintf("close it with %c", want))
				}
				add(col(i), body[:i]+string(want)+body[i+1:], fmt.Sprintf("this %c closes a %c", c, body[open[n-1]]),
					fmt.Sprintf("write %c", want))
				return
			} else {
				open = open[:n-1]
			}
		}
	}
	if len(open) == 0 {
		return
	}
	end := ""
	for i := len(open) - 1; i >= 0; i-- {
		end += string(closes[body[open[i]]])
	}
	inner := body[open[len(open)-1]]
	add(col(open[len(open)-1]), strings.TrimRight(body, " ,")+end, fmt.Sprintf("this %c is not closed", inner),
		fmt.Sprintf("close it with %c", closes[inner]))
}
