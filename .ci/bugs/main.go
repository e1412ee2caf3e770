// Command bugs seeds bugs into a copy of the project, all of them in one
// build, turns them on one at a time, and says which of them the tests catch.
// See .ci/mutate.
package main

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"sort"
	"strconv"
	"strings"
	"time"
)

func itoa(n int) string       { return strconv.Itoa(n) }
func quote(s string) string   { return strconv.Quote(s) }
func note(f string, a ...any) { fmt.Printf(time.Now().Format("15:04:05 ")+f+"\n", a...) }

func main() {
	seed := flag.Uint64("seed", 1, "that the bugs are drawn by")
	code := flag.Int("code", 450, "bugs in Go")
	table := flag.Int("cells", 150, "bugs in cells of tables")
	out := flag.String("out", "", "folder to work in; a run that was stopped goes on there")
	slowest := flag.Float64("slowest", 60, "tests that take more seconds by themselves are left out")
	workers := flag.Int("workers", 2, "bugs tried at once")
	least := flag.Float64("least", 0, "share of those that change an output that has to be caught, in per cent")
	ledger := flag.String("equivalent", ".ci/bugs/equivalent.txt", "survivors that were argued to change nothing wrong")
	quick := flag.Bool("quick", false, "a small sample: quick tests only, and not found out what each reaches")
	flag.Parse()
	o := options{*seed, *code, *table, *out, *slowest, *workers, *least, *ledger, *quick}
	if err := o.whole(); err != nil {
		fmt.Fprintln(os.Stderr, "bugs:", err)
		os.Exit(1)
	}
}

type options struct {
	seed        uint64
	code, cells int
	out         string
	slowest     float64
	workers     int
	least       float64
	ledger      string
	quick       bool
}

func (o options) whole() error {
	root, err := os.Getwd()
	if err != nil {
		return err
	}
	out, err := filepath.Abs(o.out)
	if err != nil {
		return err
	}
	places, err := sites(root)
	if err != nil {
		return err
	}
	tables, err := cells(root)
	if err != nil {
		return err
	}
	bugs := draw(places, tables, o.code, o.cells, o.seed)
	note("%d bugs by seed %d, of %d places in Go and %d cells", len(bugs), o.seed, len(places), len(tables))
	g := ground{out: out, tree: filepath.Join(out, "tree"), workers: o.workers, slowest: o.slowest,
		quick: o.quick}
	if bugs, err = g.prepare(root, bugs); err != nil {
		return err
	}
	var tests []test
	if !o.quick {
		if tests, err = g.tests(note); err != nil {
			return err
		}
		note("reached by tests: %d bugs", reached(bugs, tests))
	}
	s, err := newShows(g)
	if err != nil {
		return err
	}
	endings, err := g.hunt(bugs, tests, s, note)
	if err != nil {
		return err
	}
	return report(endings, tests, o.slowest, o.least, filepath.Join(root, o.ledger))
}

var plantedLine = regexp.MustCompile(`planted\.[A-Za-z]+(?:\[\w+\])?\((\d+)`)

// prepare copies the project, plants and builds. A bug that the compiler
// refuses is no bug: it is left out.
func (g *ground) prepare(root string, bugs []bug) ([]bug, error) {
	for range 12 {
		if err := os.RemoveAll(g.tree); err != nil {
			return nil, err
		}
		if err := copyTree(root, g.tree); err != nil {
			return nil, err
		}
		if err := plant(g.tree, bugs); err != nil {
			return nil, err
		}
		err := g.build()
		if err == nil {
			return bugs, nil
		}
		refused := g.refused(err.Error())
		if len(refused) == 0 {
			return nil, err
		}
		note("the compiler refuses %d", len(refused))
		var left []bug
		for _, b := range bugs {
			if !refused[b.id] {
				left = append(left, b)
			}
		}
		bugs = left
	}
	return nil, fmt.Errorf("the copy does not build")
}

var errorAt = regexp.MustCompile(`(?m)^(?:\./)?([\w./-]+\.go):(\d+):\d+: `)

// refused are the bugs on the lines that the compiler names.
func (g ground) refused(said string) map[int]bool {
	out := map[int]bool{}
	for _, m := range errorAt.FindAllStringSubmatch(said, -1) {
		text, err := os.ReadFile(filepath.Join(g.tree, m[1]))
		if err != nil {
			continue
		}
		line, _ := strconv.Atoi(m[2])
		all := strings.Split(string(text), "\n")
		for at := line - 1; at >= max(0, line-4) && at < len(all); at-- {
			found := plantedLine.FindAllStringSubmatch(all[at], -1)
			for _, f := range found {
				id, _ := strconv.Atoi(f[1])
				out[id] = true
			}
			if len(found) > 0 {
				break
			}
		}
	}
	return out
}

// copyTree copies the files that git knows, as they stand in the work tree.
func copyTree(root, to string) error {
	list := exec.Command("git", "ls-files", "-z")
	list.Dir = root
	text, err := list.Output()
	if err != nil {
		return err
	}
	for _, name := range strings.Split(strings.Trim(string(text), "\x00"), "\x00") {
		data, err := os.ReadFile(filepath.Join(root, name))
		if os.IsNotExist(err) {
			continue
		}
		if err != nil {
			return err
		}
		info, err := os.Stat(filepath.Join(root, name))
		if err != nil {
			return err
		}
		dest := filepath.Join(to, name)
		if err := os.MkdirAll(filepath.Dir(dest), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(dest, data, info.Mode().Perm()|0o200); err != nil {
			return err
		}
	}
	return nil
}

func reached(bugs []bug, tests []test) int {
	by := map[int]bool{}
	for _, t := range tests {
		if !t.Broken {
			for _, n := range t.Reaches {
				by[n] = true
			}
		}
	}
	n := 0
	for _, b := range bugs {
		if by[b.id] {
			n++
		}
	}
	return n
}

// report prints shares by room, and the survivors.
func report(endings []ending, tests []test, slowest, least float64, ledger string) error {
	text, err := os.ReadFile(ledger)
	if err != nil && !os.IsNotExist(err) {
		return err
	}
	type tally struct{ n, caught, changed, argued int }
	rooms, all := map[string]*tally{}, &tally{}
	for _, e := range endings {
		if rooms[e.Room] == nil {
			rooms[e.Room] = &tally{}
		}
		for _, t := range []*tally{rooms[e.Room], all} {
			t.n++
			switch {
			case e.Caught != "":
				t.caught++
			case e.Changed != "" && strings.Contains(string(text), e.Bug):
				t.argued++
			case e.Changed != "":
				t.changed++
			}
		}
	}
	names := make([]string, 0, len(rooms))
	for r := range rooms {
		names = append(names, r)
	}
	sort.Strings(names)
	row := func(name string, t *tally) {
		share := 100.0
		if t.caught+t.changed > 0 {
			share = 100 * float64(t.caught) / float64(t.caught+t.changed)
		}
		fmt.Printf("%-32s %4d seeded %4d caught %4d missed %4d argued %4d change nothing  %5.1f %%\n", name, t.n, t.caught,
			t.changed, t.argued, t.n-t.caught-t.changed-t.argued, share)
	}
	for _, r := range names {
		row(r, rooms[r])
	}
	row("all", all)
	for _, t := range tests {
		if t.Broken || t.Seconds > slowest {
			fmt.Printf("not used: %s %s (%.0f s, fails without a bug: %v)\n", t.Room, t.Name, t.Seconds, t.Broken)
		}
	}
	for _, e := range endings {
		if e.Caught == "" && e.Changed != "" {
			fmt.Printf("MISSED %s (%d tests reach it)\n  %s\n  - %s\n  + %s\n", e.Bug, e.Tests, e.Changed, e.Was, e.Is)
		}
	}
	for _, e := range endings {
		if e.Caught == "" && e.Changed == "" {
			fmt.Printf("nothing changed: %s (%d tests reach it)\n", e.Bug, e.Tests)
		}
	}
	if share := 100 * float64(all.caught) / float64(max(1, all.caught+all.changed)); share < least {
		return fmt.Errorf("%.1f %% caught, at least %.0f %% wanted", share, least)
	}
	return nil
}
