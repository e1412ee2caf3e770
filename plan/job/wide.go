package job

import (
	"fmt"

	"rebush/fits/dim"
	"rebush/fits/table"
)

// wide says that a bore which lets the thickest part of a shaft pass leaves a
// journal more play than a finished bore may have; "" where it does not. It may be
// so all the same: a bush is then made for the part that passes.
func (iv *Interview) wide(st Step) string {
	if st.Part != "shaft" || st.ID != "pass" {
		return ""
	}
	rules, err := table.ReadRules(table.BuiltIn())
	if err != nil {
		return ""
	}
	most := rules.Get("clearance_max_um").Low / 1000
	r := &reader{units: iv.units()}
	journal := question("shaft", "journal")
	ends, wrong := journal.read(iv.said[Step{journal, st.Index, ""}.at()], iv.units())
	pass, wrong2 := st.read(iv.said[st.at()], iv.units())
	if wrong != "" || wrong2 != "" || len(ends) != len(pass) {
		return ""
	}
	for i, side := range Sides {
		j, err1 := dim.Parse(ends[i], iv.units())
		p, err2 := dim.Parse(pass[i], iv.units())
		if err1 != nil || err2 != nil || p.Float()-j.Float() <= most+1e-9 {
			continue
		}
		return fmt.Sprintf("a %s bore that lets %s through leaves its journal of %s more play than the %s that is good; if the "+
			"thick part goes through one hole only, give each its own figure, such as %s %s", side, r.show(p.Float()),
			r.show(j.Float()), r.show(most), pass[0], ends[1])
	}
	return ""
}
