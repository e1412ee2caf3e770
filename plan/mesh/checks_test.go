package mesh

import (
	"strconv"
	"strings"
	"testing"
)

// inputs are the "name=value" parts of a check row.
type inputs struct {
	t *testing.T
	m map[string]string
}

func readInputs(t *testing.T, text string) inputs {
	in := inputs{t, map[string]string{}}
	for _, part := range strings.Split(text, ";") {
		k, v, ok := strings.Cut(part, "=")
		if !ok {
			in.m[part] = part
			continue
		}
		in.m[strings.TrimSpace(k)] = v
	}
	return in
}

func parse(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatalf("%q is no number", s)
	}
	return v
}

func (in inputs) has(name string) bool { _, ok := in.m[name]; return ok }

// v reads a number; a name that is not there is 0. "2 per inch" and "14.25 in"
// keep their figure: the caller knows the unit.
func (in inputs) v(name string) float64 {
	s, ok := in.m[name]
	if !ok {
		return 0
	}
	v, err := strconv.ParseFloat(strings.Fields(s)[0], 64)
	if err != nil {
		in.t.Fatalf("%s=%q: %v", name, s, err)
	}
	return v
}

func (in inputs) need(name string) float64 {
	if !in.has(name) {
		in.t.Fatalf("no input %q in %v", name, in.m)
	}
	return in.v(name)
}

func (in inputs) point(name string) [2]float64 {
	s := strings.Split(strings.Trim(in.m[name], "()"), ",")
	if len(s) != 2 {
		in.t.Fatalf("%s=%q is no point", name, in.m[name])
	}
	x, err1 := strconv.ParseFloat(s[0], 64)
	y, err2 := strconv.ParseFloat(s[1], 64)
	if err1 != nil || err2 != nil {
		in.t.Fatalf("%s=%q is no point", name, in.m[name])
	}
	return [2]float64{x, y}
}

// inch turns inch inputs into mm.
func (in inputs) centre() float64 {
	if in.has("C") {
		return in.v("C") * 25.4
	}
	return in.need("a")
}
