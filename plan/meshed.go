package plan

import (
	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/target"
)

// Meshed is what the gears want, and what wear has done to them.
type Meshed struct {
	Axles    target.Axles
	Drives   []mesh.Drive
	FoundMM  []float64 // centre distance of each as found, as it is printed
	Findings finding.List
}

// meshed reads the meshes of the job and asks each how it stands as found.
func meshed(w *books, j *job.Job, book *ledger.Ledger, shop target.Shop, holes []survey.Hole,
	limits seat.Rules) Meshed {
	out := Meshed{Axles: target.AxlesOf(j, holes, func(h survey.Hole) [2]float64 {
		if n := h.Bore.Now; n != nil && n.Done {
			return runs(h.Journal(), [2]float64{n.BoreMM, n.BoreMM})
		}
		return runs(h.Journal(), seat.BoreLimits(seat.Hole{Journal: h.Journal(),
			MustPass: h.Shaft.Through(h.Bore.Side)}, limits))
	}, target.Sits)}
	out.Drives, out.Findings = mesh.FromJob(mesh.Input{Job: j, Rules: w.rules, Tables: w.lib, Shafts: out.Axles.For(),
		UMate: w.instr.Default(survey.Middle).U, USetup: shop.Setup.U, UHole: shop.Hole.U}, book)
	for i, d := range out.Drives {
		original, found, u := out.Axles.Seen(book, j.Source("gears/"+d.Name), d)
		var said finding.List
		out.Drives[i], said = d.Seen(j, original.V, found.V, u, out.Axles.Along(d))
		out.FoundMM = append(out.FoundMM, dim.Place(found.V).Float())
		if out.overlaps(w, j, d, found.V, u) { // by the doubt of its teeth before they were contradicted
			said = d.SayOverlap(j, found.V)
		}
		out.Findings = append(out.Findings, said...)
	}
	return out
}

// runs are the running clearances that the limits of a finished bore allow.
// Where what has to pass leaves none between them, it is the least of them.
func runs(journal float64, bore [2]float64) [2]float64 {
	return [2]float64{bore[0] - journal, max(bore[0], bore[1]) - journal}
}

// overlaps says whether the teeth of a drive overlap as found beyond all doubt, at a
// shaft that is not left alone: what is not touched is no matter.
func (m Meshed) overlaps(w *books, j *job.Job, d mesh.Drive, found, u float64) bool {
	play, touched := 0.0, false
	for i, axle := range m.Axles {
		if i != d.Shaft && !(d.OnJob() && i == d.Mate) {
			continue
		}
		touched = touched || !axle.Shaft.Leave
		most := 0.0
		for _, h := range axle.Holes {
			most = max(most, playOf(h.Survey, w.instr))
		}
		play += most
	}
	return touched && d.Overlapping(found, u, play, w.rules.V("overlap_stop_u"), j.Binds == job.Yes) > 0
}
