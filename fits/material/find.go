package material

import (
	"fmt"
	"strings"
	"unicode"

	"rebush/fits/spelling"
)

// Find returns the material of a name or alias. Capitals, spaces and stops do
// not count, and a temper may follow or lead: "brass sheet, half hard". A name
// that is not known, or too wide, is an error that says what could be meant.
func (r *Registry) Find(name string) (*Material, error) {
	k := key(name)
	if k == "" {
		return nil, fmt.Errorf("no material is named; write one, for example zinc die casting")
	}
	if to := r.byKey[k]; to != nil {
		return r.one(name, to)
	}
	if m, err := r.tempered(name); m != nil || err != nil {
		return m, err
	}
	near := r.nearest(k)
	for _, word := range strings.Fields(name) {
		if w := key(word); near == "" && len(w) > 3 {
			near = r.nearest(w)
		}
	}
	if near != "" {
		return nil, fmt.Errorf("no material %q is known; the nearest is %q", clipped(name), near)
	}
	return nil, fmt.Errorf("no material %q is known", clipped(name))
}

// one copies the material that a name stands for.
func (r *Registry) one(name string, to []string) (*Material, error) {
	if len(to) > 1 {
		return nil, fmt.Errorf("%q may be %s: write which", name, strings.Join(to[:len(to)-1], ", ")+" or "+to[len(to)-1])
	}
	m := *r.byName[to[0]]
	m.Asked = name
	return &m, nil
}

// tempered takes the words of a temper off the end or the head of a name.
// Longer words first: "half hard" before "hard".
func (r *Registry) tempered(name string) (*Material, error) {
	k, best, rest := key(name), "", ""
	for word := range r.temper {
		for _, left := range []string{strings.TrimSuffix(k, word), strings.TrimPrefix(k, word)} {
			if left != k && r.byKey[left] != nil && len(word) > len(best) {
				best, rest = word, left
			}
		}
	}
	if best == "" {
		return nil, nil
	}
	m, err := r.one(name, r.byKey[rest])
	if err != nil {
		return nil, err
	}
	for _, v := range m.values {
		if v.Temper == r.temper[best] {
			m.Temper = v.Temper
			return m, nil
		}
	}
	return nil, fmt.Errorf("no figures are known for %s %s; leave the temper off", m.Name, r.temper[best])
}

// key is a name without capitals, spaces and stops, in one spelling.
func key(name string) string {
	var b strings.Builder
	for _, c := range strings.ToLower(name) {
		if unicode.IsLetter(c) || unicode.IsDigit(c) {
			b.WriteRune(c)
		}
	}
	s := b.String()
	for _, w := range [][2]string{{"aluminum", "aluminium"}, {"grayiron", "greyiron"}, {"gray", "grey"}, {"bushing", "bush"}} {
		s = strings.ReplaceAll(s, w[0], w[1])
	}
	return s
}

// clipped keeps a name to what fits a line.
func clipped(name string) string {
	if r := []rune(name); len(r) > 40 {
		return string(r[:40]) + "..."
	}
	return name
}

// nearest is the known name with the fewest letters to change; "" where more than
// a third of them would have to: by spelling alone no metal is suggested that is
// another one.
func (r *Registry) nearest(k string) string {
	best, least := "", 1+min(len([]rune(k)), 64)/3
	for _, name := range r.names {
		if d := spelling.Distance(k, key(name)); d <= least && (best == "" || d < least) {
			best, least = name, d
		}
	}
	return best
}
