package job

import (
	"fmt"
	"strings"
	"testing"
)

// TestCaps: every list of things ends somewhere, help names where, and one more
// is refused by its line.
func TestCaps(t *testing.T) {
	if got := Caps("job"); got != "corners 200, features 50, shafts 12, washers 20, "+
		"probed 2000, edges 36, spans 20, gears 16, bushes 200, accept 20" {
		t.Error(got)
	}
	if got := Caps("shop"); !strings.HasSuffix(got, ", reamers 200, end_mills 200, mandrels 500, compounds 50, instruments 100") {
		t.Error(got)
	}
	var endless func(s *shape, path string, seen map[*shape]bool)
	endless = func(s *shape, path string, seen map[*shape]bool) {
		if seen[s] {
			return
		}
		seen[s] = true
		for _, k := range s.keys {
			for _, f := range append([]*shape{k.shape}, k.shape.alts...) {
				if f.kind == aList && f.max == 0 {
					t.Errorf("%s/%s has no end", path, k.name)
				}
			}
			for _, f := range k.shape.forms() {
				endless(f, path+"/"+k.name, seen)
			}
		}
	}
	endless(jobShape, "job", map[*shape]bool{})
	endless(shopShape, "shop", map[*shape]bool{})
	many := func(n int, item string) string {
		var b strings.Builder
		for i := range n {
			fmt.Fprintf(&b, "  - "+item+"\n", i)
		}
		return b.String()
	}
	for _, c := range []struct{ old, new, want string }{
		{"shafts:\n", "shafts:\n" + many(11, "{name: s%d, journal: 3, bores: {}}"), "job.yaml:18:3: shafts: 13 given; expected a list of 1 to 12 shafts"},
		{"gears:\n", "gears:\n" + many(16, "{name: g%d}"), "job.yaml:49:3: gears: 17 given; expected a list of 0 to 16 gears"},
		{"bushes:\n", "bushes:\n" + many(199, "{code: b%d}"), "job.yaml:58:3: bushes: 201 given; expected a list of 0 to 200 bushes"},
	} {
		_, err := Parse("job.yaml", situations, []byte(strings.Replace(dullWith(t, c.old), c.old, c.new, 1)), Options{})
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v\nwant %s", err, c.want)
		}
	}
	points := "x,y\n" + strings.Repeat("12.0,8.0\n", 2001)
	dir := laid(t, map[string]string{"points.csv": points})
	text := strings.Replace(dullWith(t, "widest: 3.61"), "widest: 3.61", "probed: {file: points.csv}\n        widest: 3.61", 1)
	if _, err := Parse("job.yaml", dir, []byte(text), Options{}); err == nil ||
		!strings.Contains(err.Error(), "points.csv:2002:1: 2001 points; a hole takes at most 2000; 16 spread all round do") {
		t.Error(err)
	}
}
