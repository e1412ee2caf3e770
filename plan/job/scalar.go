package job

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"time"

	"gopkg.in/yaml.v3"

	"rebush/fits/dim"
)

var (
	plainNumber = regexp.MustCompile(`^[-+]?(\d+([.,]\d*)?|[.,]\d+)$`)
	exponent    = regexp.MustCompile(`^[-+]?[\d.,]+[eE][-+]?\d+`)
	leadingZero = regexp.MustCompile(`^[-+]?0\d`)
	forceForm   = regexp.MustCompile(`^\s*([-+]?[\d.,]+)\s*([A-Za-z]*)\s*$`)
)

// newtons per unit of force. 1 kgf is 9.80665 N and 1 lb 0.45359237 kg by
// definition.
var newtons = map[string]float64{
	"": 1, "N": 1, "n": 1, "kgf": 9.80665, "kg": 9.80665, "g": 0.00980665, "gf": 0.00980665,
	"lbf": 4.4482216152605, "lb": 4.4482216152605, "ozf": 0.27801385095378125, "oz": 0.27801385095378125,
}

// scalar reads a single value; false after saying what is wrong with it.
func (r *reader) scalar(n *yaml.Node, s *shape, v *value) bool {
	raw := strings.TrimSpace(n.Value)
	if raw == "" || n.Tag == "!!null" {
		r.nothing(n, s, v.name)
		return false
	}
	bad := func(right string) bool {
		r.say(v.pos, fmt.Sprintf("%s: %q is not %s", v.name, short(raw), s.describe()), right)
		return false
	}
	switch s.kind {
	case aText:
		if len(raw) > 400 {
			return bad("keep it under 400 letters")
		}
		v.raw = lineEnds.Replace(raw)
	case aWord:
		v.raw = strings.ToLower(raw)
		if b, ok := boolWord(raw); ok {
			v.raw = b
		}
		if now, ok := s.was[v.raw]; ok {
			v.raw = now
		}
		for _, w := range s.words {
			if strings.EqualFold(w, v.raw) {
				v.raw = w
				return true
			}
		}
		return bad(fmt.Sprintf("did you mean %q? It may be %s", nearest(raw, s.words), orList(s.words)))
	case aYesNo:
		b, ok := boolWord(raw)
		if !ok {
			return bad("write yes or no")
		}
		v.raw = b
	case aDate:
		if _, err := time.Parse("2006-01-02", raw); err != nil {
			return bad("write year-month-day of a day that exists, such as 2026-11-25")
		}
		v.raw = raw
	case aLength:
		return r.aLength(raw, s, v)
	case aNumber, aWhole:
		return r.aNumber(raw, s, v)
	case aForce:
		return r.aForce(raw, s, v)
	}
	return true
}

func boolWord(s string) (string, bool) {
	switch strings.ToLower(s) {
	case "yes", "true":
		return "yes", true
	case "no", "false":
		return "no", true
	}
	return "", false
}

// nothing says that a key has no value, and why where a comment ate it.
func (r *reader) nothing(n *yaml.Node, s *shape, name string) {
	right := "expected " + s.describe() + "; or take the key away"
	if n.Line >= 1 && n.Line <= len(r.lines) {
		line := r.lines[n.Line-1]
		from := min(max(n.Column-1, 0), len(line))
		// the empty value is reported at the key or just behind its colon
		last := name[strings.LastIndexByte(name, ' ')+1:]
		if i := strings.Index(line[from:], last+":"); i >= 0 && from == 0 {
			from += i
		}
		rest := line[from:]
		if i := strings.IndexByte(rest, '#'); i >= 0 && i+1 < len(rest) && rest[i+1] >= '0' && rest[i+1] <= '9' {
			no := strings.FieldsFunc(rest[i+1:], func(c rune) bool { return c < '0' || c > '9' })
			r.say(Pos{r.file, n.Line, from + i + 1},
				fmt.Sprintf("%s: #%s without quotes begins a comment, so nothing is left", name, no[0]),
				fmt.Sprintf("write \"#%s\" in quotes, or no %s", no[0], no[0]))
			return
		}
	}
	r.say(r.at(n), name+": no value is given", right)
}

func (r *reader) aLength(raw string, s *shape, v *value) bool {
	if exponent.MatchString(raw) || len(raw) > 40 {
		r.say(v.pos, fmt.Sprintf("%s: %q is not a length", v.name, short(raw)),
			"write it out, such as 3.16, 0.126 in or 1/8 in")
		return false
	}
	if leadingZero.MatchString(raw) && !strings.HasPrefix(strings.TrimLeft(raw, "+-"), "0.") &&
		!strings.HasPrefix(strings.TrimLeft(raw, "+-"), "0,") {
		r.say(v.pos, fmt.Sprintf("%s: %q begins with 0, which some read as another number", v.name, short(raw)),
			fmt.Sprintf("write %s, or 0.%s", strings.TrimLeft(raw, "0+-"), strings.TrimLeft(raw, "0+-")))
		return false
	}
	l, err := dim.Parse(raw, r.units)
	if err != nil {
		r.say(v.pos, fmt.Sprintf("%s: %s", v.name, err), "")
		return false
	}
	v.len, v.raw = l, raw
	if !r.plausible(l, raw, s, v) {
		return false
	}
	if s.lo != 0 || s.hi != 0 {
		r.note(v.name, l.Float(), v.pos)
	}
	return true
}

// plausible holds a length against the range of its key and, outside it, tries
// the other unit.
func (r *reader) plausible(l dim.Length, raw string, s *shape, v *value) bool {
	mm := l.Float()
	if math.Abs(mm) > 10000 {
		r.say(v.pos, fmt.Sprintf("%s: %s is far too large for a table-top truck", v.name, short(raw)),
			"check the figure and its unit")
		return false
	}
	if s.lo == 0 && s.hi == 0 || s.zero && mm == 0 {
		return true
	}
	bare := plainNumber.MatchString(raw)
	if bare {
		r.bare++
	}
	size := mm
	if s.signed {
		size = math.Abs(mm)
	}
	if size >= s.lo-1e-9 && size <= s.hi+1e-9 {
		return true
	}
	right := fmt.Sprintf("expected %s to %s", r.show(s.lo), r.show(s.hi))
	if s.zero {
		right += ", or 0"
	}
	other := false
	switch {
	case bare && r.units == dim.MM && inRange(size*25.4, s):
		other = true
		right = fmt.Sprintf("if it is inches write `%s in`; %s", raw, right)
	case bare && r.units == dim.Inch && inRange(size/25.4, s):
		other = true
		right = fmt.Sprintf("if it is millimetres write `%s mm`; %s", raw, right)
	case inRange(size/25.4, s):
		right = fmt.Sprintf("%s would fit: was it turned into mm twice? %s", r.show(size/25.4), right)
	case inRange(size*25.4, s):
		right = fmt.Sprintf("%s would fit: was it turned into inches twice? %s", r.show(size*25.4), right)
	}
	wrong := "is not plausible here"
	if mm <= 0 && !s.signed {
		wrong = "must be above zero"
	}
	told := len(r.problems)
	r.say(v.pos, fmt.Sprintf("%s: %s %s", v.name, r.shown(raw), wrong), right)
	if len(r.problems) > told {
		r.odd = append(r.odd, oddFigure{told, v.name, v.pos, raw, mm, s, other})
	}
	return false
}

func inRange(x float64, s *shape) bool { return x >= s.lo && x <= s.hi }

// show writes mm in the unit that rules the file.
func (r *reader) show(mm float64) string {
	if r.units == dim.Inch {
		return strconv.FormatFloat(math.Round(mm/25.4*1e4)/1e4, 'f', -1, 64) + " in"
	}
	return strconv.FormatFloat(math.Round(mm*1e4)/1e4, 'f', -1, 64) + " mm"
}

// shown is a length as typed, with its unit where it was bare.
func (r *reader) shown(raw string) string {
	if !plainNumber.MatchString(raw) {
		return raw
	}
	if r.units == dim.Inch {
		return raw + " in"
	}
	return raw + " mm"
}

func (r *reader) aNumber(raw string, s *shape, v *value) bool {
	bad := func(wrong, right string) bool {
		r.say(v.pos, fmt.Sprintf("%s: %s %s", v.name, short(raw), wrong), right)
		return false
	}
	for _, unit := range s.units {
		if cut, ok := strings.CutSuffix(raw, unit); ok && plainNumber.MatchString(strings.TrimSpace(cut)) {
			raw = strings.TrimSpace(cut)
			break
		}
	}
	switch {
	case !plainNumber.MatchString(raw) && s.isDegrees():
		return bad("is not "+s.describe(), "write a number: up is 90, down 270, along +x 0, the other way 180")
	case !plainNumber.MatchString(raw):
		return bad("is not "+s.describe(), "write a plain number such as 20 or 0.5")
	case leadingZero.MatchString(raw) && !strings.ContainsAny(raw, ".,"):
		return bad("begins with 0, which some read as another number", "write "+strings.TrimLeft(raw, "0+-"))
	}
	f, err := strconv.ParseFloat(strings.Replace(raw, ",", ".", 1), 64)
	if err != nil || math.IsInf(f, 0) || math.IsNaN(f) || math.Abs(f) > 1e12 {
		return bad("is not a number that can be used", "expected "+s.describe())
	}
	if s.kind == aWhole && f != math.Trunc(f) {
		return bad("is not a whole number", "expected "+s.describe()+s.among())
	}
	if (s.lo != 0 || s.hi != 0) && (f < s.lo || f > s.hi) {
		if s.lo == 0 && s.hi == 1 && f <= 100 && f > 1 {
			return bad("is not plausible here", fmt.Sprintf("it is a share, not percent: write %g; expected%s", f/100, s.among()))
		}
		return bad("is not plausible here", "expected"+s.among())
	}
	v.num, v.raw = f, raw
	return true
}

// among is the range of a number, written out; "" where it has none.
func (s *shape) among() string {
	if s.lo == 0 && s.hi == 0 {
		return ""
	}
	out := func(f float64) string { return strconv.FormatFloat(f, 'f', -1, 64) }
	return " " + out(s.lo) + " to " + out(s.hi)
}

func (r *reader) aForce(raw string, s *shape, v *value) bool {
	right := "write newtons, such as 2.5 N; kgf, gf, lbf and ozf are read too"
	m := forceForm.FindStringSubmatch(raw)
	if m == nil || !plainNumber.MatchString(m[1]) {
		r.say(v.pos, fmt.Sprintf("%s: %q is not a force", v.name, short(raw)), right)
		return false
	}
	per, ok := newtons[m[2]]
	if !ok {
		r.say(v.pos, fmt.Sprintf("%s: %q is not a unit of force", v.name, m[2]), right)
		return false
	}
	f, err := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
	if err != nil || f < 0 || f*per > s.hi {
		r.say(v.pos, fmt.Sprintf("%s: %q is not plausible here", v.name, short(raw)),
			fmt.Sprintf("expected 0 to %g N", s.hi))
		return false
	}
	v.num, v.raw = f*per, raw
	return true
}

// lineEnds makes one line of a text: what a name holds never begins a line of
// its own on paper or screen.
var lineEnds = strings.NewReplacer("\r\n", " ", "\n", " ", "\r", " ", "\v", " ", "\f", " ")
