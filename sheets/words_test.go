package sheets

import (
	"io"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan"
)

func TestNumber(t *testing.T) {
	for f, want := range map[float64]string{0: "0", 0.41: "0.41", 1.2345: "1.23", 12.34: "12.3", 134.5: "135", -27: "-27", 0.0004: "0"} {
		if got := number(f); got != want {
			t.Errorf("number(%v) is %q, want %q", f, got, want)
		}
	}
}

func TestPercent(t *testing.T) {
	for f, want := range map[float64]string{0: "0 in 100", 0.004: "under 1 in 100", 0.005: "1 in 100", 0.872: "87 in 100", 0.9949: "99 in 100", 0.995: "over 99 in 100", 1: "over 99 in 100"} {
		if got := percent(f); got != want {
			t.Errorf("percent(%v) is %q, want %q", f, got, want)
		}
	}
}

// Inch limits are rounded into the mm ones, whatever the side of the last
// digit: 5.0013 mm is 0.196902 in, 5.0011 mm is 0.196894 in.
func TestInchLimitsLieInside(t *testing.T) {
	for _, r := range [][3]string{
		{"5.0011", "5.0120", "0.1969 to 0.1973 in"},
		{"5.0013", "5.0120", "0.1970 to 0.1973 in"},
		{"5.0010", "5.0020", "0.19689 to 0.19692 in"}, // no ten-thousandth lies between
	} {
		if got := units("in").limits(lim(r[0], r[1])); len(got) != 1 || got[0] != r[2] {
			t.Errorf("%s to %s: %q, want %q", r[0], r[1], got, r[2])
		}
	}
}

func TestFiguresAbsent(t *testing.T) {
	u := units("both")
	if got := u.len(plan.MM{}); got != "" {
		t.Errorf("no length prints %q", got)
	}
	if got := u.at(&plan.XY{dim.Typed("1.0")}, false); got != nil {
		t.Errorf("half a place prints %q", got)
	}
	if got := u.limits(nil); got != nil {
		t.Errorf("no limits print %q", got)
	}
	if got := u.at(xy("-0.0001", "0.0400"), true); got[0] != "x +0.000   y +0.040" {
		t.Errorf("a move of nearly nothing prints %q", got[0])
	}
}

func TestPrintable(t *testing.T) {
	for s, want := range map[string]string{
		"plain": "plain", "tab\there": "tab here", "後a台b": "[1 sign that this font lacks]a[1 sign that this font lacks]b", "two\nlines": "two\nlines",
	} {
		if got := printable(s); got != want {
			t.Errorf("printable(%q) is %q, want %q", s, got, want)
		}
	}
}

// Pages hold what must stay together, and each short number of the sources is
// the ledger's own.
func TestSourceNumbers(t *testing.T) {
	p := samplePlan(2)
	keys, numbers, entries := ledgerOf(p)
	if len(keys) == 0 {
		t.Fatal("no source is printed")
	}
	for _, k := range keys {
		if numbers[k] != p.Book.Number(k) {
			t.Errorf("%s is number %d on paper and %d in the ledger", k, numbers[k], p.Book.Number(k))
		}
		if entries[k].Leaf {
			t.Errorf("%s is a reading, not a result", k)
		}
	}
	if got := valueOf("mm", ledger.Entry{Value: 5.012, Unit: "mm"}); got != "5.0120" {
		t.Errorf("a length prints %q", got)
	}
}

// FuzzText: whatever a job says, the sheet is made and written.
func FuzzText(f *testing.F) {
	for _, s := range []string{"front axle", "Πίσω φορείο", "後部", "\xff\xfe", "\U0001F682", "a\nb\tc", "", "wwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwww"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if len(s) > 300 {
			return
		}
		p := samplePlan(1)
		p.Job.Number, p.Job.Title, p.Job.Datum, p.Program = s, s, s, s
		p.Job.Shop.MachineKind = s
		p.Setups[0].Words, p.Setups[0].Name = say.Words(s), s
		for i := range p.Operations {
			op, w := &p.Operations[i], say.Words(s)
			op.Setup, op.Do, op.Tool, op.Go, op.NoGo, op.Gauge, op.GaugeFirst, op.Note, op.Backing, op.FeedWords = s, w, w, w, w, w, w, w, w, w
		}
		p.Findings[0].Text, p.Findings[0].Where = say.Words(s), s
		d, err := Setup(p, Options{Large: true})
		if err != nil {
			t.Fatal(err)
		}
		if bad := checkGeometry(d, &counts{}); len(bad) > 0 {
			t.Fatal(bad[0])
		}
		if err := d.Write(io.Discard); err != nil {
			t.Fatal(err)
		}
	})
}
