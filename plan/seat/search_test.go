package seat

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

// crowd is a shop and a list of bushes as they could stand in a large shop:
// bores and outsides of any size round the scenery, reamers in small steps.
func crowd(t testing.TB, bushes, reamers int) (Hole, []Bush, Shop, Rules) {
	s := scenery(t)
	r := rand.New(rand.NewPCG(3, 7))
	list := make([]Bush, bushes)
	for i := range list {
		b := s.b
		b.Code, b.Index = fmt.Sprintf("drawer %d", i), i
		od := 4 + 0.1*float64(r.IntN(40))
		bore := 2 + 0.1*float64(r.IntN(20))
		b.ODLow, b.ODHigh, b.BLow, b.BHigh = od+0.019, od+0.031, bore+0.010, bore+0.022
		if od-bore < 1 {
			b.BLow, b.BHigh = od-1.79, od-1.778
		}
		switch i % 4 {
		case 0:
			b.Metal = solid
		case 1:
			b.FlangeOD, b.FlangeT, b.Length = 0, 0, 3
		}
		b.Price, b.OnHand = float64(i%7), i%3
		list[i] = b
	}
	shop := s.shop
	for i := range reamers {
		d := 3 + 0.1*float64(i)
		w := Way{Kind: Reamer, Name: fmt.Sprintf("%.2f mm H7 reamer", d), Size: d, Low: d + 0.005, High: d + 0.0118,
			Index: i}
		shop.Ways = append(shop.Ways, w)
		shop.BoreReamers = append(shop.BoreReamers, w)
	}
	shop.Ways = append(shop.Ways, Way{Kind: BoringHead, Name: "boring head", Low: 5, High: 20, Index: reamers})
	shop.BoringFrom, shop.BoringTo = 5, 20
	return s.h, list, shop, s.r
}

// plain is the search without any short cut: every pair judged in full.
func plain(h Hole, bushes []Bush, shop Shop, r Rules) []Answer {
	j := newJudge(h, shop, r)
	ways := shop.waysTo(h.Mends(), h)
	var good, fell, nearest []Answer
	for i := range bushes {
		at := -1
		for k := range ways {
			press, glue := j.asked(&bushes[i], &ways[k])
			var first *Answer
			found := false
			for _, glued := range []bool{false, true} {
				if glued && !glue || !glued && !press {
					continue
				}
				var a Answer
				j.answer(&a, &bushes[i], &ways[k], glued)
				if a.Feasible {
					good, found = append(good, a), true
				} else if first == nil {
					first = &a
				}
			}
			if first == nil || found {
				continue
			}
			fell = append(fell, *first)
			if at < 0 {
				nearest = append(nearest, *first)
				at = len(nearest) - 1
			} else if f, g := first.Fail, nearest[at].Fail; f.Question > g.Question || f.Question == g.Question &&
				f.gap() < g.gap() {
				nearest[at] = *first
			}
		}
	}
	rank(good, &r)
	if len(fell) > long {
		fell = nearest
	}
	return append(good, fell...)
}

func same(t *testing.T, got, want []Answer) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%d answers, want %d", len(got), len(want))
	}
	for i := range got {
		if a, b := fmt.Sprintf("%+v", got[i]), fmt.Sprintf("%+v", want[i]); a != b {
			t.Fatalf("answer %d:\n got %s\nwant %s", i, a, b)
		}
	}
}

// The short cuts change nothing, and the same question has the same answer.
func TestSearchIsTheSameWithoutShortCuts(t *testing.T) {
	for _, n := range []int{3, 60} {
		h, list, shop, r := crowd(t, n, n)
		got := Search(h, h.Mends(), list, shop, r)
		same(t, got, plain(h, list, shop, r))
		same(t, Search(h, h.Mends(), list, shop, r), got)
		if n == 60 && !got[0].Feasible {
			t.Error("nothing in a large shop fits")
		}
	}
}

// The order of the list decides only between candidates that are otherwise
// alike.
func TestListOrderDoesNotDecide(t *testing.T) {
	h, list, shop, r := crowd(t, 40, 30)
	want := Search(h, h.Mends(), list, shop, r)
	for i, k := 0, len(list)-1; i < k; i, k = i+1, k-1 {
		list[i], list[k] = list[k], list[i] // each keeps its index
	}
	got := Search(h, h.Mends(), list, shop, r)
	for i := range want {
		if !want[i].Feasible {
			break
		}
		if got[i].Bush.Code != want[i].Bush.Code || got[i].Way.Name != want[i].Way.Name {
			t.Fatalf("place %d: %s with %s, was %s with %s", i, got[i].Bush.Code, got[i].Way.Name, want[i].Bush.Code,
				want[i].Way.Name)
		}
	}
}

func TestRank(t *testing.T) {
	r := rules(t)
	a := func(code string, chance, metal, price float64, change ...func(*Answer)) Answer {
		x := Answer{Bush: Bush{Code: code, Price: price, Priced: price > 0, OnHand: -1}, Chance: chance,
			Ligament: metal, HeldBy: ByPress, Feasible: true}
		for _, c := range change {
			c(&x)
		}
		return x
	}
	old := func(x *Answer) { x.Mend = Renew }
	filled := func(x *Answer) { x.Filled = true }
	buy := func(x *Answer) { x.Bush.ToBuy = true }
	made := func(x *Answer) { x.Bush.Turned = true }
	out := func(x *Answer) { x.Bush.OnHand = 0 }
	for _, c := range []struct {
		name string
		in   []Answer
		want string
	}{
		{"chance first", []Answer{a("a", 0.90, 5, 1), a("b", 0.95, 1, 9)}, "ba"},
		{"within two points the metal", []Answer{a("a", 0.99, 1, 1), a("b", 0.975, 2, 9)}, "ba"},
		{"metal alike, then price", []Answer{a("a", 0.99, 2.01, 3), a("b", 0.98, 2.00, 1)}, "ba"},
		{"on hand before price", []Answer{a("a", 0.99, 2, 1, out), a("b", 0.99, 2, 3)}, "ba"},
		{"made before not there before bought", []Answer{a("a", 0.99, 2, 1, buy), a("b", 0.99, 2, 1, out),
			a("c", 0.99, 2, 1, made), a("d", 0.99, 2, 9)}, "dcba"},
		{"priced before not priced", []Answer{a("a", 0.99, 2, 0), a("b", 0.99, 2, 3)}, "ba"},
		{"a sound old seat wins", []Answer{a("a", 0.99, 2, 1), a("b", 0.7, 1, 1, old)}, "ba"},
		{"filled wear comes last", []Answer{a("a", 0.99, 2, 1, filled), a("b", 0.5, 1, 1)}, "ba"},
		{"list order last", []Answer{a("a", 0.99, 2, 1), a("b", 0.99, 2, 1)}, "ab"},
		{"no edge known", []Answer{a("a", 0.9, math.Inf(1), 3), a("b", 0.91, math.Inf(1), 1)}, "ba"},
	} {
		for i := range c.in {
			c.in[i].Bush.Index = i
		}
		rank(c.in, &r)
		got := ""
		for _, x := range c.in {
			got += x.Bush.Code
		}
		if got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// A narrower window for the interference never makes the press likelier, and a
// larger doubt never asks for less clean-up.
func TestNarrowerWindowLowersTheChance(t *testing.T) {
	s := scenery(t)
	rapid.Check(t, func(t *rapid.T) {
		c := s
		c.outside(rapid.Float64Range(-0.005, 0.02).Draw(t, "outside"))
		j := newJudge(c.h, c.shop, c.r)
		var a Answer
		j.answer(&a, &c.b, &c.w, false)
		o := j.odds(&a)
		o.UMin, o.UMax = 0, 0.05
		_, before, _ := o.Parts()
		o.UMin += rapid.Float64Range(0, 0.02).Draw(t, "from below")
		o.UMax -= rapid.Float64Range(0, 0.02).Draw(t, "from above")
		if _, after, _ := o.Parts(); after > before+1e-9 {
			t.Fatalf("chance of the press rose from %v to %v", before, after)
		}
		u, more := rapid.Float64Range(0, 0.1).Draw(t, "u"), rapid.Float64Range(0, 0.1).Draw(t, "more")
		h := c.h
		h.USurvey = u
		less := Allow(h, c.r)
		h.USurvey = u + more
		if Allow(h, c.r) < less {
			t.Fatalf("a doubt of %v asks for less than one of %v", u+more, u)
		}
	})
}

// More metal at the edge never brings a reason of the wall, the clean-up or the
// fit. (It may close a bore further: a stiff plate gives way less.)
func TestMoreMetalNeverSpoilsTheWall(t *testing.T) {
	s := scenery(t)
	rapid.Check(t, func(t *rapid.T) {
		c := s
		c.h.Edge = 2.6 + rapid.Float64Range(0, 6).Draw(t, "edge")
		c.outside(rapid.Float64Range(-0.005, 0.06).Draw(t, "outside"))
		if rapid.Bool().Draw(t, "solid") {
			c.b.Metal = solid
		}
		if rapid.Bool().Draw(t, "brass") {
			c.h.Plate2 = brass
		}
		j := newJudge(c.h, c.shop, c.r)
		var a, b Answer
		j.answer(&a, &c.b, &c.w, false)
		c.h.Edge += rapid.Float64Range(0, 6).Draw(t, "more")
		j = newJudge(c.h, c.shop, c.r)
		j.answer(&b, &c.b, &c.w, false)
		if q := b.Fail.Question; a.Feasible && q > 0 && q <= HoldsBush {
			t.Fatalf("fell with more metal: %s", b.Fail.Text())
		}
		if a.Fail.Question > WallStands && b.Fail.Question == WallStands {
			t.Fatalf("more metal spoils the wall: %s", b.Fail.Text())
		}
	})
}

// Four bores over 500 bushes and 60 reamers.
func BenchmarkSearch(b *testing.B) {
	h, list, shop, r := crowd(b, 500, 60)
	b.ReportAllocs()
	for b.Loop() {
		for i := range 4 {
			g := h
			g.Edge += 0.1 * float64(i)
			if as := Search(g, g.Mends(), list, shop, r); len(as) == 0 {
				b.Fatal("no answer")
			}
		}
	}
}
