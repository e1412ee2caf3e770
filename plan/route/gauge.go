package route

import (
	"fmt"
	"math"
	"strings"
)

// gauge names what proves a hole to be inside its limits: the smallest pin
// that must enter and the largest that must not. Where the pins' steps are too
// coarse for the limits it says what does prove it.
func (b *builder) gauge(lim [2]float64, what string) (gauge, goes, stops string) {
	scrap := "ream a hole in scrap with the same tool and try the very bush in it: it must not go in by hand and must start square"
	p := b.s.Pins
	if p == nil || lim[0] < p.From-1e-9 || lim[1] > p.To+1e-9 {
		if g, n, ok := b.shanks(lim); ok {
			return "drill shanks, each measured with the micrometer first", g, n
		}
		if what == "seat" {
			return scrap, "", ""
		}
		return "the very axle: it must turn freely and show no shake", "", ""
	}
	in := p.From + math.Ceil((lim[0]-p.From)/p.Step-1e-6)*p.Step
	out := p.From + math.Floor((lim[1]-p.From)/p.Step+1e-6)*p.Step
	places := 2
	if r := p.Step * 100; math.Abs(r-math.Round(r)) > 1e-6 {
		places = 3
	}
	name := func(f float64) string { return fmt.Sprintf("pin %.*f", places, f) }
	if in < out-1e-9 {
		return "pins", name(in), name(out)
	}
	// No pair of pins stands inside the limits: they bracket the hole, and do
	// not prove it.
	goes, stops = name(math.Floor((lim[0]-p.From)/p.Step+1e-6)*p.Step+p.From), name(math.Ceil((lim[1]-p.From)/p.Step-1e-6)*p.Step+p.From)
	if what == "seat" {
		return fmt.Sprintf("pins bracket it only (steps of %s mm do not prove %.0f um): %s", trim(p.Step), (lim[1]-lim[0])*1000, scrap), goes, stops
	}
	return fmt.Sprintf("pins bracket it only (steps of %s mm): the very axle proves it", trim(p.Step)), goes, stops
}

// shanks finds drills whose shanks bracket a hole. A drill is never over its
// nominal, and under it by no more than 18 um to 6 mm (h8).
func (b *builder) shanks(lim [2]float64) (goes, stops string, ok bool) {
	const under = 0.018
	var g, n *Tool
	for i := range b.s.Drills {
		t := &b.s.Drills[i]
		if t.Size-under >= lim[0]-1e-9 && t.Size <= lim[1]+1e-9 && g == nil {
			g = t
		}
		if t.Size-under >= lim[1]-1e-9 && n == nil {
			n = t
		}
	}
	if g == nil || n == nil {
		return "", "", false
	}
	return g.Name + " shank", n.Name + " shank", true
}

// gaugeSeats proves every seat before anything is pressed.
func (b *builder) gaugeSeats() {
	b.setup = "bench"
	b.last = ""
	for _, x := range b.j.Bores {
		if x.Way == "strap" {
			continue
		}
		lim := x.Seat
		o := Operation{Kind: "gauge", Bore: x.Name, Do: fmt.Sprintf("Gauge the seat of %s before anything is pressed", x.Name),
			Limits: &lim, Minutes: b.r.Gauging, MayWait: true, HoleMM: x.mid(),
			Note: "write the size as made on this sheet: it is what the next repairer will want to know"}
		o.Gauge, o.Go, o.NoGo = b.gauge(lim, "seat")
		if x.Way == "old seat" {
			o.Do = fmt.Sprintf("Measure the old bush's seat in %s", x.Name)
			o.Note = "nothing is cut here: this seat is the best datum there is"
		}
		b.add(o)
	}
	if len(b.j.Bores) > 0 {
		b.add(Operation{Kind: "wash", Do: "Wash and dry the chassis; no chip or burr at a seat or an oil hole", Tool: "brush", Minutes: b.r.Gauging, MayWait: true,
			Note: "old paint may hold lead: wipe wet, no dry sanding"})
	}
}

func boxFor(o Operation) string {
	var parts []string
	if o.Go != "" {
		parts = append(parts, "go "+o.Go)
	}
	if o.NoGo != "" {
		parts = append(parts, "no-go "+o.NoGo)
	}
	if len(parts) == 0 {
		return o.Gauge
	}
	return strings.Join(parts, ", ")
}
