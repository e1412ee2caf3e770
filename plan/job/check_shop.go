package job

import (
	"fmt"
	"math"
	"strings"

	"rebush/feeds/drills"
	"rebush/fits/dim"
	"rebush/fits/table"
)

// finds is how well each kind of machine finds a place, mm: outside it a
// figure is in the wrong unit. Common practice, no source.
var finds = map[string][2]float64{
	"mill": {0.002, 0.05}, "lathe": {0.002, 0.05}, "drill press": {0.01, 0.25}, "hand": {0.012, 0.3},
}

func checkShop(r *reader, s *Shop, root *value) {
	m := root.get("machine")
	if sp := m.get("spindle"); sp != nil {
		for i := 1; i < len(s.Spindle); i++ {
			if s.Spindle[i] <= s.Spindle[i-1] {
				r.say(sp.list[i].pos, fmt.Sprintf("spindle: %g comes after %g", s.Spindle[i], s.Spindle[i-1]),
					"write the steps in rising order, each once")
			}
		}
		if s.SpindleMax < s.SpindleMin {
			r.say(sp.pos, "spindle: max is below min", "write {min: 100, max: 2800}")
		}
	}
	if f, ok := finds[s.MachineKind]; ok {
		why := "a " + s.MachineKind
		between(r, m.get("location").get("setup"), s.SetupU, f[0], f[1], why)
		between(r, m.get("location").get("hole"), s.HoleU, f[0], f[1], why)
	}
	checkSets(r, s, root.get("drills").get("series"))
	for _, t := range []struct {
		list  *value
		tools []Tool
	}{{root.get("drills").get("sizes"), s.Drills}, {root.get("reamers"), s.Reamers},
		{root.get("end_mills"), s.EndMills}, {root.get("mandrels"), s.Mandrels}} {
		for _, tool := range t.tools {
			checkTool(r, tool, t.list.list[tool.Index], s.Reamers)
		}
	}
	if b := root.get("boring_head"); notBelow(s.BoringFrom, s.BoringTo) {
		r.say(b.pos, "boring_head: from is not below to", "write {from: 5, to: 20}")
	}
	if p := root.get("pins"); p != nil && notBelow(s.Pins.From, s.Pins.To) {
		r.say(p.pos, "pins: from is not below to", "write {from: 1, to: 6, step: 0.01}")
	}
	checkPins(r, s, root.get("pins").get("class"))
	if s.FrictionHigh < s.FrictionLow {
		r.say(root.get("friction").pos, "friction: high is below low", "write {low: 0.05, high: 0.20}")
	}
	checkOwnInstruments(r, s, root)
	checkRecord(r, s, root.get("record"))
}

// checkOwnInstruments: each has a name of its own, and a doubt that its kind
// can have.
func checkOwnInstruments(r *reader, s *Shop, root *value) {
	kinds, err := table.ReadInstruments(s.Tables)
	if err != nil {
		r.say(root.get("instruments").place(root), "the table of instruments does not read: "+err.Error(),
			"mend the shop's own table")
		return
	}
	names := map[string]bool{}
	for i, v := range root.get("instruments").items() {
		in := s.Instruments[i]
		if names[in.Name] {
			r.say(v.pos, fmt.Sprintf("two instruments are called %q", short(in.Name)), "give each a name of its own")
		}
		names[in.Name] = true
		least, most := kinds.Plausible(in.Name)
		between(r, v.get("u"), in.U, least, most,
			"an instrument called "+short(in.Name)+" (a standard uncertainty is about a third of the limit of error)")
	}
}

// checkPins: the class of a set of pins is one that the table in force has.
func checkPins(r *reader, s *Shop, v *value) {
	if v == nil {
		return
	}
	t, err := s.Tables.Get("pin_classes")
	if err != nil {
		return // no table of that name: a fault that every test finds
	}
	var classes []string
	for _, row := range t.Rows {
		if strings.EqualFold(row.Get("class"), v.raw) {
			return
		}
		classes = append(classes, row.Get("class"))
	}
	r.say(v.pos, fmt.Sprintf("class: no class of pins is called %q", short(v.raw)),
		"it may be "+orList(classes)+"; `rebush tables pin_classes` lists them")
}

// checkSets: a set of drills is one that the tables know.
func checkSets(r *reader, s *Shop, v *value) {
	if v == nil {
		return
	}
	d, err := drills.New(s.Tables)
	if err != nil {
		r.say(v.pos, "series: the tables of drills do not read: "+err.Error(), "mend the shop's own table")
		return
	}
	for i, set := range v.list {
		if _, err := d.Set(s.DrillSeries[i]); err != nil {
			r.say(set.pos, "series: "+err.Error(), "")
		}
	}
}

// notBelow says that both ends of a range are given, and the wrong way round.
func notBelow(from, to dim.Length) bool { return from.Given() && to.Given() && !from.Less(to) }

func checkTool(r *reader, t Tool, v *value, reamers []Tool) {
	if t.Low.Given() && t.High.Given() {
		l := v.get("limits")
		bracket(r, l, t.Low.Float(), t.High.Float(), 0.1)
		if t.Size.Float() < t.Low.Float()-0.1 || t.Size.Float() > t.High.Float()+0.1 {
			r.say(l.pos, fmt.Sprintf("limits: %s and %s do not go with a size of %s",
				r.show(t.Low.Float()), r.show(t.High.Float()), r.show(t.Size.Float())),
				"give the limits as measured on this tool")
		}
		if t.Class != "" {
			r.say(v.get("class").pos, "class: limits as measured take no class", "keep one of them")
		}
	}
	if t.Shank.Given() {
		between(r, v.get("shank"), t.Shank, 0.3*t.Size.Float(), math.Max(4*t.Size.Float(), 12),
			"a tool of "+r.show(t.Size.Float()))
	}
	if t.For.Given() {
		f := v.get("for")
		between(r, v.get("size"), t.Size, 0.75*t.For.Float(), t.For.Float(),
			"the reamer it goes before, "+r.show(t.For.Float()))
		same := len(reamers) == 0
		for _, k := range reamers {
			same = same || math.Abs(k.Size.Float()-t.For.Float()) < 0.02
		}
		if !same {
			r.say(f.pos, fmt.Sprintf("for: there is no reamer of %s in the shop", r.show(t.For.Float())),
				"name the size of one of the reamers")
		}
	}
}
