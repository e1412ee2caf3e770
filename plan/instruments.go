package plan

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"rebush/fits/table"
	"rebush/plan/job"
)

// reading is how well one figure of a bore is known.
type reading struct {
	name string
	u    float64 // standard uncertainty, mm
	bias float64 // to be taken off the reading, mm; only where the instrument was named
	from string  // shop line or table row
}

// instruments answers which instrument read what.
type instruments struct {
	kinds []instrumentKind
	shop  *job.Shop
	pins  *reading // by the class of the shop's own set, nil where it is not said
}

type instrumentKind struct {
	name  string
	words []string
	reads []string
	u     float64
	from  string
}

func readInstruments(lib *table.Library, shop *job.Shop) (*instruments, error) {
	t, err := lib.Get("instruments")
	if err != nil {
		return nil, err
	}
	in := &instruments{shop: shop}
	for _, row := range t.Rows {
		u, err := strconv.ParseFloat(row.Get("u_mm"), 64)
		if err != nil || u <= 0 {
			return nil, fmt.Errorf("%s: u_mm %q is not a figure above 0", row.Address(), row.Get("u_mm"))
		}
		k := instrumentKind{name: row.Get("kind"), reads: strings.Fields(row.Get("reads")), u: u, from: row.Address()}
		for _, w := range strings.Split(row.Get("words"), ";") {
			if w = strings.TrimSpace(w); w != "" {
				k.words = append(k.words, w)
			}
		}
		in.kinds = append(in.kinds, k)
	}
	return in, in.readPins(lib)
}

// readPins works out the doubt of the shop's own pins from their class: the
// tolerance as a rectangle about its middle.
func (in *instruments) readPins(lib *table.Library) error {
	if in.shop.Pins == nil || in.shop.Pins.Class == "" {
		return nil
	}
	t, err := lib.Get("pin_classes")
	if err != nil {
		return err
	}
	var names []string
	for _, row := range t.Rows {
		names = append(names, row.Get("class"))
		if !strings.EqualFold(row.Get("class"), in.shop.Pins.Class) {
			continue
		}
		tol, err := strconv.ParseFloat(row.Get("tolerance_mm"), 64)
		if err != nil || tol <= 0 {
			return fmt.Errorf("%s: tolerance_mm %q is not a figure above 0", row.Address(), row.Get("tolerance_mm"))
		}
		in.pins = &reading{name: "pins", u: tol / math.Sqrt(12), from: row.Address()}
		return nil
	}
	return fmt.Errorf("%s: pins of class %q; the classes are %s", place(in.shop.At("pins"), "shop file"), in.shop.Pins.Class, strings.Join(names, ", "))
}

// kindOf tells what kind of instrument a name is, nil where it is none known.
func (in *instruments) kindOf(name string) *instrumentKind {
	name = strings.ToLower(name)
	for i := range in.kinds {
		for _, w := range in.kinds[i].words {
			if strings.Contains(name, w) {
				return &in.kinds[i]
			}
		}
	}
	return nil
}

func (k *instrumentKind) canRead(what string) bool {
	for _, r := range k.reads {
		if r == what {
			return true
		}
	}
	return false
}

// of returns the instrument that read one figure of a bore: the one that
// `with` names, else the worst that the shop lists for that kind of reading,
// else the default row. figure is the key of the job ("widest"), what the kind
// of reading ("width").
func (in *instruments) of(b *job.Bore, figure, what string) (reading, error) {
	name := b.With[figure]
	if name == "" {
		name = b.With["all"]
	}
	return in.named(name, what)
}

func (in *instruments) named(name, what string) (reading, error) {
	if name != "" {
		for i, own := range in.shop.Instruments {
			if strings.EqualFold(own.Name, name) {
				return reading{name: own.Name, u: own.U.Float(), bias: own.Bias.Float(), from: in.line(i)}, nil
			}
		}
		if k := in.kindOf(name); k != nil {
			r := reading{name: name, u: k.u, from: k.from}
			if k.name == "pins" && in.pins != nil {
				r.u, r.from = in.pins.u, in.pins.from
			}
			if k.name == "pins" && what == "width" && in.shop.Pins != nil {
				// The largest that goes, and a step on one that does not: the size
				// lies somewhere between.
				r.u = math.Hypot(r.u, in.shop.Pins.Step.Float()/math.Sqrt(12))
			}
			return r, nil
		}
		return reading{}, fmt.Errorf("no instrument %q in the shop file, and no kind of instrument by that name", name)
	}
	worst := reading{}
	for i, own := range in.shop.Instruments {
		k := in.kindOf(own.Name)
		if k == nil || !k.canRead(what) || own.U.Float() <= worst.u {
			continue
		}
		worst = reading{name: own.Name, u: own.U.Float(), from: in.line(i)}
	}
	if worst.u > 0 {
		return worst, nil
	}
	if what == "pin" && in.pins != nil {
		return *in.pins, nil
	}
	for _, k := range in.kinds {
		if k.name == "default "+what {
			return reading{name: "default for a " + what, u: k.u, from: k.from}, nil
		}
	}
	return reading{}, fmt.Errorf("no default instrument for a %s", what)
}

func (in *instruments) line(i int) string {
	return place(in.shop.At(fmt.Sprintf("instruments/%d", i)), "built-in small shop:1")
}

// place writes a position for the ledger.
func place(p job.Pos, otherwise string) string { return p.Source(otherwise) }
