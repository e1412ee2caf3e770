package seat

import "strings"

// Mend is what is done at a worn hole to give the shaft a bearing again.
type Mend string

// The mends, in rising order of what is done to the truck. Their names are
// those of the ways.
const (
	// Keep leaves the hole as it is.
	Keep Mend = "keep"
	// Renew fits a bush into a seat that is there: that of the old bush, or one
	// under a cap. Nothing is cut and the place stays.
	Renew Mend = "renew"
	// Rebush cuts a new seat that takes the wear in, and fits a bush.
	Rebush Mend = "re-bush"
	// MadeToFit turns a bush for a hole that is there and is not cut: about its
	// middle, or with its bore off its outside where the hole stands off place.
	MadeToFit Mend = "made to fit"
	// BushInABush sets the bush in a sleeve: the old bush, which stays in the
	// plate and is bored out, or one that is turned for a hole too large or too
	// rough for any bush.
	BushInABush Mend = "bush in a bush"
	// Plug fills the hole and cuts the seat anew in the filling.
	Plug Mend = "plug"
)

// MendsRising are the mends by how much is done to the truck, the least first.
func MendsRising() []Mend { return []Mend{Keep, Renew, Rebush, MadeToFit, BushInABush, Plug} }

// inPlace is how far a seat may stand from where the bore belongs and still be
// in its place, mm: half a micrometre, less than is printed.
const inPlace = 0.0005

// Mends are the mends that a hole is open to by what is in its plate alone, the
// one that takes off least first.
func (h Hole) Mends() []Mend {
	switch {
	case h.Cap > 0:
		return []Mend{Renew}
	case h.Old != nil && h.Old.Off <= inPlace:
		return []Mend{Renew, Rebush}
	}
	return []Mend{Rebush}
}

// Kind is a way to make a seat.
type Kind int

// The ways. An old seat, a cap and a hole as it is cut nothing; no tool is that of
// a bush that nothing in the shop makes a seat for.
const (
	Reamer Kind = iota
	BoringHead
	EndMill
	OldSeatWay
	CapWay
	NoTool
	AsItIs
)

// String is the way in a word or two.
func (k Kind) String() string {
	return [...]string{"reamer", "boring head", "end mill", "old seat", "cap", "no tool", "as it is"}[k]
}

// Cuts says whether a tool makes the seat.
func (k Kind) Cuts() bool { return k == Reamer || k == BoringHead || k == EndMill }

// Mend is what a way serves.
func (k Kind) Mend() Mend {
	switch k {
	case OldSeatWay, CapWay:
		return Renew
	case AsItIs:
		return MadeToFit
	}
	return Rebush
}

// Hold is what holds a bush in its seat before all else.
type Hold string

// The holds.
const (
	ByPress    Hold = "press"
	ByCompound Hold = "compound"
	ByCap      Hold = "cap"
)

// Second is what holds a bush beside its press: none, one, or a flange with one
// of the others.
type Second uint8

// The second holds, to be joined by |.
const (
	Flange Second = 1 << iota
	Compound
	Stake
)

var seconds = [...]struct {
	hold Second
	name string
}{{Flange, "flange"}, {Compound, "compound"}, {Stake, "stake"}}

// Each lists the holds that are joined in one.
func (s Second) Each() []Second {
	var out []Second
	for _, x := range seconds {
		if s&x.hold != 0 {
			out = append(out, x.hold)
		}
	}
	return out
}

// String names them, "flange and stake"; "" where there is none.
func (s Second) String() string {
	var out []string
	for _, x := range seconds {
		if s&x.hold != 0 {
			out = append(out, x.name)
		}
	}
	return strings.Join(out, " and ")
}

// Finish is how a bore gets to size.
type Finish string

// The five ways.
const (
	AsDelivered Finish = "as delivered"
	Mandrel     Finish = "mandrel"
	Ream        Finish = "ream"
	BoreInPlace Finish = "bore"
	ToOwnAxle   Finish = "to its own axle"
)
