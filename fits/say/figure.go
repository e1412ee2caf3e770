package say

import (
	"math"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
)

// Figure is one figure of a sentence, or a row of them with one unit behind:
// "5.005 to 5.012 mm". It holds the exact values; places are those of the
// metric print.
type Figure struct {
	values  []float64
	between string // what stands between the figures of a row
	unit    string
	places  int
	style   style
	dir     dim.Direction
	other   float64 // what it must not print like, NaN none
}

// style is how a figure is written.
type style uint16

const (
	signed   style = 1 << iota // always with its sign
	about                      // no finer in inches than it was said
	bare                       // the unit was said just before
	rate                       // a length by time
	into                       // a row whose first goes up and whose last goes down
	trimmed                    // without zeros at the end, in mm
	inchInto                   // into, in inches alone
	inchUp                     // rounded up, in inches alone
	inchDown                   // and down
	steady                     // with no more places where it vanishes
	less                       // two pairs, printed as their difference
	halts                      // a force that stops a press, not rounded up on scales
)

// MM is a length in mm, printed to a number of places of mm; in inches to a
// ten-thousandth.
func MM(v float64, places int) Figure { return Num(v, places, "mm") }

// MMs are lengths in one breath: "5.005 to 5.012 mm".
func MMs(lo, hi float64, places int) Figure { return Row(places, "mm", " to ", lo, hi) }

// Limits are two limits in mm, rounded into each other, so that what lies
// inside the printed pair lies inside the true one.
func Limits(lo, hi float64, places int) Figure {
	f := MMs(lo, hi, places)
	f.style |= into
	return f
}

// Over are the limits by which a shaft is larger than its hole, both in mm, as the
// printed limits of the two (Limits) differ: who takes one from the other by hand
// finds this figure, in mm and in inches. Never less than nothing.
func Over(shaft, hole [2]float64, places int) Figure {
	f := Row(places, "mm", " to ", shaft[0], shaft[1], hole[0], hole[1])
	f.style |= into | less
	return f
}

// Um is a length in micrometres; in inches it is told in thou, to a place more.
func Um(v float64, places int) Figure { return Num(v, places, "um") }

// Num is a figure of any other unit; it reads the same in mm and inches.
func Num(v float64, places int, unit string) Figure {
	return Row(places, unit, "", v)
}

// Size is a length of the plan, to a number of places of mm, that goes to its
// last place the way its table prints it.
func Size(m dim.Gauged, places int) Figure {
	v, dir := m.Exact()
	return MM(v, places).Rounded(dir)
}

// Ends are the two limits of a pair of the plan, to a thousandth of a
// millimetre; in inches they are always rounded into the limits.
func Ends(r dim.MMRange) (lo, hi Figure) {
	lo, hi = Size(r.Min, 3), Size(r.Max, 3)
	lo.style |= inchUp
	hi.style |= inchDown
	return lo, hi
}

// Range is such a pair in one breath.
func Range(r dim.MMRange) Figure {
	lo, dir := r.Min.Exact()
	hi, _ := r.Max.Exact()
	f := MMs(lo, hi, 3)
	f.style |= inchInto
	if dir == dim.Up {
		f.style |= into
	}
	return f
}

// Row is several figures of one unit with words between them: " to ", " or ".
func Row(places int, unit, between string, values ...float64) Figure {
	return Figure{values: values, unit: unit, between: between, places: places, other: math.NaN()}
}

// Force is a force or a torque as the bench reads it: whole from 10 on, and
// nothing as nothing.
func Force(v float64, unit string) Figure {
	if v >= 9.95 || v < 0.05 {
		return Num(v, 0, unit)
	}
	return Num(v, 1, unit)
}

// Signed writes a plus as well.
func (f Figure) Signed() Figure { f.style |= signed; return f }

// About is for a figure after "about": in inches it is told no finer.
func (f Figure) About() Figure { f.style |= about; return f }

// Bare leaves the unit out where it was said just before: "leaves 0.41 mm,
// needs 1.25". Inches and thou are always said.
func (f Figure) Bare() Figure { f.style |= bare; return f }

// Rate is for a length by time, "90 mm a minute": in inches to a tenth.
func (f Figure) Rate() Figure { f.style |= rate; return f }

// Trim leaves zeros at the end out, in mm: a tool of 4.5 mm.
func (f Figure) Trim() Figure { f.style |= trimmed; return f }

// Steady keeps the places of its column where a figure is next to nothing.
func (f Figure) Steady() Figure { f.style |= steady; return f }

// Apart prints as many more places, three at the most, as it takes to tell the
// figure from another one that is set against it.
func (f Figure) Apart(other float64) Figure { f.other = other; return f }

// Halts is for the force at which a press is stopped: what scales show of it is
// rounded down.
func (f Figure) Halts() Figure { f.style |= halts; return f }

// Rounded prints in a direction instead of to the nearest.
func (f Figure) Rounded(d dim.Direction) Figure { f.dir = d; return f }

// String prints in mm.
func (f Figure) String() string { return f.in(dim.InMM, false) }

// In prints one figure in the units of the reader.
func (f Figure) In(u dim.Units) string { return f.in(u, false) }

// Number prints one figure in mm or in inches without its unit, for a place
// that says the unit once.
func (f Figure) Number(u dim.Units) string {
	return strings.TrimRight(f.In(u), " abcdefghijklmnopqrstuvwxyz")
}

// Text is the figure as a text of its own.
func (f Figure) Text() Text { return Text(f.token()) }

func (f Figure) length() bool { return f.unit == "mm" || f.unit == "um" }

// in prints the figure; inside says that it stands in brackets.
func (f Figure) in(u dim.Units, inside bool) string {
	for _, v := range f.values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return "unknown"
		}
	}
	if u&ofTheBench != 0 {
		return f.inBench(u&^ofTheBench, inside)
	}
	if u == dim.InMM || !f.length() {
		unit := f.unit
		if f.style&bare != 0 { // "at most 134" after "pulls with 150 MPa"
			unit = ""
		}
		return f.metric(unit)
	}
	inch := f.inch()
	if u == dim.InInch {
		return inch
	}
	mm := f.metric(f.unit)
	if inside {
		return mm + ", " + inch // no brackets in brackets
	}
	return mm + " (" + inch + ")"
}

func (f Figure) metric(unit string) string {
	list := f.decimals(1)
	return f.write(list, f.telling(list, f.places, 1), unit)
}

// telling is the number of places that tells a figure from the one it is set
// against.
func (f Figure) telling(list []decimal.Decimal, places int, by float64) int {
	if math.IsNaN(f.other) {
		return places
	}
	other := Figure{values: []float64{f.other}}.decimals(by)[0]
	for more := range 3 {
		if !f.round(list[0], 0, places+more).Equal(f.round(other, 0, places+more)) {
			return places + more
		}
	}
	return places + 3
}

// inch prints mm as inches and um as thou, from the exact values.
func (f Figure) inch() string {
	unit, places := "in", 4
	switch {
	case f.unit == "um":
		unit, places = "thou", min(3, f.places+1)
	case f.style&rate != 0:
		places = 1
	case f.style&about != 0:
		places = min(4, f.places+2)
	}
	switch {
	case f.style&inchInto != 0:
		f.style |= into
	case f.style&inchUp != 0:
		f.dir = dim.Up
	case f.style&inchDown != 0:
		f.dir = dim.Down
	}
	list := f.decimals(25.4)
	if f.style&steady == 0 && f.vanish(list, places) {
		places++
	}
	return f.write(list, f.telling(list, places, 25.4), unit)
}

// decimals are the values divided by a factor, to 9 significant digits.
func (f Figure) decimals(by float64) []decimal.Decimal {
	out := make([]decimal.Decimal, len(f.values))
	for i, v := range f.values {
		out[i] = decimal.NewFromFloat(dim.Sig9(v))
		if by != 1 {
			out[i] = out[i].DivRound(decimal.NewFromFloat(by), 12)
		}
		if out[i].Abs().LessThan(hair) {
			out[i] = decimal.Zero
		}
	}
	return out
}

// vanish says whether a figure would become nothing, or two become one.
func (f Figure) vanish(list []decimal.Decimal, places int) bool {
	for i, d := range list {
		if f.round(d, i, places).IsZero() && !d.IsZero() {
			return true
		}
		if i > 0 && (i != 2 || f.style&less == 0) && !d.Equal(list[i-1]) && f.round(d, i, places).Equal(f.round(list[i-1], i-1, places)) {
			return true
		}
	}
	return false
}

func (f Figure) round(d decimal.Decimal, i, places int) decimal.Decimal {
	dir := f.dir
	if f.style&into != 0 {
		dir = dim.Up
		if i%2 > 0 {
			dir = dim.Down
		}
	}
	// What is a hair off a whole place is that place, whatever the direction.
	near := d.Round(int32(places))
	if d.Sub(near).Abs().LessThan(hair) {
		return near
	}
	switch dir {
	case dim.Up:
		return d.RoundCeil(int32(places))
	case dim.Down:
		return d.RoundFloor(int32(places))
	}
	return near
}

// hair is what physics rounded to 9 digits may be off a typed figure.
var hair = decimal.New(1, -9)

func (f Figure) write(list []decimal.Decimal, places int, unit string) string {
	var b strings.Builder
	for i, d := range list {
		r := f.round(d, i, places)
		if f.style&less != 0 {
			if i > 1 {
				break
			}
			r = decimal.Max(decimal.Zero, r.Sub(f.round(list[3-i], 3-i, places)))
		}
		if i > 0 {
			b.WriteString(f.between)
		}
		if f.style&signed != 0 && r.Sign() >= 0 {
			b.WriteByte('+')
		}
		if r.IsZero() {
			r = decimal.Zero // never "-0.00"
		}
		text := r.StringFixed(int32(places))
		if f.style&trimmed != 0 && unit != "in" && unit != "thou" && strings.Contains(text, ".") {
			text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
		}
		b.WriteString(text)
	}
	if unit == "" {
		return b.String()
	}
	return b.String() + " " + unit
}

// A figure stands in its text between two control characters that no name may
// hold (clean takes them out).
const open, shut, part = '\x02', '\x03', '\x1f'

func (f Figure) token() string {
	fields := []string{f.unit, f.between, strconv.Itoa(f.places), strconv.Itoa(int(f.style)), strconv.Itoa(int(f.dir)), strconv.FormatFloat(f.other, 'g', -1, 64)}
	for _, v := range f.values {
		fields = append(fields, strconv.FormatFloat(v, 'g', -1, 64))
	}
	return string(open) + strings.Join(fields, string(part)) + string(shut)
}

func parse(s string) (Figure, bool) {
	fields := strings.Split(s, string(part))
	if len(fields) < 7 {
		return Figure{}, false
	}
	f := Figure{unit: fields[0], between: fields[1]}
	f.places, _ = strconv.Atoi(fields[2])
	n, _ := strconv.Atoi(fields[3])
	f.style = style(n)
	n, _ = strconv.Atoi(fields[4])
	f.dir = dim.Direction(n)
	f.other, _ = strconv.ParseFloat(fields[5], 64)
	for _, field := range fields[6:] {
		v, err := strconv.ParseFloat(field, 64)
		if err != nil {
			return Figure{}, false
		}
		f.values = append(f.values, v)
	}
	return f, true
}

// clean takes the marks of a figure out of words.
func clean(s string) string {
	if strings.IndexFunc(s, mark) < 0 {
		return s
	}
	return strings.Map(func(r rune) rune {
		if mark(r) {
			return -1
		}
		return r
	}, s)
}

func mark(r rune) bool { return r == open || r == shut || r == part }
