package plan

import (
	"slices"

	"rebush/fits/finding"
	"rebush/fits/material"
	"rebush/fits/say"
	"rebush/fits/table"
	"rebush/plan/job"
	"rebush/plan/seat"
)

// What a plan says beside what its steps say: before any figure is looked at,
// and of the stops that a job takes upon itself.
const (
	RuleCondition finding.Rule = "job/condition"
	RuleMagnesium finding.Rule = "job/magnesium"
	RuleOwnTable  finding.Rule = "job/own table"
	RuleAccept    finding.Rule = "job/accept"
)

// opening says what is known before the first step: of the casting's material,
// of tables that the shop put in the place of built-in ones, of keys that the
// plan does not use.
func opening(w *books, c seat.Casting, j *job.Job) finding.List {
	out := c.Said()
	for _, t := range w.lib.Replaced() {
		out.Raise(finding.Note, RuleOwnTable, finding.Place{},
			say.F("the shop's own table %s was used in the place of the built-in one", t), "")
	}
	out = append(out, fewJobs(w, j.Shop)...)
	return append(out, job.Unused(j)...)
}

// condition says what forbids machining before any figure is looked at: a
// casting that is not sound, or whose chips would burn.
func condition(w *books, c seat.Casting, j *job.Job) (out finding.List) {
	at := j.PlaceAt("chassis", "chassis/condition")
	switch j.Chassis.Condition {
	case "cracked", "swollen":
		out.Raise(finding.Stop, RuleCondition, at,
			say.F("the casting is %s: no hole is to be cut and nothing pressed in", j.Chassis.Condition),
			"swap the truck, or keep it as it is")
	case "sound":
	default:
		fix := say.Text("look it over, then write condition: sound, cracked or swollen")
		for _, l := range w.hazards(c, j).LookFor(false) {
			fix += say.F("; look for %s", l.Words)
		}
		out.Raise(finding.Caution, RuleCondition, at, "the condition of the casting is not said", fix)
	}
	if c.Material.Kind == material.MagnesiumCasting {
		out.Raise(finding.Stop, RuleMagnesium, j.PlaceAt("chassis", "chassis/material"),
			"the casting is magnesium: its chips burn, and water, foam and CO2 feed the fire", w.instead(RuleMagnesium))
	}
	return out
}

// burning stops a job that would turn, face or bore a bush of magnesium.
func burning(w *books, j *job.Job, seats Seated) (out finding.List) {
	for _, x := range seats.Bores {
		if x.Chosen == nil {
			continue
		}
		mat, err := w.materials.Find(x.Chosen.Bush.Metal.Name)
		if err == nil && mat.Kind == material.MagnesiumCasting {
			out.Raise(finding.Stop, RuleMagnesium, j.Place(x.Name()),
				say.F("bush %s is magnesium: its chips burn, and water, foam and CO2 feed the fire", x.Chosen.Bush.Code),
				w.instead(RuleMagnesium))
		}
	}
	return out
}

// forbidden is the metal of the chassis, in a word, where it must not be cut;
// "" where it may.
func forbidden(w *books, c seat.Casting, j *job.Job) string {
	if c.Material.Kind == material.MagnesiumCasting && !w.accepted(j, RuleMagnesium) {
		return "magnesium"
	}
	return ""
}

// accepted says whether a job takes a stop upon itself, and may.
func (w *books) accepted(j *job.Job, rule finding.Rule) bool {
	return w.stops[rule.Name()].Accept && slices.Contains(j.Accept, rule.Name())
}

// instead is what is right in the place of what a stop forbids.
func (w *books) instead(rule finding.Rule) say.Text { return say.Words(w.stops[rule.Name()].Instead) }

// lowered makes a caution of each stop that the job takes upon itself.
func lowered(w *books, j *job.Job, list finding.List) finding.List {
	out := slices.Clone(list)
	for i := range out {
		if f := &out[i]; f.Level == finding.Stop && w.accepted(j, f.Rule) {
			f.Level = finding.Caution
			f.Text += "; the job accepts it"
			f.Fix = say.F("take `%s` out of accept: and the job stops here", f.Rule)
		}
	}
	return out
}

// closing puts all that was said in the order in which it is read: stops,
// cautions, notes, each as they were said, nothing twice, and every one with
// the line that it is about.
func closing(w *books, j *job.Job, said finding.List) finding.List {
	for _, rule := range j.Accept {
		if !slices.ContainsFunc(said, func(f finding.Finding) bool { return f.Rule.Name() == rule }) {
			said.Raise(finding.Note, RuleAccept, j.PlaceAt("", "accept"),
				say.F("the job accepts %s, and nothing here is stopped by it", rule), "take it out of accept:")
		}
	}
	type words struct {
		level       finding.Level
		rule        finding.Rule
		where, text string
	}
	seen := map[words]bool{}
	out := finding.List{}
	for _, level := range []finding.Level{finding.Stop, finding.Caution, finding.Note} {
		for _, f := range said {
			k := words{f.Level, f.Rule, f.Where, f.Text.String()}
			if f.Level != level || seen[k] {
				continue
			}
			seen[k] = true
			if f.Line == 0 {
				at := j.Place(f.Where)
				f.File, f.Line, f.Column = at.File, at.Line, at.Column
			}
			out = append(out, f)
		}
	}
	return out
}

// readStops reads what forbids machining, by name.
func readStops() (map[string]table.StopRule, error) {
	list, err := table.Stops()
	if err != nil {
		return nil, err
	}
	out := map[string]table.StopRule{}
	for _, s := range list {
		out[s.Name] = s
	}
	return out, nil
}

// join is several lists of findings in one.
func join(lists ...finding.List) finding.List {
	out := finding.List{}
	for _, l := range lists {
		out = append(out, l...)
	}
	return out
}
