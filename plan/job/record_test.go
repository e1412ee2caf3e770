package job

import (
	"errors"
	"os"
	"strings"
	"testing"
)

func shopWith(record string) (*Shop, error) {
	return parseShop("shop.yaml", ".", []byte("rebush_shop: 1\nmachine: {kind: mill}\nreamers: [{size: 5, class: H7}, 7/32 in]\n"+record))
}

// A record is read in the unit of its file, and any length may carry its own.
func TestRecord(t *testing.T) {
	s, err := shopWith("record: {reamed: {over: 0.004, u: 1 um, jobs: 7}, bored: {over: -0.0003 in, scatter: 0, jobs: 3}, " +
		"reamers: {5 mm H7: {over: 0, jobs: 4}, 7/32 in: {over: 0.001, jobs: 4}}, slips: {slipped: 0, holes: 9, jobs: 4}}\n")
	if err != nil {
		t.Fatal(err)
	}
	r := s.Record
	if r.Reamed.Over.Float() != 0.004 || r.Reamed.U.Float() != 0.001 || r.Reamed.Scatter.Given() || r.Reamed.Jobs != 7 {
		t.Errorf("%+v", r.Reamed)
	}
	if r.Bored.Over.Float() != -0.00762 || !r.Bored.Scatter.Given() || r.Milled != nil || r.Place != nil {
		t.Errorf("%+v", r.Bored)
	}
	if r.Reamers["7/32 in"].Over.Float() != 0.001 || r.Slips.Holes != 9 {
		t.Errorf("%+v", r)
	}
	var keys []string
	for _, x := range s.Recorded() {
		keys = append(keys, x.Key)
		if s.At("record/"+x.Key).Line != 4 {
			t.Errorf("%s stands on no line", x.Key)
		}
	}
	if got := strings.Join(keys, " "); got != "reamed bored reamers/5 mm H7 reamers/7/32 in slips" {
		t.Errorf("%s", got)
	}
	inches, err := parseShop("shop.yaml", ".", []byte("rebush_shop: 1\nunits: in\nmachine: {kind: mill}\nrecord: {reamed: {over: 0.0002, jobs: 7}}\n"))
	if err != nil || inches.Record.Reamed.Over.Float() != 0.00508 {
		t.Errorf("%+v %v", inches, err)
	}
}

// A shop without a record is the same shop, byte for byte, as before there were
// records; with one it is another plan, and still the same shop.
func TestRecordAndHash(t *testing.T) {
	read := func(more string) *Job {
		shop, err := shopWith(more)
		if err != nil {
			t.Fatal(err)
		}
		j, err := Parse("plain.yaml", situations, []byte(dullWith(t, "rebush")), Options{})
		if err != nil {
			t.Fatal(err)
		}
		j.Shop = shop
		return j
	}
	bare, with := read(""), read("record: {reamed: {over: 0.004, jobs: 7}}\n")
	if strings.Contains(string(bare.Canonical()), "record") || string(bare.Canonical()) == string(with.Canonical()) {
		t.Errorf("%s\n%s", bare.Canonical(), with.Canonical())
	}
	if !bare.Shop.Same(with.Shop) || bare.Shop.Same(read("lathe: yes\n").Shop) {
		t.Error("the same shop")
	}
}

// Each mistake is said with its place and what would be right.
func TestRecordMistakes(t *testing.T) {
	for _, c := range []struct{ record, want string }{
		{"{reamed: {over: 4, jobs: 7}}", "shop.yaml:4:25: over: 4 mm is not plausible here; expected 0.0001 mm to 0.08 mm, or 0"},
		{"{reamed: {over: 0.004}}", "shop.yaml:4:18: jobs is missing in record/reamed; write `jobs:` (past jobs it rests on)"},
		{"{reamed: {jobs: 7}}", "over is missing in record/reamed"},
		{"{reamed: {over: 0.004, jobs: 0}}", "jobs: 0 is not plausible here; expected 1 to 10000"},
		{"{reamed: {over: 0.004, jobs: 2.5}}", "jobs: 2.5 is not a whole number"},
		{"{reamed: {over: 0.004, scatter: -0.003, jobs: 3}}", "scatter: -0.003 mm must be above zero"},
		{"{reamed: 0.004}", "reamed: "},
		{"{reemed: {over: 0.004, jobs: 7}}", "shop.yaml:4:10: unknown key \"reemed\" in record; did you mean `reamed`?"},
		{"{reamers: {6 mm H7: {over: 0.004, jobs: 7}}}", `there is no reamer called "6 mm H7"; did you mean "5 mm H7"? There are 5 mm H7, 7/32 in`},
		{"{place: {setup: 0.01, jobs: 7}}", "hole is missing in record/place"},
		{"{slips: {slipped: 5, holes: 4, jobs: 2}}", "slips: 5 of 4 holes slipped"},
		{"{slips: {slipped: 0, holes: 4, jobs: 9}}", "slips: 9 jobs with 4 holes in all"},
		{"[]", "record"},
	} {
		s, err := shopWith("record: " + c.record + "\n")
		var ps Problems
		if s != nil || !errors.As(err, &ps) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v\nwant %s", c.record, err, c.want)
			continue
		}
		for _, p := range ps {
			if p.Pos.Line != 4 || p.Pos.Column < 1 || p.Right == "" && !strings.Contains(p.Wrong, "length") {
				t.Errorf("%s: %+v", c.record, p)
			}
		}
	}
}

// FuzzShop: any bytes give a shop or problems, and a shop that is read lists its
// record, has one canonical form and no rule outside its range.
func FuzzShop(f *testing.F) {
	for _, p := range append(shipped(f), "testdata/all-shop.yaml") {
		if data, err := os.ReadFile(p); err == nil && strings.Contains(p, "shop") {
			f.Add(data)
		}
	}
	for _, s := range []string{"record: {reamers: {5 mm H7: {over: 0.004, jobs: 7}}}", "record: {reamers: {: {over: 1, jobs: 1}}}",
		"record: {slips: {}}", "record: {reamers: }", "record: {slips: {slipped: 1, holes: , jobs: 3}}",
		"rules: {second_hand_chance: 60, friction: [0.3, 0.1]}", "tables: {rules: all-shop.yaml}"} {
		f.Add([]byte("rebush_shop: 1\nmachine: {kind: mill}\nreamers: [5]\n" + s + "\n"))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		s, err := parseShop("shop.yaml", "testdata", data)
		var ps Problems
		if err != nil {
			if s != nil || !errors.As(err, &ps) || len(ps) == 0 {
				t.Fatalf("%v with %v", s, err)
			}
			return
		}
		if !s.Same(s) {
			t.Fatal("a shop that is not its own")
		}
		for _, name := range s.Rules.Names() {
			if r := s.Rules.Get(name); r.Check(r.Low, r.High) != nil {
				t.Fatal(r.Check(r.Low, r.High))
			}
		}
		for _, r := range s.Recorded() {
			if r.Jobs < 1 {
				t.Fatalf("%+v", r)
			}
		}
	})
}
