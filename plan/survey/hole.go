package survey

import (
	"rebush/fits/ledger"
	"rebush/plan/job"
)

// Hole is one bore of the job as it was surveyed: what is believed of the worn
// hole, where its middle was found, and how the old centre is known. It is a
// value: later steps read it and write nothing into it.
type Hole struct {
	Shaft *job.Shaft
	Bore  *job.Bore

	Known  bool       // the old centre is known; without it Worn and U say nothing
	Worn   WornBore   // about the old centre, which is Worn.O
	Middle [2]float64 // of the hole as found, mm; {0, 0} where nothing tells of it
	U      float64    // standard uncertainty of the old centre, largest, mm
	// Cross is the covariance of the errors of this old centre (rows) and of the
	// other plate's (columns), mm^2; zero where neither lends the other.
	Cross  [2][2]float64
	Method Method // how the old centre was found
	By     string // the instrument it hangs on, or the method in words

	// What was probed of the wall, in mm, for a drawing of it: the points, how
	// far each stands from the outline, and those left out, from 0.
	Points    [][2]float64
	Residuals []float64
	LeftOut   []int

	Evidence []Evidence // all that was looked at
	Weights  []float64  // how much of the old centre each of it makes, of 1
	Used     int        // the place in Evidence of what leads; -1 where nothing is known

	centre, wear heard  // what the old centre and the worn hole were worked out from
	journal      Figure // as the ledger knows it
}

// Name is the bore's: "front axle.left".
func (h Hole) Name() string { return h.Bore.Name }

// Journal is the diameter of the journal that the lobe was worn by, mm; 0 where
// it was not measured.
func (h Hole) Journal() float64 { return h.Shaft.Journal.On(h.Bore.Side).Float() }

// Line is where a figure of the bore stands in the job: the path below
// shafts/, "front axle/bores/left/widest"; the bore itself for "".
func (h Hole) Line(figure string) string {
	return "shafts/" + h.Shaft.Name + "/bores/" + string(h.Bore.Side) + "/" + figure
}

// page is where the ledger keeps what is known of the hole.
func (h Hole) page(book *ledger.Ledger) ledger.Page { return book.Page("survey/" + h.Name()) }

// key is the key of one of its figures in the ledger.
func (h Hole) key(k string) string { return "survey/" + h.Name() + "/" + k }

// held are the figures that describe one worn hole in the ledger, in the order
// of Nums and With.
var held = [...]string{"centre_mm/0", "centre_mm/1", "old_radius_mm/found", "wear_mm", "wear_rad", "clearance_mm"}

// Held is how many figures describe one worn hole: the length of Nums.
const Held = len(held)

// Nums are those figures as inputs of others: old centre x and y, old radius,
// depth and direction of wear, clearance on radius.
func (h Hole) Nums(book *ledger.Ledger) []ledger.Num {
	out := make([]ledger.Num, Held)
	for i, k := range held {
		out[i] = h.page(book).Num(k)
	}
	return out
}

// With is the same hole made anew from the values of Nums: how later steps work
// their figures out again from the ledger. Both travels grow with clearance and
// wear: of two loads only the deeper one has gone as far as they say.
func (h Hole) With(in []float64) Hole {
	w := &h.Worn
	farther := in[5] + in[3] - (w.C + w.W)
	w.O, w.R, w.W, w.ThetaRad, w.C = [2]float64{in[0], in[1]}, in[2], in[3], in[4], in[5]
	w.D += farther
	if w.D2 > 0 {
		w.D2 += farther
	}
	return h
}
