package plan

import (
	"math"
	"slices"

	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan/chance"
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/route"
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/target"
	"rebush/plan/verdict"
)

// What is printed of the verdict.
type (
	Verdict  = verdict.Row
	RunnerUp = verdict.RunnerUp
	BoreWay  = verdict.BoreWay
	Option   = verdict.Option
)

// Judged is which way a job is best dealt with.
type Judged struct {
	Row      *Verdict // nil where the figures are none; the finding says which
	Findings finding.List
}

// casting is what the steps before have said against cutting.
type casting struct {
	Swollen bool   // it has grown beyond what may be machined
	Metal   string // that must not be cut: "magnesium"; "" for any other
	OK      bool   // the plan may be machined
}

// judged sets the ways that a job can go side by side and picks one.
func judged(w *books, j *job.Job, book *ledger.Ledger, c casting, holes []survey.Hole, s target.Settled,
	seats Seated, work []Operation, setups []Setup, odds Chanced) (out Judged) {
	sh := j.Shop
	f := verdict.Facts{Swollen: c.Swollen, Metal: c.Metal, OK: c.OK, Lathe: seats.In.Shop.Lathe,
		Placer: sh.Jig == "pinned" || sh.MachineKind == "mill" || sh.MachineKind == "lathe",
		Play:   sidePlays(j), Trials: ended(odds.Result), Rules: verdict.RulesOf(w.rules)}
	for _, b := range boredOf(holes, s, seats) {
		h := judgedHole(b, seats.In.Rules, f.Rules.SleeveWallMM)
		h.PlayMM = b.Hole.Play(w.instr)
		f.Holes = append(f.Holes, h)
	}
	timed(f.Holes, work, setups)
	for i, d := range s.Drives {
		f.Meshes = append(f.Meshes, judgedPair(d, s, i))
	}
	of := verdict.FromJob(j, f)
	r, err := verdict.Decide(of)
	if err != nil {
		out.Findings.Raise(finding.Caution, verdict.RuleVerdict, finding.Place{}, say.F("%v", err), "")
		return out
	}
	of.Explain(book, sh.At("hours").Source(noShop), sh.At("rates").Source(noShop))
	return Judged{r.Row(of.Currency), r.Findings}
}

// noShop is where the figures of a shop stand that nobody described.
const noShop = "built-in small shop:1"

// sidePlays are the side plays of the shafts as they are, where they can be
// told.
func sidePlays(j *job.Job) map[string]float64 {
	out := map[string]float64{}
	for i := range j.Shafts {
		if s := &j.Shafts[i]; s.HubToHub.Given() && j.Chassis.Width.Given() {
			out[s.Name] = seat.SidePlay(s.HubToHub.Float(), j.Chassis.Width.Float(), 0, seat.Washers(s))
		}
	}
	return out
}

// ended are the shares of the trials that did not come right.
func ended(r *chance.Result) *verdict.Trials {
	if r == nil {
		return nil
	}
	n := float64(max(1, r.Trials))
	return &verdict.Trials{Rework: float64(r.Rework) / n, Spoilt: float64(r.Spoilt) / n,
		NextBush: float64(r.NextBush) / n, Lost: r.Lost}
}

// judgedHole is what the verdict needs of one hole.
func judgedHole(b bored, s seat.Rules, sleeveWallMM float64) verdict.Hole {
	old := b.Bore.Seat
	h := verdict.Hole{Name: b.Name(), Shaft: b.Shaft.Name, Fixed: b.Shaft.Leave,
		BushOut: old != nil, SoundSeat: old != nil && old.Sound, Bushed: b.Bore.Bushed || b.Bore.Repaired, Capped: b.Bore.Cap,
		Known: b.Known, Placed: b.Placed, Worn: b.Worn, RadiusMM: b.Hole.Worn.R}
	if len(b.Answers) > 0 {
		fell := seat.Nearest(b.Answers)[0].Fail
		h.Nearest = &verdict.Reason{Text: fell.Text(), Owner: fell.Owner()}
	}
	if a := b.Chosen; a != nil {
		h.Seat = &verdict.Seat{Renews: a.Mend == seat.Renew, Chance: a.Chance}
		if a.Way.Kind != seat.OldSeatWay {
			h.Seat.MetalMM = math.Max(0, a.SeatHigh/2-h.RadiusMM)
		}
		if a.Bush.Priced {
			price := a.Bush.Price
			h.Seat.Price = &price
		}
	}
	if !b.Known || !b.Placed {
		return h
	}
	allow := seat.Allow(b.Wanted, s)
	r := b.Stands().SeatRadius(b.At) + allow
	if b.Chosen != nil {
		r = b.Chosen.SeatHigh / 2
	}
	plug := b.Stands().PlugCentre(b.At, allow, 2*r, sleeveWallMM)
	h.SleeveMM, h.PlugMM, h.Room = r+sleeveWallMM, math.Max(plug.SeatR, plug.LeastOD/2), roomOf(b.Wanted)
	h.MustPassMM, h.BoreMM = b.Wanted.MustPass, seat.BoreLimits(b.Wanted, s)
	return h
}

// roomOf is what stands round the new centre of a hole.
func roomOf(h seat.Hole) []verdict.Room {
	out := []verdict.Room{{Name: "the edge", MM: h.Edge}}
	if h.BossR > 0 {
		out = append(out, verdict.Room{Name: "the rim of the boss", MM: h.BossR - h.BossE})
	}
	for _, n := range h.Near {
		out = append(out, verdict.Room{Name: n.Name, MM: n.At - n.R})
	}
	return out
}

// judgedPair is one mesh as it was found. Where nobody worked out how it
// stands, nothing is wrong with it.
func judgedPair(d mesh.Drive, s target.Settled, i int) verdict.Pair {
	p := verdict.Pair{Name: d.Name, On: d.Wheel, Known: d.Trusted && !d.Window.Empty,
		LowMM: math.Inf(-1), HighMM: math.Inf(1)}
	if d.OnJob() && !s.Axles[d.Mate].Shaft.Leave {
		p.Mate = s.Axles[d.Mate].Shaft.Name
	}
	if i < len(s.Meshes) {
		p.FoundMM, p.LowMM, p.HighMM = s.Meshes[i].FoundCentreMM.Float(), d.Window.Lo, d.Window.Hi
	}
	return p
}

// rebuilding are the kinds of operation that belong to strip and rebuild, whose
// hours the shop gives.
var rebuilding = map[route.Kind]bool{route.KindLineUp: true, route.KindAssemble: true, route.KindWheels: true}

// timed gives each hole the minutes of its operations, with its share of those
// that serve several (washing, trying a bush in scrap, trying the mesh), and
// the clampings that it is worked in.
func timed(holes []verdict.Hole, work []Operation, setups []Setup) {
	seated, shared := 0.0, 0.0
	for _, h := range holes {
		if h.Seat != nil {
			seated++
		}
	}
	for _, o := range work {
		if o.Bore == "" && o.Minutes != nil && !rebuilding[o.Kind] {
			shared += *o.Minutes
		}
	}
	for i := range holes {
		h := &holes[i]
		if h.Seat != nil {
			h.Minutes = shared / seated
		}
		for _, o := range work {
			if o.Bore == h.Name && o.Minutes != nil {
				h.Minutes += *o.Minutes
			}
		}
		for _, s := range setups {
			if s.Clamping && slices.Contains(s.Bores, h.Name) {
				h.Setups = append(h.Setups, s.Name)
			}
		}
	}
}
