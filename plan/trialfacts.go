package plan

import (
	"slices"

	"rebush/plan/chance"
	"rebush/plan/job"
	"rebush/plan/seat"
	"rebush/plan/survey"
	"rebush/plan/target"
)

// trialFacts is a plan as its trials read it.
func trialFacts(w *books, j *job.Job, shop target.Shop, holes []survey.Hole, s target.Settled,
	seats Seated, r Routed) chance.Facts {
	in := seats.In
	f := chance.Facts{USetupMM: shop.Setup.U, UHoleMM: shop.Hole.U,
		Lathe: in.Shop.Lathe, Compound: in.Shop.Compound, Rules: chance.RulesOf(w.rules)}
	for _, b := range in.Stock {
		f.Turns = f.Turns || b.Turned && in.Shop.Lathe
	}
	for _, s := range r.Setups {
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
			x := chance.Hole{Hole: b.Hole, On: i, At: b.At, FoundMM: h.Kept().Off, Fitting: fitted(w, j, b, r.Scrap)}
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
// hole; nil where it stays as it is. scrap are the tools that are tried first.
func fitted(w *books, j *job.Job, b bored, scrap []string) *chance.Fitting {
	a := b.Chosen
	if a == nil {
		return nil
	}
	f := &chance.Fitting{
		Renews: a.Mend == seat.Renew || a.Mend == seat.MadeToFit, SetUMM: a.USet, Hold: holds[a.HeldBy], Filled: a.Filled,
		Tool: a.Way.Name, Tried: slices.Contains(scrap, a.Way.Name), SeatMM: [2]float64{a.SeatLow, a.SeatHigh}, Odds: a.Odds,
		Bush: chance.Bush{RunoutMM: bushRunout(w, j, a.Bush), Porous: a.Bush.Metal.Porous, Turned: a.Bush.Turned,
			OnHand: a.Bush.OnHand},
		LeftMM: a.Ligament, Finish: finishes[a.Finish],
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
