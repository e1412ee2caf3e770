package habit

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"rebush/fits/dim"
	"rebush/plan/job"
)

// Enough says whether so many jobs tell something.
func (r Rules) Enough(jobs int) bool { return jobs > 0 && float64(jobs) >= r.LeastJobs }

// Record is what past jobs tell, as a shop file holds it under `record`: what
// rests on enough jobs, in the unit of that file. text is the same as it is
// written there, "" where there is nothing to write.
func (l Learned) Record(r Rules, unit dim.Unit) (rec *job.Record, text string) {
	w := writer{unit: unit}
	rec = &job.Record{}
	for _, way := range Ways() {
		if f := l.Ways[way]; r.Enough(f.Jobs) {
			got := w.size(string(way), f)
			switch way {
			case Reamed:
				rec.Reamed = &got
			case Bored:
				rec.Bored = &got
			case Milled:
				rec.Milled = &got
			}
		}
	}
	for _, name := range sorted(l.Reamers) {
		if f := l.Reamers[name]; r.Enough(f.Jobs) {
			if rec.Reamers == nil {
				rec.Reamers = map[string]job.Recorded{}
				w.line("reamers:")
			}
			rec.Reamers[name] = w.size("  "+strconv.Quote(name), f)
		}
	}
	if p := l.Place; r.Enough(p.Jobs) && p.Told {
		got := job.RecordedPlace{Setup: w.um(p.SetupUm), Hole: w.um(p.HoleUm), Jobs: p.Jobs}
		rec.Place = &got
		w.line("place: {setup: %s, hole: %s, jobs: %d}", w.say(got.Setup), w.say(got.Hole), p.Jobs)
	}
	if f := l.Clearance; r.Enough(f.Jobs) {
		got := w.size("clearance", f)
		rec.Clearance = &got
	}
	if s := l.Slips; r.Enough(s.Jobs) {
		rec.Slips = &job.RecordedSlips{Slipped: s.Slipped, Holes: s.Holes, Jobs: s.Jobs}
		w.line("slips: {slipped: %d, holes: %d, jobs: %d}", s.Slipped, s.Holes, s.Jobs)
	}
	if w.lines == nil {
		return nil, ""
	}
	return rec, "record:\n" + strings.Join(w.lines, "\n") + "\n"
}

// writer writes the rows of a record.
type writer struct {
	unit  dim.Unit
	lines []string
}

func (w *writer) line(format string, a ...any) {
	w.lines = append(w.lines, "  "+fmt.Sprintf(format, a...))
}

// size writes a row, and gives what it says.
func (w *writer) size(key string, f Found) job.Recorded {
	out := job.Recorded{Over: w.um(f.OverUm), U: w.um(math.Max(f.UOverUm, 0.1)), Jobs: f.Jobs}
	scatter := ""
	if f.Told {
		out.Scatter = w.um(f.ScatterUm)
		scatter = ", scatter: " + w.say(out.Scatter)
	}
	w.line("%s: {over: %s, u: %s%s, jobs: %d}", key, w.say(out.Over), w.say(out.U), scatter, f.Jobs)
	return out
}

// um is a length of so many micrometres as it is written: to 0.1 um, or to a
// millionth of an inch.
func (w *writer) um(v float64) dim.Length {
	l, err := dim.Parse(w.digits(v), w.unit)
	if err != nil {
		panic("habit: " + err.Error())
	}
	return l
}

func (w *writer) digits(um float64) string {
	if w.unit == dim.Inch {
		return strconv.FormatFloat(um/25400, 'f', 6, 64)
	}
	return strconv.FormatFloat(um/1000, 'f', 4, 64)
}

func (w *writer) say(l dim.Length) string {
	s := w.digits(1000 * l.Float())
	if strings.Trim(s, "-0.") == "" {
		return "0"
	}
	return s
}
