package plan

import (
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/survey"
)

// better lists what this shop could do otherwise to come right more often, in
// the order in which it is tried. holes are the holes of the plan as it stands.
func better(j *job.Job, w *books, drives []mesh.Drive, holes []bored) []change {
	out := append(gearReadings(j, w, drives), readings(j, w.instr)...)
	if c, ok := jigPlate(j); ok {
		out = append(out, c)
	}
	if c, ok := boringOut(j); ok {
		out = append(out, c)
	}
	out = append(out, openedToAxles(),
		change{Kind: makeIt, Key: "finish ream", Words: "ream the bores after pressing", Verb: "ream", What: "the bores after pressing",
			Do: finishBy("ream"), Shelf: true})
	return append(out, bushes(holes)...)
}

// openedToAxles are bores opened until their own axles run.
func openedToAxles() change {
	return change{Kind: makeIt, Key: "finish own", Words: "open the bores to their own axles", Verb: "open",
		What: "the bores to their own axles", Do: finishBy("to its own axle"), Shelf: true}
}

// jigPlate is a jig for a machine whose tool does not stand on a figure by
// itself.
func jigPlate(j *job.Job) (change, bool) {
	sh := j.Shop
	if sh.Jig == "pinned" || sh.MachineKind != "drill press" && sh.MachineKind != "hand" {
		return change{}, false
	}
	return change{Kind: makeIt, Key: "jig", Words: "make a jig plate pinned in sound holes", Verb: "make",
		What: "a jig plate pinned in sound holes", Do: func(j *job.Job) bool {
			j.Shop.Jig = "pinned"
			forgetPlaces(j.Shop)
			return true
		}}, true
}

// boringOut is the boring done by somebody else.
func boringOut(j *job.Job) (change, bool) {
	so := j.Shop.SendOut
	if so == nil {
		return change{}, false
	}
	c := change{Kind: sendOut, Key: "send out", Words: "send the boring out", Verb: "send out", What: "the boring",
		Do: func(j *job.Job) bool {
			sh := j.Shop
			sh.SetupU, sh.HoleU = so.LocationU, so.LocationU
			forgetPlaces(sh)
			if sh.MachineKind == "drill press" || sh.MachineKind == "hand" {
				sh.Jig = "pinned" // the holes come back in their places
			}
			return true
		}}
	if so.Price > 0 {
		price := so.Price
		c.Cost = &price
	}
	return c, true
}

// readings are the instruments of the shop that could read better.
func readings(j *job.Job, instr *survey.Instruments) []change {
	var out []change
	if j.Shop.Pins != nil {
		// A pin tells the narrowest: the widest of an oval no pin can tell.
		out = append(out, change{Kind: measure, Key: "narrowest pins", Words: "measure the narrowest with pins", Verb: "measure",
			What: "the narrowest with pins", Do: readWith("pins", "narrowest")})
	}
	usual := instr.Default(survey.Middle).U
	if r, ok := anIndicator(j, instr); ok && r.U < usual {
		out = append(out, change{Kind: measure, Key: "centre " + indicator, Words: "take the middles with an indicator",
			Verb: "take", What: "the middles with an indicator", Do: readWith(indicator, "centre")})
	}
	for _, in := range j.Shop.Instruments {
		if instr.CanRead(in.Name, survey.Middle) && in.U.Float() < usual {
			out = append(out, change{Kind: measure, Key: "centre " + in.Name, Words: say.F("take the middles with the %s", in.Name),
				Verb: "take", What: say.F("the middles with the %s", in.Name), Do: readWith(in.Name, "centre")})
		}
	}
	return out
}

// readWith reads one figure of every bore with an instrument.
func readWith(name, key string) func(*job.Job) bool {
	return func(j *job.Job) bool {
		changed := false
		for i := range j.Shafts {
			for k := range j.Shafts[i].Bores {
				if with := j.Shafts[i].Bores[k].With; with[key] != name {
					with[key] = name
					changed = true
				}
			}
		}
		return changed
	}
}

// finishBy brings every bore to size in one way.
func finishBy(finish string) func(*job.Job) bool {
	return func(j *job.Job) bool {
		if j.Finish[""] == finish {
			return false
		}
		j.Finish = map[string]string{"": finish}
		return true
	}
}

// bushes are the next feasible bush of each hole.
func bushes(holes []bored) []change {
	var out []change
	for _, h := range holes {
		if h.Chosen == nil {
			continue
		}
		for _, a := range h.Answers {
			if !a.Feasible || a.Bush.Code == h.Chosen.Bush.Code {
				continue
			}
			code, name := a.Bush.Code, h.Name()
			out = append(out, change{Kind: rule, Key: "bush " + code + " " + name, Words: say.F("bush %s in %s", code, name),
				Verb: "take", What: say.F("bush %s in %s", code, name), Shelf: true, Do: func(j *job.Job) bool {
					j.Choose[name] = code
					return true
				}})
			break
		}
	}
	return out
}
