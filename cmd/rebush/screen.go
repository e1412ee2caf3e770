package main

import (
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"
)

// screen is where words for a person go. What a file or the command line says
// is made harmless here and nowhere else: a name that holds the codes of a
// terminal is shown with them written out. Lines are broken to the width of a
// terminal. JSON and paper do not go through it.
type screen struct {
	to   io.Writer
	wide int // columns; 0: lines stay as long as they are
}

func (s *screen) Write(b []byte) (int, error) {
	text := harmless(string(b))
	if s.wide > 0 {
		lines := strings.Split(text, "\n")
		for i, l := range lines {
			lines[i] = strings.Join(broken(l, s.wide), "\n")
		}
		text = strings.Join(lines, "\n")
	}
	if _, err := io.WriteString(s.to, codes.Replace(text)); err != nil {
		return 0, err
	}
	return len(b), nil
}

func (s *screen) columns() int { return s.wide }

// Painted words stand between two marks that no valid text can hold, until
// they are written.
const (
	markOn  = '\xff' // and a letter of inks
	markOff = '\xfe'
)

// inks are the codes of a terminal by the letter behind markOn.
var inks = map[byte]string{'r': red, 'y': yellow, 'b': bold}

var codes = strings.NewReplacer("\xffr", "\x1b["+red+"m", "\xffy", "\x1b["+yellow+"m", "\xffb", "\x1b["+bold+"m",
	"\xfe", "\x1b[0m")

// harmless writes out what could move a cursor, turn the direction of reading,
// or be no text at all: "\x1b", "\u202e". Line ends, tabs and our own marks
// stay.
func harmless(s string) string {
	if !strings.ContainsFunc(s, odd) {
		return s
	}
	var b strings.Builder
	for i := 0; i < len(s); {
		r, n := utf8.DecodeRuneInString(s[i:])
		switch {
		case r == utf8.RuneError && n == 1 && s[i] == markOff:
			b.WriteByte(markOff)
		case r == utf8.RuneError && n == 1 && s[i] == markOn && i+1 < len(s) && inks[s[i+1]] != "":
			b.WriteByte(markOn)
		case r == utf8.RuneError && n == 1:
			fmt.Fprintf(&b, `\x%02x`, s[i])
		case odd(r) && r < 0x80:
			fmt.Fprintf(&b, `\x%02x`, r)
		case odd(r) && r > 0xffff:
			fmt.Fprintf(&b, `\U%08x`, r)
		case odd(r) && r != utf8.RuneError:
			fmt.Fprintf(&b, `\u%04x`, r)
		default:
			b.WriteString(s[i : i+n])
		}
		i += n
	}
	return b.String()
}

// odd is a sign that is not shown as it is. Joiners within a letter are.
func odd(r rune) bool {
	switch r {
	case '\n', '\t', '\u200c', '\u200d':
		return false
	case utf8.RuneError:
		return true
	}
	return unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp)
}

// broken breaks a line at blanks so that each piece is no wider than a screen.
// What follows hangs under the text: behind its indent, its list mark, the
// lines of a tree, or the second column of a list. A word wider than the screen
// stays whole.
func broken(line string, wide int) []string {
	if shown(line) <= wide {
		return []string{line}
	}
	lead := leadOf(line, wide)
	var out []string
	rest, indent := line, 0
	for shown(rest) > wide {
		cut, n := -1, 0
		for i, r := range rest {
			if r == ' ' && i > indent && strings.Trim(rest[indent:i], " ") != "" {
				if n > wide && cut >= 0 {
					break
				}
				cut = i
			}
			if r != utf8.RuneError {
				n++
			}
			if n > wide && cut >= 0 {
				break
			}
		}
		if cut < 0 {
			break
		}
		after := strings.TrimLeft(rest[cut:], " ")
		if after == "" {
			break
		}
		out = append(out, strings.TrimRight(rest[:cut], " "))
		rest, indent = lead+after, len(lead)
	}
	return append(out, rest)
}

// leadOf is what stands before the pieces of a broken line.
func leadOf(line string, wide int) string {
	var lead strings.Builder
	at := 0
	for _, r := range line {
		switch r {
		case '│', '├':
			lead.WriteRune('│')
		case ' ', '└', '─', '-', '#':
			lead.WriteRune(' ')
		default:
			goto text
		}
		at += utf8.RuneLen(r)
	}
text:
	if rest := line[at:]; len(rest) > 0 {
		if gap := strings.Index(rest, "  "); gap > 0 {
			column := gap + len(rest[gap:]) - len(strings.TrimLeft(rest[gap:], " "))
			if n := shown(line[:at+column]); n <= wide/2 {
				return lead.String() + strings.Repeat(" ", n-shown(line[:at]))
			}
		}
	}
	if at == 0 {
		return "  "
	}
	return lead.String()
}

// shown is how many columns a text takes: marks of paint take none.
func shown(s string) int {
	return utf8.RuneCountInString(s) - 2*strings.Count(s, string([]byte{markOn})) -
		strings.Count(s, string([]byte{markOff}))
}
