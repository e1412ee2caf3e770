package sheets

import (
	"strconv"
	"strings"

	"rebush/plan"
	"rebush/plan/job"
	"rebush/sheets/draw"
)

// view puts the frame of the job onto a board: x to the right (to the left
// where the plate is drawn mirrored) and y up, k mm of paper for each mm.
type view struct {
	b      *block
	ox, oy float64 // where cx, cy of the job lies on the board
	cx, cy float64
	k      float64
	mirror bool
}

func (v view) at(p [2]float64) (x, y float64) {
	dx := (p[0] - v.cx) * v.k
	if v.mirror {
		dx = -dx
	}
	return v.ox + dx, v.oy - (p[1]-v.cy)*v.k
}

func (v view) path(points [][2]float64) [][2]float64 {
	out := make([][2]float64, len(points))
	for i, p := range points {
		out[i][0], out[i][1] = v.at(p)
	}
	return out
}

// thin leaves out points of an outline that a printer cannot show apart.
func thin(points [][2]float64, step float64) [][2]float64 {
	if len(points) < 8 {
		return points
	}
	out := points[:1:1]
	for _, p := range points[1:] {
		last := out[len(out)-1]
		if dx, dy := p[0]-last[0], p[1]-last[1]; dx*dx+dy*dy >= step*step {
			out = append(out, p)
		}
	}
	if len(out) < 4 {
		return points
	}
	return out
}

// scales of a drawing, from large to small: a drawing has the largest that
// fits.
var scales = []float64{2000, 1000, 500, 400, 250, 200, 100, 50, 40, 30, 25, 20, 16, 12, 10, 8, 6, 5, 4, 3, 2.5, 2, 1.5, 1, 0.5, 0.2, 0.1}

func scale(room, size float64) float64 {
	for _, k := range scales {
		if size*k <= room {
			return k
		}
	}
	return scales[len(scales)-1]
}

func scaleWords(k float64) string {
	if k >= 1 {
		return "drawn " + strconv.FormatFloat(k, 'f', -1, 64) + ":1"
	}
	return "drawn 1:" + strconv.FormatFloat(1/k, 'f', -1, 64)
}

// plateOutline is the outline of the plates in mm: as given, or a rectangle,
// or what holds all the bores where the job gives neither.
func plateOutline(p *plan.Plan, j *job.Job) [][2]float64 {
	if j != nil {
		if len(j.Chassis.Corners) > 2 {
			out := make([][2]float64, len(j.Chassis.Corners))
			for i, c := range j.Chassis.Corners {
				out[i] = c.Float()
			}
			return out
		}
		if l, h := j.Chassis.Length.Float(), j.Chassis.Height.Float(); l > 0 && h > 0 {
			return [][2]float64{{0, 0}, {l, 0}, {l, h}, {0, h}}
		}
	}
	first := true
	var lo, hi [2]float64
	for _, s := range p.Survey {
		h, ok := p.Holes[s.Bore]
		if !ok {
			continue
		}
		if first {
			lo, hi, first = h.Old, h.Old, false
		}
		for k := range lo {
			lo[k], hi[k] = min(lo[k], h.Old[k]-h.OldRadius-3), max(hi[k], h.Old[k]+h.OldRadius+3)
		}
	}
	return [][2]float64{lo, {hi[0], lo[1]}, hi, {lo[0], hi[1]}}
}

func extent(points [][2]float64) (lo, hi [2]float64) {
	for i, p := range points {
		if i == 0 {
			lo, hi = p, p
		}
		for k := range p {
			lo[k], hi[k] = min(lo[k], p[k]), max(hi[k], p[k])
		}
	}
	return lo, hi
}

// side is the plate of a bore by its name, "" where it names none.
func side(j *job.Job, bore string) job.Side {
	if j != nil {
		if _, b := j.Bore(bore); b != nil {
			return b.Side
		}
	}
	for _, s := range job.Sides {
		if n := len(bore) - len(s) - 1; n > 0 && bore[n:] == "."+string(s) {
			return s
		}
	}
	return ""
}

// figureOf writes the scale below a figure, and a note that is never cut. It
// returns the height below them.
func figureOf(b *block, room draw.Box, k float64, note string) float64 {
	s := scaleWords(k)
	if note != "" {
		s += ", " + note
	}
	if draw.Width(s, draw.Regular, b.st.small) > room.W {
		s = strings.TrimPrefix(s, "drawn ")
	}
	return b.write(room.X, room.Y+room.H+0.8, room.W, s, draw.Regular, b.st.small)
}
