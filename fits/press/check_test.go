package press_test

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"rebush/fits/press"
)

// What cannot be is refused in words.
func TestValidate(t *testing.T) {
	good := bush46(0)
	if err := good.Validate(); err != nil {
		t.Fatal(err)
	}
	for say, spoil := range map[string]func(*press.Seat){
		"is not smaller than its outside": func(s *press.Seat) { s.Di = 6 },
		"cannot be below 0":               func(s *press.Seat) { s.Di = -1 },
		"outside of the bush":             func(s *press.Seat) { s.D = math.NaN() },
		"is not larger than its seat":     func(s *press.Seat) { s.Wall = press.Ring{OD: 6} },
		"breaks out":                      func(s *press.Seat) { s.Wall = press.Edge{} },
		"seat breaks out; there must":     func(s *press.Seat) { s.Wall = press.Boss{OD: 24, Ecc: 9} },
		"off the middle":                  func(s *press.Seat) { s.Wall = press.Boss{OD: 24, Ecc: -1} },
		"nothing is said":                 func(s *press.Seat) { s.Wall = nil },
		"bush's Poisson":                  func(s *press.Seat) { s.Bush.Nu = 0.6 },
		"housing's modulus":               func(s *press.Seat) { s.Housing.E = 0 },
		"housing's yield":                 func(s *press.Seat) { s.Housing.Yield = math.Inf(1) },
		"seat's length":                   func(s *press.Seat) { s.L = -1 },
		"too thin":                        func(s *press.Seat) { s.Wall = press.Edge{Ligament: 1e-9} },
		"is no measure":                   func(s *press.Seat) { s.Wall = press.Edge{Ligament: math.Inf(1)} },
	} {
		s := good
		spoil(&s)
		if err := s.Validate(); err == nil || !strings.Contains(err.Error(), say) {
			t.Errorf("%+v: %v; want %q in it", s, err, say)
		}
	}
	for _, u := range []float64{-1, math.NaN(), 1, math.Inf(1)} {
		if good.CheckInterference(u) == nil {
			t.Errorf("an interference of %v passed", u)
		}
	}
}

// Whatever passes Validate has a finite answer.
func FuzzAt(f *testing.F) {
	f.Add(6.0, 4.0, 4.0, 24.0, 0.0, 85500.0, 0.3, 100000.0, 0.34, 80.0, 0.012, 1)
	f.Add(6.0, 0.0, 4.0, 1e9, 1e8, 1e-6, 0.0, 1e12, 0.5, 0.0, 1e300, 2)
	f.Add(1e-6, 0.0, 0.0, 1e9, 0.0, 1e12, 0.5, 1e-6, 0.5, 1e12, 1e-300, 0)
	f.Fuzz(func(t *testing.T, d, di, l, od, ecc, ea, na, ei, ni, y, u float64, kind int) {
		s := press.Seat{D: d, Di: di, L: l, Housing: press.Elastic{E: ea, Nu: na, Yield: y}, Bush: press.Elastic{E: ei, Nu: ni, Yield: y}}
		s.Wall = []press.Wall{press.Ring{OD: od}, press.Boss{OD: od, Ecc: ecc}, press.Edge{Ligament: ecc}, press.Infinite{}}[uint(kind)%4]
		if s.Validate() != nil || math.IsNaN(u) || math.IsInf(u, 0) {
			return
		}
		st := s.At(u)
		v := reflect.ValueOf(st)
		for i := range v.NumField() {
			if x := v.Field(i); x.Kind() == reflect.Float64 && (math.IsNaN(x.Float()) || math.IsInf(x.Float(), 0)) {
				t.Fatalf("%+v at %v: %s is %v", s, u, v.Type().Field(i).Name, x)
			}
		}
		p, hoop := s.HeldAt(u)
		for _, x := range []float64{p, hoop, s.Force(0.2, st.PHigh), s.Torque(0.2, st.PHigh), s.InterferenceFor(1)} {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Fatalf("%+v at %v: %v", s, u, x)
			}
		}
	})
}
