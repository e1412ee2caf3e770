package plan

import (
	"rebush/fits/table"
	"rebush/plan/job"
	"rebush/plan/survey"
)

// instruments are survey.Instruments under the names by which some steps still
// ask them.
type instruments struct{ *survey.Instruments }

func readInstruments(lib *table.Library, shop *job.Shop) (*instruments, error) {
	in, err := survey.ReadInstruments(lib, shop)
	return &instruments{in}, err
}

// reading is survey.Reading likewise.
type reading struct {
	name    string
	u, bias float64
	from    string
}

func (in *instruments) named(name, what string) (reading, error) {
	r, err := in.Named(name, survey.Quantity(what))
	return reading{r.Name, r.U, r.Bias, r.From}, err
}

func (in *instruments) of(b *job.Bore, figure, what string) (reading, error) {
	r, err := in.Of(b, figure, survey.Quantity(what))
	return reading{r.Name, r.U, r.Bias, r.From}, err
}

// kindOf answers for the kind of a name, nil where it is none known.
func (in *instruments) kindOf(name string) *instrumentKind {
	if !in.Known(name) {
		return nil
	}
	return &instrumentKind{in, name}
}

type instrumentKind struct {
	in   *instruments
	name string
}

func (k *instrumentKind) canRead(what string) bool {
	return k.in.CanRead(k.name, survey.Quantity(what))
}

// place writes a position for the ledger.
func place(p job.Pos, otherwise string) string { return p.Source(otherwise) }
