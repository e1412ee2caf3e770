package seat

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/say"
)

// Row is how one bore is bushed, as it is printed: keys carry units, lengths
// that are gauged are decimal text, absent is null.
type Row struct {
	Bore           string       `json:"bore"`
	Mend           Mend         `json:"mend"` // what is done at the hole, "" where no bush can be seated
	Bush           string       `json:"bush"`
	HeldBy         string       `json:"held_by"`
	SeatMM         *dim.MMRange `json:"seat_mm"`
	CleanupMM      dim.Gauged   `json:"cleanup_mm"`
	InterferenceUM *dim.MinMax  `json:"interference_um"`
	PressureMPa    *dim.MinMax  `json:"pressure_mpa"`
	ForceN         *dim.MinMax  `json:"force_n"`
	TorqueNmm      *dim.MinMax  `json:"torque_nmm"`
	HoopMPa        *float64     `json:"hoop_mpa"`
	HoopLimitMPa   *float64     `json:"hoop_limit_mpa"`
	MetalLeftMM    dim.Gauged   `json:"metal_left_mm"`
	ClosureUM      *dim.MinMax  `json:"closure_um"`
	Finish         string       `json:"finish"`
	BoreMM         *dim.MMRange `json:"bore_mm"`
	RunningUM      *dim.MinMax  `json:"running_um"`
	LooseAtC       *float64     `json:"loose_at_c"`
	PV             *float64     `json:"pv"`
	Candidates     []Candidate  `json:"candidates"`

	Tool   string `json:"tool"`   // what makes the seat
	Second string `json:"second"` // a second hold where the press alone is not enough

	Part     *PartRow `json:"part"`       // what stands in the plate round the bush
	SeatAtMM *dim.XY  `json:"seat_at_mm"` // middle of a seat that does not stand about the new centre
	OffsetMM *dim.XY  `json:"offset_mm"`  // of a bush turned eccentric: from there to the middle of its bore

	ClosedMM   *dim.MMRange `json:"closed_mm"`   // bore after pressing, before it is sized
	ExpectedMM *dim.MMRange `json:"expected_mm"` // where the finished bore will lie

	ExpectedSeat *ExpectedSeat `json:"expected_seat"` // where the seat will lie that is cut
}

// Candidate is one bush with one way to make its seat.
type Candidate struct {
	Bush     string   `json:"bush"`
	Tool     string   `json:"tool"`
	Feasible bool     `json:"feasible"`
	Chance   *float64 `json:"chance"`
	Reason   say.Text `json:"reason"`
}

// row is a bore without the figures of its seat: the candidates, and which of
// them it is, or the limits that none of them met.
func (x Seated) row(r Rules) Row {
	row := Row{Bore: x.Name(), Candidates: candidates(x.Answers)}
	a := x.Chosen
	if a == nil {
		if lim := BoreLimits(x.Hole, r); lim[0] <= lim[1] {
			row.BoreMM = dim.Limits(lim[0], lim[1])
		}
		return row
	}
	row.Bush, row.Mend, row.HeldBy, row.Finish = a.Bush.Code, a.Mend, string(a.HeldBy), string(a.Finish)
	row.Tool, row.Second = a.Way.Name, a.Second.String()
	return row
}

func candidates(answers []Answer) []Candidate {
	var out []Candidate
	for _, a := range answers {
		c := Candidate{Bush: a.Bush.Code, Tool: a.Way.Name, Feasible: a.Feasible}
		if a.HeldBy == ByCompound {
			c.Tool += ", with compound"
		}
		switch {
		case !a.Feasible:
			c.Chance, c.Reason = dim.Number(0), a.Fail.Text()
		case math.IsInf(a.Ligament, 1):
			c.Chance = dim.Number(dim.Near(a.Chance, 6))
		default:
			c.Chance, c.Reason = dim.Number(dim.Near(a.Chance, 6)), leavesAtEdge(&a)
		}
		out = append(out, c)
	}
	return out
}
