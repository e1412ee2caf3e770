package job

import (
	"fmt"

	"rebush/fits/limits"
	"rebush/fits/material"
)

const usualMaterials = "write such as zinc die casting, brass, mild steel, sintered bronze or bearing bronze C93200; `rebush tables materials` lists them all"

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
				r.say(v.pos, "material: "+err.Error(), usualMaterials)
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
			for key, size := range map[string]Size{"bore": j.Bushes[i].Bore, "od": j.Bushes[i].OD} {
				if class := v.get(key + "_class"); class != nil && size.Nominal.Given() {
					if _, err := lim.Class(size.Nominal, class.raw); err != nil {
						r.say(class.pos, fmt.Sprintf("%s_class: %s", key, err), "write a class such as H7 or s7")
					}
				}
			}
		}
	}
	checkInstruments(r, j, root, s)
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
