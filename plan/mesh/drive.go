package mesh

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/ledger"
	"rebush/fits/say"
)

// Kind is a kind of mesh, as the job names it.
type Kind string

// The kinds of mesh.
const (
	SpurPair  Kind = "spur" // two spur gears on parallel shafts
	WormDrive Kind = "worm" // a worm along the truck and its wheel
)

// Geometry turns two places into a centre distance: Across or Along. towards
// is the unit vector by which a small move changes it: da = towards.(dm - dp).
type Geometry interface {
	Distance(p, m [2]float64) (a float64, towards [2]float64)
}

// Drive is one mesh of a job: a wheel on a worn shaft, its mate, and what both
// want. It is a value; what is learnt of it later makes another one.
type Drive struct {
	Name     string
	Kind     Kind
	Wheel    string  // the shaft that carries the wheel
	Module   float64 // mm
	Face     float64 // of the wheel, mm; 0 where it was not measured
	Pair     Pair
	Geometry Geometry

	// Shaft and Mate count among the shafts whose place is known; Mate is -1
	// for a mate at the fixed place MateAt, known to UMate mm.
	Shaft, Mate int
	MateAt      [2]float64
	UMate       float64
	// Share and MateShare say where the gears stand on their shafts: 0 at the
	// left bore, 1 at the right one; outside them they are overhung.
	Share, MateShare float64

	Runout float64 // total indicator reading of both gears, added: the tightest tooth, mm
	Turns  float64 // the same as the chance takes it: of a gear that nobody measured as much as is usual, mm
	Closes float64 // how much nearer the rim of a throated wheel comes by standing off its middle, mm

	Wish    Wish
	Limits  Limits
	Window  Window
	Tried   bool     // the distance at which its teeth touch was tried, and is not worked out
	Trusted bool     // may move a shaft
	Denied  bool     // its figures contradict how it ran: see Seen
	UGeom   float64  // standard uncertainty of the window's place, mm
	UTeeth  float64  // the same where the teeth are as entered, mm
	UPitch  float64  // part of it: a worm's pitch diameter that was worked out from its outside, mm
	Bound   float64  // the most that the window may lie aside, mm
	Odd     float64  // share of unmeasured gears that are not cut as they are counted
	Spread  Spread   // where the window may lie beside its place: see SpreadFrom
	Ties    []Tie    // what how it ran tells of the errors of its distance, by shift of Spread
	Moved   bool     // the mate stands elsewhere than where the wear was made
	Wear    say.Text // what wear did to it, in words and number; see Seen
}

// mates are what the other part is called at the bench.
var mates = map[Kind]string{SpurPair: "the pinion", WormDrive: "the worm"}

// OnJob says whether the mate sits on a shaft of the job whose place is known.
func (d Drive) OnJob() bool { return d.Mate >= 0 }

// Play is the circumferential backlash in mm at a centre distance, never below
// 0; NaN where the teeth do not meet.
func (d Drive) Play(a float64) float64 {
	j, err := d.Pair.Backlash(a)
	if err != nil {
		return math.NaN()
	}
	return math.Max(0, j)
}

// Tightest is the normal backlash in mm that the tightest tooth of a turn
// keeps, negative where it would bind.
func (d Drive) Tightest(a float64) (float64, error) { return TightestTooth(d.Pair, a, d.Runout) }

// LeanLimit is the most normal backlash in mm that the lean of a shaft may
// take: a share of what the tight edge of the window leaves. ok is false where
// that edge leaves none.
func (d Drive) LeanLimit(share float64) (limit float64, ok bool) {
	least, err := d.Pair.Normal(d.Window.Lo)
	return dim.Sig9(share * least), err == nil && least > 0
}

// Whole are the least and most centre distance, mm, at which the tightest tooth of
// a turn keeps its backlash and the loosest has the contact asked for; 0 and
// Endless where nothing asks.
func (d Drive) Whole() [2]float64 {
	out := [2]float64{0, Endless}
	if a, err := d.Pair.CentreForNormal(d.Limits.TightTooth); err == nil {
		out[0] = a + d.Closes + d.Turns/2
	}
	contact := d.Window.Contact
	if d.Window.Empty {
		contact = d.Limits.ContactHard
	}
	if a, err := d.Blunt().CentreForContactRatio(contact); err == nil {
		out[1] = a - d.Turns/2
	}
	return out
}

// Endless is more than any centre distance, mm.
const Endless = 1e5

// Cut is the window of the drive for a backlash wanted from least to most, a
// run-out and the two rules that may cut it, mm. A throated wheel off its
// middle comes closer by that much.
func (d Drive) Cut(least, most, runout, contact, tooth float64) (Window, error) {
	wish, lim := d.Wish, d.Limits
	wish.Lo, wish.Hi = least, most
	lim.ContactRatio, lim.TightTooth = contact, tooth
	w, err := WindowOf(d.Pair, d.Module, wish, runout, lim)
	if w.Lo += d.Closes; w.Lo > w.Hi {
		w.Empty = true
	}
	return w, err
}

// page is where the ledger keeps the drive.
func (d Drive) page(book *ledger.Ledger) ledger.Page { return book.Page("mesh/" + d.Name) }

// Edges are the ends of the window as inputs of what hangs on them.
func (d Drive) Edges(book *ledger.Ledger) []ledger.Num {
	return []ledger.Num{d.page(book).Num("window_mm/0"), d.page(book).Num("window_mm/1")}
}
