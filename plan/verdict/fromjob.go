package verdict

import (
	"rebush/fits/say"
	"rebush/plan/job"
)

// FromJob gathers the case of a job from what its plan found.
func FromJob(j *job.Job, f Facts) Case {
	sh := j.Shop
	c := Case{Condition: condition(j, f), KeepOriginal: j.Chassis.KeepOriginal,
		Binds: j.Binds == job.Yes, Noisy: j.Noisy == job.Yes, Rubs: j.Rubs == job.Yes,
		Asked: j.Binds != job.Unsaid && j.Noisy != job.Unsaid && j.Rubs != job.Unsaid,
		Rate:  sh.PerHour, Currency: sh.Currency, SetupHours: sh.SetupHours, StripHours: sh.StripHours, Value: j.Value,
		Works: f.Works, Limits: f.Rules.Limits}
	c.symptoms(j)
	wrong := c.meshes(f.Meshes)
	for _, h := range f.Holes {
		c.Bores = append(c.Bores, Bore{Name: h.Name, Shaft: h.Shaft, PlayMM: h.PlayMM, Fixed: h.Fixed,
			Wrong: h.wrong(wrong[h.Shaft])})
	}
	for i := range j.Shafts {
		c.axle(&j.Shafts[i], f)
	}
	if w := j.Swap; w != nil {
		c.Other = &Offer{Price: w.Price, Hours: w.Hours, SecondHand: w.SecondHand, Chance: w.Chance}
	}
	return c
}

// condition is what the casting is like, the worst first: as the job says, as
// it has grown, as its metal is.
func condition(j *job.Job, f Facts) string {
	said := j.Chassis.Condition
	switch {
	case said == "cracked":
		return said
	case f.Swollen:
		return "swollen"
	case f.Metal != "" && said != "swollen":
		return f.Metal
	case said == "":
		return "unknown"
	}
	return said
}

// symptoms are the faults beside the bearings that pass for worn holes.
func (c *Case) symptoms(j *job.Job) {
	const worn, short = "that feels just like a worn hole", "what comes of that is no fault of the bearings"
	s := j.Symptoms
	for _, f := range []struct{ value, bad, words, why string }{
		{s.Rims, "loose", "a rim is loose on its insulator or hub", worn},
		{s.Hubs, "loose", "a hub is loose on its axle", worn},
		{s.Gauge, "wide", "the wheels stand too wide on their axle", worn},
		{s.Gauge, "narrow", "the wheels stand too close on their axle", worn},
		{s.Ohms, "leaking", "the insulation of a wheel leaks", short},
		{s.Ohms, "shorted", "the insulation of a wheel is shorted", short},
	} {
		if f.value == f.bad {
			c.Mend = append(c.Mend, Fake{Words: f.words, Why: f.why})
		}
	}
	for _, s := range []struct{ name, value string }{
		{"rims", s.Rims}, {"hubs", s.Hubs}, {"gauge", s.Gauge}, {"ohms", s.Ohms},
	} {
		if s.name == "ohms" && !j.AsksOhms() {
			continue
		}
		if s.value == "" || s.value == "unknown" {
			c.Unchecked = append(c.Unchecked, s.name)
		}
	}
}

// meshes sets every mesh beside its window, and says what is wrong with the
// mesh that each shaft carries.
func (c *Case) meshes(list []Pair) (wrong map[string]say.Text) {
	wrong = map[string]say.Text{}
	for _, p := range list {
		m := Mesh{Name: p.Name, Right: true, Known: p.Known}
		switch {
		case !p.Known:
		case p.FoundMM < p.LowMM-1e-6:
			m.Right, m.OffMM = false, p.LowMM-p.FoundMM
			m.Words = say.F("%v too close", off(m.OffMM))
		case p.FoundMM > p.HighMM+1e-6:
			m.Right, m.OffMM = false, p.FoundMM-p.HighMM
			m.Words = say.F("%v too far apart", off(m.OffMM))
		}
		for _, shaft := range []string{p.On, p.Mate} {
			if !m.Right && shaft != "" {
				wrong[shaft] = say.F("%s stands %v", p.Name, m.Words)
			}
		}
		c.Meshes = append(c.Meshes, m)
	}
	return wrong
}

// off is how far a pair stands off, to a hundredth, and finer where that would
// be nothing.
func off(mm float64) say.Figure {
	if mm < 0.01 {
		return say.MM(mm, 4)
	}
	return say.MM(mm, 2)
}

// axle adds one axle, and the washer that its side play asks for. A bush's
// flange may take the play up; a shim takes it up without cutting.
func (c *Case) axle(s *job.Shaft, f Facts) {
	c.Axles = append(c.Axles, Axle{Name: s.Name, State: s.JournalState, HasNew: f.Lathe, Minutes: f.Rules.AxleMinutes})
	play, ok := f.Play[s.Name]
	if ok && !s.Leave && !c.Rubs && play > 2*f.Rules.SidePlayMM+1e-9 && c.looser(s.Name, play, f.Play) {
		c.shimOn = s.Name
		c.ShimFor, c.ShimMinutes = say.F("side play of %s, %v", s.Name, say.MM(play, 2)), f.Rules.SizeMinutes
	}
}

// looser says whether an axle has more side play than the one that a washer is
// for so far; of equals the first by name.
func (c *Case) looser(name string, play float64, of map[string]float64) bool {
	so := of[c.shimOn]
	return c.shimOn == "" || play > so+1e-9 || play > so-1e-9 && name < c.shimOn
}

// wrong says why a hole has to be done whatever its play; mesh is what is wrong
// with the gears on its shaft.
func (h Hole) wrong(mesh say.Text) say.Text {
	switch {
	case h.Fixed:
		return ""
	case mesh != "":
		return mesh
	case h.BushOut:
		return say.F("the old bush of %s is out", h.Name)
	case !h.Known:
		return say.F("nothing tells where the centre of %s was", h.Name)
	}
	return ""
}
