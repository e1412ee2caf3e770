package plan

import (
	"rebush/feeds/cutting"
	"rebush/feeds/drills"
	"rebush/fits/limits"
	"rebush/fits/material"
	"rebush/fits/table"
	"rebush/plan/habit"
	"rebush/plan/job"
	"rebush/plan/route"
	"rebush/plan/safety"
	"rebush/plan/seat"
	"rebush/plan/survey"
)

// books are the handbook tables in force, read once and never changed.
type books struct {
	lib       *table.Library
	rules     *table.Rules
	materials *material.Registry
	limits    *limits.Limits
	cutting   *cutting.Cutting
	drills    *drills.Drills
	instr     *survey.Instruments
	stops     map[string]table.StopRule
	safety    *safety.Book
	seats     *seat.Memo   // what plans by these tables work out alike
	holes     *survey.Memo // and what points of a wall tell
	habits    habit.Habits
}

// booksFor reads the tables for a shop; from hands on what another plan has
// read from the same tables.
func booksFor(shop *job.Shop, from *books) (*books, error) {
	b := &books{lib: shop.Tables, rules: shop.Rules}
	b.habits = habitsOf(b, shop)
	var err error
	if b.instr, err = survey.ReadInstruments(b.lib, shop); err != nil {
		return nil, err
	}
	if from != nil && from.lib == b.lib {
		b.materials, b.limits, b.cutting, b.drills = from.materials, from.limits, from.cutting, from.drills
		b.stops, b.safety, b.seats, b.holes = from.stops, from.safety, from.seats, from.holes
		if from.rules != b.rules {
			b.cutting, err = cutting.New(b.lib, b.rules)
		}
		return b, err
	}
	if len(shop.Tables.Replaced()) > 0 {
		if err = ReadTables(shop); err != nil {
			return nil, err
		}
	}
	b.seats, b.holes = new(seat.Memo), new(survey.Memo)
	if b.stops, err = readStops(); err != nil {
		return nil, err
	}
	if b.safety, err = safety.New(b.lib, route.KindNames()); err != nil {
		return nil, err
	}
	if b.materials, err = material.New(b.lib); err != nil {
		return nil, err
	}
	if b.limits, err = limits.New(b.lib); err != nil {
		return nil, err
	}
	if b.cutting, err = cutting.New(b.lib, b.rules); err != nil {
		return nil, err
	}
	b.drills, err = drills.New(b.lib)
	return b, err
}
