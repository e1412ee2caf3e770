package sheets

import (
	"fmt"
	"strconv"
	"strings"

	"rebush/plan"
	"rebush/sheets/draw"
)

// whereOf names the bore and the clamping of a step.
func whereOf(op plan.Operation) string {
	s := op.Bore
	if op.Setup != "" {
		if s != "" {
			s += ", "
		}
		s += "set-up " + op.Setup
	}
	return s
}

// opFields are the figures of a step, in the order in which the hands need
// them.
func opFields(b *block, p *paper, op plan.Operation, set plan.Setup) []field {
	var list []field
	add := func(name, s string, wide int, f draw.Face, pt float64) {
		if s != "" {
			list = append(list, field{name: name, lines: []string{s}, wide: wide, face: f, pt: pt})
		}
	}
	if at := p.u.at(op.AtMM, false); len(at) > 0 {
		name := "dials, " + p.u.word()
		if op.Approach != "" {
			name += "; " + op.Approach
		}
		list = append(list, field{name: name, lines: at, wide: 3, face: draw.Bold, pt: b.st.figure})
	}
	add("tool as stamped", op.Tool, 3, draw.Bold, 0)
	add("spindle", spindle(op), 2, draw.Bold, 0)
	add("depth", depth(p, op), 1, draw.Regular, 0)
	feed := op.FeedWords
	if feed == "" && op.FeedMMRev != nil {
		feed = number(*op.FeedMMRev) + " mm a turn"
	} else if op.FeedMMRev != nil && !strings.Contains(feed, "turn") {
		feed += " (" + number(*op.FeedMMRev) + " mm a turn)"
	}
	add("feed", feed, 2, draw.Regular, 0)
	if op.ThrustN != nil && *op.ThrustN > 0 {
		add("thrust, about", number(*op.ThrustN)+" N", 1, draw.Regular, 0)
	}
	add("backing", op.Backing, 2, draw.Regular, 0)
	add("lubricant", op.Lubricant, 1, draw.Regular, 0)
	if op.Holding != set.Words {
		add("holding", op.Holding, 3, draw.Regular, 0)
	}
	return list
}

func spindle(op plan.Operation) string {
	if op.RPM == nil {
		return ""
	}
	if *op.RPM == 0 {
		return "by hand, power off"
	}
	s := fmt.Sprintf("%.0f rev/min", *op.RPM)
	if op.RPMIdeal != nil && *op.RPMIdeal > 0 {
		s += fmt.Sprintf(" (ideal %.0f)", *op.RPMIdeal)
	}
	return s
}

func depth(p *paper, op plan.Operation) string {
	if d, ok := read(op.DepthMM); ok {
		return p.u.join(fixed(d, 1)+" mm", fixed(d.DivRound(inch, 8), 2)+" in")
	}
	switch op.Kind {
	case "open", "size seat":
		return "through"
	}
	return ""
}

// opGauges is the strip of limits, go and no-go.
func opGauges(b *block, p *paper, op plan.Operation) {
	var list []field
	add := func(name string, lines []string) {
		if len(lines) > 0 && lines[0] != "" {
			list = append(list, field{name: name, lines: lines, face: draw.Bold, pt: b.st.figure})
		}
	}
	add("limits"+whyOf(p, op), p.u.limits(op.LimitsMM))
	add("go", []string{op.Go})
	add("no go", []string{op.NoGo})
	if len(list) == 0 && op.Gauge == "" {
		return
	}
	if len(list) > 0 {
		// Limits are the widest: they take two columns of four.
		cols := 0
		for i := range list {
			list[i].wide = 1
			if i == 0 && op.LimitsMM != nil {
				list[i].wide = 2
			}
			cols += list[i].wide
		}
		if b.st.large {
			cols = 2
		}
		b.boxed(0.35, 2.4, func(in *block) {
			in.y = in.fields(0, 0, in.Width, max(cols, 2), list)
			in.y -= 2.4
		})
	}
	if op.Gauge != "" {
		b.para("Gauge: "+op.Gauge, draw.Regular, b.st.body)
	}
}

// whyOf leads from limits to where they came from: the short numbers of the
// ledger.
func whyOf(p *paper, op plan.Operation) string {
	what := map[string]string{"size seat": "seat_mm", "size bore": "bore_mm"}[op.Kind]
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

// opBlanks are the lines to write on, and the line for a rest.
func opBlanks(b *block, p *paper, op plan.Operation) {
	unit := "mm"
	if p.u == "in" {
		unit = "in"
	}
	var lines []blankLine
	if op.LimitsMM != nil {
		lines = append(lines, blankLine{"size as made", unit, 2.2})
	}
	lines = append(lines, blankLine{"date", "", 1.2}, blankLine{"initials", "", 0.9})
	const wait = "May wait here."
	w := b.Width
	if op.MayWait {
		ww := draw.Width(wait, draw.Bold, b.st.small)
		w -= ww + 5
		b.Text(b.Width-ww, b.y+b.st.blank-1.2, ww, wait, draw.Bold, b.st.small)
	}
	b.blanks(0, w, lines)
}
