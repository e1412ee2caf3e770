package sheets

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"rebush/fits/dim"
	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/job"
	"rebush/plan/route"
	"rebush/sheets/draw"
)

// jigged says whether a jig plate guides the tools: a machine that is not
// dialled, in a shop that makes pinned jigs.
func jigged(j *job.Job) bool {
	return j != nil && j.Shop != nil && j.Shop.Jig == "pinned" &&
		(j.Shop.MachineKind == "drill press" || j.Shop.MachineKind == "hand")
}

// jigPage draws the jig plate as it lies on each side of the chassis, and lists
// its bush holes with their slip bushes, and its pins.
func jigPage(b *block, p *paper, pl *plan.Plan) error {
	b.Bookmark("Template, jig plate", 0, 0)
	top := ruled(b, p, "The jig plate: one plate for both sides. Its bush holes stand at the crosses, its pins in unworn holes.")
	lo, hi := extent(plateOutline(pl, pl.Job))
	w, h := hi[0]-lo[0], hi[1]-lo[1]
	border := min(jigBorder, (b.Width-16-w)/2)
	list := jigList(p, pl)
	under := b.tall(b.Width-16, list, draw.Regular, p.st.body) + 4
	faces := []string{"As it lies on the left plate, seen from the left.",
		"Turned over with the chassis, for the right plate: its other face is up, its pins in the same holes. MIRRORED."}
	face := func(i int) float64 { return h + 2*border + b.tall(b.Width-16, faces[i], draw.Bold, p.st.body) + 6 }
	if border < 0 || top+face(0)+under > p.height() {
		return fmt.Errorf("the jig plate for a side of %.0f x %.0f mm has no room on %s paper at 1:1; use the figures of "+
			"its operation", w, h, p.doc.Paper.Name)
	}
	y := top
	for i, words := range faces {
		if i == 1 && y+face(1)+under > p.height() {
			break // each page of a plate says which way it lies
		}
		y = b.write(16, y, b.Width-16, words, draw.Bold, p.st.body) + 2
		v := onPaper{x: 16 + (b.Width-16-w)/2, y: y + border + h, lo: lo, w: w, h: h, mirror: i == 1}
		jigFace(b, pl, v, border)
		y = v.y + border + 4
	}
	b.write(16, y, b.Width-16, list, draw.Regular, p.st.body)
	return nil
}

// jigFace draws a face of the jig plate about the outline of the chassis.
func jigFace(b *block, pl *plan.Plan, v onPaper, border float64) {
	b.As(draw.Picture, func() {
		b.Rect(v.x-border, v.y-v.h-border, v.w+2*border, v.h+2*border, 0.5)
		b.Path(v.path(plateOutline(pl, pl.Job)), true, 0.25, true, draw.Open)
	})
	var marks [][2]float64
	holes, pins := jigHoles(pl), jigPins(pl.Job)
	for _, t := range holes {
		x, y := v.at([2]float64{t.TargetMM[0].Float(), t.TargetMM[1].Float()})
		marks = append(marks, [2]float64{x, y})
		b.As(draw.Picture, func() { b.Cross(x, y, 6, 0.12) })
	}
	for _, f := range pins {
		x, y := v.at(f.At.Float())
		marks = append(marks, [2]float64{x, y})
		b.As(draw.Picture, func() {
			b.Circle(x, y, max(f.Diameter.Float()/2, 0.3), 0.5, false)
			b.Cross(x, y, 4, 0.12)
		})
	}
	pt := b.st.small
	for i := range marks {
		x, y := freest(marks, i)
		name := strconv.Itoa(i + 1)
		if i >= len(holes) {
			name = "P" + strconv.Itoa(i+1-len(holes))
		}
		b.Label(x, y+(draw.Rise-draw.Drop)/2*pt*draw.MMPerPt, 10, name, draw.Bold, pt)
	}
}

// jigHoles are the new centres that a bush hole of the plate stands at, one of
// each shaft: the left plate's, or the right's where the left has none.
func jigHoles(pl *plan.Plan) []plan.Target {
	var out []plan.Target
	seen := map[string]bool{}
	for _, s := range job.Sides {
		for _, t := range targetsOn(pl, s) {
			if name := shaftOf(t.Bore); !seen[name] && len(slipBushes(pl, name)) > 0 {
				seen[name] = true
				out = append(out, t)
			}
		}
	}
	return out
}

// jigPins are the holes that the plate is pinned in: the first two of the job.
func jigPins(j *job.Job) []job.Feature { return j.Chassis.Features[:min(2, len(j.Chassis.Features))] }

// slipBushes are the sizes of the tools that the jig guides at a shaft, in order
// of size.
func slipBushes(pl *plan.Plan, shaft string) []plan.MM {
	var out []plan.MM
	for _, op := range pl.Operations {
		switch route.Kind(op.Kind) {
		case route.KindLocate, route.KindOpen, route.KindSizeSeat:
		default:
			continue
		}
		if !op.ToolMM.Given() || shaftOf(op.Bore) != shaft {
			continue
		}
		d := op.ToolMM
		if !slices.ContainsFunc(out, func(x plan.MM) bool { return x.Float() == d.Float() }) {
			out = append(out, d)
		}
	}
	slices.SortFunc(out, func(a, b plan.MM) int {
		if a.Float() < b.Float() {
			return -1
		}
		return 1
	})
	return out
}

// jigList names each bush hole with its slip bushes, and each pin.
func jigList(p *paper, pl *plan.Plan) string {
	var out []string
	for i, t := range jigHoles(pl) {
		shaft := shaftOf(t.Bore)
		var sizes []string
		for _, d := range slipBushes(pl, shaft) {
			sizes = append(sizes, say.Size(d, 3).Trim().In(p.u.said()))
		}
		out = append(out, fmt.Sprintf("%d  %s: %s; slip bushes %s", i+1, shaft, p.u.at(dialled(pl, t), false)[0],
			strings.Join(sizes, ", ")))
	}
	for i, f := range jigPins(pl.Job) {
		s := fmt.Sprintf("P%d  %s: %s", i+1, f.Name,
			p.u.at(&plan.XY{typedMM(f.At.X), typedMM(f.At.Y)}, false)[0])
		if f.Diameter.Given() {
			s += "; pin " + say.MM(f.Diameter.Float(), 3).Trim().In(p.u.said())
		}
		out = append(out, s)
	}
	return strings.Join(out, "\n")
}

// typedMM is a length of the job as the plan has its own.
func typedMM(l dim.Length) plan.MM { return dim.Typed(strconv.FormatFloat(l.Float(), 'f', -1, 64)) }
