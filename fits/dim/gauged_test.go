package dim_test

import (
	"encoding/json"
	"math"
	"testing"

	"rebush/fits/dim"
)

// What JSON prints of a figure on both sides of each rounding.
func TestGauged(t *testing.T) {
	for _, c := range []struct {
		got  any
		want string
	}{
		{dim.Size(5.0125), `"5.013"`},
		{dim.Size(5.01249999), `"5.012"`},
		{dim.Size(-0.0004), `"0.000"`},
		{dim.Place(10.00005), `"10.0001"`},
		{dim.Size(math.NaN()), `null`},
		{dim.Places(22, 1), `"22.0"`},
		{dim.Limits(5.0051, 5.0119), `{"min":"5.006","max":"5.011"}`},
		{dim.Limits(5.005, 5.012), `{"min":"5.005","max":"5.012"}`},
		{dim.Sizes(5.0051, 5.0119), `{"min":"5.005","max":"5.012"}`},
		{dim.PlaceXY([2]float64{1, -2.5}), `["1.0000","-2.5000"]`},
		{dim.Number(1.0 / 3), `0.333333333`},
		{dim.Number(math.Inf(1)), `null`},
		{dim.Numbers(1, math.NaN()), `{"min":1,"max":null}`},
	} {
		raw, err := json.Marshal(c.got)
		if err != nil || string(raw) != c.want {
			t.Errorf("%s, want %s (%v)", raw, c.want, err)
		}
	}
	var m dim.Gauged
	if err := json.Unmarshal([]byte(`"5.012"`), &m); err != nil || m.Float() != 5.012 || !m.Length().Given() {
		t.Errorf("%v %v", m, err)
	}
	if err := json.Unmarshal([]byte(`null`), &m); err != nil || m.Given() || m.Length().Given() {
		t.Errorf("%v %v", m, err)
	}
}

// A length as it was typed keeps all its digits: 1/8 in is 3.175 mm exactly,
// and 0.1 mm is 0.00393701 in to a hundred-millionth.
func TestLengthGauged(t *testing.T) {
	for _, c := range []struct {
		text     string
		mm, inch string
	}{{"1/8 in", "3.175", "0.125"}, {"0.1 mm", "0.1", "0.00393701"}, {"3.020", "3.02", "0.11889764"}} {
		l := dim.Must(c.text)
		if l.Gauged().String() != c.mm || l.GaugedInch().String() != c.inch {
			t.Errorf("%s: %s mm, %s in; want %s, %s", c.text, l.Gauged(), l.GaugedInch(), c.mm, c.inch)
		}
	}
	if (dim.Length{}).Gauged().Given() || (dim.Length{}).GaugedInch().Given() {
		t.Error("a length that was not given is a figure")
	}
}
