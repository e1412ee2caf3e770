package plan

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/say"
	"rebush/plan/chance"
	"rebush/plan/inspect"
	"rebush/plan/job"
	"rebush/plan/seat"
	"rebush/plan/target"
	"rebush/plan/verdict"
)

// afterwards plans ways on from sizes as made that are not right.
type afterwards struct {
	w     *books
	c     seat.Casting
	was   map[string]bored // as the plan had them
	way   verdict.Name     // asked for, "" the advised one
	trial chance.Settings  // none: how likely it comes right is not asked
	bench inspect.Shop
}

// mostOnward is how many other ways on are planned for one hole.
const mostOnward = 3

// onward is the job as it stands, planned from there.
type onward struct {
	steps
	Right *float64 // how likely the whole job comes right; nil where it is stopped, or nothing is left to try
}

// plan plans what is left of a job: the way that is asked for, else the advised
// one, else the nearest that cuts.
func (x *afterwards) plan(now *job.Job) onward {
	of := tour(surveyedGround(x.w, x.c, now), x.trial)
	o := of.nearest()
	if _, judged, err := of.judged(nil); err == nil {
		if s := shown(of, judged, x.way); s.cuts {
			o = s.of
		}
	}
	return onward{steps: o.steps, Right: rightOnward(o)}
}

func rightOnward(o *outcome) *float64 {
	if o.Result == nil {
		return nil
	}
	return dim.Number(dim.Near(o.Result.FirstTimeRight, 4))
}

// advise names for every size that is not accepted what the plan of the truck
// as it now is does there, and other ways on that were planned too. now is the
// job as it stands.
func (x *afterwards) advise(j, now *job.Job, rows []Inspection) {
	var whole *onward
	of := map[string][]Next{}
	for i := range rows {
		r := &rows[i]
		if r.Result == inspect.Accept {
			continue
		}
		if whole == nil {
			o := x.plan(now)
			whole = &o
		}
		if _, ok := of[r.Bore]; !ok {
			of[r.Bore] = x.onwards(j, now, *whole, r.Bore)
		}
		if n := x.letPass(now, *r); n != nil {
			r.Next = append(r.Next, *n)
		}
		r.Next = append(r.Next, of[r.Bore]...)
	}
}

// onwards are the ways on at one hole, that of the plan of the whole first.
func (x *afterwards) onwards(j, now *job.Job, whole onward, name string) []Next {
	b, ok := whole.at(name)
	_, at := now.Bore(name)
	if !ok || at == nil || at.Now == nil {
		return nil
	}
	if b.Chosen == nil {
		if at.Now.Done {
			return []Next{{Do: "go on with it as it is: nothing more is done at this bore", Bush: at.Now.Bush,
				FirstTimeRight: whole.Right}}
		}
		return []Next{{Do: say.F("nothing of this shop goes on from here: see the stop of %s in the plan of what is left", name)}}
	}
	out := []Next{{Do: x.words(b, *at.Now), Bush: b.Chosen.Bush.Code, FirstTimeRight: whole.Right}}
	if at.Now.Bush != "" && !at.Now.Out {
		return out
	}
	seen := map[class]bool{classOf(b.Chosen): true}
	for _, m := range seat.MendsRising()[1:] {
		if m == b.Chosen.Mend || len(out) > mostOnward {
			continue
		}
		other := editable(now)
		other.Way[name] = string(m)
		o := x.plan(other)
		if got, _ := o.at(name); o.OK && got.Chosen != nil && !seen[classOf(got.Chosen)] {
			seen[classOf(got.Chosen)] = true
			out = append(out, Next{Do: x.words(got, *at.Now), Bush: got.Chosen.Bush.Code, FirstTimeRight: o.Right})
		}
	}
	return out
}

// class is what tells one way on from another for whoever stands at the bench.
type class struct {
	mend   seat.Mend
	by     seat.Hold
	turned bool
}

func classOf(a *seat.Answer) class { return class{a.Mend, a.HeldBy, a.Bush.Turned} }

// at is one hole of a plan.
func (o steps) at(name string) (bored, bool) {
	for _, b := range boredOf(o.Survey.Holes, o.Target, o.Seats) {
		if b.Name() == name {
			return b, true
		}
	}
	return bored{}, false
}

// letPass is a bore that came out a little large, left as it is: nil where it is
// no such bore, or the plan with it is stopped.
func (x *afterwards) letPass(now *job.Job, r Inspection) *Next {
	was := x.was[r.Bore].Chosen
	_, at := now.Bore(r.Bore)
	if r.What != inspect.Bore || r.Result != inspect.Reject || was == nil || at == nil || at.Now == nil || !at.Now.Placed {
		return nil
	}
	size, most := at.Now.BoreMM, was.Bore[1]
	if size <= most || size > most+x.bench.LetPassMM {
		return nil
	}
	other := editable(now)
	n := x.set(other, r.Bore, func(n *job.Now) { n.Done, n.Out = true, false })
	o := x.plan(other)
	if o.Findings.Stops() {
		return nil
	}
	journal := x.was[r.Bore].Journal()
	return &Next{Bush: n.Bush, FirstTimeRight: o.Right,
		Do: say.F("leave it so: the axle runs with %v of clearance, %v at the most was wanted",
			say.Um(1000*seat.Running(size, journal), 0), say.Um(1000*seat.Running(most, journal), 0).Bare())}
}

// set changes what stands in a hole of a copy of a job.
func (x *afterwards) set(j *job.Job, name string, change func(*job.Now)) job.Now {
	_, hole := j.Bore(name)
	n := *hole.Now
	change(&n)
	hole.Now = &n
	return n
}

// words say what a plan does at a hole in which there has been work.
func (x *afterwards) words(b bored, n job.Now) say.Text {
	a := b.Chosen
	first := say.Text("")
	if n.Out {
		first = say.F("press bush %s out, then ", n.Bush)
	}
	if n.Bush != "" && !n.Out {
		return say.F("size the bore again to %v (%s)", say.Limits(a.Bore[0], a.Bore[1], 3), string(a.Finish))
	}
	switch a.Mend {
	case seat.Renew:
		return first + into(a, "the seat as it was made")
	case seat.MadeToFit:
		return first + eccentric(a) + into(a, "the seat as it was made")
	case seat.BushInABush, seat.Plug:
		return first + say.F("%s: turn a part of %v outside, set it in a hole of %v, then ", string(a.Mend),
			say.Limits(a.Part.ODLow, a.Part.ODHigh, 3), say.Limits(a.Part.SeatLow, a.Part.SeatHigh, 3)) + into(a, "it")
	}
	cut := say.F("cut a seat of %v by %s about x %v, y %v", say.Limits(a.SeatLow, a.SeatHigh, 3), a.Way.Name,
		say.MM(b.At[0], 3).Bare(), say.MM(b.At[1], 3))
	if was := x.was[b.Name()].Chosen; was != nil && was.Way.Name == a.Way.Name && apart(b.At, n.At) < 1e-6 {
		cut = say.F("open the seat where it stands by %s to %v", a.Way.Name, say.Limits(a.SeatLow, a.SeatHigh, 3))
	}
	return first + cut + ", then " + into(a, "it")
}

func apart(a, b target.Point) float64 { return math.Hypot(a[0]-b[0], a[1]-b[1]) }

// into says how a bush goes into a seat.
func into(a *seat.Answer, where say.Text) say.Text {
	first, bush := say.Text(""), say.F("bush %s", a.Bush.Code)
	if a.Bush.Turned {
		first, bush = say.F("turn a bush of %v outside and ", say.Limits(a.Bush.ODLow, a.Bush.ODHigh, 3)), "it"
	}
	switch a.HeldBy {
	case seat.ByCompound:
		return first + say.F("set %v into %v with retaining compound", bush, where)
	case seat.ByCap:
		return first + say.F("lay %v into %v", bush, where)
	}
	return first + say.F("press %v into %v", bush, where)
}

// eccentric says how the bore of a bush stands in it, "" in its middle.
func eccentric(a *seat.Answer) say.Text {
	bar := math.Ceil(a.Bush.ODHigh + 1)
	e, err := inspect.PutBack(a.SeatAt, [2]float64{a.SeatAt[0] + a.Offset[0], a.SeatAt[1] + a.Offset[1]}, a.Bush.ODHigh,
		a.Bore[1], bar)
	if err != nil || e.OffsetMM == 0 {
		return ""
	}
	return say.F("its bore %v off its middle, thin side at %.0f degrees (%v of packing under one of three jaws on %.0f mm "+
		"bar, least wall %v): ", say.MM(e.OffsetMM, 3), math.Mod(e.ClockDeg, 360), say.MM(e.PackingMM, 3), bar,
		say.MM(e.LeastWallMM, 2))
}

// ifLarge plans what is done where the seat of a hole comes out too large: the
// rest of the job from there, by bore. Of a seat that is not cut there is
// nothing to plan.
func (x *afterwards) ifLarge(j *job.Job, s steps) map[string]Next {
	out, by := map[string]Next{}, x.w.rules.V("glue_from_mm")
	for _, b := range boredOf(s.Survey.Holes, s.Target, s.Seats) {
		a := b.Chosen
		if a == nil || a.Mend != seat.Rebush || !a.Way.Kind.Cuts() {
			continue
		}
		other := editable(j)
		_, hole := other.Bore(b.Name())
		most := seat.Works(b.Wanted, a, s.Seats.In.Shop, s.Seats.In.Rules)[1]
		hole.Now = &job.Now{SeatMM: math.Max(a.SeatHigh+by, most+by/2), At: b.At, UAtMM: b.UPlace, Placed: true}
		o := x.plan(other)
		if got, _ := o.at(b.Name()); o.OK && got.Chosen != nil {
			out[b.Name()] = Next{Do: say.F("from a seat of %v: %v", say.MM(hole.Now.SeatMM, 3), x.words(got, *hole.Now)), Bush: got.Chosen.Bush.Code, FirstTimeRight: o.Right}
		}
	}
	return out
}
