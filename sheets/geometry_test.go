package sheets

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/sheets/draw"
)

// counts says how much the geometry test looked at.
type counts struct{ pages, items, texts, pairs int }

// checkGeometry holds a document against the rules of paper. It returns what is
// wrong in words.
func checkGeometry(d *draw.Document, c *counts) []string {
	var bad []string
	say := func(format string, args ...any) { bad = append(bad, fmt.Sprintf(format, args...)) }
	margins := draw.Box{X: marginLeft, Y: marginTop, W: d.Paper.Width - marginLeft - marginRight, H: d.Paper.Height - marginTop - marginBottom}
	blockPage := map[int]int{}
	for page := 1; page <= d.Pages(); page++ {
		c.pages++
		items := d.All(page)
		blocks := map[int]draw.Box{}
		for i := range items {
			it := &items[i]
			c.items++
			if !it.Box.Inside(margins) {
				say("page %d: %v %q at %v is outside the margins", page, it.Kind, it.Text, it.Box)
			}
			if it.Block > 0 {
				if p, ok := blockPage[it.Block]; ok && p != page {
					say("block %d is on pages %d and %d", it.Block, p, page)
				}
				blockPage[it.Block] = page
				blocks[it.Block] = join(blocks[it.Block], it.Box)
			}
			if it.Kind != draw.KindText {
				continue
			}
			c.texts++
			if w := draw.Width(it.Text, it.Face, it.PT); w > it.Room+1e-6 {
				say("page %d: %q is %.2f mm wide in %.2f", page, it.Text, w, it.Room)
			}
			checkText(items, i, page, c, say)
		}
		var ids []int
		for id := range blocks {
			ids = append(ids, id)
		}
		for i, a := range ids {
			for _, b := range ids[:i] {
				if blocks[a].Overlaps(blocks[b]) {
					say("page %d: blocks %d and %d overlap", page, a, b)
				}
			}
		}
	}
	return bad
}

// checkText looks for other text on a text, and for lines through it that no
// cleared ground hides.
func checkText(items []draw.Item, i, page int, c *counts, say func(string, ...any)) {
	t := &items[i]
	inner := draw.Box{X: t.Box.X + 0.05, Y: t.Box.Y + 0.15, W: t.Box.W - 0.1, H: t.Box.H - 0.3}
	cleared := -1 // items before this one are hidden under the text
	black := false
	for k := range items {
		g := &items[k]
		if g.Kind == draw.KindRect && g.Fill == draw.White && k < i && t.Box.Inside(g.Box) {
			cleared = k
		}
		if g.Kind == draw.KindRect && g.Fill == draw.Black && k < i && t.Box.Inside(g.Box) {
			black = true
		}
	}
	if t.Light != black {
		say("page %d: %q: white text must stand on black, and no other may", page, t.Text)
	}
	// A figure that nobody printed shows its marks, or the NaN between them.
	if strings.ContainsAny(t.Text, "\x02\x03\x1f") || strings.Contains(t.Text, "NaN") {
		say("page %d: %q holds a figure that was not printed", page, t.Text)
	}
	for k := range items {
		g := &items[k]
		if k == i || k < cleared {
			continue
		}
		c.pairs++
		switch {
		case g.Kind == draw.KindText:
			if k < i && g.Box.Overlaps(t.Box) {
				say("page %d: %q and %q overlap", page, g.Text, t.Text)
			}
		case g.Fill == draw.White:
		case g.Fill == draw.Black && g.Kind == draw.KindRect:
			if !t.Light && g.Box.Overlaps(inner) {
				say("page %d: %q stands on black", page, t.Text)
			}
		default:
			if touches(g, inner) {
				say("page %d: a line goes through %q", page, t.Text)
			}
		}
	}
}

func touches(g *draw.Item, b draw.Box) bool {
	switch g.Kind {
	case draw.KindCircle:
		dx := math.Max(math.Max(b.X-g.X, g.X-b.X-b.W), 0)
		dy := math.Max(math.Max(b.Y-g.Y, g.Y-b.Y-b.H), 0)
		near := math.Hypot(dx, dy)
		far := math.Hypot(math.Max(math.Abs(b.X-g.X), math.Abs(b.X+b.W-g.X)), math.Max(math.Abs(b.Y-g.Y), math.Abs(b.Y+b.H-g.Y)))
		if g.Fill == draw.Black {
			return near < g.R
		}
		return near < g.R && g.R < far
	case draw.KindRect:
		x, y, w, h := g.Box.X, g.Box.Y, g.Box.W, g.Box.H
		p := [][2]float64{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}, {x, y}}
		return pathTouches(p, b)
	}
	p := g.Points
	if g.Closed {
		p = append(append([][2]float64(nil), p...), p[0])
	}
	return pathTouches(p, b)
}

func pathTouches(p [][2]float64, b draw.Box) bool {
	for i := 1; i < len(p); i++ {
		if segmentIn(p[i-1], p[i], b) {
			return true
		}
	}
	return false
}

// segmentIn clips a segment to a box (Liang and Barsky's way) and says whether
// anything is left.
func segmentIn(p, q [2]float64, b draw.Box) bool {
	t0, t1 := 0.0, 1.0
	lo, hi := [2]float64{b.X, b.Y}, [2]float64{b.X + b.W, b.Y + b.H}
	for k := range p {
		d := q[k] - p[k]
		if math.Abs(d) < 1e-12 {
			if p[k] <= lo[k] || p[k] >= hi[k] {
				return false
			}
			continue
		}
		a, z := (lo[k]-p[k])/d, (hi[k]-p[k])/d
		if a > z {
			a, z = z, a
		}
		t0, t1 = max(t0, a), min(t1, z)
	}
	return t0 < t1
}

func join(a, b draw.Box) draw.Box {
	if a == (draw.Box{}) {
		return b
	}
	x, y := min(a.X, b.X), min(a.Y, b.Y)
	return draw.Box{X: x, Y: y, W: max(a.X+a.W, b.X+b.W) - x, H: max(a.Y+a.H, b.Y+b.H) - y}
}

// paperGeometry puts each plan onto every paper, in every size and unit, and
// looks for what breaks a rule of paper.
func paperGeometry(t *testing.T, plans map[string]*plan.Plan) {
	t.Helper()
	var c counts
	for name, p := range plans {
		for _, o := range everyOption() {
			for what, d := range allPaper(t, p, o) {
				for i, bad := range checkGeometry(d, &c) {
					if i == 3 {
						break
					}
					t.Errorf("%s, %s, %+v: %s", name, what, o, bad)
				}
			}
		}
	}
	t.Logf("%d pages, %d items, %d texts, %d pairs looked at", c.pages, c.items, c.texts, c.pairs)
}

func TestGeometry(t *testing.T) {
	paperGeometry(t, hardPlans())
}

// A check that cannot fail is none: the geometry test must see each fault.
func TestGeometrySeesFaults(t *testing.T) {
	faults := map[string]func(b *draw.Board){
		"overlap": func(b *draw.Board) {
			b.Text(0, 10, 50, "one", draw.Regular, 12)
			b.Text(2, 11, 50, "two", draw.Bold, 12)
		},
		"a line goes through": func(b *draw.Board) { b.Text(0, 10, 50, "one", draw.Regular, 12); b.Line(-5, 9, 40, 9, 0.2) },
		"outside the margins": func(b *draw.Board) { b.Text(-marginLeft, 10, 50, "one", draw.Regular, 12) },
		"was not printed": func(b *draw.Board) {
			b.Text(0, 10, 50, printable("worn "+string(say.MM(0.2, 2).Text())), draw.Regular, 12)
		},
		"white text must": func(b *draw.Board) { b.Reversed(0, 10, 50, "one", draw.Regular, 12) },
	}
	for want, f := range faults {
		d := draw.New(draw.A4, "fault")
		d.NewPage()
		b := draw.NewBoard(100)
		f(b)
		d.Place(b, marginLeft, 40)
		got := strings.Join(checkGeometry(d, &counts{}), "; ")
		if !strings.Contains(got, want) {
			t.Errorf("fault %q was not seen; said %q", want, got)
		}
	}
}
