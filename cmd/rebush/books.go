package main

import (
	"rebush/feeds/cutting"
	"rebush/feeds/drills"
	"rebush/fits/limits"
	"rebush/fits/material"
	"rebush/fits/table"
	"rebush/plan/job"
)

// books are the tables in force, with the shop's own in their place where a
// shop is named. Each room's reader is made when it is first asked for.
type books struct {
	lib   *table.Library
	rules *table.Rules
	shop  *job.Shop // nil where none was named
}

func openBooks(o options) (*books, error) {
	if o.has("shop") {
		s, err := job.ReadShop(o.text["shop"])
		if err != nil {
			return nil, err
		}
		return &books{s.Tables, s.Rules, s}, nil
	}
	lib := table.BuiltIn()
	rules, err := table.ReadRules(lib)
	if err != nil {
		return nil, &faultError{what: err.Error()}
	}
	return &books{lib, rules, nil}, nil
}

// The readers below fail only on a shop's own table, and then name its line.

func (b *books) limits() (*limits.Limits, error)        { return limits.New(b.lib) }
func (b *books) drills() (*drills.Drills, error)        { return drills.New(b.lib) }
func (b *books) cutting() (*cutting.Cutting, error)     { return cutting.New(b.lib, b.rules) }
func (b *books) materials() (*material.Registry, error) { return material.New(b.lib) }
