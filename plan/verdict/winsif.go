package verdict

import (
	"fmt"
	"math"
)

// winsIf solves for the figure at which the runner-up would be chosen: the
// rate of the shop, else the price of the other truck, else the chance that it
// is sound. It asks the decision itself, not a formula beside it.
func (c *Case) winsIf(list []weighed, best, second int) string {
	name := list[second].Name
	if list[best].Name == Leave {
		switch {
		case c.complaint() == "":
			return "if it rubs, or the owner complains of it"
		default:
			return fmt.Sprintf("if the play grew beyond %.2f mm", c.Limits.LeaveMM)
		}
	}
	wins := func(change func(*Case, float64)) func(float64) bool {
		return func(v float64) bool {
			t := *c
			if c.Other != nil {
				other := *c.Other
				t.Other = &other
			}
			change(&t, v)
			l := t.weigh()
			i, _ := choose(l, t.Limits.Tie)
			return i >= 0 && l[i].Name == name
		}
	}
	if c.Rate == nil {
		if name == Swap {
			if v, ok := turn(0, 0, 1000, wins(func(t *Case, v float64) { t.Rate = &v })); ok {
				return fmt.Sprintf("at %s an hour or more, swap", show(v, 0))
			}
			return "at no rate up to 1000 an hour"
		}
		return fmt.Sprintf("if it took %s hours less", num(c.less(list, second)))
	}
	if v, ok := turn(*c.Rate, 0, 10**c.Rate, wins(func(t *Case, v float64) { t.Rate = &v })); ok {
		return fmt.Sprintf("at %s an hour instead of %s, %s", show(v, *c.Rate), num(*c.Rate), name)
	}
	if c.Other != nil && list[best].Name == Swap || name == Swap {
		p := c.Other.Price
		if v, ok := turn(p, 0, math.Max(10*p, 1000), wins(func(t *Case, v float64) { t.Other.Price = v })); ok {
			return fmt.Sprintf("with another truck at %s instead of %s, %s", show(v, p), num(p), name)
		}
		if c.Other.SecondHand {
			p := c.swapChance()
			if v, ok := turn(p, 0, 1, wins(func(t *Case, v float64) { t.Other.Chance = &v })); ok {
				return fmt.Sprintf("if %.0f in 100 second-hand trucks were sound instead of %.0f, %s", 100*v, 100*p, name)
			}
		}
	}
	return fmt.Sprintf("at no rate; it would have to cost %s less", num(c.less(list, second)))
}

// less is by how much the runner-up would have to be cheaper to be chosen.
func (c *Case) less(list []weighed, second int) float64 {
	cost := list[second].cost
	v, _ := turn(0, 0, cost, func(d float64) bool {
		l := append([]weighed(nil), list...)
		l[second].cost = cost - d
		i, _ := choose(l, c.Limits.Tie)
		return i == second
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

// num shows a figure as a person would say it: whole from 20 on, else with up
// to two places.
func num(v float64) string {
	if math.Abs(v) >= 20 {
		return fmt.Sprintf("%.0f", v)
	}
	return fmt.Sprintf("%.4g", math.Round(v*100)/100)
}

// show shows a break-even beside the figure now, never rounded so far that it
// would not win: away from now.
func show(v, now float64) string {
	step := 0.01
	if math.Abs(v) >= 20 {
		step = 1
	}
	if v < now {
		return num(math.Floor(v/step+1e-9) * step)
	}
	return num(math.Ceil(v/step-1e-9) * step)
}
