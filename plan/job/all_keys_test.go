package job

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"gopkg.in/yaml.v3"
)

func tree(t *testing.T, path string) (*yaml.Node, []byte) {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var doc yaml.Node
	if err := yaml.Unmarshal(data, &doc); err != nil {
		t.Fatal(err)
	}
	return &doc, data
}

// walk visits every key of a file beside its shape.
func walk(n *yaml.Node, s *shape, path string, visit func(parent *yaml.Node, i int, s *shape, path string)) {
	switch n.Kind {
	case yaml.MappingNode:
		s = s.forKind(func(k kind) bool { return k == aRecord || k == aNamed })
		for i := 0; i+1 < len(n.Content); i += 2 {
			item := s.item
			if s.kind == aRecord {
				item = s.find(n.Content[i].Value).shape
			}
			visit(n, i, s, path+"/"+n.Content[i].Value)
			walk(n.Content[i+1], item, path+"/"+n.Content[i].Value, visit)
		}
	case yaml.SequenceNode:
		s = s.forKind(func(k kind) bool { return k == aList })
		for _, c := range n.Content {
			walk(c, s.item, path, visit)
		}
	}
}

// records gathers every record of the tables of keys.
func records(s *shape, seen map[*shape]bool) {
	if s == nil || seen[s] {
		return
	}
	if s.kind == aRecord {
		seen[s] = true
	}
	for _, k := range s.keys {
		records(k.shape, seen)
	}
	for _, a := range s.alts {
		records(a, seen)
	}
	records(s.item, seen)
}

// bare is a job or shop without what only remembers places and rules.
func bare(j *Job) (Job, Shop, map[string][2]float64) {
	c, s := *j, *j.Shop
	c.where, c.root, c.Shop = nil, nil, nil
	rules := map[string][2]float64{}
	for _, n := range s.Rules.Names() {
		r := s.Rules.Get(n)
		if math.IsNaN(r.High) {
			r.High = 0
		}
		rules[n] = [2]float64{r.Low, r.High}
	}
	s.where, s.root, s.Rules = nil, nil, nil
	return c, s, rules
}

// TestEveryKeyIsRead: every key of the tables stands in a file of all keys, and
// when it is taken away the job is another one, or is refused.
func TestEveryKeyIsRead(t *testing.T) {
	whole, err := Read("testdata/all-keys.yaml", Options{})
	if err != nil {
		t.Fatal(err)
	}
	wj, ws, wr := bare(whole)
	for _, f := range []struct {
		path  string
		shape *shape
		read  func([]byte) (*Job, error)
	}{
		{"testdata/all-keys.yaml", jobShape, func(d []byte) (*Job,
			error) {
			return Parse("testdata/all-keys.yaml", "testdata", d, Options{})
		}},
		{"testdata/all-shop.yaml", shopShape, func(d []byte) (*Job, error) {
			s, err := parseShop("testdata/all-shop.yaml", "testdata", d)
			j := *whole
			j.Shop = s
			return &j, err
		}},
	} {
		doc, _ := tree(t, f.path)
		used := map[string]bool{} // by the names of the record and the key: tools have one record for each list
		walk(doc.Content[0], f.shape, "", func(n *yaml.Node, i int, s *shape, path string) {
			key := n.Content[i].Value
			used[strings.Join(s.names(), " ")+"/"+key] = true
			if path == "/units" || path == "/shop" { // mm is the default; the shop is read below
				return
			}
			kept := n.Content
			n.Content = append(append([]*yaml.Node{}, kept[:i]...), kept[i+2:]...)
			data, err := yaml.Marshal(doc)
			n.Content = kept
			if err != nil {
				t.Fatal(err)
			}
			j, err := f.read(data)
			if err != nil {
				return
			}
			gj, gs, gr := bare(j)
			if path == "/tables/backlash" || path == "/tables" {
				if len(gs.Tables.Replaced()) != 0 {
					t.Errorf("%s: taken away, and still the table is replaced", path)
				}
				return
			}
			gs.Tables = ws.Tables
			if reflect.DeepEqual(gj, wj) && reflect.DeepEqual(gs, ws) && reflect.DeepEqual(gr, wr) {
				t.Errorf("%s: taking it away changes nothing: the key is not read", path)
			}
		})
		all := map[*shape]bool{}
		records(f.shape, all)
		for rec := range all {
			for _, k := range rec.keys {
				if !used[strings.Join(rec.names(), " ")+"/"+k.name] && k.name != "min" && k.name != "max" {
					t.Errorf("%s: key %s of {%s} is not tried", f.path, k.name, strings.Join(rec.names(), ", "))
				}
			}
		}
	}
}

// TestSchema: the schema takes what the reader takes, and refuses an unknown
// key and a wrong word.
func TestSchema(t *testing.T) {
	compile := func(kind string) *jsonschema.Schema {
		doc, err := jsonschema.UnmarshalJSON(strings.NewReader(string(Schema(kind))))
		if err != nil {
			t.Fatal(err)
		}
		c := jsonschema.NewCompiler()
		if err := c.AddResource("mem:"+kind, doc); err != nil {
			t.Fatal(err)
		}
		s, err := c.Compile("mem:" + kind)
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	job, shop := compile("job"), compile("shop")
	valid := func(s *jsonschema.Schema, data []byte) error {
		var n yaml.Node
		if err := yaml.Unmarshal(data, &n); err != nil {
			t.Fatal(err)
		}
		v, err := plain(n.Content[0])
		if err != nil {
			t.Fatal(err)
		}
		text, err := json.Marshal(v)
		if err != nil {
			t.Fatal(err)
		}
		inst, err := jsonschema.UnmarshalJSON(strings.NewReader(string(text)))
		if err != nil {
			t.Fatal(err)
		}
		return s.Validate(inst)
	}
	schemas := map[string]*jsonschema.Schema{"testdata/all-keys.yaml": job, "testdata/all-shop.yaml": shop,
		"data/shop.yaml": shop}
	for _, file := range shipped(t) {
		schemas[file] = job
		if strings.HasPrefix(filepath.Base(file), "shop") {
			schemas[file] = shop
		}
	}
	for path, s := range schemas {
		_, data := tree(t, path)
		if err := valid(s, data); err != nil {
			t.Errorf("%s: %v", path, err)
		}
	}
	_, data := tree(t, situations+"/plain.yaml")
	for _, change := range [][2]string{{"widest_at: 90", "widdest_at: 90"}, {"condition: sound", "condition: fine"},
		{"teeth: 24", "teeth: many"}} {
		bad := strings.Replace(string(data), change[0], change[1], 1)
		if valid(job, []byte(bad)) == nil {
			t.Errorf("the schema takes %q", change[1])
		}
	}
	if Schema("ship") != nil {
		t.Error("a schema for an unknown kind")
	}
}

// plain makes JSON values of a YAML tree by the core schema of YAML 1.2; dates
// stay as they are written.
func plain(n *yaml.Node) (any, error) {
	switch n.Kind {
	case yaml.MappingNode:
		m := map[string]any{}
		for i := 0; i+1 < len(n.Content); i += 2 {
			v, err := plain(n.Content[i+1])
			if err != nil {
				return nil, err
			}
			m[n.Content[i].Value] = v
		}
		return m, nil
	case yaml.SequenceNode:
		l := []any{}
		for _, c := range n.Content {
			v, err := plain(c)
			if err != nil {
				return nil, err
			}
			l = append(l, v)
		}
		return l, nil
	}
	if n.Tag == "!!timestamp" {
		return n.Value, nil
	}
	var v any
	err := n.Decode(&v)
	return v, err
}

// TestEndsAreNamed: a mistake at one end of a shaft names key and end.
func TestEndsAreNamed(t *testing.T) {
	for change, says := range map[[2]string]string{
		{"right: 2.94", "right: 59.9"}: "journal right: 59.9 mm is not plausible here",
		{"right: 2.98", "right: 2.20"}: "must_pass right: 2.2 mm does not go with the right journal",
		{"right: 2.98", "right: #31"}:  "#31 without quotes begins a comment",
	} {
		_, err := Parse("job.yaml", situations,
			[]byte(strings.Replace(dullWith(t, change[0]), change[0], change[1], 1)), Options{})
		if err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v: %v", change, err)
		}
	}
}
