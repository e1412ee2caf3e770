package seat

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/plan/job"
)

func sidePlayKnown(j *job.Job, s *job.Shaft) bool {
	return s.HubToHub.Given() && j.Chassis.Width.Given()
}

// Washers is the thickness of all washers on a shaft together, mm.
func Washers(s *job.Shaft) float64 {
	sum := 0.0
	for _, w := range s.Washers {
		sum += w.Float()
	}
	return sum
}

// SidePlays works out the side play of each shaft with the chosen bushes, by
// shaft, and says which washer or what to face off where it is outside its
// limits.
func SidePlays(book *ledger.Ledger, in Input, seated []Seated) (map[string]*dim.MMRange, finding.List) {
	plays := map[string]*dim.MMRange{}
	var said finding.List
	for i := range in.Job.Shafts {
		s := &in.Job.Shafts[i]
		if !sidePlayKnown(in.Job, s) {
			continue
		}
		flanges, waiting := flangesOn(s, seated)
		kept, out := keptWashers(s, in.Job.Chassis.Width.Float(), flanges, in.Rules)
		play := explainSidePlay(book, in.Job, s, flanges, kept)
		plays[s.Name] = dim.Sizes(play, play)
		if s.Leave {
			continue
		}
		book.Cite("rules/side_play_mm")
		if !waiting { // without a seat there is no flange to reckon with
			saySidePlay(&said, in.Job.Place(s.Name), dim.Sig9(play), in.Rules, out)
		}
	}
	return plays, said
}

// FlangesIn is the length that the flanges of bushes take which this job has
// fitted and finished on a shaft already, mm.
func FlangesIn(s *job.Shaft) (length float64) {
	for i := range s.Bores {
		if n := s.Bores[i].Now; n != nil && n.Done {
			length += n.SideMM
		}
	}
	return length
}

// flangesOn is the length that flanges take outside the plates of a shaft, and
// whether a bore of it still waits for a bush.
func flangesOn(s *job.Shaft, seated []Seated) (length float64, waiting bool) {
	length = FlangesIn(s)
	for _, x := range seated {
		if x.Old.Shaft.Name != s.Name {
			continue
		}
		if x.Chosen == nil {
			waiting = true
			continue
		}
		length += x.Chosen.SideUse
	}
	return length, waiting
}

func explainSidePlay(book *ledger.Ledger, j *job.Job, s *job.Shaft, flanges, washers float64) float64 {
	page := book.Page("shafts/" + s.Name)
	play := page.Calc4("side_play_mm", "side play", "mm", "hub to hub less width, flanges and washers",
		"plane geometry", SidePlay,
		page.Leaf("hub_to_hub_mm", "hub to hub", "mm", j.Source("shafts/"+s.Name+"/hub_to_hub"), s.HubToHub.Float()),
		page.Leaf("width_mm", "width over both plates", "mm", j.Source("chassis/width"), j.Chassis.Width.Float()),
		page.Leaf("flanges_mm", "flanges outside the plates", "mm", j.Source("bushes"), flanges),
		page.Leaf("washers_mm", "washers that stay on", "mm", j.Source("shafts/"+s.Name), washers))
	for _, end := range [][2]string{{"min", "least"}, {"max", "largest"}} {
		page.Calc1("side_play_mm/"+end[0], end[1]+" side play", "mm", "the side play as it comes out",
			"plane geometry", itself, play)
	}
	return play.V
}

// keptWashers is what stays on a shaft of its washers once flanges take up
// length: all of them where the side play allows it, else as many as it takes
// come out, first the one that brings it between its limits.
func keptWashers(s *job.Shaft, width, flanges float64, r Rules) (kept float64, out []float64) {
	kept = Washers(s)
	play := func() float64 { return SidePlay(s.HubToHub.Float(), width, flanges, kept) }
	if flanges <= 0 {
		return kept, nil
	}
	on := make([]float64, 0, len(s.Washers))
	for _, w := range s.Washers {
		on = append(on, w.Float())
	}
	for play() < r.SideLow-slack && len(on) > 0 {
		i := nextOff(on, play(), r)
		kept, out = kept-on[i], append(out, on[i])
		on = append(on[:i], on[i+1:]...)
	}
	if out == nil {
		return kept, nil
	}
	return dim.Sig9(kept), out
}

// nextOff is which washer comes off: the thinnest that brings the play between
// its limits, else the thickest.
func nextOff(on []float64, play float64, r Rules) int {
	best := -1
	for i, w := range on {
		if after := play + w; after >= r.SideLow-slack && after <= r.SideHigh+slack && (best < 0 || w < on[best]) {
			best = i
		}
	}
	if best >= 0 {
		return best
	}
	best = 0
	for i, w := range on {
		if w > on[best] {
			best = i
		}
	}
	return best
}

// washerToAdd is the washer that brings a side play to the middle of its
// limits, in whole steps.
func washerToAdd(play float64, r Rules) float64 {
	per := 1 / r.WasherStep
	return math.Max(r.WasherStep, math.Round((play-(r.SideLow+r.SideHigh)/2)*per)/per)
}
