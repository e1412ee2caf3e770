package main

import (
	"math"
	"strconv"
	"strings"

	"rebush/fits/dim"
	"rebush/fits/say"
	"rebush/plan"
)

// coarse is a figure of physics with as many digits as it can be relied on at
// the bench: whole from 10, one place from 1, two below.
func coarse(f float64) string {
	size, places := math.Abs(f), 2
	switch {
	case size >= 9.95:
		places = 0
	case size >= 0.995:
		places = 1
	}
	s := strconv.FormatFloat(f, 'f', places, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// exactly is a figure of the ledger for `why`: what was typed or stands in a
// table as it stands there, a result to what a micrometer or a book could show.
func exactly(f float64, unit string, given bool) string {
	switch {
	case given:
		return strconv.FormatFloat(dim.Sig9(f), 'f', -1, 64)
	case unit == "mm":
		f = math.Round(f*1e4) / 1e4
	case unit == "um":
		f = math.Round(f*10) / 10
	case f != 0:
		k := math.Pow(10, 3-math.Floor(math.Log10(math.Abs(f))))
		f = math.Round(f*k) / k
	}
	if f == 0 {
		f = 0 // no minus
	}
	return strconv.FormatFloat(dim.Sig9(f), 'f', -1, 64)
}

// titled is how a job is called on the screen: its number, else its title,
// else its file.
func titled(p *plan.Plan) string {
	if p.JobNumber != "" {
		return "job " + p.JobNumber
	}
	if p.Job == nil {
		return "job"
	}
	return jobName("", p.Job.Title, p.Job.File)
}

func jobName(number, title, file string) string {
	switch {
	case number != "":
		return "job " + number
	case title != "":
		return title
	}
	return file
}

// hottest is beyond what a truck, or its castings, ever see, degrees C.
const hottest = 150

// looseAt says at which temperature a press lets go.
func looseAt(c float64) string {
	if c > hottest {
		return "at no temperature that a truck sees"
	}
	return "at " + coarse(c) + " C"
}

// micrometres is a span of small lengths, in thousandths of an inch for a
// reader of inches.
func micrometres(low, high float64, u dim.Units) string {
	um := coarse(low) + " to " + coarse(high) + " um"
	thou := say.Row(0, "um", " to ", low, high).In(dim.InInch)
	switch u {
	case dim.InInch:
		return thou
	case dim.InBoth:
		return um + " (" + thou + ")"
	}
	return um
}

// micrometre is one small length.
func micrometre(um float64, u dim.Units) string {
	switch u {
	case dim.InInch:
		return say.Um(um, 0).In(dim.InInch)
	case dim.InBoth:
		return coarse(um) + " um (" + say.Um(um, 0).In(dim.InInch) + ")"
	}
	return coarse(um) + " um"
}
