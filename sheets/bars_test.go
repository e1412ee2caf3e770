package sheets

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"rebush/plan"
	"rebush/plan/route"
	"rebush/sheets/draw"
)

// readBar is what a line of a picture of limits shows, read off the paper with its
// own bar.
type readBar struct {
	name   string
	lo, hi float64 // mm, from the least of its picture
}

// readBars reads the pictures whose heading begins with a word off a document, as
// one would with a rule: the bar gives the scale, the lines their lengths. Each
// heading has two pictures at the most, parted at the middle of the page.
func readBars(t *testing.T, d *draw.Document, word string) (out map[string][2][]readBar) {
	t.Helper()
	out = map[string][2][]readBar{}
	for _, head := range d.Items {
		if head.Kind != draw.KindText || !strings.HasPrefix(head.Text, word) {
			continue
		}
		var texts, drawn []draw.Item
		scale := 0.0
		for _, it := range d.Items {
			if it.Block != head.Block || it.Page != head.Page {
				continue
			}
			level := math.Abs(it.Box.Y+it.Box.H/2-head.Box.Y-head.Box.H/2) < 1.5
			switch {
			case it.Kind == draw.KindText && !level:
				texts = append(texts, it)
			case it.Kind == draw.KindText && it.Text != head.Text:
				f := strings.Fields(it.Text)
				v, err := strconv.ParseFloat(f[0], 64)
				if err != nil {
					t.Fatal(err)
				}
				if f[1] == "in" {
					v *= 25.4
				}
				for _, l := range d.Items {
					if l.Block == head.Block && l.Kind == draw.KindLine && l.Box.H == 0 && l.Box.X >= it.Box.X+it.Box.W &&
						math.Abs(l.Box.Y-head.Box.Y-head.Box.H/2) < 1.5 {
						scale = l.Box.W / v
					}
				}
			case it.Kind != draw.KindText && !level && it.Box.H < 5:
				drawn = append(drawn, it)
			}
		}
		if scale == 0 {
			t.Fatalf("%q has no bar", head.Text)
		}
		out[head.Text] = readRows(texts, drawn, scale)
	}
	return out
}

func readRows(texts, drawn []draw.Item, scale float64) (out [2][]readBar) {
	middle := (marginLeft + draw.A4.Width - marginRight) / 2
	left := [2]float64{math.Inf(1), math.Inf(1)}
	for _, x := range texts {
		r := readBar{name: x.Text, lo: math.Inf(1), hi: math.Inf(-1)}
		half := 0
		if x.Box.X > middle-1 {
			half = 1
		}
		for _, it := range drawn {
			if math.Abs(it.Box.Y+it.Box.H/2-x.Box.Y-x.Box.H/2) > 1.4 || it.Box.X < x.Box.X ||
				half == 0 && len(texts) > 5 && it.Box.X > middle {
				continue
			}
			if it.Kind == draw.KindRect && it.Line > 0 || r.lo > r.hi {
				r.lo, r.hi = it.Box.X, it.Box.X+it.Box.W
			}
		}
		if !strings.Contains(x.Text, " to ") && !strings.Contains(x.Text, "within") { // a mark stands on its size
			r.lo = (r.lo + r.hi) / 2
			r.hi = r.lo
		}
		left[half] = min(left[half], r.lo)
		out[half] = append(out[half], r)
	}
	for half, rows := range out {
		for i := range rows {
			rows[i].lo, rows[i].hi = (rows[i].lo-left[half])/scale, (rows[i].hi-left[half])/scale
		}
	}
	return out
}

// wantBars holds what was read against figures of the plan, by how the names of
// the lines begin.
func wantBars(t *testing.T, what string, rows []readBar, want map[string][2]float64) {
	t.Helper()
	from := math.Inf(1)
	for _, w := range want {
		from = min(from, w[0])
	}
	if len(rows) != len(want) {
		t.Errorf("%s: %d lines, want %d: %+v", what, len(rows), len(want), rows)
	}
	for _, r := range rows {
		for name, w := range want {
			if !strings.HasPrefix(r.name, name) {
				continue
			}
			if math.Abs(r.lo-w[0]+from) > 2e-5 || math.Abs(r.hi-w[1]+from) > 2e-5 {
				t.Errorf("%s: %q is drawn from %.5f to %.5f, want %.5f to %.5f", what, r.name, r.lo+from, r.hi+from, w[0], w[1])
			}
			delete(want, name)
		}
	}
	for name := range want {
		t.Errorf("%s: no line %q", what, name)
	}
}

// What stands in a picture of limits is where the plan has it: seat, bush, bore,
// axle and pins, and the distances of a mesh, read off the paper with the bar.
func TestBarsStandWhereThePlanHasThem(t *testing.T) {
	seats, meshes := 0, 0
	for name, p := range workedOf(demos(t)) {
		for _, u := range []string{"mm", "in"} {
			d := must(Setup(p, Options{Units: u, Paper: "A4"}))
			for head, halves := range readBars(t, d, "Limits, ") {
				s := p.Seats[0]
				for _, x := range p.Seats {
					if strings.HasPrefix(head, "Limits, "+strings.ReplaceAll(x.Bore, ".", ", ")) {
						s = x
					}
				}
				seats++
				wantBars(t, name+", "+u+", "+head, halves[0], seatWant(t, p, s, halves[0]))
				wantBars(t, name+", "+u+", "+head, halves[1], boreWant(t, p, s))
			}
			for head, halves := range readBars(t, d, "Mesh, ") {
				for _, m := range p.Mesh {
					if strings.HasPrefix(head, "Mesh, "+m.Gear+":") {
						meshes++
						wantBars(t, name+", "+u+", "+head, append(halves[0], halves[1]...), meshWant(p, m))
					}
				}
			}
		}
	}
	if seats < 4 || meshes < 4 {
		t.Errorf("only %d pictures of seats and %d of meshes were looked at", seats, meshes)
	}
}

func value(p *plan.Plan, key string) float64 { return p.Ledger[key].Value }

func ends(p *plan.Plan, key string) [2]float64 {
	return [2]float64{value(p, key+"/min"), value(p, key+"/max")}
}

// seatWant are the lines of a seat, from JSON; the pins from their names.
func seatWant(t *testing.T, p *plan.Plan, s plan.Seat, got []readBar) map[string][2]float64 {
	out := map[string][2]float64{"bush": ends(p, "seats/"+s.Bore+"/bush/od_mm")}
	out["seat"] = ends(p, "seats/"+s.Bore+"/seat_mm")
	for _, r := range got {
		if strings.HasPrefix(r.name, "as cut") {
			out["as cut"] = ends(p, "seats/"+s.Bore+"/tool/hole_mm")
		}
	}
	if s.HeldBy == "cap" { // its seat is there; it may be what its gauges say
		for _, op := range p.Operations {
			if op.Bore == s.Bore && op.Kind == route.KindGauge && op.Setup != "finish" {
				out["seat"] = [2]float64{op.LimitsMM.Min.Float(), op.LimitsMM.Max.Float()}
				pinWant(t, p, s, out, route.KindGauge)
				return out
			}
		}
	}
	n := len(out)
	if pinWant(t, p, s, out, route.KindSizeSeat); len(out) == n { // cut in one stroke with the other
		pinWant(t, p, s, out, route.KindGauge)
	}
	return out
}

func boreWant(t *testing.T, p *plan.Plan, s plan.Seat) map[string][2]float64 {
	key := "seats/" + s.Bore + "/"
	out := map[string][2]float64{"bore": ends(p, key+"bore_mm"),
		"axle": {value(p, key+"journal_mm"), value(p, key+"journal_mm")}}
	if s.HeldBy != "cap" { // what is not pressed in does not close
		out["pressed in"] = ends(p, key+"closed_mm")
	}
	pinWant(t, p, s, out, route.KindSizeBore)
	return out
}

// pinWant are the pins of an operation, or plug gauges: "pin 5.99" is 5.99 mm,
// "pin 0.187 in" is 0.187 of 25.4 mm.
func pinWant(t *testing.T, p *plan.Plan, s plan.Seat, out map[string][2]float64, kind route.Kind) {
	t.Helper()
	for _, op := range p.Operations {
		finish := kind == route.KindSizeBore && op.Kind == route.KindGauge && op.Setup == "finish"
		clamped := kind == route.KindSizeSeat && op.Kind == route.KindGauge && op.Setup != "finish"
		if op.Bore != s.Bore || op.Kind != kind && !finish && !clamped ||
			!strings.HasPrefix(op.Go.String(), "pin ") && !strings.HasPrefix(op.Go.String(), "plug gauge ") {
			continue
		}
		for _, n := range []string{op.Go.String(), op.NoGo.String()} {
			f := strings.Fields(strings.TrimPrefix(n, "plug "))
			v, err := strconv.ParseFloat(f[1], 64)
			if err != nil {
				t.Fatal(err)
			}
			if len(f) > 2 && f[2] == "in" {
				v *= 25.4
			}
			out[n] = [2]float64{v, v}
		}
		return
	}
}

func meshWant(p *plan.Plan, m plan.Mesh) map[string][2]float64 {
	key := "mesh/" + m.Gear + "/"
	to, u := value(p, key+"target_centre_mm"), value(p, key+"u_mm")
	out := map[string][2]float64{"new ": {to - u, to + u},
		"may be": {value(p, key+"window_mm/0"), value(p, key+"window_mm/1")}}
	for name, k := range map[string]string{"when new": "original_centre_mm", "as found": "found_centre_mm"} {
		out[name] = [2]float64{value(p, key+k), value(p, key+k)}
	}
	return out
}

// A picture costs no page and tears no card; where there is room it is there.
func TestPicturesCostNoPage(t *testing.T) {
	drawn := 0
	for name, p := range workedOf(demos(t)) {
		for _, o := range everyOption() {
			full := must(Setup(p, o))
			bare := 0
			for _, how := range layouts() {
				x, err := setup(p, o, how, nil)
				if err != nil {
					t.Fatal(err)
				}
				if bare == 0 || x.doc.Pages() < bare {
					bare = x.doc.Pages()
				}
			}
			if full.Pages() > bare && full.Pages() > mostPages(p, o) {
				t.Errorf("%s, %+v: %d pages, %d without pictures", name, o, full.Pages(), bare)
			}
			for _, it := range full.Items {
				if it.Kind == draw.KindText && (strings.HasPrefix(it.Text, "Limits, ") || strings.HasPrefix(it.Text, "Mesh, ")) {
					drawn++
				}
			}
		}
	}
	if drawn < 20 {
		t.Errorf("%d pictures are drawn", drawn)
	}
}
