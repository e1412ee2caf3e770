package job

import (
	"fmt"
	"strings"
)

// quote gives the problems of a file the lines that they speak of.
func (ps Problems) quote(file string, lines []string) {
	for i := range ps {
		if p := &ps[i]; p.Pos.File == file && p.Text == "" && p.Pos.Line >= 1 && p.Pos.Line <= len(lines) {
			p.Text = strings.TrimRight(lines[p.Pos.Line-1], "\r ")
		}
	}
}

// screenWidth and mostTold are how wide a line of a message is, and of how many
// mistakes a screen holds the messages.
const (
	screenWidth = 78
	mostTold    = 20
)

// Screen writes the mistakes for a terminal: each on a line, and below it the line
// of the file with a mark under the culprit, no wider than the screen (0: not
// known). Of more than a screen holds the rest is counted.
func (ps Problems) Screen(wide int) string {
	if wide <= 0 {
		wide = screenWidth
	}
	var b strings.Builder
	for i, p := range ps {
		if i == mostTold && len(ps) > mostTold+1 {
			fmt.Fprintf(&b, "and %d more mistakes: mend these first\n", len(ps)-i)
			break
		}
		b.WriteString(p.Error())
		b.WriteByte('\n')
		b.WriteString(p.excerpt(wide))
	}
	return strings.TrimRight(b.String(), "\n")
}

// excerpt is the line of the file with a mark under the culprit, "" where the line
// is not known or has nothing on it.
func (p Problem) excerpt(wide int) string {
	text := []rune(shownPlain(p.Text))
	from := p.Pos.Column - 1
	if p.Pos.Line < 1 || from < 0 || from >= len(text) {
		return ""
	}
	to := from + markWidth(text[from:])
	number := fmt.Sprintf("%6d | ", p.Pos.Line)
	room := wide - len(number)
	// A long line is shown about the mark.
	first := 0
	if len(text) > room {
		first = max(0, min(from-room/3, len(text)-room))
	}
	last := min(len(text), first+room)
	to = min(to, last)
	shown := string(text[first:last])
	if first > 0 {
		shown = "..." + string(text[first+3:last])
	}
	if last < len(text) {
		r := []rune(shown)
		shown = string(r[:len(r)-3]) + "..."
	}
	mark := strings.Repeat(" ", from-first) + strings.Repeat("^", max(1, to-from))
	return number + shown + "\n" + strings.Repeat(" ", 6) + " | " + mark + "\n"
}

// markWidth is how many letters the value or the key at the head of a text has.
func markWidth(text []rune) int {
	s := string(text)
	if q := s[:1]; q == `"` || q == "'" {
		if end := strings.Index(s[1:], q); end >= 0 {
			return len([]rune(s[:end+2]))
		}
		return 1
	}
	if strings.ContainsAny(s[:1], "[]{}: ") {
		return 1
	}
	for i := range s {
		switch rest := s[i:]; {
		case strings.ContainsAny(rest[:1], ",]}"), strings.HasPrefix(rest, " #"), strings.HasPrefix(rest, ": "), rest == ":":
			return len([]rune(strings.TrimRight(s[:i], " ")))
		}
	}
	return len([]rune(strings.TrimRight(s, " ")))
}

// shownPlain keeps a line of a file from doing anything to a terminal.
func shownPlain(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t':
			return ' '
		case r < 0x20, r >= 0x7f && r < 0xa0, r >= 0x200b && r <= 0x200f, r >= 0x202a && r <= 0x202e, r >= 0x2066 && r <= 0x2069:
			return '?'
		}
		return r
	}, s)
}
