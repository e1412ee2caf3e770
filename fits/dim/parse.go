package dim

import (
	"fmt"
	"regexp"
	"strings"

	"github.com/shopspring/decimal"
)

// ways is how every error says what it would have read.
const ways = "write 3.2 mm, 0.126 in, 1/8 in, 5 thou, #31 or F"

// maxTyped is the longest text that can be a length.
const maxTyped = 80

var (
	plainRE    = regexp.MustCompile(`^([+-]?(?:[0-9]+[.,]?[0-9]*|[.,][0-9]+))\s*(.*)$`)
	fractionRE = regexp.MustCompile(`^([+-]?)(?:([0-9]+)(?:\s+|\s*-\s*))?([0-9]+)\s*/\s*([0-9]+)\s*(.*)$`)
	numberRE   = regexp.MustCompile(`^(?i:#|no\.?|number)\s*([0-9]+)$`)
	letterRE   = regexp.MustCompile(`^(?i:letter\s+)?([A-Za-z])$`)
	powerRE    = regexp.MustCompile(`^[+-]?[0-9.,]+[eE][+-]?[0-9]+`)
)

// spelled brings the marks that word processors and keyboards put in place of
// plain ones back to plain ones.
var spelled = strings.NewReplacer("″", `"`, "”", `"`, "“", `"`, "''", `"`, "−", "-", "–", "-",
	"\u00a0", " ", "\u202f", " ", "\u2044", "/", "½", " 1/2", "¼", " 1/4", "¾", " 3/4",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8")

// Parse reads a length as it is written at the bench: 3.2, 3.2 mm, 3,2, .125,
// 0.126 in, 0.126", 1/8 in, 1 1/8 in, 5 thou, 5 um, #31, no 31, F. The unit
// bare rules a plain number; a bare fraction is inch; a bare 31 is a number,
// never a drill. A sign is read: coordinates may be negative.
//
// The value is exact. Fractions have denominators 2, 4, 8 ... 128. An error
// says what would have been read.
func Parse(s string, bare Unit) (Length, error) {
	l, err := read(s, bare)
	if err != nil {
		return Length{}, err
	}
	l.typed = strings.TrimSpace(s)
	return l, nil
}

func read(s string, bare Unit) (Length, error) {
	if len(s) > maxTyped {
		return Length{}, fmt.Errorf("a text of %d characters is not a length; %s", len(s), ways)
	}
	t := strings.TrimSpace(spelled.Replace(s))
	if t == "" {
		return Length{}, fmt.Errorf("no length is written here; %s", ways)
	}
	if m := numberRE.FindStringSubmatch(t); m != nil {
		return byNumber(m[1])
	}
	if m := letterRE.FindStringSubmatch(t); m != nil {
		return byName(strings.ToUpper(m[1]))
	}
	if powerRE.MatchString(t) {
		return Length{}, fmt.Errorf("%q: powers of ten are not read here; write the figure out, as in 0.001 mm", s)
	}
	if m := fractionRE.FindStringSubmatch(t); m != nil {
		return readFraction(s, m)
	}
	if m := plainRE.FindStringSubmatch(t); m != nil {
		value, err := decimal.NewFromString(strings.TrimSuffix(strings.Replace(m[1], ",", ".", 1), "."))
		if err == nil {
			return withUnit(s, value, m[2], bare)
		}
	}
	return Length{}, notALength(s)
}

// readFraction has sign, whole, numerator, denominator and unit in m[1:].
func readFraction(s string, m []string) (Length, error) {
	top, err1 := decimal.NewFromString(m[3])
	bottom, err2 := decimal.NewFromString(m[4])
	if err1 != nil || err2 != nil || len(m[3]) > 4 || len(m[4]) > 4 {
		return Length{}, notALength(s)
	}
	den := int(bottom.IntPart())
	if den < 2 || den > 128 || den&(den-1) != 0 {
		if den == 0 {
			return Length{}, fmt.Errorf("%q divides by nothing; %s", s, ways)
		}
		near, _ := OfMM(top.Mul(mmPerInch).DivRound(bottom, 12)).NearestFraction(64)
		return Length{}, fmt.Errorf("%q: fractions are halves, 4ths, 8ths ... 128ths; the nearest is %s, or write a decimal", s, near)
	}
	value := top.Mul(exactInverse(den))
	if m[2] != "" {
		if top.Cmp(bottom) >= 0 {
			return Length{}, fmt.Errorf("%q: the fraction after a whole number is less than 1, as in 1 1/8 in", s)
		}
		whole, err := decimal.NewFromString(m[2])
		if err != nil {
			return Length{}, notALength(s)
		}
		value = value.Add(whole)
	}
	if m[1] == "-" {
		value = value.Neg()
	}
	return withUnit(s, value, m[5], Inch)
}

// exactInverse is 1/den for a power of two up to 128, which is a finite decimal.
func exactInverse(den int) decimal.Decimal {
	d := decimal.New(1, 0)
	for ; den > 1; den /= 2 {
		d = d.Mul(half)
	}
	return d
}

func withUnit(s string, value decimal.Decimal, unit string, bare Unit) (Length, error) {
	switch u := strings.ToLower(strings.TrimSpace(unit)); u {
	case "":
		if bare == Inch {
			return OfInch(value), nil
		}
		return OfMM(value), nil
	case "mm":
		return OfMM(value), nil
	case "in", "in.", "inch", "inches", `"`:
		return OfInch(value), nil
	case "thou":
		return OfInch(value.Shift(-3)), nil
	case "um", "µm", "μm", "micron", "microns":
		return OfUm(value), nil
	case "cm":
		return Length{}, fmt.Errorf("%q: centimetres are not used here; write %s", s, OfMM(value.Shift(1)))
	case "m":
		return Length{}, fmt.Errorf("%q: metres are not used here; write %s", s, OfMM(value.Shift(3)))
	case "ft", "'", "foot", "feet":
		return Length{}, fmt.Errorf("%q: feet are not used here; write %s in", s, value.Mul(decimal.New(12, 0)))
	case "mil", "mils":
		return Length{}, fmt.Errorf("%q: a mil is a thousandth of an inch to some and a millimetre to others; write %s thou or %s mm", s, value, value)
	}
	return Length{}, notALength(s)
}

// notALength names the nearest reading: the longest beginning of the text that
// is a length, else the longest ending, where there is a figure in it.
func notALength(s string) error {
	t := strings.TrimSpace(s)
	try := func(part string) (string, bool) {
		part = strings.TrimSpace(part)
		if part == t || !strings.ContainsAny(part, "0123456789") || strings.HasSuffix(part, ".") {
			return "", false
		}
		if _, ok := quick(part); !ok {
			return "", false
		}
		return part, true
	}
	for i := len(t) - 1; i > 0; i-- {
		if part, ok := try(t[:i]); ok {
			return fmt.Errorf("%q is not a length; did you mean %s? %s", s, part, ways)
		}
	}
	for i := 1; i < len(t); i++ {
		if part, ok := try(t[i:]); ok {
			return fmt.Errorf("%q is not a length; did you mean %s? %s", s, part, ways)
		}
	}
	return fmt.Errorf("%q is not a length; %s", s, ways)
}

// quick says whether a text is a plain number or number drill with a known
// unit, without searching for a better reading of it.
func quick(s string) (Length, bool) {
	if m := numberRE.FindStringSubmatch(s); m != nil {
		l, err := byNumber(m[1])
		return l, err == nil
	}
	m := plainRE.FindStringSubmatch(spelled.Replace(s))
	if m == nil {
		return Length{}, false
	}
	switch strings.ToLower(m[2]) {
	case "", "mm", "in", `"`, "thou", "um":
		return Length{}, true
	}
	return Length{}, false
}
