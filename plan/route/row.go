package route

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/say"
	"rebush/plan/safety"
)

// Row is one block of the route as it is printed: keys carry units, lengths
// that are gauged are decimal text, absent is null.
type Row struct {
	Number     int          `json:"number"` // in tens
	Setup      string       `json:"setup"`
	Bore       string       `json:"bore"`
	Do         say.Text     `json:"do"`
	Tool       say.Text     `json:"tool"`
	ToolMM     dim.Gauged   `json:"tool_mm"`
	AtMM       *dim.XY      `json:"at_mm"` // in the frame of the job
	Approach   say.Text     `json:"approach"`
	RPM        *float64     `json:"rpm"`
	RPMIdeal   *float64     `json:"rpm_ideal"`
	FeedMMRev  *float64     `json:"feed_mm_rev"`
	DepthMM    dim.Gauged   `json:"depth_mm"`
	StopMM     dim.Gauged   `json:"stop_mm"` // the tool's tip below the face that it comes down on: of the jig, else of the upper plate
	LimitsMM   *dim.MMRange `json:"limits_mm"`
	Gauge      say.Text     `json:"gauge"`
	Go         say.Text     `json:"go"`
	NoGo       say.Text     `json:"no_go"`
	Lubricant  say.Text     `json:"lubricant"`
	ThrustN    *float64     `json:"thrust_n"`
	Backing    say.Text     `json:"backing"`
	Minutes    *float64     `json:"minutes"`
	GaugeFirst say.Text     `json:"gauge_first"` // a box to pass before it, "" where there is none
	MayWait    bool         `json:"may_wait"`
	Note       say.Text     `json:"note"`

	DialMM    *dim.XY  `json:"dial_mm"` // what the dials read there: of a chassis turned over x counts from its other end
	FeedWords say.Text `json:"feed_words"`
	Kind      Kind     `json:"kind"`
	HoleMM    float64  `json:"-"` // diameter of the hole when the operation is done
	Holding   say.Text `json:"holding"`

	Safety []safety.Line `json:"safety"` // what can hurt in it

	// What pictures of it go by.
	Pins   [2]float64 `json:"-"` // mm, what goes and what does not; 0 none or not known
	Far    bool       `json:"-"` // the tool goes through the near plate to the far one
	Expect [2]float64 `json:"-"` // force of a press, N: least, greatest; 0 none
	Halt   float64    `json:"-"` // N, 0 where a force is not what stops it
	Shapes []Shape    `json:"-"` // that are turned in it
}

// row is an operation without the figures of its cut.
func (o Operation) row() Row {
	out := Row{Number: o.Number, Setup: o.Setup, Bore: o.Bore, Kind: o.Kind, Do: o.Do, Tool: o.Tool,
		ToolMM:   dim.Size(o.ToolMM),
		Approach: o.Approach, Holding: o.Holding, Backing: o.Backing, Lubricant: o.Lubricant, Gauge: o.Gauge,
		Go: o.Go, NoGo: o.NoGo, Pins: o.Pins,
		GaugeFirst: o.GaugeFirst, Note: o.Note, MayWait: o.MayWait, HoleMM: o.HoleMM,
		Far: o.Far, Expect: o.Expect, Halt: o.Halt, Shapes: o.Shapes}
	if o.Stop > 0 {
		out.StopMM = dim.Places(o.Stop, 1)
	}
	if o.At != nil {
		out.DialMM = sizeXY(*o.At)
	}
	if o.At != nil || o.Placed {
		out.AtMM = sizeXY(o.Place)
	}
	if o.Minutes > 0 {
		out.Minutes = dim.Number(toATenth(o.Minutes))
	}
	if o.Limits != nil {
		out.LimitsMM = dim.Limits(o.Limits[0], o.Limits[1])
		if o.AsLeft {
			out.LimitsMM = dim.Sizes(o.Limits[0], o.Limits[1])
		}
	}
	return out
}

// sizeXY is a place as a dial shows it, to a thousandth.
func sizeXY(p [2]float64) *dim.XY { return &dim.XY{dim.Size(p[0]), dim.Size(p[1])} }

// toATenth rounds minutes as they are printed.
func toATenth(minutes float64) float64 { return math.Round(minutes*10) / 10 }
