package mesh

import (
	"fmt"
	"math"

	"rebush/fits/dim"
	"rebush/fits/ledger"
)

const exact = "exact involute and worm geometry"

// explainWindow records how the window was cut, and returns its ends.
func (d Drive) explainWindow(book *ledger.Ledger, source func(path string) string, contact, tooth ledger.Num) (lo,
	hi float64) {
	page := d.page(book)
	here := "gears/" + d.Name
	in := []ledger.Num{
		page.Leaf("wish_mm/0", "least backlash wanted", "mm", source(here+"/backlash"), d.Wish.Lo),
		page.Leaf("wish_mm/1", "most backlash wanted", "mm", source(here+"/backlash"), d.Wish.Hi),
		page.Leaf("runout_mm", "run-out of both gears, total indicator reading", "mm", source(here),
			d.Runout), contact, tooth}
	cut := ledger.LastOf(func(v []float64) Window { w, _ := d.Cut(v[0], v[1], v[2], v[3], v[4]); return w })
	const src = exact + "; planning rule: backlash, contact ratio, tightest tooth"
	lo = page.Calc("window_mm/0", "least centre distance under load", "mm", "where the backlash wanted begins "+
		"("+string(d.Window.LoBy)+")", src,
		func(v []float64) float64 { return dim.Sig9(cut(v).Lo) }, in...).V
	hi = page.Calc("window_mm/1", "largest centre distance under load", "mm",
		"where the backlash wanted ends ("+string(d.Window.HiBy)+")", src,
		func(v []float64) float64 { return dim.Sig9(cut(v).Hi) }, in...).V
	return lo, hi
}

// Distances are the centre distances under load of one drive, as entries of
// the ledger.
type Distances struct {
	Found, Original ledger.Num // as found and when new
	Target, Lifted  ledger.Num // at the new centres, on the wheels and lifted off them
}

// Row writes what is printed of a drive at those distances, its figures through
// the ledger.
func (d Drive) Row(book *ledger.Ledger, at Distances) Row {
	page := d.page(book)
	const src = exact + ": ISO 21771, KHK, and plan/mesh/METHODS.md 1"
	play := func(k, what string, a ledger.Num) dim.Gauged {
		if math.IsNaN(d.Play(a.V)) {
			return dim.Gauged{}
		}
		return dim.Place(page.Calc1(k, what, "mm", "backlash round the operating pitch circle at that centre "+
			"distance, not below 0", src,
			func(a float64) float64 { return dim.Sig9(d.Play(a)) }, a).V)
	}
	row := Row{Gear: d.Name, Trusted: d.Trusted, Words: d.Wear,
		FoundCentreMM: dim.Place(at.Found.V), TargetCentreMM: dim.Place(at.Target.V),
		FoundBacklashMM:    play("found_backlash_mm", "backlash as found", at.Found),
		OriginalBacklashMM: play("original_backlash_mm", "backlash when new", at.Original),
		TargetBacklashMM:   play("target_backlash_mm", "backlash at the new centre under load", at.Target),
		LiftedBacklashMM:   play("lifted_backlash_mm", "backlash with the truck lifted", at.Lifted),
		BacklashWindowMM:   d.backlashWindow(book)}
	if _, err := d.Pair.ContactRatio(at.Target.V); err == nil {
		row.ContactRatio = dim.Number(page.Calc1("contact_ratio", "teeth in contact, on the mean", "-",
			"path of contact over base pitch, no further than the base tangent points", src,
			func(a float64) float64 { r, _ := d.Pair.ContactRatio(a); return dim.Sig9(r) }, at.Target).V)
	}
	return row
}

// asWished says whether a window ends at the backlash that is wanted, as it is
// wanted.
func (d Drive) asWished(by Edge) bool {
	return by == ByBacklash && !d.Wish.Normal && !d.Window.Empty && d.Closes == 0
}

// PlayLimits are the backlash in mm, least and most, that the window of centre
// distances stands for: the limits that decide, where contact or run-out allow
// less than is wanted. Of a window that is empty they are those at both its ends.
func (d Drive) PlayLimits() (least, most float64) {
	least, most = d.Play(d.Window.Lo), d.Play(d.Window.Hi)
	if d.asWished(d.Window.LoBy) {
		least = d.Wish.Lo
	}
	if d.asWished(d.Window.HiBy) {
		most = d.Wish.Hi
	}
	return math.Min(least, most), math.Max(least, most)
}

// backlashWindow is the backlash that the window of centre distances stands
// for: as it was wanted, or less where another limit cuts in.
func (d Drive) backlashWindow(book *ledger.Ledger) *[2]dim.Gauged {
	page, edges := d.page(book), d.Edges(book)
	ends := func(lo, hi float64) [2]float64 { lo, hi = Aim(lo, hi); return [2]float64{lo, hi} }
	var out [2]dim.Gauged
	for i, by := range []Edge{d.Window.LoBy, d.Window.HiBy} {
		k, what := fmt.Sprintf("backlash_window_mm/%d", i), []string{"least", "most"}[i]+" backlash limit"
		if d.asWished(by) {
			out[i] = dim.Place(page.Calc1(k, what, "mm", "as it is wanted", "job file or handbook row",
				func(wish float64) float64 { return wish }, page.Num(fmt.Sprintf("wish_mm/%d", i))).V)
			continue
		}
		if math.IsNaN(d.Play(ends(edges[0].V, edges[1].V)[i])) {
			continue
		}
		out[i] = dim.Place(page.Calc2(k, what, "mm", "backlash at that limit", exact,
			func(lo, hi float64) float64 { return dim.Sig9(d.Play(ends(lo, hi)[i])) }, edges[0], edges[1]).V)
	}
	return &out
}
