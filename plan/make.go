package plan

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"

	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/route"
	"rebush/plan/safety"
	"rebush/plan/seat"
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
	m.place()
	m.seatAll()
	m.burningBush()
	m.reach()
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
	if m.casting, err = seat.CastingOf(j, m.materials, m.rules); err != nil {
		pos := j.At("chassis/material")
		return nil, fmt.Errorf("%s:%d:%d: %w", pos.File, pos.Line, pos.Column, err)
	}
	m.chassis, m.plate = m.casting.Material, m.casting.Plate
	m.p.Findings = append(m.p.Findings, m.casting.Said()...)
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
	cut := slices.ContainsFunc(m.p.Operations, func(o Operation) bool { return o.Kind == route.KindSizeSeat })
	hurt := m.hazards(m.casting, m.j)
	m.p.Safety.LookFor, m.p.Safety.Owner = hurt.LookFor(cut), hurt.Table.At(safety.Owner, hurt.Whole(cut))
	m.nothingToAccept()
	for i := range m.p.Findings {
		m.point(&m.p.Findings[i])
	}
	m.p.Findings = onceOnly(m.p.Findings)
	sortFindings(m.p.Findings)
	m.pictures()
	m.p.Ledger, m.p.Rules = m.book.Entries(), rulesUsed(m.book, m.rules)
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
