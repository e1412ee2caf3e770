package main

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"sort"
	"strconv"
	"strings"
)

// answer is what CalculiX says of a deck: how far each node moves, mm, and the
// stress there, MPa (x, y, across or round, shear).
type answer struct {
	*deck
	moved  map[int]point
	stress map[int][4]float64
}

// run writes the deck into a folder, has it solved and reads the result.
func (d *deck) run(folder, name string) (*answer, error) {
	base := filepath.Join(folder, name)
	if err := d.write(base + ".inp"); err != nil {
		return nil, err
	}
	c := exec.Command("ccx", name)
	c.Dir = folder
	c.Env = append(os.Environ(), "OMP_NUM_THREADS=1", "LC_ALL=C")
	out, err := c.CombinedOutput()
	if err != nil || bytes.Contains(out, []byte("*ERROR")) {
		return nil, fmt.Errorf("ccx %s: %v\n%s", name, err, out[max(0, len(out)-1500):])
	}
	text, err := os.ReadFile(base + ".frd")
	if err != nil {
		return nil, err
	}
	a := &answer{deck: d, moved: map[int]point{}, stress: map[int][4]float64{}}
	if err := a.read(string(text)); err != nil {
		return nil, fmt.Errorf("%s.frd: %w", name, err)
	}
	return a, nil
}

// read takes the blocks DISP and STRESS of a result file: lines of a node number
// in ten columns and figures in twelve each.
func (a *answer) read(text string) error {
	block := ""
	for _, line := range strings.Split(text, "\n") {
		switch {
		case strings.HasPrefix(line, " -4"):
			block = strings.Fields(line)[1]
		case strings.HasPrefix(line, " -3"):
			block = ""
		case strings.HasPrefix(line, " -1") && (block == "DISP" || block == "STRESS"):
			n, err := strconv.Atoi(strings.TrimSpace(line[3:13]))
			if err != nil {
				return err
			}
			var v []float64
			for at := 13; at+12 <= len(line); at += 12 {
				x, err := strconv.ParseFloat(strings.TrimSpace(line[at:at+12]), 64)
				if err != nil {
					return err
				}
				v = append(v, x)
			}
			if block == "DISP" {
				a.moved[n-1] = point{v[0], v[1]}
			} else {
				a.stress[n-1] = [4]float64{v[0], v[1], v[2], v[3]}
			}
		}
	}
	for part := range a.inside {
		for n := range a.inside[part] {
			if _, ok := a.stress[n]; !ok {
				return fmt.Errorf("no stress at node %d", n+1)
			}
		}
	}
	return nil
}

// radial and hoop are the stresses across and along a wall whose normal is v; in
// a body that turns, hoop is the one round the axis.
func (a *answer) radial(n int, v point) float64 {
	s := a.stress[n]
	return s[0]*v.x*v.x + s[1]*v.y*v.y + 2*s[3]*v.x*v.y
}

func (a *answer) hoop(n int, v point) float64 {
	s := a.stress[n]
	if a.turns {
		return s[2]
	}
	return s[0]*v.y*v.y + s[1]*v.x*v.x - 2*s[3]*v.x*v.y
}

// mean is that of f over a row of nodes at places x, corner, middle, corner and
// so on: Simpson's rule.
func mean(x, f []float64) float64 {
	sum := 0.0
	for i := 0; i+2 < len(x); i += 2 {
		sum += (x[i+2] - x[i]) / 6 * (f[i] + 4*f[i+1] + f[i+2])
	}
	return sum / (x[len(x)-1] - x[0])
}

// row is a wall: its nodes in order of place, and that place.
func (a *answer) row(part string, holds func(point) bool, place func(point) float64) (nodes []int, at []float64) {
	nodes = a.on(part, holds)
	sort.Slice(nodes, func(i, j int) bool { return place(a.nodes[nodes[i]]) < place(a.nodes[nodes[j]]) })
	for _, n := range nodes {
		at = append(at, place(a.nodes[n]))
	}
	return nodes, at
}

// over gives f of each node.
func over(nodes []int, f func(n int) float64) []float64 {
	v := make([]float64, len(nodes))
	for i, n := range nodes {
		v[i] = f(n)
	}
	return v
}

// most is the greatest of f at the corners of the elements of a row.
func most(f []float64) float64 {
	v := math.Inf(-1)
	for i := 0; i < len(f); i += 2 {
		v = math.Max(v, f[i])
	}
	return v
}

func least(f []float64) float64 {
	v := math.Inf(1)
	for _, x := range f {
		v = math.Min(v, x)
	}
	return v
}

// reading is f at x between the places it is known at, on a straight line.
func reading(at, f []float64, x float64) float64 {
	i := sort.SearchFloat64s(at, x)
	switch {
	case i == 0:
		return f[0]
	case i == len(at):
		return f[len(f)-1]
	}
	return f[i-1] + (f[i]-f[i-1])*(x-at[i-1])/(at[i]-at[i-1])
}
