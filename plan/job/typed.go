package job

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"rebush/fits/dim"
)

// mostTyped is the longest answer, in letters.
const mostTyped = 400

// read takes an answer apart: a scalar of the file for each figure, "" for one
// that is left out. wrong says why it cannot be.
func (q Question) read(text string, units dim.Unit) (out []string, wrong string) {
	if _, c, bad := notText([]byte(text)); bad != "" {
		return nil, fmt.Sprintf("letter %d: %s", c, bad)
	}
	if n := len([]rune(text)); n > mostTyped {
		return nil, fmt.Sprintf("that is %d letters long; keep it under %d", n, mostTyped)
	}
	switch {
	case q.Many:
		return q.ticked(text)
	case q.Part == "bush" && q.ID == "class":
		return q.classes(text)
	case len(q.figures) == 0 && q.Words == nil:
		s, wrong := q.one(text, &shape{kind: aWhole, lo: 1, hi: mostShafts}, units)
		return []string{s}, wrong
	case len(q.figures) == 0 || len(q.figures) == 1 && q.figures[0].shape.kind < aList && len(q.Figures) < 2:
		s, wrong := q.one(text, q.shape(), units)
		return []string{s}, wrong
	}
	return q.several(text, units)
}

// mostShafts is how many shafts `start` asks for.
const mostShafts = 8

// shape is that of its only figure; of a question without a key, its words.
func (q Question) shape() *shape {
	if len(q.figures) == 0 || q.figures[0].shape.kind != aYesNo && q.Words != nil {
		return &shape{kind: aWord, words: q.Words}
	}
	return q.figures[0].shape
}

// ticked reads which of several things hold.
func (q Question) ticked(text string) ([]string, string) {
	last := q.Words[len(q.Words)-1]
	holds := map[string]bool{}
	between := func(c rune) bool { return strings.ContainsRune(" ,;&+/", c) }
	for _, w := range strings.FieldsFunc(strings.ToLower(text), between) {
		if w == "and" || w == "loose" || w == "it" {
			continue
		}
		if slices.Contains([]string{"no", "none", "n", "neither"}, w) {
			w = last
		}
		word := wordOf(w, q.Words)
		if word == "" {
			return nil, fmt.Sprintf("%q is none of them; it may be %s", short(w), orList(q.Words))
		}
		holds[word] = true
	}
	if holds[last] && len(holds) > 1 {
		return nil, "either " + last + " or the rest"
	}
	var out []string
	for i, f := range q.figures {
		yes, no := "yes", "no"
		if f.shape.kind == aWord {
			yes, no = "loose", "tight"
		}
		if !holds[q.Words[i]] {
			yes = no
		}
		out = append(out, yes)
	}
	return out, ""
}

// wordOf is the one word that begins as typed, "" where there is none or more.
func wordOf(typed string, words []string) string {
	found := ""
	for _, w := range words {
		switch {
		case strings.EqualFold(w, typed):
			return w
		case typed != "" && strings.HasPrefix(strings.ToLower(w), strings.ToLower(typed)):
			if found != "" {
				return ""
			}
			found = w
		}
	}
	return found
}

// otherWords are what people say for a word of a file.
var otherWords = map[string]string{"inch": "in", "inches": "in", "imperial": "in", "\"": "in", "metric": "mm",
	"millimetre": "mm", "millimetres": "mm", "millimeters": "mm", "pillar drill": "drill press", "drill": "drill press",
	"ok": "good", "fine": "good", "front and rear": "axles"}

var (
	behindNumber = regexp.MustCompile(`(?i)^([-+]?[\d.,]+)\s*(mm|deg|degrees|°|º|rpm|r/min|teeth|t|starts?|start|off|pcs)\.?$`)
	pitchForm    = regexp.MustCompile(`(?i)^([\d.,]+)\s*(?:d\.?p\.?|diametral pitch)$|^(?:d\.?p\.?)\s*([\d.,]+)$`)
	moneyForm    = regexp.MustCompile(`^([^\d\s.,+-]{0,8})\s*(\d[\d.,]*|[.,]\d+)\s*([^\d]{0,12})$`)
)

// one reads one figure or word as it is said at the bench.
func (q Question) one(text string, s *shape, units dim.Unit) (out, wrong string) {
	text = strings.TrimSpace(text)
	switch s.kind {
	case aYesNo, aWord:
		if w := strings.ToLower(text); s.kind == aYesNo || has(s.words, "yes") {
			switch w {
			case "y", "yes", "yep", "true":
				return "yes", ""
			case "n", "no", "nope", "none", "false":
				if s.kind == aYesNo || has(s.words, "no") {
					return "no", ""
				}
			}
		} else if other, ok := otherWords[w]; ok && has(s.words, other) {
			return other, ""
		}
		if w := wordOf(text, s.words); w != "" {
			return w, ""
		}
	case aNumber, aWhole:
		if s.isDegrees() {
			return directionOf(text)
		}
		if q.money() {
			return amountOf(text)
		}
		if m := pitchForm.FindStringSubmatch(text); m != nil && q.ID == "module" {
			dp := m[1] + m[2]
			_, wrong := q.scalar(dp, shapeOfKey("gears/#/diametral_pitch", false), units)
			return dp + " DP", wrong
		}
		if m := behindNumber.FindStringSubmatch(text); m != nil {
			text = m[1]
		}
	case aLength:
		if s.lo == 0 && s.hi == 0 && !strings.ContainsAny(text, "0123456789") {
			return "", fmt.Sprintf("%q is not a place; write a figure", short(text)) // X is a letter drill
		}
	}
	return q.scalar(text, s, units)
}

// scalar holds a text against the shape of its key, as the reader of files does.
func (q Question) scalar(text string, s *shape, units dim.Unit) (out, wrong string) {
	r := &reader{units: units, where: map[string]Pos{}}
	v := &value{shape: s, name: "answer"}
	if !r.scalar(&yaml.Node{Kind: yaml.ScalarNode, Value: text}, s, v) || len(r.problems) > 0 {
		p := r.problems[0]
		return "", strings.TrimPrefix(strings.Join(split(p.Wrong+"\x00"+p.Right, "\x00"), "; "), "answer: ")
	}
	if s.kind == aLength {
		return text, "" // its own unit is kept
	}
	return v.raw, ""
}

// money says whether its first figure is an amount.
func (q Question) money() bool {
	return len(q.figures) > 0 && slices.ContainsFunc([]string{"price", "value", "per_hour"}, func(end string) bool {
		return strings.HasSuffix("/"+q.figures[0].keys[0], "/"+end)
	})
}

// amountOf reads an amount with or without its currency: "58", "EUR 58", "40 $".
func amountOf(text string) (out, wrong string) {
	m := moneyForm.FindStringSubmatch(text)
	if m == nil {
		return "", fmt.Sprintf("%q is not an amount; write 58, or 58 EUR", short(text))
	}
	whole, cents, ok := strings.Cut(strings.ReplaceAll(m[2], ",", "."), ".")
	if strings.Contains(cents, ".") || ok && len(cents) == 3 {
		return "", fmt.Sprintf("%q: what parts the thousands, and what the cents? Write it plainly, %s%s or %s.%s", short(text),
			whole, strings.ReplaceAll(cents, ".", ""), whole, strings.ReplaceAll(cents, ".", ""))
	}
	amount := whole
	if amount == "" {
		amount = "0"
	}
	if amount = strings.TrimLeft(amount, "0"); amount == "" {
		amount = "0"
	}
	if cents != "" {
		amount += "." + cents
	}
	if f, err := strconv.ParseFloat(amount, 64); err != nil || f > 1e6 {
		return "", fmt.Sprintf("%q is more than any truck costs", short(text))
	}
	currency := strings.TrimSpace(m[1] + m[3])
	if c, ok := currencies[strings.ToLower(currency)]; ok {
		currency = c
	}
	return strings.TrimSpace(amount + " " + currency), ""
}

// currencies are signs and words by which one is meant; what only says that the
// amount goes by the hour is none.
var currencies = map[string]string{"€": "EUR", "euro": "EUR", "euros": "EUR", "eur": "EUR", "£": "GBP", "-": "",
	"an hour": "", "/h": "", "per hour": ""}

// classForm is a tolerance class: a capital letter of a hole, a small one of a shaft.
var classForm = regexp.MustCompile(`^([A-Za-z]{1,2})\d{1,2}$`)

// classes reads the classes of the bore and the outside of a bush. ISO 286-1
// writes those of holes with capital letters, those of shafts with small ones.
func (q Question) classes(text string) ([]string, string) {
	out := []string{"", ""}
	if w := wordOf(strings.TrimSpace(text), []string{"measured", "sold"}); w != "" {
		return []string{w, w}, ""
	}
	for _, c := range strings.FieldsFunc(text, func(c rune) bool { return strings.ContainsRune(" ,;/x", c) }) {
		m := classForm.FindStringSubmatch(c)
		if m == nil {
			return nil, fmt.Sprintf("%q is no class; write F7 r6, measured, or sold", short(c))
		}
		at := 0
		if m[1][0] >= 'a' {
			at = 1
		}
		if out[at] != "" {
			return nil, "two classes of one diameter: a hole has a capital letter, an outside a small one (F7 r6)"
		}
		out[at] = c
	}
	return out, ""
}
