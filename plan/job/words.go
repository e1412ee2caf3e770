package job

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"
)

// describe says in words what a shape takes.
func (s *shape) describe() string {
	switch s.kind {
	case aText:
		return "some words"
	case aWord:
		return orList(s.words)
	case aYesNo:
		return "yes or no"
	case aLength:
		return "a length such as 3.16, 0.126 in or 1/8 in"
	case aNumber:
		if s.isDegrees() {
			return "a direction in degrees"
		}
		return "a number"
	case aWhole:
		return "a whole number"
	case aForce:
		return "a force such as 2.5 N"
	case aDate:
		return "a date such as 2026-11-25"
	case aList:
		switch {
		case s.min == s.max && s.max == 2:
			return fmt.Sprintf("two in brackets: [%s]", strings.ReplaceAll(s.say, " and ", ", "))
		case s.max == 0:
			return fmt.Sprintf("a list of %s, at least %d", s.say, s.min)
		}
		return fmt.Sprintf("a list of %d to %d %s", s.min, s.max, s.say)
	case aRecord:
		return "a record with " + strings.Join(s.names(), ", ")
	case aNamed:
		return "names, each with " + s.item.describe()
	}
	var forms []string
	for _, a := range s.alts {
		forms = append(forms, a.describe())
	}
	return orList(forms)
}

// mostLetters is how long a part of a message may be: what names everything that
// there is would fill a screen.
const mostLetters = 320

// clipped keeps a part of a message to a few lines.
func clipped(s string) string {
	if r := []rune(s); len(r) > mostLetters {
		return string(r[:mostLetters-3]) + "..."
	}
	return s
}

// digits says whether a word is nothing but digits.
func digits(s string) bool {
	return s != "" && strings.Trim(s, "0123456789") == ""
}

// short keeps what a person typed to a length that fits a line.
func short(s string) string {
	r := []rune(strings.Join(strings.Fields(s), " "))
	if len(r) > 40 {
		return string(r[:40]) + "..."
	}
	return string(r)
}

// commaHint recognises decimal commas in a list in brackets: more items than
// the list may have with commas that no space follows, or both kinds of comma.
func (r *reader) commaHint(n *yaml.Node, s *shape) bool {
	if n.Style&yaml.FlowStyle == 0 || s.item.forKind(func(k kind) bool { return k < aList }).kind > aForce {
		return false
	}
	tight, loose := 0, 0
	for i, c := range n.Content {
		if c.Kind != yaml.ScalarNode {
			return false
		}
		if i == 0 {
			continue
		}
		prev := n.Content[i-1]
		if !digits(strings.TrimLeft(prev.Value, "-")) || !digits(c.Value) {
			loose++
			continue
		}
		if prev.Line == c.Line && c.Column == prev.Column+len(prev.Value)+1 {
			tight++
		} else {
			loose++
		}
	}
	many := s.max > 0 && len(n.Content) > s.max
	zero := false
	for i, c := range n.Content {
		zero = zero || i > 0 && len(c.Value) > 1 && c.Value[0] == '0' && digits(c.Value)
	}
	mixed := loose > 0 && s.item.forKind(func(k kind) bool { return k < aList }).kind == aLength
	return tight > 0 && (many || mixed || zero)
}
