package plan

import (
	"fmt"

	"rebush/plan/chance"
	"rebush/plan/job"
)

// variants are the plans with one thing changed that this shop could change,
// each made again from an edited job.
func (m *maker) variants() []chance.Variant {
	var out []chance.Variant
	try := func(change string, edit func(*job.Job) bool) {
		j := clone(m.j)
		if !edit(j) {
			return
		}
		v, err := newMaker(j, Options{NoChance: true}, m.books)
		if err != nil {
			return
		}
		v.chain()
		if !v.p.OK {
			return
		}
		if model, ok := v.model(); ok && sameBores(model, m) {
			out = append(out, chance.Variant{Change: change, Model: model})
		}
	}
	with := func(name string, keys ...string) func(*job.Job) bool {
		return func(j *job.Job) bool {
			changed := false
			for i := range j.Shafts {
				for k := range j.Shafts[i].Bores {
					b := &j.Shafts[i].Bores[k]
					for _, key := range keys {
						if b.With[key] != name {
							b.With[key] = name
							changed = true
						}
					}
				}
			}
			return changed
		}
	}
	if m.j.Shop.Pins != nil {
		// A pin tells the narrowest: the widest of an oval no pin can tell.
		try("measure the narrowest with pins", with("pins", "narrowest"))
	}
	for _, in := range m.j.Shop.Instruments {
		if k := m.instr.kindOf(in.Name); k != nil && k.canRead("centre") && in.U.Float() < m.readDefault("centre") {
			try("take the middles with the "+in.Name, with(in.Name, "centre"))
		}
	}
	if sh := m.j.Shop; sh.Jig != "pinned" && (sh.MachineKind == "drill press" || sh.MachineKind == "hand") {
		try("make a jig plate pinned in sound holes", func(j *job.Job) bool { j.Shop.Jig = "pinned"; return true })
	}
	if so := m.j.Shop.SendOut; so != nil {
		change := "send the boring out"
		if so.Price > 0 {
			change += fmt.Sprintf(" (%.2f %s)", so.Price, m.j.Shop.Currency)
		}
		try(change, func(j *job.Job) bool {
			j.Shop.SetupU, j.Shop.HoleU = so.LocationU, so.LocationU
			return true
		})
	}
	for _, f := range []struct{ change, finish string }{
		{"open the bores to their own axles", "to its own axle"}, {"ream the bores after pressing", "ream"},
	} {
		try(f.change, func(j *job.Job) bool {
			if j.Finish[""] == f.finish {
				return false
			}
			j.Finish = map[string]string{"": f.finish}
			return true
		})
	}
	m.otherBushes(try)
	return out
}

func (m *maker) readDefault(what string) float64 {
	r, err := m.instr.named("", what)
	if err != nil {
		return 0
	}
	return r.u
}

// otherBushes tries the next feasible bush of each bore.
func (m *maker) otherBushes(try func(string, func(*job.Job) bool)) {
	for _, b := range m.bores {
		if b.chosen == nil {
			continue
		}
		for i := range b.answers {
			a := &b.answers[i]
			if !a.Feasible || a.Bush.Code == b.chosen.Bush.Code {
				continue
			}
			code, name := a.Bush.Code, b.name()
			try(fmt.Sprintf("bush %s in %s", code, name), func(j *job.Job) bool {
				choose := map[string]string{name: code}
				for k, v := range j.Choose {
					if k != name {
						choose[k] = v
					}
				}
				j.Choose = choose
				return true
			})
			break
		}
	}
}

func sameBores(model chance.Model, m *maker) bool {
	n := 0
	for _, s := range m.shafts {
		n += len(s.bores)
	}
	return len(model.Bores) == n
}

// clone copies what an edited job may change.
func clone(j *job.Job) *job.Job {
	c := *j
	shop := *j.Shop
	c.Shop = &shop
	c.Shafts = append([]job.Shaft(nil), j.Shafts...)
	for i := range c.Shafts {
		c.Shafts[i].Bores = append([]job.Bore(nil), c.Shafts[i].Bores...)
		for k := range c.Shafts[i].Bores {
			b := &c.Shafts[i].Bores[k]
			with := map[string]string{}
			for key, v := range b.With {
				with[key] = v
			}
			b.With = with
		}
	}
	return &c
}
