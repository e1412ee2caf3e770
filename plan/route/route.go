package route

import (
	"math"
	"slices"

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
	needs []need
	bar   float64 // thickest boring bar that goes into every hole that one is put in, mm; 0 none
	owns  bool    // a trial with the tools of the shop, however far they reach
}

// Make lays out the route. Bores that need nothing are left out of the job by
// the caller; a job without bores has an empty route.
func Make(j Job, s Shop, cut Cutter, r Rules) Route {
	b := &builder{j: j, s: s, cut: cut, r: r}
	b.s.EndMills = slices.Clone(s.EndMills)
	for i, t := range s.EndMills {
		b.s.EndMills[i] = b.usual(t)
	}
	b.j.Bores = slices.Clone(j.Bores)
	for i, x := range b.j.Bores {
		b.j.Bores[i] = b.leftForReamer(x)
	}
	if len(j.Bores) == 0 || b.forbidden() {
		return b.out
	}
	b.unstaked()
	b.lookOver()
	b.strip()
	b.removeOld()
	if b.seatUnknown() {
		b.measureAndStop()
		return b.done()
	}
	b.tryFast()
	b.measureAgain()
	b.jig()
	b.tryInScrap()
	b.setParts()
	for _, c := range b.clampings() {
		b.cutIn(c)
	}
	b.oldSeats()
	b.wash()
	b.turnBushes()
	b.testRods()
	b.faceBushes()
	b.pressIn()
	b.oilWays()
	b.finishBores()
	b.j.Bores = append(slices.Clone(b.j.Bores), b.j.Done...) // all go together
	b.lineUp()
	b.assemble()
	b.proving()
	return b.done()
}

// done numbers the operations, says where they may rest and lists what they
// want.
func (b *builder) done() Route {
	b.number()
	b.rests()
	b.buyList()
	b.layOut()
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

// cuts says whether a tool makes the seat of a bore.
func (x Bore) cuts() bool { return x.Mend != seat.MadeToFit && x.Mend != seat.Keep && x.Way.Cuts() }

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
	for _, x := range b.j.Bores {
		if x.Name != o.Bore {
			continue
		}
		if o.Place == ([2]float64{}) {
			o.Place = x.At
		}
		if o.BushMetal == "" {
			o.BushMetal = x.BushMetal
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
