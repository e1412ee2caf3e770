package job

import (
	"math"
	"strings"

	"rebush/fits/dim"
	"rebush/fits/table"
)

// bindShop fills a Shop from what was read.
func bindShop(r *reader, root *value, name string) *Shop {
	s := &Shop{File: name, where: r.where}
	store(s, root)
	s.Drills = bindTools(r, s.Drills, root.get("drills").get("sizes"))
	s.Reamers = bindTools(r, s.Reamers, root.get("reamers"))
	s.EndMills = bindTools(r, s.EndMills, root.get("end_mills"))
	s.Mandrels = bindTools(r, s.Mandrels, root.get("mandrels"))
	return s
}

// bindTools gives each tool of a list its place there and the name that stands
// on it. One whose size could not be read is left out.
func bindTools(r *reader, tools []Tool, v *value) []Tool {
	var out []Tool
	for i, t := range v.items() {
		if t.shape.kind == aRecord {
			t = t.get("size")
		}
		if t != nil {
			tools[i].Name, tools[i].Index = stamped(t.raw, r.units), i
			out = append(out, tools[i])
		}
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
			r.say(rule.pos, "rules: there is no rule "+short(name),
				"did you mean `"+nearest(name, rules.Names())+"`? `rebush tables rules` lists them")
			continue
		}
		if err := rules.Set(name, low, high, at(rule.pos)); err != nil {
			r.say(rule.pos, "rules: "+strings.TrimPrefix(err.Error(), "rule "), "see `rebush tables rules`")
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
	data = decoded(data)
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
