package seat

import (
	"fmt"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/stock"
	"rebush/plan/job"
)

// bushes turns the job's list into what the search reads: each bush with the
// limits of its outside and its bore. A bush that makes no sense is named and
// left out; the plan goes on with the rest.
func (in *Input) bushes(said *finding.List) []Bush {
	var out []Bush
	for i := range in.Job.Bushes {
		b := &in.Job.Bushes[i]
		known, err := in.bush(b)
		if err != nil {
			sayLeftOut(said, RuleBush, in.Job.PlaceAt(b.Code, bushPath(i)), err, "correct this bush in the job file")
			continue
		}
		out = append(out, known)
	}
	return out
}

func bushPath(i int) string { return fmt.Sprintf("bushes/%d", i) }

func (in *Input) bush(b *job.Bush) (Bush, error) {
	metal, err := metalOf(in.Metals, b.Material)
	if err != nil {
		return Bush{}, err
	}
	s := Bush{Code: b.Code, Index: b.Index, Metal: metal, Turned: b.Turned, ToBuy: b.ToBuy, OnHand: -1,
		Runout: b.Runout.Float()}
	if b.Price != nil {
		s.Price, s.Priced = *b.Price, true
	}
	if b.OnHand != nil {
		s.OnHand = *b.OnHand
	}
	kept := stock.Bush{Code: b.Code, Bore: stock.Size(b.Bore), OD: stock.Size(b.OD), Length: b.Length,
		FlangeOD: b.FlangeOD, FlangeThickness: b.FlangeThickness}
	return s, s.sized(kept, in.classes, in.UBore, in.UOutside)
}

// sized gives a bush its lengths, and unless it is turned for its seat the
// limits of its diameters.
func (b *Bush) sized(from stock.Bush, classes stock.Classes, uBore, uOutside dim.Length) error {
	b.Length, b.FlangeOD, b.FlangeT = from.Length.Float(), from.FlangeOD.Float(), from.FlangeThickness.Float()
	if b.Turned {
		return nil
	}
	k, err := from.Resolve(classes, uBore, uOutside)
	if err != nil {
		return err
	}
	b.ODLow, b.ODHigh = k.OD.Low.Float(), k.OD.High.Float()
	b.BLow, b.BHigh = k.Bore.Low.Float(), k.Bore.High.Float()
	return nil
}

// classes answers the stock room's question after ISO limits.
func (in *Input) classes(nominal dim.Length, class string) (lower, upper decimal.Decimal, rows []string, err error) {
	d, err := in.Limits.Class(nominal, class)
	return d.LowerUm, d.UpperUm, d.Sources, err
}

// series are the bushes that can be bought, for when nothing on the list can be
// seated.
func (in *Input) series(said *finding.List) []Bush {
	out, err := in.Memo.sold(func() ([]Bush, error) { return seriesOf(in.Tables) })
	if err != nil {
		saySeries(said, err)
	}
	return out
}

// seriesOf are the bushes that are sold, with their limits. A size for which its class does not exist, and a
// material that is not known, are left out; an error is that of the table.
func seriesOf(t Tables) ([]Bush, error) {
	list, err := stock.Series(t.Library)
	if err != nil {
		return nil, err
	}
	metals := map[string]Metal{}
	in := Input{Tables: t}
	var out []Bush
	for i, kept := range list {
		m, known := metals[kept.Material]
		if !known {
			if m, err = metalOf(t.Metals, kept.Material); err != nil {
				continue
			}
			metals[kept.Material] = m
		}
		b := Bush{Code: kept.Code, Index: seriesFrom + i, ToBuy: true, OnHand: -1, Metal: m,
			Source: kept.Address + ": " + kept.Source}
		if b.sized(kept, in.classes, dim.Length{}, dim.Length{}) == nil {
			out = append(out, b)
		}
	}
	return out, nil
}

// seriesFrom is the index of the first bush of the series: behind those of any
// list.
const seriesFrom = 1 << 20
