package job

import (
	"fmt"
	"regexp"
	"strings"

	"gopkg.in/yaml.v3"

	"rebush/fits/spelling"
)

// keyInBraces is a key and its value without the space that parts them.
var keyInBraces = regexp.MustCompile(`^([a-z_]+):(\S.*)$`)

func (r *reader) record(n *yaml.Node, s *shape, v *value) {
	v.by = map[string]*value{}
	r.above = append(r.above, level{s, v.name})
	defer func() { r.above = r.above[:len(r.above)-1] }()
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
}

// complete tells what has to be given under a value, and is not.
func (r *reader) complete(v *value) {
	if v == nil || r.gaps {
		return
	}
	if v.shape.kind == aRecord {
		for _, k := range v.shape.keys {
			if k.must && v.missing(k.name) {
				r.say(v.pos, fmt.Sprintf("%s is missing%s", k.name, inPlace(v)),
					fmt.Sprintf("write `%s:` (%s)", k.name, k.what))
			}
		}
	}
	for _, item := range v.list {
		r.complete(item)
	}
	for _, name := range v.order {
		r.complete(v.by[name])
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
	if m := keyInBraces.FindStringSubmatch(k.Value); m != nil && s.find(m[1]) != nil {
		r.say(r.at(k), fmt.Sprintf("%s: no space stands behind the colon", short(k.Value)),
			fmt.Sprintf("write `%s: %s`", m[1], short(m[2])))
		v.by[m[1]] = nil
		return
	}
	known := s.names()
	near := nearest(k.Value, known)
	right := r.belongs(k.Value)
	if right == "" || spelling.Distance(k.Value, near) <= 1 {
		right = "did you mean `" + near + "`?"
		if len(known) <= 14 {
			right += " The keys here are " + strings.Join(known, ", ")
		}
		if spelling.Distance(k.Value, near) > 2 {
			right += r.elsewhere(k.Value)
		}
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
