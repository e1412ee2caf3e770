package world

import (
	"fmt"
	"math"
	"slices"
)

// cutters are drills, reamers, mills, boring head, mandrels and what turns a
// bush; rich is from 0 to 1.
func (m *maker) cutters(rich float64) {
	s := m.stream("cutters")
	m.drills(s, rich)
	var reamers, mills []*node
	have := map[ticks]bool{}
	add := func(mm float64, size *node) {
		if !have[size.length] {
			have[size.length] = true
			reamers = append(reamers, m.reamer(s, size, mm))
		}
	}
	for _, b := range m.drawer {
		if s := s.of(b.entry.get("code").text); b.od > 0 && (m.prepared || s.yes(0.2+0.6*rich)) {
			add(b.od, m.stamped(b.od))
		}
	}
	for range s.whole(0, 1+int(5*rich)) {
		mm := one(s, 3.0, 4, 5, 5.5, 6, 7, 8)
		if m.inch || s.yes(0.15) {
			mm = 25.4 * one(s, 1.0/8, 5.0/32, 3.0/16, 7.0/32, 1.0/4, 9.0/32, 5.0/16)
		}
		add(mm, m.stamped(mm))
	}
	if len(reamers) > 0 {
		m.shop.set("reamers", anyOrder(reamers...))
		m.before(s.of("before"), reamers)
	} else {
		m.note("no reamer")
	}
	milling := m.bench.kind == "dials" || m.bench.kind == "read-out"
	if milling && s.yes(0.9) {
		for _, mm := range []float64{2, 3, 4, 5, 6, 8} {
			if s.yes(0.7) {
				mills = append(mills, tool(m.rounded(mm, 0.1, 1.0/32)))
			}
		}
		if s.yes(0.3) {
			long := record().set("size", tool(m.usual(4.5))).set("shank", size(m.usual(4.4))).set("reach", size(m.coarse(22)))
			mills = append(mills, long)
		}
		mills = slices.CompactFunc(mills, func(a, b *node) bool {
			return a.kind == aLength && b.kind == aLength && a.length == b.length
		})
		m.shop.set("end_mills", anyOrder(mills...))
	}
	if (milling || m.bench.kind == "lathe") && s.yes(0.3+0.5*rich) {
		head := record().set("from", size(m.coarse(one(s, 4.0, 5, 6, 8)))).set("to", size(m.coarse(one(s, 20.0, 25, 40))))
		m.shop.set("boring_head", head)
		m.note("boring head")
	}
	m.mandrels(s, rich)
	lathe := m.bench.kind == "lathe" || s.yes(0.15+0.5*rich)
	if lathe || s.yes(0.5) {
		m.shop.set("lathe", yesNo(lathe))
	}
	if lathe {
		m.note("can turn a bush")
	}
	if s.yes(0.3 + 0.5*rich) {
		m.shop.set("compounds", anyOrder(text("gap-filling")))
		m.note("compound")
	}
}

func (m *maker) drills(s stream, rich float64) {
	var sets []*node
	for _, set := range shuffle(s, []string{"metric 0.1", "metric 0.5", "number", "letter", "fraction"}) {
		if s.yes(0.2 + 0.4*rich) {
			sets = append(sets, text(set))
		}
	}
	drills := record().set("tool", text(words{{8, "HSS"}, {1, "cobalt"}, {1, "carbide"}}.of(s)))
	if len(sets) > 0 {
		drills.set("series", anyOrder(sets...))
	}
	var single []*node
	if s.yes(0.4) {
		single = append(single, text("#31"))
		single[0].kind, single[0].length = aLength, 304_800_000 // 0.1200 in
	}
	if s.yes(0.4) {
		single = append(single, tool(m.usual(one(s, 2.9, 3.8, 4.3))))
	}
	if len(single) > 0 {
		drills.set("sizes", anyOrder(single...))
	}
	m.shop.set("drills", drills)
}

// before is a drill that was bought to go before one of the reamers.
func (m *maker) before(s stream, reamers []*node) {
	if !s.yes(0.4) {
		return
	}
	reamer := one(s, reamers...).get("size")
	drill := record().set("size", tool(m.usual(reamer.length.mm()-s.between(0.12, 0.25)))).set("for", reamer.clone())
	drills := m.shop.get("drills")
	single := drills.get("sizes")
	if single == nil {
		single = anyOrder()
		drills.set("sizes", single)
	}
	single.items = append(single.items, drill)
	m.note("drill for a reamer")
}

// stamped is a size as it is stamped on a tool: a fraction of an inch, or mm.
func (m *maker) stamped(mm float64) *node {
	if of32 := mm / 25.4 * 32; abs(of32-math.Round(of32)) < 1e-6 {
		top, below := int(math.Round(of32)), 32
		for top%2 == 0 && below > 1 {
			top, below = top/2, below/2
		}
		return typed(fmt.Sprintf("%d/%d in", top, below), ticks(math.Round(of32))*perInch/32)
	}
	t := ticks(math.Round(mm*100)) * perMM / 100
	if m.unit == "in" {
		return typed(decimal(t, 8)+" mm", t)
	}
	return tool(t)
}

// reamer is one by its class, or by its limits as measured.
func (m *maker) reamer(s stream, nominal *node, mm float64) *node {
	r := record().set("size", nominal)
	if len(nominal.text) > 2 && nominal.text[len(nominal.text)-2:] == "in" || s.yes(0.2) {
		low := mm + s.between(-0.002, 0.006)
		r.set("limits", list(size(m.fine(low)), size(m.fine(low+s.between(0.005, 0.012)))))
		m.note("reamer by its limits")
	} else {
		r.set("class", text(words{{8, "H7"}, {1, "H8"}, {1, "H6"}}.of(s)))
	}
	if s.yes(0.15) {
		r.set("reach", size(m.coarse(s.between(20, 60)))).set("shank", size(m.coarse(mm*s.between(0.85, 0.99))))
	}
	return r
}

// mandrels size a pressed bush: a few steps over each journal.
func (m *maker) mandrels(s stream, rich float64) {
	var all []ticks
	d, _ := m.journals()
	for _, journal := range d {
		if s := s.of(fmt.Sprint("mandrel ", journal)); !m.prepared && !s.yes(0.7*rich) {
			continue
		}
		for k := range s.whole(1, 3) {
			all = append(all, m.rounded(journal+0.02+0.01*float64(k), 0.005, 0.0002))
		}
	}
	if len(all) == 0 {
		return
	}
	slices.Sort(all)
	mandrels := anyOrder()
	for _, t := range slices.Compact(all) {
		mandrels.items = append(mandrels.items, tool(t))
	}
	m.shop.set("mandrels", mandrels)
	m.note("mandrels")
}
