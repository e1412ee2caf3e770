package table_test

import (
	"math"
	"strings"
	"testing"

	"rebush/fits/table"
)

// TestRangesOfRules: every rule that ships has a range about it, narrower than
// the slip from mm to um and back, and one step beyond either end is refused.
func TestRangesOfRules(t *testing.T) {
	rules, err := table.ReadRules(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range rules.Names() {
		r := rules.Get(name)
		if err := r.Check(r.Low, r.High); err != nil {
			t.Errorf("as it ships: %v", err)
		}
		for i, s := range r.Spans {
			for _, v := range []float64{s.Least - 0.001, s.Most * 1.01} {
				low, high := r.Low, r.High
				if i == 0 {
					low = v
				} else {
					high = v
				}
				if !math.IsNaN(r.High) || i == 0 {
					if err := r.Check(low, high); err == nil {
						t.Errorf("%s: %v, %v is taken", name, low, high)
					}
				}
			}
			if strings.HasSuffix(name, "_share") && s.Most > 1 && r.Unit == "-" {
				t.Errorf("%s: a share of up to %v", name, s.Most)
			}
			if s.Least < 0 && name != "use_c" && !strings.HasPrefix(name, "habit_") {
				t.Errorf("%s may be %v", name, s.Least)
			}
		}
	}
}

// TestRuleRefused: what is said of a figure that a rule cannot be.
func TestRuleRefused(t *testing.T) {
	rules, err := table.ReadRules(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	one := math.NaN()
	for _, c := range []struct {
		name      string
		low, high float64
		want      string
	}{
		{"second_hand_chance", 60, one, "rule second_hand_chance: 60 is outside 0 to 1; it is a share, not percent: write 0.6"},
		{"wall_none_radii", -1, one, "rule wall_none_radii: -1 is outside 0 to 5 seat radius"},
		{"clearance_max_um", 0.06, one, "rule clearance_max_um: 0.06 is outside 5 to 300 um; it is in um, not mm: write 60"},
		{"u_journal_mm", 5, one, "rule u_journal_mm: 5 is outside 0.001 to 0.03 mm; it is in mm, not um: write 0.005"},
		{"setup_u_dials_mm", 0.0006, one, "rule setup_u_dials_mm: 0.0006 is outside 0.001 to 0.1 mm; it is in mm, not inch: write 0.01524"},
		{"clearance_aim_um", 45, 15, "rule clearance_aim_um: 45 is above 15"},
		{"clearance_aim_um", 20, one, "rule clearance_aim_um takes two figures [low, high]"},
		{"cleanup_mm", 0.02, 0.03, "rule cleanup_mm takes one figure"},
		{"cleanup_mm", math.Inf(1), one, "rule cleanup_mm takes plain figures"},
		{"habit_reamed_um", 60, 60, "rule habit_reamed_um: 60 is outside 0 to 50 um"},
	} {
		if err := rules.Set(c.name, c.low, c.high, "shop.yaml:9"); err == nil || err.Error() != c.want {
			t.Errorf("%s: %v\nwant %s", c.name, err, c.want)
		}
	}
	// Of two figures that are not the ends of one thing the first may be larger.
	for _, name := range []string{"habit_reamed_um", "turned_shoulder_mm"} {
		if err := rules.Set(name, 4, 2, "shop.yaml:9"); err != nil {
			t.Error(err)
		}
	}
}

// TestOwnRules: a shop's own table of rules changes those that it has, and each
// mistake of it is told by its row.
func TestOwnRules(t *testing.T) {
	read := func(rows string) (*table.Rules, error) {
		own, err := table.Parse("rules", "own.csv", []byte("# Ours.\nrule,low,high,unit,what,source\n"+rows+"\n"))
		if err != nil {
			t.Fatal(err)
		}
		lib := table.BuiltIn()
		if err := lib.Replace(own); err != nil {
			t.Fatal(err)
		}
		return table.ReadRules(lib)
	}
	rules, err := read("cleanup_mm,0.03,,mm,cut,ours")
	if err != nil {
		t.Fatal(err)
	}
	if rules.V("cleanup_mm") != 0.03 || rules.V("pass_um") != 5 {
		t.Errorf("cleanup %v, pass %v", rules.V("cleanup_mm"), rules.V("pass_um"))
	}
	for rows, want := range map[string]string{
		"second_hand_chance,60,,-,chance,ours":                       "own.csv:3: rule second_hand_chance: 60 is outside 0 to 1; it is a share, not percent: write 0.6",
		"cleanup_mm,0.03,,um,cut,ours":                               "own.csv:3: rule cleanup_mm is in mm, not in um",
		"cleanup,0.03,,mm,cut,ours":                                  `own.csv:3: no rule "cleanup"`,
		"cleanup_mm,wide,,mm,cut,ours":                               `own.csv:3: rule cleanup_mm: low "wide" is no number`,
		"cleanup_mm,0.03,,mm,cut,":                                   "own.csv:3: rule cleanup_mm: no source",
		"pass_um,6,,um,pass,ours\npass_um,7,,um,pass,ours":           "own.csv:4: rule pass_um stands twice, first on line 3",
		"strap_slide_um,6,31,um,play,o\ncap_slide_um,6,31,um,play,o": "own.csv:4: rule cap_slide_um stands twice, first on line 3",
	} {
		if _, err := read(rows); err == nil || err.Error() != want {
			t.Errorf("%s: %v\nwant %s", rows, err, want)
		}
	}
}
