package world

import "math"

// maker carries one truck from its seed to its files.
type maker struct {
	seed     uint64
	o        Options
	unit     string  // of the files
	inch     bool    // the truck was designed in inches
	care     float64 // chance that a figure is left out
	bushed   bool    // when it was made
	cut      float64 // how much of the upper corners is off
	jams     bool    // teeth have no room as found
	rails    float64 // 90: the axles are pressed up in their holes; 270: down
	truth    Truth
	journal  map[string]ticks // as measured, by bore
	drawer   []bush
	prepared bool // the shop laid in bushes and tools for this truck
	shop     *node
	bench    bench
	job      *node
	points   map[string][]*node
	ends     map[string][2]ticks // journals of a shaft as measured
	traits   map[string]bool
}

func (m *maker) stream(name string) stream { return streamOf(m.seed, name) }

// note keeps what occurs, for the shares.
func (m *maker) note(what string) { m.traits[what] = true }

// missing decides whether a figure is left out.
func (m *maker) missing(what string) bool {
	if m.o.Complete || !m.stream("missing "+what).yes(m.care) {
		return false
	}
	m.note("missing " + trailing(what))
	return true
}

// trailing is the last word of the name of a figure, for the shares.
func trailing(what string) string {
	for i := len(what) - 1; i >= 0; i-- {
		if what[i] == '/' {
			return what[i+1:]
		}
	}
	return what
}

// manner decides in which unit and how carefully the owner writes.
func (m *maker) manner() {
	s := m.stream("manner")
	m.inch = s.yes(0.3)
	m.unit = "mm"
	if s.yes(0.1) != m.inch { // a few write in the other unit
		m.unit = "in"
	}
	m.care = among(s, share[float64]{0.5, 0}, share[float64]{0.35, 0.05}, share[float64]{0.15, 0.18})
	if m.o.Units != "" {
		m.unit = m.o.Units
	}
	m.note("units " + m.unit)
}

// rounded brings a figure to the steps that an instrument shows in the unit of
// the job: so many hundred-thousandths of a mm, or of an inch.
func (m *maker) rounded(mm, stepMM, stepInch float64) ticks {
	step := float64(perMM) * stepMM
	if m.unit == "in" {
		step = math.Round(float64(perInch) * stepInch)
	}
	return ticks(math.Round(mm*float64(perMM)/step) * math.Round(step))
}

// tenth and whole steps of usual figures.
func (m *maker) fine(mm float64) ticks   { return m.rounded(mm, 0.001, 0.0001) }
func (m *maker) usual(mm float64) ticks  { return m.rounded(mm, 0.01, 0.0005) }
func (m *maker) coarse(mm float64) ticks { return m.rounded(mm, 0.1, 0.005) }

func (m *maker) point(p Point, step func(float64) ticks) *node {
	return list(placeX(step(p[0])), placeY(step(p[1])))
}

func abs(x float64) float64 { return math.Abs(x) }

// normalTo is how far a vector reaches square to a line that rises by degrees.
func normalTo(deg float64, v Point) float64 {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	return v[1]*cos - v[0]*sin
}

var plates = [2]string{"left", "right"}
