package job

import (
	"fmt"
	"slices"
	"strings"
)

// Caps says how many things each list of a "job" or "shop" file may hold, "shafts
// 12, gears 16", in the order of the tables of keys. No truck and no shop comes
// near them; they keep a slip from running for hours.
func Caps(kind string) string {
	s := map[string]*shape{"job": jobShape, "shop": shopShape}[kind]
	if s == nil {
		return ""
	}
	var out []string
	s.caps(&out, map[*shape]bool{})
	return strings.Join(out, ", ")
}

func (s *shape) caps(out *[]string, seen map[*shape]bool) {
	if seen[s] {
		return
	}
	seen[s] = true
	for _, k := range s.keys {
		for _, f := range append([]*shape{k.shape}, k.shape.alts...) {
			if f.kind == aList && f.max > 2 {
				if text := fmt.Sprintf("%s %d", k.name, f.max); !slices.Contains(*out, text) { // left and right alike
					*out = append(*out, text)
				}
			}
		}
		for _, r := range k.shape.forms() {
			r.caps(out, seen)
		}
	}
}

// mostPoints is how many points a file of them may hold: as many as a job.
var mostPoints = jobShape.at("shafts/bores/left").find("probed").shape.forKind(func(k kind) bool { return k == aList }).max
