package target

import (
	"fmt"
	"math"

	"rebush/fits/dim"
	"rebush/fits/ledger"
	"rebush/plan/mesh"
)

const plane = "plane geometry"

func less(a, b float64) float64 { return dim.Sig9(a - b) }

// target records a new centre and its moves, and returns it.
func (s *settling) target(h Hole, row *Row) Point {
	page, old := h.page(s.book), s.book.Page("survey/"+h.Name())
	at := func(v []float64) Point {
		for _, t := range s.again(v).Shafts {
			for _, b := range t.Bores {
				if b.Name == h.Name() {
					return b.At
				}
			}
		}
		return Point{}
	}
	var to Point
	var mm, fromOld, fromFound dim.XY
	for i, axis := range []string{"x", "y"} {
		k := fmt.Sprint(i)
		n := page.Calc("target_mm/"+k, axis+" of the new centre", "mm",
			"where the trusted meshes are likeliest to come right over a whole turn, less what the way from the old centre "+
				"weighs, each old centre weighed by how well it is known; with no mesh to move it, the weighted mean of the "+
				"shaft's old centres",
			"most likely place inside the limits: plan/target/METHODS.md 1",
			func(v []float64) float64 { return dim.Near(at(v)[i], 4) }, s.inputs...)
		if !old.Has("found_mm/" + k) {
			old.Leaf("found_mm/"+k, axis+" of the middle of the hole as found", "mm",
				s.j.Source(h.Survey.Line("centre")), dim.Sig9(h.Survey.Middle[i]))
		}
		to[i], mm[i] = n.V, dim.Place(n.V)
		fromOld[i] = dim.Place(page.Calc2("from_original_mm/"+k, axis+" move from the old centre", "mm",
			"new centre less old centre", plane, less, n, old.Num("centre_mm/"+k)).V)
		fromFound[i] = dim.Place(page.Calc2("from_found_mm/"+k, axis+" move from the hole as found", "mm",
			"new centre less middle of the hole as found", plane, less, n, old.Num("found_mm/"+k)).V)
	}
	row.TargetMM, row.FromOriginalMM, row.FromFoundMM = &mm, &fromOld, &fromFound
	return to
}

// leastMove records what the least move would give beside what is planned, for a
// bore whose shaft carries a trusted mesh and is moved for it.
func (s *settling) leastMove(h Hole, i int, row *Row) {
	page := h.page(s.book)
	calc := func(k, what, unit, formula string, of func(ShaftOut) float64) float64 {
		return page.Calc(k, what, unit, formula, "normal distribution: plan/target/METHODS.md 4",
			func(v []float64) float64 { return dim.Near(of(s.again(v).Shafts[i]), 4) }, s.inputs...).V
	}
	const product = "chance that each lies within its limits over a whole turn, those that share a shaft or a clamping taken together"
	row.Chance = dim.Number(calc("chance", "chance that the trusted meshes of its shaft come right", "-", product,
		func(o ShaftOut) float64 { return o.Chance }))
	var mm dim.XY
	for k := range mm {
		mm[k] = dim.Place(calc(fmt.Sprintf("least_move/target_mm/%d", k), string("xy"[k])+" that the least move would reach", "mm",
			"least move, each old centre weighed by how well it is known, that brings the trusted meshes a doubt inside their "+
				"backlash limits", func(o ShaftOut) float64 { return o.LeastMove[k] }))
	}
	row.LeastMove = &LeastMove{TargetMM: &mm, Chance: dim.Number(calc("least_move/chance",
		"chance that the same meshes come right there", "-", product, func(o ShaftOut) float64 { return o.LeastChance }))}
}

// placeU is how well the place of a bore is known after the job: that of
// cutting it, or of its old centre where it stays.
func (s *settling) placeU(h Hole, stays bool) dim.Gauged {
	page := h.page(s.book)
	const k, what = "u_mm", "standard uncertainty of its place"
	if h.worked() {
		return dim.Place(page.Leaf(k, what+", as it was made", "mm", s.j.Source(madeLine(h, "centre")),
			h.Survey.Bore.Now.UAtMM).V)
	}
	if stays {
		return dim.Place(page.Calc1(k, what, "mm", "that of its old centre: it stays", "survey",
			func(u float64) float64 { return u }, s.book.Num("survey/"+h.Name()+"/centre_u_mm")).V)
	}
	set := s.book.Leaf("shop/u_setup_mm", "standard uncertainty of placing one clamping", "mm", s.shop.Setup.From,
		s.shop.Setup.U)
	hole := s.book.Leaf("shop/u_hole_mm", "standard uncertainty of placing one hole", "mm", s.shop.Hole.From,
		s.shop.Hole.U)
	return dim.Place(page.Calc2(k, what, "mm", "root of the squares of clamping and hole",
		"law of propagation, JCGM 100 5.1.2",
		func(a, b float64) float64 { return dim.Sig9(math.Hypot(a, b)) }, set, hole).V)
}

// axis is the middle of a shaft's new centres.
func (s *settling) axis(a Axle) *dim.XY {
	var out dim.XY
	page := s.book.Page("shafts/" + a.Shaft.Name)
	for i := range out {
		var in []ledger.Num
		for _, h := range a.Holes {
			in = append(in, h.page(s.book).Num(fmt.Sprintf("target_mm/%d", i)))
		}
		out[i] = dim.Place(page.Calc(fmt.Sprintf("axis_mm/%d", i), string("xy"[i])+" of the shaft after the job",
			"mm", "mean of its new centres", plane,
			func(v []float64) float64 {
				sum := 0.0
				for _, x := range v {
					sum += x
				}
				return dim.Sig9(sum / float64(len(v)))
			}, in...).V)
	}
	return &out
}

// skew is how far a shaft is out of square in plan, as found and after.
func (s *settling) skew(a Axle) dim.FoundAfter {
	page, spacing := s.book.Page("shafts/"+a.Shaft.Name), mesh.Spacing(s.j.Chassis)
	calc := func(k string, p pose) *float64 {
		return dim.Number(p.calc(page, "skew_deg/"+k, "how far the shaft is out of square in plan, "+k, "deg",
			"atan((x of the left end less x of the right end) / distance of the plates' middles), the shaft under load",
			plane, a.Holes,
			func(at []Stand, _ []float64) float64 {
				d, _, _ := Skew(at[0].At(), at[1].At(), spacing)
				return d
			}).V)
	}
	return dim.FoundAfter{Found: calc("found", asFound), After: calc("after", after)}
}

// distance records a centre distance of a mesh.
func (x Axles) distance(book *ledger.Ledger, source string, d mesh.Drive, k, what, formula string, p pose) ledger.Num {
	holes, wheel := x.of(d)
	return p.calc(book.Page("mesh/"+d.Name), k, what, "mm", formula, plane, holes,
		func(at []Stand, more []float64) float64 {
			d.MateAt[1] = more[0]
			return Distance(d, at[:wheel], at[wheel:])
		}, mate(book, source, d))
}

// mate is the place of a fixed mate as an input; of a mate on a shaft of the
// job its bores are inputs already.
func mate(book *ledger.Ledger, source string, d mesh.Drive) ledger.Num {
	return book.Leaf("mesh/"+d.Name+"/mate_mm", "height of the mating gear (0: it sits on a shaft of the job)",
		"mm", source, d.MateAt[1])
}

// Seen records the centre distances of a mesh under load when new and as found.
// u is the doubt of where both shafts stood, mm.
func (x Axles) Seen(book *ledger.Ledger, source string, d mesh.Drive) (original, found ledger.Num, u float64) {
	found = x.distance(book, source, d, "found_centre_mm", "centre distance under load as found",
		"each shaft at old centre + clearance + wear towards the load, at the gear's station", asFound)
	original = x.distance(book, source, d, "original_centre_mm", "centre distance under load when new",
		"each shaft at old centre + clearance towards the load, at the gear's station", asNew)
	mate := d.UMate
	if d.OnJob() {
		mate = x[d.Mate].doubt()
	}
	return original, found, math.Hypot(x[d.Shaft].doubt(), mate)
}

// Along is the doubt of how far apart both gears of a mesh stood in their old
// centres, mm: of the gear's own station, along the line of centres.
func (x Axles) Along(d mesh.Drive) float64 {
	holes, wheel := x.of(d)
	at := make([]Stand, len(holes))
	for i, h := range holes {
		at[i] = h.New()
	}
	_, n := Line(d, at[:wheel], at[wheel:])
	v := d.UMate * d.UMate
	if d.OnJob() {
		v = variance(holes[wheel:], n, d.MateShare)
	}
	return math.Sqrt(math.Max(0, v+variance(holes[:wheel], n, d.Share)))
}

// variance is that of the old centres of a shaft at a share of the way between
// them, along n, mm^2: with what both errors have in common.
func variance(h []Hole, n Point, share float64) float64 {
	along := func(c Cov) float64 {
		return n[0]*(c[0][0]*n[0]+c[0][1]*n[1]) + n[1]*(c[1][0]*n[0]+c[1][1]*n[1])
	}
	if len(h) == 1 {
		return along(h[0].Survey.Worn.Cov)
	}
	return (1-share)*(1-share)*along(h[0].Survey.Worn.Cov) + share*share*along(h[1].Survey.Worn.Cov) +
		2*share*(1-share)*along(h[0].Survey.Cross)
}

// mesh writes how one mesh comes out.
func (s *settling) mesh(d mesh.Drive, g GearOut) mesh.Row {
	page, source := s.book.Page("mesh/"+d.Name), s.j.Source("gears/"+d.Name)
	x := s.out.Axles
	row := d.Row(s.book, mesh.Distances{Found: page.Num("found_centre_mm"), Original: page.Num("original_centre_mm"),
		Target: x.distance(s.book, source, d, "target_centre_mm", "centre distance under load at the new centre",
			"each shaft at new centre + half the middle running clearance towards the load", after),
		Lifted: x.distance(s.book, source, d, "lifted_centre_mm", "centre distance with the truck lifted",
			"each shaft at new centre less half the middle running clearance", lifted)})
	s.lean(d, &row, g)
	row.CorrectionMM = s.correction(page, d)
	row.UMM = dim.Place(page.Calc("u_mm", "standard uncertainty of the centre distance that will be made", "mm",
		"root of the squares of clamping, holes, teeth and the place of the mate: at the old centres",
		"law of propagation, JCGM 100 5.1.2: plan/target/METHODS.md 3", func(v []float64) float64 {
			return dim.Near(s.gear(s.again(v), d.Name).U, 6)
		}, s.inputs...).V)
	return row
}

// gear is what one pair gets.
func (s *settling) gear(out Output, name string) GearOut {
	for _, g := range out.Gears {
		if g.Name == name {
			return g
		}
	}
	return GearOut{}
}

// correction is the move of its shaft that a trusted mesh asks for by itself.
func (s *settling) correction(page ledger.Page, d mesh.Drive) *dim.XY {
	if !d.Trusted {
		return dim.PlaceXY(Point{})
	}
	var out dim.XY
	for i, axis := range []string{"x", "y"} {
		out[i] = dim.Place(page.Calc(fmt.Sprintf("correction_mm/%d", i), axis+" move that this mesh asks of its "+
			"shaft's old centre", "mm",
			"shortest way along the line of centres into the narrowed limits", plane, func(v []float64) float64 {
				return dim.Near(s.gear(s.again(v), d.Name).Correction[i], 4)
			}, s.inputs...).V)
	}
	return &out
}

// lean works out what unlike left and right bores do to a mesh: the loss of
// normal backlash over the face, as found and after.
func (s *settling) lean(d mesh.Drive, row *mesh.Row, g GearOut) {
	a, spacing := s.out.Axles[d.Shaft], mesh.Spacing(s.j.Chassis)
	aw, err := d.Pair.OperatingAngle(g.Centre)
	if len(a.Holes) != 2 || d.Face <= 0 || spacing <= 0 || err != nil {
		return
	}
	loss := func(k string, p pose) dim.Gauged {
		return dim.Place(p.calc(s.book.Page("mesh/"+d.Name), "lean_loss_mm/"+k, "normal backlash lost by lean, "+k,
			"mm",
			"face x (in the line of centres x sin + across it x cos of the working angle) of the difference of both "+
				"ends, over the distance of the plates",
			"plane geometry; the same combination as ISO/TR 10064-3", a.Holes, func(at []Stand, _ []float64) float64 {
				return LeanLoss(at[0], at[1], g.Towards, spacing, d.Face, aw)
			}).V)
	}
	row.LeanLossMM = dim.FoundAfterMM{Found: loss("found", asFound), After: loss("after", after)}
	s.leanFinding(d, row.LeanLossMM.After.Float())
}
