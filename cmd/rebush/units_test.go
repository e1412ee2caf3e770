package main

import (
	"os"
	"path/filepath"
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
			if strings.ContainsAny(s, "\x02\x03\x1f") || strings.Contains(s, `\u0002`) ||
				strings.Contains(s, `\u001f`) {
				t.Errorf("%s: the mark of a figure", c)
			}
		}
	}
	data, err := os.ReadFile(job)
	if err != nil {
		t.Fatal(err)
	}
	made := filepath.Join(t.TempDir(), "made.yaml")
	shop, _ := filepath.Abs("../../testdata/jobs/shop-wexmarrow.yaml")
	text := strings.Replace(string(data), "shop: shop-wexmarrow.yaml", "shop: "+shop, 1) +
		"\nmade: {front axle.left: {seat: 0.1885, with: pins}, rear axle.left: {bore: 0.129, with: pins}}\n"
	if err := os.WriteFile(made, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	code, out, errOut := ran("", "inspect", made)
	if !strings.Contains(out, " in") || strings.Contains(out, "accept\n") || inMM.MatchString(out+errOut) {
		t.Errorf("inspect: exit %d: %s%s", code, out, errOut)
	}
	_, out, _ = ran("", "why", job, "seats/front axle.left/seat_mm/min")
	if !strings.Contains(out, "0.1875 in") || inMM.MatchString(out) {
		t.Errorf("why: %s", out)
	}
}
