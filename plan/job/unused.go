package job

import (
	"rebush/fits/finding"
	"rebush/fits/say"
)

// KeyNotUsed is the note on a key that no step looks at.
const KeyNotUsed finding.Rule = "job/key not used"

// JournalOfPattern is the caution on an axle that was not measured on this truck.
const JournalOfPattern finding.Rule = "job/journal of the pattern"

// Unused says which keys of a job, and of its shop, the plan does not use: those
// of which the tables of keys say so. No key is passed over in silence, nor is a
// journal that only the pattern gives.
func Unused(j *Job) finding.List {
	var out finding.List
	note := func(v *value, why string) {
		out.Raise(finding.Note, KeyNotUsed, v.pos.place(v.path),
			say.Words("this key is read, but the plan does not use it: "+why), "nothing has to be changed")
	}
	j.root.unused(note)
	for _, s := range j.root.get("shafts").items() {
		if v := s.get("journal"); v != nil && j.like != "" && v.pos.File == j.like {
			out.Raise(finding.Caution, JournalOfPattern, v.pos.place(s.id()),
				say.Words("its journal is that of the pattern: axles wear, and what another truck measured tells little of this one"),
				"measure the axle, and write its journal in the job")
		}
	}
	if j.Shop != nil && j.Shop.File != "" {
		j.Shop.root.unused(note)
	}
	return out
}

// unused visits the values under v that no step uses, in the order of the file.
func (v *value) unused(note func(v *value, why string)) {
	if v == nil {
		return
	}
	for _, item := range v.list {
		item.unused(note)
	}
	for _, name := range v.order {
		item := v.by[name]
		if v.shape.kind == aRecord {
			if k := v.shape.find(name); k.unused != "" {
				note(item, k.unused)
			}
		}
		item.unused(note)
	}
}
