package sheets

import (
	"rebush/plan"
	"rebush/plan/route"
)

// layout is how a setup sheet stands on its pages: how close, and whether a
// set-up that would not go on one page goes on overleaf where it may begin.
type layout struct {
	step int  // 0 is roomy, lastStep the closest
	flow bool // set-ups follow on, and may be torn in two

	apart bool // a set-up may be torn between the last cut of a seat and its gauging
}

// lastStep is the closest that lines and type of a setup sheet stand.
const lastStep = 4

// closest is how close lines stand from which on pictures of a set-up are lower, and
// the tool stands on the line of what is done.
const closest = 0.08

// layouts are tried in this order: set-ups whole, ever closer; then torn, at the
// last anywhere.
func layouts() []layout {
	var out []layout
	for _, x := range []layout{{}, {flow: true}, {flow: true, apart: true}} {
		for step := range lastStep + 1 {
			x.step = step
			out = append(out, x)
		}
	}
	return out
}

// closer says whether lines stand closer than usual.
func (l layout) closer() bool { return l.step > 0 }

// tight says whether type is smaller too.
func (l layout) tight() bool { return l.step >= 2 }

// sheetStyle is the type of a setup sheet at a step of closeness: body and names
// keep their size, what to mind steps down at the last by half a point.
func sheetStyle(step int, large bool) style {
	st := sheetNormal
	if large {
		st = sheetLarge
	}
	st.closer = [lastStep + 1]float64{0, 0.05, 0.075, 0.085, 0.095}[step]
	if step >= 2 {
		st.mind -= 0.5
		st.tick, st.figure = st.tick-0.5, st.figure-1
	}
	if step >= 3 {
		st.big, st.blank = st.big-3, st.blank-0.5
	}
	if step == lastStep {
		st.mind = st.small
		st.big, st.tick, st.blank = st.big-1, st.tick-0.5, st.blank-0.5
	}
	return st
}

// mostPages is how many pages of a setup sheet are read at a bench: 2 where nothing
// is machined; 6 for two holes worked, 9 for four, 12 for six, one for each
// clamping over two, and one where two parts or more are turned, each of which
// has its section; half as many again in large type (j).
func mostPages(pl *plan.Plan, o Options) int {
	n := 2
	if pl.OK && pl.Machines() {
		holes := 0
		for _, s := range pl.Seats {
			if s.Bush != "" {
				holes++
			}
		}
		clampings := 0
		for _, s := range pl.Setups {
			if isClamping(s) {
				clampings++
			}
		}
		n = 3 + 3*max(1, (holes+1)/2) + max(0, clampings-2)
		if turnedParts(pl) > 1 {
			n++
		}
	}
	if o.Large {
		n += n / 2
	}
	return n
}

// turnedParts are the bushes, plugs and sleeves that the shop turns for itself.
func turnedParts(pl *plan.Plan) int {
	n := 0
	for _, op := range pl.Operations {
		if op.Kind == route.KindTurn {
			n++
		}
	}
	return n
}
