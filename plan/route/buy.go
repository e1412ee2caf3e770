package route

import (
	"strings"

	"rebush/fits/dim"
	"rebush/fits/say"
)

// BuyKind is what sort of thing is to be bought.
type BuyKind string

// The things that a route can want beside what the shop has.
const (
	BuyBush     BuyKind = "bush"
	BuyDrill    BuyKind = "drill"
	BuyMill     BuyKind = "end mill"
	BuyGauge    BuyKind = "plug gauge"
	BuyRod      BuyKind = "rod" // turned, where the shop has no lathe
	BuySlip     BuyKind = "slip bush"
	BuyCompound BuyKind = "retaining compound"
)

// BuyLine is one thing to buy before starting, and the holes that want it.
type BuyLine struct {
	What  say.Text
	Why   string
	Kind  BuyKind
	Name  say.Text // a bush by its code, a tool by its name
	Size  float64  // mm, 0 where no one size says what it is
	Count int      // pieces
	Price *float64 // of one piece, nil not known
}

// purchase is one thing to buy for one hole.
type purchase struct {
	kind BuyKind
	tool string   // what it goes by among the purchases
	name say.Text // as it is printed where that is not its stamp, "" the same
	size float64
	spec say.Text
	bore string // "" for the truck as a whole
}

// need is one thing to buy and what for.
type need struct {
	purchase
	specs []say.Text
	bores []string
}

// buy puts a tool on the list, once for all bores that want it.
func (b *builder) buy(p purchase) {
	for i := range b.needs {
		if n := &b.needs[i]; n.tool == p.tool {
			if last := len(n.specs) - 1; strings.HasPrefix(string(p.spec), string(n.specs[last])) {
				n.specs = n.specs[:last] // the new one says more
			}
			n.specs, n.bores = appendNew(n.specs, p.spec), appendNew(n.bores, p.bore)
			return
		}
	}
	b.needs = append(b.needs, need{p, []say.Text{p.spec}, []string{p.bore}})
}

// toBuy marks the name of a tool that the shop has not got.
const toBuy = " (to buy)"

// buyList writes the list down: tools, then bushes, alike ones on one line.
func (b *builder) buyList() {
	for _, n := range b.needs {
		name := n.name
		if name == "" {
			name = words(n.tool)
		}
		b.out.Buy = append(b.out.Buy, BuyLine{What: name + ": " + join(n.specs...), Why: list(n.bores), Kind: n.kind,
			Name: say.Text(strings.TrimSuffix(string(name), toBuy)), Size: dim.Sig9(n.size), Count: 1})
	}
	var codes []string
	for _, x := range b.j.Bores {
		if x.BushToBuy && !x.In {
			codes = appendNew(codes, x.Bush)
		}
	}
	for _, code := range codes {
		l := BuyLine{What: say.F("bush %s", code), Kind: BuyBush, Name: words(code)}
		var holes []string
		for _, x := range b.j.Bores {
			if x.BushToBuy && !x.In && x.Bush == code {
				holes = append(holes, x.Name)
				l.Size, l.Price = (x.OD[0]+x.OD[1])/2, x.BushPrice
			}
		}
		l.Why, l.Count = list(holes), len(holes)
		b.out.Buy = append(b.out.Buy, l)
	}
}
