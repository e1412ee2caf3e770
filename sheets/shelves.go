package sheets

import (
	"fmt"
	"strconv"
	"strings"

	"rebush/plan"
	"rebush/sheets/draw"
)

// shelves is what a batch takes from the drawers: which bushes, how many, who
// runs short, and what is to be bought before it is begun. It changes the plan
// of no job.
func shelves(p *paper, plans []*plan.Plan) {
	list, tools := plan.Shelves(plans), plan.BuyTools(plans)
	if len(list) > 0 {
		p.follow("Bushes of this batch", "bushes")
	}
	for _, x := range list {
		b := p.block()
		shelfBlock(b, x)
		p.tight(b)
	}
	var buy []string
	for _, x := range list {
		if x.Short > 0 {
			buy = append(buy, strconv.Itoa(x.Short)+" of bush "+x.Code+shelfCost(x)+inShop(x.Shop))
		}
	}
	for _, t := range tools {
		buy = append(buy, "1 "+t.What.In(p.u.said())+", for "+strings.Join(t.Jobs, ", ")+inShop(t.Shop))
	}
	if len(buy) == 0 {
		return
	}
	p.follow("Buy before the batch is begun", "buy")
	for _, s := range buy {
		b := p.block()
		b.ticked(s, draw.Regular)
		p.tight(b)
	}
}

func shelfBlock(b *block, x plan.Shelf) {
	there := "nobody says"
	switch {
	case x.Turned:
		there = "turned"
	case x.OnHand != nil:
		there = strconv.Itoa(*x.OnHand)
	}
	short := field{name: "short", lines: []string{strconv.Itoa(x.Short)}}
	if x.Short > 0 {
		short.face = draw.Bold
	}
	b.y = b.fields(0, 0.4, b.Width, 6, []field{
		{name: "bush" + inShop(x.Shop), lines: []string{x.Code}, face: draw.Bold, wide: 3},
		{name: "wanted", lines: []string{strconv.Itoa(x.Wanted)}},
		{name: "on hand", lines: []string{there}},
		short}) - 1
	if s := shortWords(x); s != "" {
		b.y = b.write(0, b.y, b.Width, s, draw.Regular, b.st.body) + 1
	}
	b.Line(0, b.y, b.Width, b.y, 0.15)
	b.Reach(b.y + 0.4)
}

// shortWords says who takes how many, and who runs short when those before have
// taken theirs.
func shortWords(x plan.Shelf) string {
	var takes, short []string
	for _, t := range x.Takers {
		takes = append(takes, fmt.Sprintf("%s takes %d", t.Job, t.Wanted))
		if t.Short > 0 {
			short = append(short, fmt.Sprintf("%s by %d", t.Job, t.Short))
		}
	}
	s := strings.Join(takes, ", ") + "."
	if len(short) > 0 {
		s += " In this order runs short: " + strings.Join(short, ", ") + "."
	}
	if x.Differ {
		s += " The jobs do not say the same number on hand; the least of them is taken: count them."
	}
	return s
}

func shelfCost(x plan.Shelf) string {
	if x.Cost == nil {
		return ""
	}
	s := fmt.Sprintf(" (%.2f", *x.Cost)
	if x.Currency != "" {
		s += " " + x.Currency
	}
	return s + ")"
}

// inShop names the shop file of a drawer.
func inShop(file string) string {
	if file == "" || file == "." {
		return ""
	}
	return ", " + base(file)
}
