package verdict

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// By hand:
//
//	re-bush: 80 min = 1.3333 h, one clamping 0.5, strip and rebuild 1.0: 2.8333 h
//	         2.8333 x 40 = 113.3333; two bushes 1.70
//	         rework 0.10 x 10/60 x 40 = 0.6667
//	         spoilt 0.05 x (20/60 x 40 + 0.85) = 0.7092
//	         another 0.03 x (13.3333 + 0.85) = 0.4255
//	         lost 0.01 x (65 + 0.5 x 40 = 85) = 0.85
//	         in all 117.6847
//	plug:    160 min, two clampings, 1: 4.6667 h, 186.6667 + 1.70 + 0.10 x 6.6667 = 189.0333
//	swap:    (65 + 0.5 x 40) x (1 + 0.2) = 102.00
//
// 117.68 is more than a tenth above 102, so swap. With the rate r:
// re-bush (2.83333 + 0.016667 + 0.016667 + 0.01 + 0.005) r + 1.70 + 0.0425 +
// 0.0255 + 0.65 = 2.881667 r + 2.418; it is chosen once that is at most
// 1.1 x 1.2 x (65 + 0.5 r) = 85.8 + 0.66 r: r = 83.382/2.221667 = 37.531.
func TestMoneyByHand(t *testing.T) {
	r := decide(t, tram())
	re, pl, sw := rowOf(t, r, Rebush), rowOf(t, r, Plug), rowOf(t, r, Swap)
	if math.Abs(*re.Hours-2.83333) > 1e-4 || math.Abs(*re.Cost-117.6847) > 1e-3 || *re.FirstTimeRight != 0.81 || *re.Lost != 0.01 {
		t.Errorf("re-bush %v h, %v, %v, %v", *re.Hours, *re.Cost, *re.FirstTimeRight, *re.Lost)
	}
	if math.Abs(*pl.Hours-4.66667) > 1e-4 || math.Abs(*pl.Cost-189.0333) > 1e-3 {
		t.Errorf("plug %v h, %v", *pl.Hours, *pl.Cost)
	}
	if math.Abs(*sw.Cost-102) > 1e-9 || *sw.Hours != 0.5 || *sw.FirstTimeRight != 0.8 {
		t.Errorf("swap %v, %v h, %v", *sw.Cost, *sw.Hours, *sw.FirstTimeRight)
	}
	if r.Choice != Swap || !r.Cures || r.Repairs() || r.RunnerUp == nil || r.RunnerUp.Name != Rebush {
		t.Fatalf("%s before %+v", r.Choice, r.RunnerUp)
	}
	if want := "at 37 an hour instead of 40, re-bush"; r.RunnerUp.WinsIf.String() != want {
		t.Errorf("wins %q, want %q", r.RunnerUp.WinsIf, want)
	}
	if want := "Another truck is the better way: about 102 USD all told, counting that 80 in 100 second-hand ones turn out sound, " +
		"against 118 USD for new bearings; the original truck would be given up."; r.Sentence.String() != want {
		t.Errorf("%s", r.Sentence)
	}
	// The break-even is one: 37 turns it, 38 does not.
	for rate, want := range map[float64]Name{37: Rebush, 38: Swap} {
		c := tram()
		c.Rate = &rate
		if got := decide(t, c); got.Choice != want {
			t.Errorf("at %v: %s", rate, got.Choice)
		}
	}
}

// Of bushes of several prices the dearest is what a spoilt one costs; what has
// to be bought besides is paid once and never spoilt. By hand, at 30 an hour:
// 80 min, a clamping, strip: 2.8333 h, 85; bushes 4 and 2, a reamer 22: 28;
// spoilt 0.1 x (10 + 4) = 1.40; in all 114.40.
func TestDearestBushAndWhatIsBought(t *testing.T) {
	c := tram()
	k := c.work(Rebush)
	k.Parts = []Part{{"a", at(4), true}, {"b", at(2), true}, {"5.5 H7 reamer", at(22), false}}
	k.Trials = &Trials{Right: 0.9, Spoilt: 0.1}
	c.Rate, c.Other = at(30), nil
	if got := *rowOf(t, decide(t, c), Rebush).Cost; math.Abs(got-114.40) > 1e-9 {
		t.Errorf("cost %v, want 114.40", got)
	}
	// Without trials nothing is expected to go wrong, and nobody says a chance.
	k.Trials = nil
	o := rowOf(t, decide(t, c), Rebush)
	if math.Abs(*o.Cost-113) > 1e-9 || o.FirstTimeRight != nil || o.Lost != nil {
		t.Errorf("without trials %+v", o)
	}
}

// A lost truck costs the least of what it is worth and of another one: with 20
// for it 0.01 x 20 = 0.20 in the place of 0.85, so 117.0347; with neither known
// 116.8347, and that is said.
func TestLostTruck(t *testing.T) {
	for name, row := range map[string]struct {
		change func(*Case)
		want   float64
		said   bool
	}{
		"the other one":     {func(*Case) {}, 117.6847, false},
		"worth less":        {func(c *Case) { c.Value = at(20) }, 117.0347, false},
		"worth more":        {func(c *Case) { c.Value = at(300) }, 117.6847, false},
		"worth, no other":   {func(c *Case) { c.Value, c.Other = at(120), nil }, 118.0347, false},
		"nobody knows that": {func(c *Case) { c.Other = nil }, 116.8347, true},
	} {
		c := tram()
		c.KeepOriginal = true
		row.change(&c)
		r := decide(t, c)
		if got := *rowOf(t, r, Rebush).Cost; math.Abs(got-row.want) > 1e-3 || has(r, "loss") != row.said {
			t.Errorf("%s: %v, want %v; %+v", name, got, row.want, r.Findings)
		}
	}
}

// By hand: re-bush is 2.8333 h and 117.6847 (TestMoneyByHand), an axle 45
// minutes and 6 on top of it: 3.5833 h, 117.6847 + 0.75 x 40 + 6 = 153.6847.
func TestNewAxleByHand(t *testing.T) {
	c := tram()
	c.Axles[0] = Axle{Name: "front axle", State: "bent", HasNew: true, Price: at(6), Minutes: 45}
	r := decide(t, c)
	o := rowOf(t, r, NewAxle)
	if math.Abs(*o.Hours-3.58333333) > 1e-6 || math.Abs(*o.Cost-153.6847) > 1e-3 || *o.FirstTimeRight != 0.81 || r.Plans[NewAxle] != Rebush {
		t.Errorf("%v hours, %v, %v on the plan of %s", *o.Hours, *o.Cost, *o.FirstTimeRight, r.Plans[NewAxle])
	}
	// It goes on the way that would be chosen, not on the cheapest.
	c.work(Rebush).Trials.Right = 0.3
	if r = decide(t, c); r.Plans[NewAxle] != Plug {
		t.Errorf("on %s", r.Plans[NewAxle])
	}
	// An axle that gets no new bearings eats none.
	c = tram()
	c.Axles = append(c.Axles, Axle{Name: "rear axle", State: "pitted"})
	if r = decide(t, c); !rowOf(t, r, Rebush).Cures || rowOf(t, r, NewAxle).OK {
		t.Errorf("the journal of an axle that is left alone counts: %+v", rowOf(t, r, Rebush))
	}
}

// In hours only the price of another truck cannot be weighed: the repair is
// chosen, and the rate is named from which it would not be. By hand, as above:
// the choice turns at a rate of 37.531, so from 38 an hour.
func TestHoursOnly(t *testing.T) {
	c := tram()
	c.Rate = nil
	r := decide(t, c)
	if r.RunnerUp == nil || r.RunnerUp.Name != Swap || r.RunnerUp.WinsIf.String() != "at 38 an hour or more, swap" {
		t.Errorf("runner-up %+v", r.RunnerUp)
	}
	if want := "We advise new bearings: about 2.8 hours of work, against 0.5 hours of work and its price of 65 USD for another truck; " +
		"81 in 100 such jobs come right at the first go."; r.Sentence.String() != want {
		t.Errorf("%s", r.Sentence)
	}
	c.Condition = "cracked"
	if r = decide(t, c); r.Choice != Swap {
		t.Errorf("cracked, no rate: %s", r.Choice)
	}
}

// Whatever the figures: what a runner-up is said to need does turn the choice
// to it, as it is printed, and a dearer hour never makes a way cheaper.
func TestBreakEvenTurns(t *testing.T) {
	turned := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		c := tram()
		c.Rate = at(rapid.Float64Range(5, 120).Draw(t, "rate"))
		c.Other.Price = rapid.Float64Range(10, 300).Draw(t, "price")
		c.work(Rebush).Minutes = rapid.Float64Range(20, 400).Draw(t, "minutes")
		if rapid.Bool().Draw(t, "valued") {
			c.Value = at(rapid.Float64Range(20, 400).Draw(t, "value"))
		}
		r, err := Decide(c)
		if err != nil {
			t.Fatal(err)
		}
		if r.RunnerUp == nil {
			t.Fatal("no runner-up")
		}
		said := r.RunnerUp.WinsIf.String()
		words := strings.Fields(said)
		figure := func(i int) *float64 {
			v, err := strconv.ParseFloat(words[i], 64)
			if err != nil {
				t.Fatalf("%q: %v", said, err)
			}
			return &v
		}
		now := c
		other := *c.Other
		now.Other = &other
		switch {
		case strings.HasPrefix(said, "at ") && !strings.HasPrefix(said, "at no"):
			now.Rate = figure(1)
			turned["rate"]++
		case strings.HasPrefix(said, "with another truck at "):
			now.Other.Price = *figure(4)
			turned["price"]++
		case strings.Contains(said, "second-hand trucks were sound"):
			p := *figure(1) / 100
			now.Other.Chance = &p
			turned["chance"]++
		case strings.HasPrefix(said, "if it cost "):
			list := c.weigh()
			i := slices.IndexFunc(list, func(w weighed) bool { return w.name == r.RunnerUp.Name })
			list[i].cost -= *figure(3)
			if best, _ := c.choose(list); best != i {
				t.Fatalf("said %q, and %s is chosen", said, list[best].name)
			}
			turned["cost"]++
			return
		default:
			t.Fatalf("%q is not understood", said)
		}
		if got, _ := Decide(now); got.Choice != r.RunnerUp.Name {
			t.Fatalf("%s at %v: %s, said %q", r.Choice, *c.Rate, got.Choice, said)
		}
		up := c
		up.Rate = at(*c.Rate * 1.1)
		dear, _ := Decide(up)
		for i, o := range r.Ways {
			if o.Cost != nil && dear.Ways[i].Cost != nil && *dear.Ways[i].Cost < *o.Cost {
				t.Fatalf("%s cheaper at a dearer hour", o.Way)
			}
		}
	})
	if turned["rate"] == 0 {
		t.Error("no break-even was tried")
	}
	t.Log(turned)
}

func TestRefused(t *testing.T) {
	for name, spoil := range map[string]func(*Case){
		"rate":    func(c *Case) { c.Rate = at(-1) },
		"nan":     func(c *Case) { c.Value = at(math.NaN()) },
		"chance":  func(c *Case) { c.Other.Chance = at(1.2) },
		"trials":  func(c *Case) { c.work(Rebush).Trials.Right = 1.01 },
		"minutes": func(c *Case) { c.work(Plug).Minutes = math.Inf(1) },
		"price":   func(c *Case) { c.work(Plug).Parts[0].Price = at(-0.5) },
		"axle":    func(c *Case) { c.Axles[0].Price = at(-6) },
		"tie":     func(c *Case) { c.Limits.Tie = math.NaN() },
		"bores":   func(c *Case) { c.Bores = nil },
	} {
		c := tram()
		spoil(&c)
		if _, err := Decide(c); err == nil {
			t.Errorf("%s: decided", name)
		}
	}
}

// TestBill: by hand, as above: the bill of another truck is 20 of labour, its
// price of 65 and 17 laid by, in all 102; the bill of every way adds up to its
// cost to the hundredth, at any rate.
func TestBill(t *testing.T) {
	sum := func(list []Charge) float64 {
		all := 0.0
		for _, c := range list {
			all += *c.Cost
		}
		return all
	}
	for _, w := range decide(t, tram()).Rows() {
		if w.Way == Swap {
			var got []float64
			for _, c := range w.Bill {
				got = append(got, *c.Cost)
			}
			if !slices.Equal(got, []float64{20, 65, 17}) || *w.Bill[0].Hours != 0.5 {
				t.Errorf("%v", got)
			}
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		c := tram()
		rate := rapid.Float64Range(5, 90).Draw(t, "rate")
		c.Rate = &rate
		r, err := Decide(c)
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range r.Rows() {
			if w.Cost != nil && math.Abs(sum(w.Bill)-*w.Cost) > 1e-9 {
				t.Fatalf("%s at %v: %v is not %v", w.Way, rate, sum(w.Bill), *w.Cost)
			}
		}
	})
	c := tram()
	c.Rate = nil
	for _, w := range decide(t, c).Rows() {
		if w.Bill == nil || len(w.Bill) > 0 {
			t.Errorf("%s without a rate: %v", w.Way, w.Bill)
		}
	}
}
