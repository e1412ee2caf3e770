package sheets

import (
	"fmt"
	"strings"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/verdict"
	"rebush/sheets/draw"
)

// sideBySide is a row for each way that is a choice, and in a line for each why
// the others are none.
func sideBySide(p *paper, pl *plan.Plan) {
	choices(p, pl)
	others(p, pl)
}

// isChoice says whether a way can be and cures, or is the one that is advised.
func isChoice(pl *plan.Plan, w verdict.WayRow) bool { return w.OK && w.Cures || w.Way == pl.Goes() }

// choices are the ways that can be and cure, and the one that is advised.
func choices(p *paper, pl *plan.Plan) {
	p.flush()
	p.addAll(choiceBlocks(p, pl))
}

// choiceBlocks are their heading with the first of them, and a block for each of
// the rest.
func choiceBlocks(p *paper, pl *plan.Plan) []*block {
	if len(pl.Ways) == 0 {
		return nil
	}
	b := p.block()
	b.Bookmark("The choices side by side", 0, 0)
	b.Anchor("options", 0)
	b.para("The choices side by side", draw.Bold, p.st.body)
	b.y -= 1
	if j := pl.Job; j != nil && j.Shop != nil && j.Shop.PerHour != nil {
		b.y = b.write(0, b.y, b.Width, "An hour costs "+cost2(*j.Shop.PerHour, p.currency)+
			". Hours are rounded to a tenth, money is worked out from the minutes.", draw.Regular, p.st.small) + 1
	}
	b.wayCells([4]string{"way", "cost", "hours", "right first time"}, draw.Regular, p.st.small)
	out := []*block{}
	for _, w := range pl.Ways {
		if isChoice(pl, w) {
			wayRow(b, pl, w)
			out = append(out, b)
			b = p.block()
		}
	}
	if len(out) == 0 {
		b.para("None of the ways cures it as things stand.", draw.Regular, p.st.body)
		out = append(out, b)
	}
	return out
}

// others say of the ways that are no choice why, those together of which the same
// is said.
func others(p *paper, pl *plan.Plan) {
	var reasons []string
	names := map[string][]string{}
	for _, w := range pl.Ways {
		if isChoice(pl, w) {
			continue
		}
		why := whyNot(w)
		if names[why] == nil {
			reasons = append(reasons, why)
		}
		names[why] = append(names[why], w.Way.Owner())
	}
	for i, why := range reasons {
		b := p.block()
		if i == 0 {
			b.para("Why none of the others", draw.Bold, p.st.body)
			b.y -= 1.5
		}
		s := ended(sentence(strings.Join(names[why], "; ")) + ": " + why)
		b.y = b.write(0, b.y, b.Width, s, draw.Regular, b.st.aside())
		b.Reach(b.y)
		if i == 0 {
			p.add(b)
		} else {
			p.tight(b)
		}
	}
}

// whyNot is why a way is no choice.
func whyNot(w verdict.WayRow) string {
	switch {
	case w.WhyOwner != "":
		return w.WhyOwner.String()
	case w.WhyNot != "":
		return w.WhyNot.String()
	case w.OK:
		return "does not cure it"
	}
	return "not open to this truck"
}

// wayCells writes way, cost, hours and chance into the columns of the table; in
// large type the way has a line of its own.
func (b *block) wayCells(cells [4]string, face draw.Face, pt float64) {
	at := [5]float64{0, 0.48, 0.68, 0.78, 1}
	if b.st.large {
		at[1] = 0.3
	}
	y, low := b.y+0.4, b.y
	for i, c := range cells {
		x, end := at[i], at[i+1]
		if b.st.large && i == 0 {
			end = 1
		}
		if b.st.large && i == 1 {
			y = low + 0.8
		}
		low = max(low, b.write(x*b.Width, y, (end-x)*b.Width-2, c, face, pt))
	}
	b.y = low + 0.8
	b.Reach(b.y)
}

func wayRow(b *block, pl *plan.Plan, w verdict.WayRow) {
	name, face := sentence(w.Way.Owner()), draw.Regular
	if w.Way == pl.Goes() {
		name, face = "› "+name, draw.Bold
	}
	hours := "-"
	if w.Hours != nil && *w.Hours > 0 {
		hours = fmt.Sprintf("%.1f", *w.Hours)
	}
	right := figureOr(w.FirstTimeRight, "-", percent)
	b.wayCells([4]string{name, costWords(pl, w), hours, right}, face, b.st.body)
	if s := billWords(w); s != "" {
		b.y = b.write(0, b.y, b.Width, s, draw.Regular, b.st.body) + 0.6
	}
	if s := wayWords(w); s != "" {
		b.y = b.write(0, b.y, b.Width, s, draw.Regular, b.st.aside()) + 1
	}
	b.Line(0, b.y, b.Width, b.y, 0.15)
	b.Reach(b.y + 0.4)
}

// wayWords is what a way keeps, loses and risks.
func wayWords(w verdict.WayRow) string {
	var s []string
	if !w.Cures {
		if w.WhyNot != "" {
			s = append(s, w.WhyNot.String())
		} else if w.Way != verdict.Leave {
			s = append(s, "Does not cure it")
		}
	}
	if len(w.Keeps) > 0 {
		s = append(s, "keeps "+say.Join(", ", w.Keeps...).String())
	}
	if len(w.Loses) > 0 {
		s = append(s, "loses "+say.Join(", ", w.Loses...).String())
	}
	if w.Lost != nil && *w.Lost > 0 {
		s = append(s, "a part is lost for good in "+percent(*w.Lost))
	}
	if len(s) == 0 {
		return ""
	}
	return sentence(strings.Join(s, "; ")) + "."
}

// billWords say what the cost of a way is made of.
func billWords(w verdict.WayRow) string {
	var s []string
	for _, c := range w.Bill {
		if c.Cost == nil {
			continue
		}
		line := c.What.String()
		if c.Hours != nil {
			line += fmt.Sprintf(", %.1f hours", *c.Hours)
		}
		s = append(s, fmt.Sprintf("%s: %.2f", line, *c.Cost))
	}
	if len(w.Unpriced) > 0 && w.Cost != nil {
		s = append(s, "not in it, no price given: "+say.Join(", ", w.Unpriced...).String())
	}
	if len(s) == 0 {
		return ""
	}
	return sentence(strings.Join(s, "; ")) + "."
}

// costWords is what a way costs; without a rate the price that somebody typed
// stands there by itself.
func costWords(pl *plan.Plan, w verdict.WayRow) string {
	currency := ""
	if pl.Verdict != nil {
		currency = pl.Verdict.Currency
	}
	switch {
	case w.Way == verdict.Leave:
		return "nothing"
	case w.Cost != nil:
		return cost2(*w.Cost, currency)
	case w.Way == verdict.Swap && pl.Job != nil && pl.Job.Swap != nil:
		return "price " + cost(pl.Job.Swap.Price, currency)
	}
	return "no rate given"
}

func figureOr(f *float64, none string, s func(float64) string) string {
	if f == nil {
		return none
	}
	return s(*f)
}

// cost2 is money to a hundredth, as the bill below it has it.
func cost2(v float64, currency string) string {
	return strings.TrimSpace(fmt.Sprintf("%.2f %s", v, currency))
}
