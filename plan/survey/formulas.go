package survey

import (
	"math"

	"rebush/fits/dim"
)

// across is a diameter from a radius.
func across(radius float64) float64 { return dim.Sig9(2 * radius) }

// degrees is a direction from +x anticlockwise, 0 to 360.
func degrees(rad float64) float64 { return dim.Sig9(math.Mod(rad/deg+720, 360)) }

// play is how far a journal can be moved in its hole as found, mm on diameter:
// the widest, which is the old diameter and the depth of wear, less the journal;
// never below 0.
func play(oldRadius, wear, journal float64) float64 {
	return dim.Sig9(math.Max(0, 2*oldRadius+wear-journal))
}

// percent is a share of a whole in percent, to a tenth.
func percent(part, whole float64) float64 { return math.Round(1000*part/whole) / 10 }

// Play is how far the shaft can be moved in the hole as found, mm on diameter: as
// it is printed where the journal runs in the hole itself; else the depth of wear.
// Of a hole that an earlier repair put where it is only the widest tells, by the
// instrument that read it. 0 where nothing does.
func (h Hole) Play(tools *Instruments) float64 {
	switch {
	case h.Bore.Repaired || !h.Known:
		if !h.Bore.Widest.Given() {
			return 0
		}
		g, err := tools.Of(h.Bore, "widest", Width)
		if err != nil {
			g = tools.Default(Width)
		}
		return play(0, h.Bore.Widest.Float()-g.Bias, h.Journal())
	case h.plays():
		return play(h.Worn.R, h.Worn.W, h.Journal())
	}
	return math.Max(0, h.Worn.W)
}

// plays says whether the journal runs in the hole itself, so that its play can
// be told.
func (h Hole) plays() bool { return h.Journal() > 0 && h.Bore.Seat == nil }
