package job

import (
	"sort"
	"strings"

	"rebush/fits/finding"
	"rebush/fits/say"
)

// notYet lists the keys that are read and checked but that no step of the plan
// looks at, each with why. A * stands for one name. A job that gives one is
// told so: no key is passed over in silence.
var notYet = map[string]string{
	"bushes/*/wall_finish_um": "the roughness of the table of rules is taken for every bush",
	"gears/*/pinion/face":     "the contact of the faces is not worked out",
	"gears/*/worm/hand":       "the mesh comes out the same for either hand on square shafts",
	"shafts/*/back_to_back":   "the wheel gauge is proved on the bench",
	"shafts/*/bores/*/lift":   "it is held against the diameters when the file is read, and goes no further",
	"shafts/*/material":       "every shaft is taken to be steel",
	"shafts/*/pull":           "the load alone says which way the shaft is pressed",
}

// Unused says which keys of a job, and of its shop, the plan does not use.
func Unused(j *Job) []finding.Finding { return unused(j, notYet) }

func unused(j *Job, registry map[string]string) []finding.Finding {
	var out []finding.Finding
	gather := func(where map[string]Pos) {
		var paths []string
		for path := range where {
			paths = append(paths, path)
		}
		sort.Slice(paths, func(i, k int) bool {
			a, b := where[paths[i]], where[paths[k]]
			if a.Line != b.Line {
				return a.Line < b.Line
			}
			return a.Column < b.Column
		})
		for _, path := range paths {
			why, ok := matching(path, registry)
			if !ok {
				continue
			}
			pos := where[path]
			out = append(out, finding.Finding{Level: finding.Note, Rule: "job/key not used", Where: path,
				Text: say.Words("this key is read, but the plan does not use it: " + why),
				Fix:  "nothing has to be changed", File: pos.File, Line: pos.Line, Column: pos.Column})
		}
	}
	gather(j.where)
	if j.Shop != nil && j.Shop.File != "" {
		gather(j.Shop.where)
	}
	return out
}

func matching(path string, registry map[string]string) (string, bool) {
	if why, ok := registry[path]; ok {
		return why, true
	}
	parts := strings.Split(path, "/")
	for pattern, why := range registry {
		want := strings.Split(pattern, "/")
		if len(want) != len(parts) {
			continue
		}
		same := true
		for i := range want {
			same = same && (want[i] == "*" || want[i] == parts[i])
		}
		if same {
			return why, true
		}
	}
	return "", false
}
