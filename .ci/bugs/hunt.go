package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"sort"
	"sync"
	"time"
)

// An ending says what became of a bug.
type ending struct {
	ID      int
	Room    string
	Bug     string
	Caught  string // the test that failed
	Tests   int    // that reach it
	Changed string // the first command whose output it changes, of a survivor
	Was, Is string // a line of it
}

// A batch is tests of one room that run in one process.
type batch struct {
	room    string
	names   []string
	seconds float64
}

// batches puts the tests that reach a bug in the order in which they are
// tried: those of its own room first, then the quick ones, then by what they
// take.
func batches(b bug, tests []test, slowest float64) ([]batch, int) {
	own, n := "", 0
	if b.code != nil {
		own = b.code.room
	}
	tiers := map[[2]int]map[string]*batch{}
	for _, t := range tests {
		if t.Broken || t.Seconds > slowest || !holds(t.Reaches, b.id) {
			continue
		}
		n++
		tier := 0
		for _, s := range []float64{0.3, 1.5, 6, 25} {
			if t.Seconds > s {
				tier++
			}
		}
		key := [2]int{tier, 1}
		if t.Room == own {
			key[1] = 0
		}
		if tiers[key] == nil {
			tiers[key] = map[string]*batch{}
		}
		if tiers[key][t.Room] == nil {
			tiers[key][t.Room] = &batch{room: t.Room}
		}
		l := tiers[key][t.Room]
		l.names, l.seconds = append(l.names, t.Name), l.seconds+t.Seconds
	}
	keys := make([][2]int, 0, len(tiers))
	for k := range tiers {
		keys = append(keys, k)
	}
	sort.Slice(keys, func(i, j int) bool {
		a, b := keys[i], keys[j]
		return a[0]-2*(1-a[1]) < b[0]-2*(1-b[1]) || a[0]-2*(1-a[1]) == b[0]-2*(1-b[1]) && a[1] < b[1]
	})
	var out []batch
	for _, k := range keys {
		rooms := make([]string, 0, len(tiers[k]))
		for r := range tiers[k] {
			rooms = append(rooms, r)
		}
		sort.Slice(rooms, func(i, j int) bool {
			a, b := tiers[k][rooms[i]], tiers[k][rooms[j]]
			return a.seconds < b.seconds || a.seconds == b.seconds && a.room < b.room
		})
		for _, r := range rooms {
			out = append(out, *tiers[k][r])
		}
	}
	return out, n
}

func holds(sorted []int, n int) bool {
	i := sort.SearchInts(sorted, n)
	return i < len(sorted) && sorted[i] == n
}

// hunt tries every bug that has no ending yet, and keeps each ending as it
// comes, so that a run that was stopped goes on.
func (g ground) hunt(bugs []bug, tests []test, shows *shows, note func(string, ...any)) ([]ending, error) {
	kept := filepath.Join(g.out, "endings.jsonl")
	ended := map[int]ending{}
	if f, err := os.Open(kept); err == nil {
		for d := json.NewDecoder(f); ; {
			var e ending
			if d.Decode(&e) != nil {
				break
			}
			ended[e.ID] = e
		}
		if err := f.Close(); err != nil {
			return nil, err
		}
	}
	f, err := os.OpenFile(kept, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o600)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	var todo []bug
	for _, b := range bugs {
		if _, ok := ended[b.id]; !ok {
			todo = append(todo, b)
		}
	}
	var mu sync.Mutex
	var wrong error
	g.each(len(todo), func(i int) {
		e, err := g.end(todo[i], tests, shows)
		mu.Lock()
		defer mu.Unlock()
		if err != nil {
			wrong = err
			return
		}
		text, err := json.Marshal(e)
		if err == nil {
			_, err = f.Write(append(text, '\n'))
		}
		if err != nil {
			wrong = err
		}
		ended[e.ID] = e
		if len(ended)%25 == 0 {
			note("%d of %d", len(ended), len(bugs))
		}
	})
	var out []ending
	for _, b := range bugs {
		out = append(out, ended[b.id])
	}
	return out, wrong
}

// end is what becomes of one bug.
func (g ground) end(b bug, tests []test, shows *shows) (ending, error) {
	list, n := batches(b, tests, g.slowest)
	if g.quick {
		list = g.quickBatches(b)
	}
	e := ending{ID: b.id, Room: b.room(), Bug: b.String(), Tests: n}
	for _, l := range list {
		limit := time.Duration(60+20*l.seconds) * time.Second
		if failed, which := g.try(l.room, l.names, b.id, limit); failed {
			e.Caught = l.room + " " + which
			return e, nil
		}
	}
	var err error
	e.Changed, e.Was, e.Is, err = shows.differs(b.id)
	return e, err
}
