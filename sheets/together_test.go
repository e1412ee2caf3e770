package sheets

import (
	"regexp"
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/fits/say"
)

// Findings that differ in nothing but their figures stand together, each figure
// in the order of the places; ends of a range, and shafts that are numbered, do not.
func TestFiguresStandTogether(t *testing.T) {
	raise := func(texts ...string) finding.List {
		var l finding.List
		for i, s := range texts {
			where := []string{"axle 1.left", "axle 1.right", "axle 2.left"}[i]
			l.Raise(finding.Caution, "seat/wall", finding.Place{Where: where}, say.Words(s), "measure this bore again")
		}
		return l
	}
	for want, texts := range map[string][]string{
		"it lies 0.039, 0.041 and 0.040 mm off, known to 0.016 mm": {"it lies 0.039 mm off, known to 0.016 mm",
			"it lies 0.041 mm off, known to 0.016 mm", "it lies 0.040 mm off, known to 0.016 mm"},
		"holds 11 and 9 N (1.1 and 0.9 kg), needs 10 N (1 kg)": {"holds 11 N (1.1 kg), needs 10 N (1 kg)",
			"holds 9 N (0.9 kg), needs 10 N (1 kg)"},
		"thin": {"thin", "thin", "thin"},
		"from 0.05 to 0.1 mm|from 0.05 to 0.2 mm": {"from 0.05 to 0.1 mm", "from 0.05 to 0.2 mm"},
		"against axle 1|against axle 2":           {"against axle 1", "against axle 2"},
	} {
		var got []string
		for _, f := range alike(raise(texts...), bench{}) {
			got = append(got, f.Text.String())
			ordered := strings.HasSuffix(f.Where, " (in this order)")
			if each := strings.Contains(f.Fix.String(), "each of these bores"); each != ordered ||
				ordered != regexp.MustCompile(`\d and \d`).MatchString(f.Text.String()) {
				t.Errorf("%q stands at %q, cure %q", f.Text, f.Where, f.Fix)
			}
		}
		if s := strings.Join(got, "|"); s != want {
			t.Errorf("got %q, want %q", s, want)
		}
	}
}
