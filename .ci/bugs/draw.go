package main

import (
	"math"
	"math/rand/v2"
	"sort"
)

// A bug is one that is seeded: in Go or in a table, under a number.
type bug struct {
	id   int
	code *site
	cell *cell
}

func (b bug) room() string {
	if b.code != nil {
		return b.code.room
	}
	return "table " + b.cell.table
}

func (b bug) String() string {
	if b.code != nil {
		return b.code.String()
	}
	c := b.cell
	return c.file + ":" + itoa(c.line) + " " + c.column + " " + quote(c.was) + " to " + quote(c.is)
}

// draw takes n bugs of code and m of cells. A room has a share by the root of
// the number of its places, at least three where there are enough, and within a room the kinds of bug
// take turns, so that neither a large room nor a common operator has it all.
func draw(code []site, tables []cell, n, m int, seed uint64) []bug {
	dice := rand.New(rand.NewPCG(seed, 1))
	byRoom := map[string][]int{}
	for i, s := range code {
		byRoom[s.room] = append(byRoom[s.room], i)
	}
	var bugs []bug
	for _, i := range take(byRoom, n, func(i int) string { return code[i].kind }, dice) {
		bugs = append(bugs, bug{code: &code[i]})
	}
	bugs = apart(bugs)
	byTable := map[string][]int{}
	for i, c := range tables {
		byTable[c.table] = append(byTable[c.table], i)
	}
	for _, i := range take(byTable, m, func(i int) string { return tables[i].column }, dice) {
		bugs = append(bugs, bug{cell: &tables[i]})
	}
	for i := range bugs {
		bugs[i].id = i + 1
	}
	return bugs
}

// take draws about n indexes over the groups, the kinds of a group in turn.
func take(groups map[string][]int, n int, kind func(int) string, dice *rand.Rand) []int {
	names := make([]string, 0, len(groups))
	sum := 0.0
	for name, list := range groups {
		names = append(names, name)
		sum += math.Sqrt(float64(len(list)))
	}
	sort.Strings(names)
	least := min(3, n/(4*len(names))) // none where a sample is small
	dice.Shuffle(len(names), func(i, j int) { names[i], names[j] = names[j], names[i] })
	var out []int
	due, given := 0.0, 0
	for _, name := range names {
		list := groups[name]
		due += float64(n) * math.Sqrt(float64(len(list))) / sum
		share := int(math.Round(due)) - given
		given += share
		share = min(max(share, least), len(list))
		byKind := map[string][]int{}
		var kinds []string
		for _, i := range list {
			if byKind[kind(i)] == nil {
				kinds = append(kinds, kind(i))
			}
			byKind[kind(i)] = append(byKind[kind(i)], i)
		}
		sort.Strings(kinds)
		dice.Shuffle(len(kinds), func(i, j int) { kinds[i], kinds[j] = kinds[j], kinds[i] })
		for _, k := range kinds {
			l := byKind[k]
			dice.Shuffle(len(l), func(i, j int) { l[i], l[j] = l[j], l[i] })
		}
		for turn := 0; share > 0; turn++ {
			for _, k := range kinds {
				if turn < len(byKind[k]) && share > 0 {
					out = append(out, byKind[k][turn])
					share--
				}
			}
		}
	}
	return out
}

// apart drops bugs that stand on the very same range as another.
func apart(bugs []bug) []bug {
	type place struct {
		file     string
		from, to int
	}
	taken := map[place]bool{}
	var out []bug
	for _, b := range bugs {
		p := place{b.code.file, b.code.from, b.code.to}
		if !taken[p] {
			taken[p] = true
			out = append(out, b)
		}
	}
	return out
}
