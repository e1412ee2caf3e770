package survey

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"rebush/fits/say"
)

// The example of METHODS.md 6.
func TestAlign(t *testing.T) {
	from := [][2]float64{{0, 0}, {40, 0}, {40, 15}, {0, 15}}
	to := [][2]float64{{12.503, -3.204}, {52.488, -2.335}, {52.164, 12.665}, {12.176, 11.793}}
	var fs []Feature
	for i := range from {
		fs = append(fs, Feature{Name: "hole", From: from[i], To: to[i]})
	}
	f, err := Align(fs)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "angle", f.Angle/deg, 1.246645, 5e-7)
	near(t, "tx", f.T[0], 12.500657, 5e-7)
	near(t, "ty", f.T[1], -3.203602, 5e-7)
	near(t, "rms", f.RMS, 0.002537, 5e-7)
	p, cov := f.Map([2]float64{20, 7.5})
	near(t, "x", p[0], 32.33275, 5e-6)
	near(t, "y", p[1], 4.72975, 5e-6)
	// In the middle only the shift counts: s/sqrt n, s^2 = ssq/(2n - 3).
	near(t, "u", math.Sqrt(cov[0][0]), math.Sqrt(4*f.RMS*f.RMS/5/4), 1e-9)
	if p, _ = f.Map([2]float64{10, 5}); math.Abs(p[0]-22.38951)+math.Abs(p[1]-2.01278) > 2e-5 {
		t.Errorf("(10, 5) maps to %v", p)
	}
	if len(f.Bad) > 0 {
		t.Errorf("sound features called bad: %v", f.Words)
	}
}

func TestAlignBad(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	turned := func(p [2]float64) [2]float64 {
		sin, cos := math.Sincos(0.03)
		return [2]float64{5 + cos*p[0] - sin*p[1] + 0.005*rng.NormFloat64(), 2 + sin*p[0] + cos*p[1] + 0.005*rng.NormFloat64()}
	}
	found, alarms, n := 0, 0, 300
	for range n {
		var fs []Feature
		for i, p := range [][2]float64{{0, 0}, {40, 0}, {40, 15}, {0, 15}, {20, 3}} {
			fs = append(fs, Feature{Name: string(rune('a' + i)), From: p, To: turned(p), U: 0.005})
		}
		f, err := Align(fs)
		if err != nil {
			t.Fatal(err)
		}
		if len(f.Bad) > 0 {
			alarms++
		}
		fs[2].To[1] += 0.08 // a corner bent
		if f, err = Align(fs); err != nil {
			t.Fatal(err)
		}
		if len(f.Bad) == 1 && f.Bad[0] == 2 && strings.Contains(say.Join(" ", f.Words...).String(), `"c"`) {
			found++
		}
	}
	t.Logf("bent corner found %d of %d, false alarms %d", found, n, alarms)
	if found < n*95/100 || alarms > n*6/100 {
		t.Errorf("found %d, false alarms %d of %d", found, alarms, n)
	}
	two := []Feature{{Name: "a", From: [2]float64{0, 0}, To: [2]float64{1, 1}, U: 0.01}, {Name: "b", From: [2]float64{10, 0}, To: [2]float64{11, 1.2}, U: 0.01}}
	f, err := Align(two)
	if err != nil || len(f.Words) == 0 || len(f.Bad) > 0 {
		t.Errorf("two features want a caution: %v %+v", err, f)
	}
	two[1].To[0] = 11.4
	if f, err = Align(two); err != nil || len(f.Bad) != 2 {
		t.Errorf("two features further apart: %v %+v", err, f)
	}
	if _, err = Align(two[:1]); !errors.Is(err, ErrTooFew) {
		t.Errorf("one feature: %v", err)
	}
	two[1].From = two[0].From
	if _, err = Align(two); !errors.Is(err, ErrTooFew) {
		t.Errorf("one place: %v", err)
	}
}

// TestAlignHonest: the mapped place lies within 2u of the truth.
func TestAlignHonest(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 4))
	within, n := 0, 2000
	for range n {
		var fs []Feature
		for _, p := range [][2]float64{{0, 0}, {40, 0}, {38, 15}, {0, 12}} {
			fs = append(fs, Feature{From: p, To: [2]float64{p[0] + 0.01*rng.NormFloat64(), p[1] + 0.01*rng.NormFloat64()}, U: 0.01})
		}
		f, err := Align(fs)
		if err != nil {
			t.Fatal(err)
		}
		at := [2]float64{60, 5}
		p, cov := f.Map(at)
		if dist(p, at) <= 2*math.Sqrt(cov[0][0]+cov[1][1]) {
			within++
		}
	}
	if share := float64(within) / float64(n); share < 0.93 {
		t.Errorf("%.3f within 2u", share)
	}
}
