package mesh

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rebush/fits/dim"
)

// pairOf is a pair 12/36 of module 0.5, nothing measured: tight at 12.
func pairOf(tips ...float64) Drive {
	s := Spur{Module: 0.5, Z1: 36, Z2: 12, Angle: 20}
	if len(tips) == 2 {
		s.Tip1, s.Tip2 = tips[0], tips[1]
	}
	return Drive{Kind: SpurPair, Module: 0.5, Pair: s, Limits: Limits{ContactHard: 1}}
}

// known is how such a pair ran, known to 0.02.
func known(at float64) Ran { return Ran{Original: at, Found: at, U: 0.02} }

// Nothing is left open where both tips agree. With neither measured the prior is
// that of two gears: the mean square of an even shift up to b is b^2/3, a fifth
// of gears have one, and two gears twice that; what goes beyond b lies on it. By
// hand without the clipping u = 0.125 sqrt(2/15) = 0.0456, a little less with it.
func TestSpreadByHand(t *testing.T) {
	moved := Ran{Moved: true}
	if s := pairOf(19, 7).SpreadFrom(0.2, 0.125, moved); s != nil {
		t.Errorf("measured, and yet open: %v", s)
	}
	both := pairOf().SpreadFrom(0.2, 0.125, moved)
	if len(both) != spreadOf || both.U() > 0.0456 || both.U() < 0.0430 {
		t.Errorf("u %v of %d, by hand a little under 0.0456", both.U(), len(both))
	}
	one := pairOf(19, 0).SpreadFrom(0.2, 0.125, moved)
	near(t, "one gear, 0.125 sqrt(1/15)", one.U(), 0.0323, 0.0008)
	none := 0
	for _, v := range one {
		if v == 0 {
			none++
		}
	}
	near(t, "as entered", float64(none)/spreadOf, 0.8, 0.02)
	near(t, "anywhere, 0.125/sqrt 3", Anywhere(0.125).U(), 0.0722, 0.0008)
	// A tip of 19.1 belongs to 36.2 teeth: a shift of 0.1, 0.05 farther off.
	blank := pairOf(19.1, 7).SpreadFrom(0.2, 0.125, moved)
	if blank[0] < -0.002 || blank[spreadOf-1] < 0.048 || blank[spreadOf-1] > 0.052 {
		t.Errorf("between the teeth and the blank: %v to %v", blank[0], blank[spreadOf-1])
	}
}

// A tip of 19.5 is that of 37 teeth: cut to full depth on its blank the wheel runs
// half a module, 0.25, farther off, and that is as likely as all between. It is no
// matter of what nobody measured, whose bound is 0.125; beside a pinion that nobody
// measured the window may lie 0.375 aside.
func TestSpreadOfABlank(t *testing.T) {
	moved := Ran{Moved: true}
	half := 0
	s := pairOf(19.5, 7).SpreadFrom(0.2, 0.125, moved)
	for _, v := range s {
		if math.Abs(v-0.25) < 0.003 {
			half++
		}
	}
	near(t, "on its blank", float64(half)/spreadOf, 0.51, 0.02)
	near(t, "the rest from the teeth as counted", s[0], 0, 0.01)
	near(t, "and half of them up to 0.125", s[spreadOf/4], 0.125, 0.01)
	near(t, "beside a pinion", pairOf(19.5, 0).reach(0.2, 0.125), 0.375, 1e-12)
	ran := pairOf(19.5, 7).SpreadFrom(0.2, 0.125, known(12.33))
	near(t, "it ran where such teeth are tight", ran[spreadOf/2], 0.25, 0.003)
	if far := pairOf(19.5, 7).SpreadFrom(0.2, 0.125, known(12.05))[spreadOf-1]; far > 0.1 {
		t.Errorf("it ran at 12.05, and may be tight at %v", 12+far)
	}
}

// A pair that ran at 12.00, and cannot run nearer, stood no nearer than it seems:
// half a normal distribution, of mean sqrt(2/pi) = 0.79788 and variance 1 - 2/pi =
// 0.36338. With u 0.02 that pulls by 0.79788/0.02 = 39.894 and makes surer by
// 0.63662/0.0004 = 1591.5. Shifted 0.1 nearer it had room, and where it could not
// have run nothing is told; one that was in contact at 12.3051 stood no farther.
func TestTiesByHand(t *testing.T) {
	got := pairOf().TiesOf(Spread{-0.1, 0, 0.1}, known(12.00))
	near(t, "pull", got[1].Pull, 39.894, 0.01)
	near(t, "sure", got[1].Sure, 1591.5, 0.5)
	near(t, "with room", got[0].Pull, 0, 0.01)
	near(t, "no room", got[2].Pull, 0, 0)
	near(t, "in contact", pairOf(19, 7).TiesOf(Spread{0}, known(12.3051))[0].Pull, -39.894, 0.2)
	moved := Ran{Original: 12, Found: 12, U: 0.02, Moved: true}
	near(t, "the mate was moved", pairOf().TiesOf(Spread{0}, moved)[0].Pull, 0, 0)
}

// How it ran cuts the spread: a pair that turned at 12.02 is not cut to run tight
// at 12.1, and one that turned at 12.25 (contact ratio 1 at 12.305) may be.
func TestSpreadOfWhatRan(t *testing.T) {
	d := pairOf()
	tight := d.SpreadFrom(0.2, 0.125, known(12.02))
	wide := d.SpreadFrom(0.2, 0.125, known(12.15))
	if most := tight[spreadOf-1]; most > 0.055 {
		t.Errorf("it ran at 12.02, and may be tight at %v", 12+most)
	}
	if wide[spreadOf-1] < 0.08 {
		t.Errorf("it ran at 12.15, and is not tight beyond %v", 12+wide[spreadOf-1])
	}
	if far := d.SpreadFrom(0.2, 0.125, known(12.40)); far[1] < 0.03 {
		t.Errorf("it was in contact at 12.40, and yet teeth that part at %v are believed", 12.305+far[1])
	}
	binds := known(12.02)
	binds.Original, binds.Binds = 12.15, true
	if got := d.SpreadFrom(0.2, 0.125, binds); got.U() != wide.U() {
		t.Errorf("it binds as found: u %v, and not %v", got.U(), wide.U())
	}
	// What nothing agrees with is left aside.
	if got := d.SpreadFrom(0.2, 0.125, known(11.5)); math.Abs(got.U()-d.SpreadFrom(0.2, 0.125, Ran{Moved: true}).U()) > 1e-12 {
		t.Errorf("nothing agrees: %v", got.U())
	}
	d.Denied = true
	if got := d.SpreadFrom(0.2, 0.125, known(11.96)); got[spreadOf-1] > 0.01 || got[spreadOf/2] > -0.02 {
		t.Errorf("denied, it lies nearer: %v", got)
	}
	// Of a wheel of unknown form a third is straight, and runs 0.0753 farther out.
	w := Drive{Kind: WormDrive, Module: 0.5, Limits: Limits{ContactHard: 1}, Pair: Worm{Form: Unknown, Module: 0.5, Starts: 1,
		Teeth: 24, PitchDiameter: 6, Angle: 20, WheelTip: 13}}
	got := w.SpreadFrom(0.2, 0.125, Ran{Moved: true})
	near(t, "throated or helical", got[spreadOf/2], 0, 0.002)
	near(t, "straight", got[spreadOf*5/6], 0.0753, 0.002)
}

// Whatever was found, a spread keeps within its bound and rises, and one that
// was measured more has no more doubt before it is known how it ran.
func TestSpreadKeepsItsBound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(what string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, what) }
		d := pairOf(19+f("wheel", -0.4, 0.4), f("pinion", 6.8, 7.3))
		if rapid.Bool().Draw(t, "one only") {
			p := d.Pair.(Spur)
			p.Tip2 = 0
			d.Pair = p
		}
		d.Runout = f("run-out", 0, 0.1)
		d.Denied = rapid.Bool().Draw(t, "denied")
		r := Ran{Original: f("original", 11.5, 12.6), Found: f("found", 11.5, 12.6), U: f("u", 0, 0.1),
			Moved: rapid.Bool().Draw(t, "moved"), Binds: rapid.Bool().Draw(t, "binds")}
		bound := f("bound", 0.01, 0.25)
		share := f("share", 0, 1)
		s := d.SpreadFrom(share, bound, r)
		bound = d.reach(share, bound)
		for i, v := range s {
			if math.IsNaN(v) || math.Abs(v) > bound+1e-6 || i > 0 && v < s[i-1] {
				t.Fatalf("%v at %d, bound %v", v, i, bound)
			}
		}
		if s.U() > bound+1e-6 {
			t.Fatalf("u %v beyond %v", s.U(), bound)
		}
	})
	more, less := pairOf(19, 0), pairOf()
	if a, b := more.SpreadFrom(0.2, 0.125, Ran{Moved: true}).U(), less.SpreadFrom(0.2, 0.125, Ran{Moved: true}).U(); a >= b {
		t.Errorf("one tip measured: %v, none: %v", a, b)
	}
}

// Contact is counted on as far as tips reach that nobody measured: 12/36 of
// module 0.5 with tips 0.05/sqrt 3 short, by hand r1 = sqrt(3.485566^2 - 2.819078^2) =
// 2.049871 and r2 = sqrt(9.485566^2 - 8.457233^2) = 4.295483; less 1.2 x 1.476066 is
// 4.574075, and with 11.276311 across: 12.1687.
func TestBlunt(t *testing.T) {
	blunt := must[float64](t)(pairOf().Blunt().CentreForContactRatio(1.2))
	near(t, "nobody measured", blunt, 12.1687, 1e-4)
	short := pairOf(18.95, 6.95)
	if a := must[float64](t)(short.Blunt().CentreForContactRatio(1.2)); a >= blunt || !short.Pair.Measured() {
		t.Errorf("measured at its shortest it reaches %v, unmeasured %v", a, blunt)
	}
	w := Drive{Module: 0.5, Pair: Worm{Form: Helical, Module: 0.5, Starts: 1, Teeth: 24, PitchDiameter: 6, Angle: 20}}
	if a, b := must[float64](t)(w.Blunt().CentreForContactRatio(1.2)), must[float64](t)(w.Pair.CentreForContactRatio(1.2)); a >= b-0.01 {
		t.Errorf("worm: %v, with full tips %v", a, b)
	}
}

// A worm measured over its threads: 7.00 less two modules of 0.5 is the pitch
// diameter 6 of a thread of full depth, and its doubt, 0.05 modules, is added to
// that of the teeth: 0.02 and 0.025 make 0.0320.
func TestWormByItsOutside(t *testing.T) {
	j := wormJob()
	given, _ := drives(t, j)
	j.Gears[0].Worm.PitchDiameter, j.Gears[0].Worm.Tip = dim.Length{}, dim.Must("7.00")
	got, said := drives(t, j)
	if len(got) != 1 || !got[0].Trusted {
		t.Fatalf("%+v %s", got, rulesOf(said))
	}
	near(t, "pitch diameter", got[0].Pair.(Worm).PitchDiameter, 6, 1e-12)
	near(t, "u", got[0].UGeom, math.Hypot(0.02, 0.025), 1e-12)
	near(t, "u of one by a drawing", given[0].UGeom, 0.02, 1e-12)
	near(t, "tight", got[0].Pair.Tight(), 8, 1e-9)
}

// A pair whose limits run from 12.05 to 12.15 stood at 12.30 when it was new,
// known to 0.05. As entered the limits are (12.05 - 12.30)/0.05 = -5 to -3 doubts
// away, 0.00135 of a normal distribution; shifted by 0.20 they are -1 to 1, 0.68269:
// 0.8 x 0.68269/0.10 + 0.2/0.6 = 5.79485 against 0.8 x 0.00135/0.10 + 0.2/0.6 = 0.34413.
func TestStoodInsideItsLimitsWhenNew(t *testing.T) {
	d := Drive{Window: Window{Lo: 12.05, Hi: 12.15}, Limits: Limits{NewRight: 0.8}}
	r := Ran{Original: 12.30, U: 0.05}
	near(t, "as entered", d.stood(0, 0.3, r), 0.34413, 2e-5)
	near(t, "shifted", d.stood(0.2, 0.3, r), 5.79485, 2e-5)
	r.Moved = true
	near(t, "moved since", d.stood(0.2, 0.3, r), 1, 0)
}
