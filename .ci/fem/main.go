// Command fem holds the formulas of fits/press to finite elements of somebody
// else: it makes meshes of pressed bushes at two densities, has CalculiX solve
// them, carries each figure from the two on to a mesh without end, and compares.
// It leaves with 1 where a figure lies outside what is claimed of it.
package main

import (
	"fmt"
	"math"
	"os"
)

// settled is by how much of the formula two meshes may differ. What differs more
// has not settled, and nothing is said by it.
const settled = 0.02

func main() {
	folder, err := os.MkdirTemp("", "fem")
	if err == nil {
		defer os.RemoveAll(folder)
		var bad int
		if bad, err = compare(folder); err == nil && bad > 0 {
			err = fmt.Errorf("%d figures lie outside what is claimed of them", bad)
		}
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "fem:", err)
		os.RemoveAll(folder)
		os.Exit(1)
	}
}

// compare prints the table and says how many rows fail; where a figure lies on
// the unsafe side of its formula it says so, claimed or not. Lengths are printed in
// micrometres, stresses in MPa.
func compare(folder string) (bad int, err error) {
	fmt.Println("Interference 0.012 mm, brass in zinc. a: radius of the seat. Lengths um, stresses MPa.")
	fmt.Println("Ratio: finite elements, carried on to a mesh without end, over the formula.")
	fmt.Printf("%-26s %9s %9s %9s %7s  %-12s %s\n", "", "formula", "coarse", "fine", "ratio", "claimed", "why that")
	for _, s := range studies() {
		fmt.Println(s.name)
		var mesh [2]says
		for i := range mesh {
			a, err := s.deck(i+1).run(folder, "deck")
			if err != nil {
				return bad, fmt.Errorf("%s: %w", s.name, err)
			}
			mesh[i] = s.read(a)
			if p := mesh[i][loosest]; p <= 0 {
				return bad, fmt.Errorf("%s: the parts come apart (%v MPa), which these decks cannot follow", s.name, p)
			}
		}
		for _, r := range s.rows {
			if !r.print(mesh[0], mesh[1]) {
				bad++
			}
		}
	}
	return bad, nil
}

// print says whether the row is as claimed. The error of a stress falls with the
// square of the size of the elements, or faster: so (4 fine - coarse)/3.
func (r row) print(coarse, fine says) bool {
	c, f := coarse[r.what], fine[r.what]
	ratio := (4*f - c) / 3 / r.formula
	_, known := fine[r.what]
	verdict, good := "", true
	switch {
	case !known || math.IsNaN(ratio):
		verdict, good = "  FAILED: not read", false
	case !(math.Abs(f-c) <= settled*math.Abs(r.formula)):
		verdict, good = "  FAILED: not settled", false
	case ratio < r.low || ratio > r.high:
		verdict, good = "  FAILED: outside", false
	}
	if unsafe(r.what, ratio) {
		verdict = "  UNSAFE SIDE" + verdict
	}
	scale := 1.0
	if math.Abs(r.formula) < 0.1 {
		scale = 1000
	}
	fmt.Printf("  %-24s %9.4f %9.4f %9.4f %7.4f  %5.3f..%-5.3f %s%s\n", r.what, scale*r.formula, scale*c, scale*f, ratio,
		r.low, r.high, r.why, verdict)
	return good
}
