package cutting

import (
	"fmt"
	"math"

	"rebush/fits/table"
)

const mmPerInch = 25.4 // exact

// feedRow is one maker's feed of a drill for a range of diameters.
type feedRow struct {
	over, to, low, high float64 // mm and mm a turn
	ref                 Ref
}

// otherFeed is a feed of an operation other than drilling, or of a material
// with figures of its own.
type otherFeed struct {
	material, operation string
	low, used, high     float64
	ref                 Ref
}

func (c *Cutting) readFeeds(lib *table.Library) error {
	t, err := lib.Get("feed")
	if err != nil {
		return err
	}
	for _, r := range t.Rows {
		f := feedRow{ref: refOf(r)}
		if f.over, err = number(r, "d_over_mm"); err != nil {
			return err
		}
		if f.to, err = positive(r, "d_to_mm"); err != nil {
			return err
		}
		if f.low, f.high, err = span(r, "low_in_rev", "high_in_rev"); err != nil {
			return err
		}
		if math.IsNaN(f.low) || f.to <= f.over {
			return fmt.Errorf("%s: a row needs diameters that rise and two feeds", r.Address())
		}
		f.low, f.high = f.low*mmPerInch, f.high*mmPerInch
		c.feeds = append(c.feeds, f)
	}
	if len(c.feeds) == 0 {
		return fmt.Errorf("%s: no rows", t.From)
	}
	return nil
}

func (c *Cutting) readOthers(lib *table.Library) error {
	t, err := lib.Get("feed_other")
	if err != nil {
		return err
	}
	for _, r := range t.Rows {
		f := otherFeed{material: r.Get("material"), operation: r.Get("operation"), ref: refOf(r)}
		for _, cell := range []struct {
			name string
			to   *float64
		}{{"low_mm_rev", &f.low}, {"used_mm_rev", &f.used}, {"high_mm_rev", &f.high}} {
			if *cell.to, err = positive(r, cell.name); err != nil {
				return err
			}
		}
		if f.used < f.low || f.high < f.used {
			return fmt.Errorf("%s: feeds must rise from low over used to high", r.Address())
		}
		c.others = append(c.others, f)
	}
	return nil
}

// DrillFeed returns the feed of a twist drill in mm a turn: the span over the
// makers' tables, and the range all of them share. Small drills stay below
// 0.016 of their diameter, larger ones than the table holds take its last row.
// Source: table feed, and feed_depth for the share of the diameter.
func (c *Cutting) DrillFeed(diaMM float64) (low, high, sharedLow, sharedHigh float64) {
	low, high, sharedLow, sharedHigh, _, _ = c.drillFeed(diaMM)
	return low, high, sharedLow, sharedHigh
}

func (c *Cutting) drillFeed(diaMM float64) (low, high, sharedLow, sharedHigh float64, refs []Ref, beyond bool) {
	last := 0.0
	for _, f := range c.feeds {
		last = math.Max(last, f.to)
	}
	at := diaMM
	if at > last {
		at, beyond = last, true
	}
	low, sharedHigh = math.Inf(1), math.Inf(1)
	for _, f := range c.feeds {
		if at > f.over && at <= f.to {
			low, high = math.Min(low, f.low), math.Max(high, f.high)
			sharedLow, sharedHigh = math.Max(sharedLow, f.low), math.Min(sharedHigh, f.high)
			refs = append(refs, f.ref)
		}
	}
	if math.IsInf(low, 1) { // a gap in a shop's own table
		return 0, 0, 0, 0, nil, beyond
	}
	if sharedHigh < sharedLow {
		sharedLow, sharedHigh = low, low
	}
	most := c.depth["share_of_diameter"].low * diaMM
	if low > most {
		refs = append(refs, c.depth["share_of_diameter"].ref)
	}
	return math.Min(low, most), high, math.Min(sharedLow, most), sharedHigh, refs, beyond
}

// feed sets the feed of the answer and its span.
func (c *Cutting) feed(q Query, m material, op string, a *Answer) error {
	switch {
	case c.ownFeed(m.name, op, a):
	case op == plunge || op == endMill:
		r := c.rules.Get("plunge_feed_mm")
		a.FeedLow, a.FeedMMRev, a.FeedHigh = r.Low, r.Low, r.Low
		a.cite(Ref{r.Source, r.Address})
	case c.ownFeed("any", op, a):
	default:
		low, high, sharedLow, sharedHigh, refs, beyond := c.drillFeed(q.DiaMM)
		if low <= 0 {
			return fmt.Errorf("the table of feeds has no row for a diameter of %g mm", q.DiaMM)
		}
		if beyond {
			a.note("the table of feeds ends below this diameter: its last row is used")
		}
		used := (sharedLow + sharedHigh) / 2
		switch {
		case q.Hand || q.ThinWall || m.hard || m.kind != "metal":
			used = low
		case q.FullFeed:
			used = sharedHigh
		}
		// The middle of a row is too much for the smallest drills in it.
		if most := c.depth["share_of_diameter"].low * q.DiaMM; !q.FullFeed && used > most {
			used = math.Max(low, most)
		}
		for _, r := range refs {
			a.cite(r)
		}
		if op == ream {
			lo, hi, ref, err := c.reamFeedFactors()
			if err != nil {
				return err
			}
			low, used, high = low*lo, used*lo, high*hi
			for _, r := range ref {
				a.cite(r)
			}
		}
		a.FeedLow, a.FeedMMRev, a.FeedHigh = low, used, high
	}
	if q.FeedMMRev > 0 {
		a.FeedMMRev = q.FeedMMRev
	}
	return nil
}

// ownFeed looks for a row of the table feed_other.
func (c *Cutting) ownFeed(name, op string, a *Answer) bool {
	for _, o := range stands(op) {
		if o == bore && op != bore && op != boreFinish {
			continue // an end mill is not fed like a boring tool
		}
		for _, f := range c.others {
			if fold(f.material) == fold(name) && f.operation == o {
				a.FeedLow, a.FeedMMRev, a.FeedHigh = f.low, f.used, f.high
				a.cite(f.ref)
				return true
			}
		}
	}
	return false
}

// reamFeedFactors is the span of the published factors of the reamer feed on
// the drill feed.
func (c *Cutting) reamFeedFactors() (low, high float64, refs []Ref, err error) {
	low = math.Inf(1)
	for _, r := range c.reaming {
		if r.quantity == "feed_factor_vs_drilling" && r.rank == published {
			low, high = math.Min(low, r.low), math.Max(high, r.high)
			refs = append(refs, r.ref)
		}
	}
	if len(refs) == 0 {
		return 0, 0, nil, fmt.Errorf("the table of reaming has no published row feed_factor_vs_drilling")
	}
	return low, high, refs, nil
}
