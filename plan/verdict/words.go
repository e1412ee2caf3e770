package verdict

import (
	"math"
	"strings"

	"rebush/fits/dim"
	"rebush/fits/say"
)

// amount is money as a person would say it: whole from 20 on, else with up to
// two places.
func amount(v float64) say.Figure {
	if math.Abs(v) >= 20 {
		return say.Num(v, 0, "")
	}
	return say.Num(v, 2, "").Trim()
}

// beside is a break-even beside the figure now, never rounded so far that it
// would not win: away from now.
func beside(v, now float64) say.Figure {
	if v < now {
		return amount(v).Rounded(dim.Down)
	}
	return amount(v).Rounded(dim.Up)
}

// price says an amount, or the hours where there is no rate.
func (c *Case) price(w weighed) say.Text {
	if c.Rate == nil {
		return hours(w)
	}
	return say.Join(" ", amount(w.cost).Text(), say.Words(c.Currency))
}

// hours says a time to a tenth of an hour.
func hours(w weighed) say.Text {
	unit := "hours"
	if math.Round(*w.hours*10) == 10 {
		unit = "hour"
	}
	return say.Num(*w.hours, 1, unit).Trim().Text()
}

// sentence is what an owner is told: first what has to be mended before
// anything is bored, then the choice.
func (c *Case) sentence(list []weighed, best, second int) say.Text {
	return c.mendFirst() + c.choice(list, best, second)
}

func (c *Case) mendFirst() say.Text {
	if len(c.Mend) == 0 || c.doomed() {
		return ""
	}
	var words []string
	why := c.Mend[0].Why
	for _, f := range c.Mend {
		words = append(words, f.Words)
		if f.Why != why {
			why = "each can pass for a worn hole"
		}
	}
	all := strings.Join(words, " and ")
	return say.F("%s%s: that is mended first, since %s. ", strings.ToUpper(all[:1]), all[1:], why)
}

func (c *Case) choice(list []weighed, best, second int) say.Text {
	if best < 0 {
		return c.nothing(list)
	}
	against := say.Text("")
	if second >= 0 && !list[second].unweighed {
		against = say.F(", against %v for %s", c.price(list[second]), list[second].owner)
	}
	return list[best].advise(c, list, list[best], against)
}

// adviseLeave says to leave it, and no more of gears and complaints than is
// known.
func (c *Case) adviseLeave([]weighed, weighed, say.Text) say.Text {
	name, most := c.worst()
	play, where := say.MM(most, 2), spoken(name)
	gears := say.Text("")
	if c.gearsRight() {
		gears = "the gears run right"
	}
	switch {
	case c.doomed():
		return say.F("Leave it as it is: the casting is %s and must not be cut; the most play is %v.",
			c.Condition, play)
	case c.complaint() != "" && gears != "":
		return say.F("Leave the bearings alone: the most play is %v at the %s and %v, "+
			"so what you notice comes from somewhere else.", play, where, gears)
	case c.complaint() != "":
		return say.F("Leave the bearings alone: the most play is %v at the %s, "+
			"so what you notice comes from somewhere else; "+
			"the gears are not known well enough to clear them, so look there too.", play, where)
	case most > c.Limits.LeaveMM+1e-9:
		known := []say.Text{say.F("the %s has %v of play", where, play)}
		if gears != "" {
			known = append(known, gears)
		}
		if c.Asked {
			known = append(known, "nobody complains")
		}
		return "Leave it and have it looked at again: " + and(known) + "."
	case gears != "":
		return say.F("Leave it alone: the most play is %v and %v.", play, gears)
	}
	return say.F("Leave it alone: the most play is %v.", play)
}

func (c *Case) adviseShim(_ []weighed, w weighed, against say.Text) say.Text {
	return say.F("A washer puts it right (%v): about %v%v.", c.ShimFor, c.price(w), against)
}

func (c *Case) adviseWork(list []weighed, w weighed, against say.Text) say.Text {
	allTold, right := say.Text(""), say.Text("")
	if c.Rate != nil {
		allTold = say.F(", %v all told", c.price(w))
	}
	if w.chance != nil {
		right = say.F(", and it comes right at the first go in about %d of 100 such jobs", hundredths(*w.chance))
	}
	return say.F("We advise %s: about %v of work%v%v%v.", w.owner, hours(w), allTold, right, against) +
		c.kept(list, w) + c.dearer(w)
}

// kept says that the original is kept though another truck would cost a little
// less.
func (c *Case) kept(list []weighed, w weighed) say.Text {
	for _, o := range list {
		if o.name == Swap && c.advisable(o) && o.cost < w.cost-1e-9 {
			return say.F(" Another truck would cost about as much; so the original is kept.")
		}
	}
	return ""
}

// dearer says that a repair costs more than the truck is said to be worth.
func (c *Case) dearer(w weighed) say.Text {
	if c.Rate == nil || c.Value == nil || w.cost <= *c.Value+1e-9 {
		return ""
	}
	return say.F(" That is more than the %v that the truck is said to be worth.",
		say.Join(" ", amount(*c.Value).Text(), say.Words(c.Currency)))
}

func (c *Case) adviseSwap(list []weighed, w weighed, against say.Text) say.Text {
	risk, since := say.Text(""), say.Text("")
	if c.Other.SecondHand {
		risk = say.F(", counting that %.0f in 100 second-hand ones turn out sound", 100*c.swapChance())
	}
	if why := c.why(list); why != "" {
		since = ", since " + why
	}
	return say.F("Another truck is the better way%v: about %v all told%v%v; the original truck would be given up%v.",
		since, c.price(w), risk, against, c.givenUp())
}

// givenUp says that the truck that is given up is said to be worth more than the
// other one costs.
func (c *Case) givenUp() say.Text {
	if c.Value == nil || c.Rate == nil || *c.Value <= c.Other.Price {
		return ""
	}
	return say.F(", said to be worth %v", say.Join(" ", amount(*c.Value).Text(), say.Words(c.Currency)))
}

// nothing is what is said where no way cures.
func (c *Case) nothing(list []weighed) say.Text {
	why := c.why(list)
	if why == "" {
		why, _ = c.mustGo()
	}
	switch {
	case c.KeepOriginal:
		why += ", and the original is to be kept"
	case c.Other == nil:
		why += ", and no other truck is offered"
	}
	return "Nothing that we would advise cures it: " + why + "; leave it as it is for now."
}

// why is the reason in an owner's words why this truck is not mended; "" where
// it could be.
func (c *Case) why(list []weighed) say.Text {
	if c.doomed() {
		return say.F("the casting is %s and must not be cut", c.Condition)
	}
	why := say.Text("")
	for _, w := range list {
		switch {
		case !w.cuts:
		case c.advisable(w):
			return ""
		case w.feasible() && w.chance != nil && *w.chance < c.Limits.AdviseLeast:
			why = say.F("%s would come right in only %d of 100 such jobs", w.owner, hundredths(*w.chance))
		case w.feasible():
			why = say.F("%s would lose the truck in %d of 100 such jobs", w.owner, hundredths(*w.lost))
		case why == "" && w.name == Rebush:
			why = w.whyNot
			if w.work != nil && w.work.Owner != "" {
				why = w.work.Owner
			}
		}
	}
	return why
}

// and joins words as they are said.
func and(list []say.Text) say.Text {
	if n := len(list) - 1; n > 0 {
		return say.Join(", ", list[:n]...) + " and " + list[n]
	}
	return say.Join("", list...)
}

// hundredths rounds a chance to whole per cents, never up to certain.
func hundredths(p float64) int {
	if n := int(math.Round(100 * p)); n < 100 {
		return n
	}
	return 99
}

// spoken turns "front axle.left" into "left side of the front axle".
func spoken(bore string) string {
	if shaft, side, ok := strings.Cut(bore, "."); ok {
		return side + " side of the " + shaft
	}
	return bore
}
