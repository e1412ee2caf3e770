package plan

import (
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/target"
)

// place is the string of the two steps until the maker goes: it calls them and
// keeps what they return where later steps look for it.
func (m *maker) place() {
	holes := make([]survey.Hole, len(m.bores))
	for i, b := range m.bores {
		holes[i] = b.old
	}
	shop := target.Shop{Setup: target.Doubt{U: m.setupU, From: m.setupFrom}, Hole: target.Doubt{U: m.holeU, From: m.holeFrom}}
	meshes := meshed(m.books, m.j, m.book, shop, holes, seat.RulesOf(m.rules))
	m.settled = target.Settle(m.j, m.rules, m.book, shop, meshes.Axles, meshes.Drives)
	m.p.Findings = append(append(m.p.Findings, meshes.Findings...), m.settled.Findings...)
	m.keep()
}

// reach looks at the meshes again once the bushes are chosen.
func (m *maker) reach() {
	fitted := map[string]target.Fitted{}
	for _, b := range m.bores {
		if b.chosen != nil {
			page := m.book.Page("seats/" + b.name())
			fitted[b.name()] = target.Fitted{Least: page.Num("expected_mm/min"), Most: page.Num("expected_mm/max"), Journal: page.Num("journal_mm")}
		}
	}
	got := m.settled.Reach(m.j, m.rules, m.book, fitted)
	for i, r := range got.Centre {
		if i < len(m.p.Mesh) {
			m.p.Mesh[i].ReachedMM = r
		}
	}
	m.p.Findings = append(m.p.Findings, got.Findings...)
}

// shaftState is a shaft whose place is known, as the later steps look at it.
type shaftState struct {
	s     *job.Shaft
	bores []*bore
	fixed bool
}

// gear is a mesh as the later steps look at it.
type gear struct {
	g        *job.Gear
	pair     mesh.Pair
	shaft    int
	mate     int // -1: at a fixed place
	uMate    float64
	share    float64
	mShare   float64
	window   mesh.Window
	wish     mesh.Wish
	trusted  bool
	uGeom    float64
	distance mesh.Drive
}

func (x *gear) play(a float64) float64 { return x.distance.Play(a) }

// keep puts what was settled where later steps look for it.
func (m *maker) keep() {
	s := m.settled
	m.targetOut = s.Output
	m.p.Targets, m.p.Shafts, m.p.Truck = append(m.p.Targets, s.Targets...), append(m.p.Shafts, s.Shafts...), s.Truck
	m.p.Mesh = append(m.p.Mesh, s.Meshes...)
	for _, a := range s.Axles {
		st := shaftState{s: a.Shaft, fixed: a.Shaft.Leave}
		for _, h := range a.Holes {
			b := m.of(h.Name())
			b.load = h.Load
			b.target, b.uPlace, b.touch, b.targeted = h.Target, h.UPlace, h.Touch, s.OK
			if !s.OK {
				b.target = [2]float64{}
			}
			st.bores = append(st.bores, b)
		}
		m.shafts = append(m.shafts, st)
	}
	for _, d := range s.Drives {
		x := &gear{pair: d.Pair, shaft: d.Shaft, mate: d.Mate, uMate: d.UMate, share: d.Share, mShare: d.MateShare,
			window: d.Window, wish: d.Wish, trusted: d.Trusted, uGeom: d.UGeom, distance: d}
		for i := range m.j.Gears {
			if m.j.Gears[i].Name == d.Name {
				x.g = &m.j.Gears[i]
			}
		}
		m.gears = append(m.gears, x)
	}
}

func (m *maker) loadTowards(s *job.Shaft) float64 { return target.LoadTowards(m.j.Chassis, s) }
func (m *maker) spacing() float64                 { return mesh.Spacing(m.j.Chassis) }
