package habit

import "fmt"

// Way is a way of making a seat.
type Way string

// The three.
const (
	Reamed Way = "reamed"
	Bored  Way = "bored"
	Milled Way = "milled"
)

// Ways are all of them, in the order in which they are told.
func Ways() []Way { return []Way{Reamed, Bored, Milled} }

// Basis is what a figure rests on.
type Basis struct {
	Jobs int    // past jobs of this shop, 0: the rules alone
	At   string // where it stands: a line of the shop file, or a row of the rules
}

// Recorded says that a figure rests on the shop's record too.
func (b Basis) Recorded() bool { return b.Jobs > 0 }

// Source is what is printed as the source of a figure, "shop's record, 7 jobs:
// shop.yaml:31".
func (b Basis) Source() string {
	if b.Recorded() {
		return fmt.Sprintf("shop's record, %d jobs: %s", b.Jobs, b.At)
	}
	return b.At
}

// Size is what comes out of a way of making a diameter. A seat is reckoned from
// the middle of the reamer's own limits, the size of an end mill or the size
// that a boring tool was set to; a finished bore from the middle of what was
// expected of it.
type Size struct {
	OverUm    float64 // how much larger it comes out on the whole, um; below 0 smaller
	UOverUm   float64 // standard uncertainty of that, um: the same for all holes of a job
	ScatterUm float64 // standard deviation from hole to hole about it, um
	Basis
}

// Place is how far a hole stands from its target, mm, standard and per axis.
type Place struct {
	SetupMM float64 // shared by the holes of one clamping
	HoleMM  float64 // of each hole for itself
	Basis
}

// Slips is the share of holes that come out wrong by a slip.
type Slips struct {
	Share float64 // 0 to 1
	Basis
}

// Habits are all that is known of what a shop does.
type Habits struct {
	Ways      map[Way]Size
	Reamers   map[string]Size // of single reamers that the record names, by name: "5 mm H7"
	Place     Place
	Clearance Size // running clearance over what was planned
	Slips     Slips

	unnamed Size // of the shop's other reamers, where the record names some
}

// Seat is what a way of making a seat gives; reamer is the name of the reamer
// that makes it, "" where none does. Where the record names single reamers, one
// that it does not name cuts over as the rules have it, and scatters as the
// shop's reamers do.
func (h Habits) Seat(w Way, reamer string) Size {
	if w != Reamed || len(h.Reamers) == 0 || reamer == "" {
		return h.Ways[w]
	}
	if s, ok := h.Reamers[reamer]; ok {
		return s
	}
	return h.unnamed
}
