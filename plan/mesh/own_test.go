package mesh

import (
	"math"
	"testing"

	"rebush/testdata"
)

// second works a row of own/mesh.csv out by a way that shares no formula with
// this room.
func (in inputs) second(q string) (float64, bool) {
	switch q {
	case "involute function":
		return involute(in.need("alpha") * degree), true
	case "inverse involute":
		return root(func(x float64) float64 { return involute(x) - in.need("inv") }, 0, 1.2) / degree, true
	case "standard centre distance":
		b1, b2 := in.unwound().bases()
		return (b1 + b2) / math.Cos(in.need("alpha")*degree), true
	case "operating pressure angle":
		return in.unwound().angle(in.centre()) / degree, true
	case "normal backlash":
		return in.unwound().normal(in.need("a")), true
	case "circumferential backlash at operating pitch circle":
		return in.unwound().circumferential(in.need("a")), true
	case "angular backlash of gear 2, gear 1 held":
		_, b2 := in.unwound().bases()
		return in.unwound().normal(in.need("a")) / b2 / degree, true
	case "angular backlash of gear 1, gear 2 held":
		b1, _ := in.unwound().bases()
		return in.unwound().normal(in.need("a")) / b1 / degree, true
	case "radial backlash (distance to zero-backlash centre distance)":
		return in.need("a") - in.unwound().tight(), true
	case "zero-backlash centre distance":
		return in.unwound().tight(), true
	case "centre distance for normal backlash jbn":
		return in.unwound().centreFor(in.unwound().normal, in.need("jbn")), true
	case "centre distance for circumferential backlash jwt":
		return in.unwound().centreFor(in.unwound().circumferential, in.need("jwt")), true
	case "handbook approximation of backlash from centre distance increase, 2*da*tan(alpha)":
		c := math.Cos(in.need("alpha") * degree)
		return 2 * in.need("da") * math.Sqrt(1/(c*c)-1), true
	case "tip-root clearance, tip of gear 2 to root of gear 1, hf=1.25m":
		s := in.unwound()
		return in.need("a") - s.m*s.z2/2 - s.m - (s.m*s.z1/2 - 1.25*s.m), true
	case "centre distance at which a tip touches a root, hf=1.25m":
		s := in.unwound()
		return s.m*(s.z1+s.z2)/2 - 0.25*s.m, true
	case "transverse contact ratio, contact limited to the base tangent points", "transverse contact ratio":
		t1, t2 := in.unwound().tips()
		return in.unwound().contact(in.need("a"), t1, t2, q == "transverse contact ratio"), true
	case "centre distance at which contact ratio falls to eps":
		s := in.unwound()
		t1, t2 := s.tips()
		nominal := s.m * (s.z1 + s.z2) / 2
		return root(func(a float64) float64 { return in.need("eps") - s.contact(a, t1, t2, false) }, nominal, nominal*1.1), true
	}
	if x, ok := in.secondWorm(q); ok {
		return x, true
	}
	return in.secondPlace(q)
}

func (in inputs) secondWorm(q string) (float64, bool) {
	switch q {
	case "axial pressure angle of worm":
		return in.space(false).axial() / degree, true
	case "backlash change at wheel pitch circle for centre distance change (throated or matched helical wheel)":
		// The rack that the wheel meets goes down by da: both flanks open.
		return 2 * in.need("da") * math.Tan(in.space(true).axial()), true
	case "working pressure angle, ZI worm on straight-cut spur wheel, 90 deg":
		return in.space(false).working() / degree, true
	case "side offset of contact from wheel mid-plane, straight-cut wheel":
		return in.space(false).base1(), true
	case "zero-backlash centre distance, ZI worm on straight-cut spur wheel, 90 deg":
		return root(in.space(false).gap, 1, 100), true
	case "normal backlash, ZI worm on straight-cut spur wheel, 90 deg":
		return in.space(false).gap(in.need("a")), true
	case "normal backlash, ZI worm on helical wheel (beta2 = lead angle), shaft angle 91":
		return in.space(true).gap(in.need("a")), true
	case "apparent wheel backlash from worm end float, angle":
		return 360 * in.need("float") / (math.Pi * in.need("mx") * in.need("z2")), true
	case "friction coefficient at the self-locking limit":
		// Driven from the wheel, the worm gives nothing back.
		lead, alpha := in.need("gamma")*degree, in.need("alpha_n")*degree
		back := func(mu float64) float64 { return mu*math.Cos(lead) - math.Cos(alpha)*math.Sin(lead) }
		return root(back, 0, 1), true
	}
	return 0, false
}

// secondPlace is plane geometry with vectors.
func (in inputs) secondPlace(q string) (float64, bool) {
	apart := func(p, q [2]float64) float64 { return math.Hypot(p[0]-q[0], p[1]-q[1]) }
	switch q {
	case "present centre distance, spur mate at M, axle at P":
		return apart(in.point("M"), in.point("P")), true
	case "move in x to reach centre distance a by the shortest way", "move in y to reach centre distance a by the shortest way":
		m, p := in.point("M"), in.point("P")
		turn := math.Atan2(p[1]-m[1], p[0]-m[0])
		if q[8] == 'x' {
			return m[0] + in.need("a")*math.Cos(turn) - p[0], true
		}
		return m[1] + in.need("a")*math.Sin(turn) - p[1], true
	case "change of worm centre distance for axle shift (dx forward, dy up), worm above, worm axis rising theta deg towards the front":
		// Turn the truck until the worm lies level; what the axle rises then.
		turn := math.Atan2(in.need("dy"), in.need("dx")) - in.need("theta")*degree
		return -math.Hypot(in.need("dx"), in.need("dy")) * math.Sin(turn), true
	case "effective centre distance with axle pushed along F in a bush":
		f, c, turn := in.point("F"), in.point("C"), 0.0
		turn = math.Atan2(f[1], f[0])
		sits := [2]float64{c[0] + in.need("Cd")/2*math.Cos(turn), c[1] + in.need("Cd")/2*math.Sin(turn)}
		return apart(sits, in.point("M")), true
	case "axle centre y at gear station":
		share := in.need("z") / in.need("B")
		return (1-share)*in.need("yL") + share*in.need("yR"), true
	case "loss of normal backlash by axle skew":
		// Each end of the face goes half of that; one flank nears at one end, the
		// other at the other.
		half := in.need("b") / 2 / in.need("B")
		w := in.need("alpha_w") * degree
		return 2 * half * (in.need("in_diff")*math.Sin(w) + in.need("out_diff")*math.Cos(w)), true
	}
	return 0, false
}

// TestOwnRowsTwice: every row of own/mesh.csv comes out a second way, to its
// own tolerance.
func TestOwnRowsTwice(t *testing.T) {
	rows, passed := testdata.Rows[map[string]string](t, "own/mesh.csv"), 0
	for _, r := range rows {
		want, tol := parse(t, r["expected"]), parse(t, r["tolerance"])
		got, ok := readInputs(t, r["inputs"]).second(r["quantity"])
		if !ok {
			t.Errorf("%s: no second way for %q", r["id"], r["quantity"])
		} else if !(math.Abs(got-want) <= tol) {
			t.Errorf("%s %s: a second way gives %.10g, the row %s within %s", r["id"], r["quantity"], got, r["expected"], r["tolerance"])
		} else {
			passed++
		}
	}
	if passed != len(rows) || passed < 45 {
		t.Errorf("%d of %d rows", passed, len(rows))
	}
}
