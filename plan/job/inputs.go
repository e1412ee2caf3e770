package job

import "path/filepath"

// Inputs are the names of all files that a job was read from, as they can be
// opened: its own, its pattern, its files of points, its shop and the shop's
// tables. Standard input has none.
func (j *Job) Inputs() []string {
	var out []string
	if j.File != "" && j.File != "standard input" {
		out = append(out, j.File)
	}
	if j.like != "" {
		out = append(out, j.like)
	}
	for _, s := range j.root.get("shafts").items() {
		for _, b := range s.get("bores").entries() {
			if f := b.get("probed").get("file").text(); f != "" {
				out = append(out, beside(j.Folder, f))
			}
		}
	}
	return append(out, j.Shop.Inputs()...)
}

// Inputs are the names of all files that a shop was read from; the built-in
// one has none.
func (s *Shop) Inputs() []string {
	if s == nil || s.File == "" || s.File == builtInName {
		return nil
	}
	out := []string{s.File}
	for _, t := range s.root.get("tables").entries() {
		out = append(out, beside(filepath.Dir(s.File), t.text()))
	}
	return out
}

// entries are the values of a record or named map in the order of the file.
func (v *value) entries() []*value {
	if v == nil {
		return nil
	}
	var out []*value
	for _, name := range v.order {
		out = append(out, v.by[name])
	}
	return out
}
