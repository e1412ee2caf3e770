package chance

import (
	"math"

	"rebush/plan/job"
)

// FromPlan makes the model of a plan. ok is false where nothing is cut or
// pressed, so that there is nothing to try.
func FromPlan(f Facts) (m Model, ok bool) {
	clamp := map[string]int{}
	for _, s := range f.Clampings {
		for _, b := range s.Bores {
			clamp[b] = len(m.Setups)
		}
		m.Setups = append(m.Setups, Setup{Name: s.Name, UMM: f.USetupMM})
	}
	if len(m.Setups) == 0 {
		m.Setups = []Setup{{Name: "bench"}}
	}
	m.Shafts = f.Shafts
	for _, h := range f.Holes {
		b := f.bore(h)
		b.Setup = clamp[b.Name]
		ok = ok || b.Kind != Leave
		m.Bores = append(m.Bores, b)
	}
	m.unshared()
	for _, p := range f.Pairs {
		m.Gears = append(m.Gears, f.gear(p))
	}
	return m, ok
}

const deg = math.Pi / 180

// bore is one hole: as it was surveyed, and with what goes into it.
func (f *Facts) bore(h Hole) Bore {
	w, r := h.Worn, &f.Rules
	b := Bore{Name: h.Name(), Shaft: h.On, Right: h.Bore.Side == job.Right, Kind: Leave,
		TargetMM: h.At, UHoleMM: f.UHoleMM,
		Survey: Survey{Centre: w.O, Cov: [3]float64{w.Cov[0][0], w.Cov[0][1], w.Cov[1][1]}, Cross: h.Cross,
			R: w.R, JournalR: math.Min(w.JournalR, w.R), D: w.D, UDepthMM: w.WU,
			TowardsDeg: w.ThetaRad / deg, FanDeg: math.Min(w.FanHalf/deg, 89)},
		SurveyBy: h.By, JournalMM: h.Journal(), UJournalMM: r.UJournalMM, JournalBy: "journal measurement"}
	x := h.Fitting
	if x == nil {
		// It stays in its worn hole and stands in it as it was found.
		now := 2 * h.FoundMM
		b.RunningUM = [2]float64{now * 1000, now * 1000}
		b.BoreMM = [2]float64{h.Journal() + now, h.Journal() + now}
		return b
	}
	b.Kind = Cut
	if x.Renews {
		b.Kind = OldSeat
	}
	b.RunningUM = [2]float64{r.RunLeastUM, r.RunMostUM}
	o := &x.Odds
	b.Seat = SeatSize{Mid: o.SeatMid, Half: o.SeatHalf, ToolU: o.ToolU, U: o.SeatU, Lobes: o.Lobes}
	b.SeatBy, b.Slips, b.Tried, b.GaugeUM = x.Tool, o.Slips, x.Tried, r.GaugeUM
	b.OD, b.Hole = about(o.ODMid, o.ODHalf, o.ODSigma), about(o.BoreMid, o.BoreHalf, 0)
	b.RunoutMM, b.RunoutEven = x.Bush.RunoutMM, true
	b.PressUM, b.EasesUM = [2]float64{o.UMin * 1000, o.UMax * 1000}, o.Eases*1000
	b.Closure = Closure{Elastic: o.Elastic, FlowUM: [2]float64{o.FlowLow * 1000, o.FlowHigh * 1000}, Slope: [2]float64{o.SlopeLow, o.SlopeHigh}}
	b.Finish, b.BoreMM = x.Finish, [2]float64{o.BoreLow, o.BoreHigh}
	b.ToolMM, b.SizedUMM, b.MaxOpenMM = [2]float64{o.ToolLow, o.ToolHigh}, o.SizedU, o.MostOpen
	if n := h.Bore.Now; x.Filled || x.Part != nil || n != nil && n.Placed {
		// Nothing has to be cleared: compound fills what the seat leaves, a plug
		// has taken the wear in, or a tool follows the seat as it was made.
		b.Survey.D, b.Survey.UDepthMM, b.Survey.R, b.Survey.JournalR = 0, 0, x.SeatMM[0]/4, x.SeatMM[0]/4
	}
	if x.PlaceU > 0 {
		b.Survey.Cov = [3]float64{x.PlaceU * x.PlaceU, 0, x.PlaceU * x.PlaceU}
		b.Survey.Cross = [2][2]float64{}
	}
	b.USetMM = x.SetUMM
	if x.Part != nil {
		b.PartFails = 1 - x.Part.Chance
	}
	if x.Filled {
		cleared, _, _ := o.Parts()
		b.FillFails = 1 - cleared
	}
	b.MustPassMM = x.MustPassMM
	b.Wall = f.wall(h)
	f.wayOut(x, &b)
	return b
}

// about is a diameter by its middle.
func about(mid, half, u float64) Size { return Size{Low: mid - half, High: mid + half, U: u} }

// wall is the metal beside the seat. It is given up below what a press wants,
// and cracks at the whole strength of a casting, of which half is allowed.
func (f *Facts) wall(h Hole) Wall {
	x, r, o := h.Fitting, &f.Rules, &h.Fitting.Odds
	if math.IsInf(x.LeftMM, 1) {
		return Wall{StressPerUM: o.Tension / 1000, StressLimit: o.Strength, StressU: o.StrengthU, StressCapMPa: o.TensionMost}
	}
	w := Wall{LeftMM: x.LeftMM, NoneBelowMM: r.LeastWallMM, EdgeDeg: edgeDeg(h)}
	if x.Hold == Pressed {
		w.NoneBelowMM = r.NoWallRadii * x.SeatMM[1] / 4
		w.StressPerUM, w.StressLimit, w.StressU, w.StressCapMPa = o.Tension/1000, o.Strength, o.StrengthU, o.TensionMost
	}
	return w
}

// edgeDeg is the direction of the nearest free edge.
func edgeDeg(h Hole) float64 {
	best, at := math.Inf(1), 270.0
	for _, e := range h.Bore.Edges {
		d := e.Away.Float()
		if e.Metal.Given() {
			d = e.Metal.Float() + h.Worn.R
		}
		if d < best {
			best, at = d, e.AtDeg
		}
	}
	return at
}

// wayOut says what could still be done when a bore goes wrong.
func (f *Facts) wayOut(x *Fitting, b *Bore) {
	least := math.Inf(1)
	for _, l := range x.Larger {
		least = math.Min(least, l.SeatMM/2)
		if !math.IsInf(l.LeftMM, 1) {
			b.Wall.NextLeftMM = math.Max(b.Wall.NextLeftMM, l.LeftMM)
		}
	}
	if !math.IsInf(least, 1) {
		b.NextBush, b.NextSeatMM = true, least
	}
	if f.Turns {
		b.NextBush, b.NextSeatMM = true, 0
	}
	b.Bond = f.Compound && !x.Bush.Porous && !x.Live
	b.Eccentric = f.Lathe && (x.Odds.ODMid-x.Odds.ODHalf-x.Odds.BoreHigh)/2 > f.Rules.LeastWallMM+0.1
	b.Replaceable = x.Bush.Turned || x.Bush.OnHand != 1 && x.Bush.OnHand != 0
}

// unbounded is more than any centre distance, mm.
const unbounded = 1e6

// gear straightens one mesh about its plan.
func (f *Facts) gear(p Pair) Gear {
	g := Gear{Name: p.Name, On: p.On, Station: p.Station, MateOn: p.Mate, MateStation: p.MateStation,
		Open: [2]float64{-p.Towards[0], -p.Towards[1]}, CentreMM: p.CentreMM, WindowMM: [2]float64{p.LowMM, p.HighMM},
		UGeomMM: p.UGeomMM, UMateMM: p.UMateMM, RunoutMM: p.RunoutMM, TightMM: p.TightMM, LooseMM: p.ContactMM, BindMM: p.BindMM, PartMM: p.PartMM,
		SpreadMM: p.SpreadMM, Ties: p.Ties, Placeless: p.Placeless}
	if p.Empty {
		g.WindowMM = [2]float64{0, unbounded}
	}
	if l := p.Lean; l != nil {
		g.LeanAlong = l.FaceMM / l.SpanMM / 2
		g.LeanAcross = g.LeanAlong / math.Tan(l.AngleRad)
	}
	return g
}
