package job

import (
	"errors"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"gopkg.in/yaml.v3"

	"rebush/fits/dim"
)

// The shipped jobs, and the dull ones that tests lean on.
const (
	jobs       = "../../testdata/jobs"
	situations = "../../testdata/situations"
)

// shipped are the files of both folders, shops among them.
func shipped(t testing.TB) []string {
	t.Helper()
	var out []string
	for _, dir := range []string{jobs, situations} {
		list, err := filepath.Glob(dir + "/*.yaml")
		if err != nil || len(list) == 0 {
			t.Fatalf("%s: %v %v", dir, list, err)
		}
		out = append(out, list...)
	}
	return out
}

// dullWith is the first of the dull jobs that holds a text: the plain one where
// it does, else one that shows the thing which the text is about.
func dullWith(t *testing.T, text string) string {
	t.Helper()
	for _, name := range []string{"plain", "stepped", "insulated", "oil-way"} {
		data, err := os.ReadFile(situations + "/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		if strings.Contains(string(data), text) {
			return string(data)
		}
	}
	t.Fatalf("%q is in no dull job", text)
	return ""
}

// slip is one length of a file with the key that holds it.
type slip struct {
	node *yaml.Node
	key  string
	path string
}

// lengths walks a tree beside its shape and gathers every length but the zeros,
// which no unit changes.
func lengths(n *yaml.Node, s *shape, key, path string, out *[]slip) {
	switch n.Kind {
	case yaml.MappingNode:
		s = s.forKind(func(k kind) bool { return k == aRecord || k == aNamed })
		for i := 0; i+1 < len(n.Content); i += 2 {
			name := n.Content[i].Value
			item := s.item
			if s.kind == aRecord {
				item = s.find(name).shape
			}
			k := name
			if name == "left" || name == "right" {
				if n.Content[i+1].Kind == yaml.ScalarNode && key != "walls" {
					k = key + "|" + name
				}
			}
			lengths(n.Content[i+1], item, k, path+"/"+name, out)
		}
	case yaml.SequenceNode:
		s = s.forKind(func(k kind) bool { return k == aList })
		for _, c := range n.Content {
			lengths(c, s.item, key, path, out)
		}
	case yaml.ScalarNode:
		s = s.forKind(func(k kind) bool { return k < aList })
		// the module is a length too: a number of mm
		if s.kind == aLength || key == "module" || key == "diametral_pitch" {
			*out = append(*out, slip{n, key, path})
		}
	}
}

// TestUnitSlips multiplies and divides every length of every shipped job and shop
// by 25.4, one at a time: each is caught by a line that names its key.
func TestUnitSlips(t *testing.T) {
	files := shipped(t)
	if len(files) < 8 {
		t.Fatalf("only %v", files)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		shape, parse := jobShape, func(d []byte) error {
			_,
				err := Parse(file, filepath.Dir(file), d, Options{})
			return err
		}
		if strings.HasPrefix(filepath.Base(file), "shop") {
			shape, parse = shopShape, func(d []byte) error {
				_,
					err := parseShop(file, filepath.Dir(file), d)
				return err
			}
		}
		if err := parse(data); err != nil {
			t.Errorf("%s as it stands:\n%v", file, err)
			continue
		}
		var doc yaml.Node
		if err := yaml.Unmarshal(data, &doc); err != nil {
			t.Fatal(err)
		}
		var all []slip
		lengths(doc.Content[0], shape, "", "", &all)
		bare := dim.MM
		if regexp.MustCompile(`(?m)^units: in`).Match(data) {
			bare = dim.Inch
		}
		caught := 0
		for _, s := range all {
			for _, by := range []string{"times", "by"} {
				old, style, tag := s.node.Value, s.node.Style, s.node.Tag
				changed, ok := slipped(old, bare, by == "times")
				if !ok {
					continue
				}
				s.node.Value, s.node.Style, s.node.Tag = changed, 0, ""
				out, err := yaml.Marshal(&doc)
				s.node.Value, s.node.Style, s.node.Tag = old, style, tag
				if err != nil {
					t.Fatal(err)
				}
				err = parse(out)
				var ps Problems
				if !errors.As(err, &ps) || !names(ps, s.key) {
					t.Errorf("%s%s: %s read as %s is not caught by its key: %v", filepath.Base(file), s.path, old,
						changed, err)
					continue
				}
				caught++
			}
		}
		t.Logf("%s: %d slips caught", filepath.Base(file), caught)
		if caught < 20 {
			t.Errorf("%s: only %d lengths were walked", file, caught)
		}
	}
}

func names(ps Problems, key string) bool {
	for _, p := range ps {
		for _, k := range strings.Split(key, "|") {
			if regexp.MustCompile(`\b` + k + `\b`).MatchString(p.Wrong) {
				return true
			}
		}
	}
	return false
}

var inch = decimal.RequireFromString("25.4")

// slipped writes a length as it stands when somebody multiplies or divides it.
func slipped(old string, bare dim.Unit, times bool) (string, bool) {
	l, err := dim.Parse(old, bare)
	if err != nil || l.Sign() == 0 {
		return "", false
	}
	d := l.MM()
	if bare == dim.Inch {
		d = d.DivRound(inch, 12)
	}
	if times {
		return d.Mul(inch).String(), true
	}
	return d.DivRound(inch, 9).String(), true
}
