package survey

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"rebush/fits/table"
	"rebush/plan/job"
)

// Quantity is what an instrument reads, by its word in the column
// `reads` of the instruments table.
type Quantity string

// What is read at a bore.
const (
	Width  Quantity = "width"  // a diameter, or a distance from edge to edge
	Middle Quantity = "centre" // a place: each of its axes
	Pin    Quantity = "pin"    // whether a pin goes
	Wall   Quantity = "probe"  // a point of the wall: each of its axes
)

// Reading is how well one figure of a bore is known.
type Reading struct {
	Name string  // of the instrument, as the shop calls it
	U    float64 // standard uncertainty, mm
	Bias float64 // to be taken off the reading, mm; only where the instrument was named
	From string  // shop line or table row
}

// Instruments answers which instrument read what, and how well.
type Instruments struct {
	kinds table.InstrumentKinds
	shop  *job.Shop
	pins  *Reading // by the class of the shop's own set, nil where it is not said
}

// pinsRow is the row of the table that is asked for by name.
const pinsRow = "pins"

// Known says whether the name tells the kind of an instrument.
func (in *Instruments) Known(name string) bool { return in.kinds.Of(name) != nil }

// CanRead says whether an instrument is of a kind known to read such a figure.
func (in *Instruments) CanRead(name string, what Quantity) bool {
	k := in.kinds.Of(name)
	return k != nil && slices.Contains(k.Reads, string(what))
}

// Of is the instrument that read one figure of a bore: the one that `with`
// names for the key of the job ("widest") or for all, else as Named of no name.
func (in *Instruments) Of(b *job.Bore, key string, what Quantity) (Reading, error) {
	name := b.With[key]
	if name == "" {
		name = b.With["all"]
	}
	return in.Named(name, what)
}

// Default is what a figure is known by where nothing says which instrument read
// it; U is 0 where nothing in the table reads such a figure.
func (in *Instruments) Default(what Quantity) Reading {
	r, _ := in.Named("", what)
	return r
}

// Named is how well an instrument reads a figure: the shop's own of that name,
// else the kind that the name tells. Without a name it is the worst that the
// shop lists for such a figure, else the default row of the table; a bias is
// not taken off then, since nobody said that it was this instrument.
func (in *Instruments) Named(name string, what Quantity) (Reading, error) {
	if name == "" {
		return in.unnamed(what)
	}
	for i, own := range in.shop.Instruments {
		if strings.EqualFold(own.Name, name) {
			return Reading{Name: own.Name, U: own.U.Float(), Bias: own.Bias.Float(), From: in.line(i)}, nil
		}
	}
	k := in.kinds.Of(name)
	if k == nil {
		return Reading{}, fmt.Errorf("no instrument %q in the shop file, and no kind of instrument by that name",
			name)
	}
	r := Reading{Name: name, U: k.U, From: k.From}
	if k.Name == pinsRow && in.pins != nil {
		r.U, r.From = in.pins.U, in.pins.From
	}
	if k.Name == pinsRow && what == Width && in.shop.Pins != nil {
		// The largest that goes, and a step on one that does not: the size lies
		// somewhere between.
		r.U = math.Hypot(r.U, evenly(in.shop.Pins.Step.Float()))
	}
	return r, nil
}

func (in *Instruments) unnamed(what Quantity) (Reading, error) {
	worst := Reading{}
	for i, own := range in.shop.Instruments {
		if in.CanRead(own.Name, what) && own.U.Float() > worst.U {
			worst = Reading{Name: own.Name, U: own.U.Float(), From: in.line(i)}
		}
	}
	if worst.U > 0 {
		return worst, nil
	}
	if what == Pin && in.pins != nil {
		return *in.pins, nil
	}
	if k := in.kinds.Default(string(what)); k != nil {
		return Reading{Name: "default for a " + string(what), U: k.U, From: k.From}, nil
	}
	return Reading{}, fmt.Errorf("no default instrument for a %s", what)
}

func (in *Instruments) line(i int) string {
	return in.shop.At(fmt.Sprintf("instruments/%d", i)).Source("built-in small shop:1")
}

// evenly is the standard uncertainty of a figure that lies anywhere within a
// width, all places alike: width/sqrt 12. Source: JCGM 100:2008, 4.3.7 (from memory).
func evenly(width float64) float64 { return width / math.Sqrt(12) }
