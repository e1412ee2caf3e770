// Package say makes sentences that carry their figures until they are printed.
//
// A Text is written once, in words, with its figures inside: each with its
// kind, its unit and its exact value. Printing decides unit and rounding, once,
// from that value, so that a size reads alike in a table, a sentence and a
// caution, and nothing ever reads a figure back out of English.
//
//	t := say.F("leaves %v at the edge, needs %v", say.MM(0.4137, 2), say.MM(1.25, 2).Bare())
//	t.In(dim.InMM)   // leaves 0.41 mm at the edge, needs 1.25
//	t.In(dim.InInch) // leaves 0.0163 in at the edge, needs 0.0492 in
//
// What a tool is stamped with and what a person named is no figure: it goes in
// as words and stays.
package say

import (
	"encoding/json"
	"fmt"
	"strings"

	"rebush/fits/dim"
)

// Text is words with figures inside. The zero Text says nothing. Texts are
// joined by +, compared by ==, and printed by In.
type Text string

// F is fmt.Sprintf for a Text: figures and texts among the arguments stay what
// they are, everything else becomes words.
func F(format string, args ...any) Text {
	in := make([]any, len(args))
	for i, a := range args {
		switch v := a.(type) {
		case Figure:
			in[i] = v.token()
		case Text:
			in[i] = string(v)
		case string:
			in[i] = clean(v)
		case speaker:
			in[i] = string(v.Said())
		case error:
			in[i] = clean(v.Error())
		case fmt.Stringer:
			in[i] = clean(v.String())
		default:
			in[i] = a
		}
	}
	return Text(fmt.Sprintf(format, in...))
}

// Words is a text without a figure: a name, a message of somebody else.
func Words(s string) Text { return Text(clean(s)) }

// Join sets texts side by side with sep between them, leaving out what says
// nothing.
func Join(sep string, texts ...Text) Text {
	var out Text
	for _, t := range texts {
		switch {
		case t == "":
		case out == "":
			out = t
		default:
			out += Text(sep) + t
		}
	}
	return out
}

// In prints a text in the units of the reader.
func (t Text) In(u dim.Units) string {
	s := string(t)
	if strings.IndexByte(s, open) < 0 {
		return s
	}
	var b strings.Builder
	for {
		i := strings.IndexByte(s, open)
		if i < 0 {
			return b.String() + s
		}
		n := strings.IndexByte(s[i:], shut)
		if n < 0 { // cut off: no figure is left of it
			return b.String() + s[:i]
		}
		b.WriteString(s[:i])
		if f, ok := parse(s[i+1 : i+n]); ok {
			before := b.String()
			b.WriteString(f.in(u, strings.Count(before, "(") > strings.Count(before, ")")))
		}
		s = s[i+n+1:]
	}
}

// String prints in mm, as the plan's JSON does.
func (t Text) String() string { return t.In(dim.InMM) }

// MarshalJSON prints in mm.
func (t Text) MarshalJSON() ([]byte, error) { return json.Marshal(t.String()) }

// UnmarshalJSON reads what MarshalJSON printed: from then on they are words.
func (t *Text) UnmarshalJSON(b []byte) error {
	var s string
	if err := json.Unmarshal(b, &s); err != nil {
		return err
	}
	*t = Words(s)
	return nil
}
