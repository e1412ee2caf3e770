package route

import (
	"fmt"
	"math"
	"strings"
)

// removeOld takes factory bushes out first: their seats are the best datum.
func (b *builder) removeOld() {
	b.setup = "bench"
	for _, x := range b.j.Bores {
		if !x.Bushed {
			continue
		}
		b.add(Operation{Kind: "take out", Bore: x.Name, Do: fmt.Sprintf("Press the old bush out of %s towards the outside", x.Name),
			Tool: "stepped punch a little under the bush's outside", Minutes: b.r.Press, MayWait: true,
			Backing: "ring under that wall, close round the flange; never across the open box",
			Note:    "measure the seat and its centre, write them into the job file and plan again before cutting anything"})
	}
}

// turnBushes makes the bushes that have to be made, to the seats as they are.
func (b *builder) turnBushes() {
	b.last = ""
	for _, x := range b.j.Bores {
		if !x.BushMade {
			continue
		}
		lim := x.OD
		b.add(Operation{Kind: "turn", Setup: "lathe", Bore: x.Name, Do: fmt.Sprintf("Turn the bush for %s: %s", x.Name, x.BushSizes),
			Tool: "lathe tool, reamer or boring tool", Limits: &lim, Gauge: "micrometer", Minutes: b.r.TurnBush, MayWait: true,
			Note: "to the seat as made, bore and outside in one chucking, lead of 0.5 mm on the end that goes in"})
	}
}

// pressIn draws or presses each bush in from outside.
func (b *builder) pressIn() {
	b.setup = "press"
	b.last = ""
	var any bool
	for _, x := range b.j.Bores {
		any = any || x.Way != "strap"
	}
	if any {
		b.out.Setups = append(b.out.Setups, Setup{Name: "press", Words: "power off; each wall on its own anvil"})
	}
	for _, x := range b.j.Bores {
		seat := x.Seat
		og := Operation{}
		og.Gauge, og.Go, og.NoGo = b.gauge(seat, "seat")
		o := Operation{Bore: x.Name, HoleMM: (x.Limits[0] + x.Limits[1]) / 2, MayWait: true, Minutes: b.r.Press}
		o.GaugeFirst = fmt.Sprintf("Seat of %s gauged (%s) and written down; bush %s measured, burr-free, the right way round.", x.Name, boxFor(og), x.Bush)
		switch x.HeldBy {
		case "compound":
			o.Kind, o.Do = "press", fmt.Sprintf("Set bush %s into %s with retaining compound, from outside", x.Bush, x.Name)
			o.Tool = "retaining compound, guide pin"
			o.Note = "both faces clean and free of oil; a thin ring of compound, none in the bore; axle out until it has cured as the maker says"
		case "strap":
			o.Kind, o.Do = "press", fmt.Sprintf("Slide bearing %s into its strap at %s and close the strap", x.Bush, x.Name)
			o.Tool = "fingers"
			o.Note = "bearings held by a strap are renewed in pairs"
		default:
			o.Kind, o.Do = "press", fmt.Sprintf("Draw bush %s into %s from outside", x.Bush, x.Name)
			o.Tool, o.Note = b.pressTool(x)
		}
		if x.Proud > 0.005 {
			o.Note = join(o.Note, fmt.Sprintf("face the bush %.2f mm shorter first, or it stands proud inside", x.Proud))
		}
		o.Backing = "an anvil directly behind that wall; never across the open box: it cracks"
		if x.Second != "" && x.HeldBy == "press" {
			o.Note = join(o.Note, secondWords(x.Second))
		}
		b.add(o)
	}
}

func secondWords(second string) string {
	var w []string
	for _, s := range strings.Split(second, " and ") {
		switch s {
		case "flange":
			w = append(w, "the flange sits down all round: it is the second hold")
		case "compound":
			w = append(w, "a film of retaining compound on the outside, none in the bore, axle out until cured")
		case "stake":
			w = append(w, "stake the rim lightly at three points, on a support")
		}
	}
	return strings.Join(w, ". ")
}

// pressTool chooses between the press and a bolt, and says when to stop.
func (b *builder) pressTool(x Bore) (tool, note string) {
	halt := b.r.HaltFactor * x.PressN[1]
	tool = "bolt and washers, with a guide in the bore"
	switch {
	case b.s.PressN > 0 && x.PressN[1] > b.s.PressN:
		note = fmt.Sprintf("expect %.0f to %.0f N, more than the press can give (%.0f): draw it in by the bolt, and stop if it needs more than a firm hand on a short spanner", x.PressN[0], x.PressN[1], b.s.PressN)
	case b.s.PressN > 0:
		tool = "press or bolt and washers, with a guide in the bore"
		note = fmt.Sprintf("expect %.0f to %.0f N; HALT at %.0f N", x.PressN[0], x.PressN[1], math.Min(halt, b.s.PressN))
	default:
		note = fmt.Sprintf("expect %.0f to %.0f N; HALT at %.0f N", x.PressN[0], x.PressN[1], halt)
	}
	return tool, note
}

// finishBores takes both bores of each shaft to size, in line.
func (b *builder) finishBores() {
	b.setup = "finish"
	b.last = ""
	for _, shaft := range b.shafts() {
		for _, g := range b.j.Gears {
			if g.Shaft != shaft || !b.openEnd(shaft) {
				continue
			}
			b.add(Operation{Kind: "try mesh", Do: fmt.Sprintf("Try the mesh of %s with a dummy axle and thin paper in the teeth before the bores are opened", g.Name),
				Tool: "dummy axle, cigarette paper", Minutes: b.r.Gauging, MayWait: true,
				Note: fmt.Sprintf("wanted backlash %.2f to %.2f mm: this is the cheapest check there is", g.Backlash[0], g.Backlash[1])})
		}
		for _, x := range b.j.Bores {
			if x.Shaft == shaft {
				b.finish(x)
			}
		}
	}
}

func (b *builder) openEnd(shaft string) bool {
	for _, x := range b.j.Bores {
		if x.Shaft == shaft && x.Finish != "as delivered" {
			return true
		}
	}
	return false
}

func (b *builder) finish(x Bore) {
	lim := x.Limits
	o := Operation{Kind: "size bore", Bore: x.Name, Limits: &lim, MayWait: true, Minutes: b.r.Sizing, HoleMM: (lim[0] + lim[1]) / 2}
	o.Gauge, o.Go, o.NoGo = b.gauge(lim, "bore")
	switch x.Finish {
	case "as delivered":
		o.Kind, o.Do, o.Minutes = "gauge", fmt.Sprintf("Gauge the bore of %s: the bush should close into its limits by itself", x.Name), b.r.Gauging
	case "mandrel":
		var names []string
		for _, m := range x.FinishSizes {
			names = append(names, trim(m))
		}
		o.Do = fmt.Sprintf("Size the bore of %s with the mandrel %s mm", x.Name, strings.Join(names, " mm, then "))
		o.Tool = "sizing mandrel " + strings.Join(names, ", ") + " mm"
		o.ToolMM = x.FinishSizes[len(x.FinishSizes)-1]
		o.Minutes = b.r.Sizing * float64(len(names))
		o.Lubricant = "oil"
		o.Note = "straight through in one stroke each; a porous bore must not be reamed shut"
	case "ream":
		o.Do, o.Tool, o.ToolMM = fmt.Sprintf("Ream the bore of %s in line with the other", x.Name), x.FinishTool, x.FinishSizes[0]
		b.figures(&o, Query{Operation: "ream", Dia: x.FinishSizes[0], Through: x.Plate, Material: "bush"})
	case "bore":
		o.Do, o.Tool = fmt.Sprintf("Bore %s in place at the target", x.Name), x.FinishTool
		at := x.At
		o.At, o.Approach = &at, b.approach()
		b.figures(&o, Query{Operation: "bore", Dia: (lim[0] + lim[1]) / 2, Through: x.Plate, Head: "boring head", Material: "bush"})
	default:
		o.Do = fmt.Sprintf("Open the bore of %s until its own axle runs", x.Name)
		o.Tool = "broach or hand reamer, a little at a time"
		o.Note = "the very axle is the gauge: it turns freely with oil and shows no shake"
		if x.Porous {
			o.Tool = "ball or stepped mandrels, a little at a time"
			o.Note += "; do not ream or hone a porous bore, its pores smear shut"
		}
	}
	b.add(o)
}

// oilWays clears the oil holes through the new bushes.
func (b *builder) oilWays() {
	for _, x := range b.j.Bores {
		if x.Oil == nil {
			continue
		}
		o := Operation{Kind: "oil", Bore: x.Name, Do: fmt.Sprintf("Drill the new bush of %s through from the old oil hole, %s mm", x.Name, trim(x.Oil.Diameter)),
			Tool: trim(x.Oil.Diameter) + " mm drill", ToolMM: x.Oil.Diameter, MayWait: true,
			Note: "deburr inside; the felt must touch"}
		b.figures(&o, Query{Operation: "drill", Dia: x.Oil.Diameter, Through: (x.Seat[0] - x.Limits[1]) / 2, Material: "bush"})
		b.add(o)
	}
}

// wheels is the last irreversible step.
func (b *builder) wheels() {
	b.setup = "bench"
	o := Operation{Kind: "wheels", Do: "Fit the axles, larger end last; centre the gear; press the wheels to gauge", Tool: "wheel press, flat support under the hub",
		Minutes: b.r.Press, MayWait: true,
		GaugeFirst: "Each axle turns freely both ways in its bores, end float is there, the mesh runs; bores written down.",
		Note:       "a hollow cup under the hub splits it"}
	b.add(o)
}
