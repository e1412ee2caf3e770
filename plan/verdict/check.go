package verdict

import (
	"errors"
	"fmt"
	"math"
)

// check refuses a case with figures that are none.
func (c *Case) check() error {
	figures := []float64{c.SetupHours, c.StripHours, c.ShimMinutes, c.Limits.LeaveMM, c.Limits.LookAgainMM, c.Limits.Tie,
		c.Limits.ReworkMinutes, c.Limits.SpoiltMinutes, c.Limits.SecondHand, c.Limits.AdviseLeast, c.Limits.AdviseLost}
	chances := []float64{c.Limits.SecondHand}
	add := func(p *float64) {
		if p != nil {
			figures = append(figures, *p)
		}
	}
	add(c.Rate)
	add(c.Value)
	for _, b := range c.Bores {
		figures = append(figures, b.PlayMM)
	}
	for _, a := range c.Axles {
		figures = append(figures, a.Minutes)
		add(a.Price)
	}
	for _, k := range c.Works {
		figures = append(figures, k.Minutes, k.MetalMM, float64(k.Clampings))
		for _, p := range k.Parts {
			add(p.Price)
		}
		if t := k.Trials; t != nil {
			chances = append(chances, t.Right, t.Rework, t.Spoilt, t.NextBush, t.Lost)
		}
	}
	if c.Other != nil {
		figures = append(figures, c.Other.Price, c.Other.Hours)
		if c.Other.Chance != nil {
			chances = append(chances, *c.Other.Chance)
		}
	}
	for _, v := range figures {
		if !(v >= 0) || math.IsInf(v, 1) {
			return fmt.Errorf("verdict: a price, a time or a size is %v; all are 0 or more", v)
		}
	}
	for _, p := range chances {
		if !(p >= 0 && p <= 1) {
			return fmt.Errorf("verdict: a chance of %v; one lies between 0 and 1", p)
		}
	}
	if len(c.Bores) == 0 {
		return errors.New("verdict: no bore")
	}
	return nil
}
