package job

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// decoded turns UTF-16, which some editors call Unicode, into UTF-8, and takes a
// byte order mark away. Other bytes stay as they are.
func decoded(data []byte) []byte {
	big, is := utf16Order(data)
	if !is {
		return bytes.TrimPrefix(data, []byte("\xEF\xBB\xBF"))
	}
	units := make([]uint16, 0, len(data)/2)
	for i := 0; i+1 < len(data); i += 2 {
		if big {
			units = append(units, uint16(data[i])<<8|uint16(data[i+1]))
		} else {
			units = append(units, uint16(data[i+1])<<8|uint16(data[i]))
		}
	}
	return []byte(strings.TrimPrefix(string(utf16.Decode(units)), "\uFEFF"))
}

// utf16Order tells UTF-16 by its mark, or by every other byte being 0: a job is
// nearly all of plain letters and figures.
func utf16Order(data []byte) (big, is bool) {
	switch {
	case bytes.HasPrefix(data, []byte("\xFE\xFF")):
		return true, true
	case bytes.HasPrefix(data, []byte("\xFF\xFE")):
		return false, true
	case len(data) < 8:
		return false, false
	}
	var zero [2]int
	head := data[:min(len(data), 400)&^1]
	for i, b := range head {
		if b == 0 {
			zero[i%2]++
		}
	}
	half := len(head) / 2
	switch {
	case zero[0] > half*9/10 && zero[1] < half/10:
		return true, true
	case zero[1] > half*9/10 && zero[0] < half/10:
		return false, true
	}
	return false, false
}

// otherFiles are files that are no text, by how they begin.
var otherFiles = []struct{ begins, holds, what string }{
	{"PK\x03\x04", "word/", "a word processor's file (.docx)"},
	{"PK\x03\x04", "opendocument.text", "a word processor's file (.odt)"},
	{"PK\x03\x04", "xl/", "a spreadsheet (.xlsx)"},
	{"PK\x03\x04", "opendocument.spreadsheet", "a spreadsheet (.ods)"},
	{"PK\x03\x04", "", "a ZIP archive"},
	{"\xD0\xCF\x11\xE0", "", "a file of an older word processor or spreadsheet (.doc, .xls)"},
	{`{\rtf`, "", "a word processor's file (RTF)"},
	{"%PDF-", "", "a PDF"},
	{"\x1F\x8B", "", "a packed file (gzip)"},
	{"\x89PNG", "", "a picture"},
	{"\xFF\xD8\xFF", "", "a picture"},
	{"<!DOCTYPE", "", "a web page"},
	{"<html", "", "a web page"},
	{"<?xml", "", "an XML file"},
}

// savedPlain is what is right instead of a word processor's file.
const savedPlain = "open it where it was made and save it as plain text (.txt) in UTF-8"

// notText finds the first byte that no text file holds, or what else it is.
func notText(data []byte) (line, column int, wrong string) {
	head := string(data[:min(len(data), 4096)])
	for _, o := range otherFiles {
		if strings.HasPrefix(head, o.begins) && strings.Contains(string(data[:min(len(data), 1<<16)]), o.holds) {
			return 1, 1, "this is " + o.what + ", not plain text"
		}
	}
	if _, is := utf16Order(data); is {
		return 1, 1, "this file is saved as UTF-16, which some editors call Unicode, not as UTF-8"
	}
	line, column = 1, 1
	for i := 0; i < len(data); {
		r, size := utf8.DecodeRune(data[i:])
		switch {
		case r == utf8.RuneError && size <= 1:
			return line, column, fmt.Sprintf("byte %#02x is not UTF-8 text", data[i])
		case r == 0:
			return line, column, "a NUL byte: this is not a text file"
		case r < 0x20 && r != '\n' && r != '\r' && r != '\t', r == 0x7f:
			return line, column, fmt.Sprintf("control character %#02x: this is not a text file", r)
		case r == '\n':
			line, column = line+1, 0
		}
		i += size
		column++
	}
	return 0, 0, ""
}

// spaces are those that word processors and web pages put in the place of a plain
// one; what is not seen at all goes.
var spaces = strings.NewReplacer("\u00A0", " ", "\u2007", " ", "\u202F", " ", "\u2009", " ", "\u2003", " ", "\u2002", " ",
	"\u3000", " ", "\u200B", "", "\u2060", "", "\uFEFF", "", "\u00AD", "")

var (
	curly       = regexp.MustCompile(`((?:^|[\[{,:]|- )\s*)[“”„‟«]([^“”„‟"«»]*)[“”„‟"»](\s*(?:$|[\],}:#]))`)
	curlySingle = regexp.MustCompile(`((?:^|[\[{,:]|- )\s*)[‘‚‛]([^‘’‚'"]*)[’‘'](\s*(?:$|[\],}:#]))`)
	dashMinus   = regexp.MustCompile(`((?:^|[\[{,:\s])\s*)[−–](\s?[\d.])`)
)

// typewritten turns what a word processor makes of plain typing back: spaces that
// do not break, curly quotes round a value, a minus that is a dash.
func typewritten(text string) string {
	if ascii(text) {
		return text
	}
	lines := strings.Split(spaces.Replace(text), "\n")
	for i, l := range lines {
		if ascii(l) {
			continue
		}
		for range 2 { // values side by side share the comma between them
			l = curly.ReplaceAllString(l, `$1"$2"$3`)
			l = curlySingle.ReplaceAllString(l, `$1'$2'$3`)
			l = dashMinus.ReplaceAllString(l, `$1-$2`)
		}
		lines[i] = l
	}
	return strings.Join(lines, "\n")
}

func ascii(s string) bool {
	for i := range len(s) {
		if s[i] >= 0x80 {
			return false
		}
	}
	return true
}
