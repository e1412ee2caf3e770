package verdict

import (
	"slices"
	"strings"

	"rebush/fits/finding"
	"rebush/fits/say"
)

// The rules of the verdict's findings.
const (
	RuleVerdict    finding.Rule = "verdict/verdict"    // no verdict could be reached
	RuleMendFirst  finding.Rule = "verdict/mend first" // a fault that passes for a worn hole
	RuleLookAlikes finding.Rule = "verdict/look-alikes"
	RuleRates      finding.Rule = "verdict/rates"
	RulePrice      finding.Rule = "verdict/price"
	RuleLoss       finding.Rule = "verdict/loss"
	RuleValue      finding.Rule = "verdict/value"
	RuleWay        finding.Rule = "verdict/way" // a way is asked for that this truck cannot go
	RuleNewAxle    finding.Rule = "verdict/new axle"
	RulePlay       finding.Rule = "verdict/play"
	RuleComplaint  finding.Rule = "verdict/complaint"
)

// findings adds what has to be known beside the choice.
func (c *Case) findings(l *finding.List, list []weighed, best int) {
	var nowhere finding.Place
	for _, f := range c.Mend {
		l.Raise(finding.Caution, RuleMendFirst, nowhere,
			say.F("%s: mend that first, since %s", f.Words, f.Why), "mend it, run it again, and bore nothing before that")
	}
	if len(c.Unchecked) > 0 {
		l.Raise(finding.Note, RuleLookAlikes, nowhere,
			say.F("not looked at, and each can pass for a worn hole: %s", strings.Join(c.Unchecked, ", ")),
			"check them before paying for bearings")
	}
	if c.Rate == nil {
		l.Raise(finding.Note, RuleRates, nowhere,
			"the shop gives no rate: the verdict is in hours only, and the price of another truck is not weighed",
			"rates: {currency: ..., per_hour: ...} in the shop file")
	}
	for _, w := range list {
		if w.feasible() && len(w.unknown) > 0 && c.Rate != nil {
			l.Raise(finding.Note, RulePrice, finding.Place{Where: string(w.name)},
				"not in its cost, no price is given: "+say.Join(", ", sorted(w.unknown)...), "give the price")
		}
	}
	risk := 0.0
	if best >= 0 && list[best].lost != nil && list[best].cuts {
		risk = *list[best].lost
	}
	if _, known := c.loss(); !known && risk > 0 && c.Rate != nil {
		l.Raise(finding.Note, RuleLoss, nowhere,
			say.F("what a lost truck would cost is not known, so a risk of %.2g %% is not in the cost", 100*risk),
			"give value: (of this truck) or swap: (what another one costs) in the job")
	}
	if best >= 0 && list[best].cuts && c.dearer(list[best]) != "" {
		l.Raise(finding.Note, RuleValue, nowhere, "the repair costs more than the truck is said to be worth",
			"none needed where the owner wants the original kept; else another truck, or leave it").Against(list[best].cost, *c.Value, c.Currency)
	}
	if best < 0 || list[best].name != Leave {
		return
	}
	if name, play := c.worst(); play > c.Limits.LeaveMM+1e-9 {
		l.Raise(finding.Note, RulePlay, finding.Place{Where: name},
			"left for now: look again in a season", "a complaint, or a wheel that rubs").Against(play, c.Limits.LeaveMM, "mm")
	}
	if c.complaint() != "" {
		l.Raise(finding.Note, RuleComplaint, nowhere,
			say.F("it %v, and the bearings do not look like the reason", c.complaint()),
			"look at rims, hubs, gauge, gears, wiring")
	}
}

// sorted puts things in the order of their words, whatever order they came in.
func sorted(list []say.Text) []say.Text {
	return slices.SortedFunc(slices.Values(list), func(a, b say.Text) int { return strings.Compare(a.String(), b.String()) })
}
