package job

import (
	"fmt"
	"math"

	"rebush/fits/dim"
)

// A check sets one value against another that ought to go with it. The figures
// in these files that are not of geometry are what is plausible on a table-top
// motor truck: common practice, no source.

func has(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

func at(p Pos) string { return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column) }

// checkJob makes sense of a job by itself, without its shop.
func checkJob(r *reader, j *Job, root *value) {
	checkNames(r, j, root)
	checkOutline(r, j, root)
	for i, v := range root.get("shafts").items() {
		checkShaft(r, j, &j.Shafts[i], v)
	}
	for i, v := range root.get("gears").items() {
		checkGear(r, j, &j.Gears[i], v)
	}
	for i, v := range root.get("bushes").items() {
		checkBush(r, &j.Bushes[i], v)
	}
	checkWheelbase(r, j, root)
	checkFrames(r, j, root)
	checkMade(r, j, root)
	checkAccept(r, root)
}

// shaftNames and boreNames are what other keys may refer to.
func (j *Job) shaftNames() []string {
	var out []string
	for _, s := range j.Shafts {
		out = append(out, s.Name)
	}
	return out
}

func (j *Job) boreNames() []string {
	var out []string
	for _, s := range j.Shafts {
		for _, b := range s.Bores {
			out = append(out, b.Name)
		}
	}
	return out
}

// shaft finds a shaft by name, nil where there is none.
func (j *Job) shaft(name string) *Shaft {
	for i := range j.Shafts {
		if j.Shafts[i].Name == name {
			return &j.Shafts[i]
		}
	}
	return nil
}

// known says where a name refers to nothing, with the nearest that exists.
func known(r *reader, v *value, what, name string, names []string) bool {
	if v == nil || has(names, name) {
		return v != nil
	}
	right := "there is none at all"
	if len(names) > 0 {
		right = fmt.Sprintf("did you mean %q? There are %s", short(nearest(name, names)), some(names))
	}
	r.say(v.pos, fmt.Sprintf("%s: there is no %s called %q", v.name, what, short(name)), right)
	return false
}

// box is the rectangle round the outline; ok is false where there is none.
func (c Chassis) box() (x0, y0, x1, y1 float64, ok bool) {
	if len(c.Corners) > 0 {
		x0, y0, x1, y1 = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
		for _, p := range c.Corners {
			f := p.Float()
			x0, x1 = math.Min(x0, f[0]), math.Max(x1, f[0])
			y0, y1 = math.Min(y0, f[1]), math.Max(y1, f[1])
		}
		return x0, y0, x1, y1, true
	}
	return 0, 0, c.Length.Float(), c.Height.Float(), c.Length.Given() && c.Height.Given()
}

// inside says whether a point lies inside the outline by at least margin.
func (c Chassis) inside(p [2]float64, margin float64) bool {
	if len(c.Corners) == 0 {
		x0, y0, x1, y1, ok := c.box()
		return !ok || p[0] >= x0+margin && p[0] <= x1-margin && p[1] >= y0+margin && p[1] <= y1-margin
	}
	in, n := false, len(c.Corners)
	for i := range c.Corners {
		a, b := c.Corners[i].Float(), c.Corners[(i+1)%n].Float()
		if (a[1] > p[1]) != (b[1] > p[1]) && p[0] < a[0]+(p[1]-a[1])/(b[1]-a[1])*(b[0]-a[0]) {
			in = !in
		}
		if toSegment(p, a, b) < margin {
			return false
		}
	}
	return in
}

func toSegment(p, a, b [2]float64) float64 {
	dx, dy := b[0]-a[0], b[1]-a[1]
	t := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		t = math.Min(1, math.Max(0, ((p[0]-a[0])*dx+(p[1]-a[1])*dy)/l))
	}
	return math.Hypot(p[0]-a[0]-t*dx, p[1]-a[1]-t*dy)
}

func checkOutline(r *reader, j *Job, root *value) {
	v := root.get("chassis").get("outline")
	if v == nil {
		return
	}
	c := j.Chassis
	l, h, corners := v.get("length"), v.get("height"), v.get("corners")
	if corners == nil {
		for _, name := range []string{"length", "height"} {
			if v.missing(name) {
				r.say(v.pos, "outline: "+name+" is missing",
					"write outline: {length: 58, height: 20}, or corners: [[0, 0], ...]")
			}
		}
		return
	}
	x0, y0, x1, y1, _ := c.box()
	if x1-x0 < 12 || x1-x0 > 250 || y1-y0 < 6 || y1-y0 > 140 {
		r.say(corners.pos, fmt.Sprintf("corners: the outline is %s by %s", r.show(x1-x0), r.show(y1-y0)),
			fmt.Sprintf("expected %s to %s by %s to %s", r.show(12), r.show(250), r.show(6), r.show(140)))
	}
	if l != nil && math.Abs(x1-x0-l.len.Float()) > 1 {
		r.say(corners.pos, fmt.Sprintf("corners: they span %s, but length says %s", r.show(x1-x0), r.show(l.len.Float())),
			"mend the one that is wrong")
	}
	if h != nil && math.Abs(y1-y0-h.len.Float()) > 1 {
		r.say(corners.pos, fmt.Sprintf("corners: they span %s, but height says %s", r.show(y1-y0), r.show(h.len.Float())),
			"mend the one that is wrong")
	}
}

// between says where a length lies outside low to high, with the reason.
func between(r *reader, v *value, l dim.Length, low, high float64, why string) bool {
	if v == nil || !l.Given() || l.Float() >= low-1e-9 && l.Float() <= high+1e-9 {
		return true
	}
	expected := fmt.Sprintf("expected %s to %s", r.show(low), r.show(high))
	switch r.show(l.Float()) {
	case r.show(low): // printed alike, and yet too small
		expected = fmt.Sprintf("expected more, up to %s", r.show(high))
	case r.show(high):
		expected = fmt.Sprintf("expected less, down to %s", r.show(low))
	}
	if ask := r.shiftWithin(v, low, high); ask != "" {
		expected = ask + " " + expected
	}
	r.say(v.pos, fmt.Sprintf("%s: %s does not go with %s", v.name, r.show(l.Float()), why), expected)
	return false
}
