package draw

import (
	"io"
	"math"
	"strings"
	"testing"
)

func onePage(f func(b *Board)) *Document {
	d := New(A4, "a page")
	d.NewPage()
	b := NewBoard(100)
	f(b)
	d.Place(b, 20, 20)
	return d
}

// What would be wrong on paper without a word is an error here.
func TestFaults(t *testing.T) {
	for want, f := range map[string]func(b *Board){
		"has 10.0 mm":      func(b *Board) { b.Text(0, 5, 10, "wider than its box", Regular, 12) },
		"not in the font":  func(b *Board) { b.Text(0, 5, 90, "後", Regular, 12) },
		"leaves the paper": func(b *Board) { b.Line(0, 0, 0, 290, 0.2) },
		"not finite":       func(b *Board) { b.Line(0, 0, math.NaN(), 1, 0.2) },
		"which is nowhere": func(b *Board) { b.Link(Box{0, 0, 5, 5}, "no such place") },
	} {
		err := onePage(f).Write(io.Discard)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error is %v, want one that says %q", err, want)
		}
	}
	if err := New(A4, "none").Write(io.Discard); err == nil {
		t.Error("a document without a page was written")
	}
}

// Placing moves all of a board and leaves the board as it was.
func TestPlace(t *testing.T) {
	d := New(A4, "twice")
	d.NewPage()
	b := NewBoard(50)
	b.Text(1, 5, 40, "here", Regular, 12)
	b.Path([][2]float64{{0, 0}, {10, 4}, {3, 9}}, true, 0.2, false, Open)
	b.Anchor("a", 2)
	d.Place(b, 20, 30)
	d.Place(b, 20, 60)
	if got := d.Items[1].Points[1]; got != [2]float64{30, 34} {
		t.Errorf("first path at %v", got)
	}
	if got := d.Items[3].Points[1]; got != [2]float64{30, 64} {
		t.Errorf("second path at %v", got)
	}
	if d.Items[0].Block == d.Items[2].Block {
		t.Error("two boards have one number")
	}
	if d.PageOf("a") != 1 || d.PageOf("b") != 0 {
		t.Errorf("anchors on pages %d and %d", d.PageOf("a"), d.PageOf("b"))
	}
}

// The hatching of a ring stays inside it.
func TestRing(t *testing.T) {
	b := NewBoard(100)
	b.Ring(50, 50, 8, 20, 1.5, 0.1)
	if len(b.Items) < 20 {
		t.Fatalf("%d lines", len(b.Items))
	}
	for _, it := range b.Items {
		for f := 0.0; f <= 1; f += 0.1 {
			x := it.Points[0][0] + f*(it.Points[1][0]-it.Points[0][0])
			y := it.Points[0][1] + f*(it.Points[1][1]-it.Points[0][1])
			if r := math.Hypot(x-50, y-50); r < 8-1e-9 || r > 20+1e-9 {
				t.Fatalf("a line of the hatching is at radius %.3f", r)
			}
		}
	}
}

// FuzzTitle: whatever a title holds, the document is written.
func FuzzTitle(f *testing.F) {
	for _, s := range []string{"plain", "Πίσω", "後部", "\xff\xfe", "\U0001F682", "(\\)\r\n", "\xf0\x9f", ""} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		d := New(Letter, s)
		d.NewPage()
		b := NewBoard(50)
		b.Text(0, 5, 40, "x", Bold, 12)
		b.Bookmark(s, 0, 0)
		d.Place(b, 20, 20)
		if err := d.Write(io.Discard); err != nil {
			t.Fatal(err)
		}
	})
}
