package dim

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

func TestPrint(t *testing.T) {
	l := Must("#31")
	for _, c := range []struct{ got, want string }{
		{Must("3.200").String(), "3.2 mm"},
		{Must("100").String(), "100 mm"},
		{Must("-0.50").String(), "-0.5 mm"},
		{Must("0").String(), "0 mm"},
		{l.StringMM(3), "3.048"}, {l.StringMM(1), "3.0"}, {l.StringInch(4), "0.1200"}, {l.Thou(1), "120.0"},
		{Must("-0.0004").StringMM(3), "0.000"}, {Must("0.0005").StringMM(3), "0.001"},
		{l.Format(InMM), "3.048 mm"}, {l.Format(InInch), "0.1200 in"}, {l.Format(InBoth), "3.048 mm (0.1200 in)"},
		{Length{}.String() + Length{}.StringMM(3) + Length{}.StringInch(3) + Length{}.Thou(1) + Length{}.Format(InBoth), ""},
		{Must("3.048").Um().String(), "3048"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

func TestParseUnits(t *testing.T) {
	for in, want := range map[string]Units{"mm": InMM, "in": InInch, "both": InBoth} {
		if got, err := ParseUnits(in); err != nil || got != want {
			t.Errorf("%s: %v, %v", in, got, err)
		}
	}
	if _, err := ParseUnits("furlong"); err == nil {
		t.Error("furlong is taken for units")
	}
}

func TestNearestFraction(t *testing.T) {
	for _, c := range []struct {
		l    string
		den  int
		name string
	}{
		{"3.2", 64, "1/8 in"}, {"28.6", 8, "1 1/8 in"}, {"25.4", 64, "1 in"}, {"0.1", 64, "0 in"},
		{"-3.2", 64, "-1/8 in"}, {"5", 64, "13/64 in"}, {"5", 3, ""}, {"5", 0, ""}, {"5", 256, ""},
	} {
		if got, _ := Must(c.l).NearestFraction(c.den); got != c.name {
			t.Errorf("%s to 1/%d: %q, want %q", c.l, c.den, got, c.name)
		}
	}
}

func TestNearestNamed(t *testing.T) {
	for in, want := range map[string]string{
		"3.05": "#31", "6.53": "F", "3.17": "1/8 in", "6.35": "1/4 in", "40": "1 in", "0.01": "#97", "-1": "#97",
	} {
		name, exact := Must(in).NearestNamed()
		if name != want || !Must(name).Equal(exact) {
			t.Errorf("%s: %q %s, want %q", in, name, exact, want)
		}
	}
	if name, exact := (Length{}).NearestNamed(); name != "" || exact.Given() {
		t.Errorf("nothing is named %q", name)
	}
}

func TestRound(t *testing.T) {
	for _, c := range []struct {
		f      float64
		places int32
		dir    Direction
		want   string
	}{
		{3.0004, 3, Nearest, "3.000"}, {3.0005, 3, Nearest, "3.001"}, {3.0001, 3, Up, "3.001"}, {3.0009, 3, Down, "3.000"},
		{-3.0001, 3, Up, "-3.000"}, {-3.0001, 3, Down, "-3.001"},
		{0.1 + 0.2, 1, Up, "0.3"},      // the last bit of the float must not reach the place
		{3.0000000001, 3, Up, "3.000"}, // nor what stands beyond 9 digits
	} {
		if got := OfFloat(c.f).Round(c.places, c.dir).StringMM(c.places); got != c.want {
			t.Errorf("%v to %d places, %v: %s, want %s", c.f, c.places, c.dir, got, c.want)
		}
	}
	for _, f := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if OfFloat(f).Round(3, Up).Given() || OfFloat(f).Given() {
			t.Errorf("%v became a length", f)
		}
	}
}

func TestRoundIsOnItsSide(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.Float64Range(-1000, 1000).Draw(t, "mm")
		exact := OfFloat(f)
		up, down, near := exact.Round(3, Up), exact.Round(3, Down), exact.Round(3, Nearest)
		if up.Less(exact) || exact.Less(down) || Must("0.001").Less(up.Sub(down)) || near.Less(down) || up.Less(near) {
			t.Fatalf("%v: down %s, nearest %s, up %s", f, down, near, up)
		}
	})
}

func TestArithmeticIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyLength().Draw(t, "a"), anyLength().Draw(t, "b")
		if !a.Add(b).Sub(b).Equal(a) || !a.Half().Double().Equal(a) || !a.Times(3).Sub(a.Double()).Equal(a) {
			t.Fatalf("%s and %s", a, b)
		}
		if a.Cmp(b) != -b.Cmp(a) || a.Sub(b).Sign() != a.Cmp(b) || !a.Sub(b).Equal(b.Sub(a).Neg()) {
			t.Fatalf("%s against %s", a, b)
		}
		if !Min(a, Length{}, b).Add(Max(a, b)).Equal(a.Add(b)) || a.Sub(b).Abs().Sign() < 0 {
			t.Fatalf("least and greatest of %s and %s", a, b)
		}
	})
}

func TestNotGivenStaysNotGiven(t *testing.T) {
	var none Length
	one := Must("1")
	for i, l := range []Length{one.Add(none), none.Sub(one), none.Half(), none.Times(4), none.Neg(), none.Abs(), none.Round(1, Up), Min(), Max(none)} {
		if l.Given() {
			t.Errorf("%d: %s", i, l)
		}
	}
	if none.Equal(Must("0")) || !none.Equal(Length{}) {
		t.Error("not given is not 0")
	}
	// cmp compares by Equal, so 1.0 and 1.00 do not differ.
	if d := cmp.Diff(Must("1.0"), OfMM(decimal.New(100, -2))); d != "" {
		t.Error(d)
	}
}

func TestSig9(t *testing.T) {
	for _, c := range []struct{ in, want float64 }{
		{0, 0}, {1.000000004, 1}, {1.000000006, 1.00000001}, {-123456.789012, -123456.789}, {1.23456789012e-7, 1.23456789e-7},
		{math.MaxFloat64, 1.79769313e308},
	} {
		if got := Sig9(c.in); got != c.want {
			t.Errorf("Sig9(%v) = %v, want %v", c.in, got, c.want)
		}
	}
	if !math.IsNaN(Sig9(math.NaN())) || !math.IsInf(Sig9(math.Inf(-1)), -1) {
		t.Error("NaN or -Inf was changed")
	}
}

func TestNear(t *testing.T) {
	for _, c := range []struct {
		in     float64
		places int
		want   float64
	}{{1.23456, 4, 1.2346}, {1.23454, 4, 1.2345}, {-1.23455, 4, -1.2346}, {7.0000004, 6, 7}, {7.0000006, 6, 7.000001}} {
		if got := Near(c.in, c.places); got != c.want {
			t.Errorf("Near(%v, %d) = %v, want %v", c.in, c.places, got, c.want)
		}
	}
}
