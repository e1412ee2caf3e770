package habit

import (
	"cmp"
	"maps"
	"math"
	"slices"
)

// seen is one figure of a job, with the hole that it is of.
type seen struct {
	job  int
	hole int
	over Over
}

// Learn works out what past jobs tell of a shop; by are the habits that shops
// have by rule. A figure too far from the others of its kind is a slip, and
// counts in nothing else (METHODS.md 3).
func Learn(jobs []Job, by Habits, r Rules) Learned {
	out := Learned{Ways: map[Way]Found{}, Reamers: map[string]Found{}}
	slipped := map[[2]int]bool{}
	slip := func(what string, s seen, um float64) {
		slipped[[2]int{s.job, s.hole}] = true
		out.Slipped = append(out.Slipped, Slip{s.job, jobs[s.job].Holes[s.hole].Bore, what, um})
	}
	for _, w := range Ways() {
		all := gather(jobs, func(h Hole) *Over { return of(h.Seat, h.Way == w) })
		good := kept(all, by.Ways[w], r, func(s seen, um float64) { slip("seat", s, um) })
		if len(good) == 0 {
			continue
		}
		out.Ways[w] = found(good, by.Ways[w], r)
		if w == Reamed {
			for _, name := range reamers(jobs) {
				own := filter(good, func(s seen) bool { return jobs[s.job].Holes[s.hole].Reamer == name })
				if len(own) > 0 {
					out.Reamers[name] = found(own, by.Ways[w], r)
				}
			}
		}
	}
	all := gather(jobs, func(h Hole) *Over { return h.Clearance })
	good := kept(all, by.Clearance, r, func(s seen, um float64) { slip("bore", s, um) })
	if len(good) > 0 {
		out.Clearance = found(good, by.Clearance, r)
	}
	out.Place = places(jobs, by.Place, r, func(s seen, um float64) { slip("place", s, um) })
	for i, j := range jobs {
		n := 0
		for k, h := range j.Holes {
			if h.Seat == nil && h.Clearance == nil && h.Place == nil {
				continue
			}
			n++
			if slipped[[2]int{i, k}] {
				out.Slips.Slipped++
			}
		}
		if n > 0 {
			out.Slips.Jobs++
		}
		out.Slips.Holes += n
	}
	return out
}

func of(o *Over, yes bool) *Over {
	if !yes {
		return nil
	}
	return o
}

func gather(jobs []Job, what func(Hole) *Over) (out []seen) {
	for i, j := range jobs {
		for k, h := range j.Holes {
			if o := what(h); o != nil {
				out = append(out, seen{i, k, *o})
			}
		}
	}
	return out
}

func filter(all []seen, is func(seen) bool) (out []seen) {
	for _, s := range all {
		if is(s) {
			out = append(out, s)
		}
	}
	return out
}

// reamers are those that made a seat, by name.
func reamers(jobs []Job) (out []string) {
	for _, j := range jobs {
		for _, h := range j.Holes {
			if h.Way == Reamed && h.Reamer != "" && !slices.Contains(out, h.Reamer) {
				out = append(out, h.Reamer)
			}
		}
	}
	slices.Sort(out)
	return out
}

// kept are the figures that are no slips.
func kept(all []seen, by Size, r Rules, slip func(s seen, um float64)) (out []seen) {
	var x []float64
	gauge := 0.0
	for _, s := range all {
		x = append(x, s.over.Um)
		gauge = math.Max(gauge, s.over.UUm)
	}
	mid := median(x)
	for i := range x {
		x[i] = math.Abs(x[i] - mid)
	}
	scale := math.Max(math.Hypot(by.ScatterUm, gauge), median(x)*normalMAD)
	for _, s := range all {
		if d := s.over.Um - mid; math.Abs(d) > r.SlipFrom*scale {
			slip(s, d)
			continue
		}
		out = append(out, s)
	}
	return out
}

// normalMAD is a standard deviation over the median distance from the median of
// a normal error: 1 over its quantile at 0.75.
const normalMAD = 1.4826

func median(x []float64) float64 {
	if len(x) == 0 {
		return 0
	}
	s := slices.Sorted(slices.Values(x))
	return (s[(len(s)-1)/2] + s[len(s)/2]) / 2
}

func mean(x []float64) (m float64) {
	for _, v := range x {
		m += v / float64(len(x))
	}
	return m
}

// variance is that of a sample about its own mean, 0 of one figure.
func variance(x []float64) (v float64) {
	m := mean(x)
	for _, a := range x {
		v += (a - m) * (a - m) / math.Max(1, float64(len(x)-1))
	}
	return v
}

// found is what figures of several jobs tell of a size: METHODS.md 2.
func found(all []seen, by Size, r Rules) Found {
	of := map[int][]float64{}
	out := Found{Holes: len(all)}
	for _, s := range all {
		of[s.job] = append(of[s.job], s.over.Um)
		out.GaugeUm += s.over.UUm * s.over.UUm / float64(len(all))
	}
	out.GaugeUm = math.Sqrt(out.GaugeUm)
	var means []float64
	within, free, one := 0.0, 0.0, 0.0
	for _, i := range sorted(of) {
		x := of[i]
		m := mean(x)
		means = append(means, m)
		for _, v := range x {
			within += (v - m) * (v - m)
		}
		free += float64(len(x) - 1)
		one += 1 / float64(len(x))
	}
	n := float64(len(means))
	out.Jobs = len(means)
	out.OverUm = mean(means)
	between := variance(means)
	v0 := by.ScatterUm*by.ScatterUm + out.GaugeUm*out.GaugeUm
	out.UOverUm = math.Sqrt((r.PriorJobs*v0 + (n-1)*between) / (r.PriorJobs + n - 1) / n)
	total := between
	if free > 0 {
		total += within / free * (1 - one/n)
	}
	out.ScatterUm, out.Told = without(total, out.GaugeUm, by.ScatterUm)
	if n > 1 {
		out.UScatterUm = spread(total, out.ScatterUm, n-1)
	}
	return out
}

// without takes the doubt u of the gauge off a variance of what it read. It tells
// nothing where the gauge is too coarse to see what shops scatter by rule, and
// reads no more than its own doubt.
func without(total, u, rule float64) (scatter float64, told bool) {
	return math.Sqrt(math.Max(0, total-u*u)), total > 2*u*u || 2*u*u < rule*rule
}

// spread is the standard uncertainty of a scatter s worked out from a variance
// of readings with so many degrees of freedom: that of a variance is
// root(2/free) of it, and ds = d(s^2)/2s; of no scatter it is what the readings
// could hide.
func spread(total, s, free float64) float64 {
	v := total * math.Sqrt(2/free)
	if s*s < v {
		return math.Sqrt(v) / 2
	}
	return v / (2 * s)
}

func sorted[K cmp.Ordered, V any](of map[K]V) []K { return slices.Sorted(maps.Keys(of)) }
