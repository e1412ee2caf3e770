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
		SeatMid: 5.006, SeatHalf: 0.002, Over: 0.0018,
		ODMid: 5.021, ODHalf: 0.006,
		UMin: 0.008, UMax: 0.022,
		BoreMid: 3.216, BoreHalf: 0.006,
		Elastic: 0.6, FlowLow: 0.008, FlowHigh: 0.016, SlopeLow: 1, SlopeHigh: 1.4,
		BoreLow: 3.180, BoreHigh: 3.220, JournalU: 0.004,
	}
}

func TestSeatAgainstTrials(t *testing.T) {
	sized := seat()
	sized.Sized, sized.ToolLow, sized.ToolHigh = true, 3.206, 3.212
	for name, s := range map[string]Seat{"as delivered": seat(), "sized": sized} {
		r := rand.New(rand.NewPCG(7, 7))
		even := func(half float64) float64 { return half * (2*r.Float64() - 1) }
		const n = 300000
		var clean, press, bore, pressed int
		for range n {
			over := s.Over * r.Float64()
			d := s.SeatMid + even(s.SeatHalf) + over
			if s.CleanupMargin+(d-s.SeatMid)/2+s.CleanupU*r.NormFloat64() > 0 {
				clean++
			}
			u := s.ODMid + even(s.ODHalf) - d
			if u < s.UMin || u > s.UMax {
				continue
			}
			press++
			flow := s.FlowLow + (s.FlowHigh-s.FlowLow)*r.Float64()
			c := s.Elastic * math.Min(u, flow)
			if u > flow {
				c += (s.SlopeLow + (s.SlopeHigh-s.SlopeLow)*r.Float64()) * (u - flow)
			}
			b := s.BoreMid + even(s.BoreHalf) - c
			if s.Sized {
				b = math.Max(b, s.ToolLow+(s.ToolHigh-s.ToolLow)*r.Float64())
			}
			pressed++
			if j := s.JournalU * r.NormFloat64(); b+j > s.BoreLow && b+j < s.BoreHigh {
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
		check("press", b, float64(press)/n, 0.003)
		// The closure is bent, and taken straight here.
		check("bore", c, float64(bore)/float64(pressed), 0.02)
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
