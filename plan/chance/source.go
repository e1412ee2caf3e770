package chance

import "math"

// source is one source of error of a model: what it is called at the bench,
// how large it is, and how to scale it in a copy.
type source struct {
	words string
	owner int // ownBore, ownGear, ownSetup or ownTool: what has to be tried again when it changes
	index int // of the owner
	size  float64
	scale func(m *Model, k float64)
}

// sources lists every source that the model has, errors of 0 left out, in the
// order of the job.
func (m *Model) sources() []source {
	var out []source
	owner, index := 0, 0
	add := func(words string, size float64, scale func(m *Model, k float64)) {
		if size > 0 {
			out = append(out, source{words, owner, index, size, scale})
		}
	}
	for i, s := range m.Setups {
		owner, index = ownSetup, i
		add("clamping "+s.Name, s.UMM, func(m *Model, k float64) { m.Setups[i].UMM *= k })
	}
	for i, name := range m.tools() {
		owner, index = ownTool, i
		add("what "+by(name, "the seat's tool")+" cuts over its size", 1, func(m *Model, k float64) {
			for b := range m.Bores {
				if m.Bores[b].SeatBy == name {
					m.Bores[b].Seat.ToolU *= k
				}
			}
		})
	}
	for i := range m.Bores {
		owner, index = ownBore, i
		if m.Bores[i].Survey.Cross != [2][2]float64{} {
			owner = ownShaft
		}
		m.boreSources(i, add, &owner)
	}
	for i := range m.Gears {
		g := &m.Gears[i]
		owner, index = ownGear, i
		at := func(m *Model) *Gear { return &m.Gears[i] }
		add("computed centre distance of "+g.Name, g.UGeomMM, func(m *Model, k float64) { at(m).UGeomMM *= k })
		add("teeth of "+g.Name+" that were not measured", spreadU(g.SpreadMM), func(m *Model, k float64) {
			at(m).SpreadMM = scaled(at(m).SpreadMM, k)
		})
		add("place of the mating gear of "+g.Name, g.UMateMM, func(m *Model, k float64) { at(m).UMateMM *= k })
		add("run-out of the gears of "+g.Name, g.RunoutMM[0]+g.RunoutMM[1], func(m *Model, k float64) {
			at(m).RunoutMM[0] *= k
			at(m).RunoutMM[1] *= k
		})
	}
	return out
}

// boreSources adds those of one bore. An old centre that the other bore of its
// shaft has a share in makes the whole truck be tried again.
func (m *Model) boreSources(i int, add func(string, float64, func(*Model, float64)), owner *int) {
	b := &m.Bores[i]
	at := func(m *Model) *Bore { return &m.Bores[i] }
	name := b.Name
	add(by(b.SurveyBy, "old centre")+" on "+name, b.Survey.Cov[0]+b.Survey.Cov[2], func(m *Model, k float64) {
		m.rescale(i, k)
	})
	*owner = ownBore
	if b.Kind == Leave {
		return
	}
	if b.Kind == Cut {
		add("wear depth of "+name, b.Survey.UDepthMM, func(m *Model, k float64) { at(m).Survey.UDepthMM *= k })
		add("place of the hole of "+name, b.UHoleMM, func(m *Model, k float64) { at(m).UHoleMM *= k })
	}
	if b.Kind == OldSeat {
		add("how the bush is turned and set at "+name, b.USetMM, func(m *Model, k float64) { at(m).USetMM *= k })
	}
	add(by(b.SeatBy, "seat size")+" at "+name, b.Seat.Half+b.Seat.U+b.Seat.Lobes, func(m *Model, k float64) {
		at(m).Seat.Half *= k
		at(m).Seat.U *= k
		at(m).Seat.Lobes *= k
	})
	add("slips at "+name, b.Slips, func(m *Model, k float64) { at(m).Slips = math.Min(1, at(m).Slips*k) })
	add("strength of the wall at "+name, b.Wall.StressU, func(m *Model, k float64) { at(m).Wall.StressU *= k })
	add("outside of the bush at "+name, b.OD.High-b.OD.Low+b.OD.U, func(m *Model, k float64) { at(m).OD.scale(k) })
	add("bore of the bush at "+name, b.Hole.High-b.Hole.Low+b.Hole.U, func(m *Model, k float64) { at(m).Hole.scale(k) })
	if b.Finish != BoreInPlace {
		add("run-out of the bush at "+name, b.RunoutMM, func(m *Model, k float64) { at(m).RunoutMM *= k })
	}
	c := b.Closure
	if c.FlowUM[1] > 0 {
		add("how far the bush closes at "+name, c.FlowUM[1]-c.FlowUM[0]+c.Slope[1]-c.Slope[0], func(m *Model, k float64) {
			scale(&at(m).Closure.FlowUM, k)
			scale(&at(m).Closure.Slope, k)
		})
	}
	if b.Finish != AsDelivered {
		add("finished size at "+name, b.ToolMM[1]-b.ToolMM[0]+b.SizedUMM, func(m *Model, k float64) {
			scale(&at(m).ToolMM, k)
			at(m).SizedUMM *= k
		})
	}
	add(by(b.JournalBy, "micrometer")+" on the journal at "+name, b.UJournalMM, func(m *Model, k float64) { at(m).UJournalMM *= k })
}

// spreadU is the root of the mean square of some shifts.
func spreadU(shifts []float64) float64 {
	sum := 0.0
	for _, v := range shifts {
		sum += float64(v * v)
	}
	return math.Sqrt(sum / math.Max(1, float64(len(shifts))))
}

// scaled are shifts times k, in a slice of their own.
func scaled(shifts []float64, k float64) []float64 {
	out := make([]float64, len(shifts))
	for i, v := range shifts {
		out[i] = k * v
	}
	return out
}

func by(given, otherwise string) string {
	if given == "" {
		return otherwise
	}
	return given
}

// scale widens or narrows a pair of limits about its middle, never below 0.
func scale(limits *[2]float64, k float64) {
	mid, half := (limits[0]+limits[1])/2, (limits[1]-limits[0])/2
	limits[0], limits[1] = mid-k*half, mid+k*half
	if limits[0] < 0 {
		limits[0] = 0
	}
}

func (s *Size) scale(k float64) {
	limits := [2]float64{s.Low, s.High}
	scale(&limits, k)
	s.Low, s.High = limits[0], limits[1]
	s.U *= k
}

// copied is a copy that shares nothing that scaling touches.
func (m *Model) copied() *Model {
	c := *m
	c.Setups = append([]Setup(nil), m.Setups...)
	c.Bores = append([]Bore(nil), m.Bores...)
	c.Gears = append([]Gear(nil), m.Gears...)
	return &c
}
