package job

import (
	"fmt"
	"math"
	"sort"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"rebush/fits/dim"
)

// figures are the lengths of a file as they are read: by their keys, and those
// that lie outside the range of theirs.
type figures struct {
	good map[string][]figure
	odd  []oddFigure
	bare int // lengths without a unit whose key has a range
}

type figure struct {
	mm  float64
	pos Pos
}

// oddFigure is a length outside its range, and the problem that tells it.
type oddFigure struct {
	problem int
	key     string
	pos     Pos
	raw     string
	mm      float64
	shape   *shape
	other   bool // a bare number that the other unit would bring into the range
}

// alike are keys that measure one diameter: of a hole and what turns in it.
var alike = map[string]string{"widest": "hole", "narrowest": "hole", "journal": "hole", "unworn": "hole", "must_pass": "hole",
	"goes": "hole", "stops": "hole", "journal left": "hole", "journal right": "hole", "unworn left": "hole",
	"unworn right": "hole", "must_pass left": "hole", "must_pass right": "hole", "metal": "edge", "away": "edge"}

func (f *figures) note(key string, mm float64, pos Pos) {
	if f.good == nil {
		f.good = map[string][]figure{}
	}
	f.good[key] = append(f.good[key], figure{mm, pos})
	if kin := alike[key]; kin != "" {
		f.good[kin] = append(f.good[kin], figure{mm, pos})
	}
}

// settle looks at the odd lengths of a file together: most of them in the other
// unit are one mistake, and a single one may have lost its decimal point.
func (r *reader) settle(root *yaml.Node, s *shape, v *value) *value {
	if v := r.otherUnits(root, s); v != nil {
		return v
	}
	for _, o := range r.odd {
		if right := r.shifted(o); right != "" {
			r.problems[o.problem].Right = right
		}
	}
	return v
}

// leastSlips is how many lengths tell that a whole file is in the other unit.
const leastSlips = 4

// otherUnits reads a file anew in the other unit where that is what nearly all of
// its odd lengths want, and tells that one mistake; nil where it is not.
func (r *reader) otherUnits(root *yaml.Node, s *shape) *value {
	slips := 0
	var first oddFigure
	for _, o := range r.odd {
		if o.other {
			if slips++; slips == 1 {
				first = o
			}
		}
	}
	if slips < leastSlips || 3*slips < r.bare {
		return nil
	}
	again := &reader{file: r.file, lines: r.lines, where: map[string]Pos{}, units: otherUnit(r.units), healed: r.healed, other: r.other}
	v := again.read(root, s, "", "")
	left := 0
	for _, o := range again.odd {
		if o.other {
			left++
		}
	}
	if 4*left > slips {
		return nil
	}
	pos, said := r.at(root), fmt.Sprintf("no units are given, so that bare numbers are read as %s", unitName(r.units))
	for i := 0; i+1 < len(root.Content); i += 2 {
		if root.Content[i].Value == "units" {
			pos, said = r.at(root.Content[i]), "units: "+root.Content[i+1].Value
		}
	}
	problems := append(r.before, Problem{Pos: pos,
		Wrong: fmt.Sprintf("%s: %d of %d lengths fit in %s alone, the first on line %d (%s: %s)", said, slips, r.bare, unitName(again.units),
			first.pos.Line, first.key, first.raw),
		Right: fmt.Sprintf("write units: %s, or give each length its own unit", unitName(again.units))})
	again.problems = append(problems, again.problems...)
	again.before = r.before
	for _, o := range again.odd {
		if right := again.shifted(o); right != "" {
			again.problems[o.problem+len(problems)].Right = right
		}
	}
	*r = *again
	return v
}

func unitName(u dim.Unit) string {
	if u == dim.Inch {
		return "in"
	}
	return "mm"
}

func otherUnit(u dim.Unit) dim.Unit {
	if u == dim.Inch {
		return dim.MM
	}
	return dim.Inch
}

// shifted is what is right instead of a length whose decimal point is lost or in
// the wrong place, judged by figures of the same kind elsewhere in the file; ""
// where another unit comes nearer to them, or there are none.
func (r *reader) shifted(o oddFigure) string {
	kin := r.good[o.key]
	if len(kin) == 0 {
		kin = r.good[alike[o.key]]
	}
	if len(kin) == 0 || !plainNumber.MatchString(o.raw) {
		return ""
	}
	sorted := append([]figure(nil), kin...)
	sort.SliceStable(sorted, func(i, k int) bool { return sorted[i].mm < sorted[k].mm })
	ref := sorted[len(sorted)/2]
	off := func(mm float64) float64 {
		if mm <= 0 || ref.mm <= 0 || !inRange(mm, o.shape) {
			return math.Inf(1)
		}
		return math.Abs(math.Log(mm / ref.mm))
	}
	best, least := 0, math.Log(1.6)
	for _, places := range []int{-1, -2, -3, 1, 2, 3} {
		if d := off(o.mm * math.Pow(10, float64(places))); d < least {
			best, least = places, d
		}
	}
	if best == 0 || off(o.mm/25.4) < least || off(o.mm*25.4) < least {
		return ""
	}
	near := math.Inf(1)
	for _, f := range kin { // the one that bears it out most
		if d := math.Abs(math.Log(o.mm * math.Pow(10, float64(best)) / f.mm)); d < near {
			ref, near = f, d
		}
	}
	return pointAsked(o.raw, best) + fmt.Sprintf(" The same is %s on line %d", r.show(ref.mm), ref.pos.Line)
}

// pointAsked asks about the decimal point of a bare number that would fit with it
// moved by that many places.
func pointAsked(raw string, places int) string {
	plain := strings.Replace(raw, ",", ".", 1)
	f, _ := strconv.ParseFloat(plain, 64)
	would := strconv.FormatFloat(f*math.Pow(10, float64(places)), 'f', max(0, decimals(plain)-places), 64)
	if strings.Contains(plain, ".") {
		return would + " would fit: is the decimal point in the wrong place?"
	}
	return would + " would fit: is the decimal point lost?"
}

func decimals(s string) int {
	if i := strings.IndexByte(s, '.'); i >= 0 {
		return len(s) - i - 1
	}
	return 0
}

// pointShifted is what to ask of a place that would do with the decimal point of
// its x or its y moved by one or two; "" where none would.
func (r *reader) pointShifted(v *value, fits func([2]float64) bool) (ask string) {
	if len(v.list) != 2 {
		return ""
	}
	at := [2]float64{v.list[0].len.Float(), v.list[1].len.Float()}
	for axis, item := range v.list {
		if !plainNumber.MatchString(item.raw) {
			continue
		}
		for _, places := range []int{-1, -2} {
			q := at
			q[axis] *= math.Pow(10, float64(places))
			if at[axis] < 10 || !fits(q) {
				continue
			}
			if ask == "" {
				ask = pointAsked(item.raw, places)
			}
			break
		}
	}
	return ask
}

// plausiblePlace tells places at which a hole may stand: inside the outline, and
// near the hole in the other plate.
func (j *Job) plausiblePlace(b *Bore, radius float64) func([2]float64) bool {
	return func(q [2]float64) bool {
		s := j.shaft(b.Shaft)
		other := s.On(Left)
		if b.Side == Left {
			other = s.On(Right)
		}
		if other == nil {
			return false
		}
		p, _, ok := other.rough()
		return ok && j.Chassis.inside(q, radius) && math.Hypot(p[0]-q[0], p[1]-q[1]) < 1.5
	}
}

// shiftWithin is what to ask of a bare number that does not lie within low to high,
// mm, and would with its point moved or in the other unit; "" where it would not.
func (r *reader) shiftWithin(v *value, low, high float64) string {
	if v.shape.kind != aLength || !plainNumber.MatchString(v.raw) || low <= 0 || high > 9*low {
		return "" // so wide that a moved point tells nothing
	}
	mm := v.len.Float()
	within := func(x float64) bool { return x > 0 && x >= low && x <= high }
	for _, places := range []int{-1, -2, 1, 2} {
		if within(mm * math.Pow(10, float64(places))) {
			return pointAsked(v.raw, places)
		}
	}
	return ""
}
