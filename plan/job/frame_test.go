package job

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"rebush/fits/dim"
	"rebush/fits/finding"
)

// TestSeenFromRight: figures of one bore measured from the right side give the
// same bore as its figures measured from the left.
func TestSeenFromRight(t *testing.T) {
	j, err := Read("testdata/all-keys.yaml", Options{})
	if err != nil {
		t.Fatal(err)
	}
	_, b := j.Bore("front axle.left")
	got := fmt.Sprint(b.Centre, *b.WidestAt, b.WornTo, b.Probed[0], b.Seat.Centre, b.Edges[1].AtDeg, *b.Walls,
		b.Oil.AtDeg)
	// the outline is 58 long: x is 58 less the x from the right, angles are 180 less
	want := "{10 mm 6.05 mm} 90 [100 70] {11.75 mm 6 mm} {10 mm 6 mm} 0 [8.25 mm 11.75 mm 4.25 mm 7.9 mm] 80"
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if len(j.Made) != 1 || j.Made[0].Centre.X.String() != "10.01 mm" {
		t.Errorf("made is in the frame of the left side: %+v", j.Made)
	}
}

// TestMirrorTwice: turned over twice, a figure is what it was.
func TestMirrorTwice(t *testing.T) {
	m := mirror{dim.Must("58 mm")}
	rapid.Check(t, func(t *rapid.T) {
		x := dim.OfFloat(rapid.Float64Range(-100, 100).Draw(t, "x"))
		if !m.x(m.x(x)).Equal(x) {
			t.Fatalf("%v", x)
		}
		d := rapid.Float64Range(0, 359.999).Draw(t, "deg")
		if back := m.deg(m.deg(d)); math.Abs(back-d) > 1e-9 && math.Abs(math.Abs(back-d)-360) > 1e-9 {
			t.Fatalf("%v becomes %v", d, back)
		}
	})
}

func TestSeenFromRightNeedsLength(t *testing.T) {
	data, err := os.ReadFile("testdata/all-keys.yaml")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Replace(string(data), "outline: {length: 58, height: 20, corners", "outline: {corners", 1)
	_, err = Parse("job.yaml", "testdata", []byte(text), Options{})
	if err == nil || !strings.Contains(err.Error(), "seen_from: right needs the length of the plate") {
		t.Error(err)
	}
}

// TestPoints: the forms in which points are written down.
func TestPoints(t *testing.T) {
	want := "[{10.05 mm 6 mm} {9.5 mm 6.5 mm}]"
	for _, text := range []string{
		"10.05,6.00\n9.5,6.5\n", "x,y\n10.05,6.00\n9.5,6.5", "x;y\r\n10,05;6,00\r\n9,5;6,5\r\n",
		"10.05\t6.00\n9.5\t6.5",
		"10.05 6.00\n\n9.5   6.5\n", "# by hand\n10,05 6,00\n9,5 6,5\n",
		"\uFEFFx,y\n10.05 mm, 6.00 mm\n9.5 mm, 6.5 mm\n",
	} {
		points, _, problems := Points("p.csv", []byte(text), dim.MM)
		if len(problems) > 0 || fmt.Sprint(points) != want {
			t.Errorf("%q: %v %v", text, points, problems)
		}
	}
	for text, says := range map[string]string{
		"10,05,6,00\n": "p.csv:1:1: 4 figures on this line; for decimal commas part the two by a semicolon",
		"1,2\n3\n":     "p.csv:2:1: 1 figures on this line",
		"1,2\n3,x\n":   `p.csv:2:3: "x" is not a length`,
		"":             "there are no points",
		"1,1e400\n":    `"1e400" is not a length`,
		"1,\x00\n":     "NUL",
	} {
		if _, _, problems := Points("p.csv", []byte(text), dim.MM); !strings.Contains(problems.Error(), says) {
			t.Errorf("%q: %v", text, problems)
		}
	}
}

// TestProbedSlips: one coordinate of a file of points in the wrong unit is
// caught at its line.
func TestProbedSlips(t *testing.T) {
	job, err := os.ReadFile(jobs + "/pellinthwaite.yaml")
	if err != nil {
		t.Fatal(err)
	}
	shop, err := os.ReadFile(jobs + "/shop-pellinthwaite.yaml")
	if err != nil {
		t.Fatal(err)
	}
	csv, err := os.ReadFile(jobs + "/pellinthwaite-left.csv")
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(csv)), "\n")
	dir := t.TempDir()
	if err := os.WriteFile(dir+"/shop-pellinthwaite.yaml", shop, 0o600); err != nil {
		t.Fatal(err)
	}
	for i, line := range lines {
		xy := strings.Split(line, ",")
		if strings.HasPrefix(line, "#") || line == "x,y" {
			continue
		}
		for k := range xy {
			for _, times := range []bool{true, false} {
				changed := append([]string{}, xy...)
				changed[k], _ = slipped(xy[k], dim.MM, times)
				out := append([]string{}, lines...)
				out[i] = strings.Join(changed, ",")
				if err := os.WriteFile(dir+"/pellinthwaite-left.csv", []byte(strings.Join(out, "\n")),
					0o600); err != nil {
					t.Fatal(err)
				}
				_, err := Parse("job.yaml", dir, job, Options{})
				if err == nil || !strings.Contains(err.Error(),
					fmt.Sprintf("pellinthwaite-left.csv:%d:1: probed: point", i+1)) {
					t.Errorf("line %d: %s is not caught: %v", i+1, out[i], err)
				}
			}
		}
	}
}

// TestUnused: every key that the tables mark is named in a file that has them
// all, with its line and why, and no other is.
func TestUnused(t *testing.T) {
	j, err := Read("testdata/all-keys.yaml", Options{})
	if err != nil {
		t.Fatal(err)
	}
	marked, all := map[string]string{}, map[*shape]bool{}
	records(jobShape, all)
	records(shopShape, all)
	for s := range all {
		for _, k := range s.keys {
			if k.unused != "" {
				marked[k.name] = k.unused
			}
		}
	}
	_, data := tree(t, "testdata/all-keys.yaml")
	before, _, _ := strings.Cut(string(data), "    pull: ")
	pull := finding.Finding{Level: finding.Note, Rule: KeyNotUsed, Where: "shafts/front axle/pull",
		Text: "this key is read, but the plan does not use it: the load alone says which way the shaft is pressed",
		Fix:  "nothing has to be changed", File: "testdata/all-keys.yaml",
		Line: 1 + strings.Count(before, "\n"), Column: 11}
	told := false
	named := map[string]bool{}
	for _, f := range Unused(j) {
		key := f.Where[strings.LastIndexByte(f.Where, '/')+1:]
		named[key] = true
		if marked[key] == "" || !strings.HasSuffix(f.Text.String(), marked[key]) {
			t.Errorf("%s is noted: %s", f.Where, f.Text)
		}
		told = told || cmp.Equal(pull, f)
	}
	if len(named) != len(marked) || len(marked) == 0 {
		t.Errorf("marked %v, named %v", marked, named)
	}
	if !told {
		t.Errorf("the pull is not told as %+v", pull)
	}
}

// TestBuiltInShop: a job without a shop gets the small one, and --shop stands
// before the job's own.
func TestBuiltInShop(t *testing.T) {
	data, err := os.ReadFile(situations + "/plain.yaml")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Replace(string(data), "shop: shop.yaml", "#", 1)
	j, err := Parse("job.yaml", situations, []byte(text), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if s := j.Shop; s.MachineKind != "drill press" || s.Jig != "pinned" || len(s.Reamers) != 6 || s.File != "" {
		t.Errorf("%+v", s)
	}
	j, err = Parse("job.yaml", situations, data, Options{Shop: jobs + "/shop-pellinthwaite.yaml"})
	if err != nil || j.Shop.Readout || j.Shop.MachineKind != "mill" {
		t.Errorf("%v", err)
	}
}

// TestBadShop: mistakes of a shop file are told beside those of the job.
func TestBadShop(t *testing.T) {
	data, err := os.ReadFile(situations + "/shop.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range [][3]string{
		{"[300, 420, 600", "[300, 600, 420", "spindle: 420 comes after 600"},
		{"[300, 420, 600", "[0, 420, 600", "spindle: 0 is not plausible here"},
		{"[300, 420, 600", "[slow, 420, 600", "spindle: slow is not a number"},
		{"{size: 6, class: H7}", "{class: H7}", "size is missing in reamers/0"},
		{"limits: [6.352, 6.360]", "limits: [6.360, 6.352]", "limits: the lower limit, 6.36 mm, is above the upper"},
		{"limits: [6.352, 6.360]", "limits: [5.952, 5.960]",
			"limits: 5.952 mm and 5.96 mm do not go with a size of 6.35 mm"},
		{"rules: {clearance_aim_um: [15, 45]}", "rules: {clearance_aim_um: 15}",
			"rules: clearance_aim_um takes two figures"},
		{"rules: {clearance_aim_um: [15, 45]}", "rules: {clearance_aim: 15}",
			"there is no rule clearance_aim; did you mean `clearance_aim_um`?"},
		{"rules: {clearance_aim_um: [15, 45]}", "tables: {limit: x.csv}",
			"there is no table limit; did you mean `limits_it`?"},
		{"rules: {clearance_aim_um: [15, 45]}", "tables: {limits_it: x.csv}", "x.csv: there is no such file"},
		{"metric 0.1, number", "metrik 0.1, number", "metrik 0.1"},
		{"for: 6}", "for: 7}", "for: there is no reamer of 7 mm"},
		{"step: 0.01", "step: 0.254", "step: 0.254 mm is not plausible"},
		{"u: 0.023", "u: 0.58", "u: 0.58 mm does not go with an instrument called inside calliper"},
		{"rebush_shop: 1", "rebush_shop: 3", "this file is version 3"},
	} {
		text := strings.Replace(string(data), c[0], c[1], 1)
		if text == string(data) {
			t.Fatalf("%q is not in the shop", c[0])
		}
		if _, err := parseShop("shop.yaml", situations, []byte(text)); err == nil ||
			!strings.Contains(err.Error(), c[2]) {
			t.Errorf("%s:\n got %v\nwant %s", c[1], err, c[2])
		}
	}
}
