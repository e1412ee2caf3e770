package plan

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"math"

	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/safety"
)

// Program is what a plan says made it.
const Program = "rebush 1"

// Make plans a job. Where a step fails it says so in a finding and the plan is
// made as far as it can be; an error means that nothing can be planned at all
// (a shop's own table that cannot be read, a chassis of no known material).
func Make(j *job.Job, o Options) (*Plan, error) {
	m, err := newMaker(j, o, nil)
	if err != nil {
		return nil, err
	}
	m.p.Findings = append(m.p.Findings, job.Unused(j)...)
	m.chain()
	m.chances()
	m.judge()
	m.inspect()
	m.finish()
	return m.p, nil
}

// chain carries the plan from the survey to the operations.
func (m *maker) chain() {
	m.condition()
	m.burning()
	m.surveyAll()
	m.placing()
	m.targets()
	m.seatAll()
	m.burningBush()
	m.checkMesh()
	m.p.OK = !m.lower()
	if m.p.OK {
		m.routing()
		m.p.OK = !m.lower()
		if !m.p.OK {
			m.p.Operations, m.p.Setups = []Operation{}, nil
		}
	}
}

func newMaker(j *job.Job, o Options, from *books) (*maker, error) {
	m := &maker{j: j, opt: o, book: ledger.New()}
	m.p = &Plan{RebushPlan: 1, Program: Program, JobNumber: j.Number, Job: j, Book: m.book, Holes: map[string]Hole{},
		Survey: []SurveyedBore{}, Mesh: []Mesh{}, Targets: []Target{}, Shafts: []Shaft{}, Seats: []Seat{}, Operations: []Operation{},
		Inspect: []Inspection{}, Findings: finding.List{},
		Safety: Safety{PageOne: []safety.Line{}, Before: []safety.Line{}}}
	sum := sha256.Sum256(j.Canonical())
	m.p.Hash = hex.EncodeToString(sum[:8])
	var err error
	if m.books, err = booksFor(j.Shop, from); err != nil {
		return nil, err
	}
	m.p.Tables = m.lib.Replaced()
	if m.plate, err = m.plateOf(); err != nil {
		pos := j.At("chassis/material")
		return nil, fmt.Errorf("%s:%d:%d: %w", pos.File, pos.Line, pos.Column, err)
	}
	for _, t := range m.p.Tables {
		m.p.Findings.Raise(finding.Note, "job/own table", finding.Place{},
			say.F("the shop's own table %s was used in the place of the built-in one", t), "")
	}
	return m, nil
}

// condition says what forbids machining before any figure is looked at.
func (m *maker) condition() {
	pos := m.j.At("chassis/condition")
	add := func(level finding.Level, text, fix say.Text) {
		m.p.Findings.Raise(level, "job/condition", finding.Place{Where: "chassis", File: pos.File, Line: pos.Line, Column: pos.Column},
			text,
			fix)
	}
	switch m.j.Chassis.Condition {
	case "cracked":
		add(finding.Stop, "the casting is cracked: no hole is to be cut and nothing pressed in", "swap the truck, or keep it as it is")
	case "swollen":
		add(finding.Stop, "the casting is swollen: no hole is to be cut and nothing pressed in", "swap the truck, or keep it as it is")
	case "sound":
	default:
		m.unsaid(add)
	}
}

// checkMesh looks at every mesh again with the clearance that the chosen
// finish reaches.
func (m *maker) checkMesh() {
	for i, x := range m.gears {
		off := func(b *bore) (lo, hi float64) {
			if b.shaft.Leave || b.chosen == nil {
				return asFound(b), asFound(b)
			}
			j := b.hole.Journal
			return (b.chosen.Expected[0] - j) / 2, (b.chosen.Expected[1] - j) / 2
		}
		at := func(b *bore) [2]float64 {
			if b.shaft.Leave {
				return foundCentre(b)
			}
			return b.target
		}
		if m.unseated(x) {
			// What is not bushed reaches no clearance that could be judged.
			continue
		}
		ends := func() (near, far float64) {
			near, far = math.Inf(1), math.Inf(-1)
			for k := range 2 {
				a := x.distance(m.shafts, at, func(b *bore) float64 {
					lo, hi := off(b)
					return [2]float64{lo, hi}[k]
				})
				near, far = math.Min(near, a), math.Max(far, a)
			}
			return near, far
		}
		near, far := ends()
		if i < len(m.p.Mesh) {
			m.p.Mesh[i].ReachedMM = m.reached(x, ends)
		}
		tight := near - x.tir/2
		j, err := x.pair.Normal(tight)
		if err != nil {
			continue
		}
		want := m.rules.V("tight_tooth_backlash_mm")
		if j = sig9(j); j < want-1e-9 && x.trusted {
			level := finding.Stop
			if !m.reboring(x) {
				level = finding.Caution
			}
			m.p.Findings.Raise(level, "seat/tightest tooth", m.j.Place(x.g.Name),
				tightWords(j, want), "less run-out, wider backlash limits, or a mating gear in a better place").Against(j, want, "mm")
			continue
		}
		if w := x.window; x.trusted && !w.Empty && (near < w.Lo-1e-6 || far > w.Hi+1e-6) && m.reboring(x) {
			have, lim := near, w.Lo
			if far > w.Hi+1e-6 {
				have, lim = far, w.Hi
			}
			m.p.Findings.Raise(finding.Caution, "seat/mesh after fitting", m.j.Place(x.g.Name),
				say.F("with the clearance reached the centre distance runs from %v, wanted %v", say.MMs(near, far, 3), say.MMs(w.Lo, w.Hi, 3)), "try the mesh with a dummy axle and a paper strip before the bores are opened").Against(sig9(have), sig9(lim), "mm")
		}
	}
}

// tightWords says what the tightest tooth of a turn is left with.
func tightWords(j, want float64) say.Text {
	if j < 0 {
		return say.F("the tightest tooth of the turn would bind by %v square to the flank; it should keep %v of backlash", say.MM(-j, 3), say.MM(want, 3))
	}
	return say.F("the tightest tooth would keep %v of backlash square to the flank, least %v", say.MM(j, 3), say.MM(want, 3))
}

// unseated says whether a shaft of a mesh was to be bushed and has no seat.
func (m *maker) unseated(x *gear) bool {
	for _, b := range m.meshHoles(x) {
		if b.touch && b.targeted && b.chosen == nil {
			return true
		}
	}
	return false
}

// reboring says whether any shaft of a mesh gets new bushes.
func (m *maker) reboring(x *gear) bool {
	for _, b := range m.bores {
		if b.chosen != nil && (b.shaft.Name == x.g.Wheel.On || x.mate >= 0 && b.shaft.Name == m.shafts[x.mate].s.Name) {
			return true
		}
	}
	return false
}

// pictures gathers what a drawing of each hole needs.
func (m *maker) pictures() {
	for _, b := range m.bores {
		if !b.known {
			continue
		}
		h := Hole{Outline: b.stands().Outline(96), Old: b.worn.O, OldRadius: b.worn.R, Target: b.target, Points: b.points, Residuals: b.residual, LeftOut: b.leftOut, UMM: b.u}
		if !b.targeted {
			h.Target = b.worn.O
		}
		if b.chosen != nil {
			h.SeatR = (b.chosen.SeatLow + b.chosen.SeatHigh) / 4
			h.BoreR = (b.chosen.Bore[0] + b.chosen.Bore[1]) / 4
		}
		m.p.Holes[b.name()] = h
	}
}

// finish closes the plan.
func (m *maker) finish() {
	m.p.Safety.LookFor, m.p.Safety.Owner = m.lookFor(), m.safety.At(safety.Owner, m.whole())
	m.nothingToAccept()
	for i := range m.p.Findings {
		m.point(&m.p.Findings[i])
	}
	m.p.Findings = onceOnly(m.p.Findings)
	sortFindings(m.p.Findings)
	m.pictures()
	m.p.Ledger = m.book.Entries()
}

// point gives a finding the line of the bore, shaft or gear that it is about,
// where it was said without one.
func (m *maker) point(f *finding.Finding) {
	if f.Line > 0 || f.Where == "" {
		return
	}
	path := "shafts/" + f.Where
	if f.Where == "chassis" {
		path = "chassis"
	}
	if b := m.of(f.Where); b != nil {
		path = "shafts/" + b.shaft.Name + "/bores/" + string(b.b.Side)
	}
	for _, g := range m.j.Gears {
		if g.Name == f.Where {
			path = "gears/" + g.Name
		}
	}
	if path == "shafts/"+f.Where && !m.isShaft(f.Where) {
		return // about no one line of the job
	}
	pos := m.j.At(path)
	f.File, f.Line, f.Column = pos.File, pos.Line, pos.Column
}

func (m *maker) isShaft(name string) bool {
	for i := range m.j.Shafts {
		if m.j.Shafts[i].Name == name {
			return true
		}
	}
	return false
}

// onceOnly drops what was said twice in the same words about the same place.
func onceOnly(l finding.List) finding.List {
	type words struct {
		level       finding.Level
		rule        finding.Rule
		where, text string
	}
	seen := map[words]bool{}
	out := l[:0]
	for _, f := range l {
		k := words{f.Level, f.Rule, f.Where, f.Text.String()}
		if !seen[k] {
			seen[k] = true
			out = append(out, f)
		}
	}
	return out
}

// sortFindings puts stops first, then cautions, then notes, each in the order
// in which they were said.
func sortFindings(l finding.List) {
	rank := map[finding.Level]int{finding.Stop: 0, finding.Caution: 1, finding.Note: 2}
	stable(l, func(a, b finding.Finding) bool { return rank[a.Level] < rank[b.Level] })
}
