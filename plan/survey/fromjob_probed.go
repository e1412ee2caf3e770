package survey

import (
	"fmt"
	"math"
)

// probed are points of the wall.
func (r reader) probed() Source {
	b := r.h.Bore
	if len(b.Probed) == 0 {
		return Source{}
	}
	s := Source{What: "probed points"}
	g := r.by(&s, b, "probed", Wall)
	s.By = g.Name
	source := r.line("probed")
	if b.ProbedAt != "" {
		source += ", " + b.ProbedAt
	}
	leaf := func(key, what string, v float64) {
		s.add(Figure{Key: r.key(key), What: what, Unit: "mm", Source: source, V: v})
	}
	for i, p := range b.Probed {
		at := p.Float()
		leaf(fmt.Sprintf("probed/%d/0", i), fmt.Sprintf("x of point %d", i+1), at[0])
		leaf(fmt.Sprintf("probed/%d/1", i), fmt.Sprintf("y of point %d", i+1), at[1])
	}
	n := s.add(r.u("u_point_mm", "one point", g))
	s.add(r.h.journal)
	leaf("stylus_mm", "ball of the stylus (0: corrected already)", b.Stylus.Float())
	s.add(rule(r.rules.Get("u_journal_mm")))
	s.add(rule(r.rules.Get("u_direction_deg")))
	s.add(rule(r.rules.Get("side_against_chi2")))
	s.Figures = append(s.Figures, r.sides()...)
	s.Find = func(in []float64) (Answer, error) {
		pts := make([][2]float64, n/2)
		for i := range pts {
			pts[i] = [2]float64{in[2*i], in[2*i+1]}
		}
		p := Probe{Points: pts, S: in[n], Journal: in[n+1], UJournal: in[n+3], UDir: in[n+4] * deg,
			Against: in[n+5], WornTo: radians(in[n+6:])}
		return r.memo.touched(p, in[n+2], touched)
	}
	return s
}

// touched finds the old centre from the middles of a ball that touched the wall.
// They run on the same outline drawn in by the ball's radius: old circle and
// journal both smaller by it, the rest unchanged.
func touched(p Probe, ball float64) (Answer, error) {
	if p.Journal > 0 {
		p.Journal -= ball
	}
	got, err := FromProbe(p)
	if err != nil {
		return Answer{}, err
	}
	a := Answer{Evidence: got.Evidence, Points: p.Points, Residuals: got.Residuals, LeftOut: got.LeftOut}
	if ball > 0 {
		a.R += ball / 2
		a.Bore.R += ball / 2
		a.Bore.JournalR += ball / 2
		a.Points = outwards(p.Points, a.Centre, ball/2)
	}
	return a, nil
}

// outwards moves points away from a centre.
func outwards(pts [][2]float64, from [2]float64, by float64) [][2]float64 {
	out := make([][2]float64, len(pts))
	for i, p := range pts {
		dx, dy := p[0]-from[0], p[1]-from[1]
		k := 1 + by/math.Max(math.Hypot(dx, dy), by)
		out[i] = [2]float64{from[0] + k*dx, from[1] + k*dy}
	}
	return out
}
