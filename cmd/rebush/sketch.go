package main

import (
	"math"
	"strings"

	"rebush/plan"
)

// sketchLegend says what the letters of a sketch are.
const sketchLegend = "In the pictures, seen from the left side: o wall as it was, # worn away (drawn larger than it " +
	"is), + old centre."

// sketch draws a hole in letters: o is the old wall, # the wall that is worn
// away, + the old centre. The wear is drawn larger than it is.
func sketch(h plan.Hole) []string {
	const rows, cols = 9, 19
	deepest := 0.0
	for _, q := range h.Outline {
		deepest = max(deepest, math.Hypot(q[0]-h.Old[0], q[1]-h.Old[1])-h.OldRadius)
	}
	worn := func(angle float64) bool {
		best, off := 0.0, math.Inf(1)
		for _, q := range h.Outline {
			x, y := q[0]-h.Old[0], q[1]-h.Old[1]
			if d := math.Abs(math.Remainder(math.Atan2(y, x)-angle, 2*math.Pi)); d < off {
				off, best = d, math.Hypot(x, y)-h.OldRadius
			}
		}
		return deepest > 0.002 && best > deepest/3
	}
	out := make([]string, rows)
	for i := range rows {
		line := make([]byte, cols)
		for k := range cols {
			y, x := 1.45*(1-2*float64(i)/(rows-1)), 1.45*1.1*(2*float64(k)/(cols-1)-1)
			r, c := math.Hypot(x, y), byte(' ')
			switch bad := r > 0.8 && r < 1.6 && worn(math.Atan2(y, x)); {
			case i == rows/2 && k == cols/2:
				c = '+'
			case bad && r > 1.05 && r < 1.5:
				c = '#'
			case !bad && math.Abs(r-1) < 0.2:
				c = 'o'
			}
			line[k] = c
		}
		out[i] = strings.TrimRight(string(line), " ")
	}
	for len(out) > 0 && out[0] == "" {
		out = out[1:]
	}
	for len(out) > 0 && out[len(out)-1] == "" {
		out = out[:len(out)-1]
	}
	return out
}
