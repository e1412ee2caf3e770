package habit

import "math"

// clamped are the holes of one clamping of a job, um from their targets.
type clamped struct{ off [][2]float64 }

// places is what past jobs tell of how far holes stand from their targets:
// METHODS.md 4.
func places(jobs []Job, by Place, r Rules, slip func(s seen, um float64)) (out FoundPlace) {
	var far []float64
	gauge := 0.0
	each(jobs, func(_ seen, o Off) {
		far = append(far, math.Abs(1000*o.MM[0]), math.Abs(1000*o.MM[1]))
		gauge = math.Max(gauge, 1000*o.UMM)
	})
	if len(far) == 0 {
		return out
	}
	scale := math.Max(math.Hypot(1000*math.Hypot(by.SetupMM, by.HoleMM), gauge), median(far)*normalMAD)
	type which struct {
		job  int
		name string
	}
	of := map[which]int{}
	var all []clamped
	in := map[int]bool{}
	var sum [2]float64
	square, gauges := 0.0, 0.0
	each(jobs, func(s seen, o Off) {
		d := [2]float64{1000 * o.MM[0], 1000 * o.MM[1]}
		if most := math.Max(math.Abs(d[0]), math.Abs(d[1])); most > r.SlipFrom*scale {
			slip(s, math.Hypot(d[0], d[1]))
			return
		}
		k := which{s.job, o.Clamping}
		if _, ok := of[k]; !ok {
			of[k] = len(all)
			all = append(all, clamped{})
		}
		c := &all[of[k]]
		c.off = append(c.off, d)
		in[s.job] = true
		out.Holes++
		gauges += 1e6 * o.UMM * o.UMM
		for a := range 2 {
			sum[a] += d[a]
			square += d[a] * d[a]
		}
	})
	out.Jobs = len(in)
	if out.Holes == 0 {
		return out
	}
	n, jobsN := float64(out.Holes), float64(out.Jobs)
	out.GaugeUm = math.Sqrt(gauges / n)
	total := square / (2 * n)
	out.MeanUm = [2]float64{sum[0] / n, sum[1] / n}
	out.UMeanUm = math.Sqrt(total / jobsN)
	s, told := without(total, out.GaugeUm, 1000*math.Hypot(by.SetupMM, by.HoleMM))
	out.Told, out.UUm = told, spread(total, s, 2*jobsN)
	out.split(all, by, s*s)
	return out
}

// split parts a variance of places into that of a clamping and that of a hole in
// it; where every clamping has one hole, as the prior has them.
func (p *FoundPlace) split(all []clamped, by Place, total float64) {
	within, free := 0.0, 0.0
	for _, c := range all {
		n := float64(len(c.off))
		for a := range 2 {
			mean := 0.0
			for _, d := range c.off {
				mean += d[a] / n
			}
			for _, d := range c.off {
				within += (d[a] - mean) * (d[a] - mean)
			}
		}
		free += 2 * (n - 1)
	}
	hole := total / 2
	switch prior := by.SetupMM*by.SetupMM + by.HoleMM*by.HoleMM; {
	case free > 0:
		p.Apart = true
		hole = math.Min(total, math.Max(0, within/free-p.GaugeUm*p.GaugeUm))
	case prior > 0:
		hole = total * by.HoleMM * by.HoleMM / prior
	}
	p.HoleUm, p.SetupUm = math.Sqrt(hole), math.Sqrt(total-hole)
}

// each walks the places that were gauged.
func each(jobs []Job, do func(s seen, o Off)) {
	for i, j := range jobs {
		for k, h := range j.Holes {
			if h.Place != nil {
				do(seen{job: i, hole: k}, *h.Place)
			}
		}
	}
}
