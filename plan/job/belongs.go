package job

import (
	"fmt"
	"strings"
)

// belongs says where a key belongs that is known at another level, or in the
// other kind of file; "" where it is known nowhere.
func (r *reader) belongs(key string) string {
	n := len(r.above) - 1
	for up := 1; up <= n; up++ {
		at := r.above[n-up]
		if at.shape.find(key) == nil {
			continue
		}
		beside := r.above[n-up+1].key
		switch {
		case up == n:
			return fmt.Sprintf("`%s` belongs at the left margin, beside `%s`", key, beside)
		case up == 1:
			return fmt.Sprintf("`%s` belongs one level up, beside `%s`", key, beside)
		}
		return fmt.Sprintf("`%s` belongs %d levels up, beside `%s`", key, up, beside)
	}
	if places := under(r.above[n].shape, key, nil); len(places) > 0 {
		return fmt.Sprintf("`%s` belongs under %s", key, orPlaces(places))
	}
	kind := map[*shape]string{jobShape: "the job file", shopShape: "the shop file"}[r.other]
	if r.other == nil {
		return ""
	}
	if r.other.find(key) != nil {
		return fmt.Sprintf("`%s` belongs in %s", key, kind)
	}
	return ""
}

// elsewhere says where in the file else a key is known, "" nowhere.
func (r *reader) elsewhere(key string) string {
	if places := under(r.above[0].shape, key, nil); len(places) > 0 {
		return fmt.Sprintf("; `%s` belongs under %s", key, orPlaces(places))
	}
	return ""
}

// orPlaces writes up to three places.
func orPlaces(places []string) string {
	more := ""
	if len(places) > 3 {
		places, more = places[:3], " and others"
	}
	return orList(places) + more
}

// under lists the records below a shape that know a key, the nearest first.
func under(s *shape, key string, path []string) (out []string) {
	type place struct {
		s    *shape
		path []string
	}
	next := []place{{s, path}}
	seen := map[*shape]bool{}
	for len(next) > 0 {
		p := next[0]
		next = next[1:]
		for _, f := range p.s.forms() {
			for _, k := range f.keys {
				here := append(append([]string(nil), p.path...), k.name)
				for _, inner := range k.shape.forms() {
					if inner.kind != aRecord || inner.ends || seen[inner] || len(here) > 6 {
						continue
					}
					seen[inner] = true
					if inner.find(key) != nil {
						out = append(out, "`"+strings.Join(here, ": ")+"`")
					}
					next = append(next, place{inner, here})
				}
			}
		}
	}
	return out
}

// forms are the records that a value of a shape may be, through lists and names.
func (s *shape) forms() []*shape {
	switch s.kind {
	case aRecord:
		return []*shape{s}
	case aList, aNamed:
		return s.item.forms()
	case anEither:
		var out []*shape
		for _, a := range s.alts {
			out = append(out, a.forms()...)
		}
		return out
	}
	return nil
}
