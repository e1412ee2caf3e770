package cutting

import (
	"fmt"
	"math"

	"rebush/fits/table"
)

type kdRow struct {
	torque, thrust float64
	say            string
	ref            Ref
}

type kienzleRow struct {
	kc11, mc float64
	ref      Ref
}

type makerRow struct {
	k   float64
	ref Ref
}

type pointRow struct {
	chisel  float64 // length of the chisel edge, as a share of the diameter
	a, b, j float64
	ref     Ref
}

type wearRow struct {
	w   float64
	ref Ref
}

// ShawOxford returns the thrust in N and the torque in N mm of a twist drill
// in solid metal, for a feed f in mm a turn and a diameter D in mm:
//
//	M = 0.000025·Kd·f^0.8·D^1.8·A·W        (N m)
//	T = 0.05·Kd·f^0.8·D^0.8·B·W + 0.007·Kd·D²·J·W   (N)
//
// Kd is the work-material factor for each, A, B and J come from the chisel
// edge, W from the wear. Source: Machinery's Handbook 31st ed., pp. 1152-1153;
// METHODS.md 2 says what of it was read.
func ShawOxford(kdThrust, kdTorque, feedMMRev, diaMM, a, b, j, w float64) (thrustN, torqueNmm float64) {
	ff := math.Pow(feedMMRev, 0.8)
	thrustN = 0.05*kdThrust*ff*math.Pow(diaMM, 0.8)*b*w + 0.007*kdThrust*diaMM*diaMM*j*w
	// 0.000025 gives N m; the thousand turns it into N mm.
	return thrustN, 1000 * 0.000025 * kdTorque * ff * math.Pow(diaMM, 1.8) * a * w
}

// Lips is what is left of ShawOxford where a hole of diameter from takes the
// chisel edge: the outer part of the lips alone cuts.
//
//	T = 0.05·Kd·f^0.8·D^0.8·W·(1 - from/D)               (N)
//	M = 0.000025·Kd·f^0.8·D^1.8·W·(1 - (from/D)²)        (N m)
//
// Source: own derivation from it: METHODS.md 2.
func Lips(kdThrust, kdTorque, feedMMRev, diaMM, fromMM, w float64) (thrustN, torqueNmm float64) {
	thrustN, torqueNmm = ShawOxford(kdThrust, kdTorque, feedMMRev, diaMM, 1, 1, 0, w)
	return thrustN * (1 - fromMM/diaMM), torqueNmm * lever(fromMM, diaMM)
}

// lever is the share of a torque that the outer part of a lip takes: its force
// is spread evenly along it.
func lever(fromMM, diaMM float64) float64 { return 1 - fromMM*fromMM/(diaMM*diaMM) }

// Kienzle returns the torque in N mm of a drill from the specific cutting
// force kc1.1 in MPa and its exponent mc:
//
//	h = f/2·sin(point/2),  kc = kc1.1·h^-mc,  M = kc·f·D²/8
//
// Source: tool maker catalogue 2017 p.558, VDI 3323 groups.
func Kienzle(kc11MPa, mc, feedMMRev, diaMM, pointDeg float64) (torqueNmm float64) {
	h := feedMMRev / 2 * math.Sin(pointDeg/2*math.Pi/180)
	return kc11MPa * math.Pow(h, -mc) * feedMMRev * diaMM * diaMM / 8
}

// Maker returns the thrust in N and the torque in N mm by a drill maker's
// formulas with his material factor K:
//
//	M = K·D²·(0.630 + 16.84·f)/100  (N m),  T = 570·K·D·f^0.85  (N)
//
// Source: drill maker catalogue 2020-21 p.L068.
func Maker(k, feedMMRev, diaMM float64) (thrustN, torqueNmm float64) {
	// 1000/100: hundredths of N m to N mm.
	return 570 * k * diaMM * math.Pow(feedMMRev, 0.85), 10 * k * diaMM * diaMM * (0.630 + 16.84*feedMMRev)
}

// Power is the power in W that a torque in N mm takes at so many turns a
// minute: P = M·2π·n/60, which is the handbook's M·n/9550 in kW.
func Power(torqueNmm, rpm float64) float64 { return torqueNmm / 1000 * 2 * math.Pi * rpm / 60 }

// forces works the thrust, torque and power of a drill out by every formula
// that has a figure for the material, and keeps the largest: it is for
// clamping.
func (c *Cutting) forces(q Query, m material, op string, a *Answer) error {
	p, ok := c.points[orElse(q.Point, "standard")]
	if !ok {
		return fmt.Errorf("no drill point %q; write standard or split", q.Point)
	}
	w, ok := c.wear[orElse(q.Wear, "normal")]
	if !ok {
		return fmt.Errorf("no state of a drill %q; write sharp, normal or dull", q.Wear)
	}
	if op != drill {
		return nil
	}
	k, ok := c.kd[m.kd]
	if !ok {
		a.note("no thrust or torque figure is known for %s", m.name)
		return nil
	}
	a.ForcesKnown = true
	solid, _ := ShawOxford(k.thrust, k.torque, a.FeedMMRev, q.DiaMM, p.a, p.b, p.j, w.w)
	a.ThrustN, a.TorqueNmm = ShawOxford(k.thrust, k.torque, a.FeedMMRev, q.DiaMM, p.a, p.b, p.j, w.w)
	arm := 1.0
	if from := math.Min(q.FromMM, q.DiaMM); from >= p.chisel*q.DiaMM {
		a.ThrustN, a.TorqueNmm = Lips(k.thrust, k.torque, a.FeedMMRev, q.DiaMM, from, w.w)
		arm = lever(from, q.DiaMM)
	}
	share, least := a.ThrustN/solid, a.TorqueNmm
	a.cite(k.ref)
	if k.say != "" && m.kd != "steel" && m.kd != "cast iron" {
		a.note("%s", k.say)
	}
	if r, ok := c.kienzle[m.kienzle]; ok {
		torque := arm * Kienzle(r.kc11, r.mc, a.FeedMMRev, q.DiaMM, c.PointAngle())
		least, a.TorqueNmm = math.Min(least, torque), math.Max(a.TorqueNmm, torque)
		a.cite(r.ref)
	}
	if r, ok := c.maker[m.maker]; ok {
		thrust, torque := Maker(r.k, a.FeedMMRev, q.DiaMM)
		torque *= arm
		a.ThrustN = math.Max(a.ThrustN, share*thrust)
		least, a.TorqueNmm = math.Min(least, torque), math.Max(a.TorqueNmm, torque)
		a.cite(r.ref)
	}
	a.PowerW = Power(a.TorqueNmm, a.RPM)
	if a.TorqueNmm > 1.3*least {
		a.note("the formulas for torque run from %.3g to %.3g N m; the largest is used", least/1000, a.TorqueNmm/1000)
	}
	if w.w == c.wear["normal"].w {
		a.note("thrust and torque of a drill in normal use: sharp %.2g of it, dull %.3g times", c.wear["sharp"].w/w.w,
			c.wear["dull"].w/w.w)
	}
	return nil
}

func orElse(s, other string) string {
	if s == "" {
		return other
	}
	return s
}

// keyed reads a table whose first column is a name into a map.
func keyed[T any](lib *table.Library, name, key string, read func(table.Row) (T, error)) (map[string]T, error) {
	t, err := lib.Get(name)
	if err != nil {
		return nil, err
	}
	out := map[string]T{}
	for _, r := range t.Rows {
		if out[r.Get(key)], err = read(r); err != nil {
			return nil, err
		}
	}
	return out, nil
}

func (c *Cutting) readForces(lib *table.Library) (err error) {
	pair := func(r table.Row, x, y string) (a, b float64, err error) {
		if a, err = positive(r, x); err == nil {
			b, err = positive(r, y)
		}
		return a, b, err
	}
	if c.kd, err = keyed(lib, "kd", "class", func(r table.Row) (k kdRow, err error) {
		k.say, k.ref = r.Get("say"), refOf(r)
		k.torque, k.thrust, err = pair(r, "kd_torque", "kd_thrust")
		return k, err
	}); err != nil {
		return err
	}
	if c.kienzle, err = keyed(lib, "kd_kienzle", "class", func(r table.Row) (k kienzleRow, err error) {
		k.ref = refOf(r)
		k.kc11, k.mc, err = pair(r, "kc11_mpa", "mc")
		if err == nil && k.mc >= 1 {
			err = fmt.Errorf("%s: mc %v must be below 1", r.Address(), k.mc)
		}
		return k, err
	}); err != nil {
		return err
	}
	if c.maker, err = keyed(lib, "kd_maker", "class", func(r table.Row) (k makerRow, err error) {
		k.ref = refOf(r)
		k.k, err = positive(r, "k")
		return k, err
	}); err != nil {
		return err
	}
	if c.points, err = keyed(lib, "kd_point", "point", func(r table.Row) (k pointRow, err error) {
		k.ref = refOf(r)
		if k.a, k.b, err = pair(r, "a", "b"); err == nil {
			k.j, k.chisel, err = pair(r, "j", "chisel_over_diameter")
		}
		return k, err
	}); err != nil {
		return err
	}
	if c.wear, err = keyed(lib, "kd_wear", "wear", func(r table.Row) (k wearRow, err error) {
		k.ref = refOf(r)
		k.w, err = positive(r, "w")
		return k, err
	}); err != nil {
		return err
	}
	for _, n := range []string{"sharp", "normal", "dull"} {
		if _, ok := c.wear[n]; !ok {
			return fmt.Errorf("the table kd_wear has no row %q", n)
		}
	}
	return c.checkClasses()
}

// checkClasses sees to it that every class a material names has its row.
func (c *Cutting) checkClasses() error {
	for _, m := range c.materials {
		_, a := c.kd[m.kd]
		_, b := c.kienzle[m.kienzle]
		_, d := c.maker[m.maker]
		if m.kd != "" && !a || m.kienzle != "" && !b || m.maker != "" && !d {
			return fmt.Errorf("%s: %s: a class of force (%q, %q, %q) is not in its table", m.ref.Address, m.name, m.kd, m.kienzle, m.maker)
		}
	}
	return nil
}
