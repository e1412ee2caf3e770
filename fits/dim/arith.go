package dim

import "github.com/shopspring/decimal"

// Add is the exact sum. A length that was not given makes the result not given;
// so it is for every operation here.
func (l Length) Add(m Length) Length { return both(l, m, l.mm.Add(m.mm)) }

// Sub is the exact difference l - m.
func (l Length) Sub(m Length) Length { return both(l, m, l.mm.Sub(m.mm)) }

// Half is the exact half.
func (l Length) Half() Length { return both(l, l, l.mm.Mul(half)) }

// Double is twice the length.
func (l Length) Double() Length { return l.Times(2) }

// Times is n times the length.
func (l Length) Times(n int64) Length { return both(l, l, l.mm.Mul(decimal.NewFromInt(n))) }

// Neg is the length with the other sign.
func (l Length) Neg() Length { return both(l, l, l.mm.Neg()) }

// Abs is the length without its sign.
func (l Length) Abs() Length { return both(l, l, l.mm.Abs()) }

// Sign is -1, 0 or +1; 0 where the length was not given.
func (l Length) Sign() int { return l.mm.Sign() }

// Cmp is -1 where l is less than m, 0 where they are equal, +1 where l is
// greater. A length that was not given counts as 0 here: ask Given first.
func (l Length) Cmp(m Length) int { return l.mm.Cmp(m.mm) }

// Less says whether l is less than m.
func (l Length) Less(m Length) bool { return l.Cmp(m) < 0 }

// Equal says whether both lengths are the same size, however they were typed.
// Two lengths that were not given are equal; one of them alone equals nothing.
func (l Length) Equal(m Length) bool { return l.given == m.given && l.mm.Equal(m.mm) }

// Min is the smallest of the lengths that were given, not given where none was.
func Min(lengths ...Length) Length { return pick(-1, lengths) }

// Max is the largest of the lengths that were given, not given where none was.
func Max(lengths ...Length) Length { return pick(1, lengths) }

func pick(sign int, lengths []Length) Length {
	var best Length
	for _, l := range lengths {
		if l.given && (!best.given || l.Cmp(best) == sign) {
			best = l
		}
	}
	return best
}

func both(l, m Length, mm decimal.Decimal) Length {
	if !l.given || !m.given {
		return Length{}
	}
	return OfMM(mm)
}
