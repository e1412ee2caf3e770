package sheets

import (
	"regexp"
	"strings"

	"rebush/plan/job"
)

// bench puts the names of a plan into those of the bench: the hole "front
// axle.left" is the front axle's left one.
type bench struct {
	names *strings.Replacer // nil: no names
}

// benchOf knows the holes of a job, or of all jobs of a batch.
func benchOf(jobs ...*job.Job) bench {
	var pairs, names, features []string
	for _, j := range jobs {
		if j == nil {
			continue
		}
		for _, s := range j.Shafts {
			names = append(names, s.Name)
			if c := sentence(s.Name); c != s.Name {
				names = append(names, c)
			}
		}
		for _, f := range j.Chassis.Features {
			features = append(features, f.Name)
		}
	}
	if len(names) == 0 {
		return bench{}
	}
	for _, n := range names {
		l, r := n+".left", n+".right"
		for _, with := range []string{", ", " and "} {
			pairs = append(pairs, l+with+r, n+", left and right", r+with+l, n+", right and left")
		}
	}
	for _, n := range append(names, features...) {
		pairs = append(pairs, n+".left", n+", left", n+".right", n+", right")
	}
	return bench{names: strings.NewReplacer(pairs...)}
}

// BenchNames puts the names in texts of a plan as paper has them: "front axle,
// left".
func BenchNames(j *job.Job) func(string) string { return benchOf(j).say }

// say puts a text into the words of the bench.
func (b bench) say(s string) string {
	if b.names != nil {
		s = b.names.Replace(s)
	}
	return stored.ReplaceAllString(s, "${1}the bush from $2")
}

// stored is a bush that goes by the place it lies in.
var stored = regexp.MustCompile(`(^|[a-z,:(] )bush ((?:drawer|box|tray|bin) (?:[0-9]+|[A-Z])\b)`)

// noMark leaves the signs of a program out of a text: the marks round a key, and
// in which row of a table a figure stands.
func noMark(s string) string {
	return tableRow.ReplaceAllString(strings.ReplaceAll(s, "`", ""), "")
}

var tableRow = regexp.MustCompile(` \([a-z_]+:\d+(?:, [a-z_]+:\d+)*\)`)
