package sheets

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"rebush/fits/dim"
)

// In inches no sentence of a demo keeps a length in mm, but for what a tool is
// stamped with; and the plan itself keeps every byte.
func TestWorded(t *testing.T) {
	length := regexp.MustCompile(`[0-9] (?:mm|um)\b[a-zA-Z0-9 ]{0,12}`)
	stamped := regexp.MustCompile(`^[0-9] mm (?:H[0-9]+ )?(?:drill|reamer|end mill)`)
	mandrels := regexp.MustCompile(`mandrel(?:,? (?:then )?[0-9.]+)+ mm`) // these are stamped too
	for name, p := range demos(t) {
		before := asJSON(t, p)
		q := Worded(p, dim.InInch)
		sentences := []string{asJSON(t, q.Operations), asJSON(t, q.Mesh), asJSON(t, q.Findings), asJSON(t, q.Verdict), asJSON(t, q.Setups), asJSON(t, q.LayOut), asJSON(t, q.Buy), asJSON(t, q.Proving)}
		for _, s := range q.Seats {
			sentences = append(sentences, asJSON(t, s.Candidates))
		}
		converted := 0
		for _, s := range sentences {
			converted += strings.Count(s, " in ") + strings.Count(s, " thou")
			for _, left := range length.FindAllString(mandrels.ReplaceAllString(s, ""), -1) {
				if !stamped.MatchString(left) {
					t.Errorf("%s: %q is left in mm", name, left)
				}
			}
		}
		if converted == 0 {
			t.Errorf("%s: nothing is in inches", name)
		}
		if asJSON(t, p) != before {
			t.Errorf("%s: the plan itself was changed", name)
		}
		if Worded(p, dim.InMM) != p || Worded(nil, dim.InInch) != nil {
			t.Error("mm, or no plan, is not handed back as it is")
		}
		both := Worded(p, dim.InBoth)
		if again := Worded(both, dim.InBoth); asJSON(t, again) != asJSON(t, both) {
			t.Errorf("%s: said twice differs", name)
		}
	}
}

func asJSON(t *testing.T, v any) string {
	t.Helper()
	b, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}
