package chance

import (
	"errors"
	"fmt"
	"math"
)

// check refuses a model that cannot be run, with the place and the reason.
func (m *Model) check() error {
	if len(m.Bores) == 0 {
		return errors.New("chance: no bore to try")
	}
	for _, s := range m.Setups {
		if !good(s.UMM) {
			return fmt.Errorf("chance: clamping %s: uncertainty %v", s.Name, s.UMM)
		}
	}
	taken := map[[2]int]bool{}
	for i := range m.Bores {
		b := &m.Bores[i]
		if err := m.checkBore(b); err != nil {
			return fmt.Errorf("chance: %s: %w", b.Name, err)
		}
		side := [2]int{b.Shaft, 0}
		if b.Right {
			side[1] = 1
		}
		if taken[side] {
			return fmt.Errorf("chance: %s: its shaft has two bores in one plate", b.Name)
		}
		taken[side] = true
	}
	for i := range m.Gears {
		g := &m.Gears[i]
		if err := m.checkGear(g, taken); err != nil {
			return fmt.Errorf("chance: %s: %w", g.Name, err)
		}
	}
	return nil
}

func (m *Model) checkBore(b *Bore) error {
	if b.Shaft < 0 || b.Shaft >= len(m.Shafts) {
		return fmt.Errorf("no shaft %d", b.Shaft)
	}
	if b.Kind == Cut && (b.Setup < 0 || b.Setup >= len(m.Setups)) {
		return fmt.Errorf("no clamping %d", b.Setup)
	}
	s := b.Survey
	errs := []float64{b.UHoleMM, b.USetMM, b.PartFails, 1 - b.PartFails, s.UDepthMM, b.Seat.Half, b.Seat.ToolU, b.Seat.U, b.Seat.Lobes, b.Slips, 1 - b.Slips, b.FillFails,
		b.EasesUM, b.GaugeUM, b.SizedUMM, b.Wall.StressU, b.OD.U, b.Hole.U, b.UJournalMM,
		b.RunoutMM, b.OD.High - b.OD.Low, b.Hole.High - b.Hole.Low, b.ToolMM[1] - b.ToolMM[0], s.Cov[0], s.Cov[2],
		b.Closure.FlowUM[1] - b.Closure.FlowUM[0], b.Closure.Slope[1] - b.Closure.Slope[0], b.MaxOpenMM, s.FanDeg,
		b.PressUM[1] - b.PressUM[0], b.BoreMM[1] - b.BoreMM[0], b.RunningUM[1] - b.RunningUM[0]}
	for _, v := range errs {
		if !good(v) {
			return fmt.Errorf("a spread or a pair of limits is negative or not a number (%v)", v)
		}
	}
	if s.Cov[1]*s.Cov[1] > s.Cov[0]*s.Cov[2]*(1+1e-9) || math.IsNaN(s.Cov[1]) {
		return fmt.Errorf("covariance %v is none", s.Cov)
	}
	if s.FanDeg >= 90 {
		return fmt.Errorf("worn over %v degrees to either side, below 90 is possible", s.FanDeg)
	}
	for _, v := range []float64{s.Cross[0][0], s.Cross[0][1], s.Cross[1][0], s.Cross[1][1],
		s.Centre[0], s.Centre[1], s.R, s.JournalR, s.D, s.TowardsDeg, b.TargetMM[0], b.TargetMM[1],
		b.Seat.Mid, b.OD.Low, b.Hole.Low, b.ToolMM[0], b.BoreMM[0], b.RunningUM[0], b.PressUM[0], b.JournalMM, b.MustPassMM,
		b.Closure.Elastic, b.Closure.FlowUM[0], b.Closure.Slope[0], b.NextSeatMM, b.Wall.LeftMM, b.Wall.NoneBelowMM,
		b.Wall.EdgeDeg, b.Wall.StressPerUM, b.Wall.StressLimit, b.Wall.NextLeftMM, b.Wall.StressCapMPa} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return errors.New("a figure is not a number")
		}
	}
	return nil
}

func (m *Model) checkGear(g *Gear, taken map[[2]int]bool) error {
	for _, v := range g.SpreadMM {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return errors.New("a shift of its limits is not a number")
		}
	}
	if n := len(g.Ties); n > 0 && n != len(g.SpreadMM) {
		return fmt.Errorf("%d ties for %d shifts", n, len(g.SpreadMM))
	}
	for _, t := range g.Ties {
		if math.IsNaN(t.Pull+t.Sure) || math.IsInf(t.Pull+t.Sure, 0) {
			return errors.New("a tie of its errors is not a number")
		}
	}
	if g.Placeless {
		return nil
	}
	has := func(shaft int) bool { return taken[[2]int{shaft, 0}] || taken[[2]int{shaft, 1}] }
	if g.On < 0 || g.On >= len(m.Shafts) || !has(g.On) {
		return fmt.Errorf("its wheel's shaft %d has no bore", g.On)
	}
	if g.MateOn != FixedMate && (g.MateOn < 0 || g.MateOn >= len(m.Shafts) || !has(g.MateOn)) {
		return fmt.Errorf("its mate's shaft %d has no bore", g.MateOn)
	}
	if g.MateOn == g.On {
		return errors.New("it meshes with its own shaft")
	}
	for _, v := range []float64{g.UGeomMM, g.UMateMM, g.RunoutMM[0], g.RunoutMM[1], g.WindowMM[1] - g.WindowMM[0], g.LeanAlong, g.LeanAcross} {
		if !good(v) {
			return fmt.Errorf("a spread or a pair of limits is negative or not a number (%v)", v)
		}
	}
	for _, v := range []float64{g.Station, g.MateStation, g.CentreMM, g.TightMM, g.LooseMM, g.BindMM, g.PartMM, g.WindowMM[0]} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return errors.New("a figure is not a number")
		}
	}
	if d := math.Hypot(g.Open[0], g.Open[1]); !(math.Abs(d-1) < 1e-6) {
		return fmt.Errorf("the line of centres has length %v, not 1", d)
	}
	return nil
}

func good(v float64) bool { return v >= 0 && !math.IsInf(v, 0) }
