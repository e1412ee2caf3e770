package job

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"
)

func (r *reader) record(n *yaml.Node, s *shape, v *value) {
	v.by = map[string]*value{}
	for i := 0; i+1 < len(n.Content) && len(r.problems) <= 2*mostProblems; i += 2 {
		k, c := n.Content[i], n.Content[i+1]
		if k.Kind != yaml.ScalarNode || k.Tag == "!!merge" {
			continue // said by scan
		}
		known := s.find(k.Value)
		if known == nil {
			r.unknown(n, i, s, v)
			continue
		}
		if v.by[k.Value] != nil {
			continue // twice: said by scan
		}
		name := k.Value
		if s.ends {
			name = v.name + " " + name
		}
		if item := r.read(c, known.shape, join(v.path, k.Value), name); item != nil {
			v.by[k.Value] = item
			v.order = append(v.order, k.Value)
		} else {
			v.by[k.Value] = nil
		}
	}
	for _, k := range s.keys {
		if _, there := v.by[k.name]; k.must && !there {
			r.say(v.pos, fmt.Sprintf("%s is missing%s", k.name, inPlace(v)),
				fmt.Sprintf("write `%s:` (%s)", k.name, k.what))
		}
	}
}

func inPlace(v *value) string {
	if v.path == "" {
		return ""
	}
	return " in " + v.path
}

// unknown names the nearest known key, or the decimal comma that made a key
// out of the second half of a number.
func (r *reader) unknown(n *yaml.Node, i int, s *shape, v *value) {
	k, c := n.Content[i], n.Content[i+1]
	if digits(k.Value) && c.Kind == yaml.ScalarNode && c.Value == "" && i >= 2 {
		whole := n.Content[i-1].Value
		r.say(r.at(k), fmt.Sprintf("%s: %s,%s in braces is read as a number and a key", n.Content[i-2].Value, whole,
			k.Value),
			fmt.Sprintf("write %s.%s", whole, k.Value))
		return
	}
	known := s.names()
	right := "did you mean `" + nearest(k.Value, known) + "`?"
	if len(known) <= 14 {
		right += " The keys here are " + strings.Join(known, ", ")
	}
	r.say(r.at(k), fmt.Sprintf("unknown key %q%s", short(k.Value), inPlace(v)), right)
}

func (r *reader) named(n *yaml.Node, s *shape, v *value) {
	v.by = map[string]*value{}
	for i := 0; i+1 < len(n.Content) && len(r.problems) <= 2*mostProblems; i += 2 {
		k, c := n.Content[i], n.Content[i+1]
		if k.Kind != yaml.ScalarNode || k.Tag == "!!merge" || v.by[k.Value] != nil {
			continue
		}
		if item := r.read(c, s.item, join(v.path, k.Value), k.Value); item != nil {
			v.by[k.Value] = item
			v.order = append(v.order, k.Value)
		}
	}
}
