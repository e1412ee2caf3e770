package checked

import (
	"strings"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
	"rebush/fits/limits"
	"rebush/fits/table"
)

// fitRows works out limits, fits and reamers of classes. They are whole
// micrometres or thousandths of an inch, and have to be met exactly.
func fitRows(rows []Row, lib *table.Library) []Figure {
	l, err := limits.New(lib)
	var out []Figure
	for _, r := range rows {
		f := r.figure("fits.csv")
		if err != nil {
			out = append(out, f.fails(err))
			continue
		}
		v, err := fit(l, r["quantity"], readInputs(r["inputs"]))
		out = append(out, f.is(v.InexactFloat64(), err))
	}
	return out
}

func fit(l *limits.Limits, quantity string, in *inputs) (decimal.Decimal, error) {
	upper := strings.HasPrefix(quantity, "upper") || strings.HasPrefix(quantity, "maximum") ||
		strings.Contains(quantity, "(upper)") || strings.Contains(quantity, "plus or minus")
	pick := func(low, high decimal.Decimal) decimal.Decimal {
		if upper {
			return high
		}
		return low
	}
	size := dim.Length{}
	if !in.has("nominal_in") {
		size = in.mm("nominal_mm", "bush_OD_mm", "bush_bore_mm", "bush_length_mm", "hole_nominal_mm")
	}
	if in.err != nil {
		return decimal.Zero, in.err
	}
	switch {
	case in.has("nominal_in"):
		return inchFit(l, quantity, in, pick)
	case in.has("grade"):
		g, err := l.Grade(size, in.by["grade"])
		return g.Um, err
	case in.has("hole_class"):
		low, high, err := l.Reamer(size, in.by["hole_class"])
		return pick(low.MM(), high.MM()), err
	case in.has("fit"), in.has("housing"):
		pair := in.by["fit"]
		if pair == "" {
			pair = in.by["housing"] + "/" + in.by["OD_class"]
		}
		f, err := l.Fit(size, pair)
		if strings.Contains(quantity, "interference") {
			return pick(f.MinInterferenceUm(), f.MaxInterferenceUm()), err
		}
		return pick(f.MinClearanceUm, f.MaxClearanceUm), err
	}
	d, err := l.Class(size, in.first("class", "class_after_fitting"))
	return pick(d.LowerUm, d.UpperUm), err
}

// inchFit is in thousandths of an inch.
func inchFit(l *limits.Limits, quantity string, in *inputs,
	pick func(low, high decimal.Decimal) decimal.Decimal) (decimal.Decimal, error) {
	size, err := decimal.NewFromString(in.by["nominal_in"])
	if err != nil {
		return size, err
	}
	f, err := l.Inch(dim.OfInch(size), in.by["fit"])
	switch {
	case strings.Contains(quantity, "interference"):
		return pick(f.MinInterference(), f.MaxInterference()), err
	case strings.Contains(quantity, "clearance"):
		return pick(f.MinClearance, f.MaxClearance), err
	}
	return pick(f.ShaftLower, f.ShaftUpper), err
}
