package seat

import "testing"

// What is mended is asked for, and each answer says which mend it is: a sound
// seat of an old bush is renewed where that is asked for, and else cut anew.
func TestMendsAreAskedFor(t *testing.T) {
	s := scenery(t)
	s.h.Old = &OldSeat{Low: 5.006, High: 5.010, Sound: true}
	shop := s.shop
	shop.Ways = []Way{s.w}
	for _, c := range []struct {
		asked []Mend
		want  []Mend
		way   []Kind
	}{
		{[]Mend{Renew}, []Mend{Renew}, []Kind{OldSeatWay}},
		{[]Mend{Rebush}, []Mend{Rebush}, []Kind{Reamer}},
		{s.h.Mends(), []Mend{Renew, Rebush}, []Kind{OldSeatWay, Reamer}},
		{nil, nil, nil},
	} {
		as := Search(s.h, c.asked, []Bush{s.b}, shop, s.r)
		if len(as) != len(c.want) {
			t.Fatalf("%v: %d answers", c.asked, len(as))
		}
		for i, a := range as {
			if a.Mend != c.want[i] || a.Way.Kind != c.way[i] || !a.Feasible {
				t.Errorf("%v: answer %d is %q by %v: %v", c.asked, i, a.Mend, a.Way.Kind, a.Fail.Text())
			}
		}
	}
	s.h.Old = nil
	if as := Search(s.h, []Mend{Renew}, []Bush{s.b}, shop, s.r); len(as) != 0 {
		t.Errorf("%d answers where nothing can be renewed", len(as))
	}
	s.h.Cap = 5.032
	if m := s.h.Mends(); len(m) != 1 || m[0] != Renew {
		t.Errorf("under a cap: %v", m)
	}
	if as := Search(s.h, s.h.Mends(), []Bush{s.b}, shop,
		s.r); len(as) != 1 || as[0].Mend != Renew || as[0].Way.Kind != CapWay {
		t.Errorf("under a cap: %+v", as)
	}
}

func TestSecondHoldsAreNamed(t *testing.T) {
	for _, c := range []struct {
		hold Second
		want string
		each int
	}{{0, "", 0}, {Stake, "stake", 1}, {Flange | Compound, "flange and compound", 2}, {Stake | Flange,
		"flange and stake", 2}} {
		if c.hold.String() != c.want || len(c.hold.Each()) != c.each {
			t.Errorf("%q of %d, want %q of %d", c.hold, len(c.hold.Each()), c.want, c.each)
		}
	}
}

// Every question that can refuse a bush says what would seat one, and why to an
// owner; the one that refuses nothing has no words.
func TestEveryQuestionHasItsWords(t *testing.T) {
	asked := map[Question]bool{}
	for _, c := range mends {
		asked[c.question] = true
	}
	for q := CleansUp; q < lastQuestion; q++ {
		f := Fail{Question: q}
		if has := f.WouldSeat() != "" && f.Owner() != ""; has != asked[q] {
			t.Errorf("question %d: has words %v, refuses %v", q, has, asked[q])
		}
	}
}
