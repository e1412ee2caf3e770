package sheets

import (
	"strings"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/sheets/draw"
)

// meshBars are pictures of the meshes of a plan: the centre distance as found,
// when it was new and as it will be, on one scale with what it may be.
func meshBars(p *paper, pl *plan.Plan, place string) {
	for _, m := range pl.Mesh {
		x := meshPicture(p.u, pl, m)
		if len(x.rows) < 2 {
			continue
		}
		p.spare("mesh "+m.Gear, place, func() *block {
			b := p.block()
			x.label = labelWide(b, x.rows) + 4
			x.room = b.Width - x.label - 2
			k := barScale(x)
			b.y = 1.4
			scaleBar(b, b.Width, b.y, k)
			b.y = b.write(0, b.y, b.Width-45, "Mesh, "+m.Gear+": distance of the middles under load", draw.Bold, b.st.small) + 1
			b.y = drawBars(b, 0, b.y, x, k) + 1.6
			b.Reach(b.y)
			return b
		})
	}
}

// meshPicture is what the plan says of the centre distance of a mesh. Without
// the limits of it there is no picture.
func meshPicture(u units, pl *plan.Plan, m plan.Mesh) barPicture {
	in := units(u.one()).said()
	value := func(key string) (float64, bool) {
		e, ok := pl.Ledger["mesh/"+m.Gear+"/"+key]
		return e.Value, ok
	}
	least, ok := value("window_mm/0")
	most, are := value("window_mm/1")
	if !ok || !are || most <= least {
		return barPicture{}
	}
	var rows []barRow
	one := func(name string, v float64, as barSign) {
		rows = append(rows, barRow{name: name + " " + say.MM(v, 3).In(in), lo: v, hi: v, as: as})
	}
	if v, ok := value("original_centre_mm"); ok {
		one("when new", v, asOld)
	}
	if v, ok := value("found_centre_mm"); ok {
		one("as found", v, asSlant)
	}
	if to, ok := value("target_centre_mm"); ok && pl.OK {
		r := barRow{name: "new " + say.MM(to, 3).In(in), lo: to, hi: to, as: asNew}
		if du, ok := value("u_mm"); ok && du > 0 {
			r.lo, r.hi = to-du, to+du
			r.name += ", within " + say.MM(du, 3).In(in) + " two times in three"
		}
		rows = append(rows, r)
	}
	may := barRow{name: "may be " + say.MMs(least, most, 3).In(in), lo: least, hi: most, as: asLimits, ruled: true}
	if w := m.BacklashWindowMM; w != nil && w[0].Given() && w[1].Given() {
		lo, _ := w[0].Exact()
		hi, _ := w[1].Exact()
		may.name += ", backlash there " + strings.TrimSpace(say.MMs(lo, hi, 3).Number(in))
	}
	return barPicture{rows: append(rows, may)}
}
