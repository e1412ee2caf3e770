package verdict

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"rebush/fits/finding"
	"rebush/fits/say"
)

// plain says an option without the words of the trade.
var plain = map[string]string{
	Leave: "leaving it alone", Shim: "a washer", Renew: "new bearings in the old seats", Rebush: "new bearings",
	BushInABush: "new bearings inside the old ones", Plug: "filling the holes and setting new bearings",
	NewAxle: "new bearings and a new axle", Swap: "another truck",
}

// price says an amount, or the hours where there is no rate.
func (c *Case) price(w weighed) string {
	if w.Cost == nil {
		return hours(w)
	}
	return strings.TrimSpace(num(*w.Cost) + " " + c.Currency)
}

// hours says a time to a tenth of an hour.
func hours(w weighed) string {
	s := strconv.FormatFloat(math.Round(*w.Hours*10)/10, 'f', -1, 64)
	if s == "1" {
		return s + " hour"
	}
	return s + " hours"
}

// sentence is what an owner is told: first what has to be mended before
// anything is bored, then the choice.
func (c *Case) sentence(list []weighed, best, second int) string {
	first := ""
	if len(c.Mend) > 0 && !c.doomed() {
		var words []string
		why := c.Mend[0].Why
		for _, f := range c.Mend {
			words = append(words, f.Words)
			if f.Why != why {
				why = "each can pass for a worn hole"
			}
		}
		first = upper(strings.Join(words, " and ")) + ": that is mended first, since " + why + ". "
	}
	return first + c.choice(list, best, second)
}

func upper(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// doomed says that the casting itself is going, or is of a metal that this job
// must not cut.
func (c *Case) doomed() bool {
	return c.Condition == "cracked" || c.Condition == "swollen" || c.Condition == "magnesium"
}

// why is the reason in an owner's words why this truck is not mended; "" where
// it could be.
func (c *Case) why(list []weighed) string {
	if c.doomed() {
		return "the casting is " + c.Condition + " and must not be cut"
	}
	why := ""
	for _, w := range list {
		switch w.Name {
		case Renew, Rebush, BushInABush, Plug, NewAxle:
			if w.Feasible {
				return ""
			}
		}
		if w.Name == Rebush {
			why = c.ownerWhy(w.WhyNot)
		}
	}
	return why
}

func (c *Case) choice(list []weighed, best, second int) string {
	if best < 0 {
		return c.nothing(list)
	}
	w := list[best]
	against := ""
	if second >= 0 && !(c.Rate == nil && list[second].Name == Swap) {
		against = fmt.Sprintf(", against %s for %s", c.price(list[second]), plain[list[second].Name])
	}
	switch w.Name {
	case Leave:
		return c.leaveWords()
	case Shim:
		return fmt.Sprintf("A washer puts it right (%s): about %s%s.", c.ShimFor, c.price(w), against)
	case Swap:
		risk, since := "", ""
		if c.Other.SecondHand {
			risk = fmt.Sprintf(", counting that %.0f in 100 second-hand ones turn out sound", 100*c.swapChance())
		}
		if why := c.why(list); why != "" {
			since = ", since " + why
		}
		return fmt.Sprintf("Another truck is the better way%s: about %s all told%s%s; the original truck would be given up.", since, c.price(w), risk, against)
	}
	return fmt.Sprintf("We advise %s: about %s of work%s, and it comes right at the first go in about %d of 100 such jobs%s.",
		plain[w.Name], hours(w), c.allTold(w), hundredths(*w.Chance), against)
}

// leaveWords says to leave it, and no more of gears and complaints than is
// known.
func (c *Case) leaveWords() string {
	name, play := c.worst()
	gears := ""
	if c.gearsRight() {
		gears = "the gears run right"
	}
	switch {
	case c.doomed():
		return fmt.Sprintf("Leave it as it is: the casting is %s and must not be cut; the most play is %.2f mm.", c.Condition, play)
	case c.complaint() != "" && gears != "":
		return fmt.Sprintf("Leave the bearings alone: the most play is %.2f mm at the %s and %s, so what you notice comes from somewhere else.", play, spoken(name), gears)
	case c.complaint() != "":
		return fmt.Sprintf("Leave the bearings alone: the most play is %.2f mm at the %s, so what you notice comes from somewhere else; the gears are not known well enough to clear them, so look there too.", play, spoken(name))
	case play > c.Limits.LeaveMM+1e-9:
		known := []string{fmt.Sprintf("the %s has %.2f mm of play", spoken(name), play)}
		if gears != "" {
			known = append(known, gears)
		}
		if c.Asked {
			known = append(known, "nobody complains")
		}
		return "Leave it and have it looked at again: " + and(known) + "."
	case gears != "":
		return fmt.Sprintf("Leave it alone: the most play is %.2f mm and %s.", play, gears)
	}
	return fmt.Sprintf("Leave it alone: the most play is %.2f mm.", play)
}

// and joins words as they are said.
func and(list []string) string {
	if n := len(list) - 1; n > 0 {
		return strings.Join(list[:n], ", ") + " and " + list[n]
	}
	return strings.Join(list, "")
}

// hundredths rounds a chance to whole per cents, never up to certain.
func hundredths(p float64) int {
	if n := int(math.Round(100 * p)); n < 100 {
		return n
	}
	return 99
}

func (c *Case) allTold(w weighed) string {
	if w.Cost == nil {
		return ""
	}
	return ", " + c.price(w) + " all told"
}

func (c *Case) nothing(list []weighed) string {
	why := c.why(list)
	if why == "" {
		why = strings.TrimPrefix(c.mayStay(), "cures nothing: ")
	}
	if c.Other == nil {
		why += ", and no other truck is offered"
	} else if c.KeepOriginal {
		why += ", and the original is to be kept"
	}
	return "Nothing we can do here cures it: " + why + "; leave it as it is for now."
}

// spoken turns "front axle.left" into "left side of the front axle".
func spoken(bore string) string {
	if shaft, side, ok := strings.Cut(bore, "."); ok {
		return side + " side of the " + shaft
	}
	return bore
}

// say adds what has to be known beside the choice.
func (c *Case) say(l *finding.List, list []weighed, best int) {
	switch c.Condition {
	case "cracked", "swollen":
		l.Raise(finding.Stop, "job/condition", finding.Place{Where: "chassis"},
			say.F("the casting is %s: do not machine", c.Condition), "another truck; no repair cures a cracked or swollen casting")
	case "unknown", "":
		l.Raise(finding.Caution, "job/condition", finding.Place{Where: "chassis"},
			"nobody has said whether the casting is sound", "look it over, measure the wheelbase against a sister, then write condition: sound, cracked or swollen")
	}
	for _, f := range c.Mend {
		l.Raise(finding.Caution, "verdict/mend first", finding.Place{},
			say.F("%s: mend that first, since %s", f.Words, f.Why), "mend it, run it again, and bore nothing before that")
	}
	if len(c.Unchecked) > 0 {
		l.Raise(finding.Note, "verdict/look-alikes", finding.Place{},
			say.F("not looked at, and each can pass for a worn hole: %s", strings.Join(c.Unchecked, ", ")), "check them before paying for bearings")
	}
	if c.Rate == nil {
		l.Raise(finding.Note, "verdict/rates", finding.Place{},
			"the shop gives no rate: the verdict is in hours only, and the price of another truck is not weighed", "rates: {currency: ..., per_hour: ...} in the shop file")
	}
	for _, w := range list {
		if w.Feasible && len(w.unknown) > 0 && c.Rate != nil {
			l.Raise(finding.Note, "verdict/price", finding.Place{Where: w.Name},
				say.F("not in its cost, no price is given: %s", strings.Join(w.unknown, ", ")), "give the price")
		}
	}
	risk := 0.0
	for _, f := range c.Faults {
		if f.Lost {
			risk += f.Chance
		}
	}
	if _, known := c.loss(); !known && risk > 0 && c.Rate != nil {
		l.Raise(finding.Note, "verdict/loss", finding.Place{},
			say.F("what a lost truck would cost is not known, so a risk of %.2g %% is not in the cost", 100*risk), "give value: (of this truck) or swap: (what another one costs) in the job")
	}
	if best < 0 {
		return
	}
	name, play := c.worst()
	if list[best].Name == Leave && play > c.Limits.LeaveMM+1e-9 {
		l.Raise(finding.Note, "verdict/play", finding.Place{Where: name},
			"left for now: look again in a season", "a complaint, or a wheel that rubs").Against(play, c.Limits.LeaveMM, "mm")
	}
	if list[best].Name == Leave && c.complaint() != "" {
		l.Raise(finding.Note, "verdict/complaint", finding.Place{},
			say.F("it %s, and the bearings do not look like the reason", c.complaint()), "look at rims, hubs, gauge, gears, wiring")
	}
}
