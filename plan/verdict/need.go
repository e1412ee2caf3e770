package verdict

import "rebush/fits/say"

// needs lists the bores that have to be put right: those that are worn or
// wrong, and the other bore of the same axle.
//
// Source: bush both holes of an axle, not one: common practice, no source.
func (c *Case) needs() []*Bore {
	bad := func(b *Bore) bool { return !b.Fixed && (b.Wrong != "" || b.PlayMM > c.Limits.LeaveMM+1e-9) }
	axle := map[string]bool{}
	for i := range c.Bores {
		if b := &c.Bores[i]; bad(b) && b.Shaft != "" {
			axle[b.Shaft] = true
		}
	}
	var out []*Bore
	for i := range c.Bores {
		if b := &c.Bores[i]; bad(b) || !b.Fixed && axle[b.Shaft] {
			out = append(out, b)
		}
	}
	return out
}

// Needed are the names of the bores that have to be put right.
func (c *Case) Needed() []string {
	var out []string
	for _, b := range c.needs() {
		out = append(out, b.Name)
	}
	return out
}

// worst is the bore with the most play of those that may be touched; of equals
// the first by name.
func (c *Case) worst() (name string, play float64) {
	for _, b := range c.Bores {
		if b.Fixed || b.PlayMM <= 0 {
			continue
		}
		if d := b.PlayMM - play; d > 1e-9 || d > -1e-9 && b.Name < name {
			name, play = b.Name, b.PlayMM
		}
	}
	return name, play
}

// complaint says in words what the owner would say, "" where nothing.
func (c *Case) complaint() say.Text {
	var out []say.Text
	for _, w := range []struct {
		yes  bool
		word say.Text
	}{{c.Binds, "binds"}, {c.Noisy, "is noisy"}, {c.Rubs, "rubs"}} {
		if w.yes {
			out = append(out, w.word)
		}
	}
	return and(out)
}

// meshWrong says of the pair that stands furthest from where it would run right
// how it was found, "" where all run; of equals the first by name.
func (c *Case) meshWrong() say.Text {
	var worst *Mesh
	for i := range c.Meshes {
		m := &c.Meshes[i]
		if m.Right {
			continue
		}
		if worst == nil || m.OffMM > worst.OffMM+1e-9 || m.OffMM > worst.OffMM-1e-9 && m.Name < worst.Name {
			worst = m
		}
	}
	if worst == nil {
		return ""
	}
	return say.F("%s stands %v", worst.Name, worst.Words)
}

// boreWrong says what is wrong with a bore whatever its play, "" where nothing;
// of several the first by name.
func (c *Case) boreWrong() say.Text {
	var first *Bore
	for i := range c.Bores {
		if b := &c.Bores[i]; !b.Fixed && b.Wrong != "" && (first == nil || b.Name < first.Name) {
			first = b
		}
	}
	if first == nil {
		return ""
	}
	return first.Wrong
}

// gearsRight says whether every pair is known to run right: with none, or with
// one whose gears were not measured, nobody knows.
func (c *Case) gearsRight() bool {
	for _, m := range c.Meshes {
		if !m.Known || !m.Right {
			return false
		}
	}
	return len(c.Meshes) > 0
}

// mustGo says why the bores cannot stay as they are, "" where they can: because
// something is wrong beside their play, or by play alone. Little play stays
// where the gears mesh; between the two limits only where nothing is complained
// of.
func (c *Case) mustGo() (why say.Text, wrong bool) {
	name, play := c.worst()
	if m := c.meshWrong(); m != "" {
		return m, true
	}
	if b := c.boreWrong(); b != "" {
		return b, true
	}
	switch said := c.complaint(); {
	case play > c.Limits.LookAgainMM+1e-9:
		most := say.MM(c.Limits.LookAgainMM, 2).Bare()
		return say.F("%s has %v of play, %v at most may stay", name, say.MM(play, 2), most), false
	case play > c.Limits.LeaveMM+1e-9 && said != "":
		return say.F("it %v, and %s has %v of play", said, name, say.MM(play, 2)), false
	}
	return "", false
}

// doomed says that the casting itself is going, or is of a metal that this job
// must not cut.
func (c *Case) doomed() bool {
	return c.Condition == "cracked" || c.Condition == "swollen" || c.Condition == "magnesium"
}
