package route

import (
	"fmt"
	"math"
)

// step is one tool that opens a hole before the seat is made.
type step struct {
	tool   Tool
	kind   string // locate | open
	op     string // plunge | drill | bore
	head   string
	note   string
	ok     bool
	buy    string
	source string
}

// opening lists the tools that take a worn hole to the size before its seat's
// last tool: first one that stands on the target and takes in the whole lobe,
// then what the reamer wants before it.
func (b *builder) opening(x Bore, far bool) []step {
	least := 2 * x.locate()
	low, high, note, src := b.before(x)
	var steps []step
	pre, havePre := b.preTool(x, low, high, far)
	limit := high
	if havePre {
		limit = math.Max(pre.tool.Size, low)
	}
	switch b.s.Machine {
	case "mill":
		loc, ok := b.locating(least, limit, far)
		switch {
		case ok && havePre && sameSize(loc.Size, pre.tool.Size):
			steps = append(steps, step{tool: loc, kind: "locate", op: "plunge", ok: true, source: src})
			return steps
		case ok:
			steps = append(steps, step{tool: loc, kind: "locate", op: "plunge", ok: true})
		case x.Way == "boring head":
			// The boring head itself makes a new axis; it needs no start.
			return []step{{tool: Tool{Name: "boring head", Size: low, Reach: math.Inf(1)}, kind: "locate", op: "bore", head: "boring head", ok: true,
				note: "light cuts until the lobe is gone; a single point does not follow the egg"}}
		default:
			if want, can := standardMill(least, limit); can {
				steps = append(steps, step{tool: Tool{Name: fmt.Sprintf("%s mm end mill (to buy)", trim(want)), Size: want}, kind: "locate", op: "plunge", ok: !far,
					buy: fmt.Sprintf("end mill %s mm, centre-cutting: it must stand on the target and be at least %.2f mm to take in the lobe, at most %.2f", trim(want), least, limit)})
			} else {
				steps = append(steps, step{kind: "locate", ok: false, note: fmt.Sprintf("no end mill fits between %.2f and %.2f mm", least, limit)})
			}
		}
	case "lathe":
		return []step{{tool: Tool{Name: "boring tool", Size: low, Reach: math.Inf(1)}, kind: "locate", op: "bore", head: "faceplate", ok: true,
			note: "counterweight, turn by hand first, guard shut"}}
	default:
		// A slip bush in the jig guides each drill; the first takes in the lobe.
		first, ok := b.firstDrill(least, limit)
		if ok && !(havePre && sameSize(first.Size, pre.tool.Size)) {
			steps = append(steps, step{tool: first, kind: "locate", op: "drill", ok: true, note: "only through its slip bush, lips dubbed"})
		}
		if havePre {
			pre.note = "only through its slip bush, lips dubbed" + sep(pre.note)
			if len(steps) == 0 {
				pre.kind = "locate"
			}
			return append(steps, pre)
		}
		return steps
	}
	if havePre && (len(steps) == 0 || steps[len(steps)-1].tool.Size < pre.tool.Size-1e-9) {
		steps = append(steps, pre)
	} else if !havePre && note != "" && len(steps) > 0 {
		steps[len(steps)-1].note += sep(note)
	}
	return steps
}

// before is the size of the hole that the seat's last tool wants before it.
func (b *builder) before(x Bore) (low, high float64, note, source string) {
	switch x.Way {
	case "reamer":
		lo, hi, src := b.r.ReamStock(x.WaySize, b.s.Machine == "hand")
		return x.WaySize - hi - b.r.DrillOversize, x.WaySize - lo - b.r.DrillOversize,
			fmt.Sprintf("the reamer takes more than the %.2f to %.2f mm it should: go slowly, clear the flutes often", lo, hi), src
	case "end mill":
		return x.WaySize - 0.5, x.WaySize - 0.1, "", ""
	}
	return x.mid() - 0.5, x.mid() - 0.2, "", ""
}

// preTool chooses what opens the hole for the reamer: a drill bought for it,
// an end mill or a drill inside the wanted sizes, else the next drill below.
func (b *builder) preTool(x Bore, low, high float64, far bool) (step, bool) {
	if x.Way != "reamer" {
		return step{}, false
	}
	op := func(t Tool, mill bool) step {
		s := step{tool: t, kind: "open", op: "drill", ok: true}
		if mill {
			s.op = "plunge"
		}
		return s
	}
	least := 2 * x.locate()
	for _, t := range b.s.Drills {
		if sameSize(t.For, x.WaySize) && t.Size >= least-1e-9 && t.Size < x.WaySize && b.canDrill(t) {
			s := op(t, false)
			if t.Size < low-1e-9 || t.Size > high+1e-9 {
				s.note = fmt.Sprintf("bought for this reamer; the table would have %.2f to %.2f mm before it", low, high)
			}
			return s, true
		}
	}
	if b.s.Machine == "mill" {
		for i := len(b.s.EndMills) - 1; i >= 0; i-- {
			t := b.s.EndMills[i]
			if t.Size >= low-1e-9 && t.Size <= high+1e-9 && t.Size >= least-1e-9 && (!far || b.reachOK(t)) {
				return op(t, true), true
			}
		}
	}
	best := -1
	for i, t := range b.s.Drills {
		if t.Size >= low-1e-9 && t.Size <= high+1e-9 && t.Size >= least-1e-9 && b.canDrill(t) {
			best = i
		}
	}
	if best >= 0 {
		return op(b.s.Drills[best], false), true
	}
	for i := len(b.s.Drills) - 1; i >= 0; i-- {
		t := b.s.Drills[i]
		if t.Size < low && t.Size >= least-1e-9 && b.canDrill(t) {
			s := op(t, false)
			s.note = fmt.Sprintf("no drill between %.2f and %.2f mm here: the reamer takes %.2f mm, go slowly and clear it often", low, high, x.WaySize-t.Size)
			return s, true
		}
	}
	return step{}, false
}

func (b *builder) canDrill(t Tool) bool { return b.s.MaxDrill <= 0 || t.Size <= b.s.MaxDrill+1e-9 }

func (b *builder) reachOK(t Tool) bool {
	reach := t.Reach
	if reach <= 0 {
		reach = b.r.ReachDiameters * t.Size
	}
	return reach >= b.j.Width-1e-9
}

// locating is the largest end mill that takes in the lobe and still leaves
// enough for what comes after.
func (b *builder) locating(least, limit float64, far bool) (Tool, bool) {
	for i := len(b.s.EndMills) - 1; i >= 0; i-- {
		t := b.s.EndMills[i]
		if t.Size >= least-1e-9 && t.Size <= limit+1e-9 && (!far || b.reachOK(t)) {
			return t, true
		}
	}
	return Tool{}, false
}

// firstDrill is the smallest drill that takes in the lobe.
func (b *builder) firstDrill(least, limit float64) (Tool, bool) {
	for _, t := range b.s.Drills {
		if t.Size >= least-1e-9 && t.Size <= limit+1e-9 && b.canDrill(t) {
			return t, true
		}
	}
	return Tool{}, false
}

// standardMill is the largest half-millimetre end mill between two sizes.
func standardMill(least, limit float64) (float64, bool) {
	d := math.Floor(limit*2+1e-9) / 2
	return d, d >= least-1e-9 && d >= 1
}

func sameSize(a, b float64) bool { return a > 0 && math.Abs(a-b) < 1e-6 }

func sep(s string) string {
	if s == "" {
		return ""
	}
	return "; " + s
}

func trim(f float64) string {
	s := fmt.Sprintf("%.3f", f)
	for s[len(s)-1] == '0' {
		s = s[:len(s)-1]
	}
	if s[len(s)-1] == '.' {
		s = s[:len(s)-1]
	}
	return s
}
