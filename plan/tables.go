package plan

import (
	"fmt"

	"rebush/feeds/cutting"
	"rebush/feeds/drills"
	"rebush/fits/limits"
	"rebush/fits/material"
	"rebush/fits/stock"
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/survey"
)

// tableReaders are the readers of the tables that a shop may put its own file in
// place of, each with the tables that it reads.
var tableReaders = []struct {
	of   []string
	read func(shop *job.Shop) error
}{
	{[]string{"instruments", "pin_classes"}, func(s *job.Shop) error {
		_, err := survey.ReadInstruments(s.Tables, s)
		return err
	}},
	{[]string{"materials", "materials_kinds", "materials_aliases"}, func(s *job.Shop) error {
		_, err := material.New(s.Tables)
		return err
	}},
	{[]string{"limits_it", "limits_shaft", "fits_inch", "reamers_inch_limits"}, func(s *job.Shop) error {
		_, err := limits.New(s.Tables)
		return err
	}},
	{[]string{"drills_sets", "drills_metric", "drills_number", "drills_letter", "drills_fraction"}, func(s *job.Shop) error {
		_, err := drills.New(s.Tables)
		return err
	}},
	{[]string{"backlash"}, func(s *job.Shop) error {
		_, err := mesh.HandbookWish(s.Tables, 0.5) // any module: both classes have to be there
		return err
	}},
	{[]string{"bush_series"}, func(s *job.Shop) error {
		_, err := stock.Series(s.Tables)
		return err
	}},
	// and what is left is of cutting
	{[]string{""}, func(s *job.Shop) error {
		_, err := cutting.New(s.Tables, s.Rules)
		return err
	}},
}

// ReadTables says what is wrong with the tables that a shop put its own in place
// of, by the line of the shop file that names each, so that a job is refused by
// its check and by its plan alike. The error is job.Problems.
func ReadTables(shop *job.Shop) error {
	own := map[string]bool{}
	for _, name := range shop.Tables.Replaced() {
		own[name] = true
	}
	var out job.Problems
	for _, t := range tableReaders {
		err := t.read(shop)
		if err == nil {
			continue
		}
		pos := shop.At("tables")
		for _, name := range t.of {
			if own[name] {
				pos = shop.At("tables/" + name)
			}
		}
		out = append(out, job.Problem{Pos: pos, Wrong: fmt.Sprintf("tables: %v", err),
			Right: "mend that row; `rebush tables NAME` shows the built-in table"})
	}
	if out != nil {
		return out
	}
	return nil
}
