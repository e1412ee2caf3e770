package main

import (
	"math"
	"strconv"
	"strings"

	"rebush/fits/dim"
)

// units are the units to print in; mm where none were asked for.
func (o options) units() (dim.Units, error) {
	if !o.has("units") {
		return dim.InMM, nil
	}
	u, err := dim.ParseUnits(o.text["units"])
	if err != nil {
		return 0, usage("--units: %v", err)
	}
	return u, nil
}

// bare is the unit of a number typed without one: inch under --units in.
func (o options) bare() dim.Unit {
	if u, err := o.units(); err == nil && u == dim.InInch {
		return dim.Inch
	}
	return dim.MM
}

// length reads a length; an option that was not given is a length not given.
func (o options) length(name string) (dim.Length, error) {
	if !o.has(name) {
		return dim.Length{}, nil
	}
	l, err := dim.Parse(o.text[name], o.bare())
	if err != nil {
		return dim.Length{}, usage("--%s: %v", name, err)
	}
	if math.Abs(l.Float()) > 1e6 {
		return dim.Length{}, usage("--%s: %s is longer than any truck", name, o.text[name])
	}
	return l, nil
}

// lengthFrom is length with what must hold: at least low mm, above it where
// above is set.
func (o options) lengthFrom(name string, low float64, above bool) (dim.Length, error) {
	l, err := o.length(name)
	switch {
	case err != nil || !l.Given():
		return l, err
	case above && l.Float() <= low:
		return l, usage("--%s: %s is not above %g mm", name, o.text[name], low)
	case l.Float() < low:
		return l, usage("--%s: %s is below %g mm", name, o.text[name], low)
	}
	return l, nil
}

// number reads a number, otherwise where the option was not given.
func (o options) number(name string, otherwise float64) (float64, error) {
	if !o.has(name) {
		return otherwise, nil
	}
	v, err := parseNumber(o.text[name])
	if err != nil {
		return 0, usage("--%s: %q is no number", name, o.text[name])
	}
	return v, nil
}

// numbers reads several numbers parted by commas.
func (o options) numbers(name string) ([]float64, error) {
	if !o.has(name) {
		return nil, nil
	}
	var out []float64
	for _, s := range strings.Split(o.text[name], ",") {
		v, err := parseNumber(strings.TrimSpace(s))
		if err != nil {
			return nil, usage("--%s: %q is no number; part several by commas: 620,1100", name, strings.TrimSpace(s))
		}
		out = append(out, v)
	}
	return out, nil
}

// parseNumber reads a plain finite number.
func parseNumber(s string) (float64, error) {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return 0, err
	}
	if math.IsNaN(v) || math.IsInf(v, 0) || math.Abs(v) > 1e12 {
		return 0, strconv.ErrRange
	}
	return v, nil
}

// whole reads whole numbers parted by commas.
func (o options) whole(name string) ([]int, error) {
	v, err := o.numbers(name)
	if err != nil {
		return nil, err
	}
	var out []int
	for _, f := range v {
		if f != math.Trunc(f) || math.Abs(f) > 1e9 {
			return nil, usage("--%s: %v is no whole number", name, f)
		}
		out = append(out, int(f))
	}
	return out, nil
}

// one is the single word that a command wants.
func one(words []string, what string) (string, error) {
	switch {
	case len(words) == 0 || strings.TrimSpace(words[0]) == "":
		return "", usage("%s is missing", what)
	case len(words) > 1:
		return "", usage("one %s at a time; left over: %q (put quotes round several words)", what, words[1:])
	}
	return words[0], nil
}

// none refuses words that a command has no use for.
func none(words []string) error {
	if len(words) > 0 {
		return usage("left over: %q", words)
	}
	return nil
}
