package mesh

import (
	"math"
	"strings"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
)

// What the room has to say.
const (
	Unreckoned   finding.Rule = "mesh/mesh"
	ByHandbook   finding.Rule = "mesh/backlash by handbook"
	WindowEmpty  finding.Rule = "mesh/window empty"
	ToothCount   finding.Rule = "mesh/tooth count"
	NotTrusted   finding.Rule = "mesh/mesh not trusted"
	EndFloat     finding.Rule = "mesh/end float"
	OffMiddle    finding.Rule = "mesh/wheel off its middle"
	NarrowWheel  finding.Rule = "mesh/narrow wheel"
	RunsOut      finding.Rule = "mesh/gear runs out"
	TightAsFound finding.Rule = "mesh/mesh tight as found"
	Contradicted finding.Rule = "mesh/mesh contradicts"
	Overlap      finding.Rule = "mesh/teeth overlap"
)

func (r *reader) say(level finding.Level, rule finding.Rule, g *job.Gear, text, fix say.Text) {
	r.found.Raise(level, rule, r.Job.PlaceAt(g.Name, "gears/"+g.Name), text, fix)
}

func (r *reader) unreckoned(g *job.Gear, err error) {
	r.say(finding.Caution, Unreckoned, g, say.F("%v", err), "check teeth, module, angle and place of the mating gear")
}

func (r *reader) byHandbook(g *job.Gear, d Default) {
	r.say(finding.Note, ByHandbook, g, say.F("no backlash is given: %v square to the flanks is taken (%s, %s)",
		say.MMs(d.Lo, d.Hi, 3), d.Least.Address, d.Most.Address), "give backlash: [least, most] for this gear")
}

func (r *reader) empty(g *job.Gear, w Window) {
	r.say(finding.Caution, WindowEmpty, g, say.F("no centre distance gives this backlash with enough teeth in "+
		"contact (%s against %s): the middle, %v, is aimed at",
		string(w.LoBy), string(w.HiBy), say.MM(w.Middle(), 3)), "wider backlash limits or other gears")
}

// blanks says where a tip diameter belongs to another tooth count.
func (r *reader) blanks(g *job.Gear, tips []Tip) {
	for _, t := range tips {
		if !t.Agrees {
			r.say(finding.Caution, ToothCount, g, say.F("tip diameter %v measured, %v expected: this blank belongs "+
				"to %.1f teeth, so the mesh only reports and moves nothing",
				say.MM(t.Measured, 2), say.MM(t.Expected, 2), t.VirtualTeeth), "check module and teeth, or give the "+
				"profile shift")
		}
	}
}

func (r *reader) untrusted(g *job.Gear) {
	r.say(finding.Note, NotTrusted, g, say.F("not given: %s; so this mesh is reported but moves no shaft",
		strings.Join(unmeasured(g), ", ")), "measure and give it")
}

// unmeasured lists what a pair would have to be measured for to be trusted.
func unmeasured(g *job.Gear) []string {
	var out []string
	if !g.Wheel.Tip.Given() {
		out = append(out, "the tip diameter of the wheel (tip)")
	}
	if Kind(g.Kind) == WormDrive && (g.WheelForm == "" || Form(g.WheelForm) == Unknown) {
		out = append(out, "the form of the wheel (wheel_form)")
	}
	if g.Pinion != nil && !g.Pinion.Tip.Given() {
		out = append(out, "the tip diameter of the pinion (tip)")
	}
	if len(out) == 0 {
		out = append(out, "a tip diameter that fits the tooth count")
	}
	return out
}

func (r *reader) endFloat(g *job.Gear, pair Worm) {
	if float := g.Worm.EndFloat; float.Given() {
		r.say(finding.Note, EndFloat, g, say.F("%v of end float of the worm shows as %.1f degrees of play at the "+
			"wheel, beside the backlash",
			say.MM(float.Float(), 2), pair.EndFloatPlay(float.Float())), "")
	}
}

// wheelWords says where a wheel does not lie under its worm as it should.
func (r *reader) wheelWords(g *job.Gear, d Drive, pair Worm) {
	if d.Closes > r.Rules.V("rim_closes_mm") {
		r.say(finding.Caution, OffMiddle, g, say.F("the wheel stands %v off the middle of the worm: the rim of its "+
			"throat comes %v closer",
			say.MM(g.Worm.Offset.Float(), 2), say.MM(d.Closes, 3)), "centre the wheel on its axle")
	}
	if need := pair.FaceNeeded(); g.Wheel.Face.Given() && d.Face < need {
		r.say(finding.Caution, NarrowWheel, g, say.F("a straight-cut wheel under this worm is touched %v either side "+
			"of its middle; a face of %v runs on its edges and the tight distance comes out too large",
			say.MM(need/2, 2), say.MM(d.Face, 2)), "")
	}
}

// PlaceDoubt is the standard uncertainty in mm of where a wheel will stand to
// its mate by clamping, n holes, old centres and the place of the mate: the
// root of their squares, the holes' over n.
func PlaceDoubt(setup, hole, n, old, mate float64) float64 {
	return math.Hypot(math.Hypot(setup, hole/math.Sqrt(n)), math.Hypot(old, mate))
}

// runsOut says where gears run out so much that no care with the bores helps:
// half the run-out, by which the teeth come nearer once a turn, is more than
// the doubt of the place.
func (r *reader) runsOut(g *job.Gear, d Drive) {
	s := r.Shafts[d.Shaft]
	u := PlaceDoubt(r.USetup, r.UHole, math.Max(1, float64(s.Holes)), s.U, d.UMate)
	half := d.Runout / 2
	if half <= u+1e-9 {
		return
	}
	r.say(finding.Note, RunsOut, g, say.F("the gears run out %v, so the teeth come %v nearer once a turn: that is "+
		"more than the doubt of these bores (%v)",
		say.MM(d.Runout, 2), say.MM(half, 2), say.MM(u, 3)), "turn each gear on its axle "+
		"under an indicator, over a pin in the gaps between teeth; press the one that swings true on its axle, or "+
		"change it, and read again before the first cut")
}

// Seen is the drive with what wear has done to it in words, and with what is
// left open of its teeth after that: original and found are its centre distances
// under load when new and as found, u is the doubt of where both shafts stood and
// along that of how far apart, mm.
// Where the figures contradict what is seen, the drive that comes back is not
// trusted.
func (d Drive) Seen(j *job.Job, original, found, u, along float64) (Drive, finding.List) {
	var said finding.List
	d.Wear = WearWords(StateAt(d.Pair, original), StateAt(d.Pair, found), mates[d.Kind])
	at := j.PlaceAt(d.Name, "gears/"+d.Name)
	switch agree, short := Agree(d.Pair, found, u, d.UGeom, d.Moved, j.Binds == job.Yes); agree {
	case CannotReach:
		said.Raise(finding.Note, TightAsFound, at,
			say.F("the shaft cannot reach the end of its hole: the teeth meet first, short by %v",
				say.MM(short, 3)), "")
	case Contradicts:
		d.Trusted, d.Denied = false, true
		tight := d.Pair.Tight()
		yet := "yet nothing binds"
		if j.Binds == job.Unsaid {
			yet = "yet nobody says that it binds"
		}
		said.Raise(finding.Caution, Contradicted, at,
			say.F("by these figures the teeth would have jammed as found (centre distance %v, least %v), %s: the "+
				"mesh is not trusted and moves nothing",
				say.MM(found, 3), say.MM(tight, 3), yet),
			"measure the place of the mating gear and this bore again, and count the teeth; say moved: yes if it was "+
				"renewed since").
			Against(dim.Sig9(found), dim.Sig9(tight), "mm")
	}
	ran := Ran{Original: original, Found: found, U: math.Hypot(along, d.UTeeth), Moved: d.Moved, Binds: j.Binds == job.Yes}
	if d.Spread = d.SpreadFrom(d.Odd, d.Bound, ran); d.Spread != nil {
		d.Ties = d.TiesOf(d.Spread, ran)
		d.UGeom = math.Min(d.reach(d.Odd, d.Bound), math.Hypot(d.UTeeth, d.Spread.U()))
	}
	return d, said
}
