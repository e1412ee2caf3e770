package checked

import (
	"fmt"
	"math"
	"regexp"
	"strings"

	"rebush/fits/table"
	"rebush/plan/mesh"
)

const rad = math.Pi / 180

// parens is a remark behind a comma or a bracket.
var parens = regexp.MustCompile(`[(,].*$`)

// meshRows works out pairs of spur gears, worm drives and where they stand.
func meshRows(rows []Row, _ *table.Library) []Figure {
	var out []Figure
	for _, r := range rows {
		in := readInputs(r["inputs"])
		v, err := meshAnswer(r["quantity"], in)
		if in.err != nil {
			err = in.err
		}
		out = append(out, r.figure("mesh.csv").is(v, err))
	}
	return out
}

// meshAnswer is the public call for the words of a row.
func meshAnswer(q string, in *inputs) (float64, error) {
	switch q {
	case "transverse contact ratio, contact limited to the base tangent points":
		return in.spur().ContactRatio(in.centre())
	case "operating pressure angle":
		return in.spur().OperatingAngle(in.centre())
	case "angular backlash of gear 1, gear 2 held":
		g1, _, err := in.spur().Angular(in.centre())
		return g1, err
	case "angular backlash of gear 2, gear 1 held":
		_, g2, err := in.spur().Angular(in.centre())
		return g2, err
	case "handbook approximation of backlash from centre distance increase, 2*da*tan(alpha)":
		return in.need("da") * opening(in.need("alpha")), nil
	case "tip-root clearance, tip of gear 2 to root of gear 1, hf=1.25m":
		_, c := in.spur().TipClearance(in.centre())
		return c, nil
	case "centre distance at which a tip touches a root, hf=1.25m":
		c1, c2 := in.spur().TipClearance(0)
		return -math.Min(c1, c2), nil
	case "sum of profile shift coefficients, helical pair, zero backlash":
		// The working involute grows evenly with the sum.
		at := func(sum float64) float64 {
			return mesh.TightInvolute(in.need("alpha_n")*rad, in.need("alpha_t")*rad, sum, 0, in.need("z1")+in.need("z2"))
		}
		return (mesh.Involute(in.need("alpha_wt")*rad) - at(0)) / (at(1) - at(0)), nil
	case "sum of generating profile shift coefficients for normal backlash jbn":
		// What the same gears keep where those of the sum run without backlash: it
		// shrinks evenly with their own sum.
		s := mesh.Spur{Module: in.need("mn"), Z1: 31, Z2: 30, Angle: in.need("alpha_n"), X1: in.need("sum_x")}
		a := s.Tight()
		s.X1 = 0
		most, err := s.Normal(a)
		return in.need("sum_x") * (1 - in.need("jbn")/most), err
	case "centre distance change per unit backlash 1/(2 tan alpha)":
		return 1 / opening(in.need("alpha")), nil
	case "worm lead angle, axial module":
		return in.worm(mesh.Throated).LeadAngle(), nil
	case "worm lead angle, normal module":
		return in.worm(mesh.Straight).LeadAngle(), nil
	case "working pressure angle, ZI worm on straight-cut spur wheel, 90 deg":
		w := in.worm(mesh.Straight)
		return w.OperatingAngle(w.Tight())
	case "side offset of contact from wheel mid-plane, straight-cut wheel":
		return in.worm(mesh.Straight).FaceNeeded() / 2, nil
	case "zero-backlash centre distance, ZI worm on straight-cut spur wheel, 90 deg":
		return in.worm(mesh.Straight).Tight(), nil
	case "normal backlash, ZI worm on straight-cut spur wheel, 90 deg":
		return in.worm(mesh.Straight).Normal(in.centre())
	case "normal backlash, ZI worm on helical wheel (beta2 = lead angle), shaft angle 91":
		return in.worm(mesh.Helical).Normal(in.centre())
	case "apparent wheel backlash from worm end float, angle":
		return in.worm(mesh.Throated).EndFloatPlay(in.need("float")), nil
	case "present centre distance, spur mate at M, axle at P":
		a, _ := mesh.Across{}.Distance(in.point("P"), in.point("M"))
		return a, nil
	case "move in x to reach centre distance a by the shortest way":
		return in.correction()[0], nil
	case "move in y to reach centre distance a by the shortest way":
		return in.correction()[1], nil
	case "change of worm centre distance for axle shift (dx forward, dy up), worm above, " +
		"worm axis rising theta deg towards the front":
		g := mesh.Along{SlopeDeg: in.need("theta")}
		before, _ := g.Distance([2]float64{}, [2]float64{0, 8})
		after, _ := g.Distance([2]float64{in.need("dx"), in.need("dy")}, [2]float64{0, 8})
		return after - before, nil
	case "effective centre distance with axle pushed along F in a bush":
		f := in.point("F")
		l := math.Hypot(f[0], f[1])
		a, _ := mesh.Across{}.Distance(mesh.Pressed(in.point("C"), in.need("Cd")/2, [2]float64{f[0] / l, f[1] / l}),
			in.point("M"))
		return a, nil
	case "axle centre y at gear station":
		return mesh.Station([2]float64{0, in.need("yL")}, [2]float64{0, in.need("yR")}, in.need("z")/in.need("B"))[1], nil
	case "loss of normal backlash by axle skew":
		return mesh.SkewLoss([2]float64{in.need("out_diff"), in.need("in_diff")}, [2]float64{0, 1}, in.need("B"),
			in.need("b"), in.need("alpha_w"))
	}
	// These names carry only a remark behind a comma or a bracket.
	switch strings.TrimSpace(parens.ReplaceAllString(q, "")) {
	case "involute function":
		return mesh.Involute(in.need("alpha") * rad), nil
	case "inverse involute":
		return mesh.InverseInvolute(in.need("inv")) / rad, nil
	case "standard centre distance":
		return in.spur().Standard(), nil
	case "normal backlash":
		return in.spur().Normal(in.centre())
	case "circumferential backlash at operating pitch circle":
		return in.spur().Backlash(in.centre())
	case "radial backlash":
		return in.spur().Radial(in.centre()), nil
	case "transverse contact ratio":
		s := in.spur()
		a := s.Standard()
		if !in.has("standard centres") {
			a = in.centre()
		}
		return s.ContactRatioUncapped(a)
	case "length of path of contact":
		s := in.spur()
		return s.PathOfContact(s.Standard())
	case "centre distance at which contact ratio falls to eps":
		return in.spur().CentreForContactRatioUncapped(in.need("eps"))
	case "centre distance for normal backlash jbn":
		return in.spur().CentreForNormal(in.need("jbn"))
	case "centre distance for circumferential backlash jwt":
		return in.spur().CentreForBacklash(in.need("jwt"))
	case "zero-backlash centre distance":
		return in.spur().Tight(), nil
	case "worm normal module":
		_, mn, _ := in.worm(mesh.Throated).Normals()
		return mn, nil
	case "worm lead angle":
		return in.worm(mesh.Throated).LeadAngle(), nil
	case "axial pressure angle of worm":
		return in.worm(mesh.Throated).AxialAngle(), nil
	case "backlash change at wheel pitch circle for centre distance change":
		w := in.worm(mesh.Throated)
		return w.Backlash(w.Tight() + in.need("da"))
	case "friction coefficient at the self-locking limit":
		// The row gives the lead angle itself: a worm of one start that has it.
		w := mesh.Worm{Form: mesh.Throated, Module: 0.5, Starts: 1, Teeth: 24, Angle: in.need("alpha_n"),
			PitchDiameter: 0.5 / math.Tan(in.need("gamma")*rad)}
		return w.SelfLocking(), w.Validate()
	}
	return 0, fmt.Errorf("no answer for quantity %q", q)
}

// opening is how fast the backlash of a pair grows as its axles first part from
// the standard distance.
func opening(alpha float64) float64 {
	const h = 1e-6
	s := mesh.Spur{Module: 1, Z1: 20, Z2: 20, Angle: alpha}
	j, err := s.Backlash(s.Standard() + h)
	if err != nil {
		return math.NaN()
	}
	return j / h
}

// correction is the shortest move of P to the centre distance wanted from M.
func (in *inputs) correction() [2]float64 {
	a, towards := mesh.Across{}.Distance(in.point("P"), in.point("M"))
	return mesh.Correction(towards, a-in.centre())
}
