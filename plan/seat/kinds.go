package seat

import "strings"

// Mend is what is done at a worn hole to give the shaft a bearing again.
type Mend string

// The mends that are planned today. Others (a plug, a bush in a bush) are
// weighed by the verdict alone.
const (
	// Rebush cuts a new seat that takes the wear in, and fits a bush.
	Rebush Mend = "re-bush"
	// Renew fits a bush into a seat that is there: that of the old bush, or one
	// under a cap. Nothing is cut.
	Renew Mend = "renew"
)

// Mends are the mends that a hole is open to, the one that takes off least
// first.
func (h Hole) Mends() []Mend {
	switch {
	case h.Cap > 0:
		return []Mend{Renew}
	case h.Old != nil:
		return []Mend{Renew, Rebush}
	}
	return []Mend{Rebush}
}

// Kind is a way to make a seat.
type Kind int

// The ways. The last two cut nothing.
const (
	Reamer Kind = iota
	BoringHead
	EndMill
	OldSeatWay
	CapWay
)

// String is the way in a word or two.
func (k Kind) String() string {
	return [...]string{"reamer", "boring head", "end mill", "old seat", "cap"}[k]
}

// Mend is what a way serves.
func (k Kind) Mend() Mend {
	if k == OldSeatWay || k == CapWay {
		return Renew
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
