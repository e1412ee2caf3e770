package main

import (
	"fmt"
	"math"
	"strings"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/job"
)

// picture shows a hole as far as it is known, once the way of its wear is.
func (t *talk) picture(st job.Step) {
	if st.Part != "bore" || st.ID != "worn to" {
		return
	}
	widest, narrowest, deg, ok := t.iv.Hole(st)
	if !ok {
		return
	}
	h := plan.Hole{OldRadius: narrowest / 2}
	for i := range 72 {
		a := float64(i) * math.Pi / 36
		r := narrowest / 2
		if c := math.Cos(a - deg*math.Pi/180); deg >= 0 && c > 0 {
			r += (widest - narrowest) * c
		}
		h.Outline = append(h.Outline, [2]float64{r * math.Cos(a), r * math.Sin(a)})
	}
	words := []string{"seen from the left side", "o wall as it was"}
	if deg >= 0 {
		words = append(words, "# worn away, drawn larger than it is",
			fmt.Sprintf("%v wider than it is narrow", say.MM(widest-narrowest, 3).Trim()))
	}
	for i, l := range sketch(h) {
		if k := i - 2; k >= 0 && k < len(words) {
			l += strings.Repeat(" ", max(2, 24-len(l))) + words[k]
		}
		fmt.Fprintln(t.out, "      "+l)
	}
}
