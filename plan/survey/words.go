package survey

import (
	"rebush/fits/finding"
	"rebush/fits/say"
)

// What the survey has to say.
const (
	RuleRepaired   finding.Rule = "survey/repaired before"
	RuleInstrument finding.Rule = "survey/instrument"
	RuleEvidence   finding.Rule = "survey/evidence"
	RulePoints     finding.Rule = "survey/probed points"
	RuleFrame      finding.Rule = "survey/frame"
	RuleNoCentre   finding.Rule = "survey/no centre"
	RuleCentre     finding.Rule = "survey/old centre"
	RuleDisagree   finding.Rule = "survey/evidence disagrees"
	RuleGrowth     finding.Rule = "survey/growth"
)

func sayRepaired(l *finding.List, at finding.Place) {
	l.Raise(finding.Note, RuleRepaired, at, "an earlier repair: its place is not trusted", "")
}

func sayNoInstrument(l *finding.List, at finding.Place, err error) {
	l.Raise(finding.Caution, RuleInstrument, at, say.F("%v", err),
		"name it under instruments in the shop file with its u")
}

func sayEvidence(l *finding.List, at finding.Place, text, fix say.Text) {
	l.Raise(finding.Caution, RuleEvidence, at, text, fix)
}

func sayNoAnswer(l *finding.List, at finding.Place, what string, err error) {
	sayEvidence(l, at, say.F("%s: %v", what, err), "measure it again, or leave it out")
}

func sayFewSpans(l *finding.List, at finding.Place) {
	l.Raise(finding.Note, RuleEvidence, at,
		"spans place a centre only from two other bores and a rough centre; they are not used", "")
}

func sayNoFrame(l *finding.List, at finding.Place, what string, err error) {
	l.Raise(finding.Note, RuleFrame, at,
		say.F("%s is not used: %v", what, err), "give two or three unworn holes under chassis: features")
}

func sayPoints(l *finding.List, at finding.Place, a Answer) {
	for _, w := range a.Words {
		l.Raise(doubtful(a.Doubtful || len(a.LeftOut) > 0), RulePoints, at, w, "")
	}
}

func sayCentre(l *finding.List, at finding.Place, e Evidence) {
	for _, w := range e.Words {
		l.Raise(doubtful(e.Doubtful), RuleCentre, at, w, "")
	}
}

func doubtful(is bool) finding.Level {
	if is {
		return finding.Caution
	}
	return finding.Note
}

func sayDisagree(l *finding.List, at finding.Place, d Disagree) {
	l.Raise(finding.Caution, RuleDisagree, at, d.Words, "measure the doubtful one again")
}

// sayNoCentre stops the job, unless the shaft is left alone.
func sayNoCentre(l *finding.List, at finding.Place, left bool) {
	level, text := finding.Stop, say.Text("nothing tells where the old centre was")
	if left {
		level, text = finding.Caution,
			"nothing tells where this bore is: the shaft is left alone, but nothing is worked out from its place"
	}
	l.Raise(level, RuleNoCentre, at, text,
		"measure centre, widest, narrowest and worn_to; or probe the wall; or measure the other plate's bore")
}
