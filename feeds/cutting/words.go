package cutting

import (
	"fmt"

	"rebush/fits/say"
	"rebush/fits/table"
)

// holdNames are the rows of the table holding that have to be there.
var holdNames = []string{"always", "breakthrough", "thin wall", "casting", "sheet brass", "head", "ream"}

func (c *Cutting) readWords(lib *table.Library) (err error) {
	words := func(column string) func(table.Row) (Ref, error) {
		return func(r table.Row) (Ref, error) {
			if r.Get(column) == "" {
				return Ref{}, fmt.Errorf("%s: %s is empty", r.Address(), column)
			}
			return Ref{r.Get(column), r.Address()}, nil
		}
	}
	if c.coolant, err = keyed(lib, "coolant", "class", words("lubricant")); err != nil {
		return err
	}
	if c.holding, err = keyed(lib, "holding", "when", words("words")); err != nil {
		return err
	}
	for _, n := range holdNames {
		if _, ok := c.holding[n]; !ok {
			return fmt.Errorf("the table holding has no row %q", n)
		}
	}
	for _, m := range c.materials {
		if _, ok := c.coolant[m.wets]; !ok {
			return fmt.Errorf("%s: %s: no coolant class %q", m.ref.Address, m.name, m.wets)
		}
	}
	return nil
}

// Lubricant says what to put on the cut, with the row it came from.
func (c *Cutting) Lubricant(materialName string) (Ref, error) {
	m, err := c.material(materialName)
	if err != nil {
		return Ref{}, err
	}
	return c.coolant[m.wets], nil
}

// FeedWords says a feed in words of the bench: by how much a turn, how much
// that is in a minute, and what it feels like.
func FeedWords(feedMMRev, rpm float64, hand bool) say.Text {
	if !(feedMMRev > 0) || !(rpm > 0) {
		return ""
	}
	perMin, places := feedMMRev*rpm, 0
	if perMin < 10 {
		places = 1
	}
	s := say.F("%v a turn (%v a minute)", say.MM(feedMMRev, 3).Trim(), say.MM(perMin, places).Rate())
	if hand {
		return "by hand, light and steady: about " + s
	}
	return s
}

// words adds what to put on the cut, the feed in words and how to hold.
func (c *Cutting) words(q Query, m material, op string, a *Answer) {
	a.Lubricant = c.coolant[m.wets].Text
	a.Words = FeedWords(a.FeedMMRev, a.RPM, q.Hand)
	if op == drill {
		a.Words += "; ease off as the point comes through"
	}
	say := func(name string) { a.Holding = append(a.Holding, c.holding[name].Text) }
	say("always")
	if op == drill || op == plunge || op == counterbore {
		say("breakthrough")
	}
	if q.ThinWall {
		say("thin wall")
	}
	if m.wets == "zinc" || m.wets == "cast iron" || m.name == "aluminium die casting as cast" {
		say("casting")
	}
	if m.name == "cartridge brass sheet" && op == drill {
		say("sheet brass")
	}
	if op == ream {
		say("ream")
	}
	if q.Head == Faceplate {
		say("head")
	}
}
