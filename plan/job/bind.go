package job

import (
	"strings"
)

// bindJob fills a Job from what was read. Most of it the table of keys says;
// here is what it cannot say.
func bindJob(r *reader, root *value, name, folder string) *Job {
	j := &Job{File: name, Folder: folder, where: r.where, Units: unitsOf(root.get("units")), like: r.likeFile}
	store(j, root)
	j.Chassis.TemperatureGiven = root.get("chassis").get("temperature") != nil
	for i, v := range root.get("shafts").items() {
		bindBores(r, &j.Shafts[i], v, j.Chassis)
	}
	for i, v := range root.get("gears").items() {
		if dp := v.get("diametral_pitch"); dp != nil && j.Gears[i].Module == 0 {
			j.Gears[i].Module = 25.4 / dp.num
		}
	}
	for i := range j.Bushes {
		b := &j.Bushes[i]
		b.Index = i
		b.Bore.settle()
		b.OD.settle()
	}
	j.Choose = bindChoose(root.get("choose"))
	j.Finish = bindChoose(root.get("finish"))
	j.Way = bindChoose(root.get("way"))
	for i := range j.Made {
		j.Made[i].Bore = root.get("made").order[i]
	}
	return j
}

// bindChoose reads one answer for every bore, under "", or one per bore. What
// is left to the plan is not in it.
func bindChoose(v *value) map[string]string {
	choose := map[string]string{}
	switch {
	case v == nil || v.by == nil && strings.EqualFold(v.raw, "auto"):
	case v.by == nil:
		choose[""] = v.raw
	default:
		for _, bore := range v.order {
			if code := v.get(bore).raw; !strings.EqualFold(code, "auto") {
				choose[bore] = code
			}
		}
	}
	return choose
}

// read takes a nominal or measured size, or the limits of a box of them. The
// class stands in a key of its own.
func (s *Size) read(v *value) {
	if v.shape.kind == aList {
		s.Low, s.High, s.Measured = v.list[0].len, v.list[1].len, true
		return
	}
	s.Nominal = v.len
}

// settle makes a size without a class one measured size.
func (s *Size) settle() {
	switch {
	case s.Measured:
		s.Class = "" // said to be a mistake by checkSize
	case s.Nominal.Given() && s.Class == "":
		s.Low, s.High, s.Measured = s.Nominal, s.Nominal, true
	case !s.Nominal.Given():
		*s = Size{}
	}
}
