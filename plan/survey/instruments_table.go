package survey

import (
	"fmt"
	"strings"

	"rebush/fits/table"
	"rebush/plan/job"
)

// ReadInstruments reads the tables of instruments and of pin classes for a
// shop. An error names the row that cannot be read, or the line of the shop
// file whose class of pins no row has.
func ReadInstruments(lib *table.Library, shop *job.Shop) (*Instruments, error) {
	kinds, err := table.ReadInstruments(lib)
	if err != nil {
		return nil, err
	}
	in := &Instruments{kinds: kinds, shop: shop}
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
		tolerance, err := row.Above0("tolerance_mm")
		if err != nil {
			return err
		}
		in.pins = &Reading{Name: "pins", U: evenly(tolerance), From: row.Address()}
		return nil
	}
	return fmt.Errorf("%s: pins of class %q; the classes are %s", in.shop.At("pins").Source("shop file"),
		in.shop.Pins.Class, strings.Join(names, ", "))
}
