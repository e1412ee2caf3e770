package odds

import (
	"math"
	"math/rand/v2"
	"testing"
)

// seat is a 5 mm porous bush (s7: +15 to +27 um) in a hole reamed H7.
func seat() Seat {
	return Seat{
		CleanupMargin: 0.04, CleanupU: 0.02,
		SeatMid: 5.006, ToolU: 0.003, SeatU: 0.003, Lobes: 0.003, Slips: 0.01,
		ODMid: 5.021, ODHalf: 0.006,
		UMin: 0.008, UMax: 0.022, Eases: 0.002,
		Tension: 6000, Strength: 130, StrengthU: 0.15,
		BoreMid: 3.216, BoreHalf: 0.006,
		Elastic: 0.6, FlowLow: 0.008, FlowHigh: 0.016, SlopeLow: 1, SlopeHigh: 1.4,
		BoreLow: 3.180, BoreHigh: 3.220, RunLow: 0.015, RunHigh: 0.060, Journal: 3.165, JournalU: 0.004,
	}
}

// Each seat is drawn 300 000 times by the words of its fields.
func TestSeatAgainstTrials(t *testing.T) {
	sized, own, stretched, there, glued := seat(), seat(), seat(), seat(), seat()
	sized.Sized, sized.ToolLow, sized.ToolHigh, sized.SizedU = true, 3.206, 3.212, 0.004
	own.Sized, own.OwnAxle, own.ToolLow, own.ToolHigh = true, true, 0.018, 0.045
	stretched.Sized, stretched.ToolLow, stretched.ToolHigh, stretched.MostOpen = true, 3.206, 3.212, 0.010
	there.SeatHalf, there.ToolU, there.SeatU, there.Slips = 0.006, 0, 0, 0
	glued.ODMid, glued.UMin, glued.UMax, glued.Eases, glued.Lobes = 4.96, -0.055, -0.035, 0, 0
	glued.Elastic, glued.FlowHigh, glued.Strength, glued.BoreMid = 0, 0, 0, 3.205
	for name, s := range map[string]Seat{"as delivered": seat(), "sized": sized, "own axle": own, "stretched": stretched,
		"there": there, "glued": glued} {
		r := rand.New(rand.NewPCG(7, 7))
		even := func(half float64) float64 { return half * (2*r.Float64() - 1) }
		const n = 300000
		var clean, press, bore int
		for range n {
			off := s.ToolU*r.NormFloat64() + s.SeatU*r.NormFloat64() + even(s.SeatHalf)
			if s.CleanupMargin+off/2+s.CleanupU*r.NormFloat64() > 0 {
				clean++
			}
			u := s.ODMid + even(s.ODHalf) - s.SeatMid - off - s.Lobes*r.Float64()
			if u < s.UMin-s.Eases*r.Float64() || u > s.UMax || r.Float64() < s.Slips ||
				s.Strength > 0 && s.Tension*u > s.Strength*(1+s.StrengthU*r.NormFloat64()) {
				continue
			}
			press++
			c := 0.0
			if u > 0 {
				flow := s.FlowLow + (s.FlowHigh-s.FlowLow)*r.Float64()
				if c = s.Elastic * u; s.FlowHigh > 0 && u > flow {
					c = s.Elastic*flow + (s.SlopeLow+(s.SlopeHigh-s.SlopeLow)*r.Float64())*(u-flow)
				}
			}
			b := s.BoreMid + even(s.BoreHalf) - c
			journal := s.Journal + s.JournalU*r.NormFloat64()
			if s.Sized {
				tool := s.ToolLow + (s.ToolHigh-s.ToolLow)*r.Float64() + s.SizedU*r.NormFloat64()
				if s.OwnAxle {
					tool += journal
				}
				if s.MostOpen > 0 {
					tool = math.Min(tool, b+s.MostOpen)
				}
				b = math.Max(b, tool)
			}
			if run := b - journal; run > s.RunLow && run < s.RunHigh && (s.OwnAxle || b > s.BoreLow && b < s.BoreHigh) {
				bore++
			}
		}
		a, b, c := s.Parts()
		check := func(what string, got, want, tol float64) {
			t.Helper()
			if math.Abs(got-want) > tol {
				t.Errorf("%s, %s: %.4f, trials %.4f", name, what, got, want)
			}
		}
		check("clean-up", a, float64(clean)/n, 0.002)
		check("press", b, float64(press)/n, 0.004)
		check("bore", c, float64(bore)/float64(press), 0.006)
	}
}

func TestSeatHalvingAnErrorHelps(t *testing.T) {
	s := seat()
	was := s.Chance()
	s.CleanupU /= 2
	s.ODHalf /= 2
	if got := s.Chance(); got <= was {
		t.Errorf("chance %v, was %v", got, was)
	}
}

func TestSeatAllocatesNothing(t *testing.T) {
	s := seat()
	sum := 0.0
	if n := testing.AllocsPerRun(100, func() { sum += s.Chance() }); n != 0 {
		t.Errorf("%v allocations", n)
	}
	if !(sum > 0) {
		t.Error("chance is 0")
	}
}

func BenchmarkSeat(b *testing.B) {
	s := seat()
	sum := 0.0
	for b.Loop() {
		sum += s.Chance()
	}
	_ = sum
}
