package sheets

import (
	"strings"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/sheets/draw"
)

// saidOnce is what the block of a set-up says for all its operations, so that
// none of them needs to say it again.
type saidOnce struct {
	holding   say.Text
	lubricant say.Text
	backing   map[string]say.Text // by bore
	safety    int                 // number of the step that said what can hurt in this one too
}

// saidOnceOf finds what the operations of a clamping have in common: one
// lubricant for all, and one backing for each bore. Where the set-up has no
// block of its own, nothing is said once.
func saidOnceOf(pl *plan.Plan, name string) saidOnce {
	said := saidOnce{backing: map[string]say.Text{}}
	set, ok := setupNamed(pl, name)
	if !ok || !set.Clamping && set.Plate == "" {
		return said
	}
	said.holding = set.Words
	oils, first := 0, true
	backs := map[string]map[say.Text]int{}
	for _, op := range pl.Operations {
		if op.Setup != name {
			continue
		}
		if op.Lubricant != "" {
			if first {
				said.lubricant, first = op.Lubricant, false
			}
			if op.Lubricant != said.lubricant {
				said.lubricant = ""
			}
			oils++
		}
		if op.Backing != "" && op.Bore != "" {
			if backs[op.Bore] == nil {
				backs[op.Bore] = map[say.Text]int{}
			}
			backs[op.Bore][op.Backing]++
			if n := backs[op.Bore][op.Backing]; n > 1 && n > backs[op.Bore][said.backing[op.Bore]] {
				said.backing[op.Bore] = op.Backing
			}
		}
	}
	if oils < 2 {
		said.lubricant = ""
	}
	return said
}

// backings lists the backings in the order of the operations, each with the
// bores that have it.
func (s saidOnce) backings(pl *plan.Plan, name string) []field {
	bores := map[string][]string{}
	var order []string
	seen := map[string]bool{}
	for _, op := range pl.Operations {
		text := s.backing[op.Bore].String()
		if op.Setup != name || text == "" || seen[op.Bore] {
			continue
		}
		seen[op.Bore] = true
		if bores[text] == nil {
			order = append(order, text)
		}
		bores[text] = append(bores[text], op.Bore)
	}
	var out []field
	for _, text := range order {
		what := "backing"
		if len(order) > 1 {
			text = strings.Join(bores[text], ", ") + ": " + text
		}
		out = append(out, field{name: what, lines: []string{text}})
	}
	return out
}

// setupBlock says how the chassis is clamped, with the plate drawn as it lies.
func setupBlock(p *paper, pl *plan.Plan, name string, change bool, said saidOnce) {
	s, ok := setupNamed(pl, name)
	if !ok {
		return
	}
	build := func(st style) *block {
		b := p.block()
		b.st = st
		clamped(b, pl, s, change, said)
		return b
	}
	if b := build(p.st); b.Board.Height < p.height()/6 {
		p.glue(b) // a heading and a line or two stay with their first operation
		return
	}
	p.fit(build)
}

func clamped(b *block, pl *plan.Plan, s plan.Setup, change bool, said saidOnce) {
	words := placeWords(pl, s.Name)
	if change {
		words = "Change of set-up: now " + startSmall(words)
	}
	words = oneLine(words)
	b.Bookmark(words, 0, 0)
	b.Anchor("set-up "+s.Name, 0)
	if change {
		b.As(draw.Ground, func() { b.FillRect(0, 0, b.Width, 0.8, draw.Black) })
		b.y = 3
	}
	b.para(words, draw.Bold, b.st.figure)
	b.para(sentence(s.Words.String()), draw.Regular, b.st.body)
	if said.lubricant != "" {
		b.named(0, field{name: "lubricant", lines: []string{said.lubricant.String()}})
	}
	for _, f := range said.backings(pl, s.Name) {
		b.named(0, f)
	}
	if s.Mirrored {
		mirroredBox(b, pl, s)
	}
	if len(pl.Holes) > 0 && s.Plate != "" {
		b.skip(1)
		truckPicture(b, pl, s, 46)
	}
}

// mirroredBox says what turning the chassis over does to the figures.
func mirroredBox(b *block, pl *plan.Plan, s plan.Setup) {
	words := "What was on the left hand now lies on the right, and the picture is drawn that way. "
	_, turned := dialEnd(pl, s)
	switch {
	case turned && byDials(pl):
		words += "x is now dialled from the end that lies on the left: touch that end and zero the dials there before the first figure."
	case turned:
		words += "x now counts from the end that lies on the left."
	default:
		words += "Figures still count from the datum corner, which now lies on the right: touch it again before the first figure."
	}
	b.boxed(1, 1.6, func(in *block) {
		w := in.tag(0, 0, "MIRRORED", in.st.body)
		in.y = max(em(in.st.body)+2.4, in.write(w+3, 0.4, in.Width-w-3, words, draw.Regular, in.st.body))
	})
	b.y -= 1.2
}

// byDials says whether places are set on dials; else a jig or a mark holds
// them.
func byDials(pl *plan.Plan) bool {
	return pl.Job == nil || pl.Job.Shop == nil || pl.Job.Shop.MachineKind == "mill" || pl.Job.Shop.MachineKind == "" || pl.Job.Shop.Readout
}

// placeWords says where an operation is done.
func placeWords(pl *plan.Plan, name string) string {
	if s, ok := setupNamed(pl, name); !ok || s.Plate == "" {
		switch name {
		case "bench", "press", "lathe":
			return "At the " + name
		case "oil":
			return "Oil ways"
		case "finish":
			return "Finishing the bores"
		}
	}
	return "Set-up " + name
}

// startSmall begins with a small letter where a word begins.
func startSmall(s string) string {
	if len(s) > 1 && s[0] >= 'A' && s[0] <= 'Z' && s[1] >= 'a' && s[1] <= 'z' {
		return strings.ToLower(s[:1]) + s[1:]
	}
	return s
}
