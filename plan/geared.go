package plan

import (
	"math"
	"slices"

	"rebush/fits/dim"
	"rebush/fits/say"
	"rebush/fits/table"
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/survey"
)

// gearReadings are what could be measured of the gears: tip diameters that
// nobody has given, expected as their figures have them, all of them and mesh by
// mesh; the mesh tried with a dummy axle; the place of a mate, by an instrument that
// reads better; what runs out or has play that nobody measured; and gears that run
// truer.
func gearReadings(j *job.Job, w *books, drives []mesh.Drive) []change {
	var out, tips []change
	for _, d := range drives {
		if c, ok := tipsOf(j, d); ok {
			tips = append(tips, c)
		}
		out = append(out, mateBy(j, w.instr, d)...)
		out = append(out, triedOut(j, d)...)
		out = append(out, turnsOf(j, w.rules, d)...)
		if g := gearOf(j, d.Name); g != nil && g.Wheel.Runout.Float() > 0 {
			out = append(out, truer(d.Name))
		}
	}
	return append(append(atOnce(tips), tips...), out...)
}

// atOnce are all of some measurements made at once that somebody can expect a
// figure of; none where there is but one.
func atOnce(list []change) []change {
	known := slices.DeleteFunc(slices.Clone(list), func(c change) bool { return c.Do == nil })
	if len(known) < 2 {
		return nil
	}
	all := known[0]
	for _, c := range known[1:] {
		all = both(all, c)
	}
	all.Missing, all.Kind = true, measure
	return []change{all}
}

func gearOf(j *job.Job, name string) *job.Gear {
	for i := range j.Gears {
		if j.Gears[i].Name == name {
			return &j.Gears[i]
		}
	}
	return nil
}

// tipsOf are the tip diameters of a mesh that nobody has given; false where they
// were.
func tipsOf(j *job.Job, d mesh.Drive) (change, bool) {
	g := gearOf(j, d.Name)
	if g == nil || d.Trusted {
		return change{}, false
	}
	wheel, mate := d.FullTips()
	w, m := dim.OfFloat(math.Round(wheel*100)/100), dim.OfFloat(math.Round(mate*100)/100)
	noWheel := !g.Wheel.Tip.Given()
	noMate := g.Pinion != nil && !g.Pinion.Tip.Given()
	if !noWheel && !noMate {
		return change{}, false // measured, and they belong to other teeth
	}
	var what, is []say.Text
	expected := 0.0
	if noMate {
		what, is, expected = append(what, "the pinion"), append(is, say.MM(m.Float(), 2).Text()), m.Float()
	}
	if noWheel {
		what, is, expected = append(what, "the wheel"), append(is, say.MM(w.Float(), 2).Text()), w.Float()
	}
	c := change{Kind: measure, Key: "tips " + d.Name, Missing: true, Verb: "measure", Expected: &expected,
		What:  say.F("the tip diameter of %v of %s", say.Join(" and of ", what...), d.Name),
		Words: say.F("the tip diameter of %v of %s measured, if it comes out at %v", say.Join(" and of ", what...), d.Name, say.Join(" and ", is...)),
		Do: func(j *job.Job) bool {
			g := gearOf(j, d.Name)
			if noWheel {
				g.Wheel.Tip = w
			}
			if noMate {
				g.Pinion.Tip = m
			}
			return true
		}}
	if g.Worm != nil && (g.WheelForm == "" || g.WheelForm == string(mesh.Unknown)) {
		c.Do, c.Expected = nil, nil // its form nobody can expect
		c.What = say.F("the tip diameter of the wheel of %s, and see whether it is throated, helical or straight", d.Name)
		c.Words = say.F("the tip diameter and the form of the wheel of %s looked at", d.Name)
	}
	return c, true
}

// mateBy is the place of a fixed mate as the better instruments of the shop read
// it.
func mateBy(j *job.Job, instr *survey.Instruments, d mesh.Drive) []change {
	var out []change
	if d.OnJob() {
		return nil
	}
	with := func(key string, called say.Text, u dim.Length) {
		if u.Float() >= d.UMate-1e-9 {
			return
		}
		out = append(out, change{Kind: measure, Key: "mate " + d.Name + " " + key, Verb: "take",
			Words: say.F("the place of the mating gear of %s taken with %v", d.Name, called),
			What:  say.F("the place of the mating gear of %s with %v", d.Name, called),
			Do: func(j *job.Job) bool {
				switch g := gearOf(j, d.Name); {
				case g.Pinion != nil:
					g.Pinion.U = u
				case g.Worm != nil:
					g.Worm.U = u
				}
				return true
			}})
	}
	if r, ok := anIndicator(j, instr); ok {
		with(indicator, "an indicator", dim.OfFloat(r.U))
	}
	for _, in := range j.Shop.Instruments {
		if instr.CanRead(in.Name, survey.Middle) {
			with(in.Name, say.F("the %s", in.Name), in.U)
		}
	}
	return out
}

// triedOut is a mesh tried with a dummy axle and a strip of paper before anything is
// bored: where its teeth touch is then known, whatever they are.
func triedOut(j *job.Job, d mesh.Drive) []change {
	if g := gearOf(j, d.Name); g == nil || g.Tight.Given() {
		return nil
	}
	at := dim.OfFloat(dim.Near(d.Pair.Tight(), 2))
	expected := at.Float()
	return []change{{Kind: measure, Key: "tried " + d.Name, Missing: true, Verb: "try", Expected: &expected,
		What: say.F("%s with a dummy axle and a strip of paper, for the distance at which its teeth touch", d.Name),
		Words: say.F("%s tried with a dummy axle and a strip of paper, if its teeth touch at a centre distance of %v", d.Name,
			say.MM(at.Float(), 2)),
		Do: func(j *job.Job) bool {
			gearOf(j, d.Name).Tight = at
			return true
		}}}
}

// turnsOf are the run-outs of a mesh and the play of its worm that nobody measured,
// each expected at half of what is usual at most.
func turnsOf(j *job.Job, rules *table.Rules, d mesh.Drive) (out []change) {
	g := gearOf(j, d.Name)
	if g == nil {
		return nil
	}
	of := func(key, what, rule string, at func(*job.Gear) *dim.Length) {
		if at(g).Given() {
			return
		}
		half := dim.OfFloat(dim.Near(rules.V(rule)/2, 3))
		v := half.Float()
		out = append(out, change{Kind: measure, Key: key + " " + d.Name, Missing: true, Verb: "measure", Expected: &v,
			What:  say.F("the %s of %s", what, d.Name),
			Words: say.F("the %s of %s measured, if it comes out at %v", what, d.Name, say.MM(v, 3)),
			Do: func(j *job.Job) bool {
				*at(gearOf(j, d.Name)) = half
				return true
			}})
	}
	of("runout wheel", "run-out of the wheel", "gear_runout_mm", func(g *job.Gear) *dim.Length { return &g.Wheel.Runout })
	if g.Pinion != nil {
		of("runout pinion", "run-out of the pinion", "pinion_runout_mm", func(g *job.Gear) *dim.Length { return &g.Pinion.Runout })
	}
	if g.Worm != nil {
		of("play", "bearing play of the worm", "worm_play_mm", func(g *job.Gear) *dim.Length { return &g.Worm.BearingPlay })
	}
	return out
}

// truer are gears that run out half as much.
func truer(gear string) change {
	return change{Kind: makeIt, Key: "true " + gear, Words: say.F("the wheel of %s trued to half its run-out", gear), Verb: "true",
		What: say.F("the wheel of %s to half its run-out", gear), Do: func(j *job.Job) bool {
			g := gearOf(j, gear)
			if g == nil || !g.Wheel.Runout.Given() || g.Wheel.Runout.Float() <= 0 {
				return false
			}
			g.Wheel.Runout = dim.OfFloat(g.Wheel.Runout.Float() / 2)
			return true
		}}
}
