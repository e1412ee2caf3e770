package job

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"rebush/fits/dim"
)

// reader reads one file by its shape and gathers what is wrong with it.
type reader struct {
	file     string
	lines    []string
	units    dim.Unit
	problems Problems
	where    map[string]Pos
	above    []level  // the records that a value stands in, outermost first
	other    *shape   // the other kind of file
	before   Problems // those that scan told
	healed            // what was done to the text

	likeFile  string // the pattern of a job, and its lines
	likeLines []string
	figures   // lengths as read, to hold odd ones against
}

// level is one of the records that a value stands in, and the key that it has.
type level struct {
	shape *shape
	key   string
}

// mostProblems is how many mistakes are told.
const mostProblems = 500

func (r *reader) say(pos Pos, wrong, right string) {
	if pos.File == r.file && r.guessed[pos.Line] {
		return // it may well be that only the guess is wrong
	}
	r.problems = append(r.problems, Problem{Pos: pos, Wrong: clipped(wrong), Right: clipped(right)})
}

func (r *reader) at(n *yaml.Node) Pos { return Pos{r.file, n.Line, n.Column} }

// readFile reads a file that has to hold all that its kind must. The answer is nil
// where nothing can be made of it; problems then say why.
func readFile(file string, data []byte, s *shape) (*value, *reader) {
	root, r := readPart(file, data, s)
	r.complete(root)
	return root, r
}

// readPart reads a file of which another may say the rest.
func readPart(file string, data []byte, s *shape) (*value, *reader) {
	r := &reader{file: file, where: map[string]Pos{}, lines: strings.Split(string(decoded(data)), "\n")}
	r.other = map[*shape]*shape{jobShape: shopShape, shopShape: jobShape}[s]
	root, problems, mended := scan(file, data)
	r.problems, r.before, r.healed = problems, slices.Clip(problems), *mended
	if root == nil {
		return nil, r
	}
	r.where[""] = r.at(root)
	if root.Kind == yaml.MappingNode {
		for i := 0; i+1 < len(root.Content); i += 2 {
			if root.Content[i].Value == "units" && root.Content[i+1].Value == "in" {
				r.units = dim.Inch
			}
		}
	} else {
		r.say(r.at(root), "the file does not begin with keys",
			"begin with `"+s.keys[0].name+": 1` and write `key: value` lines")
		return nil, r
	}
	if r.otherKind(root, s.keys[0].name) || !r.version(root, s.keys[0]) {
		return nil, r
	}
	v := r.read(root, s, "", "")
	v = r.settle(root, s, v)
	return v, r
}

// IsShop is the mistake of a shop file that stands where a job belongs.
const IsShop = "this is a shop file, not a job"

// otherKind says that a shop file stands where a job belongs, or the reverse.
func (r *reader) otherKind(root *yaml.Node, name string) bool {
	other := map[string][3]string{
		"rebush":      {"rebush_shop", IsShop, "name the job that it belongs to; `rebush check` reads a shop file too"},
		"rebush_shop": {"rebush", "this is a job file, not a shop", "name a file that begins with rebush_shop: 1"},
	}[name]
	for i := 0; i+1 < len(root.Content); i += 2 {
		switch root.Content[i].Value {
		case name:
			return false
		case other[0]:
			r.say(r.at(root.Content[i]), other[1], other[2])
			return true
		}
	}
	return false
}

// version refuses a newer file before its new keys are called unknown. The
// range of the key says which versions are read.
func (r *reader) version(root *yaml.Node, of key) bool {
	newest := int(of.shape.hi)
	for i := 0; i+1 < len(root.Content); i += 2 {
		k, v := root.Content[i], root.Content[i+1]
		if k.Value != of.name || v.Kind != yaml.ScalarNode {
			continue
		}
		var n int
		if _, err := fmt.Sscanf(v.Value, "%d", &n); err == nil && n > newest {
			r.say(r.at(v), fmt.Sprintf("this file is version %d; this program reads up to %d", n, newest),
				fmt.Sprintf("use a newer rebush, or write the file for version %d", newest))
			return false
		}
	}
	return true
}

// read reads a node by a shape. It answers nil after saying why it could not.
func (r *reader) read(n *yaml.Node, s *shape, path, name string) *value {
	if path != "" {
		r.where[path] = r.at(n)
	}
	forms := s
	switch n.Kind {
	case yaml.AliasNode: // refused by scan
		return nil
	case yaml.ScalarNode:
		s = s.forKind(func(k kind) bool { return k < aList })
	case yaml.SequenceNode:
		s = s.forKind(func(k kind) bool { return k == aList })
	default:
		s = s.forKind(func(k kind) bool { return k == aRecord || k == aNamed })
	}
	v := &value{shape: s, pos: r.at(n), path: path, name: name}
	switch {
	case n.Kind == yaml.ScalarNode && s.kind < aList:
		if !r.scalar(n, s, v) {
			r.orRecord(forms, s)
			return nil
		}
	case n.Kind == yaml.SequenceNode && s.kind == aList:
		if !r.list(n, s, v) {
			return nil
		}
	case n.Kind == yaml.MappingNode && s.kind == aRecord:
		r.record(n, s, v)
	case n.Kind == yaml.MappingNode && s.kind == aNamed:
		r.named(n, s, v)
	default:
		r.misfit(n, s, name)
		return nil
	}
	return v
}

// orRecord adds to the last mistake that a yes or no may be a record as well.
func (r *reader) orRecord(forms, s *shape) {
	if other := forms.forKind(func(k kind) bool { return k == aRecord }); s.kind == aYesNo && other.kind == aRecord {
		last := &r.problems[len(r.problems)-1]
		last.Right += ", or " + other.describe() + ": {" + strings.Join(other.names(), ": ..., ") + ": ...}"
	}
}

// misfit says that a list stands where a number belongs, and the like.
func (r *reader) misfit(n *yaml.Node, s *shape, name string) {
	if n.Kind == yaml.ScalarNode && n.Tag == "!!null" {
		r.nothing(n, s, name)
		return
	}
	if n.Kind == yaml.SequenceNode && s.kind == aLength && len(n.Content) == 2 {
		a, b := n.Content[0].Value, n.Content[1].Value
		if digits(a) && digits(b) {
			r.say(r.at(n), fmt.Sprintf("%s: [%s,%s] is a list of two numbers", name, a, b),
				fmt.Sprintf("write %s.%s", a, b))
			return
		}
	}
	if n.Kind == yaml.ScalarNode && s.kind == aList && s.min == 2 && s.max == 2 {
		if f := twoFigures(n.Value); len(f) == 2 {
			r.say(r.at(n), fmt.Sprintf("%s: %q wants brackets", name, short(n.Value)),
				fmt.Sprintf("write [%s, %s]", f[0], f[1]))
			return
		}
	}
	have := map[yaml.Kind]string{yaml.ScalarNode: fmt.Sprintf("%q", short(n.Value)), yaml.SequenceNode: "a list",
		yaml.MappingNode: "a record"}[n.Kind]
	r.say(r.at(n), fmt.Sprintf("%s: %s does not fit here", orFile(name), have), "expected "+s.describe())
}

func orFile(name string) string {
	if name == "" {
		return "the file"
	}
	return name
}

func (r *reader) list(n *yaml.Node, s *shape, v *value) bool {
	hint := r.commaHint(n, s)
	if hint {
		r.say(v.pos, v.name+": a comma without a space between digits: one number or two?",
			"write decimal points in brackets and a space after each comma: [3.16, 2.36]")
		return false
	}
	if len(n.Content) < s.min || s.max > 0 && len(n.Content) > s.max {
		r.say(v.pos, fmt.Sprintf("%s: %d given", v.name, len(n.Content)), "expected "+s.describe())
		return false
	}
	good := true
	names := map[string]int{}
	for i, c := range n.Content {
		if len(r.problems) > 2*mostProblems {
			return false
		}
		label := fmt.Sprint(i)
		if id := itemName(c, s.item); id != "" {
			if line, twice := names[id]; twice {
				r.say(r.at(c), fmt.Sprintf("two %s are called %q, the first on line %d", s.say, id, line),
					"give each a name of its own")
			}
			names[id] = c.Line
			label = id
		}
		item := r.read(c, s.item, join(v.path, label), v.name)
		if item == nil {
			good = false
			continue
		}
		v.list = append(v.list, item)
	}
	return good || s.item.kind == aRecord || s.item.kind == anEither
}

// itemName is the name by which an item of a list of records is found again.
func itemName(n *yaml.Node, s *shape) string {
	if n.Kind != yaml.MappingNode || s.kind != aRecord {
		return ""
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		k := n.Content[i].Value
		if (k == "name" || k == "code") && s.find(k) != nil && n.Content[i+1].Kind == yaml.ScalarNode {
			return n.Content[i+1].Value
		}
	}
	return ""
}

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "/" + name
}
