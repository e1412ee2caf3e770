package sheets

import (
	"strings"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/verdict"
)

// everyOption is every paper, size of type and unit.
func everyOption() []Options {
	var out []Options
	for _, paper := range []string{"A4", "Letter"} {
		for _, large := range []bool{false, true} {
			for _, u := range []string{"mm", "in", "both"} {
				out = append(out, Options{Paper: paper, Large: large, Units: u})
			}
		}
	}
	return out
}

// hardPlans are plans that strain the page.
func hardPlans() map[string]*plan.Plan {
	out := map[string]*plan.Plan{"two shafts": samplePlan(2), "one shaft": samplePlan(1), "twelve shafts": samplePlan(12)}

	p := samplePlan(2)
	p.Findings = nil
	out["no finding"] = p

	p = samplePlan(2)
	for i := range 40 {
		l := []finding.Level{finding.Caution, finding.Note}[i%2]
		p.Findings.Raise(l, "seat/wall", finding.Place{Where: "front axle.left"}, say.F("The seat leaves %v of metal at the edge.", say.MM(0.41, 2)), "a smaller bush").Against(0.41, 1.5, "mm")
	}
	out["forty findings"] = p

	p = samplePlan(2)
	p.OK = false
	p.Findings.Raise(finding.Stop, "seat/cracked", finding.Place{Where: ""}, "The casting is cracked.", "nothing at the machine: another truck")
	out["do not machine"] = p

	p = samplePlan(2)
	long := strings.Repeat("Nineteenth long na", 5)[:80]
	p.Job.Number, p.Job.Title = long, long
	for i := range p.Operations {
		p.Operations[i].Tool, p.Operations[i].Go, p.Operations[i].GaugeFirst = say.Words(long), say.Words(long), say.Words(long)
	}
	for i := range p.Survey {
		p.Survey[i].Method = long
	}
	for i := range p.Setups {
		p.Setups[i].Words = say.Words(long)
	}
	out["long names"] = p

	p = samplePlan(2)
	p.Job.Title = strings.Repeat("unbroken", 10)
	p.Operations[0].Note = say.Words(strings.Repeat("A note that goes on and on. ", 40))
	out["long words"] = p

	for name, title := range map[string]string{
		"czech":       "Zadní podvozek, stolní tramvaj číslo 3, příliš žluťoučký kůň",
		"greek":       "Πίσω φορείο, τραμ αριθμός 3",
		"no such":     "後部モーター台車",
		"broken text": "a\xff\xfeb\U0001F682\tc",
	} {
		p = samplePlan(2)
		p.Job.Title = title
		out[name] = p
	}

	for _, n := range []verdict.Name{verdict.Leave, verdict.Shim, verdict.Swap, verdict.MeasureFirst, verdict.BuyFirst} {
		out[string(n)] = chosen(n)
	}
	out["not advised"], out["tried"] = notAdvised(), stoppedWithTried()
	p = notAdvised()
	p.NotAdvised = say.Words(strings.Repeat("a reason that goes on and on, ", 20))
	out["long reason"] = p

	p = &plan.Plan{OK: false}
	p.Findings.Raise(finding.Stop, "seat/place", finding.Place{Where: "front axle.left"}, "Nothing says where the old centre was.", "probe the wall")
	out["almost nothing"] = p
	return out
}
