package job

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"
)

// laid writes files into a folder of their own.
func laid(t *testing.T, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		if err := os.MkdirAll(filepath.Dir(filepath.Join(dir, name)), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// kindOfTruck is what the trucks of the tests share, in inch, and secondTruck one of them.
const kindOfTruck = `rebush: 1
units: in
shop: ../own.yaml
chassis:
  material: zinc die casting
  rails: below
  plates: {left: {thickness: 0.125}, right: {thickness: 0.125}}
  outline: {length: 2.5, height: 1}
  width: 0.75
shafts:
  - name: front axle
    journal: 0.125
    rpm: 420
    hub_to_hub: 0.8
    bores: {left: {edges: [{at: 270, metal: 0.25}]}, right: {edges: [{at: 270, metal: 0.25}, {at: 180, metal: 0.4}]}}
gears:
  - {name: drive, kind: worm, wheel_form: throated, module: 0.5, wheel: {on: front axle, teeth: 24}, worm: {starts: 1, tip: 0.29, height: 0.68}}
bushes:
  - {code: drawer 7, bore: 1/8, bore_class: F7, od: 3/16, od_class: s7, length: 0.15, material: sintered bronze}
  - {code: own turning, make: turned, material: bearing bronze C93200}
`

const secondTruck = `rebush: 1
job: 2
like: kinds/kind.yaml
units: mm
chassis: {condition: sound, width: 19.2}
shafts:
  - name: front axle
    bores:
      left: {centre: [12, 8], widest: 3.40, narrowest: 3.30, worn_to: 90}
      right: {centre: [12, 8], widest: 3.38, narrowest: 3.30, worn_to: 90, edges: [{at: 270, metal: 6.5}]}
bushes:
  - {code: drawer 7, on_hand: 3}
  - {code: drawer 9, bore: 3.2, bore_class: F7, od: 6, od_class: s7, length: 4, material: sintered bronze}
`

// writtenWhole is the same truck without a pattern.
const writtenWhole = `rebush: 1
job: 2
shop: own.yaml
chassis:
  material: zinc die casting
  condition: sound
  rails: below
  plates: {left: {thickness: 3.175}, right: {thickness: 3.175}}
  outline: {length: 63.5, height: 25.4}
  width: 19.2
shafts:
  - name: front axle
    journal: 3.175
    rpm: 420
    hub_to_hub: 20.32
    bores:
      left: {centre: [12, 8], widest: 3.40, narrowest: 3.30, worn_to: 90, edges: [{at: 270, metal: 6.35}]}
      right: {centre: [12, 8], widest: 3.38, narrowest: 3.30, worn_to: 90, edges: [{at: 270, metal: 6.5}]}
gears:
  - {name: drive, kind: worm, wheel_form: throated, module: 0.5, wheel: {on: front axle, teeth: 24}, worm: {starts: 1, tip: 7.366, height: 17.272}}
bushes:
  - {code: drawer 7, bore: 3.175, bore_class: F7, od: 4.7625, od_class: s7, length: 3.81, material: sintered bronze, on_hand: 3}
  - {code: own turning, make: turned, material: bearing bronze C93200}
  - {code: drawer 9, bore: 3.2, bore_class: F7, od: 6, od_class: s7, length: 4, material: sintered bronze}
`

const ownShop = "rebush_shop: 1\nmachine: {kind: mill}\n"

// TestPattern: a job with a pattern is the job written whole: maps merged by key,
// named things by name, all else replaced whole, each file in its own units and
// with names from its own folder. Each value knows the line of the file it is in.
func TestPattern(t *testing.T) {
	dir := laid(t, map[string]string{"kinds/kind.yaml": kindOfTruck, "job.yaml": secondTruck, "whole.yaml": writtenWhole, "own.yaml": ownShop})
	j, err := Read(filepath.Join(dir, "job.yaml"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	whole, err := Read(filepath.Join(dir, "whole.yaml"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if a, b := j.Canonical(), whole.Canonical(); !bytes.Equal(a, b) {
		t.Errorf("with a pattern\n%s\nwhole\n%s", a, b)
	}
	like := filepath.Join(dir, "kinds/kind.yaml")
	for path, want := range map[string]string{
		"chassis/material":                         like + ":5",
		"chassis/width":                            filepath.Join(dir, "job.yaml") + ":5",
		"shafts/front axle/journal":                like + ":12",
		"shafts/front axle/bores/left/widest":      filepath.Join(dir, "job.yaml") + ":9",
		"shafts/front axle/bores/left/edges/0/at":  like + ":15",
		"shafts/front axle/bores/right/edges/0/at": filepath.Join(dir, "job.yaml") + ":10",
		"bushes/drawer 7/od":                       like + ":19",
		"bushes/drawer 7/on_hand":                  filepath.Join(dir, "job.yaml") + ":12",
	} {
		if got := j.Source(path); got != want {
			t.Errorf("%s stands in %s, want %s", path, got, want)
		}
	}
	if got := j.Inputs(); len(got) != 3 || got[1] != like || got[2] != filepath.Join(dir, "own.yaml") {
		t.Errorf("read from %v", got)
	}
	if j.Units != 0 {
		t.Errorf("units %v", j.Units)
	}
	// An axle that nobody measured on this truck is told, at the line of the pattern.
	notes := Unused(j)
	if len(notes) != 1 || notes[0].Rule != JournalOfPattern || notes[0].Where != "front axle" || notes[0].File != like ||
		notes[0].Line != 12 || len(Unused(whole)) != 0 {
		t.Errorf("%+v", notes)
	}
}

// TestPatternOfOtherForms: what the job says in another form than the pattern it
// says whole, and the units of the pattern are its own alone.
func TestPatternOfOtherForms(t *testing.T) {
	own := strings.NewReplacer("units: mm\n", "", "    bores:\n", "    journal: {left: 3.175, right: 3.1}\n    bores:\n").Replace(secondTruck)
	dir := laid(t, map[string]string{"kinds/kind.yaml": kindOfTruck, "job.yaml": own, "own.yaml": ownShop})
	j, err := Read(filepath.Join(dir, "job.yaml"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if l, r := j.Shafts[0].Journal.Left.Float(), j.Shafts[0].Journal.Right.Float(); l != 3.175 || r != 3.1 || j.Units != 0 {
		t.Errorf("journals %v and %v, units %v", l, r, j.Units)
	}
	// A link to the job is the job.
	if err := os.Symlink("job.yaml", filepath.Join(dir, "link.yaml")); err == nil {
		_, err = Parse(filepath.Join(dir, "job.yaml"), dir, []byte(strings.Replace(own, "kinds/kind.yaml", "link.yaml", 1)), Options{})
		if err == nil || !strings.Contains(err.Error(), "job.yaml:3:7: like: this file is named as its own pattern") {
			t.Error(err)
		}
	}
}

// TestPatternMistakes: what is wrong with a pattern, or with a job that has one,
// is told by the line of its file.
func TestPatternMistakes(t *testing.T) {
	for _, c := range []struct{ name, file, old, new, want string }{
		{"measured", "kind", "rpm: 420", "rpm: 420\n    journal_state: good", "kinds/kind.yaml:14:20: journal_state: this is judged of one axle: a pattern " +
			"gives what all trucks of its kind share; write it in the job of each truck"},
		{"centre", "kind", "{left: {edges", "{left: {centre: [0.5, 0.3], edges", "kinds/kind.yaml:15:28: centre: this is measured of one hole"},
		{"widest", "kind", "{left: {edges", "{left: {widest: 0.13, edges", "kinds/kind.yaml:15:28: widest: this is measured of one hole"},
		{"number", "kind", "units: in", "job: 7\nunits: in", "kinds/kind.yaml:2:6: job: this is the number of one job"},
		{"another", "kind", "units: in", "like: other.yaml\nunits: in", "kinds/kind.yaml:2:7: like: a pattern refers to no other; copy what that one gives into this file"},
		{"no header", "kind", "rebush: 1\n", "", "kinds/kind.yaml:1:1: rebush is missing; a pattern begins with rebush: 1, as a job does"},
		{"a shop", "kind", "rebush: 1", "rebush_shop: 1", "kinds/kind.yaml:1:1: this is a shop file, not a job"},
		{"syntax", "kind", "width: 0.75", "width 0.75", "kinds/kind.yaml:9:8: a colon is missing behind the key; write `width: 0.75`"},
		{"missing", "job", "kinds/kind.yaml", "kinds/kid.yaml", "job.yaml:3:7: DIR/kinds/kid.yaml: there is no such file; did you mean DIR/kinds/kind.yaml?"},
		{"missing among others", "job", "kinds/kind.yaml", "kinds/kid.yaml\ndatums: x", "job.yaml:3:7: DIR/kinds/kid.yaml: there is no such file; did you mean"},
		{"itself", "job", "kinds/kind.yaml", "./job.yaml", "job.yaml:3:7: like: this file is named as its own pattern; name the file that holds"},
		{"standard input", "job", "kinds/kind.yaml", "\"-\"", "job.yaml:3:7: like: standard input cannot be the pattern; name a file"},
		{"contradiction", "job", "bushes:", "gears: [{name: drive, kind: spur}]\nbushes:", "kinds/kind.yaml:17:108: worm: this mesh is of kind spur"},
		{"two of which one", "job", "bushes:", "gears: [{name: drive, diametral_pitch: 50}]\nbushes:",
			"job.yaml:11:40: diametral_pitch: module is given too, by the pattern: DIR/kinds/kind.yaml:17:61; keep one of them"},
		{"two of which the job says the first", "both", "module: 0.5", "diametral_pitch: 50", "job.yaml:11:31: module: diametral_pitch is given too, by " +
			"the pattern: DIR/kinds/kind.yaml:17:70; keep one of them"},
		{"height and top", "job", "bushes:", "gears: [{name: drive, worm: {top: 18, shaft_diameter: 2}}]\nbushes:",
			"job.yaml:11:35: top: height is given too, by the pattern: DIR/kinds/kind.yaml:17:139; keep one of them"},
		{"outside", "job", "centre: [12, 8], widest: 3.40", "centre: [12, 48], widest: 3.40", "job.yaml:9:22: centre: a hole of 3.3 mm at [12 mm, 48 mm] is not inside"},
		{"journal", "kind", "journal: 0.125", "journal: 0.14", "job.yaml:9:39: widest: 3.4 mm does not go with the left journal of 3.556 mm"},
		{"nobody says it", "kind", "plates:", "# plates:", "job.yaml:5:10: plates is missing in chassis; write `plates:`"},
		{"units of the pattern", "kind", "units: in\n", "units: mm\n", "kinds/kind.yaml:2:1: units: mm: "},
	} {
		files := map[string]string{"kinds/kind.yaml": kindOfTruck, "job.yaml": secondTruck, "own.yaml": ownShop}
		for name, text := range files {
			if c.file == "both" && name == "job.yaml" {
				files[name] = strings.Replace(text, "bushes:", "gears: [{name: drive, "+c.old+"}]\nbushes:", 1)
			}
			if strings.HasSuffix(name, c.file+".yaml") || c.file == "both" && name == "kinds/kind.yaml" {
				if !strings.Contains(text, c.old) {
					t.Fatalf("%s: there is no %q", c.name, c.old)
				}
				files[name] = strings.Replace(text, c.old, c.new, 1)
			}
		}
		dir := laid(t, files)
		_, err := Read(filepath.Join(dir, "job.yaml"), Options{})
		if err == nil {
			t.Errorf("%s: taken", c.name)
			continue
		}
		want := filepath.Join(dir, strings.ReplaceAll(c.want, "DIR/", dir+"/"))
		if !strings.Contains("\n"+err.Error(), "\n"+want) {
			t.Errorf("%s:\n got %v\nwant %s", c.name, err, want)
		}
		var ps Problems
		if errors.As(err, &ps) {
			for _, p := range ps {
				if p.Pos.Line > 0 && p.Text == "" {
					t.Errorf("%s: no line with %v", c.name, p)
				}
			}
		}
	}
}

// TestPatternOf: a pattern that is written of a job, with what is of the one
// truck put before it, is the job again; it gives nothing measured.
func TestPatternOf(t *testing.T) {
	for _, file := range shipped(t) {
		if strings.HasPrefix(filepath.Base(file), "shop") {
			continue
		}
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		whole, err := Read(file, Options{})
		if err != nil {
			t.Fatal(err)
		}
		dir, err := os.MkdirTemp(filepath.Dir(file), "kinds")
		if err != nil {
			t.Fatal(err)
		}
		defer os.RemoveAll(dir)
		out, err := PatternOf(file, filepath.Dir(file), dir, data)
		if err != nil {
			t.Errorf("%s: %v", file, err)
			continue
		}
		if bytes.Contains(out, []byte("{}")) {
			t.Errorf("%s: something is left empty:\n%s", file, out)
		}
		if err := os.WriteFile(dir+"/kind.yaml", out, 0o600); err != nil {
			t.Fatal(err)
		}
		var doc yaml.Node
		if err := yaml.Unmarshal(data, &doc); err != nil {
			t.Fatal(err)
		}
		root := doc.Content[0]
		ofThis(root, nil)
		own, err := yaml.Marshal(root)
		if err != nil {
			t.Fatal(err)
		}
		own = append(own, "like: "+filepath.Base(dir)+"/kind.yaml\n"...)
		j, err := Parse(file, filepath.Dir(file), own, Options{})
		if err != nil {
			t.Errorf("%s:\n%v\nof\n%s", file, err, own)
			continue
		}
		if !bytes.Equal(j.Canonical(), whole.Canonical()) {
			t.Errorf("%s: another job\n%s\n%s", file, j.Canonical(), whole.Canonical())
		}
		if p, err := ReadPattern(dir + "/kind.yaml"); err != nil || !p.Gives("chassis/material") || p.Gives("chassis/condition") {
			t.Errorf("%s: %v", file, err)
		}
	}
}

// ofThis keeps of a job what is of the one truck, with the names of things.
func ofThis(n *yaml.Node, path []string) (keep bool) {
	if n.Kind == yaml.SequenceNode {
		for _, c := range n.Content {
			keep = ofThis(c, path) || keep
		}
		return keep
	}
	if n.Kind != yaml.MappingNode {
		return false
	}
	var kept []*yaml.Node
	for i := 0; i+1 < len(n.Content); i += 2 {
		k, v := n.Content[i], n.Content[i+1]
		here := append(append([]string(nil), path...), k.Value)
		_, one := oneTruck(here)
		keys := len(path) == 0 && (k.Value == "rebush" || k.Value == "units")
		name := len(path) > 0 && (k.Value == "name" || k.Value == "code")
		if one || keys || ofThis(v, here) || name {
			kept = append(kept, k, v)
			keep = keep || !name && !keys
		}
	}
	n.Content = kept
	return keep
}

// TestOneTruckTable: every place in the table of what is of one truck is a key.
func TestOneTruckTable(t *testing.T) {
	for _, row := range ofOneTruck() {
		s := jobShape.at(strings.ReplaceAll(row.Get("key"), "*", "left"))
		if s == nil || row.Get("of") == "" || row.Get("pattern") != "refuse" && row.Get("pattern") != "leave" {
			t.Errorf("%s: %v", row.Address(), row)
		}
	}
}
