package checked

import (
	"fmt"
	"math"
	"strings"

	"rebush/fits/press"
	"rebush/fits/table"
)

// pressRows works out presses. A row may say that it is as another one: what it
// adds stands before what it repeats, and wins.
func pressRows(rows []Row, _ *table.Library) []Figure {
	var out []Figure
	for _, r := range rows {
		low, high, err := pressAnswer(r["quantity"], ReadPress(WithOther(r["inputs"], rows)))
		out = append(out, r.figure("pressfit.csv").spans(low, high, err))
	}
	return out
}

// pressAnswer works the row's quantity out. low and high are the band where the
// planner reports one.
func pressAnswer(quantity string, in PressText) (low, high float64, err error) {
	one := func(x float64) (float64, float64, error) { return x, x, nil }
	switch {
	case quantity == "effective interference":
		off := press.Smoothing(in.Get(0, 0, "k"), in.Get(0, 0, "Rz_bush"), in.Get(0, 0, "Rz_seat"))
		return one(press.Left(1000*in.Get(0, 0, "U"), off))
	case strings.Contains(quantity, " C") && strings.HasPrefix(quantity, "interference at"),
		strings.Contains(quantity, "temperature"):
		return one(warm(quantity, in))
	}
	s, u, err := in.Seat()
	if err != nil {
		return 0, 0, err
	}
	f, st := s.Factors(), s.At(u)
	hoop := math.NaN() // that the jacket may bear
	if g := hoopOf.FindStringSubmatch(quantity); g != nil {
		hoop = num(g[1])
	}
	switch {
	case strings.HasPrefix(quantity, "jacket bore before"):
		return one(s.D - s.InterferenceFor(hoop/f.HoleMax))
	case strings.HasPrefix(quantity, "shrink pressure giving jacket hoop"):
		return one(hoop / f.HoleMax)
	case strings.HasPrefix(quantity, "max hoop on hole"):
		return one(f.HoleMax)
	case strings.Contains(quantity, "edge / p"):
		return one(f.EdgeMax)
	case strings.HasPrefix(quantity, "hoop on hole at thinnest"):
		return one(f.HoleThin)
	case strings.HasPrefix(quantity, "mean hoop"):
		return one(f.MeanHoop)
	case strings.HasPrefix(quantity, "pressure limit"):
		return one(s.FlowPressure())
	case strings.HasPrefix(quantity, "plateau pressure"):
		return st.P, st.PHigh, nil
	case quantity == "bore closure, plastic bush":
		return st.ClosureLow * 1000, st.ClosureHigh * 1000, nil
	case strings.Contains(quantity, "closure"):
		return one(st.Closure * 1000)
	case strings.Contains(quantity, "OD growth"):
		return one(st.Growth * 1000)
	case strings.Contains(quantity, "bush hoop stress at bore"):
		return one(st.BushHoopBore)
	case strings.Contains(quantity, "von Mises at seat"):
		return one(st.HousingMises)
	case strings.Contains(quantity, "hoop stress at OD"):
		return one(st.EdgeHoop)
	case strings.Contains(quantity, "hoop stress at seat"):
		return one(st.HoleHoop)
	case strings.Contains(quantity, "peak tensile"):
		return one(st.HousingHoopMax)
	case strings.Contains(quantity, "force"):
		return one(s.Force(in.Get(0, 0, "mu"), st.P))
	case strings.Contains(quantity, "torque"):
		return one(s.Torque(in.Get(0, 0, "mu"), st.P) / 1000) // N mm to N m
	case strings.Contains(quantity, "pressure"):
		return one(st.P)
	}
	return 0, 0, fmt.Errorf("no answer for quantity %q", quantity)
}

func warm(quantity string, in PressText) float64 {
	w := press.Warm{D: in.Get(0, 0, "d"), U20: in.Get(0, 0, "U20", "U")}
	if housing, bush, ok := in.Expansions(); ok {
		w.HousingExp, w.BushExp = 1e6*housing, 1e6*bush
	}
	if strings.Contains(quantity, "loose") {
		x, _ := w.LooseAt()
		return x
	}
	return 1000 * w.At(DegreesOf(quantity))
}
