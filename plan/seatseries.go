package plan

import (
	"math"

	"rebush/fits/material"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/seat"
)

// mostToBuy is how many bushes of the series are shown for one bore.
const mostToBuy = 12

func anyFeasible(list []seat.Answer) bool {
	for i := range list {
		if list[i].Feasible {
			return true
		}
	}
	return false
}

// free tells whether the planner may look beyond the job's own list.
func (m *maker) free(b *bore) bool {
	return m.j.Choose[b.name()] == "" && m.j.Choose[""] == ""
}

// fromSeries searches the bushes that can be bought, for a bore that no bush
// of the job's list fits. Those that do not fit either are not told of.
func (m *maker) fromSeries(b *bore) []seat.Answer {
	if m.series == nil {
		m.series = m.toBuy()
	}
	var out []seat.Answer
	for _, a := range seat.Search(b.hole, b.hole.Mends(), m.series, m.shop, m.seatRule) {
		if a.Feasible && len(out) < mostToBuy {
			out = append(out, a)
		}
	}
	return out
}

// fillRadius is the least seat radius about a bore's target that stands in
// unworn wall over so many degrees.
func fillRadius(b *bore, degrees float64) float64 {
	lo, hi := b.worn.R/2, b.stands().SeatRadius(b.target)
	for range 17 { // to a hundredth of a um
		mid := (lo + hi) / 2
		if arc, _ := b.stands().UncutArc(b.target, mid); 360-arc < degrees {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi
}

// shaftExpansion is the expansion of a shaft, 1e-6/K: of steel where its
// material is not known; 0 where nothing is.
func (m *maker) shaftExpansion(s *job.Shaft) float64 {
	if mat := m.shaftMaterial(s); mat != nil {
		v, _ := mat.Low("expansion")
		return v.Low
	}
	return 0
}

func (m *maker) shaftSource(s *job.Shaft) string {
	if mat := m.shaftMaterial(s); mat != nil {
		return m.matter(mat, "expansion", false)
	}
	return "materials:1: none known"
}

func (m *maker) shaftMaterial(s *job.Shaft) *material.Material {
	for _, name := range []string{s.Material, "steel"} {
		if name == "" {
			continue
		}
		if mat, err := m.materials.Find(name); err == nil {
			if _, ok := mat.Low("expansion"); ok {
				return mat
			}
		}
	}
	return nil
}

// assembly says which order of assembly lets through what must pass, where
// that alone is what stands in the way; empty where it is not.
func (m *maker) assembly(b *bore) say.Text {
	lim := seat.BoreLimits(b.hole, m.seatRule)
	if lim[0] <= lim[1] || b.hole.MustPass <= 0 {
		return ""
	}
	// Put in from this end, the shaft brings what lies at its other end
	// through this bore instead.
	other := job.Left
	if b.b.Side == job.Left {
		other = job.Right
	}
	most := 0.0
	for _, d := range []float64{b.shaft.Journal.On(other).Float(), b.shaft.MustPass.On(other).Float(), b.shaft.Unworn.On(other).Float()} {
		most = math.Max(most, d)
	}
	if most > 0 && most+m.seatRule.Pass <= lim[1] {
		return say.F("put the shaft in from the %s: then only %v has to pass here", b.b.Side, say.MM(most, 3))
	}
	return say.F("no order of assembly lets %v through a bore that still runs: turn it down, or fit that part after the shaft is in", say.MM(b.hole.MustPass, 3))
}
