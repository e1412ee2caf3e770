package job

import (
	"fmt"
	"math"
)

func checkBush(r *reader, b *Bush, v *value) {
	if !b.Turned {
		for _, key := range []string{"bore", "od", "length"} {
			if v.missing(key) {
				r.say(v.pos, fmt.Sprintf("%s is missing in %s", key, v.path),
					"give the bush's bore, od and length; only one with make: turned may leave them out")
			}
		}
	}
	checkSize(r, v, "bore", b.Bore)
	checkSize(r, v, "od", b.OD)
	bore, od := b.Bore.about(), b.OD.about()
	if bore > 0 && od > 0 {
		if wall := (od - bore) / 2; wall < 0.2 || wall > 5 {
			r.say(v.get("od").place(v), fmt.Sprintf("od: %s over a bore of %s leaves a wall of %s", r.show(od),
				r.show(bore), r.show(wall)),
				fmt.Sprintf("expected a wall of %s to %s", r.show(0.2), r.show(5)))
		}
	}
	f := v.get("flange")
	if od > 0 {
		between(r, f.get("od"), b.FlangeOD, od+0.4, 3*od+4, "an outside diameter of "+r.show(od))
		between(r, v.get("length"), b.Length, 0.2*od, 5*od, "an outside diameter of "+r.show(od))
	}
	if b.Length.Given() {
		between(r, f.get("thickness"), b.FlangeThickness, 0.2, math.Max(0.7*b.Length.Float(), 0.2),
			"a length of "+r.show(b.Length.Float())+" with the flange")
	}
}

// about is the middle of a size, 0 where it is not known.
func (s Size) about() float64 {
	if s.Nominal.Given() {
		return s.Nominal.Float()
	}
	if s.Low.Given() && s.High.Given() {
		return (s.Low.Float() + s.High.Float()) / 2
	}
	return 0
}

func checkSize(r *reader, v *value, key string, s Size) {
	size, class := v.get(key), v.get(key+"_class")
	if class != nil && size == nil {
		r.say(class.pos, key+"_class: there is no "+key+" for it", "write "+key+": with the nominal size")
	}
	if class != nil && size != nil && size.shape.kind == aList {
		r.say(class.pos, key+"_class: limits as measured take no class",
			"keep the limits or the nominal with its class")
	}
	if s.Low.Given() && s.High.Given() {
		bracket(r, size, s.Low.Float(), s.High.Float(), 0.2)
	}
}

// bracket holds two limits of one size against each other.
func bracket(r *reader, v *value, low, high, most float64) {
	switch {
	case v == nil:
	case high < low:
		r.say(v.pos, fmt.Sprintf("%s: the lower limit, %s, is above the upper, %s", v.name, r.show(low),
			r.show(high)), "write [low, high]")
	case high-low > most+1e-9:
		r.say(v.pos, fmt.Sprintf("%s: the limits %s and %s are too far apart for one size", v.name, r.show(low),
			r.show(high)), "expected within "+r.show(most))
	}
}
