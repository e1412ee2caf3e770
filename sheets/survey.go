package sheets

import (
	"fmt"
	"math"
	"strings"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/sheets/draw"
)

// residuals says how well the points lie on the fitted outline.
func residuals(u units, h plan.Hole) string {
	if len(h.Residuals) == 0 {
		return ""
	}
	out := map[int]bool{}
	for _, i := range h.LeftOut {
		out[i] = true
	}
	worst, sum, n := 0.0, 0.0, 0
	for i, r := range h.Residuals {
		if out[i] {
			continue
		}
		worst = max(worst, math.Abs(r))
		sum += r * r
		n++
	}
	s := ""
	if n > 0 {
		s = "Points lie within " + say.Um(worst*1000, 0).Steady().In(u.said()) + " of the fitted outline, " +
			say.Um(math.Sqrt(sum/float64(n))*1000, 0).Steady().In(u.said()) + " rms. "
	}
	if len(h.LeftOut) > 0 {
		s += count(len(h.LeftOut), "point") + " left out."
	}
	return strings.TrimSpace(s)
}

// noMinus takes the sign from what is printed as nothing.
func noMinus(deg float64) float64 {
	if math.Abs(deg) < 0.005 {
		return 0
	}
	return deg
}

// sidePlay is one figure where both ends of it print alike.
func sidePlay(u units, r *plan.MMRange) []string {
	if r.Min.Given() && r.Min.Equal(r.Max) {
		return u.lines(say.Size(r.Min, 3))
	}
	return u.limits(r)
}

// truckLines compares the truck as found with the truck after the job.
func truckLines(p *paper, pl *plan.Plan) {
	var list []field
	both := func(name string, f plan.FoundAfterMM) {
		a, b := p.u.len(f.Found), p.u.len(f.After)
		if a != "" && b != "" {
			list = append(list, field{name: name, lines: []string{"found " + a, "after " + b}})
		}
	}
	both("wheelbase", pl.Truck.WheelbaseMM)
	both("rock on four wheels", pl.Truck.RockMM)
	for _, s := range pl.Shafts {
		if s.SkewDeg.Found != nil && s.SkewDeg.After != nil {
			list = append(list, field{name: "lean of " + s.Shaft, lines: []string{
				fmt.Sprintf("found %.2f°", noMinus(*s.SkewDeg.Found)), fmt.Sprintf("after %.2f°", noMinus(*s.SkewDeg.After))}})
		}
		if s.SidePlayMM != nil {
			if l := sidePlay(p.u, s.SidePlayMM); len(l) > 0 {
				list = append(list, field{name: "side play of " + s.Shaft, lines: l})
			}
		}
	}
	if len(list) == 0 {
		return
	}
	if p.st.mind > 0 {
		var s []string
		for _, f := range list {
			s = append(s, sentence(f.name)+": "+strings.Join(f.lines, ", "))
		}
		b := p.block()
		b.y = b.write(0, 0.5, b.Width, strings.Join(s, ". ")+".", draw.Regular, b.st.aside())
		b.Reach(b.y)
		p.tight(b)
		return
	}
	cols := 3
	if p.st.large || p.u == "both" {
		cols = 1
	}
	for len(list) > 0 {
		n := min(cols, len(list))
		b := p.block()
		b.y = b.fields(0, 0, b.Width, cols, list[:n])
		p.tight(b)
		list = list[n:]
	}
}
