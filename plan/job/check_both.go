package job

import (
	"strings"

	"rebush/fits/limits"
	"rebush/fits/material"
)

const usualMaterials = "write such as zinc die casting, brass, mild steel, sintered bronze or bearing bronze " +
	"C93200; `rebush tables materials` lists them all"

// checkShopWithJob makes sense of a job with the tables and instruments of its
// shop.
func checkShopWithJob(r *reader, j *Job, root *value, s *Shop) {
	if mats, err := material.New(s.Tables); err != nil {
		r.say(root.pos, "the table of materials does not read: "+err.Error(), "mend the shop's own table")
	} else {
		find := func(v *value) {
			if v == nil {
				return
			}
			if _, err := mats.FindOrInline(v.raw); err != nil {
				right := usualMaterials
				if strings.HasSuffix(err.Error(), ": write which") {
					right = "" // it is said
				}
				r.say(v.pos, "material: "+err.Error(), right)
			}
		}
		find(root.get("chassis").get("material"))
		for _, v := range root.get("shafts").items() {
			find(v.get("material"))
		}
		for _, v := range root.get("bushes").items() {
			find(v.get("material"))
		}
	}
	if lim, err := limits.New(s.Tables); err != nil {
		r.say(root.pos, "the tables of limits do not read: "+err.Error(), "mend the shop's own table")
	} else {
		for i, v := range root.get("bushes").items() {
			checkClass(r, lim, v.get("bore_class"), j.Bushes[i].Bore)
			checkClass(r, lim, v.get("od_class"), j.Bushes[i].OD)
		}
	}
	checkInstruments(r, j, root, s)
	checkSmall(r, j, root, s)
}

func checkClass(r *reader, lim *limits.Limits, class *value, size Size) {
	if class == nil || !size.Nominal.Given() {
		return
	}
	for _, one := range strings.Split(class.raw, " to ") { // "r6 to s7" is either of them
		if _, err := lim.Class(size.Nominal, strings.TrimSpace(one)); err != nil {
			r.say(class.pos, class.name+": "+err.Error(), "write a class such as H7 or s7")
		}
	}
}

// checkInstruments: `with` names an instrument of the shop, or its pins.
func checkInstruments(r *reader, j *Job, root *value, s *Shop) {
	var names []string
	for _, in := range s.Instruments {
		names = append(names, in.Name)
	}
	if s.Pins != nil {
		names = append(names, "pins")
	}
	for _, v := range root.get("shafts").items() {
		for _, side := range Sides {
			w := v.get("bores").get(string(side)).get("with")
			if w == nil {
				continue
			}
			for _, what := range w.order {
				known(r, w.get(what), "instrument", w.get(what).raw, names)
			}
		}
	}
	if made := root.get("made"); made != nil {
		for _, bore := range made.order {
			if w := made.get(bore).get("with"); w != nil {
				known(r, w, "instrument", w.raw, names)
			}
		}
	}
}
