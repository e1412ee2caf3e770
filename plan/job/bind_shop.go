package job

import (
	"math"

	"rebush/fits/dim"
	"rebush/fits/table"
)

// bindShop fills a Shop from what was read.
func bindShop(r *reader, root *value, name string) *Shop {
	m := root.get("machine")
	s := &Shop{File: name, where: r.where, MachineKind: m.get("kind").text(), Readout: m.get("readout").tri() == Yes,
		ApproachX: m.get("approach").get("x").text(), ApproachY: m.get("approach").get("y").text(),
		SetupU: m.get("location").get("setup").length(), HoleU: m.get("location").get("hole").length(),
		Runout: m.get("runout").length(), PressN: m.get("press").or(0), MaxDrill: m.get("max_drill").length(),
		Jig: root.get("jig").text(), Lathe: root.get("lathe").tri() == Yes, Paper: root.get("paper").text()}
	if sp := m.get("spindle"); sp != nil {
		for _, n := range sp.list {
			s.Spindle = append(s.Spindle, n.num)
		}
		s.SpindleMin, s.SpindleMax = sp.get("min").or(0), sp.get("max").or(0)
	}
	d := root.get("drills")
	s.DrillTool = d.get("tool").text()
	for _, v := range d.get("series").items() {
		s.DrillSeries = append(s.DrillSeries, v.raw)
	}
	s.Drills = bindTools(r, d.get("sizes"))
	s.Reamers = bindTools(r, root.get("reamers"))
	s.EndMills = bindTools(r, root.get("end_mills"))
	s.Mandrels = bindTools(r, root.get("mandrels"))
	s.BoringFrom, s.BoringTo = root.get("boring_head").get("from").length(), root.get("boring_head").get("to").length()
	if p := root.get("pins"); p != nil {
		s.Pins = &PinSet{From: p.get("from").length(), To: p.get("to").length(), Step: p.get("step").length(), Class: p.get("class").text()}
	}
	for _, v := range root.get("compounds").items() {
		s.Compounds = append(s.Compounds, v.raw)
	}
	for _, v := range root.get("instruments").items() {
		s.Instruments = append(s.Instruments, Instrument{Name: v.get("name").text(), U: v.get("u").length(), Bias: v.get("bias").length()})
	}
	s.FrictionLow, s.FrictionHigh = root.get("friction").get("low").or(0), root.get("friction").get("high").or(0)
	if v := root.get("send_out"); v != nil {
		s.SendOut = &SendOut{LocationU: v.get("location").length(), Price: v.get("price").or(0)}
	}
	s.SetupHours, s.StripHours = root.get("hours").get("setup").or(0), root.get("hours").get("strip_and_rebuild").or(0)
	s.Currency, s.PerHour = root.get("rates").get("currency").text(), root.get("rates").get("per_hour").number()
	return s
}

func bindTools(r *reader, v *value) []Tool {
	var out []Tool
	for i, t := range v.items() {
		size := t
		if t.shape.kind == aRecord {
			size = t.get("size")
		}
		if size == nil {
			continue
		}
		tool := Tool{Size: size.len, Name: stamped(size.raw, r.units), Class: t.get("class").text(),
			Reach: t.get("reach").length(), Shank: t.get("shank").length(), For: t.get("for").length(), Index: i}
		if l := t.get("limits").items(); len(l) == 2 {
			tool.Low, tool.High = l[0].len, l[1].len
		}
		out = append(out, tool)
	}
	return out
}

// stamped is the size as it is written on a tool.
func stamped(raw string, units dim.Unit) string {
	if !plainNumber.MatchString(raw) {
		return raw
	}
	if units == dim.Inch {
		return raw + " in"
	}
	return raw + " mm"
}

// overrides reads the shop's own tables and rules into the library that the
// plan is handed.
func overrides(r *reader, root *value, s *Shop, folder string) {
	s.Tables = table.BuiltIn()
	if v := root.get("tables"); v != nil {
		for _, name := range v.order {
			ownTable(r, s, v.get(name), name, folder)
		}
	}
	rules, err := table.ReadRules(s.Tables)
	if err != nil {
		r.say(root.get("tables").place(root), "tables: "+err.Error(), "mend the table of rules")
		return
	}
	s.Rules = rules
	v := root.get("rules")
	if v == nil {
		return
	}
	for _, name := range v.order {
		rule := v.get(name)
		low, high := rule.num, math.NaN()
		if rule.shape.kind == aList {
			low, high = rule.list[0].num, rule.list[1].num
		}
		now := table.CurrentRule(name)
		if now != name && v.get(now) != nil {
			r.say(rule.pos, "rules: "+name+" is the older name of "+now+", which is set too", "keep one of the two")
			continue
		}
		if !has(rules.Names(), now) {
			r.say(rule.pos, "rules: there is no rule "+short(name), "did you mean `"+nearest(name, rules.Names())+"`? `rebush tables rules` lists them")
			continue
		}
		if err := rules.Set(name, low, high, at(rule.pos)); err != nil {
			r.say(rule.pos, "rules: "+err.Error(), "see `rebush tables rules`")
		}
	}
}

func ownTable(r *reader, s *Shop, v *value, name, folder string) {
	if !has(table.Names(), name) {
		r.say(v.pos, "tables: there is no table "+short(name), "did you mean `"+nearest(name, table.Names())+"`?")
		return
	}
	data, err := load(beside(folder, v.raw), nil)
	if err != nil {
		r.say(v.pos, "tables: "+v.raw+": "+plainFileError(err), "tables are named from the folder of the shop file")
		return
	}
	if line, column, wrong := notText(data); wrong != "" {
		r.say(Pos{v.raw, line, column}, wrong, "a table is a CSV file in UTF-8")
		return
	}
	t, err := table.Parse(name, v.raw, data)
	if err == nil {
		err = s.Tables.Replace(t)
	}
	if err != nil {
		r.say(v.pos, "tables: "+err.Error(), "`rebush tables "+name+"` shows the columns")
	}
}
