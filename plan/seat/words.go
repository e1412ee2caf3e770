package seat

import (
	"strings"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
)

// The rules of what the seat has to say.
const (
	RuleNoSeat    finding.Rule = "seat/no seat"
	RuleOldBush   finding.Rule = "seat/old bush in"
	RuleSlackens  finding.Rule = "seat/press slackens"
	RuleYields    finding.Rule = "seat/rim yields"
	RuleUnproven  finding.Rule = "seat/holding unproven"
	RuleSecond    finding.Rule = "seat/second hold"
	RuleHeavy     finding.Rule = "seat/heavy press"
	RuleCorner    finding.Rule = "seat/corner"
	RuleNearHole  finding.Rule = "seat/near hole"
	RuleMandrelIn finding.Rule = "seat/mandrel in"
	RuleFilled    finding.Rule = "seat/wear filled"
	RuleShort     finding.Rule = "seat/short seat"
	RulePartner   finding.Rule = "seat/partner"
	RulePV        finding.Rule = "seat/pv"
	RuleToBuy     finding.Rule = "seat/to buy"
	RuleProud     finding.Rule = "seat/bush proud"
	RuleSidePlay  finding.Rule = "seat/side play"
	RuleWashers   finding.Rule = "seat/washers"
	RuleTemper    finding.Rule = "seat/temper"
	RuleBush      finding.Rule = "seat/bush"
	RuleReamer    finding.Rule = "seat/reamer"
	RuleSeries    finding.Rule = "seat/bush series"
	RuleStock     finding.Rule = "seat/stock"
	RuleByChance  finding.Rule = "seat/by chance"
)

func sayLeftOut(l *finding.List, rule finding.Rule, at finding.Place, err error, fix say.Text) {
	l.Raise(finding.Caution, rule, at, say.F("left out: %v", err), fix)
}

func saySeries(l *finding.List, err error) {
	l.Raise(finding.Caution, RuleSeries, finding.Place{}, say.F("%v", err), "correct the table")
}

func sayTemper(l *finding.List, at finding.Place, plate string, yield float64) {
	l.Raise(finding.Caution, RuleTemper, at,
		say.F("the temper of %s is not said: a yield of %v is assumed", plate, say.Num(yield, 0, "MPa")),
		`write the temper with the material, for example "brass sheet, half hard"`).Against(yield, yield, "MPa")
}

// Findings says what a seat wants said, or that there is none.
func Findings(in Input, x Seated) finding.List {
	s := speaker{in: &in, x: &x, at: in.Job.Place(x.Name())}
	if x.Chosen == nil {
		s.noSeat()
		return s.said
	}
	if x.Old.Bore.Bushed && !x.Old.Bore.BushedOD.Given() {
		s.caution(RuleOldBush, "the old bush is still in and its seat is not known: the new one may not clear it",
			"push it out, measure the diameter and the middle of its seat, and plan again: a sound one is renewed and nothing is cut")
	}
	s.byChance(x.Chosen)
	s.press(x.Chosen)
	s.wall(x.Chosen)
	s.bush(x.Chosen)
	return s.said
}

// speaker says what one bore gives cause to.
type speaker struct {
	in   *Input
	x    *Seated
	at   finding.Place
	said finding.List
}

func (s *speaker) caution(rule finding.Rule, text, fix say.Text) *finding.Finding {
	return s.said.Raise(finding.Caution, rule, s.at, text, fix)
}

func (s *speaker) note(rule finding.Rule, text say.Text) {
	s.said.Raise(finding.Note, rule, s.at, text, "")
}

// byChance says that the limits of a seat miss by a little, and how often it comes
// right.
func (s *speaker) byChance(a *Answer) {
	if a.Slight.What == noFail {
		return
	}
	fix := say.F("gauge every seat before a bush goes in, and accept %v", say.Limits(a.SeatLow, a.SeatHigh, 3))
	if a.Slight.What == boreTooLarge {
		fix = say.F("gauge every bore when its bush is in, and accept %v", say.Limits(a.Bore[0], a.Bore[1], 3))
	}
	s.caution(RuleByChance, say.F("bush %s with %s may miss by a little (%v) and is taken by what that is worth: this seat comes right in about %v",
		a.Bush.Code, a.Way.Name, a.Slight.Text(), hundreds(a.Chance)), fix)
}

// noSeat says why the nearest bushes cannot be seated, and what would seat one.
func (s *speaker) noSeat() {
	text := say.Text("no bush on the list can be seated here")
	fix := say.Text("measure the bushes in the drawer into bushes:, or add {make: turned} there and lathe: yes to the shop file")
	fell := Nearest(s.x.Answers)
	if len(fell) == 0 {
		text = "there is no bush to choose from"
	} else {
		fix = fell[0].Fail.WouldSeat()
	}
	for _, a := range fell[:min(3, len(fell))] {
		text += "; " + a.Missed()
	}
	if order := s.assembly(); order != "" {
		fix = order
	}
	s.said.Raise(finding.Stop, RuleNoSeat, s.at, text, fix)
}

// Missed says what fell and why: "drawer 7 with 5 mm H7 reamer (...)".
func (a *Answer) Missed() say.Text {
	with := say.Text("")
	if a.Way.Kind != NoTool {
		with = say.F(" with %s", a.Way.Name)
	}
	return say.F("%s%v (%v)", a.Bush.Code, with, a.Fail.Text())
}

// assembly says which order of assembly lets through what must pass, where that
// alone is what stands in the way; empty where it is not.
func (s *speaker) assembly() say.Text {
	h, r := s.x.Hole, s.in.Rules
	lim := BoreLimits(h, r)
	if lim[0] <= lim[1] || h.MustPass <= 0 {
		return ""
	}
	// Put in from this end, the shaft brings what lies at its other end through
	// this bore instead.
	shaft, other := s.x.Old.Shaft, job.Right
	if s.x.side() == job.Right {
		other = job.Left
	}
	most := max(shaft.Journal.On(other).Float(), shaft.MustPass.On(other).Float(), shaft.Unworn.On(other).Float())
	if most > 0 && most+r.Pass <= lim[1] {
		return say.F("put the shaft in from the %s: then only %v has to pass here", s.x.side(), say.MM(most, 3))
	}
	return say.F("no order of assembly lets %v through a bore that still runs: turn it down, or fit that part after the shaft is in", say.MM(h.MustPass, 3))
}

// slackening is what a press that slackens holds along, from fresh to old: at
// once, after 100 days and after 5 years, by the creep published of its zinc.
func (a *Answer) slackening(plate *Plate, friction float64) say.Text {
	if a.Left <= 0 || plate.ERelaxed <= 0 || plate.EYears <= 0 {
		return ""
	}
	along := func(e float64) say.Figure {
		st := a.Hold
		st.Housing.E = e
		return say.Num(AxialForce(friction, a.SeatHigh, a.Contact, st.At(a.Left).P), 0, "N")
	}
	return say.F("; with the largest seat and the smallest bush from %v along when new to %v in 100 days and %v in 5 years "+
		"if it creeps as alloy 3 does at 25 C under a lasting load", along(plate.ELow), along(plate.ERelaxed), along(plate.EYears))
}

// press says what the press and the hold ask for.
func (s *speaker) press(a *Answer) {
	plate, r := s.in.Casting.Plate, s.in.Rules
	mpa := func(v float64) say.Figure { return say.Num(v, 0, "MPa") }
	if a.Slackens {
		s.caution(RuleSlackens,
			say.F("this press puts %v of tension into the casting and zinc creeps above %v: over the years it will slacken%s", mpa(a.Peak), mpa(plate.Creep),
				a.slackening(&plate, s.in.Shop.FrictionLow)),
			a.Second.asWell()+"take a larger seat or a lighter press").Against(dim.Sig9(a.Peak), plate.Creep, "MPa")
	}
	if a.OverYield {
		s.caution(RuleYields, "the rim of the seat yields a little: ordinary practice in clock plates",
			"a smaller bush or a lighter press").Against(dim.Sig9(a.Peak), dim.Sig9(a.PeakLimit), "MPa")
	}
	if a.Unproven && a.Second == 0 {
		s.note(RuleUnproven, say.F("a porous bush: its holding of %v is worked out without roughness and is not proven", say.Num(a.Force[0], 0, "N")))
	}
	if a.Second != 0 && !a.Slackens {
		s.caution(RuleSecond, say.F("the press alone is not enough here (%v): %s", s.short(a), a.Second),
			a.Second.fix())
	}
	if usual := r.UsualShare * a.SeatLow; a.UHigh > usual+slack && a.HeldBy == ByPress {
		s.caution(RuleHeavy,
			say.F("a press of up to %v is tighter than the %v of the makers' tightest fit for such a bush",
				say.Um(a.UHigh*1000, 1), say.Um(usual*1000, 1)),
			"press in one slow stroke, stop at the halt, and look for a crack all round the seat with a glass before "+
				"the next; a larger seat or a smaller bush presses less").Against(dim.Sig9(a.UHigh*1000), dim.Sig9(usual*1000), "um")
	}
}

// short says by how much a press falls short, or why it is not counted on.
func (s *speaker) short(a *Answer) say.Text {
	h, r := &s.x.Hole, &s.in.Rules
	var out []say.Text
	if a.Force[0] < r.HoldN-slack {
		out = append(out, say.F("holds %v along, needs %v", say.Force(a.Force[0], "N"), say.Num(r.HoldN, 0, "N")))
	}
	if need := NeededTorque(r.HoldFactor, r.HoldFriction, h.Load, h.Journal); a.Torque[0] < need-slack {
		out = append(out, say.F("holds %v turning, needs %v", say.Force(a.Torque[0], "N mm"), say.Force(need, "N mm")))
	}
	if len(out) > 0 {
		out[0] = "with the largest seat and the smallest bush, bedded in, it " + out[0]
	}
	if t := a.LooseAt; t > h.TLow && t < h.THigh {
		out = append(out, say.F("it may come loose at %v", say.Num(t, 0, "C")))
	}
	if a.Bush.Metal.Plastic {
		out = append(out, "plastic gives way in time")
	}
	if len(out) == 0 {
		out = append(out, say.F("only a light press may go beside %v of metal", say.MM(a.Ligament, 2)))
	}
	return say.Join("; ", out...)
}

// wall says what the mechanics of one bush near one edge leave out.
func (s *speaker) wall(a *Answer) {
	if a.Corner {
		s.caution(RuleCorner, "two edges are near; the tension worked out for the nearest one alone is too low",
			"press lightly with a second hold, or set a clean solid bush in retaining compound")
	}
	if a.NearHole != "" {
		s.caution(RuleNearHole, say.F("the metal towards %s is thin; the tension worked out without it is too low",
			a.NearHole),
			"press lightly, with the other hole filled by its shaft or a pin")
	}
	if a.MandrelIn {
		s.caution(RuleMandrelIn, say.F("press it with the %v mandrel left in its bore: the bush cannot give way, and the press of %v is worked out for that",
			say.MM(a.FinishSizes[0], 3), say.Num(a.PHigh, 0, "MPa")), "")
	}
	if a.Filled {
		s.caution(RuleFilled, "this seat does not clear the wear: the rest is filled with the compound, and the shaft stays out until it is hard",
			"a larger bush or a plug clears it")
	}
	if a.Short {
		s.caution(RuleShort, say.F("the plate is %v for a seat of %v and there is no room for a shoulder: finish both bores in line",
			say.MM(s.x.Hole.Plate, 2), say.MM(a.SeatHigh, 2)), "room between plate and hub for a shoulder")
	}
	if a.HeldBy == ByCap {
		s.note(RulePartner, "a bearing under a cap is renewed here: measure its partner on this shaft too")
	}
}

// bush says what there is to know of the bush itself.
func (s *speaker) bush(a *Answer) {
	if a.PVHigh {
		s.caution(RulePV, say.F("pv of %v is above the cautious figure for %s", say.Num(a.PV, 2, "MPa m/s"),
			a.Bush.Metal.Name), "oil it often, or a longer bush")
	}
	if a.Bush.ToBuy {
		s.note(RuleToBuy, say.F("bush %s is not on the shelf: it has to be bought", a.Bush.Code))
	}
	if a.Proud > s.in.Rules.Proud {
		face := "face it to length before pressing, or let it stand proud inside if there is room"
		if a.MustFace {
			face = "face it to length before pressing, there is no room inside for what stands proud"
		}
		s.note(RuleProud, say.F("the bush is %v longer than the plate: %s", say.MM(a.Proud, 2), face))
	}
}

// asWell says what the plan has to hold a bush beside its press, and leads on to
// what would hold it better.
func (s Second) asWell() say.Text {
	if s == 0 {
		return ""
	}
	return say.F("none needed now, %s in this plan; to hold it better ",
		s.words(map[Second]string{Flange: "its flange holds it along", Compound: "retaining compound holds it",
			Stake: "staking holds it"}))
}

// fix is how a second hold is made, and what would do without it.
func (s Second) fix() say.Text {
	return say.Words(s.words(map[Second]string{Flange: "the flange takes the thrust",
		Compound: "compound goes on a clean, degreased outside",
		Stake:    "stake it with three light punch marks round the edge of the seat"})) + "; a longer bush or a larger seat holds more by itself"
}

func (s Second) words(of map[Second]string) string {
	var out []string
	for _, hold := range s.Each() {
		out = append(out, of[hold])
	}
	return strings.Join(out, " and ")
}

func leavesAtEdge(a *Answer) say.Text { return say.F("leaves %v at the edge", say.MM(a.Ligament, 2)) }
