package survey

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/fits/table"
	"rebush/plan/job"
)

// Growth is how a distance of two shafts compares with a sound sister's, taken
// in one way. It is reported, never cured by moving holes.
type Growth struct {
	Level   finding.Level // "" where there is nothing to say
	Rule    string        // the default that decided it
	MM      float64       // the distance
	U       float64       // standard uncertainty of it less the sister's, mm: within twice that nothing is said
	By      string        // how it was had, in words
	Percent float64       // longer than the sister's, of that
	Limit   float64       // of Percent, that it passes
	OtherMM float64       // the same distance had another way, where both cannot be right; 0 nothing disputes it
}

// Swollen says that the casting has grown beyond what may be machined, and that
// nothing else that was measured disputes it.
func (g Growth) Swollen() bool { return g.Level == finding.Stop && g.OtherMM == 0 }

// Grown compares a job's wheelbase with a sound sister's, by the old centres
// and as it was measured, and returns the one that says more. What differs by no
// more than twice its doubt says nothing. A stop forbids machining.
func Grown(j *job.Job, holes []Hole, rules *table.Rules, tools *Instruments) (Growth, finding.List) {
	w := j.Chassis.Wheelbase
	if w == nil || !w.Sister.Given() {
		return Growth{}, nil
	}
	sister := w.Sister.Float()
	// A distance between two holes that an instrument read has the doubt of both;
	// a sister's holes stand off besides, as those of a drawing do.
	read := math.Sqrt2 * tools.Default(Middle).U
	uSister := math.Hypot(read, math.Sqrt2*rules.V("u_as_drawn_mm"))
	var views []Growth
	uCentres := 0.0
	a, b := ShaftCentre(holes, w.Between[0]), ShaftCentre(holes, w.Between[1])
	if a != nil && b != nil {
		line := math.Atan2(b[1]-a[1], b[0]-a[0])
		uCentres = math.Sqrt(shaftVariance(holes, w.Between[0], line) + shaftVariance(holes, w.Between[1], line))
		views = append(views, grown(dist(*a, *b), math.Hypot(uCentres, uSister), sister, "between old centres", rules))
	}
	if w.Found.Given() {
		views = append(views, grown(w.Found.Float(), math.Hypot(read, uSister), sister, "as measured", rules))
	}
	rank := map[finding.Level]int{"": 0, finding.Note: 1, finding.Caution: 2, finding.Stop: 3}
	var worst, other Growth
	for _, v := range views {
		if rank[v.Level] > rank[worst.Level] {
			worst, v = v, worst
		}
		if v.By != "" {
			other = v
		}
	}
	var said finding.List
	may := math.Max(sister*rules.V("growth_note_percent")/100, 2*math.Hypot(uCentres, read))
	if other.By != "" && math.Abs(other.MM-worst.MM) > may {
		worst.OtherMM = other.MM
	}
	if worst.Level != "" {
		sayGrowth(&said, j, worst, other, sister)
	}
	return worst, said
}

// grown says how grave one distance is, u the doubt of what it differs by. No
// casting shrinks, so what comes out short is at most a caution.
func grown(mm, u, sister float64, by string, rules *table.Rules) Growth {
	g := Growth{MM: mm, U: u, By: by, Percent: longer(mm, sister)}
	if math.Abs(mm-sister) <= 2*u {
		return g
	}
	for _, step := range []struct {
		rule  string
		level finding.Level
	}{
		{"growth_note_percent", finding.Note},
		{"growth_caution_percent", finding.Caution},
		{"growth_stop_percent", finding.Stop},
	} {
		if g.Percent < 0 && step.level == finding.Stop {
			break
		}
		if limit := rules.V(step.rule); math.Abs(g.Percent) > limit+1e-9 {
			g.Level, g.Limit, g.Rule = step.level, limit, step.rule
		}
	}
	return g
}

// shaftVariance is that of ShaftCentre along a direction, mm^2.
func shaftVariance(holes []Hole, shaft string, dir float64) float64 {
	sin, cos := math.Sincos(dir)
	along := func(c [2][2]float64) float64 {
		return cos*(c[0][0]*cos+c[0][1]*sin) + sin*(c[1][0]*cos+c[1][1]*sin)
	}
	sum, n := 0.0, 0.0
	for _, h := range holes {
		if h.Shaft.Name == shaft && h.Known {
			// Each hole has its cross covariance with the other: both make it twice.
			sum += along(h.Worn.Cov) + along(h.Cross)
			n++
		}
	}
	return sum / math.Max(1, n*n)
}

// longer is by how much a distance is longer than the sister's, in percent of
// that.
func longer(mm, sister float64) float64 { return dim.Sig9(100 * (mm - sister) / sister) }

// ShaftCentre is the mean of the old centres of a shaft's bores, nil where none
// is known.
func ShaftCentre(holes []Hole, shaft string) *[2]float64 {
	var sum [2]float64
	n := 0.0
	for _, h := range holes {
		if h.Shaft.Name == shaft && h.Known {
			sum[0] += h.Worn.O[0]
			sum[1] += h.Worn.O[1]
			n++
		}
	}
	if n == 0 {
		return nil
	}
	return &[2]float64{sum[0] / n, sum[1] / n}
}

// sayGrowth says the gravest view; other is the second one, of no By where there
// is but one.
func sayGrowth(l *finding.List, j *job.Job, g, other Growth, sister float64) {
	text := say.F("the wheelbase is %v %s, a sound sister has %v: %+.2f %%", say.MM(g.MM, 3), g.By,
		say.MM(sister, 3).Bare(), g.Percent)
	fix := say.Text("a swollen casting is not cured by moving holes; look for cracks, and measure the sister again")
	if g.Percent < 0 {
		// No casting shrinks: one of the two was measured wrong.
		fix = "a casting does not shrink: measure this wheelbase and the sister's again"
	}
	if g.OtherMM > 0 {
		text += say.F("; %s it is %v, and both cannot be right", other.By, say.MM(other.MM, 3))
		fix = "measure the wheelbase and the middles of the holes again before anything is cut"
	}
	l.Raise(g.Level, RuleGrowth, j.PlaceAt("chassis", "chassis/wheelbase"), text, fix).
		Against(g.Percent, g.Limit, "%")
}
