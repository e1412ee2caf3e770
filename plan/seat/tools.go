package seat

import (
	"cmp"
	"fmt"
	"slices"

	"rebush/fits/finding"
	"rebush/fits/limits"
	"rebush/plan/job"
)

// tools turns the shop into the ways to make a seat and to bring a bore to
// size. A reamer without limits is named and left out.
func (in *Input) tools(said *finding.List) Shop {
	sh := in.Job.Shop
	lathe := sh.MachineKind == "lathe"
	s := Shop{Lathe: sh.Lathe || lathe, Compound: len(sh.Compounds) > 0, Habits: in.Habits}
	s.FrictionLow, s.FrictionHigh = in.friction()
	for i, r := range sh.Reamers {
		w, err := in.reamer(r, i)
		if err != nil {
			sayLeftOut(said, RuleReamer, sh.PlaceAt(r.Name, fmt.Sprintf("reamers/%d", i)), err,
				"correct this reamer in the shop file")
			continue
		}
		s.Ways = append(s.Ways, w)
		s.BoreReamers = append(s.BoreReamers, w)
	}
	slices.SortStableFunc(s.BoreReamers, func(a, b Way) int {
		return cmp.Or(by(a.Low+a.High, b.Low+b.High), by(a.High, b.High), cmp.Compare(a.Name, b.Name))
	})
	index := len(sh.Reamers)
	if from, to, name := in.boring(); from > 0 {
		s.BoringFrom, s.BoringTo = from, to
		s.Ways = append(s.Ways, Way{Kind: BoringHead, Name: name, Low: from, High: to, Index: index})
	}
	if sh.MachineKind == "mill" {
		tol := in.Table.V("end_mill_mm")
		for i, t := range sh.EndMills {
			d := t.Size.Float()
			s.Ways = append(s.Ways, Way{Kind: EndMill, Name: t.Name + " end mill", Size: d, Low: d - tol,
				High: d + tol, Index: index + 1 + i})
		}
	}
	for _, t := range sh.Mandrels {
		s.Mandrels = append(s.Mandrels, t.Size.Float())
	}
	slices.Sort(s.Mandrels)
	return s
}

// boring is what the shop's machine bores: a mill by its boring head, a lathe
// any size that its bar enters. from is 0 where it bores nothing.
func (in *Input) boring() (from, to float64, name string) {
	sh := in.Job.Shop
	given := sh.BoringFrom.Given()
	switch {
	case sh.MachineKind == "mill" && given:
		return sh.BoringFrom.Float(), sh.BoringTo.Float(), "boring head"
	case sh.MachineKind == "lathe" && given:
		return sh.BoringFrom.Float(), sh.BoringTo.Float(), "boring tool"
	case sh.MachineKind == "lathe":
		from, to = in.Table.Pair("lathe_bore_mm")
		return from, to, "boring tool"
	}
	return 0, 0, ""
}

func (in *Input) friction() (low, high float64) {
	low, high = in.Table.Pair("friction")
	if v := in.Job.Shop.FrictionLow; v > 0 {
		low = v
	}
	if v := in.Job.Shop.FrictionHigh; v > 0 {
		high = v
	}
	return low, high
}

// reamer is a reamer with the limits of the hole that it leaves: its own, and
// above them a share of the hole tolerance.
func (in *Input) reamer(r job.Tool, i int) (Way, error) {
	low, high, err := ReamerLimits(in.Limits, r)
	if err != nil {
		return Way{}, err
	}
	own := (low + high) / 2
	d, err := in.Limits.Class(r.Size, classOf(r))
	if err != nil {
		return Way{}, err
	}
	width := d.WidthUm().InexactFloat64() / 1000
	high += in.Table.V("oversize_share_of_tolerance") * width
	name := r.Name
	if r.Class != "" {
		name += " " + r.Class
	}
	return Way{Kind: Reamer, Name: name + " reamer", Size: r.Size.Float(), Low: low, High: high, Own: own,
		Tool: name, Index: i}, nil
}

// ReamerLimits are a reamer's own limits in mm, as measured or by its class:
// before what it may cut oversize.
func ReamerLimits(l *limits.Limits, r job.Tool) (low, high float64, err error) {
	lo, hi := r.Low, r.High
	if !lo.Given() || !hi.Given() {
		lo, hi, err = l.Reamer(r.Size, classOf(r))
	}
	return lo.Float(), hi.Float(), err
}

// classOf is the hole class that a reamer cuts: H7 where nothing is stamped.
func classOf(r job.Tool) string {
	if r.Class == "" {
		return "H7"
	}
	return r.Class
}

// SeatBy are the limits, diameters in mm, of the hole that a reamer leaves which
// the shop may not have yet.
func (in *Input) SeatBy(r job.Tool) (low, high float64, err error) {
	w, err := in.reamer(r, 0)
	return w.Low, w.High, err
}
