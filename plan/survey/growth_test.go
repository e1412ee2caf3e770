package survey

import (
	"math"
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/fits/table"
	"rebush/plan/job"
)

// Old centres 38.00 apart against a sister's distance, by the limits of the
// rules 0.1, 0.3 and 0.5 %; measured 38.20 says more, and contradicts them.
func TestGrown(t *testing.T) {
	k := oneShaft(t, measured(t), measured(t))
	k.Shafts = append(k.Shafts, job.Shaft{Name: "other"})
	holes := []Hole{{Shaft: &k.Shafts[0], Known: true, Worn: WornBore{O: [2]float64{10, 8.5}}},
		{
			Shaft: &k.Shafts[0],
			Known: true,
			Worn:  WornBore{O: [2]float64{10, 7.5}},
		}, {Shaft: &k.Shafts[1], Known: true, Worn: WornBore{O: [2]float64{48, 8}}}}
	tools, err := ReadInstruments(table.BuiltIn(), k.Shop)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		sister, found string
		level         finding.Level
		percent       float64
		says          string
	}{
		{"37.97", "", "", 0, ""},
		{"37.94", "", "", 0, ""}, // 0.06, and the doubt of two of sqrt(2) hypot(0.010, 0.020) = 0.0316 is 0.063
		{"37.93", "", finding.Note, 0.184550, "look for cracks"},
		{"37.88", "", finding.Caution, 0.316790, "between old centres"},
		{"37.80", "", finding.Stop, 0.529101, "swollen"},
		{"38.20", "", finding.Caution, -0.523560, "does not shrink"},
		{"38.00", "38.20", finding.Stop, 0.526316, "both cannot be right"},
		{"38.00", "38.02", "", 0, ""},
	} {
		k.Chassis.Wheelbase = &job.Wheelbase{Between: [2]string{"drive", "other"}, Sister: mmOf(t, c.sister)}
		if c.found != "" {
			k.Chassis.Wheelbase.Found = mmOf(t, c.found)
		}
		g, said := Grown(k.Job, holes, k.rules, tools)
		if g.Level != c.level || (c.level != "") != (len(said) == 1) {
			t.Errorf("sister %s, found %s: %q, %v", c.sister, c.found, g.Level, said)
			continue
		}
		if c.level == "" {
			continue
		}
		f := said[0]
		if math.Abs(g.Percent-c.percent) > 1e-6 || *f.Have != g.Percent || *f.Want != g.Limit ||
			!strings.Contains(f.Text.String()+f.Fix.String(), c.says) {
			t.Errorf("sister %s, found %s: %v %% of %v, %s (%s)", c.sister, c.found, g.Percent, g.Limit, f.Text,
				f.Fix)
		}
	}
}
