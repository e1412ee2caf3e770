package sheets

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"rebush/sheets/draw"
)

// printable puts a text into signs that the font has. What it lacks is said in
// words, never drawn as boxes; signs of control become blanks.
func printable(s string) string {
	if plainASCII(s) {
		return s
	}
	var b strings.Builder
	lacking := 0
	flush := func() {
		if lacking > 0 {
			b.WriteString("[" + count(lacking, "sign") + " that this font lacks]")
		}
		lacking = 0
	}
	for _, r := range s {
		switch {
		case r == '\n':
			flush()
			b.WriteRune(r)
		case r < 0x20 || r == 0x7F:
			flush()
			b.WriteRune(' ')
		case r == utf8.RuneError || !draw.Has(r):
			lacking++
		default:
			flush()
			b.WriteRune(r)
		}
	}
	flush()
	return b.String()
}

// oneLine is printable without line breaks, for what stands on one line.
func oneLine(s string) string { return printable(strings.ReplaceAll(s, "\n", " ")) }

func plainASCII(s string) bool {
	for i := 0; i < len(s); i++ {
		if (s[i] < 0x20 && s[i] != '\n') || s[i] >= 0x7F {
			return false
		}
	}
	return true
}

// sentence begins with a capital.
func sentence(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if r == utf8.RuneError {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}

// ended ends a sentence with a full stop, where it has none.
func ended(s string) string {
	if s == "" || strings.HasSuffix(s, ".") {
		return s
	}
	return s + "."
}
