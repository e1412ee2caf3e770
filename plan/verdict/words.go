package verdict

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"rebush/fits/finding"
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
	return strconv.FormatFloat(math.Round(*w.Hours*10)/10, 'f', -1, 64) + " hours"
}

// sentence is what an owner is told: first what has to be mended before
// anything is bored, then the choice.
func (c *Case) sentence(list []weighed, best, second int) string {
	first := ""
	if len(c.Mend) > 0 && !c.doomed() {
		first = strings.ToUpper(c.Mend[0][:1]) + strings.Join(c.Mend, " and ")[1:] + ": that is mended first, since it feels just like a worn hole. "
	}
	return first + c.choice(list, best, second)
}

// doomed says that the casting itself is going.
func (c *Case) doomed() bool { return c.Condition == "cracked" || c.Condition == "swollen" }

// why is the reason in an owner's words why this truck is not mended, with a
// comma before it; "" where there is none to name.
func (c *Case) why(list []weighed) string {
	switch {
	case c.doomed():
		return ", since the casting is " + c.Condition + " and must not be cut"
	case !anyRepair(list):
		return ", since no bearing we can fit suits the metal that is left"
	}
	return ""
}

// anyRepair says whether any option that cuts is open.
func anyRepair(list []weighed) bool {
	for _, w := range list {
		switch w.Name {
		case Renew, Rebush, BushInABush, Plug, NewAxle:
			if w.Feasible {
				return true
			}
		}
	}
	return false
}

// runs says what is known of the gears and of rubbing, with a comma before it;
// nothing where nothing is known.
func (c *Case) runs() string {
	out := ""
	for _, m := range c.Meshes {
		if m.Known && m.Right {
			out = ", the gears run right"
		}
	}
	return out
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
		name, play := c.worst()
		switch {
		case c.doomed():
			return "Leave it as it is: the casting is " + c.Condition + " and must not be cut."
		case c.complaint() != "" && play > 0:
			return fmt.Sprintf("Leave the bearings alone: the most play is %.2f mm at the %s%s, so what you notice comes from somewhere else.", play, spoken(name), c.runs())
		case play > c.Limits.LeaveMM+1e-9:
			return fmt.Sprintf("Leave it and have it looked at again: the %s has %.2f mm of play%s and nobody complains.", spoken(name), play, c.runs())
		default:
			return fmt.Sprintf("Leave it alone: the most play is %.2f mm%s.", play, c.runs())
		}
	case Shim:
		return fmt.Sprintf("A washer puts it right (%s): about %s%s.", c.ShimFor, c.price(w), against)
	case Swap:
		risk := ""
		if c.Other.SecondHand {
			risk = fmt.Sprintf(", counting that %.0f in 100 second-hand ones turn out sound", 100*c.swapChance())
		}
		return fmt.Sprintf("Another truck is the better way%s: about %s all told%s%s; the original truck would be given up.", c.why(list), c.price(w), risk, against)
	}
	return fmt.Sprintf("We advise %s: about %s of work%s, and it comes right at the first go in about %d of 100 such jobs%s.",
		plain[w.Name], hours(w), c.allTold(w), hundredths(*w.Chance), against)
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
	why := ""
	switch c.Condition {
	case "cracked", "swollen":
		why = "the casting is " + c.Condition + " and must not be machined"
	default:
		why = "no bearing we can fit suits the metal that is left"
		for _, b := range c.Bores {
			if b.Wrong == "nothing tells where its centre was" {
				why = "nothing tells any more where the holes used to be"
			}
		}
	}
	if c.Other == nil {
		why += ", and no other truck is offered"
	} else if c.KeepOriginal {
		why += ", and the original is to be kept"
	}
	return "Nothing we can do here cures it: " + why + "; leave it as it is for now."
}

// spoken turns "front axle.left" into "front axle, left side".
func spoken(bore string) string {
	if shaft, side, ok := strings.Cut(bore, "."); ok {
		return shaft + ", " + side + " side"
	}
	return bore
}

// say adds what has to be known beside the choice.
func (c *Case) say(l *finding.List, list []weighed, best int) {
	switch c.Condition {
	case "cracked", "swollen":
		l.Say(finding.Stop, "condition", "chassis", "the casting is "+c.Condition+": do not machine", "another truck; nothing else cures a casting that is going")
	case "unknown", "":
		l.Say(finding.Caution, "condition", "chassis", "nobody has said whether the casting is sound",
			"look for fine cracks like dried mud, plates no longer flat or grown, bulges, white powder, chips that crumble; measure the wheelbase against a sister; then write condition: sound, cracked or swollen")
	}
	if len(c.Mend) > 0 {
		l.Say(finding.Caution, "mend first", "", strings.Join(c.Mend, "; ")+": it feels like a worn hole", "mend that before anything is bored, then run it and measure again")
	}
	if len(c.Unchecked) > 0 {
		l.Say(finding.Note, "look-alikes", "", "not looked at, and each can feel like a worn hole: "+strings.Join(c.Unchecked, ", "), "check them before paying for bearings")
	}
	if c.Rate == nil {
		l.Say(finding.Note, "rates", "", "the shop gives no rate: the verdict is in hours only, and the price of another truck is not weighed", "rates: {currency: ..., per_hour: ...} in the shop file")
	}
	for _, w := range list {
		if w.Feasible && len(w.unknown) > 0 && c.Rate != nil {
			l.Say(finding.Note, "price", w.Name, "not in its cost, no price is given: "+strings.Join(w.unknown, ", "), "give the price")
		}
	}
	risk := 0.0
	for _, f := range c.Faults {
		if f.Lost {
			risk += f.Chance
		}
	}
	if _, known := c.loss(); !known && risk > 0 && c.Rate != nil {
		l.Say(finding.Note, "loss", "", fmt.Sprintf("what a lost truck would cost is not known, so a risk of %.2g %% is not in the cost", 100*risk), "value: or swap: in the job")
	}
	if best < 0 {
		return
	}
	name, play := c.worst()
	if list[best].Name == Leave && play > c.Limits.LeaveMM+1e-9 {
		l.Figure(finding.Note, "play", name, play, c.Limits.LeaveMM, "mm", "left for now: look again in a season", "a complaint, or a wheel that rubs")
	}
	if list[best].Name == Leave && c.complaint() != "" {
		l.Say(finding.Note, "complaint", "", "it "+c.complaint()+", and the bearings are not why", "look at rims, hubs, gauge, gears, wiring")
	}
}
