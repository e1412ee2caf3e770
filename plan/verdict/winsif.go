package verdict

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/say"
)

// far is how many times a rate may differ and still be one that could be.
const far = 4

// winsIf solves for the figure at which the runner-up would be chosen: the
// rate of the shop, else the price of the other truck, else the chance that it
// is sound. It asks the decision itself, not a formula beside it, and again with
// the figure as it is printed. A swap wins only where nothing that may be measured
// or bought first would make a repair the choice.
func (c *Case) winsIf(list []weighed, best, second int) say.Text {
	w := list[second]
	if list[best].name == Leave {
		return "if it rubs, or the owner complains of it"
	}
	first := c.before(w.name)
	for _, b := range first {
		if b.Asked {
			return say.F("at no price, since one would first %v %v", b.Do, b.What)
		}
	}
	wins := func(change func(*Case, float64)) func(float64) bool {
		return func(v float64) bool {
			t := c.with(change, v)
			l := t.weigh()
			if i := t.pick(l); i < 0 || l[i].name != w.name {
				return false
			}
			for i := range first {
				if first[i].repairs(first[i].Case.with(change, v), nil) {
					first[0], first[i] = first[i], first[0] // asked first the next time
					return false
				}
			}
			return true
		}
	}
	atRate := wins(func(t *Case, v float64) { t.Rate = &v })
	switch {
	case w.unweighed:
		if v, ok := turn(0, 0, 1000, atRate); ok {
			if n, ok := beside(v, 0, atRate); ok {
				return say.F("at %v an hour or more, %s", n, w.name)
			}
		}
		return "at no rate up to 1000 an hour"
	case c.Rate == nil:
		return say.F("if it took %v hours less, %s", amountUp(c.less(list, second, first)), w.name)
	}
	if v, ok := turn(*c.Rate, *c.Rate/far, far**c.Rate, atRate); ok {
		if n, ok := beside(v, *c.Rate, atRate); ok {
			return say.F("at %v an hour instead of %v, %s", n, amount(*c.Rate).Apart(v), w.name)
		}
	}
	if c.Other != nil && (list[best].name == Swap || w.name == Swap) {
		atPrice, p := wins(func(t *Case, v float64) { t.Other.Price = v }), c.Other.Price
		if v, ok := turn(p, 0, math.Max(10*p, 1000), atPrice); ok {
			if n, ok := beside(v, p, atPrice); ok {
				return say.F("with another truck at %v instead of %v, %s", n, amount(p).Apart(v), w.name)
			}
		}
		if c.Other.SecondHand {
			p := c.swapChance()
			if v, ok := turn(p, 0, 1, wins(func(t *Case, v float64) { t.Other.Chance = &v })); ok {
				v = outward(100*v, 100*p, 0)
				return say.F("if %.0f in 100 second-hand trucks were sound instead of %.0f, %s", v, 100*p, w.name)
			}
		}
	}
	return say.F("if it cost %v less, %s", say.Join(" ", amountUp(c.less(list, second, first)).Text(), say.Words(c.Currency)), w.name)
}

// outward rounds a break-even away from the figure now, so that it is still one.
func outward(v, now float64, places int) float64 {
	per := math.Pow(10, float64(places))
	if v < now {
		return math.Floor(v*per) / per
	}
	return math.Ceil(v*per) / per
}

// beside is a break-even beside the figure now, rounded away from it: as a
// person would say it where that wins, else to a hundredth. ok is false where
// neither does, because what wins is narrower.
func beside(v, now float64, wins func(float64) bool) (f say.Figure, ok bool) {
	places := 2
	if math.Abs(v) >= 20 {
		places = 0
	}
	for _, n := range [2]int{places, 2} {
		if r := outward(v, now, n); wins(r) {
			return say.Num(r, n, "").Trim(), true
		}
	}
	return f, false
}

// amountUp is an amount that is enough: never rounded below.
func amountUp(v float64) say.Figure { return amount(v).Rounded(dim.Up) }

// less is by how much the runner-up would have to be cheaper to be chosen.
func (c *Case) less(list []weighed, second int, first []Before) float64 {
	cost := list[second].cost
	v, _ := turn(0, 0, cost, func(d float64) bool {
		l := append([]weighed(nil), list...)
		l[second].cost = cost - d
		if c.pick(l) != second {
			return false
		}
		for i := range first {
			if first[i].repairs(&first[i].Case, func(l []weighed) { l[second].cost -= d }) {
				return false
			}
		}
		return true
	})
	return v
}

// turn finds the value nearest to now at which wins becomes true, within lo
// and hi, by steps outwards and halving.
func turn(now, lo, hi float64, wins func(float64) bool) (float64, bool) {
	const steps = 60
	found, at := false, 0.0
	for _, end := range [2]float64{lo, hi} {
		last := now
		for k := 1; k <= steps; k++ {
			v := now + (end-now)*math.Pow(float64(k)/steps, 2)
			if !wins(v) {
				last = v
				continue
			}
			no, yes := last, v
			for range 60 {
				if mid := (no + yes) / 2; wins(mid) {
					yes = mid
				} else {
					no = mid
				}
			}
			if !found || math.Abs(yes-now) < math.Abs(at-now) {
				found, at = true, yes
			}
			break
		}
	}
	return at, found
}
