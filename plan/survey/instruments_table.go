package survey

import (
	"fmt"
	"strconv"
	"strings"

	"rebush/fits/table"
	"rebush/plan/job"
)

// ReadInstruments reads the tables of instruments and of pin classes for a
// shop. An error names the row that cannot be read, or the line of the shop
// file whose class of pins no row has.
func ReadInstruments(lib *table.Library, shop *job.Shop) (*Instruments, error) {
	t, err := lib.Get("instruments")
	if err != nil {
		return nil, err
	}
	in := &Instruments{shop: shop}
	for _, row := range t.Rows {
		u, err := above0(row, "u_mm")
		if err != nil {
			return nil, err
		}
		k := kindOfInstrument{name: row.Get("kind"), reads: strings.Fields(row.Get("reads")), u: u,
			from: row.Address()}
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
func (in *Instruments) readPins(lib *table.Library) error {
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
		tolerance, err := above0(row, "tolerance_mm")
		if err != nil {
			return err
		}
		in.pins = &Reading{Name: "pins", U: evenly(tolerance), From: row.Address()}
		return nil
	}
	return fmt.Errorf("%s: pins of class %q; the classes are %s", in.shop.At("pins").Source("shop file"),
		in.shop.Pins.Class, strings.Join(names, ", "))
}

func above0(row table.Row, column string) (float64, error) {
	v, err := strconv.ParseFloat(row.Get(column), 64)
	if err != nil || v <= 0 {
		return 0, fmt.Errorf("%s: %s %q is not a figure above 0", row.Address(), column, row.Get(column))
	}
	return v, nil
}
