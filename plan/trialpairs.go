package plan

import (
	"math"

	"rebush/plan/chance"
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/target"
)

// triedPairs are all meshes of a job, with the bores where the trials have them:
// those that no bore moves as they were found, and those that nobody could work
// out as far as that goes.
func triedPairs(w *books, j *job.Job, s target.Settled, holes []chance.Hole) []chance.Pair {
	drives := map[string]mesh.Drive{}
	for _, d := range s.Drives {
		drives[d.Name] = d
	}
	var out []chance.Pair
	for i := range j.Gears {
		g := &j.Gears[i]
		d, ok := drives[g.Name]
		if !ok {
			out = append(out, placelessPair(w, g))
			continue
		}
		p := triedPair(w, d, g)
		wheel, mate := standsOf(holes, d.Shaft), standsOf(holes, d.Mate)
		p.CentreMM, p.Towards = target.Line(d, wheel, mate)
		p.Lean = triedLean(w, j, d, p.CentreMM)
		out = append(out, p)
	}
	return out
}

// standsOf are the bores of one shaft as the trials have them, without
// clearance; nil for a mate at a fixed place.
func standsOf(holes []chance.Hole, shaft int) []target.Stand {
	var out []target.Stand
	for _, h := range holes {
		if h.On == shaft {
			out = append(out, target.Stand{Centre: h.At})
		}
	}
	return out
}

// triedPair is one mesh with what it wants.
func triedPair(w *books, d mesh.Drive, g *job.Gear) chance.Pair {
	p := chance.Pair{Name: d.Name, On: d.Shaft, Station: d.Share, Mate: chance.FixedMate, MateStation: d.MateShare,
		LowMM: d.Window.Lo, HighMM: d.Window.Hi, Empty: d.Window.Empty, SpreadMM: d.Spread, Ties: ties(d),
		UGeomMM: d.UTeeth, UMateMM: d.UMate, RunoutMM: mesh.Runouts(w.rules, g)}
	if d.OnJob() {
		p.Mate = d.Mate
	}
	if a, err := d.Pair.CentreForNormal(w.rules.V("tight_tooth_backlash_mm")); err == nil {
		p.TightMM = a + d.Closes
		p.BindMM = d.Pair.Tight() + d.Closes
	}
	contact := d.Window.Contact
	if d.Window.Empty {
		contact = d.Limits.ContactHard
	}
	if a, err := d.Blunt().CentreForContactRatio(contact); err == nil {
		p.ContactMM = a
	}
	if a, err := d.Blunt().CentreForContactRatio(d.Limits.ContactHard); err == nil {
		p.PartMM = a
	}
	return p
}

// ties are those of a mesh as the trials take them.
func ties(d mesh.Drive) (out []chance.Tie) {
	for _, t := range d.Ties {
		out = append(out, chance.Tie(t))
	}
	return out
}

// placelessPair is a mesh that nobody can work out, since the place of a gear
// is not known: it is right where chance has put it into its window.
func placelessPair(w *books, g *job.Gear) chance.Pair {
	bound := w.rules.V("u_geometry_module_factor") * g.Module
	return chance.Pair{Name: g.Name, Placeless: true, Towards: target.Point{0, 1}, CentreMM: mesh.HalfWidth(w.lib, g),
		HighMM: 2 * mesh.HalfWidth(w.lib, g), SpreadMM: mesh.Anywhere(bound)}
}

// triedLean is what a shaft out of square costs a spur pair; nil where it costs
// nothing. A face that nobody measured is as wide as usual.
func triedLean(w *books, j *job.Job, d mesh.Drive, centre float64) *chance.Lean {
	span := mesh.Spacing(j.Chassis)
	if span <= 0 || d.Kind != mesh.SpurPair {
		return nil
	}
	face := d.Face
	if face <= 0 {
		face = w.rules.V("gear_face_modules") * d.Module
	}
	angle, err := d.Pair.OperatingAngle(centre)
	if err != nil {
		return nil
	}
	return &chance.Lean{FaceMM: face, SpanMM: span, AngleRad: angle * math.Pi / 180}
}
