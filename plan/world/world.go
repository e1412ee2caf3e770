// Package world makes trucks out of nothing: a job file, a shop file, and the
// truth that the two were measured from. It is there to try the planner on
// trucks whose old centres, walls and teeth are known, and it shares nothing
// with it: its hole, its teeth and its doubts are worked out here once more.
//
// A truck is drawn from a seed. The same seed gives the same bytes, and a
// figure that is added to one part of a truck changes no other part.
//
// How often a thing occurs, and how large it is, is meant to be wide rather
// than true to any railway: all of it is common practice without a source, or
// judgement.
package world

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"rebush/plan/job"
)

// Options narrow what is drawn. The zero Options leave all to the seed.
type Options struct {
	Units    string // "mm" or "in": what the job and the shop are written in
	Shop     string // one of Shops
	Complete bool   // every figure that could be measured was measured
	// Apt is a truck as shops are asked to bush: sound, metal enough round every
	// hole, a shop that prepared; one that ran well when it was new, with gears that
	// are now and then not what they seem, and no hole worn on through the teeth.
	Apt bool
}

// World is one truck: what the bench knows, and what is true.
type World struct {
	Seed   uint64
	Job    []byte            // the job file
	Shop   []byte            // the shop file, nil for a job that names none
	Points map[string][]byte // files of points that the job names
	Truth  Truth
	Traits []string // what occurs in it, each once, in order of name

	unit      string
	job, shop *node
	points    map[string][]*node // pairs of places
}

// names of the files that a truck is written to.
const (
	jobFile  = "job.yaml"
	shopFile = "shop.yaml"
)

// Truck draws the truck of a seed.
func Truck(seed uint64, o Options) World {
	m := &maker{seed: seed, o: o, points: map[string][]*node{}, journal: map[string]ticks{}, ends: map[string][2]ticks{},
		traits: map[string]bool{}}
	m.manner()
	m.layOut()
	m.wear()
	m.openDrawer()
	m.openShop()
	m.measure()
	w := World{Seed: seed, Truth: m.truth, unit: m.unit, job: m.job, shop: m.shop, points: m.points}
	for what := range m.traits {
		w.Traits = append(w.Traits, what)
	}
	slices.Sort(w.Traits)
	return w.written()
}

// written prints the files of a truck from its values.
func (w World) written() World {
	var b strings.Builder
	w.job.write(&b, w.unit, "")
	w.Job = []byte(b.String())
	if w.shop != nil {
		b.Reset()
		w.shop.write(&b, w.unit, "")
		w.Shop = []byte(b.String())
	}
	w.Points = map[string][]byte{}
	for name, pairs := range w.points {
		b.Reset()
		b.WriteString("x,y\n")
		for _, p := range pairs {
			b.WriteString(p.items[0].written(w.unit) + "," + p.items[1].written(w.unit) + "\n")
		}
		w.Points[name] = []byte(b.String())
	}
	return w
}

// Files writes the truck into a folder and returns the path of its job file.
func (w World) Files(dir string) (string, error) {
	files := map[string][]byte{jobFile: w.Job}
	if w.Shop != nil {
		files[shopFile] = w.Shop
	}
	for name, data := range w.Points {
		files[name] = data
	}
	for name, data := range files {
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o644); err != nil {
			return "", err
		}
	}
	return filepath.Join(dir, jobFile), nil
}

// Read writes the truck into a folder and reads it as the program does.
func (w World) Read(dir string) (*job.Job, error) {
	path, err := w.Files(dir)
	if err != nil {
		return nil, err
	}
	j, err := job.Read(path, job.Options{})
	if err != nil {
		return nil, fmt.Errorf("truck %d: %w", w.Seed, err)
	}
	return j, nil
}

// Has says whether a thing occurs in this truck.
func (w World) Has(trait string) bool { return slices.Contains(w.Traits, trait) }
