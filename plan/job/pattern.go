package job

import (
	_ "embed"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"sync"

	"rebush/fits/table"
)

// A pattern is a file that gives what every truck of a kind shares. It is written
// as a job is, by keys and units of its own, and a job names it under `like`.

//go:embed data/measured.csv
var measuredTable []byte

// ofOneTruck are the places of a job that are of one truck.
var ofOneTruck = sync.OnceValue(func() []table.Row {
	t, err := table.Parse("measured", "measured.csv", measuredTable)
	if err != nil {
		panic("job: " + err.Error())
	}
	return t.Rows
})

// oneTruck is the row of a place that is of one truck, by its keys without the
// names of items: "shafts/bores/left/widest".
func oneTruck(path []string) (table.Row, bool) {
	for _, row := range ofOneTruck() {
		keys := strings.Split(row.Get("key"), "/")
		if len(keys) != len(path) {
			continue
		}
		same := true
		for i, k := range keys {
			same = same && (k == "*" || k == path[i])
		}
		if same {
			return row, true
		}
	}
	return table.Row{}, false
}

// withPattern puts what the pattern of a job gives under the job. The job alone
// comes back where it names none, or one that cannot be read.
func (r *reader) withPattern(root *value, name, folder string) (*value, *FileError) {
	v := root.get("like")
	if v == nil {
		return root, nil
	}
	path := beside(folder, v.raw)
	switch {
	case v.raw == "-":
		r.say(v.pos, "like: standard input cannot be the pattern", "name a file")
		return root, nil
	case sameFile(path, name):
		r.say(v.pos, "like: this file is named as its own pattern", "name the file that holds what all trucks of the kind share, "+
			"or take the line away")
		return root, nil
	}
	p, fileErr := readPattern(path)
	if fileErr != nil {
		fileErr.Pos = v.pos
		return root, fileErr
	}
	r.problems = append(r.problems, p.r.problems...)
	if p.root == nil || p.r.gaps {
		r.gaps = true
		return root, nil
	}
	r.likeFile, r.likeLines = path, p.r.lines
	where := maps.Clone(p.r.where)
	maps.Copy(where, r.where)
	r.where = where
	shared := *p.root
	shared.by = maps.Clone(shared.by)
	for _, key := range []string{"rebush", "units", "like"} { // each file speaks of itself there
		delete(shared.by, key)
	}
	shared.order = nil
	for _, key := range p.root.order {
		if _, there := shared.by[key]; there {
			shared.order = append(shared.order, key)
		}
	}
	return merged(&shared, root), nil
}

func sameFile(a, b string) bool {
	x, err := os.Stat(a)
	if err != nil {
		return false
	}
	y, err := os.Stat(b)
	return err == nil && os.SameFile(x, y)
}

// Pattern is a pattern as it was read.
type Pattern struct {
	root *value
	r    *reader
}

// readPattern reads a pattern, and tells what a pattern may not say.
func readPattern(path string) (*Pattern, *FileError) {
	data, err := load(path, nil)
	if err != nil {
		return nil, &FileError{Path: path, Err: err}
	}
	return parsePattern(path, data), nil
}

func parsePattern(path string, data []byte) *Pattern {
	p := &Pattern{}
	p.root, p.r = readPart(path, data, jobShape)
	if p.root != nil {
		if like := p.root.get("like"); like != nil {
			p.r.say(like.pos, "like: a pattern refers to no other", "copy what that one gives into this file")
		}
		if p.root.missing("rebush") && !p.r.gaps {
			p.r.say(p.root.pos, "rebush is missing", "a pattern begins with rebush: 1, as a job does")
		}
		p.refuse(p.root, nil)
	}
	p.r.problems.quote(path, p.r.lines)
	return p
}

// refuse tells what is of one truck in a pattern, each by its line.
func (p *Pattern) refuse(v *value, path []string) {
	if v == nil {
		return
	}
	for _, item := range v.list {
		p.refuse(item, path)
	}
	if v.shape.kind != aRecord {
		return
	}
	for _, key := range v.order {
		here := append(append([]string(nil), path...), key)
		if row, is := oneTruck(here); is && row.Get("pattern") == "refuse" {
			p.r.say(v.by[key].pos, fmt.Sprintf("%s: this is %s: a pattern gives what all trucks of its kind share", key, row.Get("of")),
				"write it in the job of each truck")
			continue
		}
		p.refuse(v.by[key], here)
	}
}

// ReadPattern reads a pattern by itself. The error is a *FileError or Problems.
func ReadPattern(path string) (*Pattern, error) {
	p, fileErr := readPattern(path)
	if fileErr != nil {
		return nil, fileErr
	}
	if len(p.r.problems) > 0 {
		return nil, p.r.problems.sorted()
	}
	return p, nil
}

// Gives says whether a pattern says a key, by its path with names:
// "chassis/material", "shafts/front axle/journal".
func (p *Pattern) Gives(path string) bool {
	_, there := p.r.where[path]
	return there
}

// Names are those of the things in a list of a pattern: shafts, gears or bushes.
func (p *Pattern) Names(list string) []string {
	var out []string
	for _, item := range p.root.get(list).items() {
		out = append(out, item.id())
	}
	return out
}

// Like is the file of the pattern of a job, "" where it has none.
func (j *Job) Like() string { return j.like }

// besideOf resolves a name that stands at a place from the folder of its file.
func (j *Job) besideOf(v *value) string {
	if v != nil && j.like != "" && v.pos.File == j.like {
		return beside(filepath.Dir(j.like), v.raw)
	}
	return beside(j.Folder, v.text())
}
