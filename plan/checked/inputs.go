package checked

import (
	"fmt"
	"strconv"
	"strings"

	"rebush/fits/dim"
)

// inputs are the "name=value" parts of a row. The first that is asked for and
// not there, or is no number, is kept as the error.
type inputs struct {
	by  map[string]string
	err error
}

func readInputs(text string) *inputs {
	in := &inputs{by: map[string]string{}}
	for _, part := range strings.Split(text, ";") {
		name, v, ok := strings.Cut(strings.TrimSpace(part), "=")
		if !ok {
			v = name
		}
		in.by[name] = v
	}
	return in
}

func (in *inputs) has(name string) bool { return in.by[name] != "" }

func (in *inputs) fail(format string, a ...any) {
	if in.err == nil {
		in.err = fmt.Errorf(format, a...)
	}
}

// v reads a number; a name that is not there is 0. "2 per inch" and "14.25 in"
// keep their figure: the caller knows the unit.
func (in *inputs) v(name string) float64 {
	if !in.has(name) {
		return 0
	}
	v, err := strconv.ParseFloat(strings.Fields(in.by[name])[0], 64)
	if err != nil {
		in.fail("%s=%q is no number", name, in.by[name])
	}
	return v
}

func (in *inputs) need(name string) float64 {
	if !in.has(name) {
		in.fail("the row gives no %s", name)
	}
	return in.v(name)
}

// first is the text of the first of the names that is there.
func (in *inputs) first(names ...string) string {
	for _, n := range names {
		if in.has(n) {
			return in.by[n]
		}
	}
	return ""
}

// mm is the first of the lengths in mm that is there.
func (in *inputs) mm(names ...string) dim.Length {
	l, err := dim.Parse(in.first(names...), dim.MM)
	if err != nil {
		in.fail("none of %s: %v", strings.Join(names, ", "), err)
	}
	return l
}

func (in *inputs) point(name string) (p [2]float64) {
	xy := strings.Split(strings.Trim(in.by[name], "()"), ",")
	if len(xy) != 2 {
		in.fail("%s=%q is no point", name, in.by[name])
		return p
	}
	for i, s := range xy {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			in.fail("%s=%q is no point", name, in.by[name])
		}
		p[i] = v
	}
	return p
}
