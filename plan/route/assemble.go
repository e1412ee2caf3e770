package route

import (
	"fmt"
	"math"
)

// lineUp puts long rods through the finished bores: they show lean and
// parallelism at once.
func (b *builder) lineUp() {
	b.setup = "bench"
	for _, shaft := range b.shafts() {
		mine := b.on(shaft)
		if len(mine) < 2 {
			continue
		}
		size := ""
		for i, x := range mine {
			d := math.Floor((x.Limits[0]-0.005)*100+1e-6) / 100
			if i == 0 {
				size = fmt.Sprintf("%.2f", d)
			} else if s := fmt.Sprintf("%.2f", d); s != size {
				size += " / " + s
			}
		}
		long := "long"
		if b.j.Width > 0 {
			long = fmt.Sprintf("%.0f mm long", 10*math.Ceil(0.4*b.j.Width))
		}
		b.add(Operation{Kind: "line up", Do: fmt.Sprintf("Line up %s with a test rod through both bores", shaft),
			Tool: fmt.Sprintf("test rod %s mm, %s", size, long), Minutes: b.r.Gauging,
			Gauge: fmt.Sprintf("turns free; level at both plates to %.2f mm, parallel to a rod in the other axle", b.r.LineUp)})
	}
}

// assemble puts the axles in and presses the wheels, which is the last step
// that cannot be taken back.
func (b *builder) assemble() {
	b.setup = "bench"
	var wheels []Shaft
	for _, s := range b.j.Shafts {
		mine := b.on(s.Name)
		if len(mine) == 0 {
			continue
		}
		b.add(Operation{Kind: "assemble", Do: b.axleWords(s), Tool: "fingers, oil", Minutes: b.r.Gauging, Note: b.passNote(s, mine)})
		if s.Wheels {
			wheels = append(wheels, s)
		}
	}
	for _, s := range wheels {
		o := Operation{Kind: "wheels", Do: fmt.Sprintf("Press the wheel of %s to gauge", s.Name), Tool: "wheel press, flat support under the hub", Minutes: b.r.Press,
			Backing:    "flat plate under the hub; a hollow cup splits it",
			GaugeFirst: fmt.Sprintf("%s turns freely both ways, end float is there, bores written down.", s.Name)}
		if s.Gear {
			o.GaugeFirst = fmt.Sprintf("%s turns freely both ways, the mesh runs a whole turn without a tight spot, end float is there, bores written down.", s.Name)
		}
		if s.BackToBack > 0 {
			o.Gauge = fmt.Sprintf("back to back %s mm, as it was", trim(s.BackToBack))
		} else {
			o.Gauge = "back to back as measured before stripping"
		}
		if s.Insulated == "left" || s.Insulated == "right" {
			o.Note = fmt.Sprintf("insulated wheel on the %s", s.Insulated)
		}
		b.add(o)
	}
}

// leads is the end that goes through first: the smaller, else the one whose
// wheel comes off, "" where either may.
func (s Shaft) leads() string {
	l, r := s.Journal[0], s.Journal[1]
	switch {
	case l > 0 && r > 0 && l < r-1e-9:
		return "left"
	case l > 0 && r > 0 && r < l-1e-9:
		return "right"
	case s.Insulated == "left" || s.Insulated == "right":
		return s.Insulated
	}
	return ""
}

func (b *builder) axleWords(s Shaft) string {
	lead := s.leads()
	if lead == "" {
		return fmt.Sprintf("Oil the bores and put %s in", s.Name)
	}
	return fmt.Sprintf("Oil the bores and put %s in from the %s, %s end first", s.Name, other(lead), lead)
}

// passNote says what has to pass through what.
func (b *builder) passNote(s Shaft, mine []Bore) string {
	note := ""
	if lead := s.leads(); lead != "" && !sameSize(s.Journal[0], s.Journal[1]) && s.Journal[0] > 0 && s.Journal[1] > 0 {
		note = fmt.Sprintf("larger end last, so the wheel on the %s is the one that is off", lead)
		if s.Insulated == other(lead) {
			note += " although the other is the insulated one"
		}
	}
	for i, side := range []string{"left", "right"} {
		for _, x := range mine {
			if x.Side == side && s.MustPass[i] > 0 {
				note = join(note, fmt.Sprintf("%s mm must pass the %s bore, which is at least %.3f", trim(s.MustPass[i]), side, up3(x.Limits[0])))
			}
		}
	}
	if s.Gear {
		note = join(note, "the gear goes on between the plates as the axle comes through; thin strips on both sides centre it against the draft")
	}
	return note
}
