package job

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

// shape is what a key may hold. The reader, the JSON Schema and the hash all
// walk the same shapes, so that what one accepts the others know.
type shape struct {
	kind   kind
	words  []string // of aWord
	lo, hi float64  // plausible range: mm of a length, else the number itself; both 0: none
	signed bool     // the range is of the absolute value
	zero   bool     // 0 is allowed besides the range
	item   *shape   // of aList and aNamed
	min    int      // of aList
	max    int      // of aList, 0: no limit
	keys   []key    // of aRecord
	alts   []*shape // of anEither
	ends   bool     // of aRecord: left and right of one thing
	say    string   // for aList: what the items are ("x and y")

	// was is of aWord: words of older files, and what each is called now.
	was map[string]string
}

// key is one key of a record.
type key struct {
	name  string
	shape *shape
	what  string
	must  bool
}

func need(k key) key { k.must = true; return k }

func text() *shape  { return &shape{kind: aText} }
func yesNo() *shape { return &shape{kind: aYesNo} }
func date() *shape  { return &shape{kind: aDate} }
func force() *shape { return &shape{kind: aForce, lo: 0.01, hi: 100000} }
func whole(lo, hi float64) *shape {
	return &shape{kind: aWhole, lo: lo, hi: hi}
}
func word(words ...string) *shape { return &shape{kind: aWord, words: words} }

// once also reads a word that older files use; it means now, and nothing offers
// it to a writer.
func (s *shape) once(was, now string) *shape {
	c := *s
	c.was = map[string]string{was: now}
	return &c
}

// length is a length whose plausible values run from lo to hi mm. Where hi is
// less than 25.4 times lo, an inch figure read as mm, or the reverse, always
// falls outside.
func length(lo, hi float64) *shape { return &shape{kind: aLength, lo: lo, hi: hi} }

// place is a coordinate: checked against the outline, not by a range.
func place() *shape { return &shape{kind: aLength, lo: 0, hi: 0} }

// orZero allows 0 besides the range.
func orZero(s *shape) *shape { c := *s; c.zero = true; return &c }

// eitherSign judges the range by the absolute value.
func eitherSign(s *shape) *shape { c := *s; c.signed = true; c.zero = true; return &c }

func number(lo, hi float64) *shape { return &shape{kind: aNumber, lo: lo, hi: hi} }

// degrees accepts a turn either way.
func degrees() *shape { return &shape{kind: aNumber, lo: -360, hi: 360} }

// isDegrees says whether a number is a direction.
func (s *shape) isDegrees() bool { return s.kind == aNumber && s.lo == -360 && s.hi == 360 }

func list(min, max int, item *shape, say string) *shape {
	return &shape{kind: aList, item: item, min: min, max: max, say: say}
}
func point() *shape                { return list(2, 2, place(), "x and y") }
func record(keys ...key) *shape    { return &shape{kind: aRecord, keys: keys} }
func named(item *shape) *shape     { return &shape{kind: aNamed, item: item} }
func either(alts ...*shape) *shape { return &shape{kind: anEither, alts: alts} }
func pair(item *shape) *shape      { return list(2, 2, item, "low and high") }
func ends(lo, hi float64) *shape   { return eachEnd(length(lo, hi)) }
func eachEnd(s *shape) *shape {
	both := record(key{"left", s, "at the left end", false}, key{"right", s, "at the right end", false})
	both.ends = true
	return either(s, both)
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
