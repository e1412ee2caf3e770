package seat

import "rebush/fits/finding"

// decide takes the best answer of what a hole is open to by what is in its plate
// alone, for every bore: of the list, else of what can be bought.
func decide(in Input, sites []Site) ([]Seated, finding.List) {
	var out []Seated
	var said finding.List
	var series []Bush
	for _, s := range sites {
		if !s.Touch {
			continue
		}
		h := in.hole(s, sites)
		x := Seated{Site: s, Hole: h, Answers: Search(h, h.Mends(), in.allowed(s.Name()), in.Shop, in.Rules)}
		if !feasible(x.Answers) && in.chosenCode(s.Name()) == "" {
			if series == nil {
				series = in.series(&said)
			}
			x.Answers = append(in.toBuy(h, h.Mends(), series), x.Answers...)
		}
		if feasible(x.Answers) {
			x.Chosen = &x.Answers[0]
		}
		out = append(out, x)
	}
	return out, said
}

// toBuy searches the series.
func (in *Input) toBuy(h Hole, mends []Mend, series []Bush) []Answer {
	return goes(newJudge(h, in.Shop, in.Rules).search(mends, series, false))
}
