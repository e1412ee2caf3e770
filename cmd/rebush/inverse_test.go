package main

import (
	"encoding/json"
	"math"
	"strconv"
	"testing"
)

// TestMeshInverse: the centre distance that a backlash or a contact ratio asks
// for gives back that backlash or ratio.
func TestMeshInverse(t *testing.T) {
	spur := []string{"lookup", "mesh", "spur", "--module", "0.5", "--teeth", "12,32", "--json"}
	worm := []string{"lookup", "mesh", "worm", "--module", "0.5", "--teeth", "20", "--worm-diameter", "6",
		"--wheel-form", "throated", "--json"}
	asked := func(base []string, more ...string) (centre, backlash, contact float64) {
		t.Helper()
		code, out, errOut := ran("", append(append([]string{}, base...), more...)...)
		var a struct {
			Centre   string  `json:"centre_mm"`
			Backlash string  `json:"backlash_mm"`
			Contact  float64 `json:"contact_ratio"`
		}
		if err := json.Unmarshal([]byte(out), &a); err != nil || code != done {
			t.Fatalf("%q: exit %d, %v, %s", more, code, err, errOut)
		}
		c, err := strconv.ParseFloat(a.Centre, 64)
		if err != nil {
			t.Fatal(err)
		}
		b, err := strconv.ParseFloat(a.Backlash, 64)
		if err != nil {
			t.Fatal(err)
		}
		return c, b, a.Contact
	}
	const tol = 1e-6 // mm, the digits that are printed
	for _, base := range [][]string{spur, worm} {
		c, b, _ := asked(base, "--backlash", "0.05")
		if math.Abs(b-0.05) > tol {
			t.Errorf("%q: backlash %v for 0.05", base[2], b)
		}
		if _, again, _ := asked(base, "--centre", strconv.FormatFloat(c, 'f', -1, 64)); math.Abs(again-0.05) > tol {
			t.Errorf("%q: at %v the backlash is %v", base[2], c, again)
		}
		if wide, _, _ := asked(base, "--backlash", "2 thou"); wide <= c {
			t.Errorf("%q: %v for 0.0508 mm is not above %v for 0.05", base[2], wide, c)
		}
	}
	// Nearer than the tight distance teeth have no backlash, and never less.
	for base, near := range map[*[]string]string{&spur: "10.95", &worm: "7.95"} {
		if _, b, _ := asked(*base, "--centre", near); b != 0 {
			t.Errorf("%q at %s: backlash %v", (*base)[2], near, b)
		}
	}
	if _, _, eps := asked(spur, "--contact", "1.2"); math.Abs(eps-1.2) > 1e-6 {
		t.Errorf("contact ratio %v for 1.2", eps)
	}
	for _, more := range [][]string{{"--contact", "9"}, {"--contact", "0"}, {"--backlash", "-1"},
		{"--backlash", "900"}, {"--backlash", "0.05", "--centre", "11"}, {"--contact", "much"}} {
		if code, out, errOut := ran("", append(append([]string{}, spur...), more...)...); code != wrong ||
			out != "" || errOut == "" {
			t.Errorf("%q: exit %d, %q, %q", more, code, out, errOut)
		}
	}
}
