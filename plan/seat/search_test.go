package seat

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
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

// plain is the search without any short cut: every pair judged in full, those
// that no tool was meant for left out afterwards.
func plain(h Hole, bushes []Bush, shop Shop, r Rules) []Answer {
	j := newJudge(h, shop, r)
	ways := shop.waysTo(h.Mends(), h)
	var good, fell []Answer
	sorted := func(list []Answer) []Answer {
		slices.SortStableFunc(list, func(a, b Answer) int {
			of := func(x *Answer) missed {
				m := missed{&x.Bush, &x.Way, x.HeldBy == ByCompound, len(x.Fails), x.gaps()}
				for i := range bushes {
					if bushes[i].Code == x.Bush.Code {
						m.bush = &bushes[i]
					}
				}
				if x.Way.Kind == NoTool {
					m.way = nil
				}
				return m
			}
			return of(&a).compare(of(&b))
		})
		return list
	}
	for i := range bushes {
		b, near := &bushes[i], false
		for k := range ways {
			press, glue := j.asked(b, &ways[k])
			var fallen []Answer
			fits := false
			for _, glued := range []bool{false, true} {
				if glued && !glue || !glued && !press {
					continue
				}
				var a Answer
				j.answer(&a, b, &ways[k], glued, true)
				if a.Feasible {
					good, fits, near = append(good, a), true, true
					continue
				}
				far := false
				for _, f := range a.Fails {
					far = far || f.Question == FitsTight && f.What != noSuchWay && f.Gap > 1
				}
				if !far {
					fallen, near = append(fallen, a), true
				}
			}
			if !fits && len(fallen) > 0 {
				fell = append(fell, sorted(fallen)[0])
			}
		}
		if !near {
			fell = append(fell, j.untooled(b, ways))
		}
	}
	rank(good, &r)
	if fell = sorted(fell); len(fell) > long {
		seen := map[string]bool{}
		fell = slices.DeleteFunc(fell, func(a Answer) bool {
			again := seen[a.Bush.Code]
			seen[a.Bush.Code] = true
			return again
		})
	}
	if len(good) == 0 {
		j.suited(fell)
	}
	return append(good, fell...)
}

// printed is an answer in full, without where in memory its hole stands.
func printed(a Answer) string {
	a.Seen = nil
	return fmt.Sprintf("%+v", a)
}

func same(t *testing.T, got, want []Answer) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%d answers, want %d", len(got), len(want))
	}
	for i := range got {
		if a, b := printed(got[i]), printed(want[i]); a != b {
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

// The order of a list decides nothing: not which seat is best, nor which miss is
// nearest, nor why.
func TestListOrderDoesNotDecide(t *testing.T) {
	h, list, shop, r := crowd(t, 40, 30)
	want := Search(h, h.Mends(), list, shop, r)
	told := func(list []Answer) string {
		out := ""
		for _, a := range list {
			low, high, ok := a.SeatThatWould()
			out += fmt.Sprintln(a.Bush.Code, a.Way.Name, a.HeldBy, a.Feasible, a.Fail.Text(), len(a.Fails), a.Finish,
				a.FinishTool, low, high, ok)
		}
		return out
	}
	mix := rand.New(rand.NewPCG(5, 1))
	for range 5 {
		mix.Shuffle(len(list), func(i, k int) { list[i], list[k] = list[k], list[i] })
		mix.Shuffle(len(shop.Ways), func(i, k int) { shop.Ways[i], shop.Ways[k] = shop.Ways[k], shop.Ways[i] })
		mix.Shuffle(len(shop.BoreReamers), func(i, k int) {
			shop.BoreReamers[i], shop.BoreReamers[k] = shop.BoreReamers[k], shop.BoreReamers[i]
		})
		for i := range list {
			list[i].Index = i
		}
		for i := range shop.Ways {
			shop.Ways[i].Index = i
		}
		if got := Search(h, h.Mends(), list, shop, r); told(got) != told(want) {
			t.Fatalf("%s\nwas\n%s", told(got), told(want))
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
	larger := func(x *Answer) { x.Bush.ODLow, x.Bush.ODHigh = 5, 5.01 }
	thin := func(x *Answer) { x.thin = true }
	for _, c := range []struct {
		name string
		in   []Answer
		want string
	}{
		{"chance first", []Answer{a("a", 0.90, 5, 1), a("b", 0.95, 1, 9)}, "ba"},
		{"within two points the metal", []Answer{a("a", 0.99, 1, 1), a("b", 0.975, 2, 9)}, "ba"},
		{"on hand before metal", []Answer{a("a", 0.99, 3, 1, made), a("b", 0.98, 2, 1)}, "ba"},
		{"a thin wall only where nothing else goes", []Answer{a("a", 0.99, 3, 1, thin), a("b", 0.5, 2, 1, made)}, "ba"},
		{"metal alike, then price", []Answer{a("a", 0.99, 2.01, 3), a("b", 0.98, 2.00, 1)}, "ba"},
		{"on hand before price", []Answer{a("a", 0.99, 2, 1, out), a("b", 0.99, 2, 3)}, "ba"},
		{"made before not there before bought", []Answer{a("a", 0.99, 2, 1, buy), a("b", 0.99, 2, 1, out),
			a("c", 0.99, 2, 1, made), a("d", 0.99, 2, 9)}, "dcba"},
		{"priced before not priced", []Answer{a("a", 0.99, 2, 0), a("b", 0.99, 2, 3)}, "ba"},
		{"a sound old seat wins", []Answer{a("a", 0.99, 2, 1), a("b", 0.7, 1, 1, old)}, "ba"},
		{"filled wear comes last", []Answer{a("a", 0.99, 2, 1, filled), a("b", 0.5, 1, 1)}, "ba"},
		{"the name last", []Answer{a("b", 0.99, 2, 1), a("a", 0.99, 2, 1)}, "ab"},
		{"the smaller first", []Answer{a("a", 0.99, 2, 1, larger), a("b", 0.99, 2, 1)}, "ba"},
		{"no edge known", []Answer{a("a", 0.9, math.Inf(1), 3), a("b", 0.91, math.Inf(1), 1)}, "ba"},
	} {
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
		j.answer(&a, &c.b, &c.w, false, false)
		o := j.odds(&a)
		o.UMin, o.UMax = 0, 0.05
		_, before, _ := o.Parts()
		o.UMin += rapid.Float64Range(0, 0.02).Draw(t, "from below")
		o.UMax -= rapid.Float64Range(0, 0.02).Draw(t, "from above")
		if _, after, _ := o.Parts(); after > before+1e-5 { // it is added up in slices
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
		j.answer(&a, &c.b, &c.w, false, false)
		c.h.Edge += rapid.Float64Range(0, 6).Draw(t, "more")
		j = newJudge(c.h, c.shop, c.r)
		j.answer(&b, &c.b, &c.w, false, false)
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
