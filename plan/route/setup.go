package route

import (
	"math"
	"slices"
	"strings"

	"rebush/fits/say"
	"rebush/plan/job"
)

func (b *builder) holdWords(c clamping) say.Text {
	switch b.s.Machine {
	case OnLathe:
		return say.F("on the faceplate, %s plate outwards, on packing that leaves the far hole free, counterweighted",
			c.up)
	case DrillPress, ByHand:
		if !b.s.Jig {
			return say.F("%s plate up on a flat block, clamped; never held by hand", c.up)
		}
		return say.F("%s plate up, jig plate pinned in %s, chassis locked in the jig, jig clamped to the table%v", c.up,
			b.pinned(), b.rodRoom(c))
	}
	words := say.F("%s plate up on two blocks that leave the holes free, clamped over the plates and not across "+
		"the open box; backing blocks slotted, close round the holes", c.up)
	for range c.far {
		return words + say.F("; blocks high enough (about %v) for fingers with a countersink below",
			say.MM(math.Max(b.r.BlockHeight, b.rodLong(c)), 0).About())
	}
	return words + b.rodRoom(c)
}

// pinned names the holes that carry the jig.
func (b *builder) pinned() string {
	if len(b.j.Features) > 1 {
		return list(b.j.Features[:2])
	}
	return "two sound holes"
}

func (b *builder) setUpWords(c clamping) say.Text {
	w := say.F("Clamp the chassis with the %s plate uppermost", c.up)
	switch {
	case b.s.Machine == OnLathe:
		x := c.bores[0]
		w = say.F("Set the chassis on the faceplate, %s plate outwards, and bring the new centre of %s to the spindle", c.up, x.Name)
	case b.loose() && b.s.Jig:
		w = say.F("Lock the chassis in the jig with the %s plate uppermost", c.up)
	}
	if c.up == job.Right {
		w += ". This side is MIRRORED"
	}
	return w + "."
}

// setUpNote says how the clamping is located.
func (b *builder) setUpNote(c clamping) say.Text {
	var w []say.Text
	x := c.bores[0]
	switch {
	case b.s.Machine == OnLathe && len(c.from) > 0:
		w = append(w, b.putIn(c), "run the part that stands up true with the indicator", rodOut)
	case b.s.Machine == OnLathe:
		hole := say.Text("the unworn arc of the old hole")
		if x.Repaired {
			hole = "the hole as the earlier repair left it"
		}
		if x.Made {
			hole = "the seat as it was made"
		}
		w = append(w, "run "+hole+" true with the indicator", b.shift(x),
			"counterweight until it stays where it is put; turn it once by hand, guard shut, 300 rev/min at most")
	case b.loose() && b.s.Jig && len(c.from) > 0:
		w = append(w, b.turnedOver(c), b.putIn(c), "its upper part must stand up into its own slip bush without being "+
			"pushed", rodOut, overBush)
	case b.loose() && b.s.Jig:
		w = append(w, b.turnedOver(c), "prove the jig on a second hole before it is locked", overBush)
	case b.loose():
		w = append(w, "lower the drill into the hole with the spindle stopped and clamp where it centres itself")
	case len(c.from) > 0:
		w = append(w, b.putIn(c), "bring the part that stands up true under the spindle and set the dials to its figures",
			rodOut)
	default:
		w = append(w, "square it by a close-fitting rod through the better axle hole, not by the walls, then touch "+
			b.datum(c))
		if b.s.Machine == Mill {
			w = append(w, "zero the dials there, half the edge finder allowed for")
		}
		if b.j.Casting {
			w = append(w, "a cast wall leans: touch it at one height, near the upper face")
		}
	}
	if b.s.Machine == Mill {
		w = append(w, "head trammed square to the table")
	}
	if c.up == job.Right && b.s.Machine == Mill {
		if b.j.Length > 0 {
			w = append(w, say.F("dial x counts from the end that now lies on the left: %v less x of the drawing",
				say.MM(b.j.Length, 3).Trim()))
		} else {
			w = append(w, "the datum end now lies on the right: count x from it to the left")
		}
	}
	if b.s.Machine == Mill && !b.s.Readout {
		w = append(w, "take up backlash: come to every figure from one side; overshot, back off a full turn and "+
			"come up again")
	}
	return join(w...)
}

// rodOut is said of a rod that stands where the next tool comes down.
const rodOut = say.Text("the rod comes out downwards before the first cut at its hole")

// overBush brings a spindle without dials over the holes of a jig.
const overBush = say.Text("at each hole in turn a straight rod of the slip bush's tool goes into the chuck; spindle stopped, " +
	"it drops freely into the bush, only then the jig is clamped down")

// rodLong is the longest rod that a clamping stands on, whole mm; 0 none.
func (b *builder) rodLong(c clamping) float64 {
	most := 0.0
	for _, name := range c.from {
		at := b.bore(name)
		for _, x := range c.bores {
			if r := b.steppedRod(at, x); x.Shaft == at.Shaft && r.length[1] > 0 {
				most = math.Max(most, r.length[0]+r.length[1])
			}
		}
	}
	return most
}

// rodRoom is what stands under a clamping whose rods leave downwards.
func (b *builder) rodRoom(c clamping) say.Text {
	long := b.rodLong(c)
	if long <= 0 {
		return ""
	}
	return say.F("; blocks below high enough (about %v) for the stepped rod to come out downwards", say.MM(long, 0).About())
}

// putIn is how the rods that locate a chassis get into the seats that lie below.
func (b *builder) putIn(c clamping) say.Text {
	return "before it is clamped, stepped rod " + list(b.located(c)) + ": from below, its foot in the seat"
}

// shift is the way from the old centre to the target.
func (b *builder) shift(x Bore) say.Text {
	dx, dy := x.At[0]-x.Old[0], x.At[1]-x.Old[1]
	if x.Side == job.Right {
		dx = -dx
	}
	// The hole has to go to the spindle, so the chassis moves the other way.
	var w []say.Text
	for _, v := range []struct {
		by          float64
		plus, minus string
	}{{-dx, "to the right", "to the left"}, {-dy, "up", "down"}} {
		if math.Abs(v.by) < 0.005 {
			continue
		}
		word := v.plus
		if v.by < 0 {
			word = v.minus
		}
		w = append(w, say.F("%v %s", say.MM(math.Abs(v.by), 2), word))
	}
	if len(w) == 0 {
		return "no shift: the new centre is the old one"
	}
	return "then shift the chassis " + list(w) + " as it is seen from this side, datum edge below"
}

// datum names the edges that the dials start from.
func (b *builder) datum(c clamping) say.Text {
	switch {
	case c.up == job.Right && b.j.Length > 0:
		return "the long datum edge and the end that now lies on the left"
	case b.j.DatumWords != "":
		return say.F("the datum edges: %s", b.j.DatumWords)
	}
	return "the datum edges: lower left corner"
}

// secondDatum is the box before the first cut of a clamping: the target read
// from another place than the datum edge.
func (b *builder) secondDatum(c clamping) say.Text {
	x := c.bores[0]
	best, found := Mark{}, false
	pinned := b.loose() && b.s.Jig
	for _, m := range b.j.Marks {
		if pinned && slices.Contains(b.j.Features[:min(2, len(b.j.Features))], m.Name) {
			// The plate covers it: its pin is what can be measured from.
			m.Name, m.Side = "the pin in "+m.Name, x.Side
		}
		if m.Name == x.Name || strings.HasPrefix(m.Name, x.Shaft+".") {
			continue
		}
		if !found || m.Side == x.Side && best.Side != x.Side {
			best, found = m, true
		}
	}
	switch {
	case b.loose() && !b.s.Jig:
		return say.F("Hole of %s centred under the drill: with the spindle stopped it goes in and pushes nothing "+
			"aside.", x.Name)
	case len(c.from) > 0 && b.loose():
		return say.F("The rod in the seat of %s stands up freely into its slip bush.", c.from[0])
	case len(c.from) > 0:
		return say.F("Rod in the seat of %s reads true under the spindle at its figures.", c.from[0])
	}
	if !found {
		return say.F("New centre of %s read again from another edge.", x.Name)
	}
	d := math.Hypot(best.At[0]-x.At[0], best.At[1]-x.At[1])
	within := b.within(x, best)
	if strings.HasPrefix(best.Name, "the pin in ") {
		out := b.slipOutside()
		over := say.Text("")
		if best.Dia > 0 {
			over = say.F(" (over both, a rod of %v in the bush hole and that pin: %v)", say.MM(out, 1).Trim(),
				say.MM(d+(out+under(best.Dia, b.r.RodUnder))/2, 2))
		}
		return say.F("Bush hole of %s in the jig plate read again: %v from the middle of %s%v%v.", x.Name, say.MM(d, 2),
			best.Name, over, within)
	}
	there := say.Text("")
	if at := best.At; b.s.Machine == Mill {
		if c.up == job.Right {
			at[0] = b.mirrorX(at[0])
		}
		there = say.F(", where the dials read %v by the indicator in the spindle", say.Row(2, "mm", ", ", at[0], at[1]))
	}
	return say.F("New centre of %s read again from a second datum: %v from the middle of %s%v%v.", x.Name, say.MM(d, 2),
		best.Name, there, within)
}

// within is how near a second reading comes to its figure where nothing slipped:
// twice the doubt of the place to be cut and of what it is read from. METHODS.md 6.
func (b *builder) within(x Bore, from Mark) say.Text {
	either := 2 * math.Hypot(x.UPlace, from.U)
	if either <= 0 {
		return ""
	}
	return say.F(", within %v; farther off: cut nothing, look for a chip below, a clamp that lifts, a zero that moved, "+
		"clamp and read again", say.MM(either, 2))
}

// approach says how the dials come to their figures.
func (b *builder) approach(c clamping, x Bore) say.Text {
	if b.s.Machine != Mill {
		return ""
	}
	dir := func(axis, d string) say.Text {
		if d == "" {
			d = "rising"
		}
		return words(axis + " " + d)
	}
	w := dir("x", b.s.ApproachX) + ", " + dir("y", b.s.ApproachY)
	if !b.s.Readout {
		w += "; take up the screw"
	}
	w += "; lock both slides"
	if c.up == job.Right && b.j.Length > 0 {
		w += say.F("; MIRRORED, drawing %v", say.MM(x.At[0], 3).Trim())
	}
	return w
}

// backingBoth stands behind both plates while one tool goes through them.
func (b *builder) backingBoth() say.Text { return join(b.backing(false), b.backing(true)) }

func (b *builder) backing(far bool) say.Text {
	switch {
	case b.s.Machine == OnLathe && far:
		return "packing ring on the faceplate, close round the far hole"
	case far:
		return "slotted block under the far plate"
	}
	return "snug slotted block between the plates"
}
