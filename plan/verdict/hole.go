package verdict

import (
	"math"

	"rebush/fits/say"
)

// wrong says why a hole has to be done whatever its play; mesh is what is wrong
// with the gears on its shaft.
func (h *Hole) wrong(mesh say.Text) say.Text {
	switch {
	case h.Fixed:
		return ""
	case mesh != "":
		return mesh
	case h.BushOut:
		return "its old bush is out"
	case !h.Known:
		return unknownCentre
	}
	return ""
}

const unknownCentre = "nothing tells where its centre was"

// ways is how a hole goes each of the ways of a hole.
func (h *Hole) ways(f *Facts) []Way {
	var out []Way
	for _, o := range options() {
		if o.hole != nil {
			w := o.hole(h, f)
			w.Name = o.name
			out = append(out, w)
		}
	}
	return out
}

// renew is a new bush in a sound old seat: the plan's own way, where it goes
// so.
func (h *Hole) renew(f *Facts) Way {
	if h.Seat == nil || !h.Seat.Renews {
		return Way{WhyNot: "there is no sound seat of an old bush"}
	}
	return h.planned()
}

// rebush is a new seat about the new centre: the plan's own way, where it does
// not renew.
func (h *Hole) rebush(f *Facts) Way {
	if h.Seat != nil && h.Seat.Renews {
		return Way{WhyNot: "the old bush's seat is sound: renewing it takes off nothing"}
	}
	w := h.planned()
	w.WhyNot, w.Owner = h.unplanned(f)
	return w
}

// planned is what the plan does at a hole.
func (h *Hole) planned() Way {
	w := Way{Minutes: h.Minutes, Setups: h.Setups}
	if h.Seat != nil {
		w.Chance, w.MetalMM, w.Bush = h.Seat.Chance, h.Seat.MetalMM, h.Seat.Price
	}
	return w
}

// unplanned says why a hole cannot be re-bushed, to a machinist and to an
// owner.
func (h *Hole) unplanned(f *Facts) (why, owner say.Text) {
	switch {
	case !h.Known:
		return unknownCentre, "nothing tells any more where the holes used to be"
	case h.Seat != nil && !f.OK:
		return "this shop cannot do it as it stands: see what stops it", "this shop cannot do the work as it stands"
	case h.Seat != nil:
		return "", ""
	case !h.Placed:
		return "its new centre could not be worked out", ""
	case !h.Worn:
		return "it is not worn and stays as it is", ""
	case h.Nearest == nil:
		return "there is no bush to choose from", "there is no bearing on the list to fit"
	}
	return h.Nearest.Text, h.Nearest.Owner
}

// bushInABush bores the old bush, or the spoilt skin of its seat, for a sleeve
// that takes the new one.
func (h *Hole) bushInABush(f *Facts) Way {
	switch {
	case h.SoundSeat:
		return Way{WhyNot: "the seat of the old bush is sound: a new bush goes straight in"}
	case !h.BushOut && !h.Bushed:
		return Way{WhyNot: "there never was a bush in it: the axle runs in the bare hole"}
	}
	return h.another(f, h.SleeveMM)
}

// plug fills the hole and bores it anew. The plug sets before it is drilled:
// the chassis comes off and goes back on.
func (h *Hole) plug(f *Facts) Way {
	w := h.another(f, h.PlugMM)
	if w.WhyNot == "" {
		w.Setups = append(append([]string(nil), w.Setups...), "after plugging")
	}
	return w
}

// another is a way that the plan does not take, with a turned part of an
// outside radius in the plate. Its time and its chance are those of the bush
// and a guess beside them.
func (h *Hole) another(f *Facts, outer float64) Way {
	if why := h.noOther(f, outer); why != "" {
		return Way{WhyNot: why}
	}
	r := &f.Rules
	w := Way{Minutes: h.Minutes + r.TurnMinutes + r.PressMinutes, Setups: h.Setups,
		Chance: r.OtherChance * r.UnseatedChance, MetalMM: math.Max(0, outer-h.RadiusMM)}
	if h.Minutes == 0 {
		w.Minutes += 2*r.ToolMinutes + r.PressMinutes + r.SizeMinutes
	}
	if len(w.Setups) == 0 {
		w.Setups = []string{"A"}
	}
	if h.Seat != nil {
		// The bearing itself goes in as well; the sleeve or plug is bar end.
		w.Chance, w.Bush = r.OtherChance*h.Seat.Chance, h.Seat.Price
	}
	return w
}

// noOther says why no turned part of an outside radius can go into the plate.
func (h *Hole) noOther(f *Facts, outer float64) say.Text {
	switch {
	case !h.Known || !h.Placed:
		return "the old centre is not known"
	case h.Capped:
		return "the bearing lies under a cap"
	case !f.Lathe:
		return "it has to be turned and the shop has no lathe"
	case !f.OK && h.Seat != nil && !f.Placer:
		return "it needs a jig as well: a punched start is 0.1 to 0.25 mm out"
	case h.Worn && h.BoreMM[0] > h.BoreMM[1]+1e-9:
		return say.F("what must pass is %v, the largest bore that still runs %v",
			say.MM(h.MustPassMM, 3), say.MM(h.BoreMM[1], 3).Bare())
	}
	left, where := math.Inf(1), ""
	for _, r := range h.Room {
		if d := r.MM - outer; d < left {
			left, where = d, r.Name
		}
	}
	if left < 0 {
		return say.F("would break %v through to %s", say.MM(-left, 2), where)
	}
	if need := f.Rules.NoWallRadii * outer; left < need {
		return say.F("leaves %v to %s, needs %v", say.MM(left, 2), where, say.MM(need, 2).Bare())
	}
	return ""
}
