package route

import (
	"math"

	"rebush/fits/say"
	"rebush/plan/job"
)

// strip takes every axle out, of those bores too that are left alone: nothing is
// clamped with an axle in it, and those bores are measured from and take rods.
// Its time is that of stripping and rebuilding.
func (b *builder) strip() {
	for _, x := range b.j.Bores {
		if x.Made {
			return // it is apart already
		}
	}
	b.setup = onBench
	var notes []say.Text
	var others []string
	for _, s := range b.j.Shafts {
		if len(b.on(s.Name)) == 0 {
			others = append(others, s.Name)
			continue
		}
		lead := b.leads(s)
		which := say.Text("draw off either wheel")
		switch {
		case !s.Wheels:
			which = "draw off what is pressed on"
		case lead != "" && lead == s.Insulated:
			which = say.F("draw off the wheel on the %s, the insulated one", lead)
		case lead != "":
			which = say.F("draw off the wheel on the %s", lead)
		}
		notes = append(notes, say.F("%s: %v, then it comes out", s.Name, which))
	}
	if len(others) > 0 {
		notes = append(notes, say.F("%s out as well", list(others)))
	}
	b.add(Operation{Kind: KindStrip, Pressed: true, Do: "Strip the truck: motor and drive out first, then the axles",
		Tool: "puller or press, support under the hub", Backing: "flat plate under the hub, never under the rim",
		GaugeFirst: "Back to back, hub to hub, side play and backlash as found written down; each axle marked: which, which end.",
		Note:       join(append(notes, "what comes out by itself is not drawn off")...)})
}

// leads is the end that goes through first: the one that has to where only one
// can, else the one whose wheel comes off, "" where either may. An end that is
// larger has to stay behind only where the bore of the other end does not let
// it pass.
func (b *builder) leads(s Shaft) job.Side {
	l, r := s.Journal[0], s.Journal[1]
	switch {
	case l > 0 && r > 0 && l < r-1e-9 && !b.lets(s, job.Left, r):
		return job.Left
	case l > 0 && r > 0 && r < l-1e-9 && !b.lets(s, job.Right, l):
		return job.Right
	case s.Insulated != "":
		return s.Insulated
	}
	return ""
}

// lets says whether the finished bore on a side lets a journal pass. Of a bore
// that is not dealt with nothing is known.
func (b *builder) lets(s Shaft, side job.Side, journal float64) bool {
	for _, x := range b.on(s.Name) {
		if x.Side == side {
			return x.Limits[0] >= journal+b.r.PassOver-1e-9
		}
	}
	return false
}

// mustLead says whether the end that leads does so for its size.
func (b *builder) mustLead(s Shaft, lead job.Side) bool {
	large := math.Max(s.Journal[0], s.Journal[1])
	small := math.Min(s.Journal[0], s.Journal[1])
	return small > 0 && small < large-1e-9 && !b.lets(s, lead, large)
}
