package plan

import (
	"math"
	"slices"
	"strings"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/fits/table"
	"rebush/plan/job"
	"rebush/plan/survey"
	"rebush/plan/verdict"
)

// Told is what the owner of a truck is told beside the advice, in plain words.
type Told struct {
	Wrong    []say.Text // what is the matter with it
	Cautions []say.Text // what may come of it
	Unknown  []say.Text // what nobody has looked at or given a price for
}

// ForOwner puts a plan into words for the owner. An error names the line of a
// shop's own table of words.
func ForOwner(p *Plan) (Told, error) {
	lib := table.BuiltIn()
	if p.Job != nil && p.Job.Shop != nil && p.Job.Shop.Tables != nil {
		lib = p.Job.Shop.Tables
	}
	t, err := lib.Get("owner_words")
	if err != nil {
		return Told{}, err
	}
	words := map[string]string{}
	for _, row := range t.Rows {
		words[row.Get("rule")] = row.Get("words")
	}
	out := Told{Wrong: wrong(p)}
	say1 := func(list *[]say.Text, t say.Text) {
		if !slices.Contains(*list, t) {
			*list = append(*list, t)
		}
	}
	for _, f := range p.Findings {
		w, known := words[string(f.Rule)]
		switch {
		case f.Rule.Stage() == "verdict":
			switch f.Rule {
			case verdict.RuleMendFirst: // the advice begins with it
			case verdict.RuleValue, verdict.RuleLoss, verdict.RuleComplaint, verdict.RulePlay:
				say1(&out.Cautions, sentenceEnd(capital(f.Text)))
			default:
				say1(&out.Unknown, sentenceEnd(capital(f.Text)))
			}
		case f.Level == finding.Stop || w == "-":
		case known:
			say1(&out.Cautions, say.Words(w))
		case f.Level == finding.Caution:
			say1(&out.Cautions, sentenceEnd(capital(f.Text)))
		}
	}
	if p.Job != nil && len(p.Safety.LookFor) == 0 && (p.Job.Chassis.Condition == "" || p.Job.Chassis.Condition == "unknown") {
		say1(&out.Unknown, "Nobody has said that the casting or the plates are sound: that is looked at first.")
	}
	return out, nil
}

// wrong says what is the matter: the complaint, the casting, the wear of each
// shaft's holes, and what that does to the gears.
func wrong(p *Plan) []say.Text {
	var out []say.Text
	if p.Job != nil {
		var said []string
		for _, c := range []struct {
			is    job.Tri
			words string
		}{{p.Job.Binds, "it binds"}, {p.Job.Noisy, "it is noisy"}, {p.Job.Rubs, "a wheel or hub rubs"}} {
			if c.is == job.Yes {
				said = append(said, c.words)
			}
		}
		if len(said) > 0 {
			out = append(out, say.Words("You told us that "+strings.Join(said, ", and ")+"."))
		}
		if c := p.Job.Chassis.Condition; c == "cracked" || c == "swollen" {
			out = append(out, say.Words("The casting is "+c+"."))
		}
		for i := range p.Job.Shafts {
			if w := worn(p, &p.Job.Shafts[i]); w != "" {
				out = append(out, w)
			}
		}
	}
	if len(out) == 0 {
		out = append(out, "No hole has any wear that could be told.")
	}
	for _, m := range p.Mesh {
		if m.Words == "" {
			continue
		}
		words := say.Text(strings.NewReplacer("backlash found", "the play of its teeth is", ", was ", ", and was ").
			Replace(string(m.Words)))
		if strings.HasPrefix(string(words), "closer ") || strings.HasPrefix(string(words), "away ") {
			words = "the gear stands " + words
		}
		out = append(out, sentenceEnd(say.Words(m.Gear+": ")+words))
	}
	return out
}

// leastTold is the least wear that an owner is told of, mm: what callipers read.
const leastTold = 0.02

// worn says how the holes of a shaft are worn, "" where they are not.
func worn(p *Plan, s *job.Shaft) say.Text {
	var sides []say.Text
	play := 0.0
	for _, b := range s.Bores {
		for _, x := range p.Survey {
			if x.Bore != b.Name || x.WearMM.Float() < leastTold {
				continue
			}
			side := say.F("%s by %v", b.Side, say.MM(x.WearMM.Float(), 2))
			if x.WearDeg != nil {
				side += " " + survey.Towards(*x.WearDeg)
			}
			sides = append(sides, side)
			play = math.Max(play, x.PlayMM.Float())
		}
	}
	if len(sides) == 0 {
		return ""
	}
	if play == 0 {
		return say.F("The holes of the %s are worn: %v.", s.Name, say.Join(", ", sides...))
	}
	return say.F("The holes of the %s are worn: %v. It shakes by up to %v.", s.Name, say.Join(", ", sides...),
		say.MM(play, 2))
}

// capital begins a sentence with a large letter.
func capital(t say.Text) say.Text {
	s := string(t)
	if s == "" {
		return t
	}
	return say.Text(strings.ToUpper(s[:1]) + s[1:])
}

// sentenceEnd ends a sentence with a full stop, where it has none.
func sentenceEnd(t say.Text) say.Text {
	if strings.HasSuffix(string(t), ".") {
		return t
	}
	return t + "."
}
