package say_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"rebush/fits/dim"
	"rebush/fits/say"
)

type chain struct {
	Name   string
	Text   say.Text
	List   []say.Text
	Pair   [2]say.Text
	By     map[string]say.Text
	Next   *chain
	hidden say.Text
}

// Printed reaches every text, wherever it stands, leaves what it was given, and
// a name that looks like a figure stays.
func TestPrinted(t *testing.T) {
	depth := say.MM(2.54, 2).Text()
	v := chain{Name: "2.54 mm", Text: depth, List: []say.Text{depth, ""}, Pair: [2]say.Text{0: depth},
		By: map[string]say.Text{"a": depth}, Next: &chain{Text: depth}, hidden: depth}
	got := say.Printed(v, dim.InInch)
	want := chain{Name: "2.54 mm", Text: "0.1000 in", List: []say.Text{"0.1000 in", ""}, Pair: [2]say.Text{0: "0.1000 in"},
		By: map[string]say.Text{"a": "0.1000 in"}, Next: &chain{Text: "0.1000 in"}, hidden: depth}
	if d := cmp.Diff(want, got, cmp.AllowUnexported(chain{})); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
	if v.Text != depth || v.List[0] != depth || v.By["a"] != depth || v.Next.Text != depth {
		t.Error("what was given was changed")
	}
	if again := say.Printed(got, dim.InBoth); cmp.Diff(got, again, cmp.AllowUnexported(chain{})) != "" {
		t.Error("what was printed once is printed again")
	}
	p := &v
	if say.Printed(p, dim.InMM) != p {
		t.Error("mm, which a text prints by itself, made a copy")
	}
	if say.Printed((*chain)(nil), dim.InInch) != nil {
		t.Error("nothing became something")
	}
	if n := say.Printed(map[string]int{"mm": 1}, dim.InInch); n["mm"] != 1 {
		t.Error("what holds no text was changed")
	}
}

// Lengths of the plan print from what they were rounded from, and go to their
// last place the way JSON shows them. By hand: 5.0051/25.4 = 0.197051,
// 5.0119/25.4 = 0.197319, 4.7625/25.4 = 0.1875, 4.7719/25.4 = 0.187870.
func TestLengthsOfThePlan(t *testing.T) {
	limits, seat := dim.Limits(5.0051, 5.0119), dim.Sizes(4.7625, 4.7719)
	low, high := say.Ends(*seat)
	for _, c := range []struct {
		f      say.Figure
		mm, in string
	}{
		{say.Range(*limits), "5.006 to 5.011 mm", "0.1971 to 0.1973 in"},
		{say.Range(*seat), "4.763 to 4.772 mm", "0.1875 to 0.1878 in"},
		{say.Size(limits.Min, 3), "5.006 mm", "0.1971 in"},
		{say.Size(limits.Max, 3), "5.011 mm", "0.1973 in"},
		{low, "4.763 mm", "0.1875 in"},
		{high, "4.772 mm", "0.1878 in"},
		{say.Size(dim.Place(0.01449), 3), "0.014 mm", "0.0006 in"}, // not 0.0145, then 0.015
		{say.Size(dim.Typed("5.012"), 3), "5.012 mm", "0.1973 in"},
		{say.Size(dim.Gauged{}, 3), "unknown", "unknown"},
		{say.MM(0.0003, 3).Steady(), "0.000 mm", "0.0000 in"},
		{say.MM(1e-12, 3), "0.000 mm", "0.0000 in"},
		{say.Um(6.3, 1), "6.3 um", "0.25 thou"},
	} {
		if got := c.f.In(dim.InMM); got != c.mm {
			t.Errorf("mm: %q, want %q", got, c.mm)
		}
		if got := c.f.In(dim.InInch); got != c.in {
			t.Errorf("inch: %q, want %q", got, c.in)
		}
	}
	if got := say.MM(4.5, 2).Signed().Number(dim.InInch); got != "+0.1772" {
		t.Errorf("%q", got)
	}
}
