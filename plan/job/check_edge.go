package job

import (
	"fmt"
	"math"

	"rebush/fits/dim"
)

func checkEdge(r *reader, j *Job, b *Bore, e Edge, v *value, journal dim.Length) {
	m, a := v.get("metal"), v.get("away")
	if v.missing("metal") && v.missing("away") || m != nil && a != nil {
		r.say(v.pos, "edges: give either metal (from the wall of the hole) or away (from its centre)",
			"write {at: 270, metal: 4.4}")
		return
	}
	radius := b.radius(journal)
	if a != nil && e.Away.Float() < radius+0.1 {
		r.say(a.pos, fmt.Sprintf("away: %s from the centre lies inside the hole, whose radius is %s",
			r.show(e.Away.Float()), r.show(radius)), "away is measured from the centre; from the wall it is metal")
	}
	c, _, ok := b.rough()
	if !ok {
		return
	}
	out, ok := j.Chassis.reach(c, e.AtDeg)
	if !ok {
		return
	}
	if m != nil {
		between(r, m, e.Metal, 0, out-radius+1.5, "the outline of the plate on that side")
	} else {
		between(r, a, e.Away, 0, out+1.5, "the outline of the plate on that side")
	}
}

// reach is how far the outline is from a point in a direction.
func (c Chassis) reach(p [2]float64, deg float64) (float64, bool) {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	var corners [][2]float64
	for _, q := range c.Corners {
		corners = append(corners, q.Float())
	}
	if len(corners) == 0 {
		x0, y0, x1, y1, ok := c.box()
		if !ok {
			return 0, false
		}
		corners = [][2]float64{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}
	}
	best := math.Inf(1)
	for i := range corners {
		a, b := corners[i], corners[(i+1)%len(corners)]
		ex, ey := b[0]-a[0], b[1]-a[1]
		det := cos*ey - sin*ex
		if math.Abs(det) < 1e-12 {
			continue
		}
		t := ((a[0]-p[0])*ey - (a[1]-p[1])*ex) / det
		u := ((a[0]-p[0])*sin - (a[1]-p[1])*cos) / det
		if t >= 0 && u >= -1e-9 && u <= 1+1e-9 {
			best = math.Min(best, t)
		}
	}
	return best, !math.IsInf(best, 1)
}

func checkSpan(r *reader, j *Job, b *Bore, s Span, v *value, journal dim.Length) {
	names := j.boreNames()
	for _, f := range j.Chassis.Features {
		names = append(names, f.Name)
	}
	if !known(r, v.get("to"), "bore or feature", s.To, names) || !s.Inside.Given() || !s.Outside.Given() {
		return
	}
	in, out := v.get("inside"), v.get("outside")
	if !s.Inside.Less(s.Outside) {
		r.say(in.pos, fmt.Sprintf("inside: %s is not less than outside, %s", r.show(s.Inside.Float()),
			r.show(s.Outside.Float())), "inside edges are nearer to each other than outside edges")
		return
	}
	var to [2]float64
	var other float64
	ok := false
	if sh, ob := j.Bore(s.To); ob != nil {
		to, _, ok = ob.rough()
		other = 2 * ob.radius(sh.Journal.On(ob.Side))
	}
	for _, f := range j.Chassis.Features {
		if f.Name == s.To && f.At.Given() {
			to, ok, other = f.At.Float(), true, f.Diameter.Float()
		}
	}
	if both := 2*b.radius(journal) + other; other > 0 && journal.Given() {
		between(r, out, s.Outside, s.Inside.Float()+both-0.3, s.Inside.Float()+both+2, "inside and the two diameters")
	}
	if from, _, there := b.rough(); there && ok {
		d := math.Hypot(from[0]-to[0], from[1]-to[1])
		mean := (s.Inside.Float() + s.Outside.Float()) / 2
		if math.Abs(mean-d) > 1.5 {
			r.say(in.pos, fmt.Sprintf("inside and outside: their middle, %s, is not the distance of the two holes, "+
				"%s", r.show(mean), r.show(d)), "check both figures and their unit")
		}
	}
}
