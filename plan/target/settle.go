package target

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/fits/table"
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/survey"
)

// Settled is where everything goes.
type Settled struct {
	Axles  Axles // with their targets
	Drives []mesh.Drive
	Input  Input // of the search, and its answer
	Output Output

	Targets  []Row
	Shafts   []ShaftRow
	Truck    TruckRow
	Meshes   []mesh.Row
	Findings finding.List
	OK       bool // false: the figures could not be reckoned, and nothing was placed
}

// settling carries what every explanation of the step needs.
type settling struct {
	j     *job.Job
	rules *table.Rules
	book  *ledger.Ledger
	shop  Shop
	out   *Settled

	inputs []ledger.Num // what decides the targets
	again  func([]float64) Output
}

// Settle decides where each bore goes and says what comes of it: the new
// centres, how each shaft stands between them, and how the meshes come out.
func Settle(j *job.Job, rules *table.Rules, book *ledger.Ledger, shop Shop, axles Axles, drives []mesh.Drive) Settled {
	out := Settled{Axles: make(Axles, len(axles)), Drives: drives}
	for i, a := range axles {
		a.Holes = append([]Hole(nil), a.Holes...)
		out.Axles[i] = a
	}
	s := &settling{j: j, rules: rules, book: book, shop: shop, out: &out}
	if err := s.search(); err != nil {
		out.Findings.Raise(finding.Stop, Unreckoned, finding.Place{}, say.F("%v", err), "check the figures of this job")
		return out
	}
	out.OK = true
	for i := range out.Axles {
		s.shaft(i)
	}
	for i, d := range drives {
		out.Meshes = append(out.Meshes, s.mesh(d, out.Output.Gears[i]))
		s.meshFindings(d, out.Output.Gears[i])
	}
	s.fights()
	s.truck()
	return out
}

// search finds the targets from the figures of the ledger: every old centre and
// every window.
func (s *settling) search() error {
	in := s.out.Axles.input(s.out.Drives, s.shop, s.rules.V("clearance_max_um")/1000)
	var v []float64
	for _, a := range s.out.Axles {
		for _, h := range a.Holes {
			s.inputs = append(s.inputs, h.origin(s.book, s.j.Source)...)
		}
	}
	for _, d := range s.out.Drives {
		s.inputs = append(s.inputs, d.Edges(s.book)...)
	}
	for _, n := range s.inputs {
		v = append(v, n.V)
	}
	s.out.Input = s.out.Axles.asked(in, v)
	if err := s.out.Input.Validate(); err != nil {
		return err
	}
	s.again = ledger.LastOf(func(v []float64) Output { out, _ := Place(s.out.Axles.asked(in, v)); return out })
	s.out.Output = s.again(v)
	return nil
}

// input is what the search is asked; the figures of the ledger are put in by
// asked.
func (x Axles) input(drives []mesh.Drive, shop Shop, accepted float64) Input {
	in := Input{OneClamping: shop.OneClamping, Inside: shop.Inside, Move: shop.Move}
	for _, a := range x {
		t := Shaft{Name: a.Shaft.Name, TowardsDeg: a.TowardsDeg, USetup: shop.Setup.U, UHole: shop.Hole.U,
			Sound: a.well(accepted)}
		for _, h := range a.Holes {
			b := Bore{Name: h.Name(), Cov: h.cov(), Found: h.Survey.Middle, Fixed: h.keepsPlace(),
				CdLo: h.Clear[0], CdHi: h.Clear[1]}
			t.Bores = append(t.Bores, b)
		}
		if len(a.Holes) == 2 {
			t.Cross = a.Holes[0].cross(a.Holes[1])
		}
		in.Shafts = append(in.Shafts, t)
	}
	for _, d := range drives {
		in.Gears = append(in.Gears, Gear{Name: d.Name, Shaft: d.Shaft, Mate: d.Mate, MateAt: d.MateAt,
			Share: d.Share, MateShare: d.MateShare, Geometry: d.Geometry,
			Trusted: d.Trusted, UGeom: d.UGeom, UMate: d.UMate, Turn: d.Whole()})
	}
	return in
}

// asked is how many figures of a worn hole decide: its old centre, and of a
// shaft that is left in it all, since they tell where the hole bears it.
func (h Hole) asked() int {
	if h.Left() {
		return survey.Held
	}
	return 2
}

// asked is the question with old centres and windows of these figures, in the
// order of the shafts and their bores, then of the gears. An empty window is
// aimed at its middle.
func (x Axles) asked(in Input, v []float64) Input {
	in.Shafts, in.Gears = append([]Shaft(nil), in.Shafts...), append([]Gear(nil), in.Gears...)
	for i, a := range x {
		in.Shafts[i].Bores = append([]Bore(nil), in.Shafts[i].Bores...)
		for k, h := range a.Holes {
			b := &in.Shafts[i].Bores[k]
			b.Original = Point{v[0], v[1]}
			if h.Left() {
				stand := h.with(v[:survey.Held]).Found()
				b.Aside = Point{stand.Centre[0] - v[0], stand.Centre[1] - v[1]}
				b.CdLo, b.CdHi = 2*stand.Off, 2*stand.Off
			}
			v = v[h.asked():]
		}
	}
	for i := range in.Gears {
		in.Gears[i].Lo, in.Gears[i].Hi = mesh.Aim(v[0], v[1])
		v = v[2:]
	}
	return in
}

// shaft writes where the bores of one shaft go.
func (s *settling) shaft(i int) {
	a, to := &s.out.Axles[i], s.out.Output.Shafts[i]
	moved := math.Hypot(to.Moved[0], to.Moved[1])
	mend := !a.Shaft.Leave && (!a.well(s.rules.V("clearance_max_um")/1000) || moved > missing)
	for k := range a.Holes {
		h, p := &a.Holes[k], to.Bores[k]
		h.UPlace, h.Touch = to.UT, mend && !h.Done()
		if h.worked() {
			h.UPlace = h.Survey.Bore.Now.UAtMM
		}
		row := Row{Bore: h.Name(), UMM: s.placeU(*h, p.Fixed), LoadTowardsDeg: dim.Number(a.TowardsDeg)}
		h.Target = s.target(*h, &row)
		if to.Counts && !p.Fixed {
			s.leastMove(*h, i, &row)
		}
		s.out.Targets = append(s.out.Targets, row)
		if !p.Fixed {
			s.longMove(*h, math.Hypot(p.FromOriginal[0], p.FromOriginal[1]), moved, to.UMean)
		}
	}
	s.likelierWords(a.Shaft.Name, to)
	row := ShaftRow{Shaft: a.Shaft.Name, AxisMM: s.axis(*a)}
	if len(a.Holes) == 2 && mesh.Spacing(s.j.Chassis) > 0 {
		row.SkewDeg = s.skew(*a)
	}
	s.out.Shafts = append(s.out.Shafts, row)
}
