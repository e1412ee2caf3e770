package inspect

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/say"
	"rebush/plan/job"
)

// Row sets one made size against the plan.
type Row struct {
	Bore     string       `json:"bore"`
	What     What         `json:"what"`
	MadeMM   dim.Gauged   `json:"made_mm"`
	LimitsMM *dim.MMRange `json:"limits_mm"`
	GuardUM  *float64     `json:"guard_um"`
	Result   Result       `json:"result"`
	Next     []Next       `json:"next"`

	Rule say.Text `json:"decision_rule"`
}

// Next is one way on from a size as made.
type Next struct {
	Do             say.Text `json:"do"`
	Bush           string   `json:"bush"`
	FirstTimeRight *float64 `json:"first_time_right"`
}

// Of sets one thing that was made of a hole against its limits. A place is how
// far the hole stands off the one that was planned. Errors: those of Decide.
func Of(h Hole, made job.Made, what What, g Gauge, s Shop) (Row, error) {
	size, limits := made.Seat.Float(), h.SeatMM
	switch what {
	case Bore:
		size, limits = made.Diameter.Float(), h.BoreMM
	case Place:
		at := made.Centre.Float()
		size, limits = math.Hypot(at[0]-h.At[0], at[1]-h.At[1]), [2]float64{math.Inf(-1), h.OffMM}
	}
	d, err := Decide(Made{MM: size - g.BiasMM, Low: limits[0], High: limits[1], UMM: g.UMM, GuardK: s.GuardK})
	if err != nil {
		return Row{}, err
	}
	row := Row{Bore: h.Name, What: what, MadeMM: dim.Size(size), LimitsMM: dim.Sizes(math.Max(0, limits[0]), limits[1]),
		GuardUM: dim.Number(d.GuardMM * 1000), Result: d.Result, Next: []Next{}, Rule: d.Rule}
	if d.Result != Accept {
		row.Next = append(row.Next, h.next(what, size-g.BiasMM, g.UMM, made, s, d)...)
	}
	return row, nil
}
