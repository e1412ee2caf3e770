package mesh

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
)

// Overlapping says by how much the teeth of a pair overlap beyond all doubt, mm;
// 0 where they need not. found is the centre distance under load as found, u the
// doubt of where both shafts stood, mm, times so many doubts are all doubt. play is
// how far the shafts can go from there in their holes, mm: of a pair that does not
// bind and whose mate stands as it did nothing of that counts, since the wear says
// where it ran; any other pair stands at least somewhere in its holes.
//
// Source: own, teeth do not pass through each other; METHODS.md 5.
func (d Drive) Overlapping(found, u, play, times float64, binds bool) float64 {
	free := times * math.Hypot(u, d.UGeom)
	if d.Moved || binds {
		free += math.Max(0, play)
	}
	return math.Max(0, d.Pair.Tight()-found-free)
}

// SayOverlap is the stop that such a pair gets: the figures of the job contradict
// each other, and nobody knows which is wrong.
func (d Drive) SayOverlap(j *job.Job, found float64) (said finding.List) {
	tight := d.Pair.Tight()
	said.Raise(finding.Stop, Overlap, j.PlaceAt(d.Name, "gears/"+d.Name),
		say.F("by these figures its teeth would stand %v inside each other as found (centre distance %v, least %v), "+
			"more than all doubts together: one of them is wrong", say.MM(tight-found, 3), say.MM(found, 3), say.MM(tight, 3)),
		say.F("measure again before anything is cut: the place of %v, outside diameters and tooth counts of both, the bores",
			say.Words(mates[d.Kind]))).
		Against(dim.Sig9(found), dim.Sig9(tight), "mm")
	return said
}

// Again is what to measure again of a pair that overlaps.
func (d Drive) Again() say.Text {
	return say.F("the place of %v of %s, outside diameters and tooth counts of both, and their bores",
		say.Words(mates[d.Kind]), d.Name)
}
