package target

import (
	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/fits/table"
	"rebush/plan/job"
	"rebush/plan/mesh"
)

// Fitted are the entries of the ledger that tell how a bore comes out with the
// bush that was chosen for it: least and most finished bore, and the journal,
// mm.
type Fitted struct{ Least, Most, Journal ledger.Num }

// Reached is what the chosen bushes make of the meshes.
type Reached struct {
	Centre   []*dim.MMRange // by drive; nil where a bore of it has no seat
	Findings finding.List
}

// Reach looks at every mesh again with the clearances that the chosen finishes
// reach, by bore.
func (p Settled) Reach(j *job.Job, rules *table.Rules, book *ledger.Ledger, fitted map[string]Fitted) Reached {
	out := Reached{Centre: make([]*dim.MMRange, len(p.Drives))}
	for i, d := range p.Drives {
		if p.unseated(d, fitted) {
			continue // what is not bushed reaches no clearance that could be judged
		}
		near, far := p.Axles.reach(book, j.Source("gears/"+d.Name), d, fitted)
		out.Centre[i] = &dim.MMRange{Min: dim.Place(near.V), Max: dim.Place(far.V)}
		out.judge(d, j.PlaceAt(d.Name, "gears/"+d.Name), near.V, far.V, rules.V("tight_tooth_backlash_mm"),
			p.rebored(d, fitted))
	}
	return out
}

// unseated says whether a bore of a mesh was to be bushed and has no seat.
func (p Settled) unseated(d mesh.Drive, fitted map[string]Fitted) bool {
	holes, _ := p.Axles.of(d)
	for _, h := range holes {
		if _, ok := fitted[h.Name()]; h.Touch && !ok {
			return true
		}
	}
	return false
}

// rebored says whether any bore of a mesh gets a new bush.
func (p Settled) rebored(d mesh.Drive, fitted map[string]Fitted) bool {
	holes, _ := p.Axles.of(d)
	for _, h := range holes {
		if _, ok := fitted[h.Name()]; ok {
			return true
		}
	}
	return false
}

// reach records the nearest and the farthest centre distance of a mesh: each
// shaft stands off its centres by half the clearance of its finished bores,
// anywhere from the least to the most; in a hole that stays as it is, as found.
func (x Axles) reach(book *ledger.Ledger, source string, d mesh.Drive,
	fitted map[string]Fitted) (near, far ledger.Num) {
	holes, wheel := x.of(d)
	more := []ledger.Num{mate(book, source, d)}
	at := make([]int, len(holes)) // where the figures of a fitted bore stand in more
	for i, h := range holes {
		if f, ok := fitted[h.Name()]; ok && !h.Left() {
			at[i] = len(more)
			more = append(more, f.Least, f.Most, f.Journal)
		}
	}
	kept := pose{of: Hole.Kept, placed: true}
	calc := func(k string, pick func(near, far float64) float64) ledger.Num {
		return kept.calc(book.Page("mesh/"+d.Name), "reached_mm/"+k, k+" centre distance with the clearances that "+
			"the finished bores reach", "mm",
			"each shaft at its new centre, pressed to the side by half the clearance expected in its bores",
			plane, holes,
			func(s []Stand, v []float64) float64 {
				d.MateAt[1] = v[0]
				low, high := append([]Stand(nil), s...), append([]Stand(nil), s...)
				for i, n := range at {
					if n > 0 {
						low[i].Off, high[i].Off = (v[n]-v[n+2])/2, (v[n+1]-v[n+2])/2
					}
				}
				return pick(Span(d, low[:wheel], high[:wheel], low[wheel:], high[wheel:]))
			}, more...)
	}
	near = calc("min", func(near, _ float64) float64 { return near })
	far = calc("max", func(_, far float64) float64 { return far })
	return near, far
}

// judge says where the tightest tooth would keep too little, or where the
// distance runs out of its window.
func (r *Reached) judge(d mesh.Drive, at finding.Place, near, far, want float64, rebored bool) {
	if !d.Trusted {
		return
	}
	j, err := d.Tightest(near)
	if err != nil {
		return
	}
	if j = dim.Sig9(j); j < want-1e-9 {
		level := finding.Stop
		if !rebored {
			level = finding.Caution
		}
		r.Findings.Raise(level, TightTooth, at, tightTooth(j, want),
			"less run-out, wider backlash limits, or a mating gear in a better place").Against(j, want, "mm")
		return
	}
	w := d.Window
	if !rebored || w.Empty || near >= w.Lo-missing && far <= w.Hi+missing {
		return
	}
	have, limit := near, w.Lo
	if far > w.Hi+missing {
		have, limit = far, w.Hi
	}
	r.Findings.Raise(finding.Caution, AfterFitting, at,
		say.F("with the clearance reached the centre distance runs from %v, wanted %v", say.MMs(near, far, 3),
			say.MMs(w.Lo, w.Hi, 3)),
		"try the mesh with a dummy axle and a paper strip before the bores are opened").
		Against(dim.Sig9(have), dim.Sig9(limit), "mm")
}
