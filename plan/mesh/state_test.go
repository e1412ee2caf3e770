package mesh

import (
	"math"
	"testing"

	"rebush/fits/table"

	"pgregory.net/rapid"
)

func TestState(t *testing.T) {
	w := Worm{Form: Throated, Module: 0.5, Starts: 1, Teeth: 20, PitchDiameter: 6, Angle: 20, WheelTip: 11}
	// 8.0684 gives 0.05 (worked in TestWindowByHand); 0.10 nearer there is none.
	was, found := StateAt(w, 8.06845), StateAt(w, 7.96845)
	near(t, "was", was.Backlash, 0.05, 1e-6)
	near(t, "found", found.Backlash, 0, 0)
	near(t, "short", found.Short, 0.03155, 1e-9)
	if got, want := WearWords(was, found, "the worm"), "closer to the worm by 0.10 mm; backlash found 0, was 0.05 mm"; got.String() != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := WearWords(found, was, "the worm"), "away from the worm by 0.10 mm; backlash found 0.05 mm, was 0"; got.String() != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := WearWords(was, was, "the worm"), "wear has not changed the distance to the worm; backlash 0.05 mm"; got.String() != want {
		t.Errorf("%q, want %q", got, want)
	}
	if s := StateAt(w, 30); !s.Apart || s.Backlash != 0 || s.ContactRatio != 0 {
		t.Errorf("%+v", s)
	}
	near(t, "tightest tooth", must[float64](t)(TightestTooth(w, 8.1, 0.2)), 0, 1e-12)
	for _, r := range []struct {
		found        float64
		moved, binds bool
		want         Agreement
	}{
		{8.05, false, false, Agrees}, {7.99, false, false, Agrees}, // within 2 x 0.0283
		{7.93, false, false, Contradicts}, {7.93, true, false, CannotReach}, {7.93, false, true, CannotReach}, {8.05, true, true, Agrees},
	} {
		if got, short := Agree(w, r.found, 0.02, 0.02, r.moved, r.binds); got != r.want || short < 0 {
			t.Errorf("%+v: %s (%v)", r, got, short)
		}
	}
}

func TestStateIsAlwaysFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := genSpur(t)
		if s.Validate() != nil {
			t.Skip()
		}
		st := StateAt(s, rapid.OneOf(rapid.Float64(), rapid.Float64Range(0, 100)).Draw(t, "a"))
		for _, v := range []float64{st.Centre, st.Backlash, st.Normal, st.ContactRatio, st.Short} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%+v", st)
			}
		}
		if st.Backlash < 0 || st.Short < 0 || st.Normal > st.Backlash {
			t.Fatalf("%+v", st)
		}
	})
}

// A shop's own backlash table never makes a panic or a figure that is none.
func FuzzClasses(f *testing.F) {
	f.Add("class,from_dp,to_dp,least_in,most_in,source\nA,20,45,0.004,0.008,x\nB,20,60,0.002,0.004,x\n")
	f.Add("class,from_dp,to_dp,least_in,most_in,source\nA,20,45,NaN,0.008,x\n")
	f.Add("class,from_dp,to_dp,least_in,most_in,source\nA,45,20,1e400,-1,\n")
	f.Fuzz(func(t *testing.T, text string) {
		tab, err := table.Parse("backlash", "a shop's file", []byte(text))
		if err != nil {
			t.Skip()
		}
		lib := table.BuiltIn()
		if lib.Replace(tab) != nil {
			t.Skip()
		}
		d, err := HandbookWish(lib, 0.5)
		if err == nil && !(d.Lo > 0 && d.Hi >= d.Lo && !math.IsInf(d.Hi, 0)) {
			t.Errorf("%+v from %q", d, text)
		}
	})
}
