package job

import (
	"slices"
	"strings"
	"testing"

	"rebush/fits/dim"
)

// TestTyped: answers as they are said at the bench, and what cannot be.
func TestTyped(t *testing.T) {
	for _, c := range []struct {
		of, text string
		want     []string // nil: it cannot be
	}{
		{"job/units", "inch", []string{"in"}}, {"job/units", "inches", []string{"in"}}, {"job/units", "MM", []string{"mm"}},
		{"job/units", "furlong", nil},
		{"owner/keep", "y", []string{"yes"}}, {"owner/keep", "N", []string{"no"}}, {"owner/keep", "Yes", []string{"yes"}},
		{"owner/keep", "maybe", nil},
		{"running/wrong", "binds, noisy", []string{"yes", "yes", "no"}}, {"running/wrong", "no", []string{"no", "no", "no"}},
		{"running/wrong", "noisy and nothing", nil}, {"running/wrong", "smells", nil},
		{"look-alikes/loose", "rims", []string{"loose", "tight"}},
		{"bore/worn to", "up", []string{"90"}}, {"bore/worn to", "12 o'clock", []string{"90"}}, {"bore/worn to", "90°", []string{"90"}},
		{"bore/worn to", "90 degrees", []string{"90"}}, {"bore/worn to", "90 deg", []string{"90"}}, {"bore/worn to", "-45", []string{"-45"}},
		{"bore/worn to", "3 o’clock", []string{"0"}}, {"bore/worn to", "6 oclock", []string{"270"}}, {"bore/worn to", "1:30 o'clock", []string{"45"}},
		{"bore/worn to", "9 o'clock", []string{"180"}}, {"bore/worn to", "round", []string{""}}, {"bore/worn to", "13 o'clock", nil},
		{"bore/worn to", "sideways", nil}, {"bore/worn to", "top-left", []string{"135"}},
		{"plates/width", "1/8", nil}, {"plates/width", "3/4", []string{"3/4"}}, {"plates/width", "18,5", []string{"18,5"}},
		{"plates/width", "700 thou", []string{"700 thou"}}, {"plates/width", "0.75", nil}, {"plates/width", "0.75\"", []string{"0.75\""}},
		{"bore/across", "#31", []string{"#31", "#31"}}, {"bore/across", "3,31 3,21", []string{"3,31", "3,21"}},
		{"bore/across", "3.31,3.21", []string{"3.31", "3.21"}}, {"bore/across", "3.31, 3.21", []string{"3.31", "3.21"}},
		{"bore/across", "0.13 in 3.2", []string{"0.13 in", "3.2"}}, {"bore/across", "33.1", nil}, {"bore/across", "3.3 3.2 3.1", nil},
		{"bore/across", ".125 in", []string{".125 in", ".125 in"}},
		{"bore/centre", "10 6.05", []string{"10", "6.05"}}, {"bore/centre", "10.00,6.05", []string{"10.00", "6.05"}},
		{"bore/centre", "[10, 6]", []string{"10", "6"}}, {"bore/centre", "10,05 6,00", []string{"10,05", "6,00"}},
		{"bore/centre", "1 1/8 2", []string{"1 1/8", "2"}}, {"bore/centre", "10", nil}, {"bore/centre", "10 x", nil},
		{"bore/edge", "6.3", []string{"6.3", ""}}, {"bore/edge", "6.3 down", []string{"6.3", "270"}},
		{"bore/edge", "1/4 in 9 o'clock", []string{"1/4 in", "180"}}, {"bore/edge", "6.3 sideways", nil},
		{"gear/module", "48 DP", []string{"48 DP"}}, {"gear/module", "DP 48", []string{"48 DP"}}, {"gear/module", "0.5 mm", []string{"0.5"}},
		{"gear/module", "48", nil}, {"gear/module", "0,5", []string{"0,5"}}, {"gear/teeth", "30 teeth", []string{"30"}},
		{"gear/angle", "20°", []string{"20"}}, {"shaft/load", "400 gf", []string{"400 gf"}}, {"shaft/speed", "240 rpm", []string{"240"}},
		{"shaft/washers", "0.5 0.3 0.3", []string{"0.5", "0.3", "0.3"}}, {"shaft/state", "out", []string{"out of round"}},
		{"shaft/state", "g", []string{"good"}}, {"plates/material", "Zamak", []string{"Zamak"}},
		{"bush/size", "4x6x4", []string{"4", "6", "4", "", ""}}, {"bush/size", "4 × 6 × 4 × 8 × 0.8", []string{"4", "6", "4", "8", "0.8"}},
		{"bush/size", "1/8 3/16 1/4", []string{"1/8", "3/16", "1/4", "", ""}}, {"bush/size", "4 6", nil}, {"bush/size", "4 6 4 8", nil},
		{"bush/class", "r6", []string{"", "r6"}}, {"bush/class", "r6 F7", []string{"F7", "r6"}}, {"bush/class", "m", []string{"measured", "measured"}},
		{"bush/class", "good", nil}, {"bush/class", "F7 H7", nil},
		{"owner/price", "€58", []string{"58 EUR", ""}}, {"owner/price", "58 EUR", []string{"58 EUR", ""}}, {"owner/price", "$58.50 0.5", []string{"58.50 $", "0.5"}},
		{"owner/price", "58 1,5", []string{"58", "1.5"}}, {"owner/value", "1,200", nil}, {"owner/value", "1200 £", []string{"1200 GBP"}},
		{"owner/value", "a lot", nil}, {"shop/rate", "40 €", []string{"40 EUR"}}, {"shop/rate", "40 per hour", []string{"40"}},
		{"shop/reamers", "3 4 1/4", []string{"3", "4", "1/4"}}, {"shop/pins", "1 8 0.01", []string{"1", "8", "0.01"}},
		{"plates/shafts", "two", nil}, {"plates/shafts", "2", []string{"2"}}, {"plates/shafts", "0", nil}, {"plates/shafts", "9", nil},
		{"job/title", "Wagen Süd 🚂", []string{"Wagen Süd 🚂"}}, {"job/title", strings.Repeat("x", 10000), nil},
		{"plates/width", strings.Repeat("9 ", 5000), nil}, {"bore/centre", strings.Repeat("1/2 ", 90), nil}, {"job/title", "a\x00b", nil},
		{"job/title", "\xff\xfe", nil},
	} {
		part, id, _ := strings.Cut(c.of, "/")
		got, wrong := question(part, id).read(c.text, dim.MM)
		if (wrong == "") != (c.want != nil) || wrong == "" && !slices.Equal(got, c.want) {
			t.Errorf("%s: %q is read as %q (%s), want %q", c.of, shorten(c.text), got, wrong, c.want)
		}
		if len(wrong) > 400 {
			t.Errorf("%s: %q: %s", c.of, shorten(c.text), wrong)
		}
	}
}

func shorten(s string) string { return s[:min(len(s), 60)] }
