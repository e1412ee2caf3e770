package plan

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"math"

	"rebush/plan/chance"
	"rebush/plan/inspect"
	"rebush/plan/job"
	"rebush/plan/seat"
	"rebush/plan/verdict"
)

// asMade is a job with sizes as made as it now stands, and those sizes set
// against the plan without them. What was gauged is taken as found, what was not
// as the plan would have left it. The sizes as made are gone from it, so that
// what is left is planned like any other job.
func asMade(j *job.Job, way verdict.Name, trials chance.Settings) (*job.Job, Inspected, error) {
	before := *j
	before.Made = nil
	w, c, err := ready(&before, nil)
	if err != nil {
		return nil, Inspected{}, err
	}
	of := tour(surveyedGround(w, c, &before), trials)
	_, judged, err := of.judged(nil)
	if err != nil {
		return nil, Inspected{}, err
	}
	was := shown(of, judged, way).of.steps
	made := inspected(w, j, was.Book, was.Survey.Holes, was.Target, was.Seats)
	x := afterwards{w: w, c: c, was: map[string]bored{}, bench: inspect.ShopOf(w.rules), trial: trials, way: way}
	for _, b := range boredOf(was.Survey.Holes, was.Target, was.Seats) {
		x.was[b.Name()] = b
	}
	now := standing(w, j, x.was, made.Rows)
	x.advise(j, now, made.Rows)
	return now, made, nil
}

// standing is a job with its holes as they were made. rows say which of the
// sizes are right.
func standing(w *books, j *job.Job, of map[string]bored, rows []Inspection) *job.Job {
	now := editable(j)
	now.Made = nil
	for _, m := range j.Made {
		b := of[m.Bore]
		if _, at := now.Bore(m.Bore); at != nil && b.Placed && !b.Shaft.Leave {
			at.Now = worked(w, m, b, resultsOf(rows, m.Bore))
		}
	}
	return now
}

// resultsOf are the results of one bore by what was gauged.
func resultsOf(rows []Inspection, bore string) map[inspect.What]Inspection {
	out := map[inspect.What]Inspection{}
	for _, r := range rows {
		if r.Bore == bore {
			out[r.What] = r
		}
	}
	return out
}

// worked is one hole as it was made. A seat that nobody gauged lies between the
// limits of the plan, a place where the plan puts it. A bush whose bore is too
// small stays and is sized again; one whose bore is too large, or that stands
// out of place or in a seat that is no good, comes out. A seat for a bush whose
// bore stands off its middle is not where the bore belongs, however right it is.
func worked(w *books, m job.Made, b bored, is map[inspect.What]Inspection) *job.Now {
	a := b.Chosen
	right := is[inspect.Place].Result != inspect.Reject
	n := &job.Now{At: seatPlace(b), UAtMM: b.UPlace, Placed: right && !eccentricIn(b)}
	if m.Centre.Given() {
		g, _ := gaugeOf(w.instr, m.With, inspect.Place)
		n.At, n.UAtMM = m.Centre.Float(), g.UMM
	}
	g, _ := gaugeOf(w.instr, m.With, inspect.Seat)
	switch {
	case m.Seat.Given():
		n.SeatMM, n.USeatMM = m.Seat.Float()-g.BiasMM, g.UMM
		if a != nil && a.Way.Kind != seat.CapWay && is[inspect.Seat].Result != inspect.Reject {
			n.SeatMM, n.USeatMM = agreed(a, n.SeatMM, n.USeatMM)
		}
	case a != nil:
		n.SeatMM, n.USeatMM = (a.SeatLow+a.SeatHigh)/2, (a.SeatHigh-a.SeatLow)/2
	default:
		return nil // of its hole nothing is known
	}
	if !m.Diameter.Given() || a == nil {
		return n
	}
	n.SideMM = a.SideUse
	n.Bush, n.BoreMM, n.UBore = a.Bush.Code, m.Diameter.Float()-g.BiasMM, g.UMM
	bore := is[inspect.Bore]
	small := bore.Result == inspect.Reject && n.BoreMM < a.Bore[0]
	n.Out = !right || is[inspect.Seat].Result == inspect.Reject || bore.Result == inspect.Reject && !small
	if n.Done = !n.Out && !small; n.Done {
		// It is the bore that stands there now.
		if n.Placed = true; !m.Centre.Given() {
			n.At = b.At
		}
	}
	return n
}

// agreed is a seat that was gauged and not rejected, and of which the limits of
// the tool that made it are known, or an earlier reading: it lies where both
// agree; where they do not, the gauge is believed.
func agreed(a *seat.Answer, size, u float64) (mm, half float64) {
	low, high := math.Max(size-u, a.SeatLow), math.Min(size+u, a.SeatHigh)
	if low > high {
		return size, u
	}
	return (low + high) / 2, (high - low) / 2
}

// left is the plan of what is left to do of a job with sizes as made.
func (p *Plan) left(j *job.Job, made Inspected) {
	p.AsMade, p.Inspect = true, made.Rows
	p.Hash, p.Replaces = hashOf(j, j.Made), hashOf(j, nil)
	p.Findings = append(p.Findings, made.Findings...)
	p.Job.Made = j.Made
	if v := p.Verdict; v != nil && v.Choice == verdict.Leave && finishedAll(p.Job) && v.Cures {
		v.Sentence = "The bearings that were made are finished and no other is worn beyond what is left alone: nothing " +
			"more is cut. Line the axles up, put the truck together and prove it."
	}
}

// finishedAll says whether every hole with sizes as made is finished.
func finishedAll(now *job.Job) bool {
	for i := range now.Shafts {
		for _, b := range now.Shafts[i].Bores {
			if b.Now != nil && !b.Now.Done {
				return false
			}
		}
	}
	return true
}

// hashOf is the hash of a plan: of all of the job and the shop that it is made
// of, and of sizes as made where it starts from them, so that a sheet of what is
// left is never taken for the sheet of the whole.
func hashOf(j *job.Job, made []job.Made) string {
	sum := sha256.New()
	sum.Write(j.Canonical())
	for _, m := range made {
		fmt.Fprintf(sum, "made %q %v %v %v %v %q\n", m.Bore, m.Seat.MM(), m.Diameter.MM(), m.Centre.X.MM(),
			m.Centre.Y.MM(), m.With)
	}
	return hex.EncodeToString(sum.Sum(nil)[:8])
}
