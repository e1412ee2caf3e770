package job

import (
	"strconv"
	"strings"
)

// kind is what sort of value a key takes.
type kind int

const (
	aText    kind = iota // any words
	aWord                // one of a list of words
	aYesNo               // yes, no, true, false
	aLength              // mm or inch, with or without a unit
	aNumber              // a plain number
	aWhole               // a whole number
	aForce               // newtons, or a number with N, kgf, lbf, ozf, gf
	aDate                // YYYY-MM-DD
	aList                // [...]
	aRecord              // known keys
	aNamed               // names of the reader's choosing, one shape for all
	anEither             // a scalar, a list or a record, each with its own shape
)

// shape is what a key may hold. The reader, the JSON Schema, the hash and what
// is stored all walk the same shapes, so that what one accepts the others know.
// They are made from the tables of keys; see keys.go.
type shape struct {
	kind   kind
	words  []string          // of aWord
	units  []string          // of aNumber: units that may stand behind it and change nothing
	was    map[string]string // of aWord: words of older files, and what each is called now; nothing offers them
	lo, hi float64           // plausible range: mm of a length, else the number itself; both 0: none
	signed bool              // the range is of the absolute value
	zero   bool              // 0 is allowed besides the range
	item   *shape            // of aList and aNamed
	min    int               // of aList
	max    int               // of aList, 0: no limit
	keys   []key             // of aRecord
	alts   []*shape          // of anEither
	ends   bool              // of aRecord: left and right of one thing
	say    string            // for aList: what the items are ("x and y")
	stored []string          // fields that take the value, or one for each item; none: see keep
	truth  string            // of a yes-or-no field: the word that is yes
	byHand bool              // stored by bind.go or its neighbours
}

// key is one key of a record.
type key struct {
	name      string
	shape     *shape
	what      string
	must      bool
	otherwise *value // where it is not given, nil: nothing
	unused    string // why the plan does not use it, "" where it does
}

// place is a coordinate: checked against the outline, not by a range.
func place() *shape { return &shape{kind: aLength} }

// degrees accepts a turn either way.
func degrees() *shape {
	return &shape{kind: aNumber, lo: -360, hi: 360, units: []string{"°", "degrees", "degree", "deg"}}
}

// isDegrees says whether a number is a direction.
func (s *shape) isDegrees() bool { return s.kind == aNumber && s.lo == -360 && s.hi == 360 }

func list(min, max int, item *shape, say string) *shape {
	return &shape{kind: aList, item: item, min: min, max: max, say: say}
}

func either(alts ...*shape) *shape { return &shape{kind: anEither, alts: alts} }

// ends is one length for both ends of a shaft, or one for each.
func ends(within string) *shape {
	s := &shape{kind: aLength}
	s.within(within)
	return either(s, &shape{kind: aRecord, ends: true, keys: []key{
		{name: "left", shape: s, what: "at the left end"}, {name: "right", shape: s, what: "at the right end"}}})
}

// within sets the plausible range: "0.8..16", "0.8..16 or 0", or "+-0.3..120",
// which judges a length by its absolute value and lets 0 pass.
func (s *shape) within(text string) {
	text, s.signed = strings.CutPrefix(text, "+-")
	text, s.zero = strings.CutSuffix(text, " or 0")
	s.zero = s.zero || s.signed
	lo, hi, ok := strings.Cut(text, "..")
	var bad1, bad2 error
	if ok {
		s.lo, bad1 = strconv.ParseFloat(lo, 64)
		s.hi, bad2 = strconv.ParseFloat(hi, 64)
	}
	if ok == (text == "") || bad1 != nil || bad2 != nil {
		panic("job: " + text + " is no range of a key")
	}
}

// count sets how many items a list may have: "0..20", or "1.." without a limit.
func (s *shape) count(text string) {
	lo, hi, _ := strings.Cut(text, "..")
	s.min, _ = strconv.Atoi(lo) // neither is given: any number
	s.max, _ = strconv.Atoi(hi)
}

// may sets the words: "press|cap|strap=cap", where strap means cap.
func (s *shape) may(text string) {
	for _, w := range strings.Split(text, "|") {
		if was, now, older := strings.Cut(w, "="); older {
			if s.was == nil {
				s.was = map[string]string{}
			}
			s.was[was] = now
			continue
		}
		s.words = append(s.words, w)
	}
}

// keepIn sets where the value is stored: "Widest", "Low High", "Cap if cap".
func (s *shape) keepIn(text string) {
	if s.byHand = text == "by hand"; s.byHand {
		return
	}
	text, word, ok := strings.Cut(text, " if ")
	s.stored, s.truth = strings.Fields(text), "yes"
	if ok {
		s.truth = word
	}
	for _, a := range s.alts { // of ends
		a.stored = s.stored
	}
}

// names lists the keys of a record in table order.
func (s *shape) names() []string {
	out := make([]string, len(s.keys))
	for i, k := range s.keys {
		out[i] = k.name
	}
	return out
}

// find returns the key of a record, nil where there is none of that name.
func (s *shape) find(name string) *key {
	for i := range s.keys {
		if s.keys[i].name == name {
			return &s.keys[i]
		}
	}
	return nil
}

// forKind picks the form of an either-shape that suits a node.
func (s *shape) forKind(fits func(kind) bool) *shape {
	if s.kind != anEither {
		return s
	}
	for _, a := range s.alts {
		if fits(a.kind) {
			return a
		}
	}
	return s.alts[0]
}

// at is the shape of a key by its path, through the items of lists:
// "shafts/bores/left/widest".
func (s *shape) at(path string) *shape {
	for _, name := range strings.Split(path, "/") {
		if s.item != nil {
			s = s.item
		}
		s = s.forKind(func(k kind) bool { return k == aRecord }).find(name).shape
	}
	return s
}
