package plan

import (
	"maps"

	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/survey"
)

// changeKind is what sort of thing is done otherwise.
type changeKind string

// The kinds of change.
const (
	measureBetter changeKind = "measure"
	makeAid       changeKind = "make"
	sendOut       changeKind = "send out"
	finishOther   changeKind = "finish"
	otherBush     changeKind = "bush"
)

// change is one thing done otherwise than the job has it.
type change struct {
	Kind  changeKind
	Words say.Text            // what is done, to stand before a colon: "send the boring out"
	Do    func(*job.Job) bool // makes it in a copy of the job; false where nothing comes of it
}

// changes lists what this shop could do otherwise, in the order in which it is
// tried. holes are the holes of the plan as it stands.
func changes(j *job.Job, instr *survey.Instruments, holes []bored) []change {
	out := readings(j, instr)
	sh := j.Shop
	if sh.Jig != "pinned" && (sh.MachineKind == "drill press" || sh.MachineKind == "hand") {
		out = append(out, change{makeAid, "make a jig plate pinned in sound holes", func(j *job.Job) bool {
			j.Shop.Jig = "pinned"
			return true
		}})
	}
	if so := sh.SendOut; so != nil {
		words := say.Text("send the boring out")
		if so.Price > 0 {
			words += say.F(" (%.2f %s)", so.Price, sh.Currency)
		}
		out = append(out, change{sendOut, words, func(j *job.Job) bool {
			j.Shop.SetupU, j.Shop.HoleU = so.LocationU, so.LocationU
			return true
		}})
	}
	out = append(out, change{finishOther, "open the bores to their own axles", finishBy("to its own axle")},
		change{finishOther, "ream the bores after pressing", finishBy("ream")})
	return append(out, bushes(holes)...)
}

// readings are the instruments of the shop that could read better.
func readings(j *job.Job, instr *survey.Instruments) []change {
	var out []change
	if j.Shop.Pins != nil {
		// A pin tells the narrowest: the widest of an oval no pin can tell.
		out = append(out, change{measureBetter, "measure the narrowest with pins", readWith("pins", "narrowest")})
	}
	usual := instr.Default(survey.Middle).U
	for _, in := range j.Shop.Instruments {
		if instr.CanRead(in.Name, survey.Middle) && in.U.Float() < usual {
			out = append(out, change{measureBetter, say.F("take the middles with the %s", in.Name), readWith(in.Name, "centre")})
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
			out = append(out, change{otherBush, say.F("bush %s in %s", code, name), func(j *job.Job) bool {
				j.Choose[name] = code
				return true
			}})
			break
		}
	}
	return out
}

// editable is a copy of a job in which a change may be made: everything that a
// change touches is the copy's own.
func editable(j *job.Job) *job.Job {
	c, shop := *j, *j.Shop
	c.Shop = &shop
	c.Choose = map[string]string{}
	maps.Copy(c.Choose, j.Choose)
	c.Way = map[string]string{}
	maps.Copy(c.Way, j.Way)
	c.Shafts = append([]job.Shaft(nil), j.Shafts...)
	for i := range c.Shafts {
		c.Shafts[i].Bores = append([]job.Bore(nil), c.Shafts[i].Bores...)
		for k := range c.Shafts[i].Bores {
			b := &c.Shafts[i].Bores[k]
			with := map[string]string{}
			maps.Copy(with, b.With)
			b.With = with
		}
	}
	return &c
}
