package main

import (
	"regexp"
	"strings"
	"testing"
)

// On the screen no length of the inch demo is in mm, no figure stands there
// with its marks, and the JSON, which is in mm, has none of them either.
func TestInchScreen(t *testing.T) {
	const job = "../../testdata/jobs/wexmarrow.yaml"
	inMM := regexp.MustCompile(`\d (?:mm|um)\b.{0,20}`)
	for _, c := range []string{"check", "survey", "verdict", "plan", "why"} {
		code, out, errOut := ran("", c, job)
		if code > 2 || out == "" {
			t.Errorf("%s: exit %d, %d bytes", c, code, len(out))
		}
		if left := inMM.FindString(out + errOut); left != "" {
			t.Errorf("%s: %q", c, left)
		}
		_, raw, _ := ran("", c, job, "--json")
		for _, s := range []string{out, errOut, raw} {
			if strings.ContainsAny(s, "\x02\x03\x1f") || strings.Contains(s, `\u0002`) || strings.Contains(s, `\u001f`) {
				t.Errorf("%s: the mark of a figure", c)
			}
		}
	}
	_, out, _ := ran("", "why", job, "seats/front axle.left/seat_mm/min")
	if !strings.Contains(out, "0.1875 in") || inMM.MatchString(out) {
		t.Errorf("why: %s", out)
	}
}
