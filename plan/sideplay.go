package plan

import (
	"math"
	"sort"
	"strings"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
)

// sidePlay works out the side play of each shaft with the chosen bushes, and
// says which washer or what to face off where it is outside its limits.
func (m *maker) sidePlay() {
	lo, hi := m.rules.Pair("side_play_mm")
	for i := range m.j.Shafts {
		s := &m.j.Shafts[i]
		if !s.HubToHub.Given() || !m.j.Chassis.Width.Given() {
			continue
		}
		used := 0.0
		for _, b := range m.on(s.Name) {
			if b.chosen != nil {
				used += b.chosen.SideUse
			}
		}
		l := m.book
		key := func(k string) string { return "shafts/" + s.Name + "/" + k }
		hub := l.Leaf(key("hub_to_hub_mm"), "hub to hub", "mm", m.source("shafts/"+s.Name+"/hub_to_hub"), s.HubToHub.Float())
		wid := l.Leaf(key("width_mm"), "width over both plates", "mm", m.source("chassis/width"), m.j.Chassis.Width.Float())
		fla := l.Leaf(key("flanges_mm"), "flanges outside the plates", "mm", m.source("bushes"), used)
		kept, out := m.washersKept(s, used, lo, hi)
		was := l.Leaf(key("washers_mm"), "washers that stay on", "mm", m.source("shafts/"+s.Name), kept)
		play := l.Calc(key("side_play_mm"), "side play", "mm", "hub to hub less width, flanges and washers", "plane geometry",
			func(in []float64) float64 { return in[0] - in[1] - in[2] - in[3] }, hub, wid, fla, was)
		for k := range m.p.Shafts {
			if m.p.Shafts[k].Shaft == s.Name {
				lo := l.Calc(key("side_play_mm/min"), "least side play", "mm", "the side play as it comes out", "plane geometry", pass, play)
				hi := l.Calc(key("side_play_mm/max"), "largest side play", "mm", "the side play as it comes out", "plane geometry", pass, play)
				m.p.Shafts[k].SidePlayMM = dim.Sizes(lo.V, hi.V)
			}
		}
		if s.Leave {
			continue
		}
		m.used("side_play_mm")
		if m.waiting(s) {
			continue // without a seat there is no flange to reckon with
		}
		switch v := sig9(play.V); {
		case v < lo-1e-9:
			m.p.Findings.Raise(finding.Caution, "seat/side play", m.j.Place(s.Name),
				say.F("side play would be %v, least %.2f", say.MM(v, 2), lo), shortOfPlay(out, lo-v)).Against(v, lo, "mm")
		case v > hi+1e-9:
			m.p.Findings.Raise(finding.Caution, "seat/side play", m.j.Place(s.Name),
				say.F("side play would be %v, most %.2f", say.MM(v, 2), hi), washerFor(out, math.Max(0.1, math.Round((v-(lo+hi)/2)*10)/10))).Against(v, hi, "mm")
		case out != "":
			m.p.Findings.Raise(finding.Note, "seat/washers", m.j.Place(s.Name),
				say.F("the flanges take the place of %v: leave %s out", out, itOrThem(out)), "")
		}
	}
}

// washerFor says in one sentence which washer goes on, and which it replaces.
func washerFor(out say.Text, thick float64) say.Text {
	if out == "" {
		return say.F("put on a washer of %v", say.MM(thick, 1))
	}
	return say.F("put a washer of %v in the place of %s", say.MM(thick, 1), out)
}

// shortOfPlay says what to take off where play is short by so much.
func shortOfPlay(out say.Text, short float64) say.Text {
	if out == "" {
		return say.F("face %v off the flanges, or a thinner washer", say.MM(short, 2))
	}
	return say.F("leave out %s and face %v off the flanges", out, say.MM(short, 2))
}

func itOrThem(out say.Text) string {
	if strings.HasPrefix(string(out), "one") {
		return "it"
	}
	return "them"
}

// washerWords names washers as they are found in the tray: "one washer of 1.00
// mm", "the two washers of 1.00 mm", "the washers of 1.00 and 0.50 mm".
func washerWords(gone []float64) say.Text {
	sort.Sort(sort.Reverse(sort.Float64Slice(gone)))
	n := len(gone)
	switch {
	case n == 0:
		return ""
	case n == 1:
		return say.F("one washer of %v", say.MM(gone[0], 2))
	case n == 2 && gone[0] == gone[1]:
		return say.F("the two washers of %v", say.MM(gone[0], 2))
	}
	first := say.Row(2, "mm", ", ", gone[:n-1]...).Bare()
	return say.F("the washers of %v and %v", first, say.MM(gone[n-1], 2))
}

// waiting says whether a shaft was to be bushed and has no seat for a bore.
func (m *maker) waiting(s *job.Shaft) bool {
	for _, b := range m.on(s.Name) {
		if b.touch && b.chosen == nil {
			return true
		}
	}
	return false
}

// washersKept is what stays on a shaft of its washers once flanges take up
// length: all of them where the side play allows it, else as many as it takes
// are left out, the thickest that brings it between its limits first.
func (m *maker) washersKept(s *job.Shaft, flanges, lo, hi float64) (kept float64, out say.Text) {
	kept = m.washers(s)
	play := s.HubToHub.Float() - m.j.Chassis.Width.Float() - flanges
	if flanges <= 0 || play-kept >= lo-1e-9 {
		return kept, ""
	}
	rest := make([]float64, 0, len(s.Washers))
	for _, w := range s.Washers {
		rest = append(rest, w.Float())
	}
	var gone []float64
	for play-kept < lo-1e-9 && len(rest) > 0 {
		best := -1
		for i, w := range rest {
			after := play - kept + w
			if after >= lo-1e-9 && after <= hi+1e-9 && (best < 0 || w < rest[best]) {
				best = i
			}
		}
		if best < 0 {
			// No single one does it: take out the thickest and look again.
			for i, w := range rest {
				if best < 0 || w > rest[best] {
					best = i
				}
			}
		}
		gone = append(gone, rest[best])
		kept -= rest[best]
		rest = append(rest[:best], rest[best+1:]...)
	}
	return sig9(kept), washerWords(gone)
}
