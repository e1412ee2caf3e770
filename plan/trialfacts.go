package plan

import (
	"rebush/plan/chance"
	"rebush/plan/job"
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/target"
)

// trialFacts is a plan as its trials read it.
func trialFacts(w *books, j *job.Job, shop target.Shop, holes []survey.Hole, s target.Settled,
	seats Seated, setups []Setup) chance.Facts {
	in := seats.In
	p := in.Casting.Plate
	f := chance.Facts{USetupMM: shop.Setup.U, UHoleMM: shop.Hole.U,
		Lathe: in.Shop.Lathe, Compound: in.Shop.Compound, Rules: chance.RulesOf(w.rules),
		Plate: chance.Plate{ELow: p.ELow, EHigh: p.EHigh, Casting: p.Casting, LimitMPa: p.Limit}}
	for _, b := range in.Stock {
		f.Turns = f.Turns || b.Turned && in.Shop.Lathe
	}
	for _, s := range setups {
		if s.Clamping {
			f.Clampings = append(f.Clampings, chance.Clamping{Name: s.Name, Bores: s.Bores})
		}
	}
	of := map[string]bored{}
	for _, b := range boredOf(holes, s, seats) {
		of[b.Name()] = b
	}
	for i, a := range s.Axles {
		f.Shafts = append(f.Shafts, chance.Shaft{Name: a.Shaft.Name, LoadDeg: a.TowardsDeg})
		for _, h := range a.Holes {
			b := of[h.Name()]
			x := chance.Hole{Hole: b.Hole, On: i, At: b.At, FoundMM: h.Kept().Off, Fitting: fitted(w, j, b)}
			if b.Bore.Now != nil {
				x.Worn = h.Survey.Stands()
			}
			if x.Fitting == nil && !h.Done() {
				x.At = h.Survey.FoundCentre(h.Load)
			}
			f.Holes = append(f.Holes, x)
		}
	}
	f.Pairs = triedPairs(w, j, s, f.Holes)
	return f
}

// finishes are the finishes of a seat as the trials know them.
var finishes = map[seat.Finish]chance.Finish{seat.AsDelivered: chance.AsDelivered, seat.Mandrel: chance.Mandrel,
	seat.Ream: chance.Ream, seat.BoreInPlace: chance.BoreInPlace, seat.ToOwnAxle: chance.OwnAxle}

// holds are what holds a bush, as the trials know it.
var holds = map[seat.Hold]chance.Hold{seat.ByPress: chance.Pressed, seat.ByCompound: chance.Bonded,
	seat.ByCap: chance.Capped}

// fitted is what the trials want to know of the seat that was chosen for a
// hole; nil where it stays as it is.
func fitted(w *books, j *job.Job, b bored) *chance.Fitting {
	a := b.Chosen
	if a == nil {
		return nil
	}
	m := a.Bush.Metal
	f := &chance.Fitting{
		Renews: a.Mend == seat.Renew || a.Mend == seat.MadeToFit, SetUMM: a.USet, Hold: holds[a.HeldBy], Filled: a.Filled,
		Tool: a.Way.Name, SeatMM: [2]float64{a.SeatLow, a.SeatHigh},
		Bush: chance.Bush{ODMM: [2]float64{a.Bush.ODLow, a.Bush.ODHigh}, BoreMM: [2]float64{a.Bush.BLow, a.Bush.BHigh},
			RunoutMM: bushRunout(w, j, a.Bush), ELow: m.ELow, EHigh: m.EHigh, YieldMPa: [2]float64{m.Yield, m.YieldHi},
			Porous: m.Porous, Turned: a.Bush.Turned, OnHand: a.Bush.OnHand},
		WindowMM: [2]float64{a.WindowLow, a.WinHigh}, MostUMM: a.UHigh, Stress: a.Stress, LeftMM: a.Ligament,
		Finish: finishes[a.Finish], BoreMM: a.Bore, ExpectedMM: a.Expected,
		MustPassMM: b.Wanted.MustPass, Live: b.Wanted.Live,
	}
	if p := a.Part; p != nil {
		f.Part = &chance.Part{Chance: p.Chance}
		if p.Stays { // as it has for years
			f.Part.Chance = 1
		}
	}
	if a.Mend == seat.MadeToFit {
		f.PlaceU = middleU(w, b)
	}
	f.OwnMM, f.OverMM = toolOf(w, j.Shop, a)
	for i := range b.Answers {
		if o := &b.Answers[i]; o.Feasible && o.SeatLow > a.SeatHigh+1e-9 {
			f.Larger = append(f.Larger, chance.Larger{SeatMM: o.SeatLow, LeftMM: o.Ligament})
		}
	}
	return f
}

// bushRunout is the total run-out of a bush, mm: as measured, of one turned in
// one chucking none, else as much as is usual.
func bushRunout(w *books, j *job.Job, b seat.Bush) float64 {
	for _, own := range j.Bushes {
		if own.Code == b.Code && own.Runout.Given() {
			return b.Runout
		}
	}
	if b.Turned {
		return 0
	}
	return w.rules.V("bush_runout_mm")
}

// middleU is how well the middle of a hole is known that is taken as it is, mm:
// of the seat of an old bush by the instrument that read it, else as surveyed.
func middleU(w *books, b bored) float64 {
	if b.Bore.Seat != nil {
		r, err := w.instr.Of(b.Bore, "centre", survey.Middle)
		if err != nil {
			r = w.instr.Default(survey.Middle)
		}
		return r.U
	}
	return b.U
}

// toolOf are the limits of the tool that makes a seat, before what it may cut
// over, and the most that it does. A spindle lets an end mill cut larger by its
// run-out at the most; the spread of the rule holds that of an ordinary one
// already.
func toolOf(w *books, sh *job.Shop, a *seat.Answer) (own [2]float64, over float64) {
	own = [2]float64{a.SeatLow, a.SeatHigh}
	switch a.Way.Kind {
	case seat.Reamer:
		if lo, hi, err := seat.ReamerLimits(w.limits, sh.Reamers[a.Way.Index]); err == nil {
			return [2]float64{lo, hi}, a.SeatHigh - hi
		}
	case seat.EndMill:
		over = sh.Runout.Float() - w.rules.V("end_mill_mm")
	}
	return own, over
}
