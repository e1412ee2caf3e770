package plan

import (
	"fmt"
	"math"

	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/seat"
	"rebush/plan/verdict"
)

// judge sets the options side by side and picks one.
func (m *maker) judge() {
	c := m.verdictCase()
	r, err := verdict.Decide(c)
	if err != nil {
		m.p.Findings.Raise(finding.Caution, "verdict/verdict", finding.Place{},
			say.F("%v", err), "")
		return
	}
	v := &Verdict{Choice: r.Choice, Sentence: r.Sentence, Currency: c.Currency, Bores: []BoreWay{}, Options: []Option{}}
	if r.RunnerUp != nil {
		v.RunnerUp = &RunnerUp{r.RunnerUp.Name, r.RunnerUp.WinsIf}
	}
	for _, b := range r.Bores {
		v.Bores = append(v.Bores, BoreWay{b.Bore, b.Way})
	}
	m.explainVerdict(c, r)
	for _, o := range r.Options {
		v.Options = append(v.Options, Option{Name: o.Name, Feasible: o.Feasible, WhyNot: o.WhyNot, Cost: rounded(o.Cost, 100), Hours: rounded(o.Hours, 100), Chance: rounded(o.Chance, 1e6),
			Loses: some(o.Loses), Keeps: some(o.Keeps)})
	}
	m.p.Verdict = v
	for _, f := range r.Findings {
		if f.Rule.Name() == "condition" {
			continue // said already, before any figure was looked at
		}
		m.p.Findings.Add(f)
	}
}

// explainVerdict records hours and cost of every option: what the shop says of
// its time and money goes in, and the decision is made again from it.
func (m *maker) explainVerdict(c verdict.Case, r verdict.Result) {
	l := m.book
	in := []ledger.Num{
		l.Leaf("shop/setup_hours", "hours of one set-up", "h", place(m.j.Shop.At("hours"), "built-in small shop:1"), c.SetupHours),
		l.Leaf("shop/strip_hours", "hours to strip and rebuild", "h", place(m.j.Shop.At("hours"), "built-in small shop:1"), c.StripHours),
	}
	if c.Rate != nil {
		in = append(in, l.Leaf("shop/rate", "money per hour", orText(c.Currency, "money"), place(m.j.Shop.At("rates"), "built-in small shop:1"), *c.Rate))
	}
	again := lastOf(func(v []float64) verdict.Result {
		o := c
		o.SetupHours, o.StripHours = v[0], v[1]
		if len(v) > 2 {
			o.Rate = &v[2]
		}
		out, _ := verdict.Decide(o)
		return out
	})
	for i, o := range r.Options {
		at := "verdict/options/" + o.Name + "/"
		figure := func(k, what, unit, formula string, of func(verdict.Option) *float64) {
			if of(o) == nil {
				return
			}
			l.Calc(at+k, what+" of "+o.Name, unit, formula, "planning rule: hours of set-ups, operations, strip and rebuild; money; chance of each fault times its cost",
				func(v []float64) float64 {
					out := again(v)
					if i >= len(out.Options) || of(out.Options[i]) == nil {
						return math.NaN()
					}
					return sig9(*of(out.Options[i]))
				}, in...)
		}
		figure("hours", "planned hours", "h", "set-ups x their time + minutes of the operations + strip and rebuild", func(o verdict.Option) *float64 { return o.Hours })
		figure("cost", "expected cost", orText(c.Currency, "money"), "hours x rate + bushes + chance of each fault x what it costs", func(o verdict.Option) *float64 { return o.Cost })
	}
}

func some(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}

func rounded(v *float64, per float64) *float64 {
	if v == nil {
		return nil
	}
	return num(math.Round(*v*per) / per)
}

func (m *maker) verdictCase() verdict.Case {
	j, sh := m.j, m.j.Shop
	condition := j.Chassis.Condition
	if condition == "" {
		condition = "unknown"
	}
	if m.grown && condition != "cracked" {
		condition = "swollen"
	}
	if m.forbidden != "" && condition != "cracked" && condition != "swollen" {
		condition = m.forbidden
	}
	c := verdict.Case{Condition: condition, KeepOriginal: j.Chassis.KeepOriginal,
		Binds: j.Binds == job.Yes, Noisy: j.Noisy == job.Yes, Rubs: j.Rubs == job.Yes,
		Rate: sh.PerHour, Currency: sh.Currency, SetupHours: sh.SetupHours, StripHours: sh.StripHours, Value: j.Value,
		Limits: verdict.Limits{LeaveMM: m.rules.V("play_leave_mm"), LookAgainMM: m.rules.V("play_look_again_mm"), Tie: m.rules.V("verdict_tie"),
			ReworkMinutes: m.rules.V("minutes_rework"), SpoiltMinutes: m.rules.V("minutes_spoilt_bush"), SecondHand: m.rules.V("second_hand_chance")}}
	const worn, short = "that feels just like a worn hole", "what comes of that is no fault of the bearings"
	for _, f := range []struct{ value, bad, words, why string }{
		{j.Symptoms.Rims, "loose", "a rim is loose on its insulator or hub", worn},
		{j.Symptoms.Hubs, "loose", "a hub is loose on its axle", worn},
		{j.Symptoms.Gauge, "wide", "the wheels stand too wide on their axle", worn},
		{j.Symptoms.Gauge, "narrow", "the wheels stand too close on their axle", worn},
		{j.Symptoms.Ohms, "leaking", "the insulation of a wheel leaks", short},
		{j.Symptoms.Ohms, "shorted", "the insulation of a wheel is shorted", short},
	} {
		if f.value == f.bad {
			c.Mend = append(c.Mend, verdict.Fake{Words: f.words, Why: f.why})
		}
	}
	c.Asked = j.Binds != job.Unsaid && j.Noisy != job.Unsaid && j.Rubs != job.Unsaid
	for _, s := range []struct{ name, value string }{{"rims", j.Symptoms.Rims}, {"hubs", j.Symptoms.Hubs}, {"gauge", j.Symptoms.Gauge}, {"ohms", j.Symptoms.Ohms}} {
		if s.value == "" || s.value == "unknown" {
			c.Unchecked = append(c.Unchecked, s.name)
		}
	}
	wrong := m.wrongMeshes(&c)
	for _, b := range m.bores {
		c.Bores = append(c.Bores, m.verdictBore(b, wrong[b.shaft.Name]))
	}
	for i := range j.Shafts {
		s := &j.Shafts[i]
		c.Axles = append(c.Axles, verdict.Axle{Name: s.Name, State: s.JournalState, HasNew: sh.Lathe || sh.MachineKind == "lathe", Minutes: m.rules.V("minutes_new_axle")})
		if s.HubToHub.Given() && j.Chassis.Width.Given() && !s.Leave {
			play := s.HubToHub.Float() - j.Chassis.Width.Float() - m.washers(s)
			if _, hi := m.rules.Pair("side_play_mm"); play > 2*hi+1e-9 && c.ShimFor == "" && j.Rubs != job.Yes {
				// A bush's flange may take it up; a shim takes it up without cutting.
				c.ShimFor, c.ShimMinutes = fmt.Sprintf("side play of %s, %.2f mm", s.Name, play), m.rules.V("minutes_sizing")
			}
		}
	}
	if m.result != nil {
		n := float64(max(1, m.result.Trials))
		c.Faults = c.Limits.FaultsOf(float64(m.result.Rework)/n, float64(m.result.Spoilt)/n, float64(m.result.NextBush)/n, m.result.Lost, m.dearestBush())
	}
	if w := j.Swap; w != nil {
		c.Other = &verdict.Offer{Price: w.Price, Hours: w.Hours, SecondHand: w.SecondHand, Chance: w.Chance}
	}
	return c
}

func (m *maker) dearestBush() *float64 {
	var best *float64
	for _, b := range m.bores {
		if b.chosen != nil && b.chosen.Bush.Priced && (best == nil || b.chosen.Bush.Price > *best) {
			v := b.chosen.Bush.Price
			best = &v
		}
	}
	return best
}

// wrongMeshes says which shafts carry a mesh that is wrong as found.
func (m *maker) wrongMeshes(c *verdict.Case) map[string]string {
	wrong := map[string]string{}
	for i, x := range m.gears {
		row := verdict.Mesh{Name: x.g.Name, Right: true, Known: x.trusted && !x.window.Empty}
		if i < len(m.p.Mesh) {
			a := m.p.Mesh[i].FoundCentreMM.Float()
			if w := x.window; x.trusted && !w.Empty {
				switch {
				case a < w.Lo-1e-6:
					row.Right, row.Words = false, fmt.Sprintf("%.2f mm too close", w.Lo-a)
				case a > w.Hi+1e-6:
					row.Right, row.Words = false, fmt.Sprintf("%.2f mm too far apart", a-w.Hi)
				}
			}
		}
		if !row.Right {
			wrong[x.g.Wheel.On] = x.g.Name + " stands " + row.Words
			if x.mate >= 0 && !m.shafts[x.mate].fixed {
				wrong[m.shafts[x.mate].s.Name] = wrong[x.g.Wheel.On]
			}
		}
		c.Meshes = append(c.Meshes, row)
	}
	return wrong
}

func (m *maker) verdictBore(b *bore, wrong string) verdict.Bore {
	v := verdict.Bore{Name: b.name(), Shaft: b.shaft.Name, Fixed: b.shaft.Leave, Wrong: wrong}
	switch {
	case b.known && !b.b.Repaired:
		v.PlayMM = math.Max(0, 2*b.worn.C+b.worn.W)
	case b.b.Widest.Given():
		v.PlayMM = math.Max(0, b.b.Widest.Float()-m.read(b, "widest", "width").bias-b.journal())
	}
	if b.shaft.Leave {
		v.Wrong = ""
		return v
	}
	switch {
	case v.Wrong != "":
	case b.b.Seat != nil:
		v.Wrong = "its old bush is out"
	case !b.known:
		v.Wrong = "nothing tells where its centre was"
	}
	minutes, setups := m.sharedMinutes(b), []string(nil)
	for _, o := range m.p.Operations {
		if o.Bore == b.name() && o.Minutes != nil {
			minutes += *o.Minutes
		}
	}
	for _, s := range m.p.Setups {
		for _, name := range s.Bores {
			if name == b.name() && s.Clamping {
				setups = append(setups, s.Name)
			}
		}
	}
	name := verdict.Rebush
	why, owner := "", ""
	switch {
	case !b.known:
		why = "nothing tells where its centre was"
		owner = "nothing tells any more where the holes used to be"
	case b.chosen == nil && !b.targeted:
		why = "its new centre could not be worked out"
	case b.chosen == nil && !b.touch:
		why = "it is not worn and stays as it is"
	case b.chosen == nil && len(b.answers) == 0:
		why, owner = "there is no bush to choose from", "there is no bearing on the list to fit"
	case b.chosen == nil:
		fell := nearest(b.answers)[0].Fail
		why, owner = fell.Text().String(), fell.Question.Owner().String()
	case b.chosen.Mend == seat.Renew:
		name = verdict.Renew
	case !m.p.OK:
		why = "this shop cannot do it as it stands: see what stops it"
		owner = "this shop cannot do the work as it stands"
	}
	way := verdict.Way{Name: name, WhyNot: why, Owner: owner, Minutes: minutes, Setups: setups}
	if a := b.chosen; a != nil {
		way.Chance, way.MetalMM = a.Chance, math.Max(0, a.SeatHigh/2-b.worn.R)
		if a.Way.Kind == seat.OldSeatWay {
			way.MetalMM = 0
		}
		if a.Bush.Priced {
			p := a.Bush.Price
			way.Bush = &p
		}
	}
	v.Ways = append(v.Ways, way)
	if name != verdict.Renew {
		v.Ways = append(v.Ways, verdict.Way{Name: verdict.Renew, WhyNot: "there is no sound seat of an old bush"})
	} else {
		v.Ways = append(v.Ways, verdict.Way{Name: verdict.Rebush, WhyNot: "the old bush's seat is sound: renewing it takes off nothing"})
	}
	v.Ways = append(v.Ways, m.otherWay(b, verdict.BushInABush, minutes, setups), m.otherWay(b, verdict.Plug, minutes, setups))
	return v
}

// rebuilding are the kinds of operation that belong to strip and rebuild, whose
// hours the shop gives.
var rebuilding = map[string]bool{"line up": true, "assemble": true, "wheels": true, "prove": true}

// sharedMinutes is a bore's share of the minutes of operations that serve
// several bores: washing, trying a bush in scrap, trying the mesh.
func (m *maker) sharedMinutes(b *bore) float64 {
	n, sum := 0.0, 0.0
	for _, o := range m.bores {
		if o.chosen != nil {
			n++
		}
	}
	if b.chosen == nil || n == 0 {
		return 0
	}
	for _, o := range m.p.Operations {
		if o.Bore == "" && o.Minutes != nil && !rebuilding[o.Kind] {
			sum += *o.Minutes
		}
	}
	return sum / n
}

// otherWay asks whether a hole could be sleeved, or plugged and bored anew.
func (m *maker) otherWay(b *bore, name string, minutes float64, setups []string) verdict.Way {
	w := verdict.Way{Name: name}
	switch {
	case name == verdict.BushInABush && b.b.Seat != nil && b.b.Seat.Sound:
		w.WhyNot = "the seat of the old bush is sound: a new bush goes straight in"
		return w
	case name == verdict.BushInABush && b.b.Seat == nil && !b.b.Bushed && !b.b.Repaired:
		w.WhyNot = "there never was a bush in it: the axle runs in the bare hole"
		return w
	case !b.known || !b.targeted:
		w.WhyNot = "the old centre is not known"
		return w
	case b.b.Cap:
		w.WhyNot = "the bearing lies under a cap"
		return w
	case !m.shop.Lathe:
		w.WhyNot = "it has to be turned and the shop has no lathe"
		return w
	case !m.p.OK && b.chosen != nil && m.j.Shop.Jig != "pinned" && m.j.Shop.MachineKind != "mill" && m.j.Shop.MachineKind != "lathe":
		w.WhyNot = "it needs a jig as well: a punched start is 0.1 to 0.25 mm out"
		return w
	}
	if lim := seat.BoreLimits(b.hole, m.seatRule); b.touch && lim[0] > lim[1]+1e-9 {
		w.WhyNot = fmt.Sprintf("what must pass is %.3f mm, the largest bore that still runs %.3f", b.hole.MustPass, lim[1])
		return w
	}
	seatR := b.stands().SeatRadius(b.target) + seat.Allow(b.hole, m.seatRule)
	if b.chosen != nil {
		seatR = b.chosen.SeatHigh / 2
	}
	const wall = 1.0 // of the sleeve or the plug's web, mm
	outer := seatR + wall
	if name == verdict.Plug {
		pl := b.stands().PlugCentre(b.target, seat.Allow(b.hole, m.seatRule), 2*seatR, wall)
		outer = math.Max(pl.SeatR, pl.LeastOD/2)
	}
	left, where := b.hole.Edge-outer, "the edge"
	if b.hole.BossR > 0 && b.hole.BossR-b.hole.BossE-outer < left {
		left, where = b.hole.BossR-b.hole.BossE-outer, "the rim of the boss"
	}
	for _, n := range b.hole.Near {
		if d := n.At - n.R - outer; d < left {
			left, where = d, n.Name
		}
	}
	if need := m.seatRule.NoWall * outer; left < need {
		w.WhyNot = fmt.Sprintf("leaves %.2f mm to %s, needs %.2f", left, where, need)
		if left < 0 {
			w.WhyNot = fmt.Sprintf("would break %.2f mm through to %s", -left, where)
		}
		return w
	}
	w.Minutes = minutes + m.rules.V("minutes_turn_bush") + m.rules.V("minutes_press")
	if minutes == 0 {
		w.Minutes += 2*m.rules.V("minutes_tool_change") + m.rules.V("minutes_press") + m.rules.V("minutes_sizing")
	}
	if b.chosen != nil && b.chosen.Bush.Priced {
		// The bearing itself goes in as well; the sleeve or plug is bar end.
		p := b.chosen.Bush.Price
		w.Bush = &p
	}
	w.Setups = setups
	if len(setups) == 0 {
		w.Setups = []string{"A"}
	}
	if name == verdict.Plug {
		// The plug sets before it is drilled: the chassis comes off and goes
		// back on.
		w.Setups = append(append([]string(nil), w.Setups...), "after plugging")
	}
	w.Chance = 0.9 * chanceOf(b)
	w.MetalMM = math.Max(0, outer-b.worn.R)
	return w
}

func chanceOf(b *bore) float64 {
	if b.chosen != nil {
		return b.chosen.Chance
	}
	return 0.9
}
