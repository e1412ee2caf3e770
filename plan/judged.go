package plan

import (
	"math"

	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/seat"
	"rebush/plan/verdict"
)

// What is printed of the verdict.
type (
	Verdict  = verdict.Row
	RunnerUp = verdict.RunnerUp
	BoreWay  = verdict.BoreWay
	Option   = verdict.Option
)

// weighing gathers what the verdict needs to weigh some ways.
func (g *ground) weighing(works []verdict.Work) verdict.Case {
	f := verdict.Facts{Swollen: g.survey.Growth.Swollen(), Metal: forbidden(g.w, g.c, g.own),
		Lathe: g.own.Shop.Lathe, Play: sidePlays(g.own), Works: works, Rules: verdict.RulesOf(g.w.rules)}
	for _, h := range g.survey.Holes {
		f.Holes = append(f.Holes, verdict.Hole{Name: h.Name(), Shaft: h.Shaft.Name, Fixed: leftAlone(g.own, h.Shaft.Name) || done(h) && !allDone(g.survey.Holes, h.Shaft),
			PlayMM: playOf(h, g.w.instr), BushOut: bushOut(h.Bore), Known: h.Known})
	}
	for i, d := range g.meshes.Drives {
		f.Meshes = append(f.Meshes, g.judgedPair(d, g.standsMM(i, d)))
	}
	return verdict.FromJob(g.own, f)
}

// bushOut says that a hole has no bearing now: its old bush is out, or it was
// worked and is not done.
func bushOut(b *job.Bore) bool { return b.Seat != nil || b.Now != nil && !b.Now.Done }

// leftAlone says whether a job leaves a shaft alone as it is written.
func leftAlone(j *job.Job, shaft string) bool {
	for i := range j.Shafts {
		if j.Shafts[i].Name == shaft {
			return j.Shafts[i].Leave
		}
	}
	return false
}

// costs puts hours and cost of every way into the ledger of the plan that is
// printed.
func costs(c verdict.Case, j *job.Job, book *ledger.Ledger) {
	c.Explain(book, j.Shop.At("hours").Source(noShop), j.Shop.At("rates").Source(noShop))
}

// noShop is where the figures of a shop stand that nobody described.
const noShop = "built-in small shop:1"

// noVerdict says why there is none.
func noVerdict(err error) (out finding.List) {
	out.Raise(finding.Caution, verdict.RuleVerdict, finding.Place{}, say.F("%v", err), "")
	return out
}

// sidePlays are the side plays of the shafts as they are, where they can be
// told.
func sidePlays(j *job.Job) map[string]float64 {
	out := map[string]float64{}
	for i := range j.Shafts {
		if s := &j.Shafts[i]; s.HubToHub.Given() && j.Chassis.Width.Given() {
			out[s.Name] = seat.SidePlay(s.HubToHub.Float(), j.Chassis.Width.Float(), seat.FlangesIn(s), seat.Washers(s))
		}
	}
	return out
}

// judgedPair is one mesh as it was found.
func (g *ground) judgedPair(d mesh.Drive, foundMM float64) verdict.Pair {
	p := verdict.Pair{Name: d.Name, On: d.Wheel, Known: d.Trusted && !d.Window.Empty,
		FoundMM: foundMM, LowMM: d.Window.Lo, HighMM: d.Window.Hi}
	if mates := g.meshes.Axles; d.OnJob() && !leftAlone(g.own, mates[d.Mate].Shaft.Name) {
		p.Mate = mates[d.Mate].Shaft.Name
	}
	if math.IsNaN(foundMM) {
		p.LowMM, p.HighMM = math.Inf(-1), math.Inf(1)
	}
	return p
}
