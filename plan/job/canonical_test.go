package job

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"

	"rebush/fits/dim"
)

// inMM writes a file in inches again in mm.
func inMM(t *testing.T, path string, s *shape) []byte {
	t.Helper()
	doc, _ := tree(t, path)
	var all []slip
	lengths(doc.Content[0], s, "", "", &all)
	for _, l := range all {
		if l.key == "diametral_pitch" {
			continue
		}
		v, err := dim.Parse(l.node.Value, dim.Inch)
		if err != nil {
			t.Fatal(err)
		}
		l.node.Value, l.node.Tag = v.MM().String()+" mm", ""
	}
	data, err := yaml.Marshal(doc)
	if err != nil {
		t.Fatal(err)
	}
	return bytes.Replace(data, []byte("units: in"), []byte("units: mm"), 1)
}

// TestCanonicalUnits: the same job in inch and in mm has the same canonical
// form; comments, made and file names do not matter, any figure does.
func TestCanonicalUnits(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(dir+"/mm.yaml", inMM(t, jobs+"/shop-wexmarrow.yaml", shopShape), 0o600); err != nil {
		t.Fatal(err)
	}
	data := inMM(t, jobs+"/wexmarrow.yaml", jobShape)
	data = bytes.Replace(data, []byte("shop: shop-wexmarrow.yaml"), []byte("shop: mm.yaml # another"), 1)
	inch, err := Read(jobs+"/wexmarrow.yaml", Options{})
	if err != nil {
		t.Fatal(err)
	}
	mm, err := Parse("mm.yaml", dir, append(data, "made: {front axle.left: {seat: 4.77}}\n"...), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if a, b := inch.Canonical(), mm.Canonical(); !bytes.Equal(a, b) {
		t.Errorf("inch:\n%s\nmm:\n%s", a, b)
	}
	for _, change := range [][2]string{{"widest: 3.3782 mm", "widest: 3.3783 mm"}, {"teeth: 40", "teeth: 41"},
		{"noisy: yes", "noisy: no"}} {
		other, err := Parse("mm.yaml", dir, []byte(strings.Replace(string(data), change[0], change[1], 1)), Options{})
		if err != nil {
			t.Errorf("%s: %v", change[1], err)
			continue
		}
		if bytes.Equal(other.Canonical(), inch.Canonical()) {
			t.Errorf("%s does not change the canonical form", change[1])
		}
	}
}

// TestCanonicalFollowsShop: the shop, its rules, its tables and files of points
// are part of it.
func TestCanonicalFollowsShop(t *testing.T) {
	job, err := os.ReadFile("testdata/all-keys.yaml")
	if err != nil {
		t.Fatal(err)
	}
	pattern, err := os.ReadFile("testdata/all-pattern.yaml")
	if err != nil {
		t.Fatal(err)
	}
	shop, err := os.ReadFile("testdata/all-shop.yaml")
	if err != nil {
		t.Fatal(err)
	}
	points, err := os.ReadFile("testdata/points.csv")
	if err != nil {
		t.Fatal(err)
	}
	backlash, err := os.ReadFile("testdata/my-backlash.csv")
	if err != nil {
		t.Fatal(err)
	}
	canon := func(file, old, new string) string {
		dir := t.TempDir()
		for name, data := range map[string][]byte{"all-keys.yaml": job, "all-shop.yaml": shop, "points.csv": points,
			"my-backlash.csv": backlash, "all-pattern.yaml": pattern} {
			if name == file {
				if !bytes.Contains(data, []byte(old)) {
					t.Fatalf("%s is not in %s", old, file)
				}
				data = bytes.Replace(data, []byte(old), []byte(new), 1)
			}
			if err := os.WriteFile(dir+"/"+name, data, 0o600); err != nil {
				t.Fatal(err)
			}
		}
		j, err := Read(dir+"/all-keys.yaml", Options{})
		if err != nil {
			t.Fatal(err)
		}
		return string(j.Canonical())
	}
	base := canon("", "", "")
	for _, c := range [][3]string{
		{"all-pattern.yaml", "length: 3,", "length: 3.1,"}, {"all-shop.yaml", "pass_um: 6", "pass_um: 7"}, {"all-shop.yaml", "spindle: [320, 450]", "spindle: [320, 460]"},
		{"points.csv", "6,95", "6,96"}, {"my-backlash.csv", "0.004", "0.005"},
	} {
		if canon(c[0], c[1], c[2]) == base {
			t.Errorf("%s: %s for %s does not change the canonical form", c[0], c[2], c[1])
		}
	}
	if canon("all-shop.yaml", "paper: Letter", "paper: Letter # as before") != base {
		t.Error("a comment changes the canonical form")
	}
}
