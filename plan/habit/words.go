package habit

import (
	"math"

	"rebush/fits/say"
)

// Line is what past jobs tell of one thing, in words.
type Line struct {
	Name string   // "reamed", "reamers 5 mm H7", "place"
	Told say.Text // what was found
	Then say.Text // what a plan makes of it
}

// Lines tell what past jobs tell of a shop; then are the habits of the shop with
// it as its record.
func (l Learned) Lines(then Habits, r Rules) (out []Line) {
	add := func(name, makes string, f Found, h Size) {
		if f.Jobs > 0 {
			out = append(out, Line{name, f.words(makes), f.then(h, r)})
		}
	}
	add(string(Reamed), "its reamers leave seats", l.Ways[Reamed], then.Ways[Reamed])
	for _, name := range sorted(l.Reamers) {
		if len(l.Reamers) > 1 {
			add("  "+name, "it leaves seats", l.Reamers[name], then.Seat(Reamed, name))
		}
	}
	add(string(Bored), "seats that it bores come out", l.Ways[Bored], then.Ways[Bored])
	add(string(Milled), "its end mills leave seats", l.Ways[Milled], then.Ways[Milled])
	add("clearance", "finished bores come out", l.Clearance, then.Clearance)
	if l.Place.Jobs > 0 {
		out = append(out, Line{"place", l.Place.words(), l.Place.then(then.Place, r)})
	}
	if s := l.Slips; s.Jobs > 0 {
		told := say.F("%d of %d holes slipped", s.Slipped, s.Holes)
		makes := say.F("plans expect %v", share(then.Slips.Share))
		if !r.Enough(s.Jobs) {
			makes = tooFew(s.Jobs, r) + makes
		}
		out = append(out, Line{"slips", told, makes})
	}
	return out
}

// words say what was found of a size.
func (f Found) words(makes string) say.Text {
	t := say.F("%s %v on the whole, known to %v", makes, f.over(), say.Um(f.UOverUm, 1))
	if f.Told {
		t += say.F("; from hole to hole they scatter by %v", say.Um(f.ScatterUm, 1))
	} else {
		t += say.F("; how far they scatter a gauge good to %v does not tell", say.Um(f.GaugeUm, 1))
	}
	return t + counted(f.Jobs, f.Holes)
}

func (f Found) over() say.Text { return over(f.OverUm) }

// over says how much larger or smaller than it should be.
func over(um float64) say.Text {
	if math.Abs(um) < 0.05 {
		return "as large as they should be"
	}
	if um < 0 {
		return say.F("%v smaller than they should be", say.Um(-um, 1))
	}
	return say.F("%v larger than they should be", say.Um(um, 1))
}

func counted(jobs, holes int) say.Text {
	return say.F(" (%s of %s)", many(holes, "hole"), many(jobs, "job"))
}

func many(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return say.F("%d %ss", n, what).String()
}

// then says what a plan expects of a size.
func (f Found) then(h Size, r Rules) say.Text {
	t := say.F("plans expect %v, known to %v, and a scatter of %v", over(h.OverUm), say.Um(h.UOverUm, 1),
		say.Um(h.ScatterUm, 1))
	if !r.Enough(f.Jobs) {
		t = tooFew(f.Jobs, r) + t
	}
	return t
}

func tooFew(jobs int, r Rules) say.Text {
	return say.F("of the %d jobs that it takes to tell there is %d, so the rule stands: ", int(math.Ceil(r.LeastJobs)), jobs)
}

func share(p float64) say.Text { return say.F("%.2g in a hundred", 100*p) }

// words say what was found of places.
func (p FoundPlace) words() say.Text {
	if !p.Told {
		return say.F("how far holes stand off their targets a gauge good to %v does not tell", say.Um(p.GaugeUm, 0)) +
			counted(p.Jobs, p.Holes)
	}
	both := math.Hypot(p.SetupUm, p.HoleUm)
	t := say.F("a hole stands %v off its target along each axis (one standard deviation), known to %v",
		say.MM(both/1000, 3), say.MM(p.UUm/1000, 3))
	if p.Apart {
		t += say.F("; of that a clamping has %v and each hole in it %v", say.MM(p.SetupUm/1000, 3), say.MM(p.HoleUm/1000, 3))
	} else {
		t += "; with one hole in each clamping nothing tells what of that is the clamping's"
	}
	t += counted(p.Jobs, p.Holes)
	for a, way := range [2][2]string{{"to the right", "to the left"}, {"above", "below"}} {
		if m := p.MeanUm[a]; p.Jobs > 2 && math.Abs(m) > 3*p.UMeanUm {
			to := way[0]
			if m < 0 {
				to = way[1]
			}
			t += say.F("; on the whole they stand %v %s of where they should: look at how the datum is found",
				say.MM(math.Abs(m)/1000, 3), to)
		}
	}
	return t
}

// then says what a plan expects of places.
func (p FoundPlace) then(h Place, r Rules) say.Text {
	t := say.F("plans expect %v of a clamping and %v of a hole", say.MM(h.SetupMM, 3), say.MM(h.HoleMM, 3))
	if !r.Enough(p.Jobs) {
		t = tooFew(p.Jobs, r) + t
	}
	return t
}
