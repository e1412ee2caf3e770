package verdict

import (
	"math"
	"strings"

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

// money is an amount with its currency.
func (c *Case) money(v float64) say.Text {
	return say.Join(" ", amount(v).Text(), say.Words(c.Currency))
}

// price says an amount, or the hours where there is no rate.
func (c *Case) price(w weighed) say.Text {
	switch {
	case c.Rate != nil:
		return c.money(w.cost)
	case w.unweighed:
		return say.F("%v of work and its price of %v", hours(w), c.money(c.Other.Price))
	}
	return hours(w)
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
	return c.afterMending(c.choice(list, best, second), best >= 0 && list[best].name == Leave)
}

// afterMending puts what has to be mended first before a sentence; rest says that
// nothing comes of it for the bearings.
func (c *Case) afterMending(then say.Text, rest bool) say.Text {
	if len(c.Mend) == 0 || c.doomed() {
		return then
	}
	var words []string
	why := c.Mend[0].Why
	for _, f := range c.Mend {
		words = append(words, f.Words)
		if f.Why != why {
			why = "each can pass for a worn hole"
		}
	}
	again := say.Text("If it is still not right, ")
	if rest {
		again = "Beside that, "
	}
	return capital(say.F("%s: mend that first and run it again, since %s. ", strings.Join(words, " and "), why)) + again + small(then)
}

// capital and small begin a sentence with a large letter, or with a small one.
func capital(t say.Text) say.Text { return say.Text(strings.ToUpper(string(t[:1]))) + t[1:] }
func small(t say.Text) say.Text   { return say.Text(strings.ToLower(string(t[:1]))) + t[1:] }

func (c *Case) choice(list []weighed, best, second int) say.Text {
	if best < 0 {
		return c.nothing(list)
	}
	against := say.Text("")
	if second >= 0 && list[best].name != Leave {
		against = say.F(", against %v for %s%v", c.price(list[second]), list[second].owner, c.lacking(list[second]))
	}
	return list[best].advise(c, list, list[best], against)
}

// adviseLeave says to leave it, and no more of gears and complaints than is
// known.
func (c *Case) adviseLeave([]weighed, weighed, say.Text) say.Text {
	name, most := c.worst()
	play := say.MM(most, 2)
	worn := say.Text("no bearing has any play that could be told")
	if name != "" {
		worn = say.F("the most play is %v at the %s", play, spoken(name))
	}
	gears := say.Text("")
	if c.gearsRight() {
		gears = "the gears run right"
	}
	switch {
	case c.doomed():
		return say.F("Leave it as it is: the casting is %s and must not be cut, and %v.", c.Condition, worn)
	case c.complaint() != "" && gears != "":
		return say.F("Leave the bearings alone: %v, and %v, so what you notice comes from somewhere else.", worn, gears)
	case c.complaint() != "":
		return say.F("Leave the bearings alone: %v, so what you notice comes from somewhere else; "+
			"the gears are not known well enough to clear them, so look there too.", worn)
	case most > c.Limits.LeaveMM+1e-9:
		known := []say.Text{say.F("the %s has %v of play", spoken(name), play)}
		if gears != "" {
			known = append(known, gears)
		}
		if c.Asked {
			known = append(known, "nobody complains")
		}
		return "Leave it and have it looked at again: " + and(known) + "."
	case gears != "":
		return say.F("Leave it alone: %v, and %v.", worn, gears)
	}
	return say.F("Leave it alone: %v.", worn)
}

func (c *Case) adviseShim(_ []weighed, w weighed, against say.Text) say.Text {
	return say.F("A washer puts it right (%v): about %v%v.", c.ShimFor, c.price(w), against)
}

func (c *Case) adviseWork(list []weighed, w weighed, against say.Text) say.Text {
	allTold, right := say.Text(""), say.Text("")
	if c.Rate != nil {
		allTold = say.F(", %v%v", c.price(w), AllTold(w.unknown))
	}
	if w.chance != nil {
		right = say.F("; %v such jobs come right at the first go", say.InHundred(*w.chance))
	}
	return say.F("We advise %s: about %v of work%v%v%v.", w.owner, hours(w), allTold, against, right) +
		c.kept(list, w) + c.dearer(w)
}

// kept says why a repair is chosen though another way would cost a little less:
// the original is kept, or less metal is taken off.
func (c *Case) kept(list []weighed, w weighed) say.Text {
	cheaper := say.Text("")
	for _, o := range list {
		switch {
		case o.name == w.name || !c.advisable(o) || o.cost >= w.cost-1e-9:
		case o.name == Swap:
			if len(w.unknown) > 0 {
				return " Another truck would cost about as much, or less once those have a price; the original is kept."
			}
			return " Another truck would cost about as much, so the original is kept."
		default:
			cheaper = say.F(" It costs a little more than %s, and takes off less metal.", o.owner)
		}
	}
	return cheaper
}

// dearer says that a repair costs more than the truck is said to be worth.
func (c *Case) dearer(w weighed) say.Text {
	if c.Rate == nil || c.Value == nil || w.cost <= *c.Value+1e-9 {
		return ""
	}
	return say.F(" The repair costs more than the %v that the truck is said to be worth.", c.money(*c.Value))
}

func (c *Case) adviseSwap(list []weighed, w weighed, against say.Text) say.Text {
	risk, since, all := say.Text(""), say.Text(""), say.Text(" all told")
	if w.unweighed {
		all = ""
	}
	if c.Other.SecondHand {
		risk = say.F(", counting that %.0f in 100 second-hand ones turn out sound", 100*c.swapChance())
	}
	if why := c.why(list); why != "" {
		since = ", since " + why
	}
	return say.F("Another truck is the better way%v: about %v%v%v%v; the original truck would be given up%v.",
		since, c.price(w), all, risk, against, c.givenUp())
}

// givenUp says that the truck that is given up is said to be worth more than the
// other one costs.
func (c *Case) givenUp() say.Text {
	if c.Value == nil || c.Rate == nil || *c.Value <= c.Other.Price {
		return ""
	}
	return say.F(", though it is said to be worth %v", c.money(*c.Value))
}

// nothing is what is said where no way cures.
func (c *Case) nothing(list []weighed) say.Text {
	why := c.why(list)
	if c.idleFor() != "" && !c.doomed() {
		why, _ = c.mustGo()
		why += ", and new bearings would not change that"
	}
	switch {
	case c.KeepOriginal:
		why += "; the original is to be kept"
	case c.Other == nil:
		why += "; no other truck is offered"
	}
	return say.F("Nothing that we would advise cures it: %v. Leave it as it is for now.", why)
}

// why is the reason in an owner's words why this truck is not mended, "" where
// it could be: of ways that can be gone and are not advised the likeliest; else
// what has to be known or what spoils the work; else what stops the nearest.
func (c *Case) why(list []weighed) say.Text {
	if c.doomed() {
		return say.F("the casting is %s and must not be cut", c.Condition)
	}
	var risky, idle, stopped *weighed
	for i := range list {
		w := &list[i]
		switch {
		case !w.cuts:
		case c.advisable(*w):
			return ""
		case w.feasible():
			if risky == nil || likelier(w, risky) {
				risky = w
			}
		case w.ok:
			if idle == nil {
				idle = w
			}
		case w.work != nil && (stopped == nil || w.work.Near && !stopped.work.Near):
			stopped = w
		}
	}
	switch {
	case risky != nil:
		return c.tooRisky(risky)
	case idle != nil:
		return idle.reason()
	case stopped != nil:
		return stopped.reason()
	}
	return "no repair is open to it"
}

func likelier(a, b *weighed) bool {
	if a.chance == nil || b.chance == nil {
		return b.chance != nil
	}
	return *a.chance > *b.chance+1e-12
}

// tooRisky says of a way that can be gone why it is not advised.
func (c *Case) tooRisky(w *weighed) say.Text {
	if w.chance != nil && *w.chance < 0.005 {
		return say.F("the likeliest repair is %s, and hardly one in 100 comes right at the first go", w.owner)
	}
	if w.chance != nil && *w.chance < c.Limits.AdviseLeast-1e-9 {
		return say.F("the likeliest repair is %s, of which only %v come right at the first go", w.owner, say.InHundred(*w.chance))
	}
	return say.F("the likeliest repair is %s, of which %v end in a lost truck", w.owner, say.InHundred(*w.lost))
}

// reason is why a way is not gone, for an owner.
func (w *weighed) reason() say.Text {
	k := w.work
	switch {
	case k != nil && w.ok && k.Unknown != "":
		return k.Unknown
	case k != nil && k.Owner != "":
		return k.Owner
	}
	return w.whyNot
}

// and joins words as they are said.
func and(list []say.Text) say.Text {
	if n := len(list) - 1; n > 0 {
		return say.Join(", ", list[:n]...) + " and " + list[n]
	}
	return say.Join("", list...)
}

// spoken turns "front axle.left" into "left side of the front axle".
func spoken(bore string) string {
	shaft, side, ok := strings.Cut(bore, ".")
	if !ok {
		return bore
	}
	if i := strings.LastIndexByte(shaft, ' '); isWord(shaft[i+1:]) {
		shaft = "the " + shaft
	}
	return side + " side of " + shaft
}

// isWord says whether a name is a word and no letter or number.
func isWord(s string) bool {
	return len(s) > 2 && !strings.ContainsAny(s, "0123456789")
}
