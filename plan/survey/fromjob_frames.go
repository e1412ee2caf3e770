package survey

import (
	"fmt"
	"math"

	"rebush/plan/job"
)

// frames are what a drawing and a sister chassis tell of the shaft, through
// unworn features that are seen in both.
func (r reader) frames() []Source {
	var out []Source
	if at := r.h.Shaft.Design; at.Given() {
		out = append(out, r.frame(ByDrawing, "design", at, func(f job.Feature) job.Point { return f.Design }))
	}
	if at := r.h.Shaft.Sister; at.Given() {
		out = append(out, r.frame(BySister, "sister", at, func(f job.Feature) job.Point { return f.Sister }))
	}
	return out
}

func (r reader) frame(by Method, key string, at job.Point, there func(job.Feature) job.Point) Source {
	s := Source{What: by.String()}
	point := func(k, of, path string, p job.Point) {
		for axis, v := range p.Float() {
			s.add(Figure{Key: r.key(fmt.Sprintf("%s/%s/%d", key, k, axis)), What: string("xy"[axis]) + " of " + of,
				Unit: "mm", Source: r.j.Source(path), V: v})
		}
	}
	point("at_mm", "the shaft by "+by.String(), "shafts/"+r.h.Shaft.Name+"/"+key, at)
	s.add(r.u(key+"/u_mm", "a place", r.tools.Default(Middle)))
	s.add(rule(r.rules.Get("u_as_drawn_mm")))
	var names []string
	for i, f := range r.j.Chassis.Features {
		from := there(f)
		if !from.Given() || !f.At.Given() || f.Plate != "" && f.Plate != r.h.Bore.Side {
			continue
		}
		path := fmt.Sprintf("chassis/features/%d", i)
		point(fmt.Sprintf("%d/there_mm", i), f.Name+" by "+by.String(), path, from)
		point(fmt.Sprintf("%d/here_mm", i), f.Name+" as measured", path, f.At)
		names = append(names, f.Name)
	}
	s.Find = func(in []float64) (Answer, error) {
		there := in[3] // how far a hole stands from its drawing
		if by == BySister {
			there = math.Hypot(there, in[2]) // and the sister was measured too
		}
		fs := make([]Feature, len(names))
		for i, name := range names {
			v := in[4+4*i:]
			fs[i] = Feature{Name: name, From: [2]float64{v[0], v[1]}, To: [2]float64{v[2], v[3]}, U: math.Hypot(there, in[2])}
		}
		f, err := Align(fs)
		if err != nil {
			return Answer{}, err
		}
		e := FromFrame(by, f, [2]float64{in[0], in[1]}, there)
		e.Parts = f.parts(in[2])
		return Answer{Evidence: e}, nil
	}
	return s
}
