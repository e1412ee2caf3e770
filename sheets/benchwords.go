package sheets

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"rebush/plan/job"
)

// bench puts the words of a plan into those of the bench: the hole "front
// axle.left" is the front axle's left one, a micrometre is a thousandth of a
// millimetre, and a force is what scales show.
type bench struct {
	names *strings.Replacer // nil: no names
	u     units
}

// benchOf knows the holes of a job.
func benchOf(j *job.Job, u units) bench {
	if j == nil {
		return bench{u: u}
	}
	var pairs, names []string
	for _, s := range j.Shafts {
		names = append(names, s.Name)
		if c := sentence(s.Name); c != s.Name {
			names = append(names, c)
		}
	}
	for _, n := range names {
		l, r := n+".left", n+".right"
		for _, with := range []string{", ", " and "} {
			pairs = append(pairs, l+with+r, n+", left and right", r+with+l, n+", right and left")
		}
	}
	for _, f := range j.Chassis.Features {
		names = append(names, f.Name)
	}
	for _, n := range names {
		pairs = append(pairs, n+".left", n+", left", n+".right", n+", right")
	}
	return bench{names: strings.NewReplacer(pairs...), u: u}
}

// say puts a text into the words of the bench.
func (b bench) say(s string) string {
	if b.names != nil {
		s = b.names.Replace(s)
	}
	if strings.Contains(s, " um") || strings.Contains(s, " µm") {
		s = thousandths.ReplaceAllStringFunc(s, b.micron)
	}
	if strings.Contains(s, " N") {
		s = b.weighed(s)
	}
	return s
}

var (
	thousandths = regexp.MustCompile(`(\d[\d.]*)( to | and |, )?(\d[\d.]*)? [uµ]m\b`)
	forces      = regexp.MustCompile(`(HALT at )?(\d[\d.]*)( to )?(\d[\d.]*)? N\b`)
)

// micron writes thousandths of a millimetre in millimetres.
func (b bench) micron(s string) string {
	m := thousandths.FindStringSubmatch(s)
	return figures(m[1:], func(v float64, f string) string {
		places := 3
		if k := strings.IndexByte(f, '.'); k >= 0 {
			places += len(f) - k - 1
		}
		return strconv.FormatFloat(v/1000, 'f', places, 64)
	}) + " mm"
}

// figures writes one figure anew, or two with what stood between them: m holds
// the first, the word between, and the second or nothing.
func figures(m []string, write func(v float64, f string) string) string {
	out := ""
	for i, f := range []string{m[0], m[2]} {
		v, err := strconv.ParseFloat(f, 64)
		if err != nil {
			continue
		}
		if i == 1 {
			out += m[1]
		}
		out += write(v, f)
	}
	return out
}

// weighed puts what scales show beside the forces of a text; a torque is none,
// and what has it already is left.
func (b bench) weighed(s string) string {
	out, from := "", 0
	for _, at := range forces.FindAllStringIndex(s, -1) {
		rest := s[at[1]:]
		if strings.HasPrefix(rest, " mm") && b.u == "in" {
			out += s[from:at[0]] + b.torque(s[at[0]:at[1]])
			from = at[1] + len(" mm")
			continue
		}
		if strings.HasPrefix(rest, " mm") || strings.HasPrefix(rest, " (") || strings.HasPrefix(rest, "/") {
			continue
		}
		out += s[from:at[0]] + b.force(s[at[0]:at[1]])
		from = at[1]
	}
	return out + s[from:]
}

// torque writes newton millimetres as inch ounces.
func (b bench) torque(s string) string {
	m := forces.FindStringSubmatch(s)
	return figures(m[2:], func(v float64, _ string) string {
		return strconv.FormatFloat(math.Round(v*16/newtonsPerLb/25.4*10)/10, 'f', -1, 64)
	}) + " in oz"
}

// What a newton is on scales.
const (
	newtonsPerKg = 9.80665 // standard gravity, exact (ISO 80000-4)
	newtonsPerLb = 4.4482216152605
)

// force writes what scales show beside newtons; in inches it alone. What stops a
// press is not rounded up.
func (b bench) force(s string) string {
	m := forces.FindStringSubmatch(s)
	in := func(per float64) string {
		return figures(m[2:], func(v float64, _ string) string {
			v /= per
			switch {
			case m[1] != "":
				return fmt.Sprintf("%.0f", math.Floor(v))
			case v < 9.95:
				return strconv.FormatFloat(math.Round(v*10)/10, 'f', -1, 64)
			}
			return fmt.Sprintf("%.0f", v)
		})
	}
	switch b.u {
	case "in":
		return m[1] + in(newtonsPerLb) + " lb"
	case "both":
		return s + " (" + in(newtonsPerKg) + " kg, " + in(newtonsPerLb) + " lb)"
	}
	return s + " (" + in(newtonsPerKg) + " kg)"
}

// noMark leaves the signs of a program out of a text: the marks round a key, and
// in which row of a table a figure stands.
func noMark(s string) string {
	return tableRow.ReplaceAllString(strings.ReplaceAll(s, "`", ""), "")
}

var tableRow = regexp.MustCompile(` \([a-z_]+:\d+(?:, [a-z_]+:\d+)*\)`)
