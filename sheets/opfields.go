package sheets

import (
	"fmt"
	"strconv"
	"strings"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/route"
	"rebush/sheets/draw"
)

// asSaid marks a holding that says no more than its set-up.
const asSaid = "as set up in "

// whereOf names the place of a step, its bore where the step does not name it,
// and what the set-up has already said of it.
func whereOf(pl *plan.Plan, op plan.Operation, said saidOnce) string {
	var s string
	if op.Bore != "" && !strings.Contains(op.Do.String(), op.Bore) {
		s = op.Bore + "; "
	}
	if op.Setup == "" {
		return strings.TrimSuffix(s, "; ")
	}
	s += placeWords(pl, op.Setup)
	var there []string
	if said.holding != "" && (op.Holding == said.holding || strings.HasPrefix(op.Holding.String(), asSaid)) {
		there = append(there, "holding")
	}
	if op.Backing != "" && op.Backing == said.backing[op.Bore] {
		there = append(there, "backing")
	}
	if op.Lubricant != "" && op.Lubricant == said.lubricant {
		there = append(there, "lubricant")
	}
	if len(there) > 0 {
		s += ": " + strings.Join(there, ", ") + " as given there"
	}
	if said.safety > 0 {
		s += "; safety as at " + strconv.Itoa(said.safety)
	}
	return s
}

// opFields are the figures that are set for a step: the dials, then tool, step
// of the spindle and depth, on a grid of six columns.
func opFields(b *block, p *paper, pl *plan.Plan, op plan.Operation) []field {
	var list []field
	place := op.DialMM
	if place == nil {
		place = op.AtMM // a jig holds it: there are no dials
	}
	if at := p.u.at(place, false); len(at) > 0 {
		f := field{name: "dials, " + p.u.word(), lines: at, wide: 6, face: draw.Bold, pt: b.st.big}
		if !byDials(pl) {
			f.name, f.pt = "place, "+p.u.word()+", held by the jig or the mark", b.st.body
		}
		if op.Approach != "" {
			f.name += "; " + op.Approach.String()
		}
		list = append(list, f)
	}
	speed, ideal := spindle(op)
	deep := depth(p, op)
	toolWide := 6
	if !b.st.large {
		switch {
		case speed != "" && deep != "":
			toolWide = 3
		case speed != "" || deep != "":
			toolWide = 4
		}
	}
	if op.Tool != "" && len(list)+len(speed)+len(deep) > 0 {
		list = append(list, field{name: "tool as stamped", lines: []string{op.Tool.String()}, wide: toolWide, face: draw.Bold, pt: b.st.figure})
	}
	if speed != "" {
		wide := 2
		if b.st.large {
			wide = 4
		}
		list = append(list, field{name: "spindle" + ideal, lines: []string{speed}, wide: wide, face: draw.Bold, pt: b.st.figure})
	}
	if deep != "" {
		wide := 1
		if b.st.large || speed == "" {
			wide = 2
		}
		list = append(list, field{name: "depth", lines: strings.Split(deep, "\n"), wide: wide, face: draw.Bold, pt: b.st.figure})
	}
	return list
}

// opLines are what is said of a step in words, each with its name before it.
func opLines(b *block, x float64, p *paper, op plan.Operation, set plan.Setup, said saidOnce) {
	line := func(name, s string) {
		if s != "" {
			b.named(x, field{name: name, lines: []string{s}})
		}
	}
	if op.AtMM == nil && op.RPM == nil && depth(p, op) == "" && op.Tool != "" {
		b.named(x, field{name: "tool", lines: []string{op.Tool.String()}, face: draw.Bold, pt: (b.st.figure + b.st.body) / 2})
	}
	line("feed", feedOf(p.u, op))
	if op.ThrustN != nil && *op.ThrustN > 0 {
		line("thrust", "about "+number(*op.ThrustN)+" N")
	}
	if op.Backing != said.backing[op.Bore] {
		line("backing", op.Backing.String())
	}
	if op.Lubricant != said.lubricant {
		line("lubricant", op.Lubricant.String())
	}
	if op.Holding != set.Words && !strings.HasPrefix(op.Holding.String(), asSaid) {
		line("holding", op.Holding.String())
	}
}

// opWords are the gauge, where it is more than a pin, and what to mind.
func opWords(b *block, x float64, op plan.Operation) {
	if op.Gauge != "" {
		b.named(x, field{name: "gauge", lines: []string{op.Gauge.String()}})
	}
	if op.Note != "" {
		f := field{name: "note", lines: []string{op.Note.String()}}
		if strings.Contains(op.Note.String(), "HALT") {
			f.face = draw.Bold
		}
		b.named(x, f)
	}
}

// named writes a text with its name before it; all such texts of a page begin
// at one column.
func (b *block) named(x float64, f field) {
	in := draw.Width("lubricant", draw.Regular, b.st.small) + 3
	pt := max(f.pt, b.st.body)
	rise := draw.Rise * (pt - b.st.small) * draw.MMPerPt
	b.write(x, b.y+rise, in, f.name, draw.Regular, b.st.small)
	b.y = b.write(x+in, b.y, b.Width-x-in, strings.Join(f.lines, " "), f.face, pt) + 1.2
	b.Reach(b.y)
}

// spindle is the step to set, and what would be ideal.
func spindle(op plan.Operation) (step, ideal string) {
	if op.RPM == nil {
		return "", ""
	}
	if *op.RPM == 0 {
		return "by hand, power off", ""
	}
	if op.RPMIdeal != nil && *op.RPMIdeal > 0 {
		ideal = fmt.Sprintf(" (ideal %.0f)", *op.RPMIdeal)
	}
	return fmt.Sprintf("%.0f rev/min", *op.RPM), ideal
}

func depth(p *paper, op plan.Operation) string {
	if op.DepthMM.Given() {
		return strings.Join(p.u.lines(say.Size(op.DepthMM, 1).About()), "\n")
	}
	switch op.Kind {
	case route.KindOpen, route.KindSizeSeat:
		return "through"
	}
	return ""
}

// whyOf leads from limits to where they came from: the short numbers of the
// ledger.
func whyOf(p *paper, op plan.Operation) string {
	what := map[route.Kind]string{route.KindSizeSeat: "seat_mm", route.KindSizeBore: "bore_mm"}[op.Kind]
	if what == "" {
		return ""
	}
	var out []string
	for _, end := range []string{"min", "max"} {
		if n := p.why["seats/"+op.Bore+"/"+what+"/"+end]; n > 0 {
			out = append(out, strconv.Itoa(n))
		}
	}
	if len(out) == 0 {
		return ""
	}
	return " (why " + strings.Join(out, ", ") + ")"
}
