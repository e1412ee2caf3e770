package job

import (
	"fmt"
	"slices"
	"strings"
)

// leaf is a job or shop file while it is written: a value, or keys and items
// below it.
type leaf struct {
	text  string // of a value, as YAML writes it
	names []string
	below map[string]*leaf
}

// at is what stands under a path, "shafts/#0/journal"; it is made where it is not
// there yet. # begins the number of an item.
func (l *leaf) at(path string) *leaf {
	for _, name := range strings.Split(path, "/") {
		next := l.below[name]
		if next == nil {
			if l.below == nil {
				l.below = map[string]*leaf{}
			}
			next = &leaf{}
			l.below[name], l.names = next, append(l.names, name)
		}
		l = next
	}
	return l
}

// set stores a value; an empty one is left out.
func (l *leaf) set(path, text string) {
	if text != "" {
		l.at(path).text = text
	}
}

// items says whether numbered things stand below.
func (l *leaf) items() bool { return len(l.names) > 0 && strings.HasPrefix(l.names[0], "#") }

// quoted is a scalar that YAML reads back as it stands.
func quoted(s string) string {
	s = strings.Join(strings.Fields(s), " ")
	number := plainNumber.MatchString(s) && !strings.Contains(s, ",")
	if s == "" || number || plainWords.MatchString(s) && !taken[strings.ToLower(s)] {
		return s
	}
	return "'" + strings.ReplaceAll(s, "'", "''") + "'"
}

// spread are the records whose keys stand below each other; the others stand on
// one line.
var spread = []string{"", "chassis", "chassis/plates", "chassis/features", "shafts", "shafts/#", "shafts/#/bores",
	"shafts/#/bores/left", "shafts/#/bores/right", "gears", "gears/#", "bushes", "machine"}

// writer writes leaves in the order of the table of keys.
type writer struct {
	lines  []string
	sparse bool // what has to be given and is not, is given elsewhere
}

// widestLine is the length that a line with a note beside it may have.
const widestLine = 100

func (w *writer) line(indent int, text, note string) {
	text = strings.Repeat(" ", indent) + text
	if note != "" {
		long := len([]rune(text))
		if pad := max(2, 38-long); long < 48 && long+pad+2+len([]rune(note)) <= widestLine {
			text += strings.Repeat(" ", pad) + "# " + note
		}
	}
	w.lines = append(w.lines, text)
}

// record writes the keys of a record below each other. What has to be given and
// is not, stands there without a value, for the reader to name by its line.
func (w *writer) record(l *leaf, s *shape, path string, indent int) {
	s = s.forKind(func(k kind) bool { return k == aRecord })
	for _, k := range s.keys {
		item := l.below[k.name]
		at := strings.TrimPrefix(path+"/"+k.name, "/")
		switch {
		case item == nil && (!k.must || w.sparse):
		case item == nil && slices.Contains(spread, at) && k.shape.kind == aRecord:
			w.line(indent, k.name+":", "")
			w.record(&leaf{}, k.shape, at, indent+2)
		case item == nil && k.shape.kind == aRecord:
			w.line(indent, k.name+": "+w.inLine(&leaf{}, k.shape), k.what)
		case item == nil:
			w.line(indent, k.name+":", k.what)
		case item.items() && slices.Contains(spread, at):
			w.line(indent, k.name+":", "")
			w.list(item, k.shape, at, indent+2)
		case len(item.names) > 0 && slices.Contains(spread, at):
			w.line(indent, k.name+":", "")
			w.record(item, k.shape, at, indent+2)
		default:
			w.line(indent, k.name+": "+w.inLine(item, k.shape), k.what)
		}
	}
}

func (w *writer) list(l *leaf, s *shape, path string, indent int) {
	s = s.forKind(func(k kind) bool { return k == aList })
	for _, name := range l.names {
		if !slices.Contains(spread, path+"/#") {
			w.line(indent, "- "+w.inLine(l.below[name], s.item), "")
			continue
		}
		from := len(w.lines)
		w.record(l.below[name], s.item, path+"/#", indent+2)
		if len(w.lines) > from {
			w.lines[from] = strings.Repeat(" ", indent) + "- " + w.lines[from][indent+2:]
		}
	}
}

// inLine is a value, a list or a record on one line.
func (w *writer) inLine(l *leaf, s *shape) string {
	if len(l.names) == 0 && s.kind != aRecord {
		return l.text
	}
	if l.text != "" && len(l.names) == 0 {
		return l.text
	}
	var out []string
	if l.items() {
		s = s.forKind(func(k kind) bool { return k == aList })
		for _, name := range l.names {
			out = append(out, w.inLine(l.below[name], s.item))
		}
		return "[" + strings.Join(out, ", ") + "]"
	}
	if s.kind == aNamed || s.kind == anEither && s.forKind(func(k kind) bool { return k == aRecord }).kind != aRecord {
		for _, name := range l.names {
			out = append(out, name+": "+l.below[name].text)
		}
		return "{" + strings.Join(out, ", ") + "}"
	}
	s = s.forKind(func(k kind) bool { return k == aRecord })
	if s.kind == aList { // of figures by their places
		for _, name := range l.names {
			out = append(out, l.below[name].text)
		}
		return "[" + strings.Join(out, ", ") + "]"
	}
	if left, right := l.below["left"], l.below["right"]; s.ends && left != nil && right != nil && left.text == right.text {
		return left.text
	}
	for _, k := range s.keys {
		if item := l.below[k.name]; item != nil {
			out = append(out, k.name+": "+w.inLine(item, k.shape))
		} else if k.must && !w.sparse {
			out = append(out, k.name+": null")
		}
	}
	return "{" + strings.Join(out, ", ") + "}"
}

// head begins a job file.
const head = `# A job for rebush. A truck is a bogie, a bush a bushing. Lengths may carry
# their own unit: 3.16, 0.126 in, 1/8 in, 5 thou, "#31" (in quotes).
`

// yaml is the job file.
func (l *leaf) yaml() []byte {
	w := &writer{sparse: l.below["like"] != nil}
	w.record(l, jobShape, "", 0)
	return fmt.Appendf(nil, "%s%s\n", head, strings.Join(w.lines, "\n"))
}
