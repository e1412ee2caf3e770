package stock

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
	"rebush/fits/table"
)

// Series lists the plain bushes that can be bought, from the table bush_series,
// one for each bore, outside and length, in table order. None of them is in the
// drawer.
func Series(lib *table.Library) ([]Bush, error) {
	t, err := lib.Get("bush_series")
	if err != nil {
		return nil, err
	}
	var out []Bush
	for _, row := range t.Rows {
		bushes, err := fromRow(row)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", row.Address(), err)
		}
		out = append(out, bushes...)
	}
	return out, nil
}

func fromRow(row table.Row) ([]Bush, error) {
	unit := dim.MM
	switch row.Get("unit") {
	case "mm":
	case "in":
		unit = dim.Inch
	default:
		return nil, fmt.Errorf("unit %q is neither mm nor in", row.Get("unit"))
	}
	bore, err := size(row, "bore", unit)
	if err != nil {
		return nil, err
	}
	od, err := size(row, "od", unit)
	if err != nil {
		return nil, err
	}
	if row.Source() == "" || row.Get("material") == "" {
		return nil, fmt.Errorf("material and source must both stand")
	}
	var out []Bush
	for _, cell := range strings.Split(row.Get("lengths"), ";") {
		length, err := dim.Parse(cell, unit)
		if err != nil {
			return nil, fmt.Errorf("lengths: %w", err)
		}
		code := fmt.Sprintf("%s %s x %s x %s %s", row.Get("series"), row.Get("bore"), row.Get("od"), strings.TrimSpace(cell), row.Get("unit"))
		out = append(out, Bush{Code: code, Bore: bore, OD: od, Length: length,
			Material: row.Get("material"), Source: row.Source(), Address: row.Address(), ToBuy: true})
	}
	return out, nil
}

// size reads one diameter of a row: with its class, or with its limits in
// thousandths of an inch over it.
func size(row table.Row, column string, unit dim.Unit) (Size, error) {
	nominal, err := dim.Parse(row.Get(column), unit)
	if err != nil {
		return Size{}, fmt.Errorf("%s: %w", column, err)
	}
	if class := row.Get(column + "_class"); class != "" {
		return Size{Nominal: nominal, Class: class}, nil
	}
	var ends [2]dim.Length
	for i, end := range []string{"_low_thou", "_high_thou"} {
		thou, err := decimal.NewFromString(row.Get(column + end))
		if err != nil {
			return Size{}, fmt.Errorf("%s%s: %q is not a number, and there is no class", column, end, row.Get(column+end))
		}
		ends[i] = nominal.Add(dim.OfInch(thou.Shift(-3)))
	}
	if !ends[0].Less(ends[1]) {
		return Size{}, fmt.Errorf("%s: the limits %s to %s are no span", column, ends[0], ends[1])
	}
	return Size{Nominal: nominal, Low: ends[0], High: ends[1]}, nil
}
