package draw

import (
	"strings"
	"testing"

	"github.com/go-pdf/fpdf"
	"pgregory.net/rapid"
)

// The widths measured here are those that the PDF library writes, or boxes
// would be true on the record and false on paper. It rounds each sign to a
// thousandth of the size.
func TestWidthIsThatOfThePDF(t *testing.T) {
	f := fpdf.New("P", "mm", "A4", "")
	f.AddUTF8FontFromBytes(family[Regular], "", fontBytes(Regular))
	f.AddUTF8FontFromBytes(family[Bold], "", fontBytes(Bold))
	for _, s := range []string{"Seat 5.000 to 5.012 mm", "Ø ± µ ≤ ° ›", "Příliš žluťoučký kůň", "Πίσω φορείο", "DO NOT MACHINE"} {
		for face, name := range family {
			f.SetFont(name, "", 12)
			got, want := Width(s, Face(face), 12), f.GetStringWidth(s)
			tol := float64(len([]rune(s))) * 0.0006 * 12 * MMPerPt // half a thousandth for each sign, and a little
			if got < want-tol || got > want+tol {
				t.Errorf("%q in face %d: %.4f mm, the library says %.4f", s, face, got, want)
			}
		}
	}
}

func TestHas(t *testing.T) {
	for _, r := range "aZ09Ø±µ≤≥°řžΩфб’–" {
		if !Has(r) {
			t.Errorf("%q is missing", r)
		}
	}
	for _, r := range []rune{'後', 'א', '\t', 0x7F, 0xFFFD, 0x1F682} {
		if Has(r) {
			t.Errorf("%U counts as printable", r)
		}
	}
	if n := Lacking("a後台b"); n != 2 {
		t.Errorf("%d signs lacking, want 2", n)
	}
}

// No line is wider than its column, and nothing is lost but blanks.
func TestWrap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringOfN(rapid.RuneFrom([]rune("abc WiM,.Ø 0123456789-")), 0, 120, -1).Draw(t, "text")
		w := rapid.Float64Range(8, 120).Draw(t, "width")
		lines := Wrap(s, Bold, 12, w)
		for _, l := range lines {
			if Width(l, Bold, 12) > w+1e-9 {
				t.Fatalf("%q is %.2f mm wide in %.2f", l, Width(l, Bold, 12), w)
			}
		}
		strip := func(s string) string { return strings.Join(strings.Fields(s), "") }
		if got, want := strip(strings.Join(lines, "")), strip(s); got != want {
			t.Fatalf("got %q, want %q", got, want)
		}
	})
}

func TestCut(t *testing.T) {
	if got := Cut("short", Regular, 12, 100); got != "short" {
		t.Errorf("got %q", got)
	}
	got := Cut("a name that is far too long for this", Regular, 12, 30)
	if !strings.HasSuffix(got, "...") || Width(got, Regular, 12) > 30 {
		t.Errorf("got %q, %.1f mm", got, Width(got, Regular, 12))
	}
	if got := Cut("anything", Regular, 12, 1); got != "" {
		t.Errorf("no room gave %q", got)
	}
}
