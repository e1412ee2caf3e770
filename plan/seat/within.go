package seat

import (
	"cmp"
	"math"
	"slices"

	"rebush/fits/material"
	"rebush/fits/say"
)

// fewest is how many sizes of a part are tried for one bush, from the least up: a
// larger one only leaves less metal.
const fewest = 3

// partMetal is what a plug or a sleeve is turned of: of the plate's own metal where
// that is rolled or drawn or of aluminium, so that it is cut and grows alike; else
// of brass rod, since die-casting zinc is not sold as bar (METHODS.md 3).
func (in *Input) partMetal() (Metal, error) {
	name := in.Casting.Material.Name
	switch in.Casting.Material.Kind {
	case material.WroughtAluminium, material.WroughtBrass, material.Steel, material.CastIron:
	case material.AluminiumCasting:
		name = "aluminium plate"
	default:
		name = "brass rod"
	}
	return metalOf(in.Metals, name)
}

// around judges what is set into a hole for a bush to stand in: a part that is
// turned, solid, and in which the seat is cut once it is in.
type around struct {
	judge
	mend  Mend
	metal Metal
	known map[sized]tried
}

// sized is a part by its hole, and how it is held.
type sized struct {
	way   string
	low   float64
	glued bool
}

type tried struct {
	a  Answer
	ok bool
}

// sizes are the holes that could be made for a part of at least a radius, the
// smallest first.
func (j *around) sizes(least float64) []Way {
	var out []Way
	for _, w := range j.shop.Ways {
		low := 2 * math.Max(j.need, least)
		if w.Kind != BoringHead {
			if w.Low >= low-slack {
				out = append(out, w)
			}
			continue
		}
		per := 1 / j.r.BoredStep
		mid := math.Ceil((math.Max(low, w.Low)+j.r.BoringHead)*per-slack) / per
		if mid <= w.High+slack {
			w.Size, w.Low, w.High = mid, mid-j.r.BoringHead, mid+j.r.BoringHead
			out = append(out, w)
		}
	}
	slices.SortStableFunc(out, func(a, b Way) int {
		return cmp.Or(by(a.High, b.High), cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Name, b.Name))
	})
	return out
}

// made judges a part in one hole: pressed where that holds by itself, else in
// compound, else pressed and held beside its press. false, with its reasons,
// where none goes.
func (j *around) made(w Way, glueOnly bool) (Answer, bool) {
	pressed, glued := tried{}, tried{}
	if !glueOnly {
		if pressed = j.one(w, false); pressed.ok && pressed.a.Second == 0 {
			return pressed.a, true
		}
	}
	if j.shop.Compound {
		if glued = j.one(w, true); glued.ok {
			return glued.a, true
		}
	}
	switch {
	case glueOnly:
		return glued.a, false
	case pressed.ok:
		return pressed.a, true
	case j.shop.Compound && glued.a.nearer(&pressed.a):
		return glued.a, false
	}
	return pressed.a, false
}

func (j *around) one(w Way, glued bool) tried {
	key := sized{w.Name, w.Low, glued}
	if t, ok := j.known[key]; ok {
		return t
	}
	var t tried
	t.a = Answer{Bush: Bush{Code: string(j.mend), Turned: true, OnHand: -1, Metal: j.metal, Length: j.h.Plate},
		Way: w, Mend: j.mend, HeldBy: ByPress, Ligament: math.Inf(1), LooseAt: math.NaN(), SeatLow: w.Low, SeatHigh: w.High}
	a, b, half := &t.a, &t.a.Bush, j.r.Turned/2
	mid := (w.Low + w.High) / 2
	b.ODLow, b.ODHigh = mid-half, mid+half
	u := -(j.r.GapLow + j.r.GapHigh) / 2
	if glued {
		a.HeldBy = ByCompound
	} else {
		spread := half + (w.High-w.Low)/2
		lo, hi := j.window(b, w.Low)
		u = math.Max(math.Min(lo+spread+j.r.TurnPress, hi-spread), spread+j.r.TurnPress)
	}
	b.ODLow, b.ODHigh = mid+u-half, mid+u+half
	a.ULow, a.UHigh = Interference(b.ODLow, a.SeatHigh), Interference(b.ODHigh, a.SeatLow)
	for _, x := range [...]struct {
		q   Question
		ask func(*judge, *Answer) Fail
	}{{CleansUp, (*judge).cleansUp}, {FitsTight, (*judge).fits}, {WallStands, (*judge).wall},
		{HoldsBush, (*judge).holds}, {CarriesCurrent, (*judge).current}, {HasRoom, (*judge).room}} {
		if x.q == HoldsBush && a.Ligament <= 0 {
			continue
		}
		if f := x.ask(&j.judge, a); f.What != noFail {
			f.Part = j.partName()
			a.fails(f, &j.judge)
		}
	}
	if t.ok = len(a.Fails) == 0; t.ok {
		o := j.odds(a)
		cleans, holds, _ := o.Parts()
		a.Chance = cleans * holds
	}
	j.known[key] = t
	return t
}

func (j *around) partName() string {
	if j.mend == Plug {
		return "plug"
	}
	return "sleeve"
}

// part is what an answer of a part is, as it stands in the plate.
func (j *around) part(a *Answer, through bool) *Part {
	p := &Part{Mend: j.mend, At: j.h.At, Way: a.Way, SeatLow: a.SeatLow, SeatHigh: a.SeatHigh, ODLow: a.Bush.ODLow,
		ODHigh: a.Bush.ODHigh, Length: j.h.Plate, Metal: j.metal, HeldBy: a.HeldBy, Second: a.Second,
		CleanUp: a.CleanUp, Left: a.Ligament, Chance: a.Chance, Hole: &j.h, through: through,
		factor: tensionFactor(j.wallShape(a.SeatHigh), a.SeatHigh)}
	if a.HeldBy == ByPress {
		p.PressN, p.PressMPa = [2]float64{a.PressIn, a.Force[1]}, a.PHigh
	}
	return p
}

// within searches bushes that stand in a plug or in a sleeve that is turned: of
// each bush with each tool the least part that goes.
func (in *Input) within(m Mend, s Site, sites []Site, h Hole, list []Bush, why bool) []Answer {
	metal, err := in.partMetal()
	if err != nil {
		return nil
	}
	here := s
	if m == Plug {
		here.At = plugAt(s)
	}
	out := &around{judge: *in.judge(in.hole(here, sites)), mend: m, metal: metal,
		known: map[sized]tried{}}
	inner := h
	inner.S, inner.Fill, inner.There, inner.Old = 0, 0, 0, nil // what is there goes with the part's hole
	inner.Plate2 = h.Plate2.beside(metal)
	j := in.judge(inner)
	j.mend = m
	return j.searchWithin(out, list, why)
}

// plugAt is where a plug is put: the middle of what is there.
func plugAt(s Site) [2]float64 {
	if s.there() > 0 {
		return thereAt(s.Old)
	}
	return s.Old.Stands().Found()
}

func (j *judge) searchWithin(out *around, list []Bush, why bool) []Answer {
	var good, fell []Answer
	for i := range list {
		b, near := &list[i], false
		for k := range j.shop.Ways {
			w := &j.shop.Ways[k]
			for _, glued := range [2]bool{false, true} {
				if !j.asks(b, w, glued) || j.farOff(b, w, glued) {
					continue
				}
				near = true
				if a := j.inPart(out, b, w, glued, why); a.Feasible {
					good = append(good, a)
				} else if why {
					fell = append(fell, a)
				}
			}
		}
		if !near && why {
			fell = append(fell, j.untooled(b, j.shop.Ways))
		}
	}
	rank(good, &j.r)
	slices.SortStableFunc(fell, func(a, b Answer) int { return missedOf(&a).compare(missedOf(&b)) })
	return append(good, fell[:min(len(fell), long)]...)
}

func missedOf(a *Answer) missed {
	m := missed{&a.Bush, &a.Way, a.HeldBy == ByCompound, len(a.Fails), a.gaps()}
	if a.Way.Kind == NoTool {
		m.way = nil
	}
	return m
}

// inPart is one bush with one tool in the least part that goes round it; where
// none does, the nearest miss.
func (j *judge) inPart(out *around, b *Bush, w *Way, glued, why bool) Answer {
	var best Answer
	j.part = nil
	// How large the seat is does not hang on what stands round it.
	probe := Answer{Bush: *b, Way: *w}
	j.wallOf = j.r.GoodWall
	if f := j.sizes(&probe, glued); f.What != noFail {
		j.answer(&best, b, w, glued, why)
		return best
	}
	off := apart(out.h.At, j.h.At)
	try := func(hole Way, through bool) bool {
		part, ok := out.made(hole, through)
		var a Answer
		if ok {
			j.part = out.part(&part, through)
			j.answer(&a, b, w, glued, why)
			j.part = nil
		} else {
			a = Answer{Bush: probe.Bush, Way: *w, Mend: j.mend, SeatAt: j.h.At, Seen: &j.h, HeldBy: ByPress,
				SeatLow: probe.SeatLow, SeatHigh: probe.SeatHigh, Fails: part.Fails}
			if glued {
				a.HeldBy = ByCompound
			}
			a.Fail = a.hardest()
		}
		if best.Bush.Code == "" || a.Feasible || a.nearer(&best) {
			best = a
		}
		return a.Feasible
	}
	holes := out.sizes(off + probe.SeatHigh/2 + j.r.LeastWall)
	for _, hole := range holes[:min(fewest, len(holes))] {
		if try(hole, false) {
			return best
		}
	}
	if out.mend == Plug && j.shop.Compound && w.Kind != Reamer {
		for _, hole := range out.sizes(0)[:min(1, len(out.sizes(0)))] {
			left := RoundLeft(hole.Low, off, probe.SeatHigh)
			if left < 360 && left >= j.r.FillDeg-slack && try(hole, true) {
				return best
			}
		}
	}
	if best.Bush.Code == "" {
		best = j.noPart(out, b, w, glued)
	}
	return best
}

// noPart is a bush for whose part the shop makes no hole.
func (j *judge) noPart(out *around, b *Bush, w *Way, glued bool) Answer {
	a := Answer{Bush: *b, Way: *w, Mend: j.mend, SeatAt: j.h.At, Seen: &j.h, HeldBy: ByPress}
	if glued {
		a.HeldBy = ByCompound
	}
	probe := a
	j.sizes(&probe, glued)
	least := 2 * math.Max(out.need, apart(out.h.At, j.h.At)+probe.SeatHigh/2+j.r.LeastWall)
	f := fail(FitsTight, noPartTool, least, 0)
	f.Part = out.partName()
	a.fails(f, j)
	return a
}

// stays searches bushes in the old bush, which stays in the plate: its seat is cut
// in it about the new centre and takes the wear in.
func (in *Input) stays(s Site, sites []Site, h Hole, list []Bush, why bool) []Answer {
	od := s.Old.Bore.BushedOD.Float()
	here := s
	here.At = s.Old.Worn.O
	outside := in.hole(here, sites)
	inner := h
	inner.S, inner.There = s.Old.Stands().SeatRadius(s.At), 0
	inner.Plate2 = h.Plate2.beside(in.anyBush())
	j := in.judge(inner)
	j.mend = BushInABush
	j.part = &Part{Mend: BushInABush, Stays: true, At: here.At, SeatLow: od, SeatHigh: od, ODLow: od, ODHigh: od,
		Length: h.Plate, HeldBy: ByPress, CleanUp: math.Inf(1), Left: MetalLeft(outside.EdgeAway(), od), Chance: 1,
		Hole: &outside, factor: tensionFactor(outside.wall(od), od)}
	return j.search([]Mend{Rebush}, list, why)
}

// anyBush is a bush of which nobody knows the metal: from the softest to the
// stiffest that bushes are made of, but for plastic, and of the least and largest
// expansion that is worse.
func (in *Input) anyBush() Metal {
	out := Metal{Name: "the old bush", ELow: math.Inf(1)}
	for _, mat := range in.Metals.All() {
		switch mat.Kind {
		case material.SolidBronze, material.PorousBronze, material.BrassBush:
			if m, err := metalOf(in.Metals, mat.Name); err == nil {
				out.EHigh, out.ELow = math.Max(out.EHigh, m.EHigh), math.Min(out.ELow, m.ELow)
				out.Alpha = math.Max(out.Alpha, m.Alpha)
			}
		}
	}
	return out
}

// shutWithin says why a hole is not open to a plug or to a bush in a bush.
func (in *Input) shutWithin(m Mend, s Site, h Hole, rebush Mended) (whyNot, owner say.Text) {
	b, sh := s.Old.Bore, in.Job.Shop
	switch {
	case h.Cap > 0:
		return underCap(h)
	case m == BushInABush && b.Bushed && b.BushedOD.Given():
	case m == BushInABush && b.Bushed:
		return "how large the old bush is outside is not known", "nobody has measured the old bearing"
	case !in.Shop.Lathe:
		return say.F("its %s has to be turned, and there is no lathe", map[Mend]string{Plug: "plug", BushInABush: "sleeve"}[m]),
			"it would have to be turned, and we have no lathe"
	case m == BushInABush && feasible(rebush.Answers):
		return "a bush goes in without a sleeve", "a bearing goes in by itself"
	case m == Plug && sh.MachineKind != "mill" && sh.MachineKind != "lathe" && sh.Jig != "pinned":
		return "the new hole in a plug wants a mill, a lathe or a pinned jig: a punched start is 0.1 to 0.25 mm out",
			"we cannot place a new hole well enough"
	}
	return "", ""
}
