package plan

import (
	"fmt"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/fits/stock"
	"rebush/plan/job"
	"rebush/plan/seat"
)

// bushes turns the job's list into what the seat search reads: each bush with
// the limits of its outside and its bore. A bush that makes no sense is named
// and left out; the plan goes on with the rest.
func (m *maker) bushes() []seat.Bush {
	var out []seat.Bush
	for i := range m.j.Bushes {
		b, err := m.bush(&m.j.Bushes[i])
		if err != nil {
			pos := m.j.At(fmt.Sprintf("bushes/%d", i))
			m.p.Findings.Raise(finding.Caution, "seat/bush", finding.Place{Where: m.j.Bushes[i].Code, File: pos.File, Line: pos.Line, Column: pos.Column},
				say.F("left out: %v", err),
				"correct this bush in the job file")
			continue
		}
		out = append(out, b)
	}
	return out
}

func (m *maker) bush(b *job.Bush) (seat.Bush, error) {
	metal, err := m.metalOf(b.Material)
	if err != nil {
		return seat.Bush{}, err
	}
	s := seat.Bush{Code: b.Code, Index: b.Index, Metal: metal, Turned: b.Turned, ToBuy: b.ToBuy, OnHand: -1,
		Length: b.Length.Float(), FlangeOD: b.FlangeOD.Float(), FlangeT: b.FlangeThickness.Float(), Runout: b.Runout.Float()}
	if b.Price != nil {
		s.Price, s.Priced = *b.Price, true
	}
	if b.OnHand != nil {
		s.OnHand = *b.OnHand
	}
	if b.Turned {
		return s, nil
	}
	k, err := m.stocked(b).Resolve(m.classes, m.sizeU("width"), m.sizeU("outside"))
	if err != nil {
		return s, err
	}
	s.ODLow, s.ODHigh = k.OD.Low.Float(), k.OD.High.Float()
	s.BLow, s.BHigh = k.Bore.Low.Float(), k.Bore.High.Float()
	return s, nil
}

// stocked is a bush of the job as the stock room knows it.
func (m *maker) stocked(b *job.Bush) stock.Bush {
	return stock.Bush{Code: b.Code, Bore: stock.Size(b.Bore), OD: stock.Size(b.OD), Length: b.Length,
		FlangeOD: b.FlangeOD, FlangeThickness: b.FlangeThickness, Material: b.Material, ToBuy: b.ToBuy}
}

// classes answers the stock room's question after ISO limits.
func (m *maker) classes(nominal dim.Length, class string) (lower, upper decimal.Decimal, rows []string, err error) {
	d, err := m.limits.Class(nominal, class)
	return d.LowerUm, d.UpperUm, d.Sources, err
}

// sizeU is the doubt of a bush diameter that was measured in this shop.
func (m *maker) sizeU(what string) dim.Length {
	r, err := m.instr.named("", what)
	if err != nil {
		r, _ = m.instr.named("micrometer", what)
	}
	return dim.OfFloat(r.u)
}

// toBuy are the bushes of the built-in series, for when nothing on the list
// can be seated.
func (m *maker) toBuy() []seat.Bush {
	series, err := stock.Series(m.lib)
	if err != nil {
		m.p.Findings.Raise(finding.Caution, "seat/bush series", finding.Place{},
			say.F("%v", err), "correct the table")
		return nil
	}
	var out []seat.Bush
	for i, b := range series {
		k, err := b.Resolve(m.classes, dim.Length{}, dim.Length{})
		if err != nil {
			continue // a size for which its class does not exist
		}
		metal, err := m.metalOf(b.Material)
		if err != nil {
			continue
		}
		out = append(out, seat.Bush{Code: b.Code, Index: len(m.j.Bushes) + i, Metal: metal, ToBuy: true, OnHand: 0, Source: b.Address + ": " + b.Source,
			ODLow: k.OD.Low.Float(), ODHigh: k.OD.High.Float(), BLow: k.Bore.Low.Float(), BHigh: k.Bore.High.Float(),
			Length: b.Length.Float(), FlangeOD: b.FlangeOD.Float(), FlangeT: b.FlangeThickness.Float()})
	}
	return out
}

// seatShop turns the shop into the ways to make a seat.
func (m *maker) seatShop() seat.Shop {
	sh := m.j.Shop
	lo, hi := m.rules.Pair("friction")
	if sh.FrictionLow > 0 {
		lo = sh.FrictionLow
	}
	if sh.FrictionHigh > 0 {
		hi = sh.FrictionHigh
	}
	s := seat.Shop{Lathe: sh.Lathe || sh.MachineKind == "lathe", Compound: len(sh.Compounds) > 0, FrictionLow: lo, FrictionHigh: hi}
	for i, r := range sh.Reamers {
		low, high, err := m.reamed(r)
		if err != nil {
			pos := sh.At(fmt.Sprintf("reamers/%d", i))
			m.p.Findings.Raise(finding.Caution, "seat/reamer", finding.Place{Where: r.Name, File: pos.File, Line: pos.Line, Column: pos.Column},
				say.F("left out: %v", err),
				"correct this reamer in the shop file")
			continue
		}
		w := seat.Way{Kind: seat.Reamer, Name: reamerName(r), Size: r.Size.Float(), Low: low, High: high, Index: i}
		s.Ways = append(s.Ways, w)
		s.BoreReamers = append(s.BoreReamers, w)
	}
	mill := sh.MachineKind == "mill"
	if mill && sh.BoringFrom.Given() {
		s.BoringFrom, s.BoringTo = sh.BoringFrom.Float(), sh.BoringTo.Float()
		s.Ways = append(s.Ways, seat.Way{Kind: seat.BoringHead, Name: "boring head", Low: s.BoringFrom, High: s.BoringTo, Index: len(sh.Reamers)})
	}
	if sh.MachineKind == "lathe" {
		// A boring tool on the faceplate makes any size that its bar enters.
		from, to := 3.0, 50.0
		if sh.BoringFrom.Given() {
			from, to = sh.BoringFrom.Float(), sh.BoringTo.Float()
		}
		s.BoringFrom, s.BoringTo = from, to
		s.Ways = append(s.Ways, seat.Way{Kind: seat.BoringHead, Name: "boring tool", Low: from, High: to, Index: len(sh.Reamers)})
	}
	if mill {
		tol := m.rules.V("end_mill_mm")
		for i, t := range sh.EndMills {
			d := t.Size.Float()
			s.Ways = append(s.Ways, seat.Way{Kind: seat.EndMill, Name: t.Name + " end mill", Size: d, Low: d - tol, High: d + tol, Index: len(sh.Reamers) + 1 + i})
		}
	}
	for _, t := range sh.Mandrels {
		s.Mandrels = append(s.Mandrels, t.Size.Float())
	}
	sortFloats(s.Mandrels)
	return s
}

// reamed are the limits of the hole that a reamer leaves: its own limits, and
// above them a share of the hole tolerance.
func (m *maker) reamed(r job.Tool) (low, high float64, err error) {
	class := r.Class
	if class == "" {
		class = "H7"
	}
	lo, hi := r.Low, r.High
	if !lo.Given() || !hi.Given() {
		if lo, hi, err = m.limits.Reamer(r.Size, class); err != nil {
			return 0, 0, err
		}
	}
	d, err := m.limits.Class(r.Size, class)
	if err != nil {
		return 0, 0, err
	}
	width := d.WidthUm().InexactFloat64() / 1000
	return lo.Float(), hi.Float() + m.rules.V("oversize_share_of_tolerance")*width, nil
}

func reamerName(r job.Tool) string {
	name := r.Name
	if r.Class != "" {
		name += " " + r.Class
	}
	return name + " reamer"
}
