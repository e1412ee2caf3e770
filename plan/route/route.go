package route

import (
	"math"
	"strings"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/seat"
)

// builder gathers the operations of one job.
type builder struct {
	j     Job
	s     Shop
	cut   Cutter
	r     Rules
	out   Route
	last  say.Text // tool in the spindle
	setup string
	said  map[string]bool
	needs []need
}

// Make lays out the route. Bores that need nothing are left out of the job by
// the caller; a job without bores has an empty route.
func Make(j Job, s Shop, cut Cutter, r Rules) Route {
	b := &builder{j: j, s: s, cut: cut, r: r, said: map[string]bool{}}
	if len(j.Bores) == 0 || b.forbidden() {
		return b.out
	}
	b.lookOver()
	b.removeOld()
	b.tryInScrap()
	for _, c := range b.clampings() {
		b.cutIn(c)
	}
	b.oldSeats()
	b.wash()
	b.turnBushes()
	b.faceBushes()
	b.pressIn()
	b.oilWays()
	b.finishBores()
	b.lineUp()
	b.assemble()
	b.number()
	b.buyList()
	b.layOut()
	b.proving()
	return b.out
}

// forbidden says what this machine must not be asked to do.
func (b *builder) forbidden() bool {
	if !b.loose() || b.s.Jig {
		return false
	}
	stop := false
	for _, x := range b.j.Bores {
		if !x.cuts() || x.Wear <= b.r.NoJigWear+1e-9 {
			continue
		}
		stop = true
		b.out.Troubles = append(b.out.Troubles,
			Trouble{Level: finding.Stop, Rule: NoJig, Where: x.Name, Have: x.Wear, Want: b.r.NoJigWear,
				Text: say.F("worn %v and no jig: drill and reamer would follow the oval hole", say.MM(x.Wear, 2)),
				Fix: "make a jig plate pinned in sound holes and say `jig: pinned`, or send it out; a plug alone " +
					"does not cure it"})
	}
	return stop
}

// loose is a machine whose tool does not stand on a figure by itself.
func (b *builder) loose() bool { return b.s.Machine == DrillPress || b.s.Machine == ByHand }

func (x Bore) cuts() bool {
	return x.Way == seat.Reamer || x.Way == seat.BoringHead || x.Way == seat.EndMill
}

// mid is the middle of the seat's limits.
func (x Bore) mid() float64 { return (x.Seat[0] + x.Seat[1]) / 2 }

// locate is the least radius of a tool that leaves no part of the lobe for the
// next tool to follow.
func (x Bore) locate() float64 { return x.S + x.Allow/2 }

// thin says whether the wall is thinner than the seat's radius: metal left
// outside, or the plate itself.
func (x Bore) thin() bool { return x.Ligament < x.mid()/2 || x.Plate < x.mid()/2 }

func (b *builder) add(o Operation) {
	if o.Setup == "" {
		o.Setup = b.setup
	}
	for _, f := range []*float64{&o.ToolMM, &o.Depth, &o.Thrust} {
		if *f == 0 {
			*f = math.NaN()
		}
	}
	o.MayWait = true // each operation leaves a state that can wait
	for _, x := range b.j.Bores {
		if x.Name == o.Bore {
			o.Place, o.BushMetal = x.At, x.BushMetal
		}
	}
	b.out.Operations = append(b.out.Operations, o)
}

// number numbers the operations in tens.
func (b *builder) number() {
	for i := range b.out.Operations {
		b.out.Operations[i].Number = 10 * (i + 1)
	}
}

// change books a tool change where the tool is not yet in the spindle.
func (b *builder) change(o *Operation) {
	if o.Tool != b.last {
		o.Minutes += b.r.ToolChange
		b.last = o.Tool
	}
}

// figures asks the cutting figures and books the time of cutting and of the
// tool change.
func (b *builder) figures(o *Operation, q Query) {
	b.change(o)
	cut, err := b.cut(q)
	if err != nil {
		o.Note = join(o.Note, say.F("no cutting figures: %v", err))
		return
	}
	o.Cut, o.Depth, o.Lubricant, o.Thrust = &cut, cut.Depth, cut.Lubricant, cut.Thrust
	o.Spindle = !cut.ByHand
	o.Minutes += cut.Minutes
	o.Note = join(o.Note, cut.Note)
}

// trouble puts a finding down.
func (b *builder) trouble(t Trouble) { b.out.Troubles = append(b.out.Troubles, t) }

// need is one thing to buy and what for.
type need struct {
	tool  string
	spec  []say.Text
	bores []string
}

// buy puts a tool on the list, once for all bores that want it.
func (b *builder) buy(tool string, spec say.Text, bore string) {
	for i := range b.needs {
		if n := &b.needs[i]; n.tool == tool {
			if last := len(n.spec) - 1; strings.HasPrefix(string(spec), string(n.spec[last])) {
				n.spec = n.spec[:last] // the new one says more
			}
			n.spec, n.bores = appendNew(n.spec, spec), appendNew(n.bores, bore)
			return
		}
	}
	b.needs = append(b.needs, need{tool, []say.Text{spec}, []string{bore}})
}

// buyList writes the list down.
func (b *builder) buyList() {
	for _, n := range b.needs {
		b.out.Buy = append(b.out.Buy, BuyLine{say.F("%s: %v", n.tool, join(n.spec...)), list(n.bores)})
	}
	for _, x := range b.j.Bores {
		if x.BushToBuy {
			b.out.Buy = append(b.out.Buy, BuyLine{say.F("bush %s", x.Bush), x.Name})
		}
	}
}

// once gives a remark the first time and nothing after: what is said on every
// block is read on none.
func (b *builder) once(words say.Text) say.Text {
	if s := words.String(); b.said[s] {
		return ""
	} else {
		b.said[s] = true
	}
	return words
}
