package world

import (
	"fmt"
	"math"
	"slices"
)

// Shops are the kinds of shop, from poor to rich: bare names no shop file at
// all, hand drills by hand, punch is a drill press without a jig, jig one with
// a pinned jig, dials a small mill, read-out a well found one, lathe a lathe.
var Shops = []string{"bare", "hand", "punch", "jig", "dials", "read-out", "lathe"}

// bench is what the rest needs to know of a shop.
type bench struct {
	kind        string
	instruments []instrument // that the file lists
	pins        *pins
}

type pins struct{ from, to, step, u float64 }

// usualBench is how well a shop places that does not say it: common practice,
// no source.
var usualBench = map[string]Bench{"hand": {Setup: 0.10, Hole: 0.10}, "punch": {Setup: 0.10, Hole: 0.02},
	"jig": {Setup: 0.02, Hole: 0.02}, "dials": {Setup: 0.015, Hole: 0.020}, "read-out": {Setup: 0.010, Hole: 0.010},
	"lathe": {Setup: 0.015, Hole: 0.005}}

// openShop draws the shop.
func (m *maker) openShop() {
	s := m.stream("shop")
	kind := words{{7, "bare"}, {6, "hand"}, {10, "punch"}, {20, "jig"}, {22, "dials"}, {25, "read-out"}, {10, "lathe"}}.of(s)
	if m.o.Shop != "" {
		if !slices.Contains(Shops, m.o.Shop) {
			panic(fmt.Sprintf("world: there is no shop %q", m.o.Shop))
		}
		kind = m.o.Shop
	}
	m.note("shop " + kind)
	m.bench.kind = kind
	if kind == "bare" {
		m.bench.instruments = builtIn
		m.bench.pins = &pins{1, 8, 0.01, zz}
		m.truth.Bench = Bench{Setup: 0.02, Hole: 0.02, Careful: m.stream("care at the bench").yes(0.5)}
		return
	}
	rich := map[string]float64{"hand": 0.1, "punch": 0.25, "jig": 0.5, "dials": 0.65, "read-out": 0.9, "lathe": 0.7}[kind]
	m.shop = record().set("rebush_shop", number(1)).set("units", text(m.unit))
	m.machine(kind)
	if kind == "jig" {
		m.shop.set("jig", text("pinned"))
	} else if kind == "punch" && s.yes(0.5) {
		m.shop.set("jig", text("none"))
	}
	m.cutters(rich)
	m.gauges(rich)
	m.money()
}

func (m *maker) machine(kind string) {
	s := m.stream("machine")
	word := map[string]string{"hand": "hand", "punch": "drill press", "jig": "drill press", "dials": "mill",
		"read-out": "mill", "lathe": "lathe"}[kind]
	machine := record().set("kind", text(word))
	if word == "mill" {
		machine.set("readout", yesNo(kind == "read-out"))
		if s.yes(0.6) {
			approach := record().set("x", text(one(s, "rising", "falling"))).set("y", text(one(s, "rising", "falling")))
			machine.set("approach", approach)
		}
	}
	switch {
	case kind == "hand":
	case s.yes(0.5):
		steps := one(s, []float64{320, 450, 620, 900, 1250, 1750}, []float64{250, 420, 690, 1050, 1700},
			[]float64{500, 900, 1600, 2800}, []float64{90, 180, 350, 700, 1400})
		spindle := list()
		for _, f := range steps {
			spindle.items = append(spindle.items, number(f))
		}
		machine.set("spindle", spindle)
	case s.yes(0.8):
		slow, fast := one(s, 50.0, 100, 200), one(s, 1500.0, 2000, 2800, 4000)
		machine.set("spindle", record().set("min", number(slow)).set("max", number(fast)))
	}
	finds := map[string][2]float64{"hand": {0.06, 0.2}, "punch": {0.05, 0.15}, "jig": {0.015, 0.03}, "dials": {0.01, 0.025},
		"read-out": {0.004, 0.012}, "lathe": {0.005, 0.02}}[kind]
	m.truth.Bench = usualBench[kind]
	m.truth.Bench.Careful = m.stream("care at the bench").yes(0.5)
	if s.yes(0.75) {
		setup, hole := m.fine(s.between(finds[0], finds[1])), m.fine(s.between(finds[0], finds[1]))
		machine.set("location", record().set("setup", size(setup)).set("hole", size(hole)))
		m.truth.Bench.Setup, m.truth.Bench.Hole = setup.mm(), hole.mm()
	} else {
		m.note("missing location")
	}
	if s.yes(0.6) && kind != "hand" {
		machine.set("runout", size(m.usual(s.between(0.01, 0.08))))
	}
	if s.yes(0.6) {
		force := float64(s.whole(1, 10)) * 80
		machine.set("press", text(fmt.Sprintf("%g N", force)))
		if m.unit == "in" {
			machine.set("press", text(fmt.Sprintf("%g lbf", math.Round(force/4.448))))
		}
	}
	if s.yes(0.4) {
		machine.set("max_drill", size(m.rounded(one(s, 6.0, 10, 13), 0.1, 0.125)))
	}
	m.shop.set("machine", machine)
}

// money is hours, rates, rules, paper and who else could do it.
func (m *maker) money() {
	s := m.stream("money")
	if s.yes(0.8) {
		setup, strip := one(s, 0.3, 0.5, 0.7, 1), one(s, 0.5, 1.0, 1.5, 2)
		m.shop.set("hours", record().set("setup", number(setup)).set("strip_and_rebuild", number(strip)))
	} else {
		m.note("missing hours")
	}
	if s.yes(0.7) {
		currency, rate := one(s, "USD", "GBP", "EUR"), float64(s.whole(3, 16)*5)
		m.shop.set("rates", record().set("currency", text(currency)).set("per_hour", number(rate)))
	} else {
		m.note("missing rate")
	}
	if s.yes(0.12) {
		place, price := s.between(0.004, 0.012), float64(s.whole(8, 40)*5)
		m.shop.set("send_out", record().set("location", size(m.fine(place))).set("price", number(price)))
		m.note("could be sent out")
	}
	if s.yes(0.1) {
		m.shop.set("friction", record().set("low", number(one(s, 0.05, 0.08))).set("high", number(one(s, 0.2, 0.25))))
	}
	if s.yes(0.2) {
		rules := record()
		for _, r := range shuffle(s, []*node{
			record().set("clearance_aim_um", list(number(float64(s.whole(10, 25))), number(float64(s.whole(35, 60))))),
			record().set("cleanup_mm", number(one(s, 0.01, 0.03, 0.05))),
			record().set("move_caution_mm", number(one(s, 0.05, 0.1, 0.2))),
			record().set("side_play_mm", list(number(0.15), number(0.5))),
			record().set("play_leave_mm", number(one(s, 0.04, 0.06, 0.1))),
		})[:s.whole(1, 2)] {
			rules.set(r.keys[0], r.items[0])
		}
		m.shop.set("rules", rules)
		m.note("own rules")
	}
	if s.yes(0.6) {
		m.shop.set("paper", text(one(s, "A4", "Letter")))
	}
}
