package plan

import (
	"fmt"
	"math"
	"slices"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/choice"
	"rebush/plan/job"
	"rebush/plan/seat"
	"rebush/plan/verdict"
)

// picked is what is done at each hole of a truck that goes one way.
type picked struct {
	*placing
	mend  seat.Mend
	bores []seat.Seated // with their answers, and the one that is chosen
	asks  []string      // bores at which something is to be measured before any cut
	OK    bool          // every hole has a seat, and the drawer holds what they need
	cost  float64       // closed form
	poor  int           // seats that are taken only where nothing else serves
	lacks int           // holes without a seat
	short finding.List  // of what the drawer runs short, or why no hole takes the mend
	miss  *seat.Answer  // the nearest miss where no hole takes it, nil where none was tried
	shut  bool          // no hole is open to the mend
	why   say.Text      // and why, "" where it is the placing alone
	owner say.Text      // the same for an owner
}

// pick chooses for every hole what is done at it on the way of a mend: that mend
// at one hole at least, and only lesser ones elsewhere. bought are bushes of the
// series that are to be had.
func (g *ground) pick(s *placing, m seat.Mend, bought map[string]bool) picked {
	out := picked{placing: s, mend: m}
	has := rankOf(m)
	holes := make([]choice.Hole, len(s.offers))
	answers := make([][]*seat.Answer, len(s.offers))
	open := false
	for i := range s.offers {
		o := &s.offers[i]
		holes[i] = choice.Hole{Name: o.Name(), Axle: o.Old.Shaft.Name}
		for k := range o.Mends {
			d := &o.Mends[k]
			if !s.allows(g, o.Name(), d.Mend, m) || d.WhyNot != "" {
				continue
			}
			open = open || d.Mend == m
			if d.Asks != "" && !slices.Contains(out.asks, o.Name()) {
				out.asks = append(out.asks, o.Name())
			}
			for _, a := range usable(d, bought) {
				holes[i].Offers = append(holes[i].Offers, g.offer(a, s.in.Rules))
				answers[i] = append(answers[i], a)
			}
		}
	}
	if !open {
		out.shut = true
		out.why, out.owner = s.closedTo(g, m)
		return out
	}
	stock := stockOf(s.in.Stock)
	index, ok := choice.Pick(holes, stock, has, g.choice)
	for i := range s.offers {
		var chosen *seat.Answer
		if ok {
			chosen = answers[i][index[i]]
		} else if one := g.best(holes[i], has); one >= 0 {
			chosen = answers[i][one]
		} else {
			out.lacks++
		}
		out.bores = append(out.bores, s.seated(g, i, m, chosen, answers[i]))
	}
	if ok {
		var list []choice.Offer
		for i, k := range index {
			list = append(list, holes[i].Offers[k])
			if holes[i].Offers[k].Poor {
				out.poor++
			}
		}
		out.OK, out.cost = true, choice.Cost(list, g.choice)
		return out
	}
	out.cost = math.Inf(1)
	if out.lacks == 0 {
		out.sayShort(g, holes, stock, has)
	}
	if out.lacks == 0 && len(out.short) == 0 {
		out.sayUnmet(g)
	}
	return out
}

// sayUnmet says why no hole takes the mend of a way though each has a seat by a
// lesser one: by the nearest miss of all holes.
func (p *picked) sayUnmet(g *ground) {
	at, near := "", (*seat.Answer)(nil)
	for i := range p.offers {
		d := p.offers[i].Of(p.mend)
		if d.WhyNot != "" || !p.allows(g, p.offers[i].Name(), p.mend, p.mend) {
			continue
		}
		a := d.Nearest()
		if name := p.offers[i].Name(); at == "" || a != nil && (near == nil || a.Nearer(near) || !near.Nearer(a) && name < at) {
			at, near = name, a
		}
	}
	why, fix := say.Text("there is no bush to choose from"), say.Text("measure what is in the drawer into bushes:")
	if p.miss = near; near != nil {
		why, fix = "the nearest is "+near.Missed(), near.Fail.WouldSeat()
	}
	p.short.Raise(finding.Stop, verdict.RuleWay, g.j.Place(at), say.F("no hole can go that way (%s): %v", string(p.mend), why), fix)
}

// best is the offer of a hole by itself.
func (g *ground) best(h choice.Hole, has int) int {
	gravest := -1
	for _, o := range h.Offers {
		gravest = max(gravest, o.Mend)
	}
	for ; gravest >= 0; gravest-- {
		if index, ok := choice.Pick([]choice.Hole{h}, nil, gravest, g.choice); ok {
			return index[0]
		}
	}
	return -1
}

func rankOf(m seat.Mend) int { return slices.Index(seat.MendsRising(), m) }

// allows says whether a hole may have a mend on the way of another: no graver
// one, a seat renewed only where the hole keeps its place and another cut only
// where it does not, and what the job asks for.
func (s *placing) allows(g *ground, bore string, mend, way seat.Mend) bool {
	if fixed := fixedMend(g.j, bore); fixed != "" {
		return mend == fixed && rankOf(mend) <= rankOf(way)
	}
	return rankOf(mend) <= rankOf(way) && ((mend == seat.Renew) == s.keepsPlace(bore) ||
		mend == seat.Rebush && madeInPlace(g.j, bore))
}

// madeInPlace says whether this job has made the seat of a bore, and in its
// place: it can be opened there.
func madeInPlace(j *job.Job, bore string) bool {
	_, b := j.Bore(bore)
	return b != nil && b.Now != nil && b.Now.Placed
}

// usable are the answers of a mend that can be carried out with what there is,
// and with bushes of the series that are to be had.
func usable(d *seat.Mended, bought map[string]bool) []*seat.Answer {
	var out []*seat.Answer
	for k := range d.Answers {
		if a := &d.Answers[k]; a.Feasible {
			out = append(out, a)
		}
	}
	for k := range d.Buy {
		if a := &d.Buy[k]; a.Feasible && bought[a.Bush.Code] {
			out = append(out, a)
		}
	}
	return out
}

// closedTo says why no hole is open to a mend, of the first hole by name that is
// shut to it; "" where only their places stand against it.
func (s *placing) closedTo(g *ground, m seat.Mend) (why, owner say.Text) {
	at := ""
	for i := range s.offers {
		o := &s.offers[i]
		if at != "" && at <= o.Name() {
			continue
		}
		if fixed := fixedMend(g.j, o.Name()); fixed != "" && fixed != m {
			at, why, owner = o.Name(), say.F("%s: the job asks for %s", o.Name(), string(fixed)), "the job asks for another way"
		} else if d := o.Of(m); d.WhyNot != "" {
			at, why, owner = o.Name(), say.F("%s: %v", o.Name(), d.WhyNot), d.Owner
		}
	}
	return why, owner
}

// seated is one hole with what was chosen for it: first that, then what else
// would go, then what fell, the nearest miss first.
func (s *placing) seated(g *ground, i int, way seat.Mend, chosen *seat.Answer, usable []*seat.Answer) seat.Seated {
	o := &s.offers[i]
	x := seat.Seated{Site: o.Site, Hole: o.Hole}
	if chosen != nil {
		x.Answers = append(x.Answers, *chosen)
	}
	for _, a := range usable {
		if a != chosen {
			x.Answers = append(x.Answers, *a)
		}
	}
	for k := range o.Mends {
		if !s.allows(g, o.Name(), o.Mends[k].Mend, way) {
			continue
		}
		for _, a := range o.Mends[k].Answers {
			if !a.Feasible {
				x.Answers = append(x.Answers, a)
			}
		}
	}
	if chosen != nil {
		x.Chosen = &x.Answers[0]
	}
	return x
}

// stockOf is what the drawer holds, by code, of what was counted.
func stockOf(list []seat.Bush) map[string]int {
	out := map[string]int{}
	for _, b := range list {
		if b.OnHand >= 0 && !b.Turned && !b.ToBuy {
			out[b.Code] = b.OnHand
		}
	}
	return out
}

// sayShort names the bushes that the drawer runs short of, with each hole seated
// as it would be by itself.
func (p *picked) sayShort(g *ground, holes []choice.Hole, stock map[string]int, has int) {
	want := map[string]int{}
	var codes []string
	for i, h := range holes {
		o := h.Offers[g.best(holes[i], has)]
		if _, counted := stock[o.Bush]; counted {
			if want[o.Bush]++; want[o.Bush] == 1 {
				codes = append(codes, o.Bush)
			}
		}
	}
	slices.Sort(codes)
	for _, code := range codes {
		if want[code] > stock[code] {
			p.short.Raise(finding.Stop, seat.RuleStock, g.j.PlaceAt(code, bushLine(g, code)),
				say.F("bush %s: %d wanted, %d on hand", code, want[code], stock[code]),
				say.F("buy %d more, or choose another bush for one of the holes", want[code]-stock[code])).
				Against(float64(stock[code]), float64(want[code]), "")
		}
	}
}

func bushLine(g *ground, code string) string {
	for i := range g.j.Bushes {
		if g.j.Bushes[i].Code == code {
			return fmt.Sprintf("bushes/%d", i)
		}
	}
	return "bushes"
}

// offer is an answer as the choice weighs it.
func (g *ground) offer(a *seat.Answer, r seat.Rules) choice.Offer {
	t := g.handling
	o := choice.Offer{Mend: rankOf(a.Mend), Bush: a.Bush.Code, Chance: a.Chance, LeftMM: a.Ligament,
		Poor: a.Filled || a.Bush.Turned && a.BushWall() < t.GoodWall-1e-9, Turned: a.Turned(), Tools: a.Tools(),
		Key: fmt.Sprintf("%s\x00%09.4f\x00%s\x00%s\x00%s", a.Bush.Code, a.SeatLow, a.Way.Name, a.HeldBy, a.Finish)}
	o.Minutes = t.Press + t.Gauge + a.MinutesMore(r)
	if a.Way.Kind == seat.BoringHead {
		o.Minutes += t.Size // set to size by trial cuts
	}
	if a.HeldBy == seat.ByCompound {
		o.Glued = 1
	}
	switch a.Finish {
	case seat.Mandrel:
		o.Minutes += t.Size * float64(len(a.FinishSizes))
	case seat.Ream, seat.BoreInPlace:
		o.Minutes += t.Size
	case seat.ToOwnAxle:
		o.Minutes += 2 * t.Size
	}
	if p := a.Part; p != nil {
		o.LeftMM = math.Min(o.LeftMM, p.Left)
		if !p.Stays {
			o.Minutes += t.Gauge
		}
		if p.Mend == seat.Plug {
			o.Setups = 1 // it sets before it is bored
		}
	}
	if a.Bush.Priced {
		o.Parts, o.Spoilt = a.Bush.Price, a.Bush.Price
	}
	return o
}

// handling are the minutes of what is done by hand, and the wall from which a
// turned bush is a good one.
type handling struct {
	Press    float64 `rule:"minutes_press"`
	Size     float64 `rule:"minutes_sizing"`
	Gauge    float64 `rule:"minutes_gauging"`
	GoodWall float64 `rule:"good_wall_mm"`
}
