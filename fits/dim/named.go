package dim

import (
	"fmt"
	"sort"
	"strings"
	"sync"

	"github.com/shopspring/decimal"

	"rebush/fits/table"
)

// Named is a drill known by a number or a letter.
type Named struct {
	Name string // "#31", "F"
	Size Length
}

// named reads the built-in number and letter drills once. A name means the same
// size in every job file, so a shop's own table does not change these.
var named = sync.OnceValues(func() ([]Named, error) {
	lib := table.BuiltIn()
	var out []Named
	for _, name := range []string{"drills_letter", "drills_number"} {
		t, err := lib.Get(name)
		if err != nil {
			return nil, err
		}
		for _, row := range t.Rows {
			d, err := decimal.NewFromString(row.Get("size"))
			if err != nil || row.Get("unit") != "in" {
				return nil, fmt.Errorf("%s: %q %q is not a size in inch", row.Address(), row.Get("size"), row.Get("unit"))
			}
			out = append(out, Named{Name: row.Get("name"), Size: OfInch(d)})
		}
	}
	sort.SliceStable(out, func(i, k int) bool { return out[i].Size.Less(out[k].Size) })
	return out, nil
})

// NamedDrills lists the number and letter drills from the smallest.
func NamedDrills() []Named {
	list, err := named()
	if err != nil {
		panic("dim: the built-in drill tables: " + err.Error())
	}
	return append([]Named(nil), list...)
}

// byNumber finds a number drill; 05 is 5.
func byNumber(digits string) (Length, error) {
	if n := strings.TrimLeft(digits, "0"); n != "" {
		digits = n
	}
	return byName("#" + digits)
}

func byName(name string) (Length, error) {
	list, err := named()
	if err != nil {
		return Length{}, err
	}
	for _, n := range list {
		if n.Name == name {
			return n.Size, nil
		}
	}
	return Length{}, fmt.Errorf("there is no drill %s; number drills run from #97 to #1, letters from A to Z", name)
}

// NearestFraction is the nearest multiple of 1/denominator inch, its name in
// lowest terms ("1/8 in", "1 1/8 in") and its exact length; a half goes away
// from zero. The denominator is 1, 2, 4 ... 128; any other, or a length that
// was not given, returns "" and a length not given.
func (l Length) NearestFraction(denominator int) (name string, exact Length) {
	if !l.given || denominator < 1 || denominator > 128 || denominator&(denominator-1) != 0 {
		return "", Length{}
	}
	den := int64(denominator)
	steps := l.mm.Mul(decimal.NewFromInt(den)).DivRound(mmPerInch, 0)
	exact = OfInch(steps.Mul(exactInverse(denominator)))
	whole, rest := steps.Abs().QuoRem(decimal.NewFromInt(den), 0)
	sign := ""
	if steps.Sign() < 0 {
		sign = "-"
	}
	top := rest.IntPart()
	for top > 0 && top%2 == 0 {
		top, den = top/2, den/2
	}
	switch {
	case top == 0:
		return fmt.Sprintf("%s%s in", sign, whole), exact
	case whole.IsZero():
		return fmt.Sprintf("%s%d/%d in", sign, top, den), exact
	}
	return fmt.Sprintf("%s%s %d/%d in", sign, whole, top, den), exact
}

// NearestNamed is the nearest size that has a name: 64ths of an inch up to 1 in,
// then letters, then numbers; of two equally near the first in that order. A
// length that was not given returns "".
func (l Length) NearestNamed() (name string, exact Length) {
	if !l.given {
		return "", Length{}
	}
	inRange := Max(Must("1/64 in"), Min(Must("1 in"), l))
	name, exact = inRange.NearestFraction(64)
	letters := func(n Named) bool { return n.Name[0] != '#' }
	for _, want := range []bool{true, false} {
		for _, n := range NamedDrills() {
			if letters(n) == want && n.Size.Sub(l).Abs().Less(exact.Sub(l).Abs()) {
				name, exact = n.Name, n.Size
			}
		}
	}
	return name, exact
}
