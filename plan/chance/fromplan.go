package chance

import (
	"math"

	"rebush/fits/press"
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
		Survey: Survey{Centre: w.O, Cov: [3]float64{w.Cov[0][0], w.Cov[0][1], w.Cov[1][1]},
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
	b.Seat = SeatSize{Mid: mid(x.OwnMM), Half: (x.OwnMM[1] - x.OwnMM[0]) / 2, Over: math.Max(0, x.OverMM)}
	b.SeatBy = x.Tool
	b.OD, b.Hole = Size{Low: x.Bush.ODMM[0], High: x.Bush.ODMM[1]}, Size{Low: x.Bush.BoreMM[0], High: x.Bush.BoreMM[1]}
	b.RunoutMM, b.RunoutEven = x.Bush.RunoutMM, true
	f.hold(x, &b)
	x.sized(h.Journal(), r, &b)
	if n := h.Bore.Now; x.Filled || x.Part != nil || n != nil && n.Placed {
		// Nothing has to be cleared: compound fills what the seat leaves, a plug
		// has taken the wear in, or a tool follows the seat as it was made.
		b.Survey.D, b.Survey.UDepthMM, b.Survey.R, b.Survey.JournalR = 0, 0, x.SeatMM[0]/4, x.SeatMM[0]/4
	}
	if x.PlaceU > 0 {
		b.Survey.Cov = [3]float64{x.PlaceU * x.PlaceU, 0, x.PlaceU * x.PlaceU}
	}
	b.USetMM = x.SetUMM
	if x.Part != nil {
		b.PartFails = 1 - x.Part.Chance
	}
	b.MustPassMM = x.MustPassMM
	b.Wall = f.wall(h)
	f.wayOut(x, &b)
	return b
}

func mid(v [2]float64) float64 { return (v[0] + v[1]) / 2 }

func um(mm [2]float64) [2]float64 { return [2]float64{mm[0] * 1000, mm[1] * 1000} }

// hold is the interference that holds: of compound and of a cap a gap.
func (f *Facts) hold(x *Fitting, b *Bore) {
	r := &f.Rules
	switch x.Hold {
	case Bonded:
		b.PressUM = um([2]float64{-r.GapHighMM, -r.GapLowMM})
	case Capped:
		b.PressUM = um([2]float64{-r.CapHighMM, -r.CapLowMM})
	default:
		b.PressUM = um([2]float64{x.WindowMM[0], math.Min(x.WindowMM[1], r.MaxPressShare*x.SeatMM[0])})
		b.Closure = f.closure(x)
	}
}

// sized is how the pressed bore comes to size.
func (x *Fitting) sized(journal float64, r *Rules, b *Bore) {
	b.Finish, b.BoreMM, b.ToolMM = x.Finish, x.BoreMM, x.ExpectedMM
	switch x.Finish {
	case OwnAxle:
		b.ToolMM = [2]float64{x.ExpectedMM[0] - journal, x.ExpectedMM[1] - journal}
	case Mandrel:
		b.MaxOpenMM = r.MandrelMM
	}
}

// closure straightens how a bore closes on pressing about the middle of the
// moduli.
func (f *Facts) closure(x *Fitting) Closure {
	s := x.Stress
	s.Housing.E = (f.Plate.EHigh + f.Plate.ELow) / 2
	s.Bush.E = (x.Bush.EHigh + x.Bush.ELow) / 2
	s.Bush.Yield = 0
	const u = 0.001
	c := Closure{Elastic: s.At(u).Closure / u}
	flow := [2]float64{x.Bush.YieldMPa[0], press.MisesOverTresca * x.Bush.YieldMPa[1]}
	if x.Bush.Porous {
		flow = [2]float64{f.Rules.FlowLowMPa, f.Rules.FlowHighMPa}
	}
	for i, y := range flow {
		if y > 0 {
			s.Bush.Yield = y
			c.FlowUM[i] = s.InterferenceFor(s.FlowPressure()) * 1000
		}
	}
	lo, hi := s.FlowSlopes()
	c.Slope = [2]float64{math.Min(1, lo), hi}
	return c
}

// wall is the metal beside the seat. Half of a casting's strength is allowed;
// the wall goes at the whole of it.
func (f *Facts) wall(h Hole) Wall {
	x, r := h.Fitting, &f.Rules
	if math.IsInf(x.LeftMM, 1) {
		return Wall{}
	}
	w := Wall{LeftMM: x.LeftMM, NoneBelowMM: r.LeastWallMM, EdgeDeg: edgeDeg(h)}
	if x.Hold != Pressed {
		return w
	}
	w.NoneBelowMM = r.NoWallRadii * x.SeatMM[1] / 4
	if x.MostUMM > 0 && f.Plate.Casting && x.Part == nil { // a plug bears the press in its place
		s := x.Stress
		s.Bush.Yield = 0
		w.StressPerUM = s.At(0.001).HousingHoopMax
		w.StressLimit = f.Plate.LimitMPa / r.CastingShare
		if x.Stress.Bush.Yield > 0 {
			fac := s.Factors()
			w.StressCapMPa = x.Stress.FlowPressure() * math.Max(fac.HoleMax, fac.EdgeMax)
		}
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
	b.Eccentric = f.Lathe && (x.Bush.ODMM[0]-x.BoreMM[1])/2 > f.Rules.LeastWallMM+0.1
	b.Replaceable = x.Bush.Turned || x.Bush.OnHand != 1 && x.Bush.OnHand != 0
}

// unbounded is more than any centre distance, mm.
const unbounded = 1e6

// gear straightens one mesh about its plan.
func (f *Facts) gear(p Pair) Gear {
	g := Gear{Name: p.Name, On: p.On, Station: p.Station, MateOn: p.Mate, MateStation: p.MateStation,
		Open: [2]float64{-p.Towards[0], -p.Towards[1]}, CentreMM: p.CentreMM, WindowMM: [2]float64{p.LowMM, p.HighMM},
		UGeomMM: p.UGeomMM, UMateMM: p.UMateMM, RunoutMM: p.RunoutMM, TightMM: p.TightMM, LooseMM: p.ContactMM, BindMM: p.BindMM, PartMM: p.PartMM,
		SpreadMM: p.SpreadMM, Placeless: p.Placeless}
	if p.Empty {
		g.WindowMM = [2]float64{0, unbounded}
	}
	if l := p.Lean; l != nil {
		sin, cos := math.Sincos(l.AngleRad)
		g.LeanAlong, g.LeanAcross = l.FaceMM/l.SpanMM*sin, l.FaceMM/l.SpanMM*cos
		g.LeanLimitMM = f.Rules.LeanShare * l.BacklashMM
	}
	return g
}
