package cutting

import (
	"fmt"
	"math"

	"rebush/fits/table"
)

// depthRow is a figure of the table feed_depth.
type depthRow struct {
	low, high float64 // high is low where the row has one figure
	ref       Ref
}

// depthNames are the rows that have to be there.
var depthNames = []string{"share_of_diameter", "deep_diameters", "first_peck_diameters", "second_peck_diameters",
	"next_peck_diameters", "overrun_mm", "approach_mm", "point_deg"}

func (c *Cutting) readDepth(lib *table.Library) error {
	t, err := lib.Get("feed_depth")
	if err != nil {
		return err
	}
	c.depth = map[string]depthRow{}
	for _, r := range t.Rows {
		row := depthRow{ref: refOf(r)}
		if row.low, err = positive(r, "low"); err != nil {
			return err
		}
		row.high = row.low
		if r.Get("high") != "" {
			if row.high, err = positive(r, "high"); err != nil {
				return err
			}
		}
		c.depth[r.Get("name")] = row
	}
	for _, n := range depthNames {
		if _, ok := c.depth[n]; !ok {
			return fmt.Errorf("%s: no row %q", t.From, n)
		}
	}
	return nil
}

// PointLength is the length in mm of a drill's point of so many degrees:
//
//	l = (D/2) / tan(angle/2)
//
// 0.300 D at 118 degrees. It is 0 for an angle outside 0 to 180 and for a
// flat tool (180). Source: geometry.
func PointLength(diaMM, angleDeg float64) float64 {
	if !(angleDeg > 0 && angleDeg < 180) {
		return 0
	}
	return diaMM / 2 / math.Tan(angleDeg/2*math.Pi/180)
}

// Through is the feed depth in mm that brings the full diameter of a drill
// with a standard point through a plate: plate, point and overrun.
func (c *Cutting) Through(plateMM, diaMM float64) float64 {
	return plateMM + PointLength(diaMM, c.PointAngle()) + c.Overrun()
}

// PointAngle is the angle of a standard drill point in degrees.
func (c *Cutting) PointAngle() float64 { return c.depth["point_deg"].low }

// Overrun is how far in mm a tool runs beyond a plate.
func (c *Cutting) Overrun() float64 { return c.depth["overrun_mm"].low }

// Approach is how far in mm above the work the feed starts.
func (c *Cutting) Approach() float64 { return c.depth["approach_mm"].low }

// Pecks returns the depths in mm, each from the surface, at which a drill is
// drawn back to clear its chips; the last is the full depth. A hole that is
// not deep has one. Brass and cast iron need fewer. Source: table feed_depth.
func (c *Cutting) Pecks(depthMM, diaMM float64) []float64 {
	if !(depthMM > 0) || !(diaMM > 0) || math.IsInf(depthMM, 0) {
		return nil
	}
	if depthMM < c.depth["deep_diameters"].low*diaMM*(1-1e-9) {
		return []float64{depthMM}
	}
	steps := []float64{c.depth["first_peck_diameters"].low, c.depth["second_peck_diameters"].low}
	var out []float64
	at := 0.0
	for i := 0; len(out) < 1000; i++ {
		step := c.depth["next_peck_diameters"].low
		if i < len(steps) {
			step = steps[i]
		}
		at += step * diaMM
		if at >= depthMM*(1-1e-9) {
			break
		}
		out = append(out, at)
	}
	return append(out, depthMM)
}

// Minutes is the time of one cut:
//
//	t = (depth + approach + point + overrun) / (f·n)
//
// with lengths in mm, feed f in mm a turn and n in turns a minute. It is 0
// where feed or turns are not above 0. Source: geometry.
func Minutes(depthMM, approachMM, pointMM, overrunMM, feedMMRev, rpm float64) float64 {
	if !(feedMMRev > 0) || !(rpm > 0) {
		return 0
	}
	return (depthMM + approachMM + pointMM + overrunMM) / (feedMMRev * rpm)
}
