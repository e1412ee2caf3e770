package sheets

import (
	"strings"

	"rebush/fits/finding"
	"rebush/plan"
	"rebush/sheets/draw"
)

// cautions stand on the first page, each in words with its cure; what is said of
// several places stands once.
func cautions(p *paper, pl *plan.Plan) {
	n := 0
	for _, f := range alike(pl.Findings, p.bench) {
		if f.Level != finding.Caution {
			continue
		}
		b := p.block()
		if n == 0 {
			b.para("Cautions", draw.Bold, p.st.body)
			b.y -= 1.5
		}
		cautionBlock(b, p, f)
		if n++; n == 1 {
			p.add(b)
		} else {
			p.tight(b)
		}
	}
}

// cautionBlock is one finding in words, with its cure and what was tried.
func cautionBlock(b *block, p *paper, f finding.Finding) {
	head := sentence(headOf(f.Rule))
	if f.Where != "" {
		head += ", " + f.Where
	}
	b.dashedBold(head+".", cautionWords(f))
	for i, t := range f.Tried {
		if i == mostCures {
			break
		}
		b.dashed("Tried: " + ended(t.Said(p.currency, !p.stop).String()))
	}
}

// mostCures is how many tried cures of one caution paper lists.
const mostCures = 2

// cautionWords is what a finding says and what would cure it.
func cautionWords(f finding.Finding) string {
	s := ended(noMark(sentence(f.Text.String())))
	if fix := f.Else().String(); fix != "" {
		s += " Cure: " + ended(noMark(fix))
	}
	return s
}

// dashedBold writes a line behind a dash, its head in bold on a line with the
// words after it.
func (b *block) dashedBold(head, s string) {
	const in = 4
	pt := b.st.body
	head = b.bench.say(head)
	w := draw.Width(printable(head), draw.Bold, pt)
	b.As(draw.Ground, func() { b.FillRect(0.6, b.y+em(pt)/2-0.4, 1.8, 0.8, draw.Black) })
	if w > 0.5*b.Width {
		b.y = b.raw(in, b.y, b.Width-in, head, draw.Bold, pt) + lead(pt) - em(pt)
		b.y = b.write(in, b.y, b.Width-in, s, draw.Regular, pt) + 0.9
		b.Reach(b.y)
		return
	}
	// The first line goes on behind the head.
	words := strings.Fields(printable(b.bench.say(s)))
	line, k := "", 0
	for ; k < len(words); k++ {
		next := strings.TrimSpace(line + " " + words[k])
		if draw.Width(next, draw.Regular, pt) > b.Width-in-w-1.6 {
			break
		}
		line = next
	}
	b.raw(in, b.y, b.Width-in, head, draw.Bold, pt)
	low := b.raw(in+w+1.6, b.y, b.Width-in-w-1.6, line, draw.Regular, pt)
	if rest := strings.Join(words[k:], " "); rest != "" {
		low = b.raw(in, low+lead(pt)-em(pt), b.Width-in, rest, draw.Regular, pt)
	}
	b.y = max(low, b.y+em(pt)) + 0.9
	b.Reach(b.y)
}

// notes are the notes of a plan.
func notes(p *paper, pl *plan.Plan) []*block {
	var out []*block
	for _, f := range alike(pl.Findings, p.bench) {
		if f.Level != finding.Note {
			continue
		}
		b := p.block()
		b.st.body = b.st.aside() + 0.5
		cautionBlock(b, p, f)
		out = append(out, b)
	}
	return out
}
